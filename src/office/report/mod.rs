//! The report: the job on paper, for the owner, the insurer and the file.
//!
//! What is missing and what was assumed comes first. Figures are computed now, never
//! taken from the file's snapshot.

mod cards;
pub(crate) mod markdown;
mod plan;
mod sections;

pub(crate) use plan::SHEET;
pub(crate) use sections::title_block;

use crate::figures;
use crate::files;
use crate::trouble::Trouble;
use duckboard::engine::job::Job;
use duckboard::file::{FilePhoto, Salvage};
use std::fs;
use std::path::{Path, PathBuf};

/// The folder that a report goes to unless another is named.
pub(crate) fn folder_for(file: &Path) -> PathBuf {
    let stem = file.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    PathBuf::from(format!("{stem}-report"))
}

/// Writes the report, its plan and its photos.
pub(crate) fn write(salvage: &Salvage, folder: &Path, force: bool) -> Result<(), Trouble> {
    let report = folder.join("report.md");
    if report.exists() && !force {
        return Err(Trouble::InTheWay { file: report, is_input: false });
    }
    let photos = folder.join("photos");
    fs::create_dir_all(&photos).map_err(|error| Trouble::unwritable(&photos, error))?;
    for photo in &salvage.file.photos {
        write_photo(photo, &photos)?;
    }
    let book = salvage.file.book();
    plan::write(book.job(), folder)?;
    let text = markdown_of(salvage, book.job(), &cards::sections(&book, folder)?);
    files::write_whole(&report, std::iter::once(text))?;
    files::print(&format!("{}\n", report.display()))
}

fn write_photo(photo: &FilePhoto, folder: &Path) -> Result<(), Trouble> {
    match &photo.bytes {
        Some(bytes) => files::write_whole(&folder.join(photo.file_name()), std::iter::once(bytes)),
        None => Ok(()),
    }
}

/// The report's text.
fn markdown_of(salvage: &Salvage, job: &Job, cards: &str) -> String {
    let figures = figures::told(job);
    [
        title_block(&salvage.file, job),
        sections::missing_and_assumed(salvage, job, &figures),
        plan::section(job),
        sections::figures(&figures),
        cards.to_owned(),
        sections::tables(job),
        sections::photos(&salvage.file, job),
        sections::cautions(job),
        sections::line_to_sign(),
    ]
    .join("\n")
}
