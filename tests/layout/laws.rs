//! What holds of every search, whatever the case.

use crate::samples::{case, tiny};
use duckboard::engine::sheets::layout::{Case, Search, Step, check};
use proptest::prelude::*;

/// A few of each sort: a rectangle, an L, a stepped patch, a hall, a wall off square.
const SOME: [&str; 5] = ["p05-rect", "p11-L", "p18-bath", "p19-hall", "p24-oblique"];

#[test]
fn each_better_layout_keeps_the_rules_and_no_bound_passes_it() {
    for id in SOME {
        let mut search = Search::new(case(id));
        let (mut rank, mut bound) = (None, 0);
        for _ in 0..300 {
            let step = search.step();
            if let Some(best) = search.best() {
                assert!(rank.is_none_or(|rank| best.rank() <= rank), "{id}: never worse");
                assert!(search.bound() >= bound && search.bound() <= best.sheets(), "{id}");
                assert_eq!(step == Step::Better, rank != Some(best.rank()), "{id}: told when it is better");
                if step == Step::Better {
                    assert_eq!(check(search.case(), best), Ok(best.cut), "{id}");
                }
                rank = Some(best.rank());
                bound = search.bound();
            }
        }
        assert!(rank.is_some(), "{id}: a layout is there");
    }
}

#[test]
fn a_layout_is_there_after_one_step() {
    for id in SOME {
        let mut search = Search::new(case(id));
        assert_eq!(search.step(), Step::Better, "{id}");
    }
}

#[test]
fn a_search_left_and_taken_up_again_ends_as_one_that_was_not() {
    let mut one = Search::new(case("p11-L"));
    for _ in 0..50 {
        one.step();
    }
    let mut other = one.clone();
    let mut anew = Search::new(case("p11-L"));
    for _ in 0..50 {
        anew.step();
    }
    for _ in 0..150 {
        assert_eq!(one.step(), other.step());
        anew.step();
    }
    assert_eq!(one.best(), other.best());
    assert_eq!((one.best(), one.bound()), (anew.best(), anew.bound()));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]
    #[test]
    fn the_order_of_corners_and_joists_is_nothing_to_the_result(asked in tiny(), turn in 0..4_usize) {
        let mut turned = asked.clone();
        let corners = turned.outline.len();
        turned.outline.rotate_left(turn % corners);
        turned.outline.reverse();
        turned.joists.reverse();
        let ranks = |asked| {
            let mut search = Search::new(Case::new(asked).unwrap());
            while search.step() != Step::Done {}
            search.best().map(|best| (best.sheets(), best.pieces.len()))
        };
        prop_assert_eq!(ranks(asked), ranks(turned));
    }

    #[test]
    fn any_request_is_worked_on_or_refused_in_words(
        outline in prop::collection::vec((-40..40_i32, -40..40_i32), 0..7),
        on_hand in prop::collection::vec((-1..20_i32, -1..20_i32), 0..3),
        joists in prop::collection::vec(-50..50_i32, 0..9),
        sizes in prop::collection::vec(-3..30_i32, 6),
        counts in (0..4_usize, 0..4_usize),
    ) {
        use duckboard::engine::sheets::layout::{Request, Sheet};
        let asked = Request {
            outline,
            holes: Vec::new(),
            joists,
            joist_width: sizes[0],
            sheet: Sheet { length: sizes[1], width: sizes[2] },
            on_hand: on_hand.into_iter().map(|(length, width)| Sheet { length, width }).collect(),
            gap: sizes[3],
            kerf: sizes[4],
            min_rip: sizes[5],
            min_bays: counts.0,
            stagger: counts.1,
        };
        match Case::new(asked) {
            Ok(case) => {
                let mut search = Search::new(case);
                for _ in 0..20 {
                    if search.step() == Step::Better {
                        let best = search.best().unwrap();
                        prop_assert_eq!(check(search.case(), best), Ok(best.cut));
                    }
                }
            }
            Err(faults) => prop_assert!(faults.iter().all(|fault| !fault.to_string().is_empty()) && !faults.is_empty()),
        }
    }
}
