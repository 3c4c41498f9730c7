//! What the worker's script calls for the water page.

use duckboard::draw::water::{Act, Ask, Card, Line, Tone, water};
use duckboard::draw::{Canvas, svg};
use duckboard::engine::entry::Label;
use duckboard::engine::job::Observation;
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::Check;
use duckboard::file::read;
use serde::Serialize;
use wasm_bindgen::prelude::wasm_bindgen;

/// A card as the screen shows it.
#[derive(Serialize)]
struct ShownCard {
    title: String,
    headline: String,
    lines: Vec<ShownLine>,
    drawing: String,
    asks: Vec<ShownAsk>,
    act: Option<ShownAct>,
}

#[derive(Serialize)]
struct ShownLine {
    class: &'static str,
    text: String,
}

/// A question with its answers; a tap on one hands back what is to be logged.
#[derive(Serialize)]
struct ShownAsk {
    asks: String,
    answers: Vec<ShownAct>,
}

#[derive(Serialize)]
struct ShownAct {
    label: String,
    /// Is it the answer now?
    is_so: bool,
    /// The observation as a job file has it.
    logs: String,
}

/// The water page of a job file's text, as JSON. The error says in words what is wrong
/// with the file.
#[wasm_bindgen]
pub fn water_page(job: &str, units: &str, width: u32) -> Result<String, String> {
    let salvage = read::salvage(job.as_bytes()).map_err(|fault| fault.to_string())?;
    let units = serde_json::from_str(units).unwrap_or_default();
    let canvas = Canvas { width_px: width, height_px: width * 5 / 6 };
    let cards: Vec<_> = water(salvage.file.book().job(), units, canvas).into_iter().map(shown).collect();
    serde_json::to_string(&cards).map_err(|error| error.to_string())
}

fn shown(card: Card) -> ShownCard {
    ShownCard {
        title: card.title,
        headline: card.headline,
        lines: card.lines.into_iter().map(line).collect(),
        drawing: card.drawing.as_ref().map(svg::write).unwrap_or_default(),
        asks: card.asks.into_iter().map(ask).collect(),
        act: card.act.and_then(act),
    }
}

fn line(Line { tone, text }: Line) -> ShownLine {
    let class = match tone {
        Tone::Plain => "",
        Tone::Heading => "heading",
        Tone::Next => "next",
        Tone::Small => "doubt",
    };
    ShownLine { class, text }
}

fn ask(ask: Ask) -> ShownAsk {
    let answer = |answer: Answer| {
        let of = Label::fitted(&ask.name);
        let label = if answer == Answer::Unknown { "can't tell" } else { answer.label() };
        let is_so = ask.answer == Some(answer);
        Some(ShownAct { label: label.to_owned(), is_so, logs: logged(&Observation::Check(Check { of, answer }))? })
    };
    let answers = Answer::ALL.into_iter().filter_map(answer).collect();
    ShownAsk { answers, asks: ask.asks }
}

fn act(Act { label, logs }: Act) -> Option<ShownAct> {
    Some(ShownAct { label, is_so: false, logs: logged(&logs)? })
}

fn logged(observation: &Observation) -> Option<String> {
    serde_json::to_string(observation).ok()
}
