//! Two files of one job become one: the union of what they hold.
//!
//! Merging is idempotent, commutative and associative to the last byte, so that it
//! does not matter who sent what to whom, or how often.

use super::model::{JobFile, JobHead, by_digest, in_log_order};
use crate::engine::entry::JobId;
use std::fmt;

/// Two files of different jobs were to be merged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OtherJob {
    /// The one file's job.
    pub one: JobId,
    /// The other file's job.
    pub other: JobId,
}

impl fmt::Display for OtherJob {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "These are two jobs, {} and {}; only files of one job can be merged.", self.one, self.other)
    }
}

impl std::error::Error for OtherJob {}

/// Both files in one: entries by id, photos by digest, the greater revision, the later
/// making. What either left out stays marked as left out: the other may not have had it.
///
/// # Errors
/// [`OtherJob`] if they are not of the same job.
pub fn merge(one: JobFile, other: JobFile) -> Result<JobFile, OtherJob> {
    if one.job.id != other.job.id {
        return Err(OtherJob { one: one.job.id, other: other.job.id });
    }
    let mut left_out = one.left_out;
    left_out.extend(other.left_out);
    Ok(JobFile {
        version: one.version.max(other.version),
        revision: one.revision.max(other.revision),
        made: one.made.later(other.made),
        job: JobHead { id: one.job.id, extra: one.job.extra.union(other.job.extra) },
        left_out,
        records: in_log_order(one.records.into_iter().chain(other.records)),
        photos: by_digest(one.photos.into_iter().chain(other.photos)),
        extra: one.extra.union(other.extra),
    })
}
