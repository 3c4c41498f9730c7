//! The format's JSON Schema, made from the types that read and write it.
//!
//! The schema is as open as the reader: unknown fields are allowed everywhere, and an
//! entry may be of a kind of a later version as long as it has an id. An entry of a
//! *known* kind has to be right: the open alternative excludes the known names, or it
//! would let every mistake through.

use super::limits::{ENTRIES, LEFT_OUT, PHOTO_BYTES, PHOTOS};
use super::model::{FORMAT, Made};
use super::version::Version;
use super::write::Results;
use crate::engine::entry::{EntryId, JobId};
use crate::engine::job::{Entry, Observation};
use crate::engine::photo::{Digest, MediaType};
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};
use std::borrow::Cow;

/// The command that writes the schema anew.
pub const REGENERATE: &str = "cargo office schema > public/duckboard-job.schema.json";

/// The schema as the text of its file.
pub fn text() -> String {
    let mut schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<Envelope<'_>>();
    schema.insert("title".into(), "Duckboard job file".into());
    schema.insert("$comment".into(), format!("Made from the engine's types by: {REGENERATE}").into());
    serde_json::to_string_pretty(schema.as_value()).unwrap_or_default() + "\n"
}

/// A field job of Duckboard: every entry that was logged, its photos, and a snapshot of
/// the figures. Known by `format`, not by the file's name.
#[derive(JsonSchema)]
#[expect(dead_code, reason = "only its shape is used")]
struct Envelope<'a> {
    /// Says what the file is.
    #[schemars(schema_with = "format_name")]
    format: String,
    /// Major and minor version of the format. A newer minor version adds, and its
    /// additions are to be carried through; a newer major version is not to be read.
    #[schemars(schema_with = "version")]
    version: String,
    /// Counts the hand-overs of one job.
    revision: u32,
    /// When and by what the file was made.
    made: Made,
    /// Which job it is.
    job: Head,
    /// What was left out on purpose: "photos", "client", "not_read", "cautions_read"; of an old
    /// invitation "readings".
    #[schemars(default, length(max = LEFT_OUT))]
    left_out: Vec<String>,
    /// The log. Nothing in it is ever edited: a correction is an entry of its own.
    #[schemars(schema_with = "entries")]
    entries: Vec<Value>,
    /// The photos that entries name by digest.
    #[schemars(default, length(max = PHOTOS))]
    photos: Vec<PhotoItem>,
    /// What the engine computed when the file was made: a snapshot, not to be read back.
    #[schemars(default)]
    results: Option<Results<'a>>,
}

/// Which job it is.
#[derive(JsonSchema)]
#[schemars(rename = "JobHead")]
#[expect(dead_code, reason = "only its shape is used")]
struct Head {
    /// The job.
    id: JobId,
    /// The job's heading, for people: computed again from the entries when read.
    #[schemars(default)]
    heading: String,
}

/// A photo. Its bytes are believed only if size, digest and type agree with them.
#[derive(JsonSchema)]
#[schemars(rename = "FilePhoto")]
#[expect(dead_code, reason = "only its shape is used")]
struct PhotoItem {
    /// The digest of the bytes.
    sha256: Digest,
    /// What the bytes are.
    r#type: MediaType,
    /// How many bytes there are.
    #[schemars(range(max = PHOTO_BYTES))]
    size: u32,
    /// When it was taken.
    #[schemars(extend("format" = "date-time"))]
    at: String,
    /// The bytes; absent if they were left out.
    #[schemars(default, extend("contentEncoding" = "base64"))]
    base64: Option<String>,
}

fn format_name(_: &mut SchemaGenerator) -> Schema {
    json_schema!({ "const": FORMAT })
}

fn version(_: &mut SchemaGenerator) -> Schema {
    let pattern = format!("^{}\\.(0|[1-9][0-9]{{0,4}})$", Version::CURRENT.major);
    json_schema!({ "type": "string", "pattern": pattern })
}

fn entries(generator: &mut SchemaGenerator) -> Schema {
    let known = generator.subschema_for::<Entry>();
    let later = generator.subschema_for::<LaterEntry>();
    json_schema!({ "type": "array", "maxItems": ENTRIES, "items": { "anyOf": [known, later] } })
}

/// An entry whose act or observation this version has no name for.
struct LaterEntry;

impl JsonSchema for LaterEntry {
    fn schema_name() -> Cow<'static, str> {
        "LaterEntry".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let observation = none_of(Observation::NAMES);
        json_schema!({
            "description": "An entry of a kind of a later version: carried through untouched.",
            "type": "object",
            "required": ["id", "act"],
            "properties": {
                "id": generator.subschema_for::<EntryId>(),
                "act": { "anyOf": [
                    none_of(&["record", "correct", "withdraw"]),
                    { "type": "object", "required": ["record"], "properties": { "record": observation } },
                    { "type": "object", "required": ["correct"], "properties": {
                        "correct": { "type": "object", "required": ["to"], "properties": { "to": observation } }
                    } },
                ] },
            },
        })
    }
}

/// An object with a name that is none of these.
fn none_of(names: &[&str]) -> Value {
    json!({ "type": "object", "minProperties": 1, "propertyNames": { "not": { "enum": names } } })
}
