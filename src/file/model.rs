//! A job file, taken apart: what of it is kept.

use super::extras::Extras;
use super::photo::FilePhoto;
use super::version::Version;
use crate::engine::entry::{JobId, Time};
use crate::engine::job::{Book, Content, Log, Record};
use crate::engine::photo::Digest;
use crate::order;
use crate::order::Set;
use litemap::LiteMap;
use serde::{Deserialize, Serialize};
use std::fmt;

/// What the file says of itself in `format`. It is known by this and not by its name.
pub const FORMAT: &str = "duckboard-job";

/// The engine that made a file or a snapshot: its name and version.
pub const ENGINE: &str = concat!("duckboard ", env!("CARGO_PKG_VERSION"));

/// A job file: entries and photos, and what came along with them.
#[derive(Debug, Clone)]
pub struct JobFile {
    /// The format's version: this build's, or a newer one if the file carries something newer.
    pub version: Version,
    /// Counts the hand-overs of one job, so that people can say which file they mean.
    pub revision: u32,
    /// When and by what the file was made.
    pub made: Made,
    /// Which job it is.
    pub job: JobHead,
    /// What was left out of it on purpose.
    pub left_out: Set<LeftOut>,
    /// The entries in log order, each once; the entries of a clash beside each other.
    pub records: Vec<Record>,
    /// The photos in the order of their digests, each once.
    pub photos: Vec<FilePhoto>,
    /// Top-level fields that this build does not know.
    pub extra: Extras,
}

/// When and by what a file was made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Made {
    /// The clock of the device that made it, RFC 3339 with offset.
    #[cfg_attr(not(target_arch = "wasm32"), schemars(with = "String", extend("format" = "date-time")))]
    #[serde(with = "crate::engine::entry::time")]
    pub at: Time,
    /// The engine's name and version.
    pub engine: String,
}

/// Which job a file holds. Its heading is written too, for people, and computed again
/// when read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobHead {
    /// The job.
    pub id: JobId,
    /// Fields of it that this build does not know.
    pub extra: Extras,
}

/// What was left out of a file on purpose.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(from = "String", into = "String")]
pub enum LeftOut {
    /// The photos' bytes; what was said of them is there.
    Photos,
    /// The client's details: the job's title and where it is.
    Client,
    /// Entries that could not be read wholly: of a later version.
    NotRead,
    /// Of an invitation, who read which caution.
    CautionsRead,
    /// Of an invitation before it carried all that counts, readings and what was found.
    Readings,
    /// Something that this build has no name for.
    Other(String),
}

impl Made {
    /// Made now, by this build. The time is handed in.
    pub fn here(at: Time) -> Self {
        Self { at, engine: ENGINE.to_owned() }
    }

    /// By which two are ordered: time, then text.
    fn rank(&self) -> (Time, String, &str) {
        (self.at, self.at.to_rfc3339(), &self.engine)
    }

    /// The later of two, whichever comes first.
    #[must_use]
    pub fn later(self, other: Self) -> Self {
        if self.rank() >= other.rank() { self } else { other }
    }
}

impl LeftOut {
    /// The mark's name in the file.
    pub fn name(&self) -> &str {
        match self {
            Self::Photos => "photos",
            Self::Client => "client",
            Self::NotRead => "not_read",
            Self::CautionsRead => "cautions_read",
            Self::Readings => "readings",
            Self::Other(name) => name,
        }
    }
}

impl fmt::Display for LeftOut {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Photos => f.write_str("photos"),
            Self::Client => f.write_str("client details"),
            Self::NotRead => f.write_str("entries of a later version"),
            Self::CautionsRead => f.write_str("cautions read"),
            Self::Readings => f.write_str("readings and photos"),
            Self::Other(name) => f.write_str(name),
        }
    }
}

impl From<String> for LeftOut {
    fn from(name: String) -> Self {
        match name.as_str() {
            "photos" => Self::Photos,
            "client" => Self::Client,
            "not_read" => Self::NotRead,
            "cautions_read" => Self::CautionsRead,
            "readings" => Self::Readings,
            _ => Self::Other(name),
        }
    }
}

impl From<LeftOut> for String {
    fn from(mark: LeftOut) -> Self {
        mark.name().to_owned()
    }
}

impl JobFile {
    /// How many entries it holds, those not counted that are only known to be.
    #[must_use]
    pub fn entry_count(&self) -> usize {
        self.records.iter().filter(|record| !record.is_absent()).count()
    }

    /// A file of everything in a book, without photos: [`Self::with_photos`] adds them.
    pub fn of(book: &Book, job: JobId, revision: u32, made: Made) -> Self {
        Self::of_records(book.log().records().cloned(), job, revision, made)
    }

    /// A file of these records.
    pub(super) fn of_records(records: impl IntoIterator<Item = Record>, job: JobId, revision: u32, made: Made) -> Self {
        let records = in_log_order(records);
        Self {
            version: version_for(&records),
            revision,
            made,
            job: JobHead { id: job, extra: Extras::default() },
            left_out: Set::default(),
            records,
            photos: Vec::new(),
            extra: Extras::default(),
        }
    }

    /// The file with these photos too.
    #[must_use]
    pub fn with_photos(mut self, photos: impl IntoIterator<Item = FilePhoto>) -> Self {
        self.photos = by_digest(self.photos.into_iter().chain(photos));
        self
    }

    /// The file's entries and the job they add up to.
    pub fn book(&self) -> Book {
        Book::of(self.records.iter().cloned())
    }

    /// The photo of a digest, if the file has it.
    pub fn photo(&self, sha256: Digest) -> Option<&FilePhoto> {
        let at = self.photos.binary_search_by_key(&sha256, |photo| photo.sha256).ok()?;
        self.photos.get(at)
    }
}

/// The records in log order, each once. Of two layouts of one entry the lesser text
/// stays, so that the order of arrival leaves no trace.
pub(super) fn in_log_order(records: impl IntoIterator<Item = Record>) -> Vec<Record> {
    let mut arrived: Vec<Record> = records.into_iter().collect();
    order::sort_by(&mut arrived, |one, other| (one.id(), one.json()).cmp(&(other.id(), other.json())));
    let mut log = Log::default();
    for record in arrived {
        log.add(record);
    }
    log.records().cloned().collect()
}

/// The photos in the order of their digests, each once.
pub(super) fn by_digest(photos: impl IntoIterator<Item = FilePhoto>) -> Vec<FilePhoto> {
    let mut kept: LiteMap<Digest, FilePhoto> = LiteMap::new();
    for photo in photos {
        let photo = match kept.remove(&photo.sha256) {
            Some(there) => there.union(photo),
            None => photo,
        };
        kept.insert(photo.sha256, photo);
    }
    kept.into_iter().map(|(_, photo)| photo).collect()
}

/// The least version that says honestly what is in these records: an entry that this
/// build can carry but not read makes the file a newer one.
fn version_for(records: &[Record]) -> Version {
    let carried =
        |record: &Record| matches!(record.content(), Content::Unknown { .. }) && Record::read(record.json()).is_err();
    if records.iter().any(carried) { Version::CURRENT.next_minor() } else { Version::CURRENT }
}
