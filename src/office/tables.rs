//! The job's rows as CSV.

use duckboard::engine::job::{Book, Job};
use duckboard::engine::orders::order_list;
use duckboard::engine::take::Units;
use duckboard::file::csv::{Cell, table};
use duckboard::file::tables::{LengthRow, ReadingRow, lengths, orders, readings};

pub(crate) fn readings_csv(job: &Job) -> String {
    csv(&ReadingRow::COLUMNS, readings(job).iter().map(ReadingRow::cells))
}

pub(crate) fn lengths_csv(job: &Job) -> String {
    csv(&LengthRow::COLUMNS, lengths(job).iter().map(LengthRow::cells))
}

pub(crate) fn orders_csv(book: &Book) -> String {
    orders::csv(&order_list(book, Units::default()))
}

fn csv(columns: &[&str], rows: impl Iterator<Item = Vec<Cell>>) -> String {
    let rows: Vec<Vec<Cell>> = rows.collect();
    table(columns, rows.iter().map(Vec::as_slice))
}
