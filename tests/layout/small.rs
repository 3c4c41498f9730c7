//! What is found and proven is what trying everything finds.

use crate::samples::{limits, searched, strips, tiny};
use crate::{brute, format::CaseFile};
use duckboard::engine::sheets::layout::{Case, Search, Sheet, Step, check};
use proptest::prelude::*;

/// A case as a file gives it.
fn case(file: &str) -> Case {
    let file: CaseFile = serde_json::from_str(file).unwrap();
    file.case().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 10_000, ..ProptestConfig::with_cases(200) })]
    #[test]
    fn the_search_finds_what_trying_everything_finds(asked in tiny()) {
        prop_assume!(!brute::is_too_much(&asked));
        let expected = brute::fewest(&asked);
        let unsearched = Search::new(Case::new(asked.clone()).unwrap());
        prop_assert!(expected.is_none_or(|(sheets, _)| unsearched.bound() <= sheets), "by the floor's area alone");
        let search = searched(Case::new(asked).unwrap());
        let found = search.best().map(|best| (best.sheets(), best.pieces.len()));
        prop_assert_eq!(found, expected);
        if let Some(best) = search.best() {
            prop_assert!(search.is_proven());
            prop_assert!(check(search.case(), best).is_ok(), "{:?}", check(search.case(), best));
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 10_000, ..ProptestConfig::with_cases(80) })]
    /// Up to fifteen pieces on one sheet.
    #[test]
    fn a_sheet_of_many_small_pieces_is_found_like_any_other(asked in strips()) {
        prop_assume!(!brute::is_too_much(&asked));
        let expected = brute::fewest(&asked);
        let search = searched(Case::new(asked).unwrap());
        prop_assert_eq!(search.best().map(|best| (best.sheets(), best.pieces.len())), expected);
        if let Some(best) = search.best() {
            prop_assert!(search.is_proven());
            prop_assert!(check(search.case(), best).is_ok(), "{:?}", check(search.case(), best));
        }
        prop_assert_eq!(search.is_impossible(), expected.is_none());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 10_000, ..ProptestConfig::with_cases(400) })]
    /// Whatever it gives up, it never says more than it knows.
    #[test]
    fn a_search_that_gives_up_early_proves_nothing_false(
        asked in prop_oneof![tiny(), strips()],
        limits in limits(),
    ) {
        prop_assume!(!brute::is_too_much(&asked));
        let expected = brute::fewest(&asked);
        let mut search = Search::new(Case { limits, ..Case::new(asked).unwrap() });
        for _ in 0..300 {
            let is_done = search.step() == Step::Done;
            match expected {
                None => prop_assert!(search.best().is_none()),
                Some((sheets, pieces)) => {
                    prop_assert!(search.bound() <= sheets, "bound {} of {sheets}", search.bound());
                    prop_assert!(!search.is_impossible());
                    let rank = search.best().map(|best| (best.sheets(), best.pieces.len()));
                    prop_assert!(rank.is_none_or(|rank| rank >= (sheets, pieces)), "{rank:?}");
                }
            }
            if is_done {
                break;
            }
        }
        if let Some(best) = search.best() {
            prop_assert!(check(search.case(), best).is_ok(), "{:?}", check(search.case(), best));
        }
    }
}

/// A strip 8 in wide over one joist, eleven courses long: eleven pieces of 8 x 48 in with
/// their kerfs are 89 1/8 in of a sheet of 96; twelve courses take 97 1/2.
#[test]
fn a_sheet_yields_as_many_narrow_pieces_as_it_is_long() {
    let strip = |courses: i32, kerf: i32| {
        let across = courses * 768 + (courses - 1) * 2;
        let file = format!(
            r#"{{ "id": "strip", "outline": [[0, 0], [128, 0], [128, {across}], [0, {across}]], "joists": [64],
            "joist_width": 24, "sheet": {{ "length": 1536, "width": 768 }}, "gap": 2, "kerf": {kerf},
            "min_rip": 384, "min_bays": 2, "stagger_joists": 1 }}"#
        );
        let search = searched(case(&file));
        let best = search.best().unwrap();
        assert!(check(search.case(), best).is_ok());
        (best.sheets(), search.bound())
    };
    assert_eq!(strip(10, 2), (1, 1));
    assert_eq!(strip(11, 2), (1, 1), "44 ft 1 1/4 in");
    assert_eq!(strip(12, 2), (2, 2));
    assert_eq!(strip(12, 0), (1, 1), "twelve times 8 in are 96, but for the saw");
}

#[test]
fn a_floor_that_no_joints_suit_has_no_layout() {
    // 30 long, one joist at 2: whatever lies to its right is longer than a sheet.
    let file = r#"{ "id": "none", "outline": [[0, 0], [30, 0], [30, 5], [0, 5]], "joists": [2], "joist_width": 0,
        "sheet": { "length": 12, "width": 6 }, "gap": 0, "kerf": 0, "min_rip": 1, "min_bays": 1, "stagger_joists": 1 }"#;
    let search = searched(case(file));
    assert!(search.best().is_none());
    assert!(!search.is_proven());
    assert!(search.is_impossible());
}

#[test]
fn a_joist_without_width_carries_the_very_end_of_a_run() {
    // The second course ends on the joist at 3: two bays, the second of them of nothing.
    let file = r#"{ "id": "end", "outline": [[0, 0], [8, 0], [8, 6], [3, 6], [3, 7], [0, 7]], "joists": [3, 6],
        "joist_width": 0, "sheet": { "length": 12, "width": 6 }, "gap": 0, "kerf": 0, "min_rip": 1, "min_bays": 2,
        "stagger_joists": 0 }"#;
    let asked = case(file);
    let expected = brute::fewest(&asked.asked);
    let search = searched(asked);
    let best = search.best().unwrap();
    assert_eq!(check(search.case(), best), Ok(best.cut));
    assert_eq!(Some((best.sheets(), best.pieces.len())), expected);
}

#[test]
fn a_gap_wider_than_a_bay_takes_none_from_a_piece() {
    // Pieces end 9 from the joist at 0; the joists at -1 and 1 lie in its gap.
    let file = r#"{ "id": "gap", "outline": [[-14, 0], [22, 0], [0, -1]], "joists": [-1, 0, 1], "joist_width": 0,
        "sheet": { "length": 13, "width": 22 }, "gap": 18, "kerf": 0, "min_rip": 1, "min_bays": 2, "stagger_joists": 0 }"#;
    let search = searched(case(file));
    let best = search.best().unwrap();
    assert_eq!(check(search.case(), best), Ok(best.cut));
}

#[test]
fn prices_that_contradict_themselves_come_to_an_end() {
    let file = r#"{ "id": "ends", "outline": [[0, 0], [13, 0], [13, 2], [12, 2], [12, 5], [0, 5]], "joists": [3, 6, 10],
        "joist_width": 1, "sheet": { "length": 12, "width": 6 }, "gap": 2, "kerf": 0, "min_rip": 1, "min_bays": 1,
        "stagger_joists": 0 }"#;
    let asked = case(file);
    let expected = brute::fewest(&asked.asked);
    // Not a matter of time: without an end it is worked on for ever.
    let mut search = Search::new(asked);
    assert!((0..20_000).any(|_| search.step() == Step::Done), "{} steps and no end", search.steps());
    let best = search.best().unwrap();
    assert_eq!(Some((best.sheets(), best.pieces.len())), expected);
}

/// An L of 16 × 14 ft whose corners are all a little off: hundreds of classes of courses,
/// each of which has to be closed.
#[test]
fn a_floor_out_of_square_all_around_is_proven() {
    let file = r#"{ "id": "slants", "outline": [[1, 2703], [3071, 2703], [3074, 1169], [1922, 1164], [1927, 12], [9, 1]],
        "joists": [256, 512, 768, 1024, 1280, 1536, 1792, 2048, 2304, 2560, 2816], "joist_width": 24,
        "sheet": { "length": 1536, "width": 768 }, "gap": 2, "kerf": 2, "min_rip": 384, "min_bays": 2,
        "stagger_joists": 1 }"#;
    let mut search = Search::new(case(file));
    while !search.is_proven() && search.steps() < 2_000 {
        search.step();
    }
    let best = search.best().unwrap();
    assert_eq!((search.bound(), best.sheets()), (7, 7));
    assert!(check(search.case(), best).is_ok());
}

#[test]
fn fewest_pieces_where_one_of_them_is_on_hand() {
    // 9 and 3 of the upper course: the short one is there already. That course is 5 wide
    // with the lower one 4, and no other width fits what is there.
    let mut asked = case(
        r#"{ "id": "spare", "outline": [[0, 0], [12, 0], [12, 4], [14, 4], [14, 11], [0, 11]],
        "joists": [1, 5, 10, 13], "joist_width": 0, "sheet": { "length": 12, "width": 6 }, "gap": 2, "kerf": 1,
        "min_rip": 1, "min_bays": 1, "stagger_joists": 0 }"#,
    )
    .asked;
    asked.on_hand = vec![Sheet { length: 3, width: 5 }];
    let search = searched(Case::new(asked).unwrap());
    let best = search.best().unwrap();
    assert_eq!((best.sheets(), best.pieces.len()), (2, 3));
}
