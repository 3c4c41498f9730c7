//! The log in words: each entry in one line, with what was typed.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "tests may fail loudly")]

mod desk;

use desk::{Desk, label, length, side, spot};
use duckboard::engine::cautions;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{DeviceId, EntryId, Note};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Acknowledgement, Book, Fact, Record};
use duckboard::engine::sample;
use duckboard::engine::survey::Level;
use duckboard::engine::take::Units;
use duckboard::engine::{describe, describe::Line};

fn line(desk: &Desk, id: EntryId) -> Line {
    let entry = desk.book.log().get(id).unwrap().entry().unwrap();
    describe::entry(desk.job(), entry, Units::default())
}

#[test]
fn every_entry_of_the_sample_says_something() {
    let book = Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()));
    for entry in book.log().records().map(|record| record.entry().unwrap()) {
        let line = describe::entry(book.job(), entry, Units::default());
        assert!(!line.says.is_empty() && !line.kind.is_empty(), "{entry:?}");
        assert!(!line.says.contains('\n'));
    }
}

#[test]
fn a_line_names_the_place_and_keeps_what_was_typed() {
    let mut desk = Desk::new();
    let place = desk.log(spot(6, "98"));
    let level = desk.log(Level { place, drop: length("14 1/8") });
    let line = line(&desk, level);
    assert_eq!(line.says, "1' 2 1/8\" down at Joist 6, lower edge, 8' 2\" along");
    assert_eq!((line.kind, line.typed.as_deref()), ("level reading", Some("14 1/8 in")));
}

#[test]
fn a_correction_and_a_withdrawal_say_that_they_are_one() {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&[("10'", Turn::Right)]);
    let corrected = desk.correct(sides[0], side(room, None, "9' 6\"", Turn::Left));
    assert_eq!(line(&desk, corrected).says, "corrected to 9' 6\", then left");
    let withdrawn = desk.withdraw(sides[0]);
    assert_eq!(line(&desk, withdrawn).kind, "withdrawal");
}

#[test]
fn a_note_is_told_with_its_finding() {
    let mut desk = Desk::new();
    let note = Note::new("an inch deep,\nacross the whole edge").unwrap();
    let found = desk.log(Condition { place: None, finding: Finding::Soft, note: Some(note) });
    assert_eq!(line(&desk, found).says, "Soft: an inch deep, across the whole edge");
    let bare = desk.log(Condition { place: None, finding: Finding::Soft, note: None });
    assert_eq!(line(&desk, bare).says, "Soft");
}

#[test]
fn a_caution_read_is_told_by_its_name_whatever_version_it_is_of() {
    let mut desk = Desk::new();
    let read = desk.log(cautions::named("crawl_entry").unwrap().acknowledgement());
    assert_eq!(line(&desk, read).says, "crawl entry");
    let unknown = desk.log(Acknowledgement { caution: label("of_a_later_version") });
    assert_eq!(line(&desk, unknown).says, "of a later version");
}

#[test]
fn a_fact_is_told_as_it_was_said() {
    let mut desk = Desk::new();
    let height = desk.log(Fact::CrawlHeight(length("26 in")));
    assert_eq!(line(&desk, height).says, "crawl height: 2' 2\"");
    assert_eq!(line(&desk, height).typed.as_deref(), Some("26 in"));
}
