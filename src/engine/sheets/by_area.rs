//! Sheets by area alone, as carpenters estimate.

use crate::engine::figure::{Figure, Known, Why};
use crate::engine::job::{Job, SheetSize};
use crate::engine::sources::Source;
use crate::engine::survey::opening_area;

/// The carpenter's estimate: opening area over sheet area, rounded up. Neither a bound
/// (gaps and joints push either way) nor enough to order by. A 4 × 8 ft sheet is
/// assumed unless the job names another.
///
/// Source: common practice, no source.
pub fn sheets_by_area(job: &Job) -> Figure<u32> {
    let area = match opening_area(job) {
        Figure::Known(known) => known,
        Figure::Missing(needs) => return Figure::Missing(needs),
    };
    let stated = job.stated_sheet().cloned();
    let mut assumed = area.assumed;
    if stated.is_none() {
        assumed.push("4 × 8 ft sheets".to_owned());
    }
    let sheet = stated.unwrap_or_else(SheetSize::four_by_eight);
    let each = sheet.width.value * sheet.length.value;
    let why = Why::rule("Opening area divided by the area of one sheet, rounded up", &[Source::SheetsByArea])
        .with("opening", format!("{:.2} sq ft", area.value.to_square_feet()))
        .with("sheet", format!("{} × {}", sheet.width.typed, sheet.length.typed))
        .using(area.why.used);
    let mut doubts = area.doubts;
    doubts.push("An estimate: gaps and joints push it either way, so it is not enough to order by.".to_owned());
    match area.value.pieces_of(each) {
        Some(value) => Figure::Known(Known { value, assumed, doubts, why }),
        None => Figure::Missing(vec![crate::engine::figure::Need::Opening]),
    }
}
