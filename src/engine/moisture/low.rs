//! How far a corrected reading may lie below the truth because the wood is not known well
//! enough.

use super::resistance::without_row;
use super::{Species, Step};
use crate::engine::sources::Source;
use crate::engine::units::MoistureContent;

/// How far a stamp's wood may lie above those of its woods that have a row: by a rule of
/// thumb ([`Source::KilnManual`]).
const STAMP: MoistureContent = MoistureContent::percent(2);

/// The same for spruce-pine-fir, of which only Sitka spruce has a row: black spruce and jack
/// pine are remembered 2 above that, and a memory may be off by 1 ([`Source::UnfoundWoods`]).
const SPRUCE_PINE_FIR: MoistureContent = MoistureContent::percent(3);

/// The same where the species was not corrected for at all: it may be spruce-pine-fir.
const NOT_SAID: MoistureContent = MoistureContent::percent(3);

/// A corrected reading may be this much too low.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MayReadLow {
    /// By how many points of moisture content.
    pub points: MoistureContent,
    /// The stamp of which some woods have no row; none where the species was not corrected
    /// for.
    pub stamp: Option<Species>,
}

impl MayReadLow {
    /// What there is to say once the species step is done, from the meter's scale to the wood.
    pub(super) fn after(step: Step, scale: Option<Species>, wood: Option<Species>) -> Option<Self> {
        let (Step::Applied, Some(scale), Some(wood)) = (step, scale, wood) else {
            return (step == Step::Left).then_some(Self { points: NOT_SAID, stamp: None });
        };
        // A scale made for the stamp was made for its woods.
        let stamps = [scale, wood].into_iter().filter(|_| scale != wood);
        let unfound = stamps.filter(|species| without_row(*species).next().is_some());
        unfound.map(Self::of_stamp).max_by_key(|low| low.points)
    }

    const fn of_stamp(stamp: Species) -> Self {
        let points = if matches!(stamp, Species::SprucePineFir) { SPRUCE_PINE_FIR } else { STAMP };
        Self { points, stamp: Some(stamp) }
    }

    /// The woods whose rows were not found, by name.
    pub fn woods(self) -> impl Iterator<Item = &'static str> {
        self.stamp.into_iter().flat_map(without_row)
    }

    /// The doubt in words, its source with it.
    pub fn words(self) -> String {
        let points = self.points.to_percent();
        let Some(stamp) = self.stamp else {
            return Source::UnfoundWoods
                .noted(&format!("Not corrected for species: may read up to {points} points low"));
        };
        let source = if stamp == Species::SprucePineFir { Source::UnfoundWoods } else { Source::KilnManual };
        let woods: Vec<_> = self.woods().collect();
        let text = format!(
            "The {} stamp also covers {}, for which there are no figures: may read up to {points} points low",
            stamp.label(),
            woods.join(", ")
        );
        source.noted(&text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::moisture::resistance::{from_scale, has_row};

    fn after(wood: Species) -> Option<MayReadLow> {
        MayReadLow::after(Step::Applied, Some(Species::DouglasFir), Some(wood))
    }

    #[test]
    fn a_stamp_names_the_woods_that_have_no_row() {
        let named = |stamp| after(stamp).map(|low| (low.points, low.woods().count()));
        let points = |points| MoistureContent::percent(points);
        assert_eq!(named(Species::SprucePineFir), Some((points(3), 10)));
        assert_eq!(named(Species::HemFir), Some((points(2), 3)));
        assert_eq!(named(Species::SouthernPine), Some((points(2), 2)));
        assert_eq!(named(Species::DouglasFirLarch), None, "both of its woods have a row");
        assert_eq!(named(Species::SitkaSpruce), None, "one wood is no stamp");
        let words = after(Species::SprucePineFir).unwrap().words();
        assert!(words.contains("black spruce") && words.contains("jack pine") && words.contains("3 points low"));
        assert!(words.ends_with("from memory)"), "{words}");
    }

    #[test]
    fn a_scale_of_the_stamp_itself_reads_it_right_and_a_meter_that_corrects_it_too() {
        let spf = Some(Species::SprucePineFir);
        assert_eq!(MayReadLow::after(Step::Applied, spf, spf), None);
        assert_eq!(MayReadLow::after(Step::ByMeter, None, spf), None);
        let of_scale = MayReadLow::after(Step::Applied, spf, Some(Species::HemFir)).unwrap();
        assert_eq!(of_scale.stamp, spf, "the worse of the two");
    }

    #[test]
    fn wood_that_nobody_named_may_be_as_wet_as_any_that_has_a_row() {
        let low = MayReadLow::after(Step::Left, None, None).unwrap();
        for hundredths in (800..=2_200).step_by(50) {
            let shown = MoistureContent::try_hundredths(hundredths).unwrap();
            let worst = shown.to_percent() + low.points.to_percent();
            for wood in Species::ALL.into_iter().filter(|wood| has_row(*wood)) {
                let Some(known) = from_scale(shown, Species::DouglasFir, wood) else { continue };
                assert!(known.to_percent() <= worst, "{wood:?} at {shown:?}: {known:?}");
            }
        }
    }

    #[test]
    fn black_spruce_as_remembered_lies_within_what_spruce_pine_fir_may_read_low() {
        // From memory: 17.5 on the Douglas-fir scale is 20.3 in black spruce, 20.0 in jack pine.
        let shown = MoistureContent::try_hundredths(1_750).unwrap();
        let as_sitka = from_scale(shown, Species::DouglasFir, Species::SprucePineFir).unwrap();
        assert!((as_sitka.to_percent() - 18.3).abs() < 0.051);
        assert!(as_sitka.to_percent() + after(Species::SprucePineFir).unwrap().points.to_percent() >= 20.3);
    }
}
