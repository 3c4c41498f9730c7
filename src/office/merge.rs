//! Two files into one.

use crate::figures;
use crate::files;
use crate::trouble::Trouble;
use chrono::DateTime;
use duckboard::engine::describe::counted;
use duckboard::engine::entry::Time;
use duckboard::file::{Made, merge, write};
use std::path::Path;
use std::time::{SystemTime, UNIX_EPOCH};

pub(crate) fn merge_files(a: &Path, b: &Path, output: &Path, force: bool) -> Result<(), Trouble> {
    if !force {
        nothing_in_the_way(output, &[a, b])?;
    }
    let (one, other) = (files::sound(a)?, files::sound(b)?);
    let before = one.entry_count().max(other.entry_count());
    let mut merged = merge(one, other).map_err(Trouble::OtherJob)?;
    merged.made = Made::here(now());
    if let Some(why) = write::too_large(&merged) {
        return Err(Trouble::TooLarge(why));
    }
    let book = merged.book();
    files::write_whole(output, write::parts(&merged, &figures::snapshot(book.job())))?;
    let conflicts = book.job().conflicts.len();
    files::print(&format!(
        "{}: {} ({} more than the larger of the two), {}.\n",
        output.display(),
        counted(merged.entry_count(), "entry"),
        merged.entry_count().saturating_sub(before),
        counted(merged.photos.len(), "photo"),
    ))?;
    if conflicts > 0 {
        let what = counted(conflicts, "thing");
        files::print(&format!("{what} corrected in two ways: open the job on a phone and pick, or see the report.\n"))?;
    }
    Ok(())
}

/// Refuses to write over anything: with its own words for one of the inputs.
pub(crate) fn nothing_in_the_way(output: &Path, inputs: &[&Path]) -> Result<(), Trouble> {
    if !output.exists() {
        return Ok(());
    }
    let same = |input: &&Path| match (input.canonicalize(), output.canonicalize()) {
        (Ok(input), Ok(output)) => input == output,
        _ => false,
    };
    Err(Trouble::InTheWay { file: output.to_owned(), is_input: inputs.iter().any(same) })
}

/// The desk's clock. One that is set before 1970 gives 1970.
pub(crate) fn now() -> Time {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    let seconds = i64::try_from(since.as_secs()).unwrap_or(0);
    DateTime::from_timestamp(seconds, 0).unwrap_or_default().fixed_offset()
}
