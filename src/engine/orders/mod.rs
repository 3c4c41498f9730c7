//! The order list: everything that the job's results ask for, in one place.
//!
//! [`needs`](needs::needs) gathers what is needed from the results and nothing else;
//! [`order_list`] adds the waste that somebody allows, takes off what is on hand, puts the
//! office's prices beside it, and marks what changed since the job file was last sent. It
//! invents no price and no quantity: what cannot be worked out yet is named as open.

mod carriers;
mod lumber;
mod needs;
pub mod shims;
pub mod treated;
mod under;

pub use lumber::is_of;
pub use needs::{Needed, Section, Unit, needs};

use crate::engine::describe::counted;
use crate::engine::entry::{EntryId, Label};
use crate::engine::job::{Act, Book, HandOver, Job, Observation, Record};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sheets::{Searches, to_lay};
use crate::engine::take::Units;
use crate::engine::units::Amount;

/// A line of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What is needed, and what that rests on.
    pub needed: Needed,
    /// What is added for waste, percent.
    pub waste: Amount,
    /// Did somebody say so?
    pub is_waste_stated: bool,
    /// What is there already.
    pub on_hand: Amount,
    /// What to order: whole ones of what comes whole.
    pub to_order: Amount,
    /// What the office pays for one, if it said.
    pub price: Option<Amount>,
    /// What changed since the file was last sent; none if it never was.
    pub change: Option<Change>,
}

/// What changed since the file was last sent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Change {
    /// Nothing.
    Same,
    /// The line was not on it.
    New,
    /// It asked for so much.
    Was(Amount),
}

/// The list.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct OrderList {
    /// Its lines, in order.
    pub lines: Vec<Line>,
    /// Lines that were on it when it was last sent and are not now.
    pub dropped: Vec<String>,
    /// What cannot be worked out yet, and what to do about it.
    pub open: Vec<String>,
    /// The file's revision when it was last sent.
    pub sent: Option<u32>,
}

impl Line {
    /// What to order, in words: "3 sheets".
    pub fn quantity(&self) -> String {
        self.needed.unit.count(self.to_order)
    }
}

impl Change {
    /// In words; nothing for what did not change.
    pub fn words(self) -> String {
        match self {
            Self::Same => String::new(),
            Self::New => "new since it was sent".to_owned(),
            Self::Was(before) => format!("was {}", before.shown()),
        }
    }
}

/// The list of a job, with what changed since its file was last sent.
pub fn order_list(book: &Book, units: Units) -> OrderList {
    let job = book.job();
    let (mut lines, mut open) = lines(job, units);
    let Some((sent, hand_over)) = last_sent(book) else {
        return OrderList { lines, open, dropped: Vec::new(), sent: None };
    };
    let revision = hand_over.revision;
    // Of what another phone logged before, and gave later, nothing says which it was.
    let late = late(book, sent, hand_over);
    if late > 0 {
        open.push(format!(
            "What changed since r{revision} was sent cannot be told: {} of another phone came in since.",
            counted(late, "entry")
        ));
        return OrderList { lines, open, dropped: Vec::new(), sent: Some(revision) };
    }
    let before = Book::of(logged_before(book, sent).cloned());
    let (before, _) = self::lines(before.job(), units);
    for line in &mut lines {
        let same = before.iter().find(|other| other.needed.name == line.needed.name);
        line.change = Some(match same {
            None => Change::New,
            Some(other) if other.to_order == line.to_order => Change::Same,
            Some(other) => Change::Was(other.to_order),
        });
    }
    let is_gone = |line: &&Line| lines.iter().all(|other| other.needed.name != line.needed.name);
    let dropped = before.iter().filter(is_gone).map(|line| line.needed.name.clone()).collect();
    OrderList { lines, open, dropped, sent: Some(revision) }
}

fn logged_before(book: &Book, sent: EntryId) -> impl Iterator<Item = &Record> {
    book.log().records().filter(move |record| record.id() < sent)
}

/// How many entries came in since the file was sent, of those that were logged before by their
/// counts.
fn late(book: &Book, sent: EntryId, hand_over: &HandOver) -> usize {
    hand_over.entries.map_or(0, |entries| logged_before(book, sent).count().saturating_sub(entries as usize))
}

/// The last hand-over after which something was said, or came in: the one that the reader of this list
/// may have seen another list of. Whoever opens a file that was just sent asks for the one
/// before.
fn last_sent(book: &Book) -> Option<(EntryId, &HandOver)> {
    let is_hand_over = |record: &Record| {
        let entry = record.entry();
        entry.is_some_and(|entry| matches!(&entry.act, Act::Record(Observation::HandOver(_))))
    };
    let said = book.log().records().filter(|record| !is_hand_over(record)).map(Record::id).max()?;
    let mut sent = book.job().now.hand_overs().iter().rev();
    sent.find(|(id, sent)| **id < said || late(book, **id, sent.value) > 0).map(|(id, sent)| (*id, sent.value))
}

/// Its lines as they stand, and what is open, without what changed.
pub fn lines(job: &Job, units: Units) -> (Vec<Line>, Vec<String>) {
    let searches = to_lay(job).value().map(|floors| Searches::finished(job, floors.clone()));
    lines_with(job, searches.as_ref(), units)
}

/// The same of sheets that are searched already: what a page of sheets says of lumber is what
/// the list says.
pub fn lines_with(job: &Job, searches: Option<&Searches>, units: Units) -> (Vec<Line>, Vec<String>) {
    let (needed, open) = needs(job, searches, units);
    (needed.into_iter().map(|needed| line(job, needed)).collect(), open)
}

fn line(job: &Job, needed: Needed) -> Line {
    let said = Particulars::of(job);
    let part = Part::Order(Label::fitted(&needed.name));
    let stated = said.amount(&part, &list::WASTE);
    let waste = stated.unwrap_or(needed.usual_waste);
    let on_hand = said.amount(&part, &list::ON_HAND).unwrap_or(Amount::whole(0));
    let to_order = to_order(needed.amount, waste, on_hand, needed.unit.is_whole());
    let price = said.amount(&part, &list::PRICE);
    Line { needed, waste, is_waste_stated: stated.is_some(), on_hand, to_order, price, change: None }
}

/// What is needed and its waste, less what is there; whole ones of what comes whole.
///
/// Waste is of what is needed, not of what is bought.
pub fn to_order(needed: Amount, waste: Amount, on_hand: Amount, is_whole: bool) -> Amount {
    let [needed, waste, on_hand] = [needed, waste, on_hand].map(i64::from).map(i128::from);
    // Waste is in thousandths of a percent: rounded up, a thousandth at most.
    let with_waste = (needed * (100_000 + waste) + 99_999) / 100_000;
    let left = (with_waste - on_hand).max(0);
    let ordered = if is_whole { (left + 999) / 1000 * 1000 } else { left };
    i64::try_from(ordered).ok().and_then(|ordered| Amount::try_from(ordered).ok()).unwrap_or(Amount::MOST)
}
