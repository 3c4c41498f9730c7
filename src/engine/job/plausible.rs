//! What a fact's number may be. Past that it was mistyped.

use super::fact::Fact;
use crate::engine::units::{Length, MoistureContent};
use std::ops::RangeInclusive;

/// Nobody closes a floor at less or more than that, whatever covers it (judgement).
const CLOSED_AT: RangeInclusive<MoistureContent> = MoistureContent::percent(4)..=MoistureContent::percent(30);

impl Fact {
    /// What is accepted instead, if its number can't be so (judgement): "0 to 1/2 in is accepted".
    pub fn refused(&self) -> Option<String> {
        let accepted = match self {
            Self::FramingLimit(limit) | Self::SubfloorLimit(limit) => {
                (!CLOSED_AT.contains(&limit.value)).then_some("4 to 30 %")
            }
            _ => self
                .length()
                .zip(self.lengths())
                .and_then(|((_, length), (may_be, accepted))| (!may_be.contains(&length.value)).then_some(accepted)),
        };
        accepted.map(|accepted| format!("{accepted} is accepted"))
    }

    /// What its length may be, and that in words.
    const fn lengths(&self) -> Option<(RangeInclusive<Length>, &'static str)> {
        let sixty_fourths = Length::sixty_fourths;
        Some(match self {
            Self::CrawlHeight(_) => (Length::INCH..=Length::feet(20), "1 in to 20 ft"),
            Self::SheetThickness(_) => (sixty_fourths(8)..=Length::inches(3), "1/8 to 3 in"),
            Self::SheetGap(_) => (Length::ZERO..=Length::INCH, "0 to 1 in"),
            Self::EdgeGap(_) => (Length::ZERO..=Length::inches(3), "0 to 3 in"),
            Self::Kerf(_) => (Length::ZERO..=sixty_fourths(32), "0 to 1/2 in"),
            Self::JoistThickness(_) => (sixty_fourths(32)..=Length::inches(12), "1/2 to 12 in"),
            Self::TapeWithin(_) | Self::LaserWithin(_) => (sixty_fourths(1)..=Length::inches(3), "1/64 to 3 in"),
            Self::PacesWithin(_) => (sixty_fourths(1)..=Length::feet(6), "1/64 in to 6 ft"),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::units::Typed;

    #[test]
    fn each_number_is_accepted_up_to_both_its_ends_and_no_farther() {
        let least = Length::sixty_fourths(1);
        let all: [fn(Typed<Length>) -> Fact; 9] = [
            Fact::CrawlHeight,
            Fact::SheetThickness,
            Fact::SheetGap,
            Fact::EdgeGap,
            Fact::Kerf,
            Fact::JoistThickness,
            Fact::TapeWithin,
            Fact::LaserWithin,
            Fact::PacesWithin,
        ];
        for fact in all {
            let of = |length| fact(Typed::new("", length));
            let (may_be, accepted) = of(least).lengths().unwrap();
            let (from, to) = (*may_be.start(), *may_be.end());
            assert_eq!([from, to].map(|length| of(length).refused()), [None, None]);
            let refused = [from - least, to + least].map(|length| of(length).refused());
            assert_eq!(refused, [0, 1].map(|_| Some(format!("{accepted} is accepted"))));
        }
    }

    #[test]
    fn no_limit_is_stated_that_nobody_closes_at() {
        let at = |hundredths| Typed::new("", MoistureContent::try_hundredths(hundredths).unwrap());
        for fact in [Fact::FramingLimit, Fact::SubfloorLimit] {
            let is_refused = [399, 400, 3_000, 3_001].map(|hundredths| fact(at(hundredths)).refused().is_some());
            assert_eq!(is_refused, [true, false, false, true]);
        }
        assert_eq!(Fact::InventedSample.refused(), None);
    }
}
