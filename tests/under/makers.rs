//! What is not sawn lumber: its maker's word and no table.

use crate::desk::Desk;
use crate::house::{inches, joist, joist_4_after as after, says, sound_house};
use crate::joists::{LOWER, card, finds};
use duckboard::engine::condition::Finding;
use duckboard::engine::framing::{DamageKind, Fate};
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::JoistNumber;
use duckboard::engine::survey::JoistCenter;

/// Nothing but sawn lumber is judged by the code's spans and cuts (IRC R502.8.2, its like
/// R802.7.2 as quoted \[P2\]; Wisconsin SPS 321.22(5)(c) \[P\]).
#[test]
fn what_is_not_sawn_has_no_span_here_and_is_cut_by_its_maker_alone() {
    let flanged = |change: fn(&mut Desk)| {
        after(|desk| {
            let said = [(MEMBER, "I-joist"), (BREADTH, "2 5/16"), (DEPTH, "9 1/2"), (CLEAR_SPAN, "17'")];
            said.into_iter().for_each(|(item, typed)| {
                desk.says(joist(4), &item, typed);
            });
            change(desk);
        })
    };
    let plain = flanged(|_| {});
    assert_eq!((plain.may_span, plain.fate), (None, Fate::Open));
    assert!(says(&plain, "who allows its span"), "{:?}", plain.reasons);
    let allowed = flanged(|desk| {
        desk.says(joist(4), &SPAN_ALLOWED, "its maker's table");
    });
    assert_eq!((allowed.may_span, allowed.fate), (None, Fate::Stays));
    assert_eq!(
        flanged(|desk| {
            desk.says(joist(4), &SPAN_ALLOWED, "nobody yet");
        })
        .fate,
        Fate::Open
    );
    let cut = flanged(|desk| {
        desk.hole(4, ("30", "31"), "4");
    });
    assert!(
        cut.fate == Fate::Engineer && says(&cut, "cuts only as its maker or a designer allows"),
        "{:?}",
        cut.reasons
    );
    assert_eq!(
        flanged(|desk| {
            desk.spot(4, DamageKind::Soft, Some(("1'", "2'")), LOWER, "1/16");
        })
        .fate,
        Fate::Engineer
    );
    assert_eq!(
        flanged(|desk| {
            finds(desk, Finding::Rotten, None);
        })
        .fate,
        Fate::Engineer
    );
    let kinds = ["LVL or other engineered", "glulam", "truss"].map(|kind| {
        after(|desk| {
            desk.says(joist(4), &MEMBER, kind);
        })
        .may_span
    });
    assert_eq!(kinds, [None; 3]);
}

/// 25 times 8 in are 16 ft 8 in (from memory: some 24 at most).
#[test]
fn no_maker_allows_a_span_that_no_table_has() {
    for kind in ["I-joist", "LVL or other engineered", "glulam", "truss"] {
        let allowed = |clear: &'static str| {
            after(|desk| {
                let said = [(MEMBER, kind), (DEPTH, "8"), (CLEAR_SPAN, clear), (SPAN_ALLOWED, "its maker's table")];
                said.into_iter().for_each(|(item, typed)| {
                    desk.says(joist(4), &item, typed);
                });
            })
        };
        assert_eq!([allowed("16' 7 15/16").fate, allowed("16' 8").fate], [Fate::Stays; 2]);
        let far = allowed("16' 8 1/16");
        assert!(far.fate == Fate::Open && says(&far, "more than 25 times"), "{:?}", far.reasons);
    }
}

/// A maker's table gives a span for what it is, its size, spacing and loads.
#[test]
fn a_makers_word_counts_only_for_what_it_was_looked_up_for() {
    let allowed = |then: &[(Part, &Item, &str)], again: Option<&str>| {
        after(|desk| {
            let said =
                [(MEMBER, "I-joist"), (BREADTH, "2 5/16"), (DEPTH, "9 1/2"), (SPAN_ALLOWED, "its maker's table")];
            said.into_iter().for_each(|(item, typed)| {
                desk.says(joist(4), &item, typed);
            });
            for (part, item, typed) in then {
                desk.says(part.clone(), item, typed);
            }
            again.into_iter().for_each(|again| {
                desk.says(joist(4), &SPAN_ALLOWED, again);
            });
        })
    };
    assert_eq!(allowed(&[], None).fate, Fate::Stays, "{:?}", allowed(&[], None).reasons);
    let anew = [
        (joist(4), &CLEAR_SPAN, "10' 6"),
        (joist(4), &DEPTH, "9 7/16"),
        (joist(4), &BREADTH, "2 1/4"),
        (joist(4), &MEMBER, "LVL or other engineered"),
        (Part::House, &LIVE_LOAD, "50"),
        (Part::House, &DEAD_LOAD, "15"),
        (Part::House, &COVERING, "wood, long fasteners"),
    ];
    for said in &anew {
        let since = allowed(std::slice::from_ref(said), None);
        assert!(since.fate == Fate::Open && says(&since, "look it up again for these"), "{}", said.1.what);
        for again in ["its maker's table", "a designer"] {
            assert_eq!(allowed(std::slice::from_ref(said), Some(again)).fate, Fate::Stays, "{}", said.1.what);
        }
    }
    // What is of sawn lumber alone changes nothing of it.
    assert_eq!(allowed(&[(Part::House, &GRADE, "#1")], None).fate, Fate::Stays);
    let closer = after(|desk| {
        for (item, typed) in [(MEMBER, "I-joist"), (DEPTH, "9 1/2"), (SPAN_ALLOWED, "a designer")] {
            desk.says(joist(4), &item, typed);
        }
        let of = *desk.job().now.joists().keys().next().unwrap();
        let joist = JoistNumber::new(7).unwrap();
        desk.log(JoistCenter { of, joist, center: inches("103") });
    });
    assert!(says(&closer, "look it up again for these"), "spaced anew: {:?}", closer.reasons);
}

#[test]
fn what_is_not_sawn_is_never_called_measured_and_graded() {
    let lines = |member: &str| {
        let mut desk = sound_house();
        desk.says(joist(4), &MEMBER, member);
        desk.says(joist(4), &SPAN_ALLOWED, "a designer");
        card(&desk, "Joist 4")
    };
    assert!(lines("sawn lumber").contains("Measured, probed sound, read dry, graded"));
    for kind in ["I-joist", "LVL or other engineered", "glulam", "truss"] {
        let lines = lines(kind);
        assert!(!lines.contains("graded") && lines.contains("was not worked out here"), "{lines}");
    }
}
