//! Moisture readings as rows.

use super::growing::{named, said};
use super::{Logged, place_words};
use crate::engine::entry::EntryId;
use crate::engine::job::Job;
use crate::file::csv::Cell;

/// One moisture reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadingRow {
    /// Where, in words.
    pub place: String,
    /// What the meter showed, as typed.
    pub shown: String,
    /// What was read, if it was said.
    pub material: String,
    /// The meter, by its label.
    pub meter: String,
    /// Who, when, in which visit.
    pub logged: Logged,
}

impl ReadingRow {
    /// The columns of its CSV line.
    pub const COLUMNS: [&'static str; 9] = {
        let [by, at, visit, corrected, entry] = Logged::COLUMNS;
        ["place", "shown", "material", "meter", by, at, visit, corrected, entry]
    };

    /// The cells of its CSV line.
    pub fn cells(&self) -> Vec<Cell> {
        let own = [&self.place, &self.shown, &self.material, &self.meter].map(Cell::text);
        own.into_iter().chain(self.logged.cells()).collect()
    }
}

/// Every reading that stands, in log order.
pub fn readings(job: &Job) -> Vec<ReadingRow> {
    job.now
        .readings
        .iter()
        .map(|(id, thing)| {
            let reading = &thing.value;
            ReadingRow {
                place: place_words(job, Some(reading.place)),
                shown: said(reading, "shown").unwrap_or_default(),
                material: said(reading, "material").unwrap_or_default(),
                meter: named(reading, "meter").map(|meter| meter_label(job, meter)).unwrap_or_default(),
                logged: Logged::of(job, *id, &thing.stamp, thing.head),
            }
        })
        .collect()
}

fn meter_label(job: &Job, meter: EntryId) -> String {
    let thing = job.now.meters.get(&meter);
    thing.map_or_else(
        || "a meter that is not in this file".to_owned(),
        |thing| said(&thing.value, "label").unwrap_or_default(),
    )
}
