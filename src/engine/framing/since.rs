//! Since when something is so: what was said later is told from what was said before.

use super::done::done;
use super::member::Done;
use crate::engine::entry::{DeviceId, Time};
use crate::engine::job::{Job, Kind, Seen, When};
use crate::engine::moisture::Answer;
use crate::engine::particular::{Item, Part, Particular, Particulars};
#[cfg(doc)]
use crate::engine::sources::Source;

/// The latest of the entries that something rests on, as [`When`] is of one: by their counts,
/// and by their clocks. Of two phones that did not know of each other neither says by itself
/// who was first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Since {
    count: Option<u32>,
    at: Option<Time>,
    phones: Phones,
}

/// Whose entries those are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Phones {
    #[default]
    None,
    One(DeviceId),
    Several,
}

impl Since {
    /// It rests on nothing that anybody said.
    pub const ALWAYS: Self = Self { count: None, at: None, phones: Phones::None };

    /// By what a thing says as it stands.
    pub fn of<T: Kind>(thing: &Seen<'_, T>) -> Self {
        Self::when(thing.when())
    }

    /// By one entry.
    pub const fn when(When { id, at }: When) -> Self {
        Self { count: Some(id.count), at: Some(at), phones: Phones::One(id.device) }
    }

    /// What rests on both is so since the later one.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        let phones = match (self.phones, other.phones) {
            (Phones::None, some) | (some, Phones::None) => some,
            (one, other) if one == other => one,
            _ => Phones::Several,
        };
        Self { count: self.count.max(other.count), at: self.at.max(other.at), phones }
    }

    /// Was this said after all that? On one phone its count tells, whatever its clock did. Of
    /// several phones a greater count may only mean that one logged more: the clocks have to
    /// agree, and what only one of the two says counts as said before, which settles nothing.
    pub fn is_after(self, other: Self) -> bool {
        let is_one_phone =
            other.phones == Phones::None || (self.phones != Phones::Several && self.phones == other.phones);
        self.count > other.count && (is_one_phone || self.at > other.at)
    }

    /// Is each by one phone, and the one not by the other's?
    pub(super) fn is_of_another_phone(self, other: Self) -> bool {
        matches!((self.phones, other.phones), (Phones::One(one), Phones::One(other)) if one != other)
    }

    /// Is it so by something that was said then or later, by its clock?
    pub fn is_not_before(self, then: Time) -> bool {
        self.at.is_some_and(|at| at >= then)
    }

    /// What rests on all of them.
    pub fn all(all: impl IntoIterator<Item = Self>) -> Self {
        all.into_iter().fold(Self::ALWAYS, Self::and)
    }

    /// Since an item of a part was last said.
    pub(super) fn said(said: Particulars<'_>, part: &Part, item: &Item) -> Self {
        said.thing(part, item).map_or(Self::ALWAYS, |thing| Self::of(&thing))
    }

    /// Since an item of a part has been what it is: said again the same it is no newer, unless another
    /// member came in between.
    pub(super) fn stood(said: Particulars<'_>, part: &Part, item: &Item) -> Self {
        let all: Vec<_> = said.each(part, item).collect();
        let Some(last) = all.last() else { return Self::ALWAYS };
        let new = done(said, part).into_iter().filter(|(done, _)| *done == Done::Replaced);
        let new = Self::all(new.map(|(_, since)| since));
        let is_as_now =
            |it: &&Seen<'_, Particular>| it.value.is.says_the_same(&last.value.is) && Self::of(it).is_after(new);
        let same = all.iter().rev().take_while(is_as_now).last();
        Self::of(same.unwrap_or(last))
    }

    /// The same of a joist, or else of all joists.
    pub(super) fn stood_of_joist(said: Particulars<'_>, joist: &Part, item: &Item) -> Self {
        if said.thing(joist, item).is_some() {
            Self::stood(said, joist, item)
        } else {
            Self::stood(said, &Part::Joists, item)
        }
    }

    /// The same of a joist, or else of all joists.
    pub(super) fn said_of_joist(said: Particulars<'_>, joist: &Part, item: &Item) -> Self {
        match said.thing(joist, item) {
            Some(thing) => Self::of(&thing),
            None => Self::said(said, &Part::Joists, item),
        }
    }

    /// Since a question of the checklist was answered with yes, if that was said after every other
    /// answer to it.
    pub(super) fn yes_to(job: &Job, name: &str) -> Option<Self> {
        let all = || job.now.checks().values().filter(|it| it.value.of.as_str() == name);
        let others = Self::all(all().filter(|it| it.value.answer != Answer::Yes).map(|it| Self::of(&it)));
        let yes = all().filter(|it| it.value.answer == Answer::Yes).map(|it| Self::of(&it));
        let mut surely = yes.filter(|said| said.is_after(others));
        surely.next_back()
    }

    /// Since the joists were laid out: what was said of one by its number before that may be
    /// of another.
    pub(super) fn laid_out(job: &Job) -> Self {
        Self::all(job.now.joists().values().map(|thing| Self::of(&thing)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::EntryId;
    use chrono::{DateTime, Duration};

    fn at(minutes: i64) -> Time {
        DateTime::parse_from_rfc3339("2026-11-25T09:15:00-06:00").unwrap() + Duration::minutes(minutes)
    }

    /// Said by a phone, at its so manyth count, when its clock stood so.
    fn said(phone: u128, count: u32, minutes: i64) -> Since {
        Since::when(When { id: EntryId { count, device: DeviceId::new(phone) }, at: at(minutes) })
    }

    #[test]
    fn everything_is_said_after_what_nobody_said() {
        assert!(said(1, 0, -9).is_after(Since::ALWAYS) && !Since::ALWAYS.is_after(said(1, 0, -9)));
        assert!(!Since::ALWAYS.is_after(Since::ALWAYS));
    }

    #[test]
    fn on_one_phone_the_count_tells_and_of_two_the_clocks_have_to_agree() {
        assert!(said(1, 8, 0).is_after(said(1, 7, 60)) && !said(1, 7, 60).is_after(said(1, 7, 0)));
        let of_two = |minutes| said(1, 8, minutes).is_after(said(2, 7, 0));
        assert_eq!([-1, 0, 1].map(of_two), [false, false, true]);
        assert!(!said(1, 7, 60).is_after(said(2, 8, 0)), "it counts less");
    }

    #[test]
    fn what_rests_on_both_phones_is_of_neither() {
        let both = said(1, 5, 0).and(said(2, 7, 10));
        assert!(!said(1, 8, 5).is_after(both) && said(1, 8, 11).is_after(both));
        assert_eq!(both, said(2, 7, 10).and(said(1, 5, 0)));
        assert!(said(1, 8, 5).is_after(said(1, 5, 0).and(said(1, 7, 10))), "its own clock does not matter");
        assert_eq!(both.and(Since::ALWAYS), both);
    }

    #[test]
    fn what_is_so_since_then_is_so_not_before_it() {
        assert_eq!([-1, 0, 1].map(|minutes| said(1, 8, minutes).is_not_before(at(0))), [false, true, true]);
        assert!(!Since::ALWAYS.is_not_before(at(0)));
    }

    #[test]
    fn another_phone_is_one_that_is_known_to_be_another() {
        let both = said(1, 5, 0).and(said(2, 7, 10));
        assert!(said(1, 8, 0).is_of_another_phone(said(2, 7, 0)) && !said(1, 8, 0).is_of_another_phone(said(1, 7, 0)));
        assert!(!said(1, 8, 0).is_of_another_phone(both) && !Since::ALWAYS.is_of_another_phone(said(1, 8, 0)));
    }
}
