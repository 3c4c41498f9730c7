//! What was looked at again, logged twice, or logged on a joist that was seen to.

use crate::desk::Desk;
use crate::house::{inches, joist, joist_4_after as after, one, says, sound_house};
use duckboard::engine::framing::{Damage, DamageKind, Depth, Fate, Judged};
use duckboard::engine::job::Record;
use duckboard::engine::particular::list::*;
use duckboard::engine::place::Face;
use duckboard::engine::units::Typed;

const LOWER: Option<Face> = Some(Face::LowerEdge);

/// A spot: from where to where, on which face, how deep.
type Logged<'a> = (Option<(&'a str, &'a str)>, Option<Face>, &'a str);

/// Spots of joist 4 one after the other.
fn spots(kind: DamageKind, all: &[Logged<'_>]) -> Judged {
    after(|desk| log(desk, kind, all))
}

fn log(desk: &mut Desk, kind: DamageKind, all: &[Logged<'_>]) {
    for (stretch, face, depth) in all {
        if *depth == "not said" {
            let (from, to) = stretch.map(|(from, to)| (inches(from), inches(to))).unzip();
            desk.log(Damage { from, to, face: *face, ..Damage::new(joist(4), kind) });
        } else {
            desk.spot(4, kind, *stretch, *face, depth);
        }
    }
}

const HIDDEN: Logged<'static> = (Some(("30", "60")), LOWER, "cannot reach");

#[test]
fn where_nobody_could_reach_an_awl_tells_once_the_floor_is_open() {
    let then = |all: &[(&str, &str, &str)]| {
        let later: Vec<_> = all.iter().map(|(from, to, depth)| (Some((*from, *to)), LOWER, *depth)).collect();
        let all: Vec<_> = [HIDDEN].into_iter().chain(later).collect();
        spots(DamageKind::Soft, &all)
    };
    assert!(says(&then(&[]), "look again once the floor is open, and log there how deep"), "{:?}", then(&[]).reasons);
    assert_eq!(then(&[("30", "60", "0")]).fate, Fate::Stays, "the awl stops there");
    let soft = then(&[("30", "60", "1/2")]);
    assert!(soft.fate == Fate::Sister && !says(&soft, "can't reach"), "{:?}", soft.reasons);
    // From end to end, by one or by several; what is no wider than a hand is no gap.
    let is_left = |all: &[(&str, &str, &str)]| says(&then(all), "can't reach");
    assert_eq!(
        [("36", "54"), ("36 1/16", "54"), ("36", "53 15/16")].map(|(from, to)| is_left(&[(from, to, "0")])),
        [false, true, true]
    );
    assert!(!is_left(&[("48", "60", "0"), ("30", "42", "0")]) && is_left(&[("48 1/16", "60", "0"), ("30", "42", "0")]));
    assert!(is_left(&[("30", "36", "0")]) && is_left(&[("61", "70", "0")]), "most of it was not looked at");
}

#[test]
fn what_was_probed_before_or_elsewhere_tells_nothing_of_what_nobody_could_reach() {
    let at = |face| (Some(("30", "60")), face, "0");
    let is_left = |all: &[_]| says(&spots(DamageKind::Soft, all), "can't reach");
    assert!(is_left(&[at(LOWER), HIDDEN]), "probed before");
    assert!(is_left(&[HIDDEN, at(Some(Face::NearSide))]), "on another face");
    assert!(is_left(&[HIDDEN, at(None)]), "nobody said on which");
    let anywhere = (None, None, "cannot reach");
    assert!(is_left(&[anywhere, at(LOWER)]));
    assert!(says(&spots(DamageKind::Soft, &[anywhere]), "then take this one back"));
    let of_any_face = (Some(("30", "60")), None, "cannot reach");
    assert!(is_left(&[of_any_face, at(LOWER)]), "that face could perhaps be reached all along");
    assert!(says(&spots(DamageKind::Soft, &[of_any_face]), "of which nobody said on which side it is"));
    let another = after(|desk| {
        log(desk, DamageKind::Soft, &[HIDDEN]);
        desk.spot(5, DamageKind::Soft, Some(("30", "60")), LOWER, "0");
    });
    assert!(says(&another, "can't reach"));
}

/// Wood does not heal: what was found soft is measured by a depth, and not by an awl that stops.
#[test]
fn a_soft_spot_of_unknown_depth_is_measured_by_a_later_one_that_goes_in() {
    let then = |depth| {
        let first = (Some(("30", "40")), LOWER, "not said");
        spots(DamageKind::Soft, &[first, (Some(("30", "40")), LOWER, depth)])
    };
    let open = "found soft";
    assert!(says(&spots(DamageKind::Soft, &[(Some(("30", "40")), LOWER, "not said")]), open));
    assert!(!says(&then("1/2"), open) && then("1/2").fate == Fate::Sister, "{:?}", then("1/2").reasons);
    assert!(says(&then("0"), "yet the awl stops there: log how deep it goes in"), "{:?}", then("0").reasons);
}

/// Logged again with its face, as deep, it is that spot; elsewhere or less deep it is another.
#[test]
fn a_soft_spot_without_a_face_is_told_by_a_later_one_that_has_one() {
    let faceless = (Some(("30", "40")), None, "1/2");
    let then = |stretch, face, depth| spots(DamageKind::Soft, &[faceless, (Some(stretch), face, depth)]);
    let open = "log it again there, at an edge, a side or an end";
    assert!(says(&spots(DamageKind::Soft, &[faceless]), open));
    let again = then(("30", "40"), LOWER, "1/2");
    assert!(!says(&again, open) && again.fate == Fate::Sister, "{:?}", again.reasons);
    let is_left = |depth| says(&then(("30", "40"), LOWER, depth), open);
    assert_eq!([is_left("3/8"), is_left("7/16")], [true, false], "an awl is off by 1/16");
    assert!(says(&then(("60", "70"), LOWER, "1/2"), open) && says(&then(("30", "40"), None, "1/2"), open));
}

/// As far as two tapes are off: a larger one stands for a smaller.
#[test]
fn a_cut_that_two_phones_measured_is_one() {
    let holes = |other: bool, stretches: [(&str, &str); 2], to_edge: [&str; 2]| {
        after(|desk| {
            desk.hole(4, stretches[0], to_edge[0]);
            let again = desk.hole(4, stretches[1], to_edge[1]);
            if other {
                let again_by_another = desk.job().now.damages().get(&again).unwrap().value.clone();
                desk.withdraw(again);
                let mut pen = crate::desk::other_phone();
                (0..500).for_each(|_| drop(pen.record(again_by_another.clone())));
                desk.book.add(Record::of(pen.record(again_by_another)).unwrap());
            }
        })
    };
    let next = "from the next cut";
    let near = [("50", "51"), ("50", "51 1/8")];
    assert!(!says(&holes(true, near, ["3", "3"]), next), "{:?}", holes(true, near, ["3", "3"]).reasons);
    assert!(says(&holes(false, near, ["3", "3"]), next), "one phone that logs two means two");
    for side_by_side in [[("50", "51"), ("51", "52")], [("51", "52"), ("50", "51")]] {
        assert!(says(&holes(true, side_by_side, ["3", "3"]), next), "they are two");
    }
    assert!(says(&holes(true, [("50", "51"), ("52 1/16", "53 1/16")], ["3", "3"]), next));
    let edges = |its| says(&holes(true, near, ["3", its]), next);
    assert_eq!([edges("2 7/8"), edges("2 13/16")], [false, true]);
    let high = |end| says(&holes(true, [("50", "51"), ("50", end)], ["3", "3"]), next);
    assert_eq!([high("51 1/8"), high("51 3/16")], [false, true]);
    // The larger one stands, whichever came first.
    let [first, later] = [near, [near[1], near[0]]].map(|both| holes(true, both, ["3", "2 15/16"]).joist.spots.holes);
    assert_eq!((first.len(), first[0].to_edge), (1, Some(inches("2 15/16").value)));
    assert_eq!(later.len(), 2, "the one is longer and the other nearer the edge: both stand");
    // Of two as large the first stands.
    let alike = holes(true, [("50", "51"), ("50 1/2", "51 1/2")], ["3", "3"]).joist.spots.holes;
    assert_eq!((alike.len(), alike[0].stretch.from), (1, Some(inches("50").value)));
}

#[test]
fn a_cut_that_was_not_measured_is_measured_by_the_same_one_logged_whole() {
    let notch = |first, later: &[_]| {
        let all: Vec<_> = [first].into_iter().chain(later.iter().copied()).collect();
        spots(DamageKind::Notch, &all)
    };
    let at = |from, to, depth| (Some((from, to)), LOWER, depth);
    let open = "measure how deep its notch is";
    for unmeasured in ["not said", "cannot reach"] {
        let first = at("20", "22", unmeasured);
        assert!(says(&notch(first, &[]), "log it again at the same place"), "{:?}", notch(first, &[]).reasons);
        let again = notch(first, &[at("20", "22", "1")]);
        assert_eq!(again.fate, Fate::Stays, "{:?}", again.reasons);
        // Both ends within an inch, as a tape may be off.
        let is_left = |from, to| says(&notch(first, &[at(from, to, "1")]), open);
        assert_eq!([is_left("21", "22"), is_left("21 1/16", "22")], [false, true]);
        assert_eq!([is_left("20", "21"), is_left("20", "20 15/16")], [false, true]);
        assert!(says(&notch(first, &[(Some(("20", "22")), Some(Face::UpperEdge), "1")]), open), "in the other edge");
        assert!(says(&notch(first, &[(Some(("50", "52")), LOWER, "1")]), open), "elsewhere");
    }
    let nowhere = (None, LOWER, "not said");
    assert!(says(&notch(nowhere, &[at("20", "22", "1")]), "take this one back"), "it may be another");
    // Said deeper before, it is no other's.
    let unplaced = after(|desk| {
        let (from, depth) = (Some(inches("20")), Some(Depth::Is(inches("2"))));
        desk.log(Damage { from, depth, face: LOWER, ..Damage::new(joist(4), DamageKind::Notch) });
        log(desk, DamageKind::Notch, &[at("20", "22", "1")]);
    });
    assert!(says(&unplaced, "notched 2\" deep: say from where to where"), "{:?}", unplaced.reasons);
}

#[test]
fn a_hole_that_was_not_measured_is_measured_by_the_same_one_logged_whole() {
    let inch = || Some(Typed::new("1", inches("1").value));
    let hole = |high, to_edge, again: Option<&str>| {
        after(|desk| {
            desk.slot(4, ("50", "51"), high, to_edge);
            again.into_iter().for_each(|to_edge| {
                desk.hole(4, ("50", "51"), to_edge);
            });
        })
    };
    assert!(says(&hole(inch(), None, None), "measure from its hole to the nearest edge; log it again"));
    assert_eq!(hole(inch(), None, Some("3")).fate, Fate::Stays, "{:?}", hole(inch(), None, Some("3")).reasons);
    assert_eq!(hole(None, Some("3"), Some("3")).fate, Fate::Stays);
    // A sixteenth is what a tape may be off; nearer to the edge than that it was said to be another.
    assert_eq!(hole(None, Some("2 15/16"), Some("3")).fate, Fate::Stays);
    assert!(hole(None, Some("2 7/8"), Some("3")).fate > Fate::Stays);
}

#[test]
fn a_cut_that_was_logged_twice_is_one() {
    let holes = |second: (&'static str, &'static str), to_edge: &'static str| {
        after(|desk| {
            desk.hole(4, ("50", "51"), "3");
            desk.hole(4, second, to_edge);
        })
    };
    assert_eq!(holes(("50", "51"), "3").fate, Fate::Stays, "{:?}", holes(("50", "51"), "3").reasons);
    assert!(says(&holes(("50 1/16", "51 1/16"), "3"), "a hole 0\" from the next cut"), "another one");
    assert!(holes(("50", "51"), "2 7/8").fate > Fate::Stays);
    let sistered = after(|desk| {
        desk.hole(4, ("50", "51"), "1");
        desk.says(joist(4), &DONE, "sistered");
        desk.hole(4, ("50", "51"), "1");
    });
    assert!(sistered.is_settled(), "{:?}", sistered.reasons);
    let bored_in_the_new_one = after(|desk| {
        desk.hole(4, ("50", "51"), "1");
        desk.does(joist(4), "replaced");
        desk.hole(4, ("50", "51"), "1");
    });
    assert!(!bored_in_the_new_one.is_settled());
}

/// A notch of 5/8 in, 1 in long, in an outer third, and a hole of 1 in, 3 in from the edge, are
/// within the rules (IRC R502.8.1 as quoted \[P2\]).
#[test]
fn a_cut_within_the_rules_brings_no_decay_back_that_was_seen_to() {
    let after = |done: &str, cut: fn(&mut Desk)| {
        let mut desk = sound_house();
        desk.spot(4, DamageKind::Soft, Some(("30", "50")), LOWER, "3/4");
        desk.does(joist(4), done);
        assert!(one(&desk, 4).is_settled(), "{done}");
        cut(&mut desk);
        one(&desk, 4)
    };
    let notch = |desk: &mut Desk| log(desk, DamageKind::Notch, &[(Some(("14", "15")), LOWER, "5/8")]);
    let hole = |desk: &mut Desk| {
        desk.hole(4, ("60", "61"), "3");
    };
    for done in ["sistered", "replaced"] {
        for cut in [notch, hole] {
            assert!(after(done, cut).is_settled(), "{done}: {:?}", after(done, cut).reasons);
        }
    }
}

/// Half of the depth of 7 1/4 in: soft 3/4 and the quarter beyond it are less than a third, and so is
/// a notch of 1 5/16; together they are more.
#[test]
fn a_cut_that_makes_decay_worse_asks_for_more_than_was_done() {
    let then = |done: &str, depth: &str| {
        let mut desk = sound_house();
        desk.spot(4, DamageKind::Soft, Some(("30", "50")), LOWER, "3/4");
        desk.does(joist(4), done);
        log(&mut desk, DamageKind::Notch, &[(Some(("14", "15")), LOWER, depth)]);
        one(&desk, 4)
    };
    let worse = then("sistered", "1 3/8");
    assert!(!worse.is_settled() && says(&worse, "a third or more"), "{:?}", worse.reasons);
    assert!(then("sistered", "1 3/16").is_settled(), "{:?}", then("sistered", "1 3/16").reasons);
    // In a new joist a notch adds to no rot of the old one.
    let in_the_new = then("replaced", "1 3/8");
    assert!(!says(&in_the_new, "a third or more") && !in_the_new.is_settled(), "{:?}", in_the_new.reasons);
}
