//! Cases to work on.

use crate::format::CaseFile;
use duckboard::engine::sheets::layout::{Case, Layout, Request, Search, Sheet, Step};
use proptest::prelude::*;

/// A committed case by its name.
pub fn case(id: &str) -> Case {
    let path = format!("{}/tests/fixtures/layout_cases/{id}.json", env!("CARGO_MANIFEST_DIR"));
    let file: CaseFile = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert_eq!(file.id, id);
    file.case().unwrap()
}

/// Runs a search to its end.
pub fn searched(case: Case) -> Search {
    let mut search = Search::new(case);
    while search.step() != Step::Done {}
    search
}

/// The best layout of a committed case.
pub fn best(id: &str) -> (Case, Layout) {
    let search = searched(case(id));
    (search.case().clone(), search.best().unwrap().clone())
}

/// Small floors, sheets and rules: an order of magnitude below real ones in every
/// number, so that everything can be tried.
pub fn tiny() -> impl Strategy<Value = Request> {
    let sizes = (8..=18_i32, 3..=11_i32);
    let rules = (0..=1_i32, 0..=1_i32, 1..=3_i32, 1..=2_usize, 0..=2_usize, 0..=1_i32);
    let joists = (1..=4_i32, prop::collection::vec(3..=5_i32, 4));
    let on_hand = prop::collection::vec((1..=12_i32, 1..=6_i32), 0..=2);
    (sizes, rules, joists, 0..=3_u8, (1..=6_i32, 1..=4_i32), on_hand).prop_map(
        |(sizes, rules, (first, steps), shape, bite, on_hand)| {
            let ((length, width), (half_gap, kerf, min_rip, min_bays, stagger, joist_width)) = (sizes, rules);
            let joists = steps.iter().scan(first, |at, step| Some(std::mem::replace(at, *at + step)));
            let (outline, holes) = shaped(length, width, shape, bite);
            Request {
                outline,
                holes,
                joists: joists.filter(|x| *x < length).collect(),
                joist_width,
                sheet: Sheet { length: 12, width: 6 },
                on_hand: on_hand.into_iter().map(|(length, width)| Sheet { length, width }).collect(),
                gap: 2 * half_gap,
                kerf,
                min_rip,
                min_bays,
                stagger,
            }
        },
    )
}

type Ring = Vec<(i32, i32)>;

/// A rectangle, an L, or a rectangle with a hole.
fn shaped(length: i32, width: i32, shape: u8, (along, across): (i32, i32)) -> (Ring, Vec<Ring>) {
    let (along, across) = (along.min(length - 3), across.min(width - 2));
    let whole = vec![(0, 0), (length, 0), (length, width), (0, width)];
    let (x, y) = (length - along, width - across);
    match shape {
        1 => (vec![(0, 0), (length, 0), (length, y), (x, y), (x, width), (0, width)], Vec::new()),
        2 => (vec![(0, 0), (x, 0), (x, across), (length, across), (length, width), (0, width)], Vec::new()),
        3 if along + 2 < length && across + 2 < width => {
            (whole, vec![vec![(1, 1), (1 + along, 1), (1 + along, 1 + across), (1, 1 + across)]])
        }
        _ => (whole, Vec::new()),
    }
}
