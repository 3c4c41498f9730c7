//! Where water comes from, how far it goes, when it is gone, and whether to close.

use super::SHEET;
use super::markdown::plain;
use crate::files;
use crate::trouble::Trouble;
use duckboard::draw::water::{Card, Tone, water};
use duckboard::draw::{Canvas, svg};
use duckboard::engine::job::Job;
use duckboard::engine::take::Units;
use std::path::Path;

const CANVAS: Canvas = Canvas { width_px: 640, height_px: 460 };

/// Writes the maps, and gives the section's text. A job without readings or answers has
/// neither.
pub(super) fn section(job: &Job, folder: &Path) -> Result<String, Trouble> {
    if job.now.readings().is_empty() && job.now.checks().is_empty() {
        return Ok(String::new());
    }
    let mut text = "## Water\n\n".to_owned();
    for (number, card) in (1..).zip(water(job, Units::default(), CANVAS)) {
        text += &one_card(&card, folder, number)?;
    }
    Ok(text)
}

fn one_card(card: &Card, folder: &Path, number: usize) -> Result<String, Trouble> {
    let mut text = format!("### {}\n\n", plain(&card.title));
    if !card.headline.is_empty() {
        text += &format!("**{}**\n\n", plain(&card.headline));
    }
    if let Some(drawing) = &card.drawing {
        let file = format!("water-{number}.svg");
        let sheet = SHEET.replace("@media print", "@media all");
        files::write_whole(&folder.join(&file), std::iter::once(svg::write_alone(drawing, &sheet)))?;
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
    for ask in card.asks.iter().filter(|ask| ask.answer.is_some()) {
        let answer = ask.answer.map_or("", |answer| answer.label());
        text += &format!("- {} {answer}.\n", plain(&ask.asks));
    }
    Ok(text + "\n")
}
