//! The laws of the log: whatever the order, however often, in whichever merge, the same
//! entries add up to the same job.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests may fail loudly")]

#[path = "log_laws/apart.rs"]
mod apart;

use chrono::DateTime;
use duckboard::engine::entry::{DeviceId, EntryId, Label, Logger, Role, Stamp, Text};
use duckboard::engine::job::{Act, Added, Book, Content, Entry, Fact, Fault, Observation, Record, Visit};
use proptest::prelude::*;

fn stamp() -> Stamp {
    Stamp {
        at: DateTime::parse_from_rfc3339("2026-11-25T08:15:00-06:00").unwrap(),
        by: Logger { initials: Text::new("QZ").unwrap(), role: Role::CrewLead },
        visit: None,
    }
}

fn id(count: u32, device: u8) -> EntryId {
    EntryId { count, device: DeviceId::new(u128::from(device)) }
}

fn title(text: &str) -> Observation {
    Fact::Title(Label::new(text).unwrap()).into()
}

fn record(id: EntryId, act: Act) -> Record {
    Record::of(Entry { id, stamp: stamp(), act }).unwrap()
}

fn said(count: u32, text: &str) -> Record {
    record(id(count, 1), Act::Record(title(text)))
}

fn corrected(count: u32, device: u8, of: &[EntryId], text: &str) -> Record {
    record(id(count, device), Act::Correct { of: of.to_vec(), to: title(text) })
}

/// As before format 1.5: without what it had seen.
fn withdrawn(count: u32, of: EntryId) -> Record {
    record(id(count, 1), Act::Withdraw { of, seen: Vec::new() })
}

fn withdrawn_as_seen(count: u32, device: u8, of: EntryId, seen: &[EntryId]) -> Record {
    record(id(count, device), Act::Withdraw { of, seen: seen.to_vec() })
}

/// Entries with every kind of reference: to what is there, to what is not, to
/// themselves, forwards and backwards, across kinds.
fn any_records() -> impl Strategy<Value = Vec<Record>> {
    let any_id = (1_u32..12, 0_u8..2).prop_map(|(count, device)| id(count, device));
    let observation = prop_oneof![
        3 => "[a-c]".prop_map(|text| title(&text)),
        1 => Just(Observation::from(Visit { purpose: Label::default() })),
    ];
    let act = prop_oneof![
        2 => observation.clone().prop_map(Act::Record),
        3 => (prop::collection::vec(any_id.clone(), 0..3), observation).prop_map(|(of, to)| Act::Correct { of, to }),
        2 => (any_id.clone(), prop::collection::vec(any_id.clone(), 0..2)).prop_map(|(of, seen)| Act::Withdraw { of, seen }),
    ];
    let entry = (any_id.clone(), act).prop_map(|(id, act)| record(id, act));
    prop::collection::vec(
        prop_oneof![8 => entry, 1 => any_id.clone().prop_map(Record::absent), 1 => any_id.prop_map(Record::left_out)],
        0..24,
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn any_order_of_arrival_gives_an_equal_job((records, shuffled) in any_records().prop_flat_map(|records| {
        (Just(records.clone()), Just(records).prop_shuffle())
    })) {
        let (one, other) = (Book::of(records), Book::of(shuffled));
        prop_assert_eq!(one.job(), other.job());
        prop_assert_eq!(one.log(), other.log());
    }

    #[test]
    fn adding_twice_is_adding_once(records in any_records()) {
        let once = Book::of(records.clone());
        let twice = Book::of(records.iter().chain(&records).cloned());
        prop_assert_eq!(once.job(), twice.job());
        prop_assert_eq!(once.log().len(), twice.log().len());
    }

    /// One by one is how the phone logs; all at once is how it opens what it kept.
    #[test]
    fn adding_all_at_once_is_adding_one_by_one(records in any_records(), at in any::<prop::sample::Index>()) {
        let mut one_by_one = Book::default();
        for record in &records {
            one_by_one.add(record.clone());
        }
        let (first, rest) = records.split_at(at.index(records.len() + 1));
        let mut all_at_once = Book::of(first.to_vec());
        all_at_once.add_all(rest.to_vec());
        prop_assert_eq!(all_at_once.job(), one_by_one.job());
        prop_assert_eq!(all_at_once.log(), one_by_one.log());
    }

    #[test]
    fn merging_either_way_round_gives_an_equal_job(mine in any_records(), theirs in any_records()) {
        let one = Book::of(mine.iter().chain(&theirs).cloned());
        let other = Book::of(theirs.iter().chain(&mine).cloned());
        prop_assert_eq!(one.job(), other.job());
    }

    #[test]
    fn every_entry_is_somewhere(records in any_records()) {
        let book = Book::of(records);
        let job = book.job();
        for record in book.log().records() {
            let Content::Known(entry) = record.content() else { continue };
            if let Act::Record(_) = entry.act {
                let counts = book.log().get(record.id()).unwrap().json() == record.json();
                let there = job.now.facts().contains_key(&entry.id) || job.now.visits().contains_key(&entry.id);
                prop_assert!(!counts || there != job.withdrawn.contains(&entry.id));
            }
        }
    }

    #[test]
    fn a_record_reads_back_as_it_was_written(records in any_records()) {
        for record in records {
            let read = Record::read(record.json()).unwrap();
            prop_assert_eq!(read.content(), record.content());
            prop_assert_eq!(read.json(), record.json());
            prop_assert_eq!(read.unread(), None);
        }
    }

    #[test]
    fn no_text_panics_as_a_record(text in ".{0,200}") {
        let _ = Record::read(&text);
        let _ = Record::carried(&text);
    }
}

fn titles(book: &Book) -> Vec<String> {
    book.job().now.facts().values().map(|thing| format!("{:?}", thing.value)).collect()
}

#[test]
fn a_correction_replaces_and_keeps_the_place_in_the_log() {
    let book = Book::of([said(1, "a"), said(2, "b"), corrected(3, 1, &[id(1, 1)], "c")]);
    assert_eq!(titles(&book), [r#"Title(Text("c"))"#, r#"Title(Text("b"))"#]);
    assert_eq!(book.job().now.facts().get(&id(1, 1)).unwrap().head, id(3, 1));
}

#[test]
fn two_corrections_of_one_entry_are_a_conflict_until_somebody_picks() {
    let mut book =
        Book::of([said(1, "a"), corrected(2, 1, &[id(1, 1)], "mine"), corrected(2, 2, &[id(1, 1)], "theirs")]);
    assert_eq!(book.job().conflicts[&id(1, 1)], [id(2, 1), id(2, 2)]);
    book.add(corrected(3, 1, &[id(2, 1), id(2, 2)], "mine"));
    assert!(book.job().conflicts.is_empty());
    assert_eq!(titles(&book), [r#"Title(Text("mine"))"#]);
}

#[test]
fn correcting_a_correction_is_no_conflict_even_when_the_first_is_taken_back() {
    let chain = [said(1, "a"), corrected(2, 1, &[id(1, 1)], "b"), corrected(3, 1, &[id(2, 1)], "c")];
    let mut book = Book::of(chain);
    assert!(book.job().conflicts.is_empty());
    book.add(withdrawn(4, id(2, 1)));
    assert!(book.job().conflicts.is_empty());
    assert_eq!(titles(&book), [r#"Title(Text("c"))"#]);
}

#[test]
fn taking_back_a_correction_brings_the_first_value_back_and_so_on() {
    let mut book = Book::of([said(1, "a"), corrected(2, 1, &[id(1, 1)], "b")]);
    book.add(withdrawn(3, id(2, 1)));
    assert_eq!(titles(&book), [r#"Title(Text("a"))"#]);
    book.add(withdrawn(4, id(3, 1)));
    assert_eq!(titles(&book), [r#"Title(Text("b"))"#]);
    let taken_back: Vec<EntryId> = book.job().withdrawn.iter().copied().collect();
    assert_eq!(taken_back, [id(3, 1)], "the withdrawal, and no longer the correction");
    book.add(withdrawn(5, id(1, 1)));
    assert!(titles(&book).is_empty());
    assert!(book.job().withdrawn.contains(&id(1, 1)));
}

#[test]
fn a_withdrawal_takes_back_only_what_it_had_seen() {
    let (first, theirs) = (id(1, 1), id(2, 2));
    let apart = |withdrawal: Record| Book::of([said(1, "a"), corrected(2, 2, &[first], "worse"), withdrawal]);
    // However much later, by whichever phone.
    for (count, device) in [(2, 1), (9, 1), (9, 2)] {
        let book = apart(withdrawn_as_seen(count, device, first, &[first]));
        assert_eq!(titles(&book), [r#"Title(Text("worse"))"#]);
        assert_eq!(book.job().conflicts[&first], [theirs, id(count, device)]);
        assert!(!book.job().withdrawn.contains(&first) && book.job().gone == Book::default().job().gone);
        let known = apart(withdrawn_as_seen(count.max(3), device, first, &[theirs]));
        assert!(titles(&known).is_empty() && known.job().conflicts.is_empty());
    }
    // What corrects what it had seen, it had not; what was corrected before, it had.
    let mut book = apart(withdrawn_as_seen(3, 1, first, &[theirs]));
    book.add(corrected(3, 2, &[theirs], "worst"));
    assert_eq!(book.job().conflicts[&first], [id(3, 2), id(3, 1)]);
    book.add(withdrawn_as_seen(4, 2, id(3, 2), &[id(3, 2)]));
    assert!(titles(&book).is_empty() && book.job().conflicts.is_empty());
}

#[test]
fn a_withdrawal_that_does_not_say_what_it_had_seen_had_seen_what_was_surely_said_before() {
    let first = id(1, 1);
    let stands = |of_device: u8, count: u32| {
        let book = Book::of([said(1, "a"), corrected(5, of_device, &[first], "b"), withdrawn(count, first)]);
        (titles(&book).len(), book.job().conflicts.len())
    };
    assert_eq!([stands(1, 6), stands(1, 4)], [(0, 0), (1, 1)], "on one phone the count tells");
    assert_eq!([stands(2, 5), stands(2, 6)], [(1, 1), (1, 1)], "of two at the same second nothing does");
}

#[test]
fn a_conflict_with_a_withdrawal_is_settled_either_way() {
    let first = id(1, 1);
    let apart =
        || Book::of([said(1, "a"), corrected(2, 2, &[first], "worse"), withdrawn_as_seen(2, 1, first, &[first])]);
    let (mut kept, mut gone) = (apart(), apart());
    let heads = kept.job().heads(first);
    kept.add(corrected(3, 1, &heads, "worse"));
    assert_eq!(titles(&kept), [r#"Title(Text("worse"))"#]);
    gone.add(withdrawn_as_seen(3, 1, first, &heads));
    assert!(titles(&gone).is_empty() && gone.job().withdrawn.contains(&first));
    for book in [kept, gone] {
        assert!(book.job().conflicts.is_empty() && book.job().faults.is_empty(), "{:?}", book.job());
    }
}

/// A correction into another kind is no word on it.
#[test]
fn what_is_no_correction_brings_nothing_back() {
    let first = id(1, 1);
    let other = Act::Correct { of: vec![first, id(2, 1)], to: Visit { purpose: Label::default() }.into() };
    let book = Book::of([said(1, "a"), withdrawn_as_seen(2, 1, first, &[first]), record(id(3, 1), other)]);
    assert!(titles(&book).is_empty() && book.job().conflicts.is_empty());
    assert_eq!(book.job().faults[&id(3, 1)], Fault::ChangesKind);
}

#[test]
fn what_cannot_be_followed_is_kept_and_reported() {
    let book = Book::of([
        said(1, "a"),
        withdrawn(2, id(2, 1)),
        withdrawn(3, id(1, 9)),
        record(id(4, 1), Act::Correct { of: vec![id(1, 1)], to: Visit { purpose: Label::default() }.into() }),
        corrected(5, 1, &[], "x"),
    ]);
    let faults = &book.job().faults;
    assert_eq!(faults[&id(2, 1)], Fault::Backwards { of: id(2, 1) });
    assert_eq!(faults[&id(3, 1)], Fault::Dangling { of: id(1, 9) });
    assert_eq!(faults[&id(4, 1)], Fault::ChangesKind);
    assert_eq!(faults[&id(5, 1)], Fault::CorrectsNothing);
    assert_eq!(book.log().len(), 5);
    assert_eq!(titles(&book), [r#"Title(Text("a"))"#]);
}

#[test]
fn a_dangling_entry_is_followed_once_what_it_names_arrives() {
    let mut book = Book::of([corrected(2, 1, &[id(1, 1)], "b")]);
    assert_eq!(book.job().faults.len(), 1);
    book.add(said(1, "a"));
    assert!(book.job().faults.is_empty());
    assert_eq!(titles(&book), [r#"Title(Text("b"))"#]);
}

#[test]
fn two_entries_under_one_id_are_both_kept_and_reported() {
    let mut book = Book::of([said(1, "b")]);
    assert_eq!(book.add(said(1, "a")), Added::Clash);
    assert_eq!(book.add(said(1, "b")), Added::Known);
    assert_eq!(book.log().clashes().collect::<Vec<_>>(), [id(1, 1)]);
    assert!(book.job().clashes.contains(&id(1, 1)), "and the job knows it");
    assert_eq!(titles(&book), [r#"Title(Text("a"))"#], "the same one counts on every phone");
}

#[test]
fn that_an_entry_is_not_here_yields_to_the_entry_and_clashes_with_nothing() {
    let mut book = Book::of([Record::absent(id(1, 1))]);
    assert!(book.job().absent.contains(&id(1, 1)) && book.log().next_id(id(1, 1).device).count == 2);
    assert_eq!(book.add(Record::read(Record::absent(id(1, 1)).json()).unwrap()), Added::Known);
    assert_eq!(book.add(said(1, "a")), Added::New);
    assert_eq!(book.add(Record::absent(id(1, 1))), Added::Known);
    assert!(book.job().absent.is_empty() && book.log().clashes().next().is_none());
    assert_eq!((titles(&book).len(), book.log().len()), (1, 1));
}

#[test]
fn another_layout_of_the_same_entry_is_the_same_entry() {
    let mut book = Book::of([said(1, "a")]);
    let spaced = said(1, "a").json().replace(':', ": ").replace("08: 15: 00-06: 00", "08:15:00-06:00");
    assert_eq!(book.add(Record::read(&spaced).unwrap()), Added::Known);
}

#[test]
fn a_kind_of_a_later_version_is_carried_untouched() {
    let json = said(1, "a").json().replace("fact", "fathom");
    let record = Record::read(&json).unwrap();
    assert_eq!(record.content(), &Content::Unknown { kind: "fathom".into() });
    assert_eq!(record.json(), json);
    let book = Book::of([record]);
    assert_eq!(book.job().unknown[&id(1, 1)], "fathom");
}

#[test]
fn a_field_that_is_not_known_is_named_and_another_layout_or_null_is_none() {
    let json = said(1, "a").json().to_owned();
    let unread = |from: &str, to: &str| {
        let changed = json.replacen(from, to, 1);
        assert!(changed != json);
        let record = Record::read(&changed).unwrap();
        assert_eq!(record.entry(), said(1, "a").entry());
        record.unread().map(ToOwned::to_owned)
    };
    assert_eq!(unread("{", "{ "), None);
    assert_eq!(unread("{", "{\"later\":null,"), None);
    assert_eq!(unread("{", "{\"later\":false,").as_deref(), Some("later"));
    assert_eq!(unread("\"stamp\":{", "\"stamp\":{\"where\":{},").as_deref(), Some("where"));
    let book = Book::of([Record::read(&json.replacen('{', "{\"later\":1,", 1)).unwrap()]);
    assert_eq!(
        (book.job().unknown[&id(1, 1)].as_str(), titles(&book).len()),
        ("later", 1),
        "it counts as far as it is read"
    );
    let many = corrected(2, 1, &[id(1, 1)], "b").json().replace("\"title\":\"b\"", "\"sheet\":{\"length\":1}");
    assert!(Record::read(&many).is_err(), "what is known has to be right all the same");
}

#[test]
fn a_fault_names_its_path() {
    let json = said(1, "a").json().replace("\"QZ\"", "\"far too long\"");
    let fault = Record::read(&json).unwrap_err();
    assert_eq!(fault.to_string(), "stamp.by.initials: text has 12 characters; up to 8 are accepted");
}

/// By a clock that is ahead, or one here that is behind.
#[test]
fn what_is_dated_later_than_now_is_counted() {
    let book = Book::of([record(id(1, 1), Act::Record(title("a"))), record(id(2, 2), Act::Record(title("b")))]);
    let now = stamp().at;
    let a_second = chrono::Duration::seconds(1);
    assert_eq!([now - a_second, now].map(|now| book.job().dated_after(now)), [2, 0]);
}
