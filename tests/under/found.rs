//! Wood that was found soft: which spot measures it, and that it does not heal.

use crate::desk::{Desk, other_phone, stamp};
use crate::house::{inches, joist, joist_4_after as after, one, says, sound_house};
use chrono::{DateTime, Duration};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{EntryId, Stamp};
use duckboard::engine::framing::{DamageKind, Fate, Judged};
use duckboard::engine::job::Record;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};

const LOWER: Option<Face> = Some(Face::LowerEdge);

fn place(desk: &mut Desk, along: Option<&str>, face: Option<Face>) -> EntryId {
    let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: along.map(inches) };
    desk.log(Place { element: Element::Joist, position, face, height: None, chalk: None })
}

fn finds(desk: &mut Desk, finding: Finding, along: Option<&str>, face: Option<Face>) -> EntryId {
    let place = place(desk, along, face);
    desk.log(Condition { place: Some(place), finding, note: None })
}

fn spot(desk: &mut Desk, stretch: Option<(&str, &str)>, face: Option<Face>, depth: &str) -> EntryId {
    desk.spot(4, DamageKind::Soft, stretch, face, depth)
}

/// Does the finding stand by itself?
fn stands(judged: &Judged) -> bool {
    says(judged, "found soft") || says(judged, "found rotten")
}

/// In one visit: a spot from 54 to 60 in at some face, and a finding.
fn found(at: (Finding, Option<&'static str>, Option<Face>), face: Option<Face>) -> bool {
    stands(&after(|desk| {
        desk.visit("look");
        spot(desk, Some(("54", "60")), face, "1/4");
        finds(desk, at.0, at.1, at.2);
    }))
}

#[test]
fn a_spot_measures_a_finding_only_where_it_holds_its_place() {
    for finding in [Finding::Soft, Finding::Rotten] {
        let at = |along| found((finding, Some(along), None), LOWER);
        assert_eq!([at("53 15/16"), at("54"), at("60"), at("60 1/16")], [true, false, false, true], "{finding:?}");
        assert!(!found((finding, None, None), LOWER), "the spot says where");
        assert!(found((finding, None, Some(Face::UpperEdge)), LOWER), "at another face");
        let faces = |its: Option<Face>, spots: Option<Face>| found((finding, Some("57"), its), spots);
        assert!(!faces(LOWER, LOWER) && !faces(None, LOWER) && !faces(LOWER, None));
        assert!(faces(Some(Face::UpperEdge), LOWER) && faces(Some(Face::FarSide), Some(Face::NearSide)));
    }
}

#[test]
fn what_was_found_at_an_end_is_measured_by_a_spot_at_that_end_alone() {
    let at = |its, along, face, stretch| {
        stands(&after(|desk| {
            desk.visit("look");
            finds(desk, Finding::Rotten, along, Some(its));
            spot(desk, stretch, face, "1/16");
        }))
    };
    let (near, far, end) = (Face::NearEnd, Face::FarEnd, Face::End);
    assert!(!at(near, None, Some(near), None) && !at(far, None, Some(far), None));
    assert!(at(near, None, Some(far), None) && at(near, None, Some(end), None), "not at that end");
    let whole = Some(("0", "10'"));
    assert!(at(near, Some("0"), LOWER, whole) && at(end, Some("0"), LOWER, whole) && at(end, Some("0"), None, whole));
    assert!(at(end, Some("0"), Some(near), None) && at(end, Some("0"), Some(end), Some(("1/16", "6"))));
    assert!(!at(end, Some("0"), Some(near), Some(("0", "6"))));
}

#[test]
fn a_spot_of_which_nobody_said_how_deep_it_goes_measures_nothing() {
    let by = |finding, depth| {
        stands(&after(|desk| {
            desk.visit("look");
            finds(desk, finding, Some("57"), None);
            spot(desk, Some(("54", "60")), LOWER, depth);
        }))
    };
    assert!(by(Finding::Soft, "0") && by(Finding::Rotten, "0") && by(Finding::Rotten, "cannot reach"));
    assert!(!by(Finding::Soft, "cannot reach") && !by(Finding::Soft, "1/16") && !by(Finding::Rotten, "1/16"));
}

#[test]
fn an_older_spot_measures_nothing_that_was_found_since() {
    let in_visits = |spot_first: bool, another: bool| {
        let judged = after(|desk| {
            desk.visit("look");
            let log: [fn(&mut Desk); 2] = [
                |desk| drop_(spot(desk, Some(("54", "60")), LOWER, "1/4")),
                |desk| drop_(finds(desk, Finding::Rotten, Some("57"), None)),
            ];
            let order = if spot_first { [0, 1] } else { [1, 0] };
            log[order[0]](desk);
            if another {
                desk.visit("look again");
            }
            log[order[1]](desk);
            desk.says(joist(4), &DONE, "sistered");
        });
        (stands(&judged), judged.is_settled())
    };
    assert_eq!(in_visits(true, true), (true, false), "rot of a later visit");
    let measured = (false, true);
    assert_eq!([in_visits(true, false), in_visits(false, false), in_visits(false, true)], [measured; 3]);
    let in_no_visit = after(|desk| {
        spot(desk, Some(("54", "60")), LOWER, "1/4");
        finds(desk, Finding::Rotten, Some("57"), None);
    });
    assert!(stands(&in_no_visit), "nobody can tell how much older it is");
    let corrected = after(|desk| {
        desk.visit("look");
        spot(desk, Some(("54", "60")), LOWER, "1/4");
        let found = finds(desk, Finding::Soft, Some("57"), None);
        desk.visit("look again");
        later(desk, 1);
        let mut now = desk.job().now.conditions().get(&found).unwrap().value.clone();
        now.finding = Finding::Rotten;
        desk.correct(found, now);
    });
    assert!(stands(&corrected), "rotten is what a later visit says");
}

/// Of another phone that has seen nothing of it.
#[test]
fn a_spot_of_which_nobody_can_tell_whether_it_is_older_measures_nothing() {
    let by = |minutes: i64| {
        let mut desk = sound_house();
        desk.visit("look");
        finds(&mut desk, Finding::Rotten, Some("57"), None);
        let mut phone = other_phone();
        let mut other = Desk::new();
        let logged = spot(&mut other, Some(("54", "60")), LOWER, "1/4");
        let logged = other.job().now.damages().get(&logged).unwrap().value.clone();
        (0..500).for_each(|_| drop_(phone.record(logged.clone())));
        phone.stamp_from(Stamp { at: stamp().at + Duration::minutes(minutes), ..stamp() });
        desk.book.add(Record::of(phone.record(logged)).unwrap());
        stands(&one(&desk, 4))
    };
    assert_eq!([by(-1), by(0), by(1)], [true, true, false]);
}

#[test]
fn what_was_done_before_a_finding_settles_nothing_of_it_whenever_its_spot_was_logged() {
    let settled = |done_last: bool, finding: fn(&mut Desk)| {
        after(|desk| {
            desk.visit("look");
            spot(desk, Some(("54", "60")), LOWER, "1/4");
            if !done_last {
                desk.says(joist(4), &DONE, "sistered");
            }
            finding(desk);
            if done_last {
                desk.says(joist(4), &DONE, "sistered");
            }
        })
        .is_settled()
    };
    let findings: [fn(&mut Desk); 2] = [
        |desk| drop_(finds(desk, Finding::Rotten, Some("57"), None)),
        |desk| drop_(desk.says(joist(4), &AWL, "goes in")),
    ];
    for finding in findings {
        assert_eq!([settled(true, finding), settled(false, finding)], [true, false]);
    }
}

/// All in one visit: the spot was of the joist as it was before.
#[test]
fn a_spot_of_before_something_was_done_measures_nothing_that_was_found_after() {
    let findings: [fn(&mut Desk); 2] = [
        |desk| drop_(finds(desk, Finding::Rotten, Some("57"), None)),
        |desk| drop_(desk.says(joist(4), &AWL, "goes in")),
    ];
    let open = |finding: fn(&mut Desk), done: &'static str, spot_again: bool| {
        let judged = after(|desk| {
            desk.visit("look");
            spot(desk, Some(("54", "60")), LOWER, "1/4");
            desk.says(joist(4), &DONE, done);
            finding(desk);
            if spot_again {
                spot(desk, Some(("54", "60")), LOWER, "1/4");
            }
        });
        says(&judged, "found rotten") || says(&judged, "log where and how deep")
    };
    for finding in findings {
        for done in ["sistered", "replaced"] {
            assert_eq!([open(finding, done, false), open(finding, done, true)], [true, false], "{done}");
        }
        assert!(!open(finding, "not yet", false), "nothing was done");
    }
}

#[test]
fn where_an_awl_goes_in_is_told_by_a_spot_of_that_visit_or_later() {
    let asks = |spot_first: bool, another: bool, of: fn() -> Part| {
        let judged = after(|desk| {
            desk.visit("look");
            let log: [fn(&mut Desk, Part); 2] = [
                |desk, _| drop_(spot(desk, Some(("54", "60")), LOWER, "1/4")),
                |desk, of| drop_(desk.says(of, &AWL, "goes in")),
            ];
            let order = if spot_first { [0, 1] } else { [1, 0] };
            log[order[0]](desk, of());
            if another {
                desk.visit("look again");
            }
            log[order[1]](desk, of());
        });
        says(&judged, "log where and how deep")
    };
    for of in [|| joist(4), || Part::Joists] {
        assert!(asks(true, true, of), "an older spot");
        assert!(![asks(true, false, of), asks(false, false, of), asks(false, true, of)].contains(&true));
    }
    let again = after(|desk| {
        desk.visit("look");
        desk.says(joist(4), &AWL, "goes in");
        spot(desk, Some(("54", "60")), LOWER, "1/4");
        desk.visit("look again");
        desk.says(joist(4), &AWL, "goes in");
    });
    assert!(says(&again, "log where and how deep"), "it goes in anew");
}

#[test]
fn wood_does_not_heal_an_awl_that_went_in_stands_until_it_was_put_right_in_the_same_visit() {
    let twice = |item: &'static Item, words: [&'static str; 2], another: bool| {
        after(|desk| {
            desk.visit("look");
            desk.says(joist(4), &SOFT_FACE, "lower edge");
            desk.says(joist(4), &SOFT_LENGTH, "1'");
            desk.says(joist(4), item, words[0]);
            if another {
                desk.visit("look again");
            }
            desk.says(joist(4), item, words[1]);
        })
        .fate
    };
    let awl = |words, another| twice(&AWL, words, another);
    assert_eq!(awl(["goes in", "stops everywhere"], true), Fate::Open, "another visit");
    assert_eq!(awl(["goes in", "stops everywhere"], false), Fate::Stays, "a slip");
    assert_eq!(awl(["goes in", "cannot reach"], false), Fate::Open);
    assert_eq!(awl(["cannot reach", "stops everywhere"], true), Fate::Stays, "once it is open it is probed");
    let depth = |words, another| twice(&SOFT_DEPTH, words, another);
    assert_eq!(depth(["3", "0"], true), Fate::Engineer);
    assert_eq!(depth(["3", "1/2"], true), Fate::Engineer);
    assert_eq!(depth(["1/2", "3"], true), Fate::Engineer);
    assert_eq!([depth(["3", "0"], false), depth(["3", "1/2"], false)], [Fate::Stays, Fate::Sister]);
}

#[test]
fn an_awl_that_went_in_is_ended_by_what_was_done_since() {
    let done = |then: &[&'static str]| {
        after(|desk| {
            desk.visit("look");
            desk.says(joist(4), &AWL, "goes in");
            for words in then {
                desk.visit("look again");
                match *words {
                    "replaced" => desk.does(joist(4), words),
                    awl => drop_(desk.says(joist(4), &AWL, awl)),
                }
            }
        })
        .is_settled()
    };
    assert!(done(&["replaced"]) && done(&["replaced", "stops everywhere"]));
    assert!(!done(&["stops everywhere"]) && !done(&["replaced", "goes in"]));
    assert!(done(&["stops everywhere", "replaced"]));
}

/// What an entry's id is of no use for.
fn drop_<T>(_: T) {}

/// The clock goes on.
fn later(desk: &mut Desk, hours: i64) {
    let at = DateTime::parse_from_rfc3339("2026-11-25T09:15:00-06:00").unwrap() + Duration::hours(hours);
    let visit = *desk.job().now.visits().keys().next_back().unwrap();
    desk.pen.stamp_from(Stamp { at, visit: Some(visit), ..stamp() });
}

/// Nobody pushed an awl into each: it went in somewhere, and that does not heal either.
#[test]
fn an_awl_that_went_in_somewhere_counts_until_this_joist_was_probed() {
    let fate = |of: Part, word: Option<&'static str>, another: bool| {
        after(|desk| {
            desk.visit("look");
            desk.says(Part::Joists, &AWL, "goes in");
            if another {
                desk.visit("look again");
            }
            if let Some(word) = word {
                desk.says(of, &AWL, word);
            }
        })
        .fate
    };
    assert_eq!(fate(Part::Joists, None, false), Fate::Open);
    assert_eq!(fate(joist(4), Some("stops everywhere"), true), Fate::Stays);
    let all = |another| fate(Part::Joists, Some("stops everywhere"), another);
    assert_eq!([all(true), all(false)], [Fate::Open, Fate::Stays], "a slip was put right");
}

#[test]
fn of_joists_that_no_awl_could_reach_one_that_was_probed_since_is_probed() {
    let fate = |said: [(Part, &str); 2]| {
        after(|desk| {
            for (of, word) in said {
                desk.says(of, &AWL, word);
            }
        })
        .fate
    };
    let (all, own) = ((Part::Joists, "cannot reach"), (joist(4), "stops everywhere"));
    assert_eq!([fate([all.clone(), own.clone()]), fate([own, all])], [Fate::Stays, Fate::Open]);
}

#[test]
fn that_an_awl_cannot_reach_puts_nothing_right_where_it_went_in() {
    let judged = after(|desk| {
        desk.visit("look");
        desk.says(joist(4), &AWL, "goes in");
        desk.says(joist(4), &AWL, "cannot reach");
    });
    assert!(says(&judged, "log where and how deep"), "{:?}", judged.reasons);
}

/// Six inches is what may be one spot.
#[test]
fn what_was_found_soft_where_an_awl_stops_is_a_contradiction_and_no_farther_off() {
    let beside = |sound: &str| {
        let mut desk = crate::house::house();
        crate::house::make_sound(&mut desk, 3);
        finds(&mut desk, Finding::Soft, Some("48"), LOWER);
        finds(&mut desk, Finding::Sound, Some(sound), Some(Face::UpperEdge));
        says(&one(&desk, 4), "yet the awl stops there")
    };
    assert_eq!(["42", "54", "41 15/16", "54 1/16"].map(beside), [true, true, false, false]);
}
