//! The job file: one JSON object that carries a job from a phone to an office, to a
//! second phone, and back.
//!
//! What is kept of a file is its entries, each in its own words, and its photos.
//! Figures stand in it as a labelled snapshot for whoever has no engine at hand: the
//! reader passes over them, and the job is computed again.
//!
//! It never knows a browser, a folder or a clock; it never decides what an entry
//! means (that is [`job`](crate::engine::job)), and it drops nothing that it does not
//! understand.
//!
//! Start with [`JobFile`], then [`read`](read::read), [`write`] and [`merge`](merge::merge).

pub mod csv;
pub mod extras;
pub mod fault;
mod json;
pub mod limits;
pub mod merge;
pub mod model;
pub mod photo;
pub mod read;
pub mod redact;
#[cfg(not(target_arch = "wasm32"))]
pub mod schema;
pub mod snapshot;
pub mod tables;
mod threads;
pub mod version;
pub mod write;

pub use extras::Extras;
pub use fault::{Fault, Refusal};
pub use merge::{OtherJob, merge};
pub use model::{ENGINE, FORMAT, JobFile, JobHead, LeftOut, Made};
pub use photo::{FilePhoto, NoPhoto};
pub use read::{Salvage, read, salvage};
pub use redact::{invitation, without_client, without_photos};
pub use snapshot::{Snapshot, SnapshotFigure, SnapshotSource, figures};
pub use version::{Standing, Version};
