//! From a job to a floor to lay, and from a layout to its cut list.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

#[path = "sheets/cut_list.rs"]
mod cut_list;
mod job_samples;
#[path = "sheets/to_lay.rs"]
mod to_lay;

use duckboard::engine::sheets::layout::{Case, Layout, Search, Step};

/// The best layout of a case, all steps taken.
fn laid(case: &Case) -> Layout {
    let mut search = Search::new(case.clone());
    while search.step() != Step::Done {}
    search.best().unwrap().clone()
}
