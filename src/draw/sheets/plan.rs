//! The pieces where they lie.

use super::piece;
use crate::draw::frame::Extent;
use crate::draw::lettering::Lettering;
use crate::draw::px::PxBox;
use crate::draw::{Canvas, Drawing, Frame, Item, Reads, Role};
use crate::engine::geometry::Rect;
use crate::engine::sheets::cut_list::Numbered;
use crate::engine::sheets::{CutList, ToLay};
use crate::engine::survey::Run;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Rows of letters left free around the floor.
const MARGIN: f64 = 2.2;

/// Every piece with its number, over the joists, on the opening as it is cut.
pub fn layout_plan(floor: &ToLay, list: &CutList, units: Units, canvas: Canvas) -> Drawing {
    let lettering = Lettering::on(canvas);
    let sheet = PxBox { left: 0.0, top: 0.0, right: f64::from(canvas.width_px), bottom: f64::from(canvas.height_px) };
    let area = sheet.grown(-MARGIN * lettering.size);
    let bounds = Rect::around(&floor.cut_back);
    let extent = Extent { least: bounds.least(), most: bounds.most() };
    let frame = Frame::fit(extent, area, false);
    let mut items: Vec<_> =
        list.pieces.iter().flat_map(|numbered| drawn(floor, list, numbered, &frame, lettering)).collect();
    items.extend(joists(floor, &frame));
    let spots = floor.placed.iter().map(|corner| frame.spot(*corner)).collect();
    items.push(Item::Path { spots, closed: true, role: Role::CutLine });
    items.extend(strings(bounds, units, &frame, lettering));
    let title = format!("{}: {}, numbered as laid", floor.name, super::counted(list.pieces.len(), "piece"));
    Drawing { canvas, title, items, frame: Some(frame), unplaced: Vec::new() }
}

fn drawn(floor: &ToLay, list: &CutList, numbered: &Numbered, frame: &Frame, lettering: Lettering) -> Vec<Item> {
    let (x, y) = numbered.piece.at;
    let size = numbered.piece.size;
    let corners = (floor.on_plan((x, y)), floor.on_plan((x + size.width, y + size.height)));
    let Some(rect) = Rect::between(corners.0, corners.1) else { return Vec::new() };
    let is_uncut = list.sheets.iter().any(|sheet| sheet.number == numbered.sheet && sheet.is_laid_whole());
    let role = if is_uncut { Role::WholeSheet } else { Role::Piece };
    piece(on_canvas(frame, rect), numbered.number, "", lettering, role)
}

fn joists(floor: &ToLay, frame: &Frame) -> Vec<Item> {
    let Ok(case) = &floor.case else { return Vec::new() };
    let end = case.region.y.1;
    let line = |x: &i32| Item::Line {
        from: frame.spot(floor.on_plan((*x, 0))),
        to: frame.spot(floor.on_plan((*x, end))),
        role: Role::JoistBelow,
    };
    case.asked.joists.iter().map(line).collect()
}

/// The floor's two lengths, above and to the left.
fn strings(rect: Rect, units: Units, frame: &Frame, lettering: Lettering) -> [Item; 2] {
    let area = on_canvas(frame, rect);
    let text = |length: Length| units.length(length);
    let mut above = area.middle();
    above.y = area.top - lettering.size;
    let mut left = area.middle();
    left.x = area.left - lettering.size;
    [
        lettering.write(&text(rect.width()), above, Reads::Across, Role::DimensionText),
        lettering.write(&text(rect.height()), left, Reads::Up, Role::DimensionText),
    ]
}

fn on_canvas(frame: &Frame, rect: Rect) -> PxBox {
    let (least, most) = (frame.spot(rect.least()), frame.spot(rect.most()));
    PxBox { left: least.x, top: least.y, right: most.x, bottom: most.y }
}

/// Do courses run across the page?
pub(super) const fn runs_across(run: Run) -> bool {
    matches!(run, Run::AcrossFirstSide)
}
