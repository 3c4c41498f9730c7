//! The plan beside the report, black on white.

use crate::files;
use crate::trouble::Trouble;
use duckboard::draw::{Canvas, View, job_plan, svg};
use duckboard::engine::job::Job;
use duckboard::engine::survey::Floor;
use duckboard::engine::take::Units;
use std::path::Path;

/// The name of the plan's file.
const FILE: &str = "plan.svg";
/// As large as the app prints it.
const CANVAS: Canvas = Canvas { width_px: 640, height_px: 460 };
/// The app's own style sheet of drawings.
pub(crate) const SHEET: &str = include_str!("../../../public/drawing.css");

/// Is there anything to draw?
fn is_drawn(job: &Job) -> bool {
    Floor::of(job).is_some_and(|floor| !floor.sides.is_empty())
}

/// Writes the plan, if there is one.
pub(super) fn write(job: &Job, folder: &Path) -> Result<(), Trouble> {
    if !is_drawn(job) {
        return Ok(());
    }
    let input = job_plan::of(job, Units::default(), None);
    let drawing = duckboard::draw::plan(&input, CANVAS, View { from_below: false });
    // A file knows no printer: what holds for print holds always.
    let sheet = SHEET.replace("@media print", "@media all");
    files::write_whole(&folder.join(FILE), std::iter::once(svg::write_alone(&drawing, &sheet)))
}

/// The report's section.
pub(super) fn section(job: &Job) -> String {
    let plan = if is_drawn(job) {
        format!("![Plan of the room with its lengths, openings, joists and readings]({FILE})")
    } else {
        "No room is measured yet.".to_owned()
    };
    format!("## Plan\n\n{plan}\n")
}
