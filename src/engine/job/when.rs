//! What was said after what, on phones that do not know of each other, and what in one visit.

use super::thing::{Kind, Seen, Thing};
use crate::engine::entry::{EntryId, Stamp, Time};
use chrono::TimeDelta;

/// So far apart two phones may begin a visit that is one (judgement).
pub const ONE_MORNING: TimeDelta = TimeDelta::hours(12);

/// So far may two phones' clocks be apart (judgement).
pub const CLOCKS_APART: TimeDelta = TimeDelta::hours(1);

/// So long after a visit's first entry what is logged belongs to it no more (judgement).
pub const LONGEST_VISIT: TimeDelta = TimeDelta::days(3);

/// When something was said: by which entry, and by the clock of its phone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct When {
    /// The entry that says it.
    pub id: EntryId,
    /// Its phone's clock.
    pub at: Time,
}

impl When {
    /// Was this surely said after `other`? A greater count on the same phone had seen it. From
    /// another phone a greater count may only mean that it logged more, so that its clock has to
    /// agree. Where neither can be told, nothing is after: whoever asks takes the bad way.
    pub fn is_after(self, other: Self) -> bool {
        self.id.count > other.id.count && (self.id.device == other.id.device || self.at > other.at)
    }

    /// Was it surely said after all of these?
    pub fn is_after_all<'a>(self, others: impl IntoIterator<Item = &'a Self>) -> bool {
        others.into_iter().all(|other| self.is_after(*other))
    }
}

/// In which visit something was said: when first, and when as it stands now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct InVisit {
    visit: Option<EntryId>,
    first: Time,
    said: Time,
}

impl InVisit {
    /// That of an entry with this stamp.
    pub const fn of(stamp: &Stamp) -> Self {
        Self { visit: stamp.visit, first: stamp.at, said: stamp.at }
    }

    /// Are these two of the same visit? A visit ends when another one is begun. Where nobody began
    /// one, what was said more days later than a visit may last is of another.
    pub fn is_same(self, other: Self) -> bool {
        let times = [self.first, self.said, other.first, other.said];
        let days = times.into_iter().min().zip(times.into_iter().max()).map(|(first, last)| last - first);
        self.visit == other.visit && days.is_some_and(|days| days <= LONGEST_VISIT)
    }

    /// Was it said in any?
    pub const fn is_any(self) -> bool {
        self.visit.is_some()
    }
}

/// Of all that was said of one thing, what may be the last word, in log order: that after which
/// surely nothing else was said. Of two phones that did not know of each other both may be.
pub fn last_words<T>(said: impl IntoIterator<Item = (When, T)>) -> Vec<T> {
    let said: Vec<_> = said.into_iter().collect();
    let all: Vec<_> = said.iter().map(|(when, _)| *when).collect();
    let is_last = |when: When| !all.iter().any(|other| other.is_after(when));
    said.into_iter().filter(|(when, _)| is_last(*when)).map(|(_, said)| said).collect()
}

impl<V, S> Thing<V, S> {
    /// When it was said as it stands now: a correction says it anew.
    pub const fn when(&self) -> When {
        When { id: self.head, at: self.said }
    }
}

impl<T: Kind> Seen<'_, T> {
    /// When it was said first, under this id: what a meter showed is as old as that, however
    /// its number was put right since.
    pub const fn begun(&self, id: EntryId) -> When {
        When { id, at: self.stamp.at }
    }

    /// In which visit it was said.
    pub const fn in_visit(&self) -> InVisit {
        InVisit { said: self.said, ..InVisit::of(self.stamp) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::DeviceId;

    fn when(count: u32, device: u128, at: &str) -> When {
        let at = chrono::DateTime::parse_from_rfc3339(at).unwrap();
        When { id: EntryId { count, device: DeviceId::new(device) }, at }
    }

    #[test]
    fn on_one_phone_the_count_tells_and_its_clock_may_lie() {
        let (one, next) = (when(4, 1, "2026-10-26T08:00:00Z"), when(5, 1, "2020-01-01T08:00:00Z"));
        assert!(next.is_after(one) && !one.is_after(next) && !one.is_after(one));
    }

    #[test]
    fn of_two_phones_nothing_is_after_unless_count_and_clock_agree() {
        let found = when(40, 2, "2026-12-24T08:00:00Z");
        assert!(!when(90, 1, "2026-10-26T08:00:00Z").is_after(found), "counted further, and logged before");
        assert!(!when(90, 1, "2026-12-24T08:00:00Z").is_after(found), "at the same second");
        assert!(!when(40, 3, "2026-12-25T08:00:00Z").is_after(found), "counted no further");
        assert!(when(41, 1, "2026-12-24T08:00:01Z").is_after(found));
    }

    #[test]
    fn what_is_said_more_than_three_days_later_is_of_another_visit_though_nobody_began_one() {
        let visit = |count| Some(EntryId { count, device: DeviceId::new(1) });
        let said = |visit, first: &str, said: &str| {
            let [first, said] = [first, said].map(|at| chrono::DateTime::parse_from_rfc3339(at).unwrap());
            InVisit { visit, first, said }
        };
        let begun = "2026-10-26T08:00:00Z";
        let one = said(visit(1), begun, begun);
        let days = [("2026-10-29T07:59:59Z", true), ("2026-10-29T08:00:00Z", true), ("2026-10-29T08:00:01Z", false)];
        for (at, is_same) in days {
            let other = said(visit(1), at, at);
            assert_eq!([one.is_same(other), other.is_same(one)], [is_same; 2], "{at}");
            let corrected = said(visit(1), begun, at);
            assert_eq!([one.is_same(corrected), corrected.is_same(one)], [is_same; 2], "corrected {at}");
            assert!(!one.is_same(said(visit(2), at, at)), "{at}: another visit is another one");
            assert_eq!(said(None, begun, begun).is_same(said(None, at, at)), is_same, "{at}: before the first visit");
        }
        assert!(one.is_any() && !said(None, begun, begun).is_any());
    }

    #[test]
    fn what_nothing_was_surely_said_after_may_be_the_last_word() {
        let late = (when(40, 2, "2026-12-24T08:00:00Z"), "late, counted less");
        let far = (when(90, 1, "2026-10-26T08:00:00Z"), "counted further");
        let before = [(when(39, 2, "2026-12-24T08:00:00Z"), "before"), (when(89, 1, "2026-11-25T08:00:00Z"), "before")];
        assert_eq!(last_words([before[0], late, before[1], far]), ["late, counted less", "counted further"]);
        let last = (when(91, 3, "2026-12-24T08:00:01Z"), "last");
        assert_eq!(last_words([late, far, last]), ["last"]);
        let as_late = (when(91, 3, "2026-12-24T08:00:00Z"), "as late as another");
        assert_eq!(last_words([late, far, as_late]), ["late, counted less", "as late as another"]);
    }
}
