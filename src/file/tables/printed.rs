//! Rows as people read them: the app prints these tables and the office writes them.

use super::{Logged, air, conditions, lengths, readings, spots};
use crate::engine::job::Job;
use crate::engine::take::Units;

/// A table with a title.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// What it lists.
    pub title: &'static str,
    /// What each column says.
    pub columns: Vec<&'static str>,
    /// Its rows, each as long as the columns.
    pub rows: Vec<Vec<String>>,
}

/// Everything that was measured and seen, in the units that the reader likes.
pub fn printed(job: &Job, units: Units) -> [Table; 4] {
    [
        table(
            "Lengths",
            ["What", "Length", "Typed"],
            lengths(job).into_iter().map(|row| ([row.what, units.length(row.length), row.typed], row.logged)),
        ),
        table(
            "Moisture",
            ["Place", "As shown", "Corrected", "Mark", "Wood", "Wood temperature", "Meter"],
            readings(job).into_iter().map(|row| {
                let mark = row.mark.to_owned();
                ([row.place, row.shown, row.corrected, mark, row.wood, row.wood_temperature, row.meter], row.logged)
            }),
        ),
        table(
            "Air and surfaces",
            ["What", "Temperature", "Humidity"],
            air(job).into_iter().map(|row| ([row.what, row.temperature, row.humidity], row.logged)),
        ),
        table("Conditions", ["Place", "Finding", "Note"], found(job, units)),
    ]
}

/// Findings, then soft spots, notches and holes.
fn found(job: &Job, units: Units) -> impl Iterator<Item = ([String; 3], Logged)> {
    let findings = conditions(job).into_iter().map(|row| ([row.place, row.finding.to_owned(), row.note], row.logged));
    let spots = spots(job, units).into_iter().map(|row| ([row.member, row.says, String::new()], row.logged));
    findings.chain(spots)
}

/// A table whose rows end with who logged them.
fn table<const N: usize>(
    title: &'static str,
    columns: [&'static str; N],
    rows: impl Iterator<Item = ([String; N], Logged)>,
) -> Table {
    let rows = rows.map(|(own, logged)| own.into_iter().chain(by_whom(logged)).collect());
    Table { title, columns: columns.into_iter().chain(["Visit", "Who", "When"]).collect(), rows: rows.collect() }
}

fn by_whom(logged: Logged) -> [String; 3] {
    let edited = if logged.edited { ", edited since" } else { "" };
    let when = format!("{}{edited}", logged.when());
    [logged.visit.map_or_else(String::new, |visit| visit.to_string()), logged.by, when]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::DeviceId;
    use crate::engine::job::{Book, Pen, Record};
    use crate::engine::sample;

    fn book() -> Book {
        Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()))
    }

    #[test]
    fn every_row_fills_its_columns() {
        for table in printed(book().job(), Units::default()) {
            assert!(!table.rows.is_empty(), "{}", table.title);
            assert!(table.rows.iter().all(|row| row.len() == table.columns.len()), "{}", table.title);
        }
    }

    #[test]
    fn an_edited_row_says_so_and_when_it_was_first_logged() {
        let mut book = book();
        let (id, side) = book.job().now.sides().iter().next().map(|(id, side)| (*id, side)).unwrap();
        let correction = Pen::new(book.log(), id.device, side.stamp.clone()).correct(vec![id], side.value.clone());
        book.add(Record::of(correction).unwrap());
        let [lengths, ..] = printed(book.job(), Units::default());
        let edited: Vec<_> = lengths.rows.iter().filter(|row| row.last().unwrap().contains("edited")).collect();
        assert_eq!(edited.len(), 1);
        assert!(edited[0].last().unwrap().ends_with(", edited since"));
    }
}
