//! How much a job file may hold: every cap, named once. A cap is there so that a
//! hostile or broken file costs a message and not the phone's memory.

pub use crate::engine::job::entry::LONGEST_ENTRY;

/// The longest file, in bytes. Somewhat more than a phone's share sheet carries.
pub const FILE_BYTES: usize = 200 * 1024 * 1024;
/// The most entries in a file: a year of one every five minutes.
pub const ENTRIES: usize = 100_000;
/// The most photos in a file.
pub const PHOTOS: usize = 2_000;
/// The largest photo, in bytes before base64. The app itself keeps them far smaller.
pub const PHOTO_BYTES: usize = 20 * 1024 * 1024;
/// The most fields that one JSON object of the envelope may have, unknown ones included.
pub const FIELDS: usize = 256;
/// The most marks in `left_out`.
pub const LEFT_OUT: usize = 32;
/// How many faults a refusal spells out before it only counts them.
pub const FAULTS_TOLD: usize = 20;
