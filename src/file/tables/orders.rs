//! The order list as rows, and prices read back from such rows.

use crate::engine::orders::{Change, Line, OrderList};
use crate::file::csv::Cell;

/// The columns, in order. The office fills the price and leaves the rest.
pub const COLUMNS: [&str; 10] =
    ["section", "item", "needed", "unit", "waste %", "on hand", "to order", "price each", "changed", "from"];

/// One row of the list.
pub fn cells(line: &Line) -> Vec<Cell> {
    let needed = &line.needed;
    vec![
        Cell::text(needed.section.label()),
        Cell::text(&needed.name),
        Cell::Number(needed.amount.shown()),
        Cell::text(needed.unit.label()),
        Cell::Number(line.waste.shown()),
        Cell::Number(line.on_hand.shown()),
        Cell::Number(line.to_order.shown()),
        line.price.map_or_else(|| Cell::text(""), |price| Cell::Number(price.shown())),
        Cell::text(line.change.map(Change::words).unwrap_or_default()),
        Cell::text(needed.from.join("; ")),
    ]
}

/// The whole list as CSV.
pub fn csv(list: &OrderList) -> String {
    let rows: Vec<_> = list.lines.iter().map(cells).collect();
    crate::file::csv::table(&COLUMNS, rows.iter().map(Vec::as_slice))
}
