//! Entries whole, and the records that keep one beside its original text.

use super::fault_path::path_at;
use super::observation::Observation;
use crate::engine::entry::{EntryId, Stamp};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use serde_json::value::RawValue;
use std::fmt;
use std::sync::Arc;

/// The longest entry that is read, in bytes of JSON. Photos are not in entries.
pub const LONGEST_ENTRY: usize = 64 * 1024;

/// One immutable line of the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Entry {
    /// Its identity.
    pub id: EntryId,
    /// Who, when, in which visit.
    pub stamp: Stamp,
    /// What it does.
    pub act: Act,
}

/// What an entry does to the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Act {
    /// Records something new.
    Record(Observation),
    /// Says an earlier entry again, rightly. Naming several corrections of one entry
    /// settles a conflict between them; naming a withdrawal of it settles that too.
    Correct {
        /// The entries that it supersedes: the first entry of a thing, or earlier
        /// corrections of it.
        #[cfg_attr(not(target_arch = "wasm32"), schemars(length(min = 1)))]
        of: Vec<EntryId>,
        /// What is so instead, of the same kind.
        to: Observation,
    },
    /// Takes an earlier entry back; withdrawing a withdrawal brings it back.
    Withdraw {
        /// The entry.
        of: EntryId,
        /// How it stood: the corrections of it that were known, and go with it, or the entry
        /// itself. One that was not known stays. None before format 1.6.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        seen: Vec<EntryId>,
    },
}

/// An entry beside the text it came in. The text is what is stored and sent on, so
/// that fields of a later version survive this one.
#[derive(Debug, Clone)]
pub struct Record {
    id: EntryId,
    json: Arc<str>,
    content: Content,
    unread: Option<Arc<str>>,
}

/// What this build makes of a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Content {
    /// An entry that it understands.
    Known(Box<Entry>),
    /// An entry of a kind that it does not know: carried along untouched.
    Unknown {
        /// The kind's name.
        kind: String,
    },
    /// No entry, but that there is one which is not here: it was left out of a file, or damaged.
    /// Closing holds until the entry itself arrives ([`super::Log::add`]).
    Absent,
    /// The same of an entry that was left out on purpose, and by which nothing is decided.
    LeftOut,
}

/// The act of an entry that is not here. An older build takes it for a kind of a later version,
/// and holds closing too.
const ABSENT: &str = "absent";
/// What is decided by such an entry, where somebody knew: since format 1.7.
const DECIDES: (&str, &str) = ("decides", "nothing");

/// Why a text is no record, and where in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadRecord {
    /// The path inside the entry, such as `act.record.reading.shown`.
    pub path: String,
    /// What is wrong, in words.
    pub problem: String,
}

impl fmt::Display for BadRecord {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.path.is_empty() { f.write_str(&self.problem) } else { write!(f, "{}: {}", self.path, self.problem) }
    }
}

impl std::error::Error for BadRecord {}

/// As much of an entry as every version must be able to read.
#[derive(Deserialize)]
struct Envelope<'a> {
    id: EntryId,
    #[serde(borrow)]
    act: &'a RawValue,
}

impl Record {
    /// The record of an entry made here.
    ///
    /// # Errors
    /// [`BadRecord`] if the entry cannot be written as JSON, which none can cause
    /// that the types admit.
    pub fn of(entry: Entry) -> Result<Self, BadRecord> {
        let json = serde_json::to_string(&entry).map_err(|error| BadRecord::at("", error.to_string()))?;
        Ok(Self { id: entry.id, json: json.into(), content: Content::Known(Box::new(entry)), unread: None })
    }

    /// Reads one entry's JSON. A kind that this build does not know is not an error.
    ///
    /// # Errors
    /// [`BadRecord`] with the path of the fault.
    pub fn read(json: &str) -> Result<Self, BadRecord> {
        if json.len() > LONGEST_ENTRY {
            return Err(BadRecord::at("", format!("{} bytes long; up to {LONGEST_ENTRY} are accepted", json.len())));
        }
        let envelope: Envelope<'_> = parse(json)?;
        let mut unread = None;
        let content = match unknown_kind(envelope.act.get()) {
            Some(kind) if kind == ABSENT && decides_nothing(envelope.act.get()) => Content::LeftOut,
            Some(kind) if kind == ABSENT => Content::Absent,
            Some(kind) => Content::Unknown { kind },
            None => {
                let entry = parse::<Entry>(json)?;
                unread = unread_field(json, &entry);
                Content::Known(Box::new(entry))
            }
        };
        Ok(Self { id: envelope.id, json: json.into(), content, unread })
    }

    /// A record that this build cannot read but a later one may: kept whole.
    ///
    /// # Errors
    /// [`BadRecord`] when not even its id can be read.
    pub fn carried(json: &str) -> Result<Self, BadRecord> {
        let envelope: Envelope<'_> = parse(json)?;
        let kind = unknown_kind(envelope.act.get()).unwrap_or_else(|| "of a later version".to_owned());
        Ok(Self { id: envelope.id, json: json.into(), content: Content::Unknown { kind }, unread: None })
    }

    /// Says that there is an entry of this id, and that it is not here.
    pub fn absent(id: EntryId) -> Self {
        let json = format!("{{\"id\":\"{id}\",\"act\":{{\"{ABSENT}\":{{}}}}}}");
        Self { id, json: json.into(), content: Content::Absent, unread: None }
    }

    /// The same of one that was left out on purpose: nothing is decided by it.
    pub fn left_out(id: EntryId) -> Self {
        let (decides, nothing) = DECIDES;
        let json = format!("{{\"id\":\"{id}\",\"act\":{{\"{ABSENT}\":{{\"{decides}\":\"{nothing}\"}}}}}}");
        Self { id, json: json.into(), content: Content::LeftOut, unread: None }
    }

    /// Is it only known to be, and not here?
    pub const fn is_absent(&self) -> bool {
        matches!(self.content, Content::Absent | Content::LeftOut)
    }

    /// The entry's identity.
    pub const fn id(&self) -> EntryId {
        self.id
    }

    /// The entry's text, as it came or was first written.
    pub fn json(&self) -> &str {
        &self.json
    }

    /// What this build makes of it.
    pub const fn content(&self) -> &Content {
        &self.content
    }

    /// The entry, if this build understands it.
    pub fn entry(&self) -> Option<&Entry> {
        match &self.content {
            Content::Known(entry) => Some(entry),
            Content::Unknown { .. } | Content::Absent | Content::LeftOut => None,
        }
    }

    /// The name of a field that this build does not know, in an entry of a kind that it knows.
    pub fn unread(&self) -> Option<&str> {
        self.unread.as_deref()
    }

    /// Does this build know all that it says?
    pub const fn is_read_wholly(&self) -> bool {
        matches!(self.content, Content::Known(_)) && self.unread.is_none()
    }

    /// The text without its white space and key order, by which two records are the
    /// same however they were laid out.
    pub fn canonical(&self) -> String {
        serde_json::from_str::<Value>(&self.json).map_or_else(|_| self.json.to_string(), |value| value.to_string())
    }
}

impl BadRecord {
    fn at(path: impl Into<String>, problem: impl Into<String>) -> Self {
        Self { path: path.into(), problem: problem.into() }
    }
}

/// Parses JSON; a fault is told with its path.
fn parse<'a, T: Deserialize<'a>>(json: &'a str) -> Result<T, BadRecord> {
    serde_json::from_str(json)
        .map_err(|error| BadRecord::at(path_at(json, error.line(), error.column()), plain(&error)))
}

/// The message without serde's position, which counts inside one entry and would
/// mislead in a file of many.
fn plain(error: &serde_json::Error) -> String {
    let text = error.to_string();
    text.split(" at line ").next().unwrap_or(&text).to_owned()
}

/// The name of a field in an entry's text that is not in the entry as it was read.
fn unread_field(json: &str, entry: &Entry) -> Option<Arc<str>> {
    let read = serde_json::to_string(entry).ok()?;
    // As every entry of this build's own.
    if read == json {
        return None;
    }
    let [came, read] = [json, &read].map(|text| serde_json::from_str::<Value>(text).ok());
    lacking(&came?, &read?).map(Into::into)
}

/// The first name that `read` lacks. One whose value is null says nothing.
fn lacking<'a>(came: &'a Value, read: &Value) -> Option<&'a str> {
    match (came, read) {
        (Value::Object(came), Value::Object(read)) => came.iter().find_map(|(name, came)| match read.get(name) {
            Some(read) => lacking(came, read),
            None => (!came.is_null()).then_some(name.as_str()),
        }),
        (Value::Array(came), Value::Array(read)) => came.iter().zip(read).find_map(|(came, read)| lacking(came, read)),
        _ => None,
    }
}

/// The name of the act or observation, if this build does not know it.
fn unknown_kind(act: &str) -> Option<String> {
    let Value::Object(act) = serde_json::from_str(act).ok()? else { return None };
    let (name, body) = act.iter().next()?;
    match name.as_str() {
        "record" => unknown_observation(body),
        "correct" => unknown_observation(body.get("to")?),
        "withdraw" => None,
        _ => Some(name.clone()),
    }
}

fn decides_nothing(act: &str) -> bool {
    let (decides, nothing) = DECIDES;
    let act = serde_json::from_str::<Value>(act).unwrap_or_default();
    act.get(ABSENT).and_then(|body| body.get(decides)).is_some_and(|word| word == nothing)
}

fn unknown_observation(body: &Value) -> Option<String> {
    let (name, _) = body.as_object()?.iter().next()?;
    (!Observation::NAMES.contains(&name.as_str())).then(|| name.clone())
}
