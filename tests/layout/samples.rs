//! Cases to work on.

use crate::format::CaseFile;
use duckboard::engine::sheets::layout::{Case, Layout, Limits, Request, Search, Sheet, Step};
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

/// Halls of many courses, so narrow that a sheet holds a dozen of their pieces and more.
pub fn strips() -> impl Strategy<Value = Request> {
    let sizes = (1..=4_i32, 1..=14_usize, 0..=5_i32);
    let rules = (0..=1_i32, 0..=1_i32, 1..=6_i32, 0..=1_usize);
    (sizes, rules, prop::option::of((1..=12_i32, 1..=6_i32))).prop_map(
        |((along, courses, more), (half_gap, kerf, min_rip, stagger), on_hand)| {
            let gap = 2 * half_gap;
            let across = courses as i32 * (6 + gap) + more;
            Request {
                outline: vec![(0, 0), (along, 0), (along, across), (0, across)],
                holes: Vec::new(),
                joists: vec![along / 2],
                joist_width: 0,
                sheet: Sheet { length: 12, width: 6 },
                on_hand: on_hand.into_iter().map(|(length, width)| Sheet { length, width }).collect(),
                gap,
                kerf,
                min_rip,
                min_bays: 2,
                stagger,
            }
        },
    )
}

/// Limits as small as can be, each by itself: where the search gives up at once.
pub fn limits() -> impl Strategy<Value = Limits> {
    let few = prop_oneof![Just(0_usize), Just(1), Just(2), 3..40_usize, Just(1000)];
    (prop::collection::vec(few, 29), any::<u64>()).prop_map(|(few, usual)| {
        let mut few = few.into_iter().enumerate().map(|(at, few)| (usual >> at & 1 == 0).then_some(few));
        let mut next = |otherwise: usize| few.next().flatten().unwrap_or(otherwise);
        let all = Limits::USUAL;
        Limits {
            kept: next(all.kept),
            work_a_filling: next(all.work_a_filling as usize) as u64,
            work_a_sheet: next(all.work_a_sheet as usize) as u64,
            choices: next(all.choices),
            // Two lengths are there whatever is cut: nought and the sheet.
            lengths: next(all.lengths).max(4),
            kinds: next(all.kinds),
            ways: next(all.ways),
            few_ways: next(all.few_ways),
            ways_at_once: next(all.ways_at_once),
            sets: next(all.sets),
            compared: next(all.compared as usize) as u64,
            joints_tried: next(all.joints_tried),
            programmed: next(all.programmed),
            columns: next(all.columns),
            unsolved: next(all.unsolved as usize) as u32,
            steps_a_round: next(all.steps_a_round),
            pooled: next(all.pooled),
            rounds_for_one: next(all.rounds_for_one),
            effort: next(all.effort),
            effort_for_each: next(all.effort_for_each),
            quick_effort: next(all.quick_effort),
            tried: next(all.tried),
            dead: next(all.dead),
            throws: next(all.throws),
            throws_in_all: next(all.throws_in_all),
            beginnings: next(all.beginnings),
            beginnings_a_step: next(all.beginnings_a_step),
            remembered: next(all.remembered),
            stacks: next(all.stacks),
            ..all
        }
    })
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
