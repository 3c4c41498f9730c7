//! Sheets: how many it takes, where each piece goes and how it is cut.
//!
//! [`by_area`] is the carpenter's estimate. [`layout`] lays sheets on real joists and
//! proves how few there can be; it knows no job. [`to_lay`] is the one place that makes
//! a floor to lay out of a job, [`cut_list`] says a layout in a carpenter's words, and
//! [`take_off`] counts what laying it takes beside sheets. The rules are in `rules.md`.

pub mod by_area;
pub mod cut_list;
pub mod floor_search;
mod inset;
pub mod layout;
pub mod stock;
pub mod take_off;
pub mod to_lay;

/// What a page of cuts says, whatever is cut. Source: common practice, no source.
pub const AT_THE_SAW: [&str; 3] = [
    "New sheets on horses: blade 1/8 to 1/4 in deeper than the sheet.",
    "Old floor in place: blade as deep as the floor was measured and no more, remembering a second layer; power off, \
     and look beneath first.",
    "Local code and the licensed trades decide; this is a plan, not a design.",
];

pub use by_area::sheets_by_area;
pub use cut_list::CutList;
pub use floor_search::{FloorSearch, Outcome};
pub use take_off::TakeOff;
pub use to_lay::{ToLay, to_lay};
