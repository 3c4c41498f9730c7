//! Everything that the sample job comes to but the search for its sheets: the answers, every
//! card of water and of what is under the house, drawings written out, and what to order
//! beside sheets.

use duckboard::draw::card::Card;
use duckboard::draw::under::under;
use duckboard::draw::water::water;
use duckboard::draw::{Canvas, svg};
use duckboard::engine::entry::DeviceId;
use duckboard::engine::job::{Book, Record};
use duckboard::engine::orders::needs;
use duckboard::engine::results::answers;
use duckboard::engine::sample;
use duckboard::engine::take::Units;

const CANVAS: Canvas = Canvas { width_px: 358, height_px: 298 };

/// What it came to: the same on every machine.
pub fn whole() -> String {
    let units = Units::default();
    let records = sample::entries(DeviceId::new(7)).into_iter().filter_map(|entry| Record::of(entry).ok());
    let book = Book::of(records);
    let job = book.job();
    let answers = answers(job, units).len();
    let cards: Vec<Card> = water(job, units, CANVAS).into_iter().chain(under(job, units, CANVAS)).collect();
    let drawn: usize =
        cards.iter().filter_map(|card| card.drawing.as_ref()).map(|drawing| svg::write(drawing).len()).sum();
    let (needed, _) = needs(job, None, units);
    format!("whole job {answers} answers {} cards {drawn} bytes drawn {} needed", cards.len(), needed.len())
}
