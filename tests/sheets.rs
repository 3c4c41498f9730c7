//! From a job to a floor to lay, and from a layout to its cut list.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "sheets/agrees.rs"]
mod agrees;
#[path = "sheets/cut_list.rs"]
mod cut_list;
mod desk;
#[path = "sheets/in_the_way.rs"]
mod in_the_way;
mod job_samples;
#[path = "sheets/on_hand.rs"]
mod on_hand;
#[path = "sheets/ordered.rs"]
mod ordered;
#[path = "sheets/take_off.rs"]
mod take_off;
#[path = "sheets/to_lay.rs"]
mod to_lay;

use duckboard::engine::sheets::layout::{Case, Corner, Layout, Request, Search, Sheet, Step};

/// The usual rules on such a floor: sheets of 4 × 8 ft, joists 1 1/2 in thick.
fn asked(outline: Vec<Corner>, joists: Vec<i32>) -> Request {
    Request {
        outline,
        holes: Vec::new(),
        joists,
        joist_width: 24,
        sheet: Sheet { length: 1536, width: 768 },
        on_hand: Vec::new(),
        gap: 2,
        kerf: 2,
        min_rip: 384,
        min_bays: 2,
        stagger: 1,
    }
}

/// More than that proves nothing here.
const STEPS: usize = 300;

/// A layout of a case, if not the best there is.
fn laid(case: &Case) -> Layout {
    let mut search = Search::new(case.clone());
    for _ in 0..STEPS {
        if search.step() == Step::Done {
            break;
        }
    }
    search.best().unwrap().clone()
}
