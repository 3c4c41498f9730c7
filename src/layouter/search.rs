//! What the worker's script calls.

use duckboard::draw::sheets::{Needed, SheetPage, sources};
use duckboard::draw::{Canvas, svg};
use duckboard::engine::figure::Figure;
use duckboard::engine::job::Job;
use duckboard::engine::orders::{Line, lines_with};
use duckboard::engine::sheets::{FloorSearch, Searches, at_the_saw, to_lay};
use duckboard::engine::take::Units;
use duckboard::file::read;
use serde::Serialize;
use wasm_bindgen::prelude::wasm_bindgen;

/// The searches for the sheets of one job.
#[wasm_bindgen]
pub struct Layouts {
    job: Job,
    searches: Searches,
    assumed: Vec<String>,
    doubts: Vec<String>,
    at_the_saw: Vec<String>,
    units: Units,
    canvas: Canvas,
}

/// Layouts as the screen shows them: words, and drawings as SVG.
#[derive(Serialize)]
struct Shown {
    floors: Vec<ShownFloor>,
    assumed: Vec<String>,
    doubts: Vec<String>,
    sources: Vec<String>,
    at_the_saw: Vec<String>,
}

#[derive(Serialize)]
struct ShownFloor {
    name: String,
    headline: String,
    line: String,
    plan: String,
    needed: Vec<Needed>,
    sheets: Vec<ShownSheet>,
}

#[derive(Serialize)]
struct ShownSheet {
    title: String,
    drawing: String,
    cuts: Vec<String>,
}

#[wasm_bindgen]
impl Layouts {
    /// Begins with a job file's text, the phone's units and a width in pixels. The
    /// error says in words what is missing.
    #[wasm_bindgen(constructor)]
    pub fn new(job: &str, units: &str, width: u32) -> Result<Layouts, String> {
        let salvage = read::salvage(job.as_bytes()).map_err(|fault| fault.to_string())?;
        let book = salvage.file.book();
        let known = match to_lay(book.job()) {
            Figure::Known(known) => known,
            Figure::Missing(needs) => {
                let words: Vec<_> = needs.iter().map(|need| need.words()).collect();
                return Err(format!("Not enough to lay sheets out. Next: {}.", words.join("; ")));
            }
        };
        let units = serde_json::from_str(units).unwrap_or_default();
        let canvas = Canvas { width_px: width, height_px: width * 5 / 6 };
        let (assumed, doubts, at_the_saw) = (known.assumed, known.doubts, at_the_saw(book.job(), units));
        let searches = Searches::new(book.job(), known.value);
        Ok(Self { job: book.job().clone(), searches, assumed, doubts, at_the_saw, units, canvas })
    }

    /// Goes on by so many steps: `true` when there is nothing more to find.
    pub fn step(&mut self, steps: usize) -> bool {
        (0..steps).any(|_| !self.searches.step())
    }

    /// The best so far as JSON, once something is there that keeps every rule.
    pub fn page(&self) -> Option<String> {
        let (ordered, _) = lines_with(&self.job, Some(&self.searches), self.units);
        let floors: Vec<_> = self.searches.floors().iter().filter_map(|floor| self.shown(floor, &ordered)).collect();
        let (assumed, doubts) = (self.assumed.clone(), self.doubts.clone());
        let shown = Shown { floors, assumed, doubts, sources: sources(), at_the_saw: self.at_the_saw.clone() };
        if shown.floors.is_empty() { None } else { serde_json::to_string(&shown).ok() }
    }

    fn shown(&self, floor: &FloorSearch, ordered: &[Line]) -> Option<ShownFloor> {
        let page = SheetPage::of(floor, ordered, self.units, self.canvas)?;
        let sheets = page.sheets.into_iter().map(|sheet| ShownSheet {
            title: sheet.title,
            drawing: sheet.drawing.as_ref().map(svg::write).unwrap_or_default(),
            cuts: sheet.cuts,
        });
        Some(ShownFloor {
            name: page.name,
            headline: page.headline,
            line: page.line,
            plan: page.plan.as_ref().map(svg::write).unwrap_or_default(),
            needed: page.needed,
            sheets: sheets.collect(),
        })
    }
}
