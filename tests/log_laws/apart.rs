//! Two phones that work on one thing and do not know of each other: no last word of either is
//! lost without a conflict.

use crate::{id, said, stamp, title, titles};
use duckboard::engine::entry::{DeviceId, EntryId};
use duckboard::engine::job::{Act, Book, Content, Entry, Pen, Record};
use proptest::prelude::*;

/// What somebody does to a thing on their phone.
#[derive(Debug, Clone, Copy)]
enum Do {
    /// Types it again.
    Retype(u8),
    /// Takes back the last that this phone logged of it.
    Undo,
    /// Takes the thing back.
    TakeBack,
    /// Takes back a correction of it that stands, whoever made it.
    TakeBackOne(usize),
}

const THING: u32 = 1;

fn thing() -> EntryId {
    id(THING, 1)
}

fn any_do() -> impl Strategy<Value = Do> {
    prop_oneof![
        3 => (0_u8..5).prop_map(Do::Retype),
        2 => Just(Do::Undo),
        1 => Just(Do::TakeBack),
        1 => (0_usize..4).prop_map(Do::TakeBackOne),
    ]
}

/// A phone with what it has: as the app does it.
struct Phone {
    book: Book,
    pen: Pen,
    device: DeviceId,
}

impl Phone {
    fn new(book: Book, device: u8) -> Self {
        let device = DeviceId::new(u128::from(device));
        Self { pen: Pen::new(book.log(), device, stamp()), book, device }
    }

    /// False if there was nothing to do it to.
    fn does(&mut self, what: Do) -> bool {
        let job = self.book.job();
        let stands = |entry: &&Entry| !job.withdrawn.contains(&entry.id);
        let entries: Vec<&Entry> = self.book.log().records().filter_map(Record::entry).filter(stands).collect();
        // One that others correct says nothing as long as they stand.
        let heads = job.heads(thing());
        let is_head = |entry: &&&Entry| matches!(entry.act, Act::Correct { .. }) && heads.contains(&entry.id);
        let corrections: Vec<EntryId> = entries.iter().filter(is_head).map(|entry| entry.id).collect();
        let is_own = |entry: &&&Entry| entry.id.device == self.device && !matches!(entry.act, Act::Withdraw { .. });
        let entry = match what {
            Do::Retype(to) if job.now.get(thing()).is_some() => {
                self.pen.correct(job.heads(thing()), title(&to.to_string()))
            }
            Do::Undo => match entries.iter().rfind(is_own) {
                Some(last) => self.pen.take_back(last.id, job),
                None => return false,
            },
            Do::TakeBack if job.now.get(thing()).is_some() => self.pen.take_back(thing(), job),
            Do::TakeBackOne(which) if !corrections.is_empty() => {
                self.pen.take_back(corrections[which % corrections.len()], job)
            }
            _ => return false,
        };
        self.book.add(Record::of(entry).unwrap());
        true
    }

    fn says(&self) -> (Vec<String>, bool) {
        (titles(&self.book), !self.book.job().conflicts.is_empty())
    }
}

fn merged(one: &Book, other: &Book) -> Book {
    Book::of(one.log().records().chain(other.log().records()).cloned())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn no_phones_last_word_is_lost_without_a_conflict(
        before in prop::collection::vec((0_u8..5).prop_map(Do::Retype), 0..3),
        apart in prop::array::uniform2(prop::collection::vec(any_do(), 0..4)),
    ) {
        let mut base = Phone::new(Book::of([said(THING, "9")]), 1);
        for what in before {
            base.does(what);
        }
        let mut phones = [1, 2].map(|device| Phone::new(base.book.clone(), device));
        let [said_on_one, said_on_other] = [0, 1].map(|at| {
            let all = apart[at].iter();
            all.filter_map(|what| if phones[at].does(*what) { Some(phones[at].says()) } else { None }).collect::<Vec<_>>()
        });
        let mut merged = Phone::new(merged(&phones[0].book, &phones[1].book), 1);
        let [one, other] = [phones[0].says(), phones[1].says()];
        match (said_on_one.is_empty(), said_on_other.is_empty()) {
            (_, true) => prop_assert_eq!(&merged.says(), &one),
            (true, false) => prop_assert_eq!(&merged.says(), &other),
            // What one says the other may have said too, or had before them, and gone on from there.
            _ if said_on_one.contains(&other) || said_on_other.contains(&one) => {}
            _ if [&one, &other].contains(&&base.says()) => {}
            _ => prop_assert!(merged.says().1, "{:?} {:?}: {:?}", one, other, merged.says()),
        }
        // And every conflict can be settled, either way.
        if merged.says().1 {
            let mut gone = Phone::new(merged.book.clone(), 1);
            prop_assert!(merged.does(Do::Retype(7)) && gone.does(Do::TakeBack));
            prop_assert_eq!(merged.says(), (titles_of("7"), false));
            prop_assert_eq!(gone.says(), (Vec::new(), false));
        }
        let unread = merged.book.log().records().filter(|record| matches!(record.content(), Content::Unknown { .. }));
        prop_assert_eq!(unread.count(), 0);
    }
}

fn titles_of(text: &str) -> Vec<String> {
    titles(&Book::of([said(THING, text)]))
}

/// A reading of 41 is typed again as 24 by mistake, and that is undone. Another phone, which had
/// seen 24, types it again as 14, or takes it back.
#[test]
fn what_was_undone_on_one_phone_and_built_on_by_another_is_a_conflict() {
    for theirs in [Do::Retype(1), Do::TakeBack] {
        let mut first = Phone::new(Book::of([said(THING, "41")]), 1);
        assert!(first.does(Do::Retype(2)));
        let mut second = Phone::new(first.book.clone(), 2);
        assert!(first.does(Do::Undo) && second.does(theirs));
        assert_eq!(first.says(), (titles_of("41"), false));
        let merged = merged(&first.book, &second.book);
        assert_eq!(merged.job().conflicts.len(), 1, "{theirs:?}");
    }
}

/// A phone that was restored from a backup takes back what it logged itself.
#[test]
fn what_is_taken_back_by_a_phone_that_saw_one_of_two_entries_under_an_id_ends_no_clash() {
    let mut first = Phone::new(Book::of([said(2, "rotten")]), 1);
    let mut restored = Phone::new(Book::of([said(2, "dry")]), 1);
    let back = restored.pen.take_back(id(2, 1), restored.book.job());
    restored.book.add(Record::of(back).unwrap());
    first.book = merged(&first.book, &restored.book);
    assert!(first.book.job().clashes.contains(&id(2, 1)) && first.book.job().withdrawn.contains(&id(2, 1)));
    // Brought back, and taken back by who has both.
    let mut settling = Phone::new(first.book.clone(), 3);
    for of in [id(3, 1), id(2, 1)] {
        let entry = settling.pen.take_back(of, settling.book.job());
        settling.book.add(Record::of(entry).unwrap());
    }
    let job = settling.book.job();
    assert!(job.clashes.is_empty() && job.withdrawn.contains(&id(2, 1)), "{job:?}");
}
