//! Prices that the office filled in, taken into the job as entries.

use crate::figures;
use crate::files;
use crate::merge::{nothing_in_the_way, now};
use crate::trouble::Trouble;
use duckboard::engine::describe::counted;
use duckboard::engine::entry::{DeviceId, Label, Logger, Role, Stamp, Text};
use duckboard::engine::job::{Book, Entry, Observation, Pen, Record};
use duckboard::engine::particular::{Part, Particular, Particulars, Value, list, stated};
use duckboard::engine::units::tape::BareUnit;
use duckboard::file::tables::orders::COLUMNS;
use duckboard::file::{JobFile, Made, write};
use sha2::{Digest, Sha256};
use std::path::Path;
use std::time::{SystemTime, UNIX_EPOCH};

/// Writes a job file with the list's prices in it.
pub(crate) fn take_in(file: &Path, list: &Path, output: &Path, force: bool) -> Result<(), Trouble> {
    if !force {
        nothing_in_the_way(output, &[file])?;
    }
    let sound: JobFile = files::sound(file)?;
    let text = std::fs::read(list).map_err(|error| Trouble::unreadable(list, error))?;
    let faulty = |words: String| Trouble::Prices { file: list.to_owned(), words };
    let mut book = sound.book();
    let prices = prices(&text, &book).map_err(faulty)?;
    let entries = entries(&book, &prices, device(&text));
    let count = entries.len();
    for entry in entries {
        book.add(Record::of(entry).map_err(|error| faulty(error.to_string()))?);
    }
    let mut priced = JobFile::of(&book, sound.job.id, sound.revision, Made::here(now()));
    priced.extra = sound.extra;
    priced.job.extra = sound.job.extra;
    priced.left_out = sound.left_out;
    priced.version = sound.version.max(priced.version);
    let priced = priced.with_photos(sound.photos);
    if let Some(why) = write::too_large(&priced) {
        return Err(Trouble::TooLarge(why));
    }
    files::write_whole(output, write::parts(&priced, &figures::snapshot(book.job())))?;
    files::print(&format!("{}: {} taken in.\n", output.display(), counted(count, "price")))
}

/// Every price that is not so yet. All that is wrong is told at once.
fn prices(text: &[u8], book: &Book) -> Result<Vec<Particular>, String> {
    let mut reader = csv::ReaderBuilder::new().flexible(true).from_reader(text);
    let headers = reader.headers().map_err(|error| error.to_string())?.clone();
    let column = |name: &str| {
        let at = headers.iter().position(|header| header.trim_start_matches('\u{feff}').trim() == name);
        at.ok_or_else(|| format!("there is no column \"{name}\"; expected are {}", COLUMNS.join(", ")))
    };
    let (item, price) = (column("item")?, column("price each")?);
    let (mut found, mut faults) = (Vec::new(), Vec::new());
    for (number, row) in (2..).zip(reader.records()) {
        let row = row.map_err(|error| error.to_string())?;
        let (item, price) = (row.get(item).unwrap_or_default().trim(), row.get(price).unwrap_or_default().trim());
        if price.is_empty() {
            continue;
        }
        let part = Label::new(item).map_err(|error| error.to_string()).and_then(|item| {
            if item.is_empty() { Err("it has a price and no item".to_owned()) } else { Ok(Part::Order(item)) }
        });
        match part.and_then(|part| stated(part, &list::PRICE, price, BareUnit::Inches)) {
            Ok(said) if is_so(book, &said) => {}
            Ok(said) => found.push(said),
            Err(words) => faults.push(format!("line {number}: {words}")),
        }
    }
    if faults.is_empty() { Ok(found) } else { Err(faults.join("; ")) }
}

fn is_so(book: &Book, said: &Particular) -> bool {
    let value = |value: &Value| if let Value::Amount(typed) = value { Some(typed.value) } else { None };
    Particulars::of(book.job()).amount(&said.of, &list::PRICE) == value(&said.is)
}

fn entries(book: &Book, prices: &[Particular], device: DeviceId) -> Vec<Entry> {
    let by = Logger { initials: Text::fitted("office"), role: Role::Office };
    let mut pen = Pen::new(book.log(), device, Stamp { at: now(), by, visit: None });
    prices.iter().map(|price| pen.record(Observation::Particular(price.clone()))).collect()
}

/// A device that no other run is: what was typed, the moment and the process, digested.
fn device(text: &[u8]) -> DeviceId {
    let moment = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default().as_nanos();
    let digest = Sha256::new()
        .chain_update(text)
        .chain_update(moment.to_le_bytes())
        .chain_update(std::process::id().to_le_bytes())
        .finalize();
    let bits = digest.iter().take(16).fold(0_u128, |bits, byte| bits << 8 | u128::from(*byte));
    DeviceId::new(bits)
}
