//! Where entries, notes and photos are kept.
//!
//! - [`port`] is the trait that the rest of the program sees, with every odd case
//!   settled in its docs; [`keys`] are the names things are kept under, and
//!   [`error`] is what can go wrong.
//! - [`memory`] and `indexed_db` (wasm32 only) keep the port's promises; [`contract`]
//!   is the one suite of checks that both must pass.
//! - [`queue`] holds what is not saved yet, and says so.
//!
//! A store never knows what an entry means: it keeps the text it was given, byte
//! for byte, and parses none of it. It never says "done" before the bytes are
//! safe, and it deletes nothing but photos that somebody threw away.
//!
//! Start reading at [`port`].

pub mod contract;
pub mod error;
pub mod keys;
pub mod memory;
pub mod port;
pub mod queue;

#[cfg(target_arch = "wasm32")]
pub mod indexed_db;

#[cfg(test)]
pub(crate) mod faulty;

pub use error::StoreError;
#[cfg(target_arch = "wasm32")]
pub use indexed_db::IndexedDb;
pub use keys::{BadKey, BlobKey, JobKey, NoteKey, NoteScope};
pub use memory::Memory;
pub use port::{Batch, Blob, BlobKind, Line, Store};
pub use queue::{SaveQueue, SaveState};
