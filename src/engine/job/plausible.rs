//! What a fact's number may be. Past that it was mistyped.

use super::fact::Fact;
use crate::engine::units::tape::accepted;
use crate::engine::units::{Length, MoistureContent};

/// Nobody closes a floor at less or more than that, whatever covers it (judgement).
const DRIEST: MoistureContent = MoistureContent::percent(4);
const WETTEST: MoistureContent = MoistureContent::percent(30);

impl Fact {
    /// What is accepted instead, if its number can't be so (judgement): `0" to 1/2" is accepted`.
    pub fn refused(&self) -> Option<String> {
        if let Self::FramingLimit(limit) | Self::SubfloorLimit(limit) = self {
            let is_refused = limit.value < DRIEST || limit.value > WETTEST;
            let [least, most] = [DRIEST, WETTEST].map(MoistureContent::to_percent);
            return is_refused.then(|| format!("{least:.0} to {most:.0} % is accepted"));
        }
        let ((_, length), (least, most)) = self.length().zip(self.lengths())?;
        (length.value < least || length.value > most).then(|| accepted(least, most))
    }

    /// What its length may be, at least and at most.
    const fn lengths(&self) -> Option<(Length, Length)> {
        const LEAST: Length = Length::sixty_fourths(1);
        Some(match self {
            Self::CrawlHeight(_) => (Length::INCH, Length::feet(20)),
            Self::SheetThickness(_) => (Length::sixty_fourths(8), Length::inches(3)),
            Self::SheetGap(_) => (Length::ZERO, Length::INCH),
            Self::EdgeGap(_) => (Length::ZERO, Length::inches(3)),
            Self::Kerf(_) => (Length::ZERO, Length::sixty_fourths(32)),
            Self::JoistThickness(_) => (Length::sixty_fourths(32), Length::inches(12)),
            Self::TapeWithin(_) | Self::LaserWithin(_) => (LEAST, Length::inches(3)),
            Self::PacesWithin(_) => (LEAST, Length::feet(6)),
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
            let (from, to) = of(least).lengths().unwrap();
            assert_eq!([from, to].map(|length| of(length).refused()), [None, None]);
            let refused = [from - least, to + least].map(|length| of(length).refused());
            assert_eq!(refused, [0, 1].map(|_| Some(accepted(from, to))));
        }
    }

    #[test]
    fn a_range_is_said_as_fine_as_its_ends() {
        let within = Fact::TapeWithin(Typed::new("", Length::ZERO));
        assert_eq!(within.refused().unwrap(), "1/64\" to 3\" is accepted");
        let height = Fact::CrawlHeight(Typed::new("", Length::ZERO));
        assert_eq!(height.refused().unwrap(), "1\" to 20' 0\" is accepted");
    }

    #[test]
    fn no_limit_is_stated_that_nobody_closes_at() {
        let at = |hundredths| Typed::new("", MoistureContent::try_hundredths(hundredths).unwrap());
        for fact in [Fact::FramingLimit, Fact::SubfloorLimit] {
            let is_refused = [399, 400, 3_000, 3_001].map(|hundredths| fact(at(hundredths)).refused().is_some());
            assert_eq!(is_refused, [true, false, false, true]);
        }
        assert_eq!(Fact::FramingLimit(at(399)).refused().unwrap(), "4 to 30 % is accepted");
        assert_eq!(Fact::InventedSample.refused(), None);
    }
}
