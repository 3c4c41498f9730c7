//! Where the water comes from: evidence for and against each cause, weighed in the open.
//!
//! The weights are data (`evidence.json`, explained in `README.md`). A [`Scene`] is what
//! is known, of a job or of a scenario; [`rank`] weighs it. It shows words, reasons and
//! the next check, and never a bare number.

mod case;
mod cause;
mod evidence;
mod from_job;
mod patterns;
mod rank;
mod scene;

pub use cause::Cause;
pub use evidence::{Evidence, Observation};
pub use from_job::{Check, dealt_with_name, is_answered, is_seen_now, origin, was_seen};
pub use rank::{Ranked, Ranking, Word, rank};
pub use scene::{Read, Scene};
