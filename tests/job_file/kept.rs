//! What a phone keeps of its own log, line by line: what is damaged is missed.

use crate::job_samples::first_book;
use duckboard::engine::closing::close_in;
use duckboard::engine::entry::{DeviceId, EntryId};
use duckboard::engine::job::{Book, Record};
use duckboard::engine::take::Units;
use duckboard::file::read::kept_line;

/// Lines as a phone keeps them: an entry's id and its text.
fn lines(book: &Book) -> Vec<(String, String)> {
    book.log().records().map(|record| (record.id().to_string(), record.json().to_owned())).collect()
}

fn kept(lines: &[(String, String)]) -> Book {
    Book::of(lines.iter().flat_map(|(id, json)| kept_line(id, json)))
}

/// What closing says to whether every entry is here and could be read.
fn is_everything_read(book: &Book) -> bool {
    let known = close_in(book.job(), Units::default());
    let condition = known.value.conditions.iter().find(|it| it.what == "every entry of the job can be read").unwrap();
    condition.in_the_way.is_empty()
}

#[test]
fn a_line_of_the_phones_own_log_that_cannot_be_read_is_missed_and_holds_closing() {
    let whole = first_book();
    assert!(kept(&lines(&whole)).log() == whole.log() && is_everything_read(&whole));
    let all = lines(&whole);
    for (at, (id, json)) in all.iter().enumerate() {
        let gone: EntryId = id.parse().unwrap();
        let damages = [json.get(..json.len() / 2).unwrap().to_owned(), json.replace('{', "("), String::new()];
        let damaged = &damages[at % damages.len()];
        let mut lines = all.clone();
        lines[at].1.clone_from(damaged);
        let book = kept(&lines);
        assert_eq!(book.job().absent.iter().collect::<Vec<_>>(), [&gone], "{damaged}");
        // Closing is slow to ask, and asks the same of each.
        assert!(at > 2 || !is_everything_read(&book), "{damaged}");
        assert_eq!(book.log().next_id(gone.device), whole.log().next_id(gone.device), "no id is given twice");
        // A file that holds the entry brings it back; the damaged line stays in the store.
        lines.push((id.clone(), json.clone()));
        assert!(kept(&lines).log() == whole.log(), "{damaged}");
    }
}

#[test]
fn a_line_under_an_id_that_it_does_not_hold_is_kept_and_the_entry_of_that_id_missed() {
    let whole = first_book();
    let other = EntryId { count: 7, device: DeviceId::new(99) };
    let mut lines = lines(&whole);
    lines[1].0 = other.to_string();
    let book = kept(&lines);
    assert_eq!(book.job().absent.iter().collect::<Vec<_>>(), [&other]);
    assert_eq!(book.log().records().count(), whole.log().len() + 1, "and nothing is lost");
    let nameless: Vec<Record> = kept_line("no id", "no entry").collect();
    assert!(nameless.len() == 1 && nameless[0].is_absent());
}

#[test]
fn a_line_of_a_kind_of_a_later_version_is_carried() {
    let json = r#"{"id":"7.00000000000000000000000000000063","act":{"record":{"of_tomorrow":{}}}}"#;
    let book = Book::of(kept_line("7.00000000000000000000000000000063", json));
    assert!(book.job().absent.is_empty() && book.job().unknown.len() == 1);
}
