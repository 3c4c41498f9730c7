//! Where along a member a spot is.

use super::damage::Damage;
use super::places::Begins;
use crate::engine::units::{Length, Typed};

/// Spots no farther apart may be one (judgement: the width of a hand and more).
pub const BESIDE: Length = Length::inches(6);

/// A stretch along a joist, as far as it was said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Stretch {
    /// Where it begins.
    pub from: Option<Length>,
    /// Where it ends.
    pub to: Option<Length>,
    /// How long it is, where only that was said.
    pub long: Option<Length>,
}

impl Stretch {
    /// As it was said, less where its member begins.
    pub(super) fn of(damage: &Damage, begins: Begins) -> Self {
        let value = |typed: &Option<Typed<Length>>| typed.as_ref().map(|typed| typed.value);
        let (from, to) = (value(&damage.from), value(&damage.to));
        match from.zip(to) {
            // Measured the other way round it is the same stretch.
            Some((from, to)) => Self { from: Some(from.min(to)), to: Some(from.max(to)), long: None },
            None => Self { from, to, long: None },
        }
        .less(begins.said)
    }

    fn less(self, begins: Option<Length>) -> Self {
        match begins {
            Some(begins) => {
                let [from, to] = [self.from, self.to].map(|at| at.map(|at| at - begins));
                Self { from, to, ..self }
            }
            // How long it is can be told all the same.
            None => Self { from: None, to: None, long: self.long() },
        }
    }

    pub(super) const fn at(along: Option<Length>) -> Self {
        Self { from: along, to: along, long: None }
    }

    /// How long it is.
    pub fn long(&self) -> Option<Length> {
        self.long.or_else(|| Some(self.to? - self.from?))
    }

    /// Both ends, if both were said.
    pub fn ends(&self) -> Option<(Length, Length)> {
        self.from.zip(self.to)
    }

    /// Does it reach past a span of that length?
    pub fn is_beyond(&self, clear: Length) -> bool {
        let reaches = |at: Option<Length>| at.is_some_and(|at| at > clear);
        reaches(self.from) || reaches(self.to)
    }

    /// Could the two lie at one spot? What was not placed could.
    pub fn meets(&self, other: &Self) -> bool {
        let (Some((from, to)), Some((begins, ends))) = (self.ends(), other.ends()) else { return true };
        begins - BESIDE <= to && from <= ends + BESIDE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stretch(from: Length, to: Length) -> Stretch {
        Stretch { from: Some(from), to: Some(to), long: None }
    }

    #[test]
    fn spots_no_farther_apart_than_a_hand_is_wide_may_be_one_and_so_may_what_was_not_placed() {
        let here = stretch(Length::inches(10), Length::inches(20));
        for (by, meets) in [(-1, true), (0, true), (1, false)] {
            let gap = BESIDE + Length::sixty_fourths(by);
            let after = stretch(Length::inches(20) + gap, Length::inches(40));
            let before = stretch(Length::inches(1), Length::inches(10) - gap);
            for other in [after, before] {
                assert_eq!((here.meets(&other), other.meets(&here)), (meets, meets), "{by}");
            }
        }
        assert!(here.meets(&here) && here.meets(&Stretch::default()) && Stretch::default().meets(&here));
    }
}
