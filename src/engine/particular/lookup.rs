//! What was said last.

use super::{Item, Part, Particular, Value};
use crate::engine::entry::EntryId;
use crate::engine::job::{Job, Seen, last_words};
use crate::engine::units::{Amount, Length};
use crate::order;

/// Particulars as they stand: of each part and item what was said last. Values that an item
/// does not take, as a damaged file may hold, count as not said.
#[derive(Debug, Clone, Copy)]
pub struct Particulars<'a> {
    job: &'a Job,
}

impl<'a> Particulars<'a> {
    /// Of a job.
    pub const fn of(job: &'a Job) -> Self {
        Self { job }
    }

    /// What was said last.
    pub fn get(self, part: &Part, item: &Item) -> Option<&'a Value> {
        self.last(part, item).map(|(_, value)| value)
    }

    /// What was said last, and the entry that says it as it stands.
    pub fn last(self, part: &Part, item: &Item) -> Option<(EntryId, &'a Value)> {
        self.thing(part, item).map(|it| (it.head, &it.value.is))
    }

    /// What was said last, with who said it and when.
    pub fn thing(self, part: &Part, item: &Item) -> Option<Seen<'a, Particular>> {
        self.each(part, item).next_back()
    }

    /// Everything that was said of it and stands, in log order.
    pub fn each(self, part: &Part, item: &Item) -> impl DoubleEndedIterator<Item = Seen<'a, Particular>> {
        let all = self.job.now.particulars().values();
        all.filter(|it| it.value.of == *part && it.value.what.as_str() == item.what && item.allows(&it.value.is))
    }

    /// Everything that may be the last word: of two phones that did not know of each other, both
    /// may have it. Whoever asks takes the worse.
    pub fn last_words(self, part: &Part, item: &Item) -> Vec<Seen<'a, Particular>> {
        last_words(self.each(part, item).map(|it| (it.when(), it)))
    }

    /// The same of a part's lengths.
    pub fn lengths(self, part: &Part, item: &Item) -> Vec<Length> {
        let lengths = self.last_words(part, item).into_iter().map(|it| &it.value.is);
        lengths.filter_map(|it| if let Value::Length(typed) = it { Some(typed.value) } else { None }).collect()
    }

    /// The same of its amounts.
    pub fn amounts(self, part: &Part, item: &Item) -> Vec<Amount> {
        let amounts = self.last_words(part, item).into_iter().map(|it| &it.value.is);
        amounts.filter_map(|it| if let Value::Amount(typed) = it { Some(typed.value) } else { None }).collect()
    }

    /// The same of its words, each as often as it was said.
    pub fn all_words(self, part: &Part, item: &Item) -> Vec<&'a str> {
        self.last_words(part, item).into_iter().map(|it| it.value.is.typed()).collect()
    }

    /// A length of a part.
    pub fn length(self, part: &Part, item: &Item) -> Option<Length> {
        match self.get(part, item)? {
            Value::Length(typed) => Some(typed.value),
            Value::Amount(_) | Value::Words(_) => None,
        }
    }

    /// An amount of a part.
    pub fn amount(self, part: &Part, item: &Item) -> Option<Amount> {
        match self.get(part, item)? {
            Value::Amount(typed) => Some(typed.value),
            Value::Length(_) | Value::Words(_) => None,
        }
    }

    /// Words of a part.
    pub fn words(self, part: &Part, item: &Item) -> Option<&'a str> {
        match self.get(part, item)? {
            Value::Words(words) => Some(words.as_str()),
            Value::Length(_) | Value::Amount(_) => None,
        }
    }

    /// A length of a joist, or else of all joists.
    pub fn length_of_joist(self, joist: &Part, item: &Item) -> Option<Length> {
        self.length(joist, item).or_else(|| self.length(&Part::Joists, item))
    }

    /// Words of a joist, or else of all joists.
    pub fn words_of_joist(self, joist: &Part, item: &Item) -> Option<&'a str> {
        self.words(joist, item).or_else(|| self.words(&Part::Joists, item))
    }

    /// Every part of some kind that anything was said of, in order and once.
    pub fn parts(self, is_one: impl Fn(&Part) -> bool) -> Vec<&'a Part> {
        let all = self.job.now.particulars().values().map(|it| &it.value.of);
        let mut found: Vec<_> = all.filter(|part| is_one(part)).collect();
        order::sort(&mut found);
        found.dedup();
        found
    }
}
