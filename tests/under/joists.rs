//! Where the verdicts over joists turn: just under, at and just over each limit.

use crate::desk::Desk;
use crate::house::{house, inches, joist, joist_4_after as after, one, says, sound_house};
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::EntryId;
use duckboard::engine::framing::joist::{Joist, Reads, joists};
use duckboard::engine::framing::schedule::judged;
use duckboard::engine::framing::{
    DamageKind, DesignValues, Edition, Fate, Grade, Judged, LumberGroup, Section, Service, Shared, Since, span,
};
use duckboard::engine::moisture::Material;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::Joists;
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;
use duckboard::engine::units::tape::BareUnit;

pub const LOWER: Option<Face> = Some(Face::LowerEdge);

fn with(said: &[(&Item, &str)]) -> Fate {
    after(|desk| {
        for (item, typed) in said {
            desk.says(joist(4), item, typed);
        }
    })
    .fate
}

fn soft(depth: &'static str, face: Option<Face>, stretch: (&'static str, &'static str)) -> Judged {
    after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(stretch), face, depth);
    })
}

pub fn finds(desk: &mut Desk, finding: Finding, along: Option<&str>) -> EntryId {
    let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: along.map(inches) };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(place), finding, note: None })
}

/// 7 1/2 in deep, so that a third is 2 1/2: a depth, the quarter inch beyond it and the
/// sixteenth that an awl can be off.
#[test]
fn a_joist_that_lost_more_than_a_third_of_its_depth_is_an_engineers() {
    let of = |depth| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            desk.spot(4, DamageKind::Soft, Some(("3'", "4'")), LOWER, depth);
        })
        .fate
    };
    assert_eq!([of("2 1/8"), of("2 3/16"), of("2 1/4")], [Fate::Sister, Fate::Sister, Fate::Engineer]);
}

/// Both edges count, and both sides: nobody knows that they do not lie across from each other.
#[test]
fn soft_spots_across_from_each_other_are_lost_together() {
    let of = |faces: [Face; 2], depth: &str| {
        after(|desk| {
            for face in faces {
                desk.spot(4, DamageKind::Soft, Some(("3'", "4'")), Some(face), depth);
            }
        })
        .fate
    };
    // Twice 15/16 + 1/4, and a sixteenth, are 2 7/16: a third of 7 1/4 is less.
    assert_eq!(of([Face::LowerEdge, Face::LowerEdge], "15/16"), Fate::Sister);
    assert_eq!(of([Face::LowerEdge, Face::UpperEdge], "15/16"), Fate::Engineer);
    // A third of 1 1/2 is 1/2. Twice 1/16 + 1/4 and a sixteenth are 11/16.
    assert_eq!(of([Face::NearSide, Face::NearSide], "1/16"), Fate::Sister);
    assert_eq!(of([Face::NearSide, Face::FarSide], "1/16"), Fate::Engineer);
}

#[test]
fn one_that_is_soft_along_half_its_span_has_nothing_for_a_sister_to_lie_on() {
    let of = |to| soft("1/2", LOWER, ("2'", to)).fate;
    assert_eq!([of("6' 11 15/16"), of("7'"), of("7' 1/16")], [Fate::Sister, Fate::Replace, Fate::Replace]);
    let unsaid = after(|desk| {
        desk.spot(4, DamageKind::Soft, None, LOWER, "1/2");
    });
    assert!(unsaid.fate == Fate::Sister && says(&unsaid, "a sister at least"), "{:?}", unsaid.reasons);
}

/// Clear 10 ft, half of it 5 ft: spots of 30, 30 and 24 in, those that overlap counted once.
#[test]
fn along_half_its_span_goes_by_all_soft_wood_of_the_joist_together() {
    let of = |spots: &[(&str, &str)], face: Option<Face>| {
        after(|desk| {
            for (at, stretch) in spots.iter().enumerate() {
                let face = if at == 0 { LOWER } else { face };
                desk.spot(4, DamageKind::Soft, Some(*stretch), face, "1/4");
            }
        })
        .fate
    };
    let slices = |to| of(&[("12", "42"), ("48", to), ("84", "90")], LOWER);
    assert_eq!([slices("71 15/16"), slices("72"), slices("72 1/16")], [Fate::Sister, Fate::Replace, Fate::Replace]);
    assert_eq!(of(&[("12", "42"), ("48", "78")], Some(Face::NearSide)), Fate::Engineer, "too much of its breadth");
    assert_eq!(of(&[("12", "42"), ("48", "78")], Some(Face::UpperEdge)), Fate::Replace);
    let overlapping = |to| of(&[("12", "60"), ("20", "50"), ("30", to)], LOWER);
    assert_eq!([overlapping("71 15/16"), overlapping("72")], [Fate::Sister, Fate::Replace]);
    let beside_an_unplaced_one = |long: &'static str| {
        after(|desk| {
            desk.says(joist(4), &SOFT_FACE, "lower edge");
            desk.says(joist(4), &SOFT_LENGTH, long);
            desk.says(joist(4), &SOFT_DEPTH, "1/4");
            desk.spot(4, DamageKind::Soft, Some(("12", "42")), LOWER, "1/4");
        })
        .fate
    };
    assert_eq!([beside_an_unplaced_one("29 15/16"), beside_an_unplaced_one("30")], [Fate::Sister, Fate::Replace]);
    let hard = of(&[("12", "42")], LOWER);
    let probed = after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(("12", "42")), LOWER, "1/4");
        desk.spot(4, DamageKind::Soft, Some(("42", "108")), LOWER, "0");
    });
    assert_eq!([hard, probed.fate], [Fate::Sister; 2], "where the awl stopped it is not soft");
}

/// Clear 10 ft.
#[test]
fn soft_wood_where_a_joist_bears_is_as_grave_as_at_its_end() {
    let of = |face, stretch, depth| soft(depth, face, stretch).fate;
    for face in [LOWER, Some(Face::UpperEdge), None] {
        assert_eq!(of(face, ("0", "12"), "1/2"), Fate::Replace, "{face:?}");
        assert_eq!(of(face, ("9'", "10'"), "1/2"), Fate::Replace, "{face:?}");
    }
    // Rot that begins so close runs on.
    assert_eq!([of(LOWER, ("6", "12"), "1/2"), of(LOWER, ("9'", "114"), "1/2")], [Fate::Replace; 2]);
    assert_eq!([of(LOWER, ("6 1/16", "12"), "1/2"), of(LOWER, ("9'", "113 15/16"), "1/2")], [Fate::Sister; 2]);
    assert_eq!(of(Some(Face::NearSide), ("0", "12"), "1/16"), Fate::Replace);
    // What lost a third or more is an engineer's there too.
    assert_eq!(of(LOWER, ("0", "12"), "3"), Fate::Engineer);
    let unmeasured = after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(("0", "12")), LOWER, "1/2");
        let all = desk.job().now.particulars();
        let depth: Vec<_> = all.iter().filter(|(_, it)| it.value.what.as_str() == "depth").map(|(id, _)| *id).collect();
        for id in depth {
            desk.withdraw(id);
        }
    });
    assert_eq!(unmeasured.fate, Fate::Replace);
}

#[test]
fn a_board_thinner_than_lumber_is_no_sister() {
    let of = |breadth: &'static str, clear: &'static str, is_soft: bool| {
        let judged = after(|desk| {
            desk.says(Part::House, &SISTER_BREADTH, breadth);
            desk.says(joist(4), &CLEAR_SPAN, clear);
            if is_soft {
                desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), LOWER, "1/2");
            }
            desk.says(joist(4), &DONE, "sistered");
        });
        (says(&judged, "is no sister"), judged.is_settled())
    };
    let (thin, fits) = ((true, false), (false, true));
    assert_eq!(["1/2", "1 7/16", "1 1/2", "1 9/16"].map(|it| of(it, "10'", true)), [thin, thin, fits, fits]);
    // Where a sister was only one way to be sure.
    assert_eq!(["1 7/16", "1 1/2"].map(|it| of(it, "12' 7 1/2", false)), [thin, fits]);
    assert_eq!(of("1/2", "10'", false), fits, "nothing asks for one");
}

#[test]
fn a_spot_of_which_something_is_not_said_is_asked_for() {
    assert!(says(&soft("1/2", None, ("2'", "3'")), "log it again there, at an edge, a side or an end"));
    assert_eq!(soft("1/2", Some(Face::End), ("0", "6")).fate, Fate::Replace);
    let hidden = soft("cannot reach", LOWER, ("2'", "3'"));
    assert!(hidden.fate == Fate::Open && says(&hidden, "once the floor is open"), "{:?}", hidden.reasons);
    let hidden = after(|desk| {
        desk.says(joist(4), &AWL, "cannot reach");
    });
    assert!(hidden.fate == Fate::Open && says(&hidden, "once the floor is open"), "{:?}", hidden.reasons);
}

#[test]
fn a_soft_or_rotten_finding_is_a_soft_spot_until_one_is_logged_that_says_how_deep() {
    let alone = |finding| {
        after(|desk| {
            finds(desk, finding, Some("4'"));
        })
    };
    assert!(says(&alone(Finding::Soft), "yet the awl stops there"), "{:?}", alone(Finding::Soft).reasons);
    assert_eq!((alone(Finding::Soft).fate, alone(Finding::Rotten).fate), (Fate::Open, Fate::Sister));
    assert_eq!(alone(Finding::Strands).fate, Fate::Engineer);
    assert_eq!(alone(Finding::Sound).fate, Fate::Stays);
}

/// Clear 10 ft. Rot there is graver than soft wood there, which is to be replaced.
#[test]
fn rot_at_a_bearing_or_nobody_said_where_asks_for_a_new_joist() {
    let rotten = |along: Option<&'static str>, face| {
        after(|desk| {
            let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: along.map(inches) };
            let place = desk.log(Place { element: Element::Joist, position, face, height: None, chalk: None });
            desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
        })
    };
    for face in [Face::End, Face::NearEnd, Face::FarEnd] {
        assert_eq!(rotten(None, Some(face)).fate, Fate::Replace, "{face:?}");
    }
    assert_eq!([rotten(Some("6"), None).fate, rotten(Some("6 1/16"), None).fate], [Fate::Replace, Fate::Sister]);
    assert_eq!([rotten(Some("114"), LOWER).fate, rotten(Some("113 15/16"), LOWER).fate], [Fate::Replace, Fate::Sister]);
    assert!(says(&rotten(Some("0"), None), "where it bears"));
    let unplaced = rotten(None, None);
    assert!(unplaced.fate == Fate::Replace && says(&unplaced, "nobody said where"), "{:?}", unplaced.reasons);
}

#[test]
fn a_finding_is_named_by_where_it_is() {
    let found = after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(("7'", "8'")), LOWER, "1/4");
        finds(desk, Finding::Soft, Some("4'"));
    });
    assert!(says(&found, "found soft at 4' 0\""), "{:?}", found.reasons);
}

/// What is said of all joists at once is said of each.
#[test]
fn what_speaks_against_all_joists_speaks_against_each() {
    let all = after(|desk| {
        desk.says(Part::Joists, &AWL, "goes in");
    });
    assert_eq!(all.fate, Fate::Open, "{:?}", all.reasons);
    let probed_since = after(|desk| {
        desk.says(Part::Joists, &AWL, "goes in");
        desk.says(joist(4), &AWL, "stops everywhere");
    });
    assert_eq!(probed_since.fate, Fate::Stays);
    let mut none_said = house();
    none_said.says(Part::Joists, &AWL, "stops everywhere");
    assert!(says(&one(&none_said, 4), "probe both ends"), "nobody pushed an awl into each");
    let spot = after(|desk| {
        let damage = duckboard::engine::framing::Damage {
            from: Some(inches("1'")),
            to: Some(inches("2'")),
            face: LOWER,
            depth: Some(duckboard::engine::framing::Depth::Is(inches("1/2"))),
            ..duckboard::engine::framing::Damage::new(Part::Joists, DamageKind::Soft)
        };
        desk.log(damage);
    });
    assert!(says(&spot, "soft 1/2\" deep"), "{:?}", spot.reasons);
}

#[test]
fn a_joist_is_probed_at_both_ends_and_in_the_middle() {
    let probed = |spots: [&str; 3]| {
        let mut desk = sound_house();
        let said = desk.job().now.particulars().iter().filter(|(_, it)| it.value.of == joist(4)).map(|(id, _)| *id);
        said.collect::<Vec<_>>().into_iter().for_each(|id| {
            desk.withdraw(id);
        });
        for at in spots {
            desk.spot(4, DamageKind::Soft, Some((at, at)), LOWER, "0");
        }
        one(&desk, 4)
    };
    // Clear 10 ft: a foot from each end, and the middle third from 40 to 80 in.
    assert_eq!(probed(["12", "40", "108"]).fate, Fate::Stays);
    assert!(says(&probed(["12 1/16", "40", "108"]), "probe the end at the wall"));
    assert!(says(&probed(["12", "39 15/16", "108"]), "probe the middle too"));
    assert!(says(&probed(["12", "40", "107 15/16"]), "probe the other end too"));
    assert!(says(&probed(["20", "20", "20"]), "probe both ends and the middle"));
    // Past the span, and by one stretch that runs past it, the other end is not told.
    assert!(says(&probed(["12", "40", "120 1/16"]), "probe the other end too"));
    let through = |to| {
        let mut desk = house();
        crate::house::make_sound(&mut desk, 3);
        desk.spot(4, DamageKind::Soft, Some(("0", to)), LOWER, "0");
        one(&desk, 4)
    };
    assert!(says(&through("20'"), "probe the other end too") && !says(&through("10'"), "probe"));
}

/// 1 1/2 in on wood, 3 in on masonry, or a hanger (IRC R502.6 as quoted \[P2\]); a ribbon
/// from memory \[M\].
#[test]
fn ends_bear_on_enough_or_want_mending() {
    let on = |what: &'static str, bearing: &'static str| with(&[(&BEARS_ON, what), (&BEARING, bearing)]);
    let wood = |bearing| on("wood or metal", bearing);
    assert_eq!([wood("1 7/16"), wood("1 1/2"), wood("1 9/16")], [Fate::Mend, Fate::Stays, Fate::Stays]);
    let masonry = |bearing| on("masonry", bearing);
    assert_eq!([masonry("2 15/16"), masonry("3"), masonry("3 1/16")], [Fate::Mend, Fate::Stays, Fate::Stays]);
    assert_eq!([on("hanger", "1"), on("1x4 ribbon, nailed to studs", "3/4")], [Fate::Stays; 2]);
    let mut house = house();
    house.says(Part::Joists, &BEARING, "6");
    assert!(says(&one(&house, 4), "say what it bears on"), "however much bears");
}

/// Laps of 3 in (IRC R502.6.1 as quoted \[P2\]), ends held upright (R502.7 as restated \[P2\]).
#[test]
fn ends_are_held_upright_and_go_on_over_the_girder() {
    assert_eq!(with(&[(&ENDS_HELD, "nothing")]), Fate::Mend);
    assert_eq!(with(&[(&ENDS_HELD, "blocking")]), Fate::Stays);
    let laps = |lap| with(&[(&OVER_GIRDER, "laps the next"), (&LAP_OF_JOISTS, lap)]);
    assert_eq!([laps("2 15/16"), laps("3"), laps("3 1/16")], [Fate::Mend, Fate::Stays, Fate::Stays]);
    assert_eq!(with(&[(&OVER_GIRDER, "laps the next")]), Fate::Open);
    let over = ["butts, not tied", "butts, tied", "does not reach one"].map(|over| with(&[(&OVER_GIRDER, over)]));
    assert_eq!(over, [Fate::Mend, Fate::Stays, Fate::Stays]);
}

/// Of two spans the longer is designed for, as if the joist ended over the girder.
#[test]
fn a_joist_that_goes_through_is_judged_by_the_longer_of_its_spans() {
    let through = |next: &'static str| with(&[(&OVER_GIRDER, "goes through"), (&NEXT_SPAN, next)]);
    let first = |clear: &'static str| with(&[(&CLEAR_SPAN, clear)]);
    assert_eq!(with(&[(&OVER_GIRDER, "goes through")]), Fate::Open, "nobody measured the next one");
    assert_eq!(through("6 in"), Fate::Stays);
    for clear in ["9'", "10'", "10' 6", "11'", "12'", "13'", "14'", "16'"] {
        let longer = first(clear).max(first("10'"));
        assert_eq!(through(clear), longer, "{clear}");
    }
    assert!(through("14'") > Fate::Open, "too far");
    // Said of one that does not go through, it is of no span of its own.
    assert_eq!(with(&[(&NEXT_SPAN, "16'")]), Fate::Stays);
    assert_eq!(with(&[(&OVER_GIRDER, "butts, tied"), (&NEXT_SPAN, "16'")]), Fate::Stays);
}

#[test]
fn a_new_joist_of_the_same_size_ends_no_want_of_its_next_span() {
    let unmeasured = after(|desk| {
        desk.says(joist(4), &OVER_GIRDER, "goes through");
        desk.says(joist(4), &DONE, "replaced");
        desk.says(joist(4), &OVER_GIRDER, "goes through");
    });
    assert!(says(&unmeasured, "its next clear span") && !unmeasured.is_settled(), "{:?}", unmeasured.reasons);
}

/// A joist as it stands in a sound house, and what all share.
fn like() -> (Joist, Shared) {
    let desk = sound_house();
    (joists(desk.job())[3].clone(), Shared::of(desk.job()).unwrap())
}

fn fate_at(clear: Length) -> Judged {
    let (joist, shared) = like();
    judged(Joist { clear: Some(clear), ..joist }, &shared, Units::default())
}

#[test]
fn a_span_too_close_to_tell_by_tape_does_not_stay() {
    let (joist, shared) = like();
    let values =
        DesignValues::of(LumberGroup::DouglasFirLarch, Grade::Two, joist.depth.unwrap(), Edition::Since2013).unwrap();
    let may = |section| span(section, values, shared.spacing, shared.loads, joist.service(&shared)).value.allowed();
    let section = joist.section().unwrap();
    // A sixteenth less both ways, and a quarter more of span.
    let smaller = Section {
        breadth: section.breadth - Length::sixty_fourths(4),
        depth: section.depth - Length::sixty_fourths(4),
    };
    let half_bearings = Length::sixty_fourths(96);
    let sure = may(smaller) - Length::sixty_fourths(16) - half_bearings;
    let limit = may(section) - half_bearings;
    let step = Length::sixty_fourths(1);
    assert_eq!([fate_at(sure).fate, fate_at(sure + step).fate], [Fate::Stays, Fate::Open]);
    assert!([sure + step, limit].iter().all(|clear| says(&fate_at(*clear), "closer than a tape can tell")));
    assert_eq!([fate_at(limit).fate, fate_at(limit + step).fate], [Fate::Open, Fate::Sister]);
}

/// A quarter of an inch is what a tape can be off.
#[test]
fn a_joist_that_would_not_do_incised_stays_only_when_it_is_said_not_to_be() {
    let (joist, shared) = like();
    let values =
        DesignValues::of(LumberGroup::DouglasFirLarch, Grade::Two, joist.depth.unwrap(), Edition::Since2013).unwrap();
    let incised = Service { is_wet: false, is_incised: true };
    let section = joist.section().unwrap();
    // A sixteenth less both ways, as everywhere.
    let smaller = Section {
        breadth: section.breadth - Length::sixty_fourths(4),
        depth: section.depth - Length::sixty_fourths(4),
    };
    let may = span(smaller, values, shared.spacing, shared.loads, incised).value.allowed();
    let surely = may - Length::sixty_fourths(16) - Length::sixty_fourths(96);
    // A new joist goes by what is said of sisters and new joists, and an old one by what is said of those.
    for is_new in [false, true] {
        let judge = |clear, said| {
            let new_since = is_new.then_some(Since::ALWAYS);
            let [is_incised, sister_is_incised] = if is_new { [Some(false), said] } else { [said, Some(false)] };
            let shared = Shared { is_incised, sister_is_incised, ..shared.clone() };
            judged(Joist { clear: Some(clear), new_since, ..joist.clone() }, &shared, Units::default())
        };
        let step = Length::sixty_fourths(1);
        assert_eq!([judge(surely, None).fate, judge(surely + step, None).fate], [Fate::Stays, Fate::Open]);
        let which = if is_new { "sisters and new joists" } else { "the old joists" };
        assert!(says(&judge(surely + step, None), &format!("say whether {which} are")));
        assert_eq!(judge(surely + step, Some(false)).fate, Fate::Stays);
        // To say nothing is never kinder than to say yes.
        assert_eq!([judge(surely, Some(true)).fate, judge(surely + step, Some(true)).fate], [Fate::Stays, Fate::Open]);
        assert!(!says(&judge(may, Some(true)), "incised for treatment"), "it was said");
    }
}

#[test]
fn what_is_incised_is_what_was_said_of_each() {
    let said = |item: &Item, typed: Option<&str>| {
        let mut desk = house();
        if let Some(typed) = typed {
            desk.says(Part::House, item, typed);
        }
        let shared = Shared::of(desk.job()).unwrap();
        (shared.is_incised, shared.sister_is_incised, shared.assumed.join("; "))
    };
    let (old, new, assumed) = said(&INCISED, None);
    assert!(
        old.is_none() && new.is_none() && assumed.contains("old joists that are not") && assumed.contains("new joists")
    );
    for (typed, is_incised) in [("yes", true), ("no", false)] {
        let (old, new, assumed) = said(&INCISED, Some(typed));
        assert_eq!((old, new), (Some(is_incised), None));
        assert!(!assumed.contains("old joists") && assumed.contains("new joists that are not incised"));
        let (old, new, assumed) = said(&SISTER_INCISED, Some(typed));
        assert_eq!((old, new), (None, Some(is_incised)));
        assert!(assumed.contains("old joists that are not incised") && !assumed.contains("new joists"));
    }
}

/// Where nobody said it of sisters, they do only where they would incised.
#[test]
fn a_sister_that_would_not_do_incised_does_only_when_it_is_said_not_to_be() {
    let (joist, shared) = like();
    let judge = |clear, sister_is_incised| {
        let joist = Joist { clear: Some(Length::inches(clear)), ..joist.clone() };
        judged(joist, &Shared { sister_is_incised, ..shared.clone() }, Units::default())
    };
    let (mut hangs, mut does) = (0, 0);
    for clear in 150..220 {
        let [unsaid, yes, no] = [None, Some(true), Some(false)].map(|said| judge(clear, said));
        let hangs_on_it = says(&unsaid, "whether a sister does hangs on whether it is incised");
        let sisters = |judged: &Judged| judged.fate == Fate::Sister;
        assert_eq!(sisters(&unsaid), sisters(&yes), "{clear}");
        assert_eq!(hangs_on_it, sisters(&no) && !sisters(&yes), "{clear}");
        assert!(!hangs_on_it || unsaid.fate == Fate::Open);
        hangs += usize::from(hangs_on_it);
        does += usize::from(sisters(&yes));
    }
    assert!(hangs > 0 && does > 0, "{hangs} {does}");
}

#[test]
fn a_sister_beside_soft_wood_carries_alone_only_where_it_would_incised_or_is_said_not_to_be() {
    let soft = after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), LOWER, "1/2");
    });
    let (_, shared) = like();
    let carries = |clear, sister_is_incised| {
        let joist = Joist { clear: Some(Length::inches(clear)), ..soft.joist.clone() };
        let judged = judged(joist, &Shared { sister_is_incised, ..shared.clone() }, Units::default());
        !says(&judged, "it does not carry alone")
    };
    let all: Vec<_> =
        (100..160).map(|clear| [None, Some(true), Some(false)].map(|said| carries(clear, said))).collect();
    assert!(all.iter().all(|[unsaid, yes, no]| unsaid == yes && yes <= no));
    assert!(all.contains(&[false, false, true]) && all.contains(&[true; 3]) && all.contains(&[false; 3]));
}

/// Between faces, and half of what each bearing has to be.
#[test]
fn a_joist_is_designed_for_its_clear_span_and_half_of_each_bearing() {
    let (joist, _) = like();
    let clear = Length::feet(10);
    let span = |next| Joist { clear: Some(clear), next_clear: next, ..joist.clone() }.span();
    assert_eq!(span(None), Some(clear + Length::sixty_fourths(96)));
    assert_eq!(Joist { clear: None, ..joist.clone() }.span(), None);
}

/// What may be over the limit counts as over it.
#[test]
fn a_joist_is_worked_out_as_wet_from_too_close_to_tell_on() {
    let (joist, shared) = like();
    let wet = |reads| Joist { reads, ..joist.clone() }.service(&shared).is_wet;
    assert_eq!(
        [Reads::Dry, Reads::Loose, Reads::Doubted, Reads::Close, Reads::RelativelyWet, Reads::Wet].map(wet),
        [false, false, false, true, true, true]
    );
}

/// Within the sixteenth that a caliper is off, a joist has the size factor of the smaller lumber
/// ([`Source::DesignValues`]).
///
/// [`Source::DesignValues`]: duckboard::engine::sources::Source::DesignValues
#[test]
fn lumber_a_sixteenth_over_its_size_has_the_values_of_that_size() {
    let bending = |sixty_fourths| {
        let depth = Length::sixty_fourths(sixty_fourths);
        DesignValues::of(LumberGroup::DouglasFirLarch, Grade::Two, depth, Edition::Since2013).unwrap().bending
    };
    for (size, next) in [(352, 464), (464, 592), (592, 720)] {
        assert_eq!([size, size + 4].map(bending), [bending(size); 2]);
        assert_eq!([size + 5, next].map(bending), [bending(next); 2]);
        assert!(bending(size) > bending(next));
    }
}

/// 1 1/2 in on wood ([`Source::Bearing`]).
///
/// [`Source::Bearing`]: duckboard::engine::sources::Source::Bearing
#[test]
fn a_joist_that_bears_on_just_enough_is_not_short_of_it() {
    let (joist, _) = like();
    let short = |sixty_fourths| Joist { bearing: Some(Length::sixty_fourths(sixty_fourths)), ..joist.clone() };
    assert_eq!([95, 96, 97].map(|bearing| short(bearing).is_short_of_bearing()), [true, false, false]);
}

/// Loads are shared by stiffness. By hand: of 1.9 and 1.2 million psi the stiffer takes 61 %, and
/// what the other takes is 19 % over what #3 bears at 16 ft 7 in.
#[test]
fn a_sister_counts_with_its_own_stamp() {
    let beside = |clear: &'static str, species: &'static str, grade: &'static str| {
        after(|desk| {
            desk.says(Part::House, &GRADE, "SS");
            desk.says(joist(4), &CLEAR_SPAN, clear);
            desk.says(Part::House, &SISTER_SPECIES, species);
            desk.says(Part::House, &SISTER_GRADE, grade);
        })
    };
    assert_eq!(beside("16' 7", "Douglas fir-larch", "SS").fate, Fate::Sister);
    assert_eq!(beside("16' 7", "Spruce-pine-fir", "#3").fate, Fate::Engineer);
    let unknown = beside("16' 7", "unknown", "#3");
    assert!(unknown.fate == Fate::Engineer, "no #3 does: {:?}", unknown.reasons);
    let ungraded = beside("16' 7", "Douglas fir-larch", "unknown");
    assert!(says(&ungraded, "hangs on its stamp") && ungraded.fate == Fate::Open, "{:?}", ungraded.reasons);
}

/// By hand, in inches: 1 1/2 × 7 1/4 sags a 360th over 154.1 at 16 oc, and 171 + 1 1/2 are
/// asked: (172.5 / 154.1)³ × 1 1/2 is 2.104 of breadth, 0.604 of it the sister's. With both a
/// sixteenth less each way, and 1/4 more asked, the sister's is 0.794.
#[test]
fn a_sister_counts_with_its_own_breadth_and_depth() {
    let sistered = |clear: &str, sister: &[(&Item, &str)]| {
        after(|desk| {
            desk.says(joist(4), &CLEAR_SPAN, clear);
            sister.iter().for_each(|(item, typed)| {
                desk.says(Part::House, item, typed);
            });
        })
    };
    let spans_too_far = |sister: &[(&Item, &str)]| sistered("14' 3", sister);
    for (breadth, fate) in [
        ("1 1/2", Fate::Sister),
        ("13/16", Fate::Sister),
        ("3/4", Fate::Open),
        ("5/8", Fate::Open),
        ("9/16", Fate::Engineer),
    ] {
        assert_eq!(spans_too_far(&[(&SISTER_BREADTH, breadth)]).fate, fate, "{breadth}");
    }
    let shallow = sistered("13' 9", &[(&SISTER_DEPTH, "5 1/2")]);
    assert!(shallow.fate == Fate::Sister && says(&shallow, "less deep than its joist"), "{:?}", shallow.reasons);
    assert_eq!(spans_too_far(&[(&SISTER_DEPTH, "3 1/2")]).fate, Fate::Engineer);
    let deep = spans_too_far(&[(&SISTER_DEPTH, "7 5/16")]);
    assert!(says(&deep, "deeper than its joist"), "{:?}", deep.reasons);
    let as_deep = spans_too_far(&[(&SISTER_DEPTH, "7 1/4")]);
    assert!(!says(&as_deep, "deeper") && !says(&as_deep, "less deep"), "{:?}", as_deep.reasons);
    let mut unsaid = house();
    crate::house::make_sound(&mut unsaid, 9);
    unsaid.reads_moisture(4, 12, Material::Solid);
    unsaid.says(joist(4), &CLEAR_SPAN, "14'");
    let said: Vec<_> = unsaid
        .job()
        .now
        .particulars()
        .iter()
        .filter(|(_, it)| it.value.what.as_str().starts_with("sister"))
        .map(|(id, _)| *id)
        .collect();
    said.into_iter().for_each(|id| {
        unsaid.withdraw(id);
    });
    let judged = one(&unsaid, 4);
    assert!(judged.fate == Fate::Open && says(&judged, "Say how broad and deep sisters are"), "{:?}", judged.reasons);
}

#[test]
fn the_method_holds_up_to_its_own_limits() {
    let thick = |breadth| with(&[(&BREADTH, breadth)]);
    assert_eq!([thick("2 1/2"), thick("2 9/16")], [Fate::Stays, Fate::Engineer]);
    let mut desk = sound_house();
    let laid = desk.job().now.joists().values().next().unwrap().value.clone();
    let mut of = |count| {
        desk.log(Joists { count, ..laid.clone() });
        one(&desk, 1).fate
    };
    assert_eq!([of(2), of(3)], [Fate::Engineer, Fate::Stays]);
}

/// From memory: 40 psf, 30 in rooms that are slept in (IRC R301.5), 20 of dead load under tile.
#[test]
fn a_floor_carries_what_dwellings_carry_and_what_it_weighs() {
    let mut desk = sound_house();
    let live = |typed| duckboard::engine::particular::stated(Part::House, &LIVE_LOAD, typed, BareUnit::Inches);
    assert!(live("29.9").unwrap_err().contains("30 to 200 psf is accepted") && live("30").is_ok());
    let assumed = |desk: &Desk| Shared::of(desk.job()).unwrap().assumed.join("; ");
    assert!(assumed(&desk).contains("live load of 40 psf"));
    desk.says(Part::House, &LIVE_LOAD, "39.9");
    assert!(assumed(&desk).contains("slept in"), "{}", assumed(&desk));
    desk.says(Part::House, &LIVE_LOAD, "40");
    assert!(!assumed(&desk).contains("slept in") && !assumed(&desk).contains("live load"));
    for covering in ["tile under 15 in", "tile 15 in and over"] {
        let mut desk = sound_house();
        desk.says(Part::House, &COVERING, covering);
        let judged = one(&desk, 4);
        assert!(judged.fate == Fate::Open && says(&judged, "say the dead load"), "{:?}", judged.reasons);
        // What is said of a floor without tile is as good as nothing.
        for light in ["1", "9.9", "10"] {
            desk.says(Part::House, &DEAD_LOAD, light);
            let judged = one(&desk, 4);
            assert!(judged.fate == Fate::Open && says(&judged, "say the dead load"), "{light}: {:?}", judged.reasons);
        }
        for weighed in ["10.1", "20"] {
            desk.says(Part::House, &DEAD_LOAD, weighed);
            assert_eq!(one(&desk, 4).fate, Fate::Stays, "{weighed}");
        }
        desk.says(joist(4), &CLEAR_SPAN, "12'");
        assert_eq!(one(&desk, 4).fate, Fate::Sister);
    }
    desk.says(Part::House, &COVERING, "wood, long fasteners");
    assert_eq!(one(&desk, 4).fate, Fate::Stays);
}

/// What a notch at an end took is not counted off the span.
#[test]
fn what_is_left_of_a_joist_is_said_only_of_what_was_worked_out() {
    let lines = |stretch| {
        let mut desk = sound_house();
        desk.spot(4, DamageKind::Notch, Some(stretch), LOWER, "2");
        card(&desk, "Joist 4")
    };
    assert!(lines(("0", "2")).contains("but for the notch at its end it may span 12' 9\""), "{}", lines(("0", "2")));
    assert!(lines(("20", "22")).contains("what is left of it may span"), "{}", lines(("20", "22")));
}

#[test]
fn a_sister_that_is_ripped_has_lost_its_stamp() {
    let judged = after(|desk| {
        desk.says(Part::House, &SISTER_DEPTH, "9 1/4");
        desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), LOWER, "1/2");
    });
    assert!(says(&judged, "its stamp no longer counts"), "{:?}", judged.reasons);
}

/// Every line of a card.
pub fn card(desk: &Desk, title: &str) -> String {
    let canvas = Canvas { width_px: 340, height_px: 280 };
    let cards = under(desk.job(), Units::default(), canvas);
    let card = cards.into_iter().find(|card| card.title == title).unwrap();
    card.lines.into_iter().map(|line| line.text).collect::<Vec<_>>().join("\n")
}

/// The room is 10 ft long along the joists: what carries a joist takes half a foot of that
/// at each end, or as much as bears on it.
#[test]
fn a_joist_that_ends_in_the_air_by_what_was_said_is_measured_again() {
    let asks = |clear: &str, said: &[(&Item, &str)]| {
        let judged = after(|desk| {
            desk.says(joist(4), &CLEAR_SPAN, clear);
            said.iter().for_each(|(item, typed)| {
                desk.says(joist(4), item, typed);
            });
        });
        says(&judged, "far shorter than the room along it")
    };
    assert!(!asks("9'", &[]) && asks("8' 11 15/16", &[]) && asks("5'", &[]));
    assert!(asks("8'", &[(&BEARING, "11 15/16")]) && !asks("8'", &[(&BEARING, "12")]));
    assert!(!asks("5'", &[(&OVER_GIRDER, "butts, tied")]), "a girder carries it");
    assert!(!asks("5'", &[(&BEARS_ON, "hanger")]), "a header may");
}
