//! A new joist in the place of another: what was said of the old one is not said of it.

use crate::house::{joist, joist_4_after as after, says, sound_house};
use duckboard::engine::framing::{DamageKind, Judged, Since, is_of_the_old_one};
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, Particulars};
use duckboard::engine::place::Face;

/// Joist 4 was soft, and is replaced; something was said before that, and something after.
fn replaced(before: &[(&Item, &str)], after_it: &[(Part, &Item, &str)]) -> Judged {
    after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(("30", "50")), Some(Face::LowerEdge), "3/4");
        for (item, typed) in before {
            desk.says(joist(4), item, typed);
        }
        desk.says(joist(4), &DONE, "replaced");
        for (part, item, typed) in after_it {
            desk.says(part.clone(), item, typed);
        }
    })
}

fn asks(judged: &Judged) -> Vec<String> {
    judged.unsettled().map(|reason| reason.words.clone()).collect()
}

#[test]
fn a_new_joist_is_looked_at_for_cuts_of_its_own() {
    let bears = (joist(4), &BEARING, "3 1/2");
    for before in ["all logged", "none"] {
        let asked = replaced(&[(&CUTS, before)], std::slice::from_ref(&bears));
        assert_eq!(asks(&asked).len(), 1, "{:?}", asks(&asked));
        assert!(asks(&asked)[0].starts_with("say whether the new joist has notches or holes"), "{:?}", asks(&asked));
    }
    for (of, words) in [(joist(4), "none"), (joist(4), "all logged"), (Part::Joists, "all logged")] {
        let said = replaced(&[(&CUTS, "none")], &[bears.clone(), (of, &CUTS, words)]);
        assert!(said.is_settled(), "{:?}", asks(&said));
    }
    let hidden = replaced(&[], &[bears, (joist(4), &CUTS, "cannot see")]);
    assert!(says(&hidden, "can't be seen") && !hidden.is_settled());
}

/// A notch over the sill, to get it in: deeper than a fourth of the depth it is sistered.
#[test]
fn a_new_joist_that_was_notched_to_get_it_in_is_held_to_the_rules() {
    let notched = |depth: &str| {
        after(|desk| {
            desk.spot(4, DamageKind::Soft, Some(("30", "50")), Some(Face::LowerEdge), "3/4");
            desk.does(joist(4), "replaced");
            desk.spot(4, DamageKind::Notch, Some(("0", "2")), Some(Face::LowerEdge), depth);
        })
    };
    assert!(notched("1 13/16").is_settled() && !notched("1 7/8").is_settled());
}

/// What is no kinder than what it was goes on: a girder is no nearer to a new joist, and the rim
/// joist is still there. A tie, a lap and blocking were the old one's.
#[test]
fn what_held_the_old_joist_holds_the_new_one_only_once_that_is_said_of_it() {
    let done: [(Part, &Item, &str); 2] = [(joist(4), &BEARING, "3 1/2"), (joist(4), &CUTS, "none")];
    let left = |before: &[(&Item, &str)], anew: &[(&'static Item, &'static str)]| {
        let anew = anew.iter().map(|(item, typed)| (joist(4), *item, *typed));
        asks(&replaced(before, &done.iter().cloned().chain(anew).collect::<Vec<_>>()))
    };
    assert!(left(&[], &[]).is_empty(), "two answers are all: {:?}", left(&[], &[]));
    let laps = [(&OVER_GIRDER, "laps the next"), (&LAP_OF_JOISTS, "4")];
    for over in ["goes through", "laps the next", "butts, tied"] {
        let asked = left(&[(&OVER_GIRDER, over), (&LAP_OF_JOISTS, "4"), (&NEXT_SPAN, "6'")], &[]);
        assert!(asked.len() == 1 && asked[0].contains("over the girder"), "{over}: {asked:?}");
    }
    assert_eq!(left(&laps, &[(&OVER_GIRDER, "laps the next")]), ["measure how far it laps the next over the girder"]);
    assert!(left(&laps, &[(&OVER_GIRDER, "laps the next"), (&LAP_OF_JOISTS, "3")]).is_empty());
    for held in ["blocking", "hanger"] {
        let asked = left(&[(&ENDS_HELD, held)], &[]);
        assert!(asked.len() == 1 && asked[0].contains("keeps its ends from turning over"), "{held}: {asked:?}");
        assert!(left(&[(&ENDS_HELD, held)], &[(&ENDS_HELD, held)]).is_empty());
    }
    assert!(left(&[(&ENDS_HELD, "rim joist")], &[]).is_empty());
    // Ends that were mended before it was put in are the old one's.
    let mended = replaced(&[(&OVER_GIRDER, "butts, not tied"), (&DONE, "ends mended")], &done);
    assert!(asks(&mended)[0].contains("butts the next"), "{:?}", asks(&mended));
    let tied =
        replaced(&[(&OVER_GIRDER, "butts, not tied")], &[&done[..], &[(joist(4), &DONE, "ends mended")]].concat());
    assert!(tied.is_settled(), "{:?}", asks(&tied));
}

/// The soft one was sawn, and is gone.
#[test]
fn rot_of_the_old_joist_is_judged_by_what_that_was() {
    let replaced_by = |member: &str| {
        after(|desk| {
            desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
            desk.does(joist(4), "replaced");
            desk.says(joist(4), &MEMBER, member);
        })
    };
    let engineered = "its maker or an engineer decides";
    assert!(!says(&replaced_by("LVL or other engineered"), engineered));
    let soft_since = after(|desk| {
        desk.does(joist(4), "replaced");
        desk.says(joist(4), &MEMBER, "LVL or other engineered");
        desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
    });
    assert!(says(&soft_since, engineered));
}

/// What was beside the old joist went with it.
#[test]
fn what_was_put_in_is_what_lies_there_now() {
    let put_in = |done: &[&'static str]| {
        let joist = after(|desk| {
            done.iter().for_each(|done| {
                desk.says(joist(4), &DONE, done);
            });
        })
        .joist;
        (joist.put_in.len(), joist.new_since.is_some() && joist.put_in.first() == joist.new_since.as_ref())
    };
    assert_eq!(put_in(&[]), (0, false));
    assert_eq!(put_in(&["sistered"]), (1, false));
    assert_eq!(put_in(&["sistered", "replaced"]), (1, true));
    assert_eq!(put_in(&["replaced", "sistered"]), (2, true));
    assert_eq!(put_in(&["sistered", "replaced", "sistered"]), (2, true));
}

#[test]
fn only_a_new_joist_lies_there_since_a_day() {
    let laid = |done: Option<&'static str>| {
        after(|desk| {
            done.into_iter().for_each(|done| {
                desk.says(joist(4), &DONE, done);
            });
        })
        .joist
        .laid_since()
    };
    assert_eq!([laid(None), laid(Some("sistered"))], [Since::ALWAYS; 2]);
    assert!(laid(Some("replaced")).is_after(Since::ALWAYS));
}

/// What is its own is measured anew; how far it spans is not its own.
#[test]
fn what_was_measured_of_the_old_joist_is_not_said_of_the_new_one() {
    let is_old = |item: &'static Item, typed: &str, is_replaced: bool, is_said_again: bool| {
        let mut desk = sound_house();
        desk.says(joist(4), item, typed);
        if is_replaced {
            desk.says(joist(4), &DONE, "replaced");
        }
        if is_said_again {
            desk.says(joist(4), item, typed);
        }
        is_of_the_old_one(Particulars::of(desk.job()), &joist(4), item)
    };
    for (item, typed) in [(&BREADTH, "1 1/2"), (&DEPTH, "9 1/4"), (&BEARING, "3 1/2"), (&LAP_OF_JOISTS, "4")] {
        let is_old = [(false, false), (true, false), (true, true)].map(|(new, again)| is_old(item, typed, new, again));
        assert_eq!(is_old, [false, true, false], "{}", item.what);
    }
    assert!(!is_old(&CLEAR_SPAN, "10'", true, false));
}
