//! Moisture readings as rows: what the meter showed, and beside it what that means.

use super::{Logged, place_words};
use crate::engine::entry::EntryId;
use crate::engine::job::{Job, Seen};
use crate::engine::moisture::said::tenths;
use crate::engine::moisture::{Corrected, Reading, Shown, Wood};
use crate::engine::results::corrected;
use crate::engine::sources::Mark;
use crate::engine::take::Units;
use crate::engine::units::MoistureContent;
use crate::engine::warmth::wood_temperature;
use crate::file::csv::Cell;

/// One moisture reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadingRow {
    /// Where, in words.
    pub place: String,
    /// What the meter showed, as typed.
    pub shown: String,
    /// The same as a bare number of percent; nothing if the meter showed none.
    pub percent: Option<String>,
    /// The corrected reading, as every page says it.
    pub corrected: String,
    /// The same as a bare number of percent; nothing where it stands at none.
    pub corrected_percent: Option<String>,
    /// How far the source behind that was seen; empty where nothing was corrected by one.
    pub mark: &'static str,
    /// What was read: material, and species if known.
    pub wood: String,
    /// How warm the wood was, as typed; empty if it was not measured.
    pub wood_temperature: String,
    /// The meter, by its label; empty if nobody described it.
    pub meter: String,
    /// Is it what readings on panel of its kind are held against?
    pub reference: bool,
    /// Who, when, in which visit.
    pub logged: Logged,
}

impl ReadingRow {
    /// The columns of its CSV line.
    pub const COLUMNS: [&'static str; 14] = {
        let [by, at, visit, edited, entry] = Logged::COLUMNS;
        [
            "place",
            "shown",
            "percent",
            "corrected",
            "wood",
            "wood_temperature",
            "meter",
            by,
            at,
            visit,
            edited,
            entry,
            "corrected_percent",
            "reference",
        ]
    };

    /// The cells of its CSV line.
    pub fn cells(&self) -> Vec<Cell> {
        let own = [
            Cell::text(&self.place),
            Cell::text(&self.shown),
            self.percent.clone().map_or_else(|| Cell::text(""), Cell::Number),
            Cell::text(&self.corrected),
            Cell::text(&self.wood),
            Cell::text(&self.wood_temperature),
            Cell::text(&self.meter),
        ];
        let last = [
            self.corrected_percent.clone().map_or_else(|| Cell::text(""), Cell::Number),
            Cell::text(if self.reference { "yes" } else { "" }),
        ];
        own.into_iter().chain(self.logged.cells()).chain(last).collect()
    }
}

/// Every reading that stands, in log order.
pub fn readings(job: &Job) -> Vec<ReadingRow> {
    let rows = job.now.readings().iter().map(|(id, thing)| {
        let reading = &thing.value;
        let (shown, percent) = shown(&reading.shown);
        let known = corrected(job, *id, thing);
        ReadingRow {
            place: place_words(job, Some(reading.place)),
            shown,
            percent,
            corrected: known.value.words(),
            corrected_percent: number(&known.value).map(|number| tenths(number).replace(" %", "")),
            mark: known.why.mark().map_or("", Mark::label),
            wood: wood(reading.wood),
            wood_temperature: warmth(job, *id, thing),
            meter: reading.meter.map(|meter| meter_label(job, meter)).unwrap_or_default(),
            reference: reading.reference,
            logged: Logged::of(job, *id, thing.stamp, thing.head),
        }
    });
    rows.collect()
}

/// The number for a sum: none where there is no meter or no wood to it, or it is only relative.
fn number(corrected: &Corrected) -> Option<MoistureContent> {
    corrected.corrected.number().filter(|_| corrected.unsaid.is_none() && !corrected.relative)
}

fn shown(shown: &Shown) -> (String, Option<String>) {
    match shown {
        Shown::Percent(typed) => (typed.typed.clone(), Some(typed.value.to_percent().to_string())),
        Shown::OverMaximum => ("over the meter's maximum".to_owned(), None),
        Shown::UnderMinimum => ("under the meter's minimum".to_owned(), None),
    }
}

fn wood(wood: Wood) -> String {
    let material = wood.material.label();
    wood.species.map_or_else(|| material.to_owned(), |species| format!("{material}, {}", species.label()))
}

fn meter_label(job: &Job, meter: EntryId) -> String {
    let thing = job.now.meters().get(&meter);
    thing.map_or_else(|| "a meter that is not in this file".to_owned(), |thing| thing.value.label.to_string())
}

/// As it was typed where that counts, and as what counts was typed where it does not.
fn warmth(job: &Job, id: EntryId, reading: Seen<'_, Reading>) -> String {
    let typed = reading.value.wood_temperature.as_ref();
    wood_temperature(job, id, &reading).known().map_or_else(String::new, |counts| match typed {
        Some(typed) if typed.value == counts => typed.typed.clone(),
        _ => Units::default().temperature(counts),
    })
}
