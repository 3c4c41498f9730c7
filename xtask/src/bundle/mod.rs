//! From the files of a build to the files to put on a host: every file that may be
//! kept for ever carries a digest of its content in its name, and the service worker
//! knows exactly which files this build has.
//!
//! It never knows where the files come from or go to.

pub mod names;
mod precache;
mod references;

use crate::files::Files;
use anyhow::Result;
pub use references::dead;

/// Names, references and the service worker, all in their final form.
pub fn bundle(files: &Files) -> Result<Files> {
    precache::fill_in(names::hashed(files)?)
}
