//! Reading a job file: known by its content, judged whole, every fault named.
//!
//! The file is taken apart one level at a time and its parts stay slices of its own
//! text, so that an entry is kept exactly as it came and memory is a small multiple
//! of the file at worst.

use super::extras::{Extras, Sorted};
use super::fault::{Fault, Refusal};
use super::json::{self, Field};
use super::limits::{ENTRIES, FIELDS, FILE_BYTES, LEFT_OUT, LONGEST_ENTRY, PHOTOS};
use super::model::{FORMAT, JobFile, JobHead, LeftOut, Made, by_digest, in_log_order};
use super::photo::{self, FilePhoto};
use super::version::{Standing, Version};
use crate::engine::entry::{DeviceId, EntryId};
use crate::engine::job::{Act, Observation, Record};
use crate::order::Set;
use serde::de::DeserializeOwned;
use serde_json::error::Category;
use serde_json::value::RawValue;

/// What could be read of a file that has faults.
#[derive(Debug, Clone)]
pub struct Salvage {
    /// The file without its faulty entries and photos. It knows that it lacks those entries.
    pub file: JobFile,
    /// What is missing from it, or was mended, and why. Empty if the file is sound.
    pub faults: Vec<Fault>,
}

/// Reads a whole and faultless job file.
///
/// # Errors
/// [`Refusal`], with every fault if it is a job file at all.
pub fn read(bytes: &[u8]) -> Result<JobFile, Refusal> {
    let Salvage { file, faults } = salvage(bytes)?;
    if faults.is_empty() { Ok(file) } else { Err(Refusal::Faults(faults)) }
}

/// Reads as much of a job file as can be read: one damaged photo need not cost a
/// day's readings. Whoever uses this shows the faults.
///
/// # Errors
/// [`Refusal`] if it is no job file of a version read here, or does not even say
/// which job it is.
pub fn salvage(bytes: &[u8]) -> Result<Salvage, Refusal> {
    let text = text_of(bytes)?;
    let fields = json::fields(text, FIELDS).map_err(|error| refused(text, &error))?;
    let mut faults = Vec::new();
    let top = Sorted::of(&fields, &NAMES, "", &mut faults);
    let version = recognised(&top)?;
    let mut reader = Reader { top, version, faults };
    let parts = reader.parts();
    let Reader { top, faults, .. } = reader;
    match parts {
        Some(parts) => Ok(Salvage { file: parts.into_file(version, top.extras), faults }),
        None => Err(Refusal::Faults(faults)),
    }
}

const NAMES: [&str; 9] = ["format", "version", "revision", "made", "job", "left_out", "entries", "photos", "results"];

/// The text of a file that is not too long, without a byte order mark.
fn text_of(bytes: &[u8]) -> Result<&str, Refusal> {
    if bytes.len() > FILE_BYTES {
        return Err(Refusal::TooLong { bytes: bytes.len(), most: FILE_BYTES });
    }
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text,
        // Cut in the middle of a character.
        Err(error) if error.error_len().is_none() && starts_like_ours(bytes) => return Err(Refusal::CutShort),
        Err(_) => return Err(Refusal::NotAJobFile),
    };
    Ok(text.strip_prefix('\u{feff}').unwrap_or(text))
}

/// Does our format's name stand near the start? Only asked to word a refusal.
fn starts_like_ours(bytes: &[u8]) -> bool {
    let start = bytes.get(..256).unwrap_or(bytes);
    start.windows(FORMAT.len()).any(|window| window == FORMAT.as_bytes())
}

/// Why the text is no JSON object.
fn refused(text: &str, error: &serde_json::Error) -> Refusal {
    if !starts_like_ours(text.as_bytes()) {
        return Refusal::NotAJobFile;
    }
    match error.classify() {
        Category::Eof => Refusal::CutShort,
        // Cut in the middle of a number, where digits have to follow.
        Category::Syntax if is_at_the_end(text, error) => Refusal::CutShort,
        Category::Syntax => Refusal::NotJson { line: error.line(), column: error.column() },
        Category::Data | Category::Io => Refusal::Faults(vec![Fault::at("the file", json::plain(error))]),
    }
}

/// Does a fault lie at the text's very end, so that it is what is missing?
fn is_at_the_end(text: &str, error: &serde_json::Error) -> bool {
    let last_line = text.rsplit('\n').next().unwrap_or(text);
    error.line() > text.matches('\n').count() && error.column() >= last_line.len()
}

/// The version of a file of our format, if it is read here.
fn recognised(top: &Sorted<'_>) -> Result<Version, Refusal> {
    let format = top.get("format").and_then(|raw| json::text(raw).ok());
    if format.as_deref() != Some(FORMAT) {
        return Err(Refusal::NotAJobFile);
    }
    let version = needed::<Version>(top, "version").map_err(|fault| Refusal::Faults(vec![fault]))?;
    match version.standing(Version::CURRENT) {
        Standing::NewerMajor => Err(Refusal::Newer { found: version }),
        Standing::OlderMajor => Err(Refusal::Older { found: version }),
        Standing::Current | Standing::OlderMinor | Standing::NewerMinor => Ok(version),
    }
}

fn needed<T: DeserializeOwned>(object: &Sorted<'_>, name: &str) -> Result<T, Fault> {
    let raw = object.get(name).ok_or_else(|| Fault::at(name, "is missing"))?;
    json::value(raw).map_err(|problem| Fault::at(name, problem))
}

struct Reader<'a> {
    top: Sorted<'a>,
    version: Version,
    faults: Vec<Fault>,
}

struct Parts {
    revision: u32,
    made: Made,
    job: JobHead,
    left_out: Set<LeftOut>,
    records: Vec<Record>,
    photos: Vec<FilePhoto>,
}

impl Parts {
    fn into_file(self, version: Version, extra: Extras) -> JobFile {
        let Self { revision, made, job, left_out, mut records, photos } = self;
        records.extend(what_an_old_invitation_lacks(&left_out, &records));
        JobFile {
            // An older minor version is written back as this build's.
            version: version.max(Version::CURRENT),
            revision,
            made,
            job,
            left_out,
            records: in_log_order(records),
            photos: by_digest(photos),
            extra,
        }
    }
}

/// An invitation of before it said which entries it lacks: as good as surely the one that its
/// phone logged next, with which the rest comes. Of several phones nobody can tell which one.
fn what_an_old_invitation_lacks(left_out: &Set<LeftOut>, records: &[Record]) -> Option<Record> {
    let last = records.iter().map(Record::id).max()?;
    let is_of_one_phone = records.iter().all(|record| record.id().device == last.device);
    // Merged with the rest, it still says so.
    let has_more = |record: &Record| match record.entry().map(|entry| &entry.act) {
        Some(Act::Record(it)) => {
            matches!(it, Observation::Reading(_) | Observation::Condition(_) | Observation::Check(_))
        }
        _ => record.is_absent(),
    };
    (left_out.contains(&LeftOut::Readings) && is_of_one_phone && !records.iter().any(has_more))
        .then(|| Record::absent(EntryId { count: last.count.saturating_add(1), ..last }))
}

impl<'a> Reader<'a> {
    /// Every part, or nothing if one is missing that the file cannot do without. All
    /// are looked at either way, so that all faults are told.
    fn parts(&mut self) -> Option<Parts> {
        let (revision, made, job) = (self.field("revision"), self.field("made"), self.job());
        let left_out = self.left_out();
        let (records, photos) = (self.records(), self.photos());
        Some(Parts { revision: revision?, made: made?, job: job?, left_out, records, photos })
    }

    fn field<T: DeserializeOwned>(&mut self, name: &str) -> Option<T> {
        needed(&self.top, name).map_err(|fault| self.faults.push(fault)).ok()
    }

    fn job(&mut self) -> Option<JobHead> {
        let Some(raw) = self.top.get("job") else {
            self.faults.push(Fault::at("job", "is missing"));
            return None;
        };
        let fields: Vec<Field<'a>> = match json::fields(raw.get(), FIELDS) {
            Ok(fields) => fields,
            Err(error) => {
                self.faults.push(Fault::at("job", json::plain(&error)));
                return None;
            }
        };
        let job = Sorted::of(&fields, &["id", "heading"], "job", &mut self.faults);
        match needed(&job, "id") {
            Ok(id) => Some(JobHead { id, extra: job.extras }),
            Err(fault) => {
                self.faults.push(Fault::at("job.id", fault.problem));
                None
            }
        }
    }

    fn left_out(&mut self) -> Set<LeftOut> {
        let mut marks = Set::default();
        for (at, raw) in self.list("left_out", LEFT_OUT).into_iter().enumerate() {
            match json::value(raw) {
                Ok(mark) => {
                    marks.insert(mark);
                }
                Err(problem) => self.faults.push(Fault::at(format!("left_out[{at}]"), problem)),
            }
        }
        marks
    }

    fn records(&mut self) -> Vec<Record> {
        if self.top.get("entries").is_none() {
            self.faults.push(Fault::at("entries", "is missing"));
        }
        let mut records = Vec::new();
        for (at, raw) in self.list("entries", ENTRIES).into_iter().enumerate() {
            match record(raw, self.version) {
                Ok(record) => records.push(record),
                Err(bad) => {
                    records.push(lost(raw));
                    self.faults.push(Fault::in_entry(&format!("entries[{at}]"), bad));
                }
            }
        }
        records
    }

    fn photos(&mut self) -> Vec<FilePhoto> {
        let items = self.list("photos", PHOTOS).into_iter().enumerate();
        items.filter_map(|(at, raw)| photo::read(raw, &format!("photos[{at}]"), &mut self.faults)).collect()
    }

    /// The elements of a list that may be absent.
    fn list(&mut self, name: &str, most: usize) -> Vec<&'a RawValue> {
        let Some(raw) = self.top.get(name) else { return Vec::new() };
        json::elements(raw.get(), most).unwrap_or_else(|error| {
            self.faults.push(Fault::at(name, json::plain(&error)));
            Vec::new()
        })
    }
}

/// What a phone keeps as a line of its own log, under this id. A line that cannot be read is an
/// entry that is not here, as in a file: it is missed until it comes with one. So is the entry of
/// an id under which another one is kept.
pub fn kept_line(id: &str, json: &str) -> impl Iterator<Item = Record> + use<> {
    let record = Record::read(json).or_else(|_| Record::carried(json)).ok();
    let id = id.parse().unwrap_or(NOBODYS);
    let is_here = record.as_ref().is_some_and(|record| record.id() == id);
    record.into_iter().chain((!is_here).then(|| Record::absent(id)))
}

/// The id of an entry of which not even that can be read: no phone gives it.
const NOBODYS: EntryId = EntryId { count: 0, device: DeviceId::new(0) };

/// That a damaged entry is not here.
fn lost(raw: &RawValue) -> Record {
    Record::absent(Record::carried(raw.get()).map_or(NOBODYS, |record| record.id()))
}

/// One entry. In a file of a newer minor version, one that cannot be read is carried.
fn record(raw: &RawValue, version: Version) -> Result<Record, crate::engine::job::BadRecord> {
    let read = Record::read(raw.get());
    let newer = version.standing(Version::CURRENT) == Standing::NewerMinor;
    match read {
        Err(bad) if newer && raw.get().len() <= LONGEST_ENTRY => Record::carried(raw.get()).map_err(|_| bad),
        read => read,
    }
}
