//! Sheets laid out: the plan, and each sheet as it is cut, for the saw horses.

use crate::files;
use crate::report::markdown::{list, plain};
use crate::report::{SHEET, title_block};
use crate::trouble::Trouble;
use duckboard::draw::sheets::{CutSheet, SheetPage, sources};
use duckboard::draw::{Canvas, Drawing, svg};
use duckboard::engine::figure::{Figure, Known, Need};
use duckboard::engine::job::Job;
use duckboard::engine::orders::{Line, lines_with};
use duckboard::engine::sheets::{FloorSearch, Searches, ToLay, at_the_saw, to_lay};
use duckboard::engine::take::Units;
use duckboard::file::Salvage;
use std::fs;
use std::path::{Path, PathBuf};

/// As large as a page takes.
const CANVAS: Canvas = Canvas { width_px: 640, height_px: 460 };

/// The folder that a layout goes to unless another is named.
pub(crate) fn folder_for(file: &Path) -> PathBuf {
    let stem = file.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    PathBuf::from(format!("{stem}-sheets"))
}

/// Writes the page, its plan and its cutting drawings.
pub(crate) fn write(salvage: &Salvage, folder: &Path, force: bool) -> Result<(), Trouble> {
    let page = folder.join("sheets.md");
    if page.exists() && !force {
        return Err(Trouble::InTheWay { file: page, is_input: false });
    }
    fs::create_dir_all(folder).map_err(|error| Trouble::unwritable(folder, error))?;
    let book = salvage.file.book();
    let body = match to_lay(book.job()) {
        Figure::Missing(needs) => missing(&needs),
        Figure::Known(known) => laid(book.job(), &known, folder)?,
    };
    let text = format!("{}\n{body}", title_block(&salvage.file, book.job()));
    files::write_whole(&page, std::iter::once(text))?;
    files::print(&format!("{}\n", page.display()))
}

fn missing(needs: &[Need]) -> String {
    let needs: Vec<_> = needs.iter().map(|need| need.words().to_owned()).collect();
    format!("## Sheets\n\nNot enough to lay sheets out:\n\n{}", list(&needs))
}

fn laid(job: &Job, known: &Known<Vec<ToLay>>, folder: &Path) -> Result<String, Trouble> {
    let mut text = String::new();
    let searches = Searches::finished(job, known.value.clone());
    let (ordered, _) = lines_with(job, Some(&searches), Units::default());
    for (number, floor) in (1..).zip(searches.floors()) {
        text += &laid_floor(floor, &ordered, folder, number)?;
    }
    text += &section("Assumed", &known.assumed);
    text += &section("Doubtful", &known.doubts);
    text += &section("Sources", &sources());
    Ok(text + &section("At the saw", &at_the_saw(job, Units::default())))
}

/// One floor: its plan and its sheets. The first floor's files have the plain names.
fn laid_floor(search: &FloorSearch, ordered: &[Line], folder: &Path, number: usize) -> Result<String, Trouble> {
    let Some(page) = SheetPage::of(search, ordered, Units::default(), CANVAS) else { return Ok(String::new()) };
    let prefix = if number == 1 { String::new() } else { format!("floor-{number}-") };
    let mut text = format!("## {}: {}\n\n{}\n\n", plain(&page.name), plain(&page.headline), plain(&page.line));
    if let Some(plan) = &page.plan {
        text += &format!("### Plan\n\n{}", drawn(plan, folder, &format!("{prefix}plan.svg"))?);
    }
    for (sheet_number, sheet) in (1..).zip(&page.sheets) {
        text += &cut_sheet(sheet, folder, &format!("{prefix}sheet-{sheet_number}.svg"))?;
    }
    for need in &page.needed {
        text += &section(&format!("{}: {}", need.title, plain(&need.headline)), &need.lines);
    }
    Ok(text)
}

fn section(title: &str, lines: &[String]) -> String {
    if lines.is_empty() { String::new() } else { format!("### {title}\n\n{}\n", list(lines)) }
}

fn cut_sheet(sheet: &CutSheet, folder: &Path, file: &str) -> Result<String, Trouble> {
    let mut text = format!("### {}\n\n", plain(&sheet.title));
    if let Some(drawing) = &sheet.drawing {
        text += &drawn(drawing, folder, file)?;
    }
    for (number, cut) in (1..).zip(&sheet.cuts) {
        text += &format!("{number}. {}\n", plain(cut));
    }
    Ok(text + "\n")
}

fn drawn(drawing: &Drawing, folder: &Path, file: &str) -> Result<String, Trouble> {
    files::write_whole(
        &folder.join(file),
        std::iter::once(svg::write_alone(drawing, &SHEET.replace("@media print", "@media all"))),
    )?;
    Ok(format!("![{}]({file})\n\n", plain(&drawing.title)))
}
