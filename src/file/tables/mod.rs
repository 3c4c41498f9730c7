//! The job as rows: the same for the office's CSV, its report and the app's print view.
//!
//! Rows hold what was logged, in words, and who logged it. What a reading means comes
//! from [`results`](crate::engine::results); nothing is computed here.

mod lengths;
pub mod orders;
mod printed;
mod readings;
mod seen;

pub use lengths::{LengthRow, lengths};
pub use printed::{Table, printed};
pub use readings::{ReadingRow, readings};
pub use seen::{AirRow, ConditionRow, PhotoRow, SpotRow, air, conditions, photos, spots};

use super::csv::Cell;
use crate::engine::entry::{EntryId, Stamp};
use crate::engine::job::Job;
use crate::engine::place::Position;

/// Who logged a row, when, in which visit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Logged {
    /// The entry that began the thing.
    pub entry: EntryId,
    /// Initials and role.
    pub by: String,
    /// RFC 3339 with the offset in force.
    pub at: String,
    /// The visit's number, counted from one; nothing for what belongs to none.
    pub visit: Option<usize>,
    /// Was the entry edited since? A corrected reading is another thing.
    pub edited: bool,
}

impl Logged {
    /// The columns that [`Self::cells`] fills.
    pub const COLUMNS: [&'static str; 5] = ["by", "at", "visit", "edited", "entry"];

    fn of(job: &Job, entry: EntryId, stamp: &Stamp, head: EntryId) -> Self {
        Self {
            entry,
            by: stamp.by.to_string(),
            at: stamp.at.to_rfc3339(),
            visit: stamp.visit.and_then(|visit| job.visit_number(visit)),
            edited: head != entry,
        }
    }

    /// The row's last cells.
    pub fn cells(&self) -> [Cell; 5] {
        [
            Cell::text(&self.by),
            Cell::text(&self.at),
            self.visit.map_or_else(|| Cell::text(""), |visit| Cell::Number(visit.to_string())),
            Cell::text(if self.edited { "yes" } else { "" }),
            Cell::text(self.entry.to_string()),
        ]
    }

    /// The moment as people write it: date and time where it was logged.
    pub fn when(&self) -> String {
        let minute: String = self.at.chars().take(16).collect();
        minute.replacen('T', " ", 1)
    }
}

/// A place in words, with the distance along its joist and its chalk.
pub fn place_words(job: &Job, place: Option<EntryId>) -> String {
    let Some(id) = place else { return String::new() };
    let Some(thing) = job.now.places().get(&id) else { return "a place that is not in this file".to_owned() };
    let place = &thing.value;
    let mut words = place.name();
    match &place.position {
        Position::OnJoist { along: Some(along), .. } => words = format!("{words}, {} along", along.typed),
        Position::OnPlan { right, down } => {
            words = format!("{words}, {} right and {} down of the first corner", right.typed, down.typed);
        }
        Position::OnJoist { along: None, .. } | Position::Named => {}
    }
    if let Some(height) = &place.height {
        words = format!("{words}, {} up", height.typed);
    }
    match (&place.position, &place.chalk) {
        (Position::OnJoist { .. } | Position::OnPlan { .. }, Some(chalk)) => format!("{words}, chalked \"{chalk}\""),
        _ => words,
    }
}
