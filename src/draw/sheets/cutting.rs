//! One sheet on the saw horses, its reference corner at the lower left.

use super::{box_path, piece};
use crate::draw::lettering::Lettering;
use crate::draw::px::PxBox;
use crate::draw::{Anchor, Canvas, Drawing, Item, Reads, Role, Spot};
use crate::engine::describe::counted;
use crate::engine::sheets::cut_list::{Cut, Rectangle, SheetPlan, Way};
use crate::engine::sheets::layout::{Corner, Sheet, Trim};
use crate::engine::sheets::to_lay::length;
use crate::engine::take::Units;

/// Rows of letters left free around the sheet.
const MARGIN: f64 = 1.8;

/// The sheet with its pieces, its cuts in order, and what is left over.
pub fn cutting(plan: &SheetPlan, name: &str, units: Units, canvas: Canvas) -> Drawing {
    let lettering = Lettering::on(canvas);
    let bench = Bench::new(plan.size, canvas, lettering);
    let mut items = vec![box_path(bench.area(plan.whole()), Role::Sheet)];
    items.extend(plan.offcuts.iter().map(|offcut| box_path(bench.area(*offcut), Role::Offcut)));
    for numbered in &plan.pieces {
        let size = numbered.piece.size;
        let area = Rectangle { at: numbered.piece.on_sheet, length: size.width, width: size.height };
        let words = format!("{} × {}", units.length(length(size.width)), units.length(length(size.height)));
        items.extend(piece(bench.area(area), numbered.number, &words, lettering, Role::Piece));
        items.extend(numbered.form.trims.iter().map(|trim| bench.trim(area.at, *trim)));
    }
    let mut marks = Vec::new();
    items.extend(plan.cuts.iter().flat_map(|cut| bench.cut(cut, lettering, &mut marks)));
    let title = format!("{name}: its {} and {}", counted(plan.pieces.len(), "piece"), counted(plan.cuts.len(), "cut"));
    Drawing { canvas, title, items, frame: None, unplaced: Vec::new() }
}

/// Where a sheet lies on the canvas.
struct Bench {
    left: f64,
    bottom: f64,
    /// Pixels in a sixteenth.
    scale: f64,
}

impl Bench {
    fn new(sheet: Sheet, canvas: Canvas, lettering: Lettering) -> Self {
        let margin = MARGIN * lettering.size;
        let (width, height) = (f64::from(canvas.width_px), f64::from(canvas.height_px));
        let along = (width - 2.0 * margin) / f64::from(sheet.length.max(1));
        let across = (height - 2.0 * margin) / f64::from(sheet.width.max(1));
        let scale = along.min(across).max(0.001);
        let (long, wide) = (f64::from(sheet.length) * scale, f64::from(sheet.width) * scale);
        Self { left: (width - long) / 2.0, bottom: (height + wide) / 2.0, scale }
    }

    fn area(&self, of: Rectangle) -> PxBox {
        let px = |sixteenths: i32| f64::from(sixteenths) * self.scale;
        let (left, bottom) = (self.left + px(of.at.0), self.bottom - px(of.at.1));
        PxBox { left, top: bottom - px(of.width), right: left + px(of.length), bottom }
    }

    /// Where a piece is trimmed after it is cut out.
    fn trim(&self, (x, y): Corner, trim: Trim) -> Item {
        let spot = |(along, up): Corner| Spot {
            x: self.left + f64::from(x + along) * self.scale,
            y: self.bottom - f64::from(y + up) * self.scale,
        };
        Item::Line { from: spot(trim.from), to: spot(trim.to), role: Role::Trim }
    }

    /// The saw's line, and the cut's number in a disc on it, clear of the others' `marks`.
    fn cut(&self, cut: &Cut, lettering: Lettering, marks: &mut Vec<Spot>) -> Vec<Item> {
        let area = self.area(cut.of);
        let at = f64::from(cut.at) * self.scale;
        let (from, to) = match cut.way {
            Way::Crosscut => (Spot { x: area.left + at, y: area.bottom }, Spot { x: area.left + at, y: area.top }),
            Way::Rip => (Spot { x: area.left, y: area.bottom - at }, Spot { x: area.right, y: area.bottom - at }),
        };
        let radius = lettering.size * 0.85;
        let mark = clear_of(marks, from, to, 2.0 * radius);
        marks.push(mark);
        vec![
            Item::Line { from, to, role: Role::Cut },
            Item::Disc { at: mark, radius, fill: None, role: Role::CutMark },
            Item::Text {
                at: mark,
                anchor: Anchor::Middle,
                reads: Reads::Across,
                size: lettering.size,
                text: cut.number.to_string(),
                role: Role::CutNumber,
            },
        ]
    }
}

/// The spot on a line that lies as far from the marks as they need: its end if that will
/// do, else further back; where there is no room, its end all the same.
fn clear_of(marks: &[Spot], from: Spot, to: Spot, apart: f64) -> Spot {
    let back = |part: f64| Spot { x: to.x + (from.x - to.x) * part, y: to.y + (from.y - to.y) * part };
    let is_clear = |spot: &Spot| marks.iter().all(|mark| libm::hypot(mark.x - spot.x, mark.y - spot.y) >= apart);
    [0.0, 1.0, 0.25, 0.75, 0.5].map(back).into_iter().find(is_clear).unwrap_or(to)
}
