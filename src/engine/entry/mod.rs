//! Entries: single things that somebody saw or measured, immutable.
//!
//! This folder knows identity, order and text. What an entry can say is one enum,
//! [`Observation`](crate::engine::job::Observation), whose payloads live with their
//! concerns. It never knows what entries add up to: that is `job`.

pub mod id;
pub mod stamp;
pub mod text;
pub mod time;

pub use id::{DeviceId, EntryId, JobId};
pub use stamp::{Logger, Role, Stamp};
pub use text::{Label, Note, Text};
pub use time::Time;
