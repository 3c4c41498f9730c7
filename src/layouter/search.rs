//! What the worker's script calls.

use duckboard::draw::sheets::SheetPage;
use duckboard::draw::{Canvas, svg};
use duckboard::engine::figure::{Figure, Known};
use duckboard::engine::sheets::layout::{Search, Step, check};
use duckboard::engine::sheets::{AT_THE_SAW, MOST_STEPS, ToLay, to_lay};
use duckboard::engine::take::Units;
use duckboard::file::read;
use serde::Serialize;
use wasm_bindgen::prelude::wasm_bindgen;

/// A search for the sheets of one job.
#[wasm_bindgen]
pub struct Layouts {
    floor: Known<ToLay>,
    search: Search,
    units: Units,
    canvas: Canvas,
    steps: usize,
}

/// A layout as the screen shows it: words, and drawings as SVG.
#[derive(Serialize)]
struct Shown {
    headline: String,
    line: String,
    plan: String,
    assumed: Vec<String>,
    doubts: Vec<String>,
    at_the_saw: [&'static str; 3],
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
        let floor = match to_lay(salvage.file.book().job()) {
            Figure::Known(known) => known,
            Figure::Missing(needs) => {
                let words: Vec<_> = needs.iter().map(|need| need.words()).collect();
                return Err(format!("Not enough to lay sheets out. Next: {}.", words.join("; ")));
            }
        };
        let case = floor.value.case.clone().map_err(|faults| {
            let faults: Vec<_> = faults.iter().map(ToString::to_string).collect();
            format!("This floor cannot be laid out: {}.", faults.join("; "))
        })?;
        let units = serde_json::from_str(units).unwrap_or_default();
        let canvas = Canvas { width_px: width, height_px: width * 5 / 6 };
        Ok(Self { floor, search: Search::new(case), units, canvas, steps: 0 })
    }

    /// Goes on by so many steps: `true` when there is nothing more to find.
    pub fn step(&mut self, steps: usize) -> bool {
        for _ in 0..steps {
            self.steps += 1;
            if self.search.step() == Step::Done || self.steps >= MOST_STEPS {
                return true;
            }
        }
        false
    }

    /// The best so far as JSON, once it is there and keeps every rule.
    pub fn page(&self) -> Option<String> {
        let layout = self.search.best().filter(|layout| check(self.search.case(), layout).is_ok())?;
        let page = SheetPage::new(&self.floor.value, layout, self.search.bound(), self.units, self.canvas)?;
        let sheets = page.sheets.into_iter().map(|sheet| ShownSheet {
            title: sheet.title,
            drawing: sheet.drawing.as_ref().map(svg::write).unwrap_or_default(),
            cuts: sheet.cuts,
        });
        let shown = Shown {
            headline: page.headline,
            line: page.line,
            plan: svg::write(&page.plan),
            assumed: self.floor.assumed.clone(),
            doubts: self.floor.doubts.clone(),
            at_the_saw: AT_THE_SAW,
            sheets: sheets.collect(),
        };
        serde_json::to_string(&shown).ok()
    }
}
