//! What a file holds, and everything that is wrong with it.

use crate::files;
use crate::trouble::Trouble;
use duckboard::engine::describe::counted;
use duckboard::engine::entry::EntryId;
use duckboard::engine::job::{Book, Fault, Job, Log, Record};
use duckboard::engine::particular::{Particular, item_of};
use duckboard::file::{JobFile, LeftOut, Refusal, Salvage};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

pub(crate) fn check(path: &Path) -> Result<(), Trouble> {
    let (told, faults) = match files::salvaged(path) {
        Ok(salvage) => tell(&salvage),
        // Here all of them are told, not only the first few.
        Err(Trouble::Refused { refusal: Refusal::Faults(faults), .. }) => {
            let lines = faults.iter().fold(String::new(), |lines, fault| lines + &format!("Damaged: {fault}\n"));
            (lines, faults.len())
        }
        Err(trouble) => return Err(trouble),
    };
    files::print(&told)?;
    if faults == 0 { files::print("No faults.\n") } else { Err(Trouble::Faulty { count: faults }) }
}

/// The whole account, and the number of faults in it.
fn tell(salvage: &Salvage) -> (String, usize) {
    let file = &salvage.file;
    let book = file.book();
    let mut told = summary(file, &book);
    let mut faults: Vec<String> = salvage.faults.iter().map(|fault| format!("Damaged: {fault}")).collect();
    faults.extend(book.log().clashes().map(|id| format!("Clash: two entries say different things under {id}")));
    faults.extend(book.job().faults.iter().map(|(id, fault)| format!("Cannot be followed: {id} {}", words(*fault))));
    faults.extend(
        dangling(book.log()).map(|(id, to)| format!("Dangling: {id} refers to {to}, which is not in the file")),
    );
    for line in &faults {
        // Writing to a string cannot fail.
        let _ = writeln!(told, "{line}");
    }
    (told, faults.len())
}

fn summary(file: &JobFile, book: &Book) -> String {
    let job = book.job();
    let mut lines = vec![
        format!("Job: {} ({})", job.heading(), file.job.id),
        format!("Format {}, revision {}, made {} by {}", file.version, file.revision, file.made.at, file.made.engine),
        format!("{}, {}", counted(file.entry_count(), "entry"), photos(file)),
    ];
    if job.is_invented() {
        lines.push("INVENTED SAMPLE: nothing in it was measured at a real house.".to_owned());
    }
    if !file.left_out.is_empty() {
        // Readings go together with their photos, and say so.
        let has_readings = file.left_out.contains(&LeftOut::Readings);
        let marks = file.left_out.iter().filter(|it| !(has_readings && **it == LeftOut::Photos));
        let marks: Vec<String> = marks.map(ToString::to_string).collect();
        lines.push(format!("Left out on purpose: {}", marks.join(", ")));
    }
    for (thing, corrections) in &job.conflicts {
        lines.push(format!(
            "Conflict: {thing} was corrected or taken back in {} ways, and nobody has picked",
            corrections.len()
        ));
    }
    lines.extend(not_counted(job));
    for (kind, count) in unknown_kinds(job.unknown.values()) {
        lines.push(format!("Not known here: {} with \"{kind}\", carried along", counted(count, "entry")));
    }
    if !job.absent.is_empty() {
        lines
            .push(format!("Not here: {}, left out of a file, or damaged", counted(job.absent.iter().count(), "entry")));
    }
    if !file.extra.is_empty() {
        let names: Vec<&str> = file.extra.iter().map(|(name, _)| name).collect();
        lines.push(format!("Not known here: {} ({})", counted(names.len(), "field"), names.join(", ")));
    }
    lines.iter().map(|line| format!("{line}\n")).collect()
}

/// Particulars that no calculation goes by, and why: none is a fault, and all are carried along.
fn not_counted(job: &Job) -> Vec<String> {
    let particulars = job.now.particulars().values().map(|it| it.value);
    let why = |it: &Particular| match item_of(it.what.as_str()) {
        None => Some("nothing here is known by these words".to_owned()),
        Some(item) if !item.allows(&it.is) => Some(item.accepts()),
        Some(_) => None,
    };
    let told = particulars
        .filter_map(|it| Some(format!("Not counted: {}, {}: {} ({})", it.of.name(), it.what, it.is.typed(), why(it)?)));
    told.collect()
}

fn photos(file: &JobFile) -> String {
    let here = file.photos.iter().filter(|photo| photo.bytes.is_some()).count();
    format!("{} here", counted(here, "photo"))
}

fn unknown_kinds<'a>(kinds: impl Iterator<Item = &'a String>) -> BTreeMap<&'a str, usize> {
    let mut counts = BTreeMap::new();
    for kind in kinds {
        *counts.entry(kind.as_str()).or_insert(0) += 1;
    }
    counts
}

fn words(fault: Fault) -> String {
    match fault {
        Fault::Dangling { of } => format!("is about {of}, which is not in the file"),
        Fault::Backwards { of } => format!("is about {of}, which does not come before it"),
        Fault::ChangesKind => "corrects one kind of thing into another".to_owned(),
        Fault::CorrectsNothing => "is a correction that names no entry".to_owned(),
    }
}

/// Entries that mention one that is not there, in whatever field, and which that is.
/// What a correction or withdrawal is about is told as a fault of its own.
fn dangling(log: &Log) -> impl Iterator<Item = (EntryId, EntryId)> {
    log.records().flat_map(|record| {
        let missing = mentioned(record).into_iter().filter(|id| log.get(*id).is_none());
        missing.map(|id| (record.id(), id)).collect::<Vec<_>>()
    })
}

fn mentioned(record: &Record) -> Vec<EntryId> {
    let mut found = Vec::new();
    if record.entry().is_some()
        && let Ok(mut entry) = serde_json::from_str::<Value>(record.json())
    {
        for about in ["/act/correct/of", "/act/withdraw"] {
            if let Some(about) = entry.pointer_mut(about) {
                *about = Value::Null;
            }
        }
        collect(&entry, &mut found);
    }
    found.sort_unstable();
    found.dedup();
    found
}

/// Every text that is an entry's id. Nothing else looks like one.
fn collect(value: &Value, found: &mut Vec<EntryId>) {
    match value {
        Value::String(text) => found.extend(text.parse::<EntryId>()),
        Value::Array(items) => items.iter().for_each(|item| collect(item, found)),
        Value::Object(fields) => fields.values().for_each(|field| collect(field, found)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}
