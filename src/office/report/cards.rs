//! Pages of cards: water, what is under the house, the order list.

use super::SHEET;
use super::markdown::plain;
use crate::files;
use crate::trouble::Trouble;
use duckboard::draw::card::{Card, Tone};
use duckboard::draw::orders::orders;
use duckboard::draw::under::under;
use duckboard::draw::water::water;
use duckboard::draw::{Canvas, svg};
use duckboard::engine::job::{Book, Job};
use duckboard::engine::orders::order_list;
use duckboard::engine::take::Units;
use std::path::Path;

const CANVAS: Canvas = Canvas { width_px: 640, height_px: 460 };

/// Writes the drawings, and gives the sections' text. A job of which nothing of a page is
/// said has no such section.
pub(super) fn sections(book: &Book, folder: &Path) -> Result<String, Trouble> {
    let job = book.job();
    let mut text = String::new();
    if !job.now.readings().is_empty() || !job.now.checks().is_empty() {
        text += &section("Water", "water", &water(job, Units::default(), CANVAS), folder)?;
    }
    if is_under_said(job) {
        text += &section("Under the house", "under", &under(job, Units::default(), CANVAS), folder)?;
    }
    let list = order_list(book, Units::default());
    if !list.lines.is_empty() {
        text += &section("Order list", "orders", &orders(job, &list), folder)?;
    }
    Ok(text)
}

fn is_under_said(job: &Job) -> bool {
    !job.now.particulars().is_empty() || !job.now.levels().is_empty()
}

fn section(title: &str, slug: &str, cards: &[Card], folder: &Path) -> Result<String, Trouble> {
    let mut text = format!("## {title}\n\n");
    for (number, card) in (1..).zip(cards) {
        text += &one_card(card, folder, &format!("{slug}-{number}.svg"))?;
    }
    Ok(text)
}

fn one_card(card: &Card, folder: &Path, file: &str) -> Result<String, Trouble> {
    let group = card.group.map_or_else(String::new, |group| format!("### {group}\n\n"));
    let mut text = format!("{group}### {}\n\n", plain(&card.title));
    if !card.headline.is_empty() {
        text += &format!("**{}**\n\n", plain(&card.headline));
    }
    if let Some(drawing) = &card.drawing {
        let sheet = SHEET.replace("@media print", "@media all");
        files::write_whole(&folder.join(file), std::iter::once(svg::write_alone(drawing, &sheet)))?;
        text += &format!("![{}]({file})\n\n", plain(&drawing.title));
    }
    for line in &card.lines {
        let words = plain(&line.text);
        text += &match line.tone {
            Tone::Heading => format!("\n#### {words}\n\n"),
            Tone::Plain => format!("- {words}\n"),
            Tone::Next => format!("- Next: {words}\n"),
            Tone::Small => format!("- ({words})\n"),
        };
    }
    for (ask, answer) in card.asks.iter().filter_map(|ask| Some((ask, ask.given()?))) {
        text += &format!("- {}: {}.\n", plain(&ask.asks), plain(&answer.label));
    }
    for field in card.fields.iter().filter(|field| !field.typed.is_empty()) {
        let unit = if field.unit.is_empty() { String::new() } else { format!(" {}", field.unit) };
        text += &format!("- {}: {}{unit}.\n", plain(&field.asks), plain(&field.typed));
    }
    for field in card.fields.iter().filter(|field| !field.again.is_empty()) {
        text += &format!("- {}, to be said again: {}.\n", plain(&field.asks), plain(&field.again));
    }
    Ok(text + "\n")
}
