//! Sheets in plan and on the saw horses: where each piece lies, and how each sheet is
//! cut. The same drawings go on the screen, on paper and beside the office's report.

mod cutting;
mod needed;
mod page;
mod plan;

pub use cutting::cutting;
pub use needed::{Needed, sources};
pub use page::{CutSheet, SheetPage};
pub use plan::layout_plan;

use super::lettering::Lettering;
use super::px::PxBox;
use super::{Anchor, Item, Reads, Role, Spot};

/// How much larger a piece's number is than other letters.
const NUMBER: f64 = 1.5;

fn box_path(area: PxBox, role: Role) -> Item {
    let PxBox { left, top, right, bottom } = area;
    let spots = [(left, top), (right, top), (right, bottom), (left, bottom)].map(|(x, y)| Spot { x, y });
    Item::Path { spots: spots.to_vec(), closed: true, role }
}

/// A piece with its number, and what else there is room to say.
fn piece(area: PxBox, number: usize, size: &str, lettering: Lettering, role: Role) -> Vec<Item> {
    let mut items = vec![box_path(area, role)];
    items.extend(numbered(area, number, size, lettering));
    items
}

/// The number in the middle of an area, and below it what there is room to say.
fn numbered(area: PxBox, number: usize, size: &str, lettering: Lettering) -> Vec<Item> {
    let middle = area.middle();
    let number = number.to_string();
    let (of_number, of_size) = (lettering.measure(&number), lettering.measure(size));
    let says_size =
        of_size.width < area.width() - 6.0 && of_size.height + of_number.height * NUMBER < area.height() - 6.0;
    let lift = if says_size { of_size.height * 0.7 } else { 0.0 };
    let at = Spot { y: middle.y - lift, ..middle };
    let fits = area.height().min(area.width()) / (of_number.height * 1.2);
    let scale = NUMBER.min(fits).max(1.0);
    let mut items = vec![Item::Text {
        at,
        anchor: Anchor::Middle,
        reads: Reads::Across,
        size: lettering.size * scale,
        text: number.clone(),
        role: Role::PieceNumber,
    }];
    if says_size {
        let below = Spot { y: middle.y + of_number.height * NUMBER * 0.6, ..middle };
        items.push(lettering.write(size, below, Reads::Across, Role::DimensionText));
    }
    items
}
