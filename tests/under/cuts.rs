//! Notches and holes: just under, at and just over each limit.

use crate::desk::Desk;
use crate::house::{inches, joist, joist_4_after as after, one, says, sound_house};
use duckboard::engine::framing::{Damage, DamageKind, Depth, Fate, Judged};
use duckboard::engine::particular::Part;
use duckboard::engine::particular::list::*;
use duckboard::engine::place::Face;
use duckboard::engine::sources::Source;

const LOWER: Option<Face> = Some(Face::LowerEdge);
const UPPER: Option<Face> = Some(Face::UpperEdge);

fn notch(depth: &'static str, stretch: (&'static str, &'static str)) -> Fate {
    after(|desk| {
        desk.spot(4, DamageKind::Notch, Some(stretch), LOWER, depth);
    })
    .fate
}

/// Notches of a joist 7 1/2 in deep, each with its edge and depth.
fn notched(notches: &[(&str, &str, Option<Face>, &str)]) -> Judged {
    after(|desk| {
        desk.says(joist(4), &DEPTH, "7 1/2");
        for (from, to, edge, depth) in notches {
            desk.spot(4, DamageKind::Notch, Some((from, to)), *edge, depth);
        }
    })
}

/// Limits of a joist 7 1/2 in deep: an end notch of 1 7/8, any other of 1 1/4, 2 1/2 long,
/// none in the middle third (IRC R502.8.1 as quoted \[P2\]).
#[test]
fn notches_are_held_to_their_limits_where_they_are() {
    let of = |depth, stretch| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            desk.spot(4, DamageKind::Notch, Some(stretch), LOWER, depth);
        })
        .fate
    };
    let at_the_end = |depth| of(depth, ("0", "2"));
    assert_eq!(
        [at_the_end("1 13/16"), at_the_end("1 7/8"), at_the_end("1 15/16")],
        [Fate::Stays, Fate::Stays, Fate::Sister]
    );
    let outer = |depth| of(depth, ("1'", "14"));
    assert_eq!([outer("1 3/16"), outer("1 1/4"), outer("1 5/16")], [Fate::Stays, Fate::Stays, Fate::Sister]);
    let long = |to| of("1", ("1'", to));
    assert_eq!([long("14 7/16"), long("14 1/2"), long("14 9/16")], [Fate::Stays, Fate::Stays, Fate::Sister]);
    // A third of the depth.
    assert_eq!([outer("2 7/16"), outer("2 1/2"), outer("2 9/16")], [Fate::Sister, Fate::Sister, Fate::Engineer]);
}

/// Clear 10 ft: the middle third lies between 40 and 80 in.
#[test]
fn a_notch_is_where_it_lies_along_the_span() {
    assert_eq!([notch("1/4", ("38", "40")), notch("1/4", ("38 1/16", "40 1/16"))], [Fate::Stays, Fate::Sister]);
    assert_eq!([notch("1/4", ("80", "82")), notch("1/4", ("79 15/16", "81"))], [Fate::Stays, Fate::Sister]);
    // Only one that reaches the bearing is an end notch.
    assert_eq!([notch("1 3/4", ("0", "2")), notch("1 3/4", ("1/16", "2"))], [Fate::Stays, Fate::Sister]);
    assert_eq!([notch("1 3/4", ("118", "120")), notch("1 3/4", ("118", "119 15/16"))], [Fate::Stays, Fate::Sister]);
}

#[test]
fn nothing_stays_on_cuts_that_were_not_stated() {
    let asks = |change: fn(&mut Desk), words: &str| {
        let judged = after(change);
        assert!(judged.fate == Fate::Open && says(&judged, words), "{words}: {:?}", judged.reasons);
    };
    asks(
        |desk| {
            desk.spot(4, DamageKind::Notch, None, LOWER, "1");
        },
        "say from where to where",
    );
    asks(
        |desk| {
            desk.spot(4, DamageKind::Notch, Some(("1'", "13")), LOWER, "cannot reach");
        },
        "how deep",
    );
    // As logs of before format 1.5 say it: in an outer third, and no length.
    asks(
        |desk| {
            desk.says(joist(4), &NOTCH, "1");
            desk.says(joist(4), &NOTCH_AT, "outer third");
        },
        "how long",
    );
    let in_the_middle = after(|desk| {
        desk.says(joist(4), &NOTCH, "1");
        desk.says(joist(4), &NOTCH_AT, "middle third");
    });
    assert!(says(&in_the_middle, "in the middle third, where none is allowed"));
    asks(
        |desk| {
            desk.says(joist(4), &HOLE, "1");
        },
        "to the nearest edge",
    );
    asks(
        |desk| {
            desk.says(joist(4), &CUTS, "cannot see");
        },
        "can't be seen",
    );
    let mut unsaid = sound_house();
    let cuts =
        unsaid.job().now.particulars().iter().find(|(_, it)| it.value.what.as_str() == "cuts").map(|(id, _)| *id);
    unsaid.withdraw(cuts.unwrap());
    assert!(says(&one(&unsaid, 4), "whether it has notches or holes"));
}

/// A hole keeps 2 in from edges and from the next cut (IRC R502.8.1 as quoted \[P2\];
/// Wisconsin SPS 321.22(5) \[P\]).
#[test]
fn holes_keep_their_distance() {
    let hole = |stretches: &[(&str, &str)], to_edge: &str| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            for (from, to) in stretches {
                desk.hole(4, (from, to), to_edge);
            }
        })
        .fate
    };
    let wide = |to: &'static str| hole(&[("30", to)], "2 1/2");
    assert_eq!([wide("32 7/16"), wide("32 1/2"), wide("32 9/16")], [Fate::Stays, Fate::Stays, Fate::Engineer]);
    let edge = |to_edge: &'static str| hole(&[("30", "31")], to_edge);
    assert_eq!([edge("2 1/16"), edge("2"), edge("1 15/16")], [Fate::Stays, Fate::Stays, Fate::Sister]);
    let next = |from: &'static str| hole(&[("30", "31"), (from, "34")], "2 1/2");
    assert_eq!([next("33 1/16"), next("33"), next("32 15/16")], [Fate::Stays, Fate::Stays, Fate::Sister]);
    let notch_beside = |from: &'static str| {
        after(|desk| {
            desk.hole(4, ("30", "31"), "2 1/2");
            desk.spot(4, DamageKind::Notch, Some((from, "34")), LOWER, "1");
        })
        .fate
    };
    assert_eq!([notch_beside("33"), notch_beside("32 15/16")], [Fate::Stays, Fate::Sister]);
    let two_unplaced = after(|desk| {
        desk.says(joist(4), &HOLE, "1");
        desk.says(joist(4), &HOLE_TO_EDGE, "3");
        desk.hole(4, ("30", "31"), "3");
    });
    assert!(two_unplaced.fate == Fate::Open && says(&two_unplaced, "each of its notches and holes"));
}

/// A third of 7 1/2 in past its bearing, as far as other notches are long (judgement: IRC
/// R502.8.1 as quoted \[P2\] gives a length of a third, and none for ends by itself).
#[test]
fn an_end_notch_reaches_no_farther_past_its_bearing_than_a_notch_may_be_long() {
    let fates =
        |ends: [(&'static str, &'static str); 3]| ends.map(|(from, to)| notched(&[(from, to, LOWER, "1 7/8")]).fate);
    assert_eq!(fates([("0", "2 7/16"), ("0", "2 1/2"), ("0", "2 9/16")]), [Fate::Stays, Fate::Stays, Fate::Sister]);
    let far = [("117 9/16", "120"), ("117 1/2", "120"), ("117 7/16", "120")];
    assert_eq!(fates(far), [Fate::Stays, Fate::Stays, Fate::Sister]);
    let long = notched(&[("0", "39", LOWER, "1 3/4")]);
    assert!(says(&long, "from its bearing on") && long.reasons[0].source == Source::EndNotches, "{:?}", long.reasons);
    // As shallow as any notch may be it is too long even so.
    assert!(says(&notched(&[("0", "3", LOWER, "1")]), "notched 3\" long"));
    // What is left carries the span: 5 3/4 in of 7 1/2.
    let range = |judged: Judged| judged.may_span.unwrap().weakest.to_inches();
    let part = range(long) / range(notched(&[]));
    assert!((part - 5.75 / 7.5).abs() < 1e-6, "{part}");
    let short = range(notched(&[("0", "2 1/2", LOWER, "1 3/4")])) / range(notched(&[]));
    assert!((short - 1.0).abs() < 1e-6, "{short}");
}

/// As logs of before format 1.5 say it: at an end, and how long.
#[test]
fn an_end_notch_of_which_nobody_said_how_long_it_is_is_asked_for() {
    let said = |long: Option<&'static str>| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            desk.says(joist(4), &NOTCH, "1 3/4");
            desk.says(joist(4), &NOTCH_AT, "end");
            long.into_iter().for_each(|long| {
                desk.says(joist(4), &NOTCH_LENGTH, long);
            });
        })
    };
    assert!(said(None).fate == Fate::Open && says(&said(None), "how long"));
    assert_eq!([said(Some("2 1/2")).fate, said(Some("2 9/16")).fate], [Fate::Stays, Fate::Sister]);
}

/// Past a third of the depth it is one anywhere.
#[test]
fn a_notch_that_nobody_placed_is_an_engineers_when_it_is_deeper_than_a_third() {
    let unplaced = |depth: &'static str| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            desk.spot(4, DamageKind::Notch, None, LOWER, depth);
        })
        .fate
    };
    let engineers = ["2 7/16", "2 1/2", "2 9/16"].map(|depth| unplaced(depth) == Fate::Engineer);
    assert_eq!(engineers, [false, false, true]);
}

/// Clear 10 ft: what is cut off a joist there is cut off its next span, or where it bears. One that
/// begins before it takes of this span too: with 2 1/4 in less of its depth, it does not carry that.
#[test]
fn a_notch_past_its_span_takes_nothing_of_it() {
    let spans = |stretch| {
        let judged = after(|desk| {
            desk.says(joist(4), &CLEAR_SPAN, "10'");
            desk.spot(4, DamageKind::Notch, Some(stretch), LOWER, "2 1/4");
        });
        !says(&judged, "by its wood it may span")
    };
    assert_eq!([("119 15/16", "122"), ("10'", "122"), ("120 1/16", "122")].map(spans), [false, true, true]);
}

/// Clear 10 ft: past that is another span, or nobody measured this one.
#[test]
fn what_lies_beyond_the_span_that_was_measured_is_unknown_and_at_no_end() {
    assert_eq!([notch("1 3/4", ("118", "120")), notch("1/4", ("118", "120 1/16"))], [Fate::Stays, Fate::Open]);
    let beyond = "beyond the first span of 10' 0\"";
    let slot = after(|desk| {
        desk.spot(4, DamageKind::Notch, Some(("15'", "15' 2")), LOWER, "1 3/4");
    });
    assert!(slot.fate == Fate::Open && says(&slot, beyond), "{:?}", slot.reasons);
    assert_eq!(notch("2 1/2", ("15'", "15' 2")), Fate::Engineer, "a third of the depth, wherever it is");
    let hole = after(|desk| {
        desk.hole(4, ("11'", "11' 1"), "3");
    });
    assert!(hole.fate == Fate::Open && says(&hole, beyond), "{:?}", hole.reasons);
    let soft = |from, to| {
        after(|desk| {
            desk.spot(4, DamageKind::Soft, Some((from, to)), LOWER, "1/2");
        })
    };
    assert!(says(&soft("119", "120 1/16"), beyond) && !says(&soft("119", "120"), beyond));
    let mut settled = sound_house();
    settled.spot(4, DamageKind::Soft, Some(("11'", "12'")), LOWER, "1/2");
    settled.says(joist(4), &DONE, "sistered");
    assert!(!one(&settled, 4).is_settled());
    // An awl that stopped speaks against nothing.
    let hard = after(|desk| {
        desk.spot(4, DamageKind::Soft, Some(("15'", "15'")), LOWER, "0");
    });
    assert_eq!(hard.fate, Fate::Stays);
}

/// A third of 7 1/2 in is 2 1/2: as far apart as a notch may be long they are two (judgement).
#[test]
fn notches_close_to_each_other_count_as_one() {
    let second = |from| notched(&[("12", "14", LOWER, "1"), (from, "17", LOWER, "1")]);
    assert_eq!([second("16 9/16").fate, second("16 1/2").fate], [Fate::Stays; 2]);
    let close = second("16 7/16");
    assert!(close.fate == Fate::Sister && says(&close, "notched 5\" long"), "{:?}", close.reasons);
    assert_eq!(close.reasons[0].source, Source::NotchesTogether);
    let in_slices = notched(&[("16", "18", LOWER, "1"), ("12", "14", LOWER, "1"), ("14", "16", LOWER, "1")]);
    assert!(says(&in_slices, "notched 6\" long"), "{:?}", in_slices.reasons);
}

/// A sixth of 7 1/2 in is 1 1/4.
#[test]
fn notches_above_and_below_take_of_the_same_depth() {
    let both =
        |edges: [Option<Face>; 2], depth| notched(&[("24", "26", edges[0], depth), ("24", "26", edges[1], depth)]);
    assert_eq!([both([LOWER, UPPER], "5/8").fate, both([LOWER, UPPER], "11/16").fate], [Fate::Stays, Fate::Sister]);
    assert_eq!(both([LOWER, LOWER], "1 1/4").fate, Fate::Stays, "one of them is in the other");
    assert_eq!(both([LOWER, None], "11/16").fate, Fate::Sister, "nobody said at which edge: it may be across");
    assert_eq!(both([LOWER, UPPER], "1 5/16").fate, Fate::Engineer, "more than a third together");
}

/// The nearest edge is no farther than the other one: twice that distance and the hole's
/// height are no more than the depth.
#[test]
fn a_hole_that_cannot_be_where_it_is_said_to_be_is_measured_again() {
    let at = |to_edge: &'static str| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            desk.hole(4, ("30", "31"), to_edge);
        })
    };
    assert_eq!([at("3 3/16").fate, at("3 1/4").fate, at("3 5/16").fate], [Fate::Stays, Fate::Stays, Fate::Open]);
    assert!(says(&at("5"), "cannot be 5\" from its nearest edge"), "{:?}", at("5").reasons);
}

/// A joist 5 1/2 in deep leaves 1 1/2 between 2 in and 2 in.
#[test]
fn a_hole_leaves_two_inches_at_both_edges() {
    let wide = |to: &'static str, depth: &'static str| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, depth);
            desk.says(joist(4), &CLEAR_SPAN, "9'");
            desk.hole(4, ("30", to), "2");
        })
    };
    assert_eq!([wide("31 1/2", "5 1/2").fate, wide("31 9/16", "5 1/2").fate], [Fate::Stays, Fate::Sister]);
    assert!(says(&wide("31", "3 1/2"), "none is allowed in a joist so shallow"), "{:?}", wide("31", "3 1/2").reasons);
}

#[test]
fn a_hole_is_as_high_as_it_was_measured_and_unknown_until_then() {
    let slot = |high: Option<&str>| {
        after(|desk| {
            desk.says(joist(4), &DEPTH, "7 1/2");
            desk.slot(4, ("30", "31"), high.map(inches), Some("2"));
        })
    };
    assert!(slot(None).fate == Fate::Open && says(&slot(None), "how high"), "{:?}", slot(None).reasons);
    assert_eq!([slot(Some("2 1/2")).fate, slot(Some("2 9/16")).fate], [Fate::Stays, Fate::Engineer]);
}

#[test]
fn cuts_of_no_size_are_unknown() {
    let zero = |change: fn(&mut Desk)| {
        let judged = after(change);
        assert!(judged.fate == Fate::Open && says(&judged, "of 0"), "{:?}", judged.reasons);
    };
    zero(|desk| {
        desk.spot(4, DamageKind::Notch, Some(("20", "20")), LOWER, "1");
    });
    zero(|desk| {
        desk.spot(4, DamageKind::Notch, Some(("20", "21")), LOWER, "0");
    });
    zero(|desk| {
        desk.hole(4, ("30", "30"), "3");
    });
    zero(|desk| {
        desk.slot(4, ("30", "31"), Some(inches("0")), Some("3"));
    });
}

/// The rules hold notches in edges to a part of the depth: none holds for a side.
#[test]
fn a_notch_in_a_side_is_an_engineers_and_takes_of_the_breadth() {
    let (near, far) = (Some(Face::NearSide), Some(Face::FarSide));
    for (from, to) in [("0", "2"), ("30", "32"), ("59", "61"), ("11'", "11' 1")] {
        let small = notched(&[(from, to, near, "1/16")]);
        assert!(small.fate == Fate::Engineer && says(&small, "in a side"), "{from}: {:?}", small.reasons);
    }
    assert_eq!(notched(&[("30", "32", LOWER, "1/16")]).fate, Fate::Stays);
    let range = |judged: Judged| judged.may_span.map(|range| range.weakest.to_inches());
    let whole = range(notched(&[])).unwrap();
    // It spans by bending: as the square root of the breadth, here of two thirds.
    let is_two_thirds = |judged: Judged| {
        let part = range(judged).unwrap() / whole;
        assert!((part - libm::sqrt(2.0 / 3.0)).abs() < 1e-6, "{part}");
    };
    is_two_thirds(notched(&[("30", "32", near, "1/2")]));
    is_two_thirds(notched(&[("30", "32", near, "1/4"), ("60", "62", far, "1/4")]));
    is_two_thirds(notched(&[("30", "32", near, "1/2"), ("60", "62", near, "1/4")]));
    let through = notched(&[("4", "6", near, "3/4"), ("4", "6", far, "3/4")]);
    assert!(through.may_span.is_none() && says(&through, "nothing sound is left"), "{:?}", through.reasons);
    // With what is soft there.
    let soft = |notch: Option<&'static str>| {
        after(|desk| {
            desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), near, "1/16");
            notch.into_iter().for_each(|depth| {
                desk.spot(4, DamageKind::Notch, Some(("30", "32")), near, depth);
            });
        })
    };
    assert!(!says(&soft(Some("1/8")), "a third or more") && says(&soft(Some("3/16")), "a third or more"));
    // Beside one in an edge each is judged by itself.
    let beside = notched(&[("12", "14", LOWER, "1 1/4"), ("14", "16", near, "1/4")]);
    assert!(!says(&beside, "notched 4\" long"), "{:?}", beside.reasons);
}

#[test]
fn a_hole_of_which_nobody_said_from_where_to_where_it_is_is_unknown() {
    let hole = |from: Option<&'static str>, to: Option<&'static str>| {
        after(|desk| {
            let [from, to] = [from, to].map(|at| at.map(inches));
            let depth = Some(Depth::Is(inches("1")));
            let to_edge = Some(inches("3"));
            desk.log(Damage { from, to, depth, to_edge, ..Damage::new(joist(4), DamageKind::Hole) });
        })
    };
    for (from, to) in [(None, None), (Some("30"), None), (None, Some("31"))] {
        let judged = hole(from, to);
        assert!(judged.fate == Fate::Open && says(&judged, "from where to where"), "{:?}", judged.reasons);
    }
    assert_eq!(hole(Some("30"), Some("31")).fate, Fate::Stays);
}

#[test]
fn a_cut_that_was_logged_after_somebody_saw_to_the_others_is_not_seen_to() {
    let is_settled = |all: &[(&str, &str)], member: Option<&str>, then: Option<(&str, &str)>| {
        after(|desk| {
            member.into_iter().for_each(|member| {
                desk.says(joist(4), &MEMBER, member);
                desk.says(joist(4), &SPAN_ALLOWED, "a designer");
            });
            for at in all {
                desk.hole(4, *at, "3");
            }
            desk.says(joist(4), &DONE, "as the engineer says");
            then.into_iter().for_each(|at| {
                desk.hole(4, at, "3");
            });
        })
        .is_settled()
    };
    let two = [("50", "51"), ("52", "53")];
    assert!(is_settled(&two, None, None) && !is_settled(&two, None, Some(("54", "55"))), "less than 2 in apart");
    assert!(is_settled(&two, Some("I-joist"), None) && !is_settled(&two, Some("I-joist"), Some(("90", "91"))));
}

#[test]
fn holes_of_a_joist_that_was_replaced_are_not_beside_those_of_the_new_one() {
    let is_apart = |replaced: bool| {
        let judged = after(|desk| {
            desk.hole(4, ("50", "51"), "3");
            if replaced {
                desk.does(joist(4), "replaced");
            }
            desk.hole(4, ("52", "53"), "3");
        });
        judged.unsettled().any(|reason| reason.words.contains("from the next cut"))
    };
    assert!(is_apart(false) && !is_apart(true));
}

#[test]
fn a_hole_beyond_the_span_is_where_the_part_of_it_is_that_lies_there() {
    let at = |from: &str| {
        after(|desk| {
            desk.hole(4, (from, "121"), "2 1/2");
        })
    };
    for (from, words) in
        [("119", "a hole at 10' 1\""), ("120", "a hole at 10' 1\""), ("120 1/2", "a hole at 10' 0 1/2\"")]
    {
        assert!(says(&at(from), &format!("{words}, beyond the first span")), "{from}: {:?}", at(from).reasons);
    }
}

/// 1 1/4 in deep and 2 1/2 in long are allowed in an outer third of a joist 7 1/2 in deep.
#[test]
fn a_notch_that_is_too_deep_or_too_long_takes_of_the_joist_and_another_does_not() {
    let may_span = |notch: Option<((&str, &str), &str)>| {
        after(|desk| {
            desk.says(Part::Joists, &DEPTH, "7 1/2");
            notch.into_iter().for_each(|(stretch, depth)| {
                desk.spot(4, DamageKind::Notch, Some(stretch), LOWER, depth);
            });
        })
    };
    let weakest = |judged: &Judged| judged.may_span.unwrap().weakest;
    let whole = weakest(&may_span(None));
    assert_eq!(weakest(&may_span(Some((("20", "22"), "1")))), whole);
    assert!(
        weakest(&may_span(Some((("20", "26"), "1")))) < whole
            && weakest(&may_span(Some((("20", "22"), "1 1/2")))) < whole
    );
    let deep = may_span(Some((("20", "22"), "1 1/2")));
    let notched = deep.reasons.iter().find(|it| it.words.contains("notched")).unwrap();
    assert!(notched.words.contains("in an outer third") && notched.source == Source::JoistCuts, "{notched:?}");
}
