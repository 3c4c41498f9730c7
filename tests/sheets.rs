//! From a job to a floor to lay, and from a layout to its cut list.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "sheets/cut_list.rs"]
mod cut_list;
mod job_samples;
#[path = "sheets/take_off.rs"]
mod take_off;
#[path = "sheets/to_lay.rs"]
mod to_lay;

use duckboard::engine::sheets::layout::{Case, Layout, Search, Step};

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
