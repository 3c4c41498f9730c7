//! The figures that a report and a written file show: the one place that names them.
//! Everything else in the command takes them as they come.

use duckboard::engine::job::Job;
use duckboard::engine::sheets::sheets_by_area;
use duckboard::engine::survey::{closing_error, opening_area, room_area};
use duckboard::engine::units::Area;
use duckboard::file::SnapshotFigure;

/// Every figure of the job, computed now.
pub(crate) fn figures(job: &Job) -> Vec<SnapshotFigure> {
    vec![
        SnapshotFigure::of("Room area", &room_area(job), |area| square_feet(*area)),
        SnapshotFigure::of("Area to come out", &opening_area(job), |area| square_feet(*area)),
        SnapshotFigure::of("Sheets by area", &sheets_by_area(job), ToString::to_string),
        SnapshotFigure::of("Closing error of the walls", &closing_error(job), |error| {
            format!("{:.2} in", error.misclosure().to_inches())
        }),
    ]
}

fn square_feet(area: Area) -> String {
    format!("{:.1} sq ft", area.to_square_feet())
}
