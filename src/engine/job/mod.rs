//! The job: what the entries add up to.
//!
//! [`observation`] lists what an entry can say, [`log`] holds entries, [`fold`] turns
//! a log into a [`Job`], and [`Book`] keeps the two in step. Nothing here computes a
//! figure, and nothing is edited in place.

pub mod book;
pub mod entry;
pub mod fact;
pub mod facts;
mod fault_path;
pub mod fold;
pub mod log;
pub mod observation;
mod plausible;
mod same;
pub mod thing;
pub mod when;

pub use book::{Book, Pen};
pub use entry::{Act, BadRecord, Content, Entry, Record};
pub use fact::{Acknowledgement, Fact, HandOver, SheetEdge, SheetSize, SpanRating, Venting, Visit, Year};
pub use fold::{Fault, Fold, Job};
pub use log::{Added, Log};
pub use observation::Observation;
pub use thing::{Kind, Seen, Shelf, Shelves, Thing};
pub use when::{CLOCKS_APART, InVisit, LONGEST_VISIT, When, last_words};
