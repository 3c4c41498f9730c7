//! Sheets: how many it takes, where each piece goes and how it is cut.
//!
//! [`by_area`] is the carpenter's estimate. [`layout`] lays sheets on real joists and
//! proves how few there can be; it knows no job. [`to_lay`] is the one place that makes
//! a floor to lay out of a job, and [`cut_list`] says a layout in a carpenter's words.

pub mod by_area;
pub mod cut_list;
pub mod layout;
pub mod to_lay;

pub use by_area::sheets_by_area;
pub use cut_list::CutList;
pub use to_lay::{ToLay, to_lay};
