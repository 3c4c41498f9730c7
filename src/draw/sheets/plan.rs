//! The pieces where they lie.

use super::piece;
use crate::draw::frame::Extent;
use crate::draw::lettering::Lettering;
use crate::draw::px::PxBox;
use crate::draw::{Canvas, Drawing, Frame, Item, Reads, Role};
use crate::engine::describe::counted;
use crate::engine::geometry::Rect;
use crate::engine::sheets::cut_list::Numbered;
use crate::engine::sheets::layout::{Corner, Kind};
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
    let title = format!("{}: {}, numbered as laid", floor.name, counted(list.pieces.len(), "piece"));
    Drawing { canvas, title, items, frame: Some(frame), unplaced: Vec::new() }
}

fn drawn(floor: &ToLay, list: &CutList, numbered: &Numbered, frame: &Frame, lettering: Lettering) -> Vec<Item> {
    if !numbered.form.trims.is_empty() {
        return trimmed(floor, numbered, frame, lettering);
    }
    let Some(area) = area(floor, numbered.piece.at, numbered.piece.size, frame) else { return Vec::new() };
    let is_uncut = list.sheets.iter().any(|sheet| sheet.number == numbered.sheet && sheet.is_laid_whole());
    let role = if is_uncut { Role::WholeSheet } else { Role::Piece };
    piece(area, numbered.number, "", lettering, role)
}

/// A piece that is no rectangle: what it covers, its edges, and the number on its
/// largest strip.
fn trimmed(floor: &ToLay, numbered: &Numbered, frame: &Frame, lettering: Lettering) -> Vec<Item> {
    let (x, y) = numbered.piece.at;
    let spot = |(along, up): Corner| frame.spot(floor.on_plan((x + along, y + up)));
    let form = &numbered.form;
    let fills = form.strips.iter().map(|strip| Item::Path {
        spots: strip.map(spot).to_vec(),
        closed: true,
        role: Role::PieceFill,
    });
    let edges =
        form.edges.iter().map(|edge| Item::Line { from: spot(edge.from), to: spot(edge.to), role: Role::Piece });
    let mut items: Vec<_> = fills.chain(edges).collect();
    let size = |strip: &&[Corner; 4]| {
        let [from, _, to, _] = **strip;
        i64::from(to.0 - from.0) * i64::from(to.1 - from.1)
    };
    if let Some([from, _, to, _]) = form.strips.iter().max_by_key(size) {
        let size = Kind { width: to.0 - from.0, height: to.1 - from.1 };
        let area = area(floor, (x + from.0, y + from.1), size, frame);
        items.extend(area.into_iter().flat_map(|area| super::numbered(area, numbered.number, "", lettering)));
    }
    items
}

/// Where a rectangle of the layout lies on the canvas.
fn area(floor: &ToLay, (x, y): Corner, size: Kind, frame: &Frame) -> Option<PxBox> {
    let corners = (floor.on_plan((x, y)), floor.on_plan((x + size.width, y + size.height)));
    Rect::between(corners.0, corners.1).map(|rect| on_canvas(frame, rect))
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
