//! Lengths as rows: everything that a tape, a laser or a level gave.

use super::{Logged, place_words};
use crate::engine::describe::corner_name;
use crate::engine::entry::EntryId;
use crate::engine::job::{Fact, Job, Seen};
use crate::engine::survey::{Floor, Opening};
use crate::engine::units::{Length, Typed};
use crate::file::csv::Cell;
use crate::order;

/// One length.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LengthRow {
    /// What was measured, in words.
    pub what: String,
    /// As typed.
    pub typed: String,
    /// What that says.
    pub length: Length,
    /// Who, when, in which visit.
    pub logged: Logged,
}

impl LengthRow {
    /// The columns of its CSV line.
    pub const COLUMNS: [&'static str; 9] = {
        let [by, at, visit, corrected, entry] = Logged::COLUMNS;
        ["what", "typed", "mm", "in", by, at, visit, corrected, entry]
    };

    /// The cells of its CSV line. Millimetres are exact, inches to a ten-thousandth.
    pub fn cells(&self) -> Vec<Cell> {
        let own = [
            Cell::text(&self.what),
            Cell::text(&self.typed),
            Cell::Number(millimetres(self.length)),
            Cell::Number(trimmed(&format!("{:.4}", self.length.to_inches()))),
        ];
        own.into_iter().chain(self.logged.cells()).collect()
    }
}

/// Every length that stands: the job's own, rooms, openings, joists, others, levels.
pub fn lengths(job: &Job) -> Vec<LengthRow> {
    let mut rows = Rows { job, rows: Vec::new() };
    rows.facts();
    rows.sides();
    rows.ties();
    rows.offsets();
    rows.openings();
    rows.cut_backs();
    rows.obstacles();
    rows.joists();
    for (id, thing) in job.now.layers().iter() {
        rows.add(format!("Old floor, {}", thing.value.what.label()), &thing.value.thickness, *id, thing);
    }
    for (nth, (id, thing)) in job.now.on_hand().iter().enumerate() {
        let name = format!("On hand {}", nth + 1);
        rows.add(format!("{name}, along the strong axis"), &thing.value.length, *id, thing);
        rows.add(format!("{name}, across it"), &thing.value.width, *id, thing);
    }
    for (id, thing) in job.now.measures().iter() {
        let place = place_words(job, thing.value.place);
        let what =
            if place.is_empty() { thing.value.what.to_string() } else { format!("{}, {place}", thing.value.what) };
        rows.add(what, &thing.value.length, *id, thing);
    }
    for (id, thing) in job.now.levels().iter() {
        let place = place_words(job, Some(thing.value.place));
        rows.add(format!("Down from the laser's plane, {place}"), &thing.value.drop, *id, thing);
    }
    rows.rows
}

struct Rows<'a> {
    job: &'a Job,
    rows: Vec<LengthRow>,
}

impl Rows<'_> {
    fn add<T>(&mut self, what: impl Into<String>, length: &Typed<Length>, id: EntryId, thing: Seen<'_, T>) {
        self.rows.push(LengthRow {
            what: what.into(),
            typed: length.typed.clone(),
            length: length.value,
            logged: Logged::of(self.job, id, thing.stamp, thing.head),
        });
    }

    /// What was said last of each.
    fn facts(&mut self) {
        let facts = self.job.now.facts();
        let latest = |like: &Fact| self.job.latest_like(like).is_some_and(|latest| std::ptr::eq(latest, like));
        for (id, thing) in facts.iter().filter(|(_, thing)| latest(thing.value)) {
            if let Some((of, length)) = thing.value.length() {
                self.add(of, length, *id, thing);
            }
            if let Fact::Sheet(sheet) = thing.value {
                self.add("Sheet, width", &sheet.width, *id, thing);
                self.add("Sheet, length", &sheet.length, *id, thing);
            }
        }
    }

    fn sides(&mut self) {
        for (room, number, id) in numbered_sides(self.job) {
            if let Some(thing) = self.job.now.sides().get(&id) {
                let what = format!("{}, side {number}", room_name(self.job, room));
                self.add(what, &thing.value.length, id, thing);
            }
        }
    }

    fn ties(&mut self) {
        for (id, thing) in self.job.now.ties().iter() {
            let [from, to] = [thing.value.from, thing.value.to].map(|side| corner_name(self.job, side));
            self.add(format!("{from} to {to}"), &thing.value.length, *id, thing);
        }
    }

    fn offsets(&mut self) {
        for (id, thing) in self.job.now.offsets().iter() {
            let offset = thing.value;
            let [of, from, to] = [offset.of, offset.from, offset.to].map(|side| corner_name(self.job, side));
            self.add(format!("{of}, along the line from {from} to {to}"), &offset.along, *id, thing);
            self.add(format!("{of}, to the {} of that line", offset.side.label()), &offset.out, *id, thing);
        }
    }

    fn openings(&mut self) {
        for (nth, (id, thing)) in self.job.now.openings().iter().enumerate() {
            self.placed(&format!("Opening {}", nth + 1), thing.value, *id, thing);
        }
    }

    fn cut_backs(&mut self) {
        for (id, thing) in self.job.now.cut_backs().iter() {
            let nth = self.job.now.openings().keys().position(|opening| *opening == thing.value.opening);
            let name = nth.map_or_else(|| "An opening taken back".to_owned(), |nth| format!("Opening {}", nth + 1));
            if let Some(width) = &thing.value.width {
                self.add(format!("{name}, cut back to, along the joists"), width, *id, thing);
            }
            if let Some(finish) = &thing.value.finish {
                self.add(format!("{name}, finished floor cut back beyond that"), finish, *id, thing);
            }
        }
    }

    fn obstacles(&mut self) {
        for (id, thing) in self.job.now.obstacles().iter() {
            self.placed(thing.value.what.label(), &thing.value.takes, *id, thing);
        }
    }

    fn placed<T>(&mut self, name: &str, opening: &Opening, id: EntryId, thing: Seen<'_, T>) {
        let from = side_name(self.job, opening.from);
        self.add(format!("{name}, along {from} from its start"), &opening.along, id, thing);
        self.add(format!("{name}, into the room"), &opening.out, id, thing);
        self.add(format!("{name}, length"), &opening.length, id, thing);
        self.add(format!("{name}, width"), &opening.width, id, thing);
    }

    fn joists(&mut self) {
        for (id, thing) in self.job.now.joists().iter() {
            let name = format!("{}, joists {}", room_name(self.job, thing.value.room), thing.value.run.label());
            self.add(format!("{name}, first center"), &thing.value.first, *id, thing);
            self.add(format!("{name}, on center, {} of them", thing.value.count), &thing.value.spacing, *id, thing);
        }
        for (id, thing) in self.job.now.joist_centers().iter() {
            self.add(thing.value.name(), &thing.value.center, *id, thing);
        }
    }
}

fn room_name(job: &Job, room: EntryId) -> String {
    job.now.rooms().get(&room).map_or_else(|| "Unnamed room".to_owned(), |thing| thing.value.name.to_string())
}

fn side_name(job: &Job, side: EntryId) -> String {
    let found = numbered_sides(job).into_iter().find(|(_, _, id)| *id == side);
    found.map_or_else(
        || "a side that is not in this file".to_owned(),
        |(room, number, _)| format!("side {number} of {}", room_name(job, room)),
    )
}

/// Every side as its room, its number counted from one, and its entry, as they are walked.
fn numbered_sides(job: &Job) -> Vec<(EntryId, usize, EntryId)> {
    let rooms = order::once(job.now.sides().values().map(|side| side.value.room));
    let walked = rooms.into_iter().map(|room| (room, Floor::of_room(job, room).sides));
    walked.flat_map(|(room, sides)| (1..).zip(sides).map(move |(number, side)| (room, number, side))).collect()
}

/// Exact millimetres: a nanometre is their sixth decimal.
fn millimetres(length: Length) -> String {
    let nm = length.to_nm();
    let sign = if nm < 0 { "-" } else { "" };
    let (whole, rest) = (nm.unsigned_abs() / 1_000_000, nm.unsigned_abs() % 1_000_000);
    trimmed(&format!("{sign}{whole}.{rest:06}"))
}

/// A decimal without trailing zeros.
fn trimmed(decimal: &str) -> String {
    let short = decimal.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn millimetres_are_exact() {
        assert_eq!(millimetres(Length::SIXTY_FOURTH), "0.396875");
        assert_eq!(millimetres(Length::feet(-1)), "-304.8");
        assert_eq!(millimetres(Length::ZERO), "0");
        assert_eq!(millimetres(Length::mm(1200)), "1200");
        assert_eq!(trimmed("-0.0000"), "0");
    }
}
