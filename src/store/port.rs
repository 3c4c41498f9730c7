//! The storage port: what the program asks of the place where it keeps things.

use super::{BlobKey, JobKey, NoteKey, NoteScope, StoreError};

/// One entry as it is kept.
///
/// Lines sort by id, then by JSON text, both by their bytes.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Line {
    /// The entry's id.
    pub id: String,
    /// The entry's original JSON text. It comes back byte for byte, so fields that
    /// this build knows nothing of survive.
    pub json: String,
}

impl Line {
    /// A line of its id and its JSON text.
    pub fn new(id: impl Into<String>, json: impl Into<String>) -> Self {
        Self { id: id.into(), json: json.into() }
    }
}

/// What is saved together: all of it or none of it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Batch {
    /// Entries, each with its job.
    pub lines: Vec<(JobKey, Line)>,
    /// Notes and what they shall say; `None` removes the note. Of several changes to
    /// one note the last one holds.
    pub notes: Vec<(NoteKey, Option<String>)>,
}

impl Batch {
    /// Entries of one job.
    pub fn entries(job: &JobKey, lines: impl IntoIterator<Item = Line>) -> Self {
        Self { lines: lines.into_iter().map(|line| (job.clone(), line)).collect(), notes: Vec::new() }
    }

    /// One note, set or removed, and nothing else.
    pub fn note(key: NoteKey, text: Option<String>) -> Self {
        Self::default().with_note(key, text)
    }

    /// The same batch, which also sets or removes a note: an entry and the draft it
    /// was typed in change together.
    pub fn with_note(mut self, key: NoteKey, text: Option<String>) -> Self {
        self.notes.push((key, text));
        self
    }

    /// Is there nothing in it?
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty() && self.notes.is_empty()
    }
}

/// A photo's bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Blob {
    /// Its media type, such as `image/jpeg`. The store believes it.
    pub media_type: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// Which picture is kept under a blob key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BlobKind {
    /// The photo itself.
    Photo,
    /// The small picture that stands for it in lists.
    Thumbnail,
}

impl BlobKind {
    /// Both of them.
    pub const ALL: [Self; 2] = [Self::Photo, Self::Thumbnail];
}

/// Keeps entries, notes and photos.
///
/// What a method has answered `Ok` to is safe: it is there after the tab, the browser
/// or the phone was killed. What it has answered with an error is not there at all,
/// save after a lost connection, where nobody can know ([`StoreError`]).
///
/// Nothing is deleted but photos, by [`Store::remove_blob`], and notes, by a batch.
/// Calls may overlap, and then either may take effect first: who cares which of two
/// notes is the last one waits for the first, as the save queue does.
#[expect(async_fn_in_trait, reason = "a browser page has one thread, so no caller wants the futures to be Send")]
pub trait Store {
    /// Saves a batch: one transaction, all or nothing.
    ///
    /// - A line that is there already is nothing new, so a batch may be committed
    ///   again when nobody knows whether it arrived.
    /// - A line with the id of another but other JSON is kept beside it. Neither
    ///   wins here; the log decides, and says so.
    /// - One batch may hold entries of several jobs, and one line twice.
    /// - Removing a note that is not there is no error.
    /// - An empty batch saves nothing, and that always works.
    async fn commit(&self, batch: &Batch) -> Result<(), StoreError>;

    /// The jobs that have at least one line, sorted. Notes alone make no job.
    async fn jobs(&self) -> Result<Vec<JobKey>, StoreError>;

    /// A job's lines in their own order ([`Line`]), whatever order they came in.
    /// A job that nobody wrote to has none.
    async fn lines(&self, job: &JobKey) -> Result<Vec<Line>, StoreError>;

    /// What a note says; `None` where there is no such note. A note may be empty.
    async fn note(&self, key: &NoteKey) -> Result<Option<String>, StoreError>;

    /// All notes of the phone or of one job with what they say, sorted by name.
    async fn notes(&self, scope: &NoteScope) -> Result<Vec<(NoteKey, String)>, StoreError>;

    /// Keeps a photo or its thumbnail; either may come first, or alone.
    ///
    /// A second one of that kind under that key takes the first one's place: photos
    /// are named by their content, so it is the same photo, perhaps repaired.
    /// The store does not check the name against the bytes.
    async fn put_blob(&self, kind: BlobKind, key: &BlobKey, blob: &Blob) -> Result<(), StoreError>;

    /// A photo or a thumbnail; `None` where there is none.
    async fn blob(&self, kind: BlobKind, key: &BlobKey) -> Result<Option<Blob>, StoreError>;

    /// Deletes a photo together with its thumbnail. Deleting what is not there, or
    /// deleting twice, is no error. The photo may be put again later.
    async fn remove_blob(&self, key: &BlobKey) -> Result<(), StoreError>;

    /// The keys of all photos, or of all thumbnails, sorted.
    async fn blob_keys(&self, kind: BlobKind) -> Result<Vec<BlobKey>, StoreError>;
}
