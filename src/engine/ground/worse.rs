//! What two phones say differently of ground, air and roof: the worse counts, and is told.

use crate::engine::particular::{Item, Part, Particulars};
use crate::engine::units::{Amount, Length};

/// What is said of the house, and of which of it two phones say different things.
pub(super) struct Worse<'a> {
    said: Particulars<'a>,
    apart: Vec<&'static str>,
}

impl<'a> Worse<'a> {
    pub(super) const fn of(said: Particulars<'a>) -> Self {
        Self { said, apart: Vec::new() }
    }

    /// The greatest length that may have been said last.
    pub(super) fn longest(&mut self, item: &Item) -> Option<Length> {
        let all = self.said.lengths(&Part::House, item);
        self.each(item, all).into_iter().max()
    }

    /// The least.
    pub(super) fn shortest(&mut self, item: &Item) -> Option<Length> {
        let all = self.said.lengths(&Part::House, item);
        self.each(item, all).into_iter().min()
    }

    /// The greatest amount.
    pub(super) fn most(&mut self, item: &Item) -> Option<Amount> {
        let all = self.said.amounts(&Part::House, item);
        self.each(item, all).into_iter().max()
    }

    /// The least.
    pub(super) fn least(&mut self, item: &Item) -> Option<Amount> {
        let all = self.said.amounts(&Part::House, item);
        self.each(item, all).into_iter().min()
    }

    /// All words that may have been said last.
    pub(super) fn words(&mut self, item: &Item) -> Vec<&'a str> {
        let all = self.said.all_words(&Part::House, item);
        self.each(item, all)
    }

    fn each<T: PartialEq>(&mut self, item: &Item, all: Vec<T>) -> Vec<T> {
        if all.iter().any(|one| all.first() != Some(one)) {
            self.apart.push(item.asks);
        }
        all
    }

    /// What was taken for want of one word, as an assumption.
    pub(super) fn assumed(self) -> Option<String> {
        let what = self.apart.join("; ");
        (!what.is_empty()).then(|| format!("the worse of what two phones say ({what}): say it again"))
    }
}
