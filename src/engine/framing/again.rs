//! Spots that were looked at again: a later one, measured at the same place, stands for one that
//! nobody could reach or measure, and what was logged twice is one.

use super::damage::{AWL_ERROR, Damage, DamageKind, Depth};
use super::measured::is_of_before;
use super::since::Since;
use super::spots::{BESIDE, Stretch};
use crate::engine::units::{Length, Typed};

/// So far may a tape be off on where a cut begins or ends, measured twice (judgement).
pub const SAME_CUT: Length = Length::INCH;
/// The same of how deep and how high it is, and how near an edge (judgement).
pub const SAME_DEPTH: Length = Length::sixty_fourths(8);

/// A spot as it was logged, with where it lies along its member.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot<'a> {
    pub(super) damage: &'a Damage,
    pub(super) stretch: Stretch,
    pub(super) since: Since,
}

/// The spots that stand, of all of one member in log order. None stands for another where a new
/// member came between the two.
pub(super) fn standing(spots: &[Spot<'_>], replaced: &[Since]) -> Vec<bool> {
    let of_one = |first: &Spot<'_>, later: &Spot<'_>| {
        first.damage.of == later.damage.of && !is_of_before(replaced, first.since, later.since)
    };
    let stands = |(at, spot): (usize, &Spot<'_>)| {
        let (before, after) = (spots.iter().take(at), spots.iter().skip(at + 1));
        let is_twice = before.filter(|first| of_one(first, spot)).any(|first| first.is_the_same(spot));
        let after = after.filter(|it| it.since.is_after(spot.since) && of_one(spot, it));
        let is_again = match spot.damage.kind {
            DamageKind::Soft => spot.is_probed_by(after),
            DamageKind::Notch | DamageKind::Hole => after.into_iter().any(|it| spot.is_measured_by(it)),
        };
        let others = spots.iter().enumerate().filter(|(other, _)| *other != at);
        let is_held = |(other, it): (usize, &Spot<'_>)| {
            let (first, later) = if other < at { (it, spot) } else { (spot, it) };
            of_one(first, later) && spot.is_held_to_be(it, other < at)
        };
        !is_twice && !is_again && !others.into_iter().any(is_held)
    };
    spots.iter().enumerate().map(stands).collect()
}

fn value(typed: Option<&Typed<Length>>) -> Option<Length> {
    typed.map(|typed| typed.value)
}

impl<'a> Spot<'a> {
    /// Is it the same whole cut, logged twice?
    fn is_the_same(&self, other: &Self) -> bool {
        let said = |spot: &Self| {
            let Damage { kind, face, .. } = *spot.damage;
            (kind, face, spot.stretch.ends(), spot.damage.depth(), value(spot.damage.to_edge.as_ref()))
        };
        self.is_whole() && said(self) == said(other)
    }

    /// Is it the cut that another phone logged as large or larger, as far as a tape can tell? Of two
    /// alike the first stands.
    fn is_held_to_be(&self, other: &Self, is_later: bool) -> bool {
        let is_larger_both_ways = |one: &Self, other: &Self| {
            let to_edge = |spot: &Self| value(spot.damage.to_edge.as_ref());
            one.damage.depth() >= other.damage.depth()
                && one.stretch.long() >= other.stretch.long()
                && to_edge(one) <= to_edge(other)
        };
        self.since.is_of_another_phone(other.since)
            && self.is_measured_like(other)
            && is_larger_both_ways(other, self)
            && (is_later || !is_larger_both_ways(self, other))
    }

    /// Are both whole, of one kind, at one face, and no farther apart than two tapes are off?
    fn is_measured_like(&self, other: &Self) -> bool {
        let is_within = |one: Option<Length>, other: Option<Length>, most: Length| {
            one.zip(other).is_none_or(|(one, other)| (one - other).abs() <= most)
        };
        let [one, its] = [self, other].map(|spot| (spot.damage.kind, spot.damage.face));
        let (from, to) = (self.stretch.from.zip(other.stretch.to), self.stretch.to.zip(other.stretch.from));
        // Two cuts that lie side by side are two.
        let overlaps = from.is_some_and(|(from, to)| from < to) && to.is_some_and(|(to, from)| from < to);
        let [edge, its_edge] = [self, other].map(|spot| value(spot.damage.to_edge.as_ref()));
        one == its
            && self.is_whole()
            && other.is_whole()
            && overlaps
            && is_within(self.stretch.from, other.stretch.from, SAME_CUT)
            && is_within(self.stretch.to, other.stretch.to, SAME_CUT)
            && is_within(self.damage.depth(), other.damage.depth(), SAME_DEPTH)
            && is_within(edge, its_edge, SAME_DEPTH)
    }

    /// Is it a cut of which everything is said that it is judged by?
    fn is_whole(&self) -> bool {
        let is_placed = self.stretch.ends().is_some() && self.damage.depth().is_some();
        match self.damage.kind {
            DamageKind::Soft => false,
            DamageKind::Notch => is_placed,
            DamageKind::Hole => is_placed && self.damage.to_edge.is_some(),
        }
    }

    /// Does a later whole cut say what this one leaves open: the same kind at the same place, and
    /// no smaller than was said already?
    fn is_measured_by(&self, later: &Self) -> bool {
        let is_kind = self.damage.kind == later.damage.kind && !self.is_whole() && later.is_whole();
        let is_face = self.damage.face.is_none() || self.damage.face == later.damage.face;
        is_kind && is_face && self.is_held_by(later) && self.is_no_larger_than(later)
    }

    /// Do its ends, as far as they were said, lie within the later one? One without any may be
    /// elsewhere.
    fn is_held_by(&self, later: &Self) -> bool {
        let Some((from, to)) = later.stretch.ends() else { return false };
        let mut ends = [self.stretch.from, self.stretch.to].into_iter().flatten().peekable();
        ends.peek().is_some() && ends.all(|at| from - SAME_CUT <= at && at <= to + SAME_CUT)
    }

    fn is_no_larger_than(&self, later: &Self) -> bool {
        let is_as_deep = self.damage.depth().zip(later.damage.depth()).is_none_or(|(own, its)| own <= its + AWL_ERROR);
        let [own, its] = [self, later].map(|spot| value(spot.damage.to_edge.as_ref()));
        is_as_deep && own.zip(its).is_none_or(|(own, its)| its <= own + AWL_ERROR)
    }

    /// Was it probed since from end to end, where nobody could reach it, or say how deep or on which
    /// face? Where it is soft only a depth says how deep; where nobody could reach, that the awl stops
    /// says as much. A gap no wider than [`BESIDE`] is none.
    fn is_probed_by(&self, later: impl Iterator<Item = &'a Self>) -> bool
    where
        Self: 'a,
    {
        let least = match self.damage.depth.as_ref() {
            Some(Depth::Is(_)) if self.damage.face.is_some() => return false,
            Some(Depth::Is(typed)) => (typed.value - AWL_ERROR).max(Length::nm(1)),
            // On which side nobody said: another one that could be reached is no answer.
            Some(Depth::CannotReach) if self.damage.face.is_none() => return false,
            Some(Depth::CannotReach) => Length::ZERO,
            None => Length::nm(1),
        };
        let [one, other] = [self.stretch.from.or(self.stretch.to), self.stretch.to.or(self.stretch.from)];
        let Some((from, to)) = one.zip(other) else { return false };
        let is_there = |it: &&Self| {
            let is_face = match self.damage.face {
                Some(face) => it.damage.face == Some(face),
                None => it.damage.face.is_some() || self.damage.depth().is_none(),
            };
            it.damage.kind == DamageKind::Soft && is_face && it.damage.depth().is_some_and(|depth| depth >= least)
        };
        let stretches = later.filter(is_there).filter_map(|it| it.stretch.ends());
        let mut probed: Vec<_> = stretches.filter(|(begins, ends)| *begins <= to && from <= *ends).collect();
        probed.sort_unstable();
        let mut reached = None;
        for (begins, ends) in probed {
            if begins <= reached.unwrap_or(from) + BESIDE {
                reached = reached.max(Some(ends));
            }
        }
        reached.is_some_and(|reached| reached + BESIDE >= to)
    }
}
