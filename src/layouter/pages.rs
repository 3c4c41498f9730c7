//! What the worker's script calls for the pages of cards.

use duckboard::draw::card::{Act, Ask, Card, Field, Line, Tone};
use duckboard::draw::cautions::{cautions, due};
use duckboard::draw::orders::{COLUMNS, orders, rows};
use duckboard::draw::under::under;
use duckboard::draw::water::{ventilating_card, water};
use duckboard::draw::{Canvas, form, svg};
use duckboard::engine::entry::{DeviceId, Logger};
use duckboard::engine::job::Observation;
use duckboard::engine::orders::order_list;
use duckboard::engine::sample;
use duckboard::engine::take::Units;
use duckboard::file::{figures, read, tables};
use serde::Serialize;
use wasm_bindgen::prelude::wasm_bindgen;

/// A page as the screen shows it.
#[derive(Default, Serialize)]
struct ShownPage {
    cards: Vec<ShownCard>,
    /// The cards as a table, for paper and to be saved, if they are one.
    table: Option<ShownTable>,
    /// What was logged, in rows.
    logged: Vec<ShownRows>,
}

/// Rows under a title.
#[derive(Serialize)]
struct ShownRows {
    title: &'static str,
    columns: Vec<&'static str>,
    rows: Vec<Vec<String>>,
}

#[derive(Serialize)]
struct ShownTable {
    columns: [&'static str; 5],
    sections: Vec<(&'static str, Vec<[String; 5]>)>,
    csv: String,
}

/// A card as the screen shows it.
#[derive(Serialize)]
struct ShownCard {
    group: Option<&'static str>,
    title: String,
    headline: String,
    lines: Vec<ShownLine>,
    drawing: String,
    asks: Vec<ShownAsk>,
    fields: Vec<ShownField>,
    act: Option<ShownAct>,
    shows: String,
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

/// Something to type; what was typed goes to [`typed`].
#[derive(Serialize)]
struct ShownField {
    key: String,
    asks: String,
    unit: &'static str,
    is_number: bool,
    typed: String,
    again: String,
    shared: String,
}

#[derive(Serialize)]
struct ShownAct {
    label: String,
    /// Is it the answer now?
    is_so: bool,
    /// The observation as a job file has it.
    logs: String,
}

/// A page of a job file's text, as JSON. The error says in words what is wrong with the
/// file, or that there is no such page. `by` is whoever logs on the phone, as JSON.
#[wasm_bindgen]
pub fn page(name: &str, job: &str, units: &str, by: &str, width: u32) -> Result<String, String> {
    let salvage = read::salvage(job.as_bytes()).map_err(|fault| fault.to_string())?;
    let units: Units = serde_json::from_str(units).unwrap_or_default();
    let canvas = Canvas { width_px: width, height_px: width * 5 / 6 };
    let book = salvage.file.book();
    let page = match name {
        "due" => of_cards(due(book.job(), serde_json::from_str::<Logger>(by).ok().as_ref())),
        "ventilating" => of_cards(vec![ventilating_card(book.job(), units)]),
        "cautions" => of_cards(cautions(book.job())),
        "water" => of_cards(water(book.job(), units, canvas)),
        "under" => of_cards(under(book.job(), units, canvas)),
        "orders" => {
            let list = order_list(&book, units);
            let table = ShownTable { columns: COLUMNS, sections: rows(&list), csv: tables::orders::csv(&list) };
            ShownPage { table: Some(table), ..of_cards(orders(book.job(), &list)) }
        }
        "logged" => {
            ShownPage { logged: tables::printed(book.job(), units).map(in_rows).into(), ..ShownPage::default() }
        }
        _ => return Err(format!("there is no page \"{name}\"")),
    };
    serde_json::to_string(&page).map_err(|error| error.to_string())
}

/// Every figure of a job file's text, as its snapshot has it.
#[wasm_bindgen]
pub fn figures_of(job: &str, units: &str) -> Result<String, String> {
    let salvage = read::salvage(job.as_bytes()).map_err(|fault| fault.to_string())?;
    let units = serde_json::from_str(units).unwrap_or_default();
    serde_json::to_string(&figures(salvage.file.book().job(), units)).map_err(|error| error.to_string())
}

/// The invented sample job's entries as JSON, as if logged on this device.
#[wasm_bindgen]
pub fn sample_of(device: &str) -> Result<String, String> {
    let device: DeviceId = device.parse().map_err(|_| format!("\"{device}\" is no device"))?;
    serde_json::to_string(&sample::entries(device)).map_err(|error| error.to_string())
}

/// What was typed into a field, as the observation to be logged. The error says in words
/// what is wrong with it and what would do.
#[wasm_bindgen]
pub fn typed(key: &str, text: &str, units: &str) -> Result<String, String> {
    let units = serde_json::from_str(units).unwrap_or_default();
    let observation = form::typed(key, text, units)?;
    logged(&observation).ok_or_else(|| format!("\"{text}\" could not be kept"))
}

fn of_cards(cards: Vec<Card>) -> ShownPage {
    ShownPage { cards: cards.into_iter().map(shown).collect(), ..ShownPage::default() }
}

fn in_rows(tables::Table { title, columns, rows }: tables::Table) -> ShownRows {
    ShownRows { title, columns, rows }
}

fn shown(card: Card) -> ShownCard {
    ShownCard {
        group: card.group,
        title: card.title,
        headline: card.headline,
        lines: card.lines.into_iter().map(line).collect(),
        drawing: card.drawing.as_ref().map(svg::write).unwrap_or_default(),
        asks: card.asks.into_iter().map(ask).collect(),
        fields: card.fields.into_iter().map(field).collect(),
        act: card.act.and_then(|of| act(of, false)),
        shows: card.shows,
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
    let answers = ask.answers.into_iter().filter_map(|(answer, is_so)| act(answer, is_so));
    ShownAsk { answers: answers.collect(), asks: ask.asks }
}

fn field(Field { key, asks, unit, is_number, typed, again, shared }: Field) -> ShownField {
    ShownField { key, asks, unit, is_number, typed, again, shared }
}

fn act(Act { label, logs }: Act, is_so: bool) -> Option<ShownAct> {
    Some(ShownAct { label, is_so, logs: logged(&logs)? })
}

fn logged(observation: &Observation) -> Option<String> {
    serde_json::to_string(observation).ok()
}
