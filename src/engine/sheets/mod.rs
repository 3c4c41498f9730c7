//! Sheets: how many it takes, where each piece goes and how it is cut.
//!
//! [`by_area`] is the carpenter's estimate. [`layout`] lays sheets on real joists and
//! proves how few there can be; it knows no job. [`to_lay`] is the one place that makes
//! a floor to lay out of a job, [`cut_list`] says a layout in a carpenter's words, and
//! [`take_off`] counts what laying it takes beside sheets. The rules are in `rules.md`.

pub mod at_the_saw;
pub mod boards;
pub mod by_area;
pub mod cut_list;
pub mod floor_search;
pub mod in_the_way;
mod inset;
pub mod layout;
mod on_hand;
mod refused;
mod spare;
pub mod stock;
pub mod take_off;
pub mod to_lay;

pub use at_the_saw::at_the_saw;
pub use by_area::sheets_by_area;
pub use cut_list::CutList;
pub use floor_search::{FloorSearch, Outcome, Searches};
pub use on_hand::OnHand;
pub use refused::in_words as refused_in_words;
pub use take_off::TakeOff;
pub use to_lay::{ToLay, to_lay};
