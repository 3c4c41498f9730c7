//! How far a corrected reading may lie below the truth because the wood, or how warm it was, is
//! not known well enough.

use super::resistance::without_row;
use super::{Answer, Meter, Species, Step, WoodTemperature, chart};
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, Temperature, TemperatureDifference};

/// How far a stamp's wood may lie above those of its woods that have a row: by a rule of
/// thumb ([`Source::KilnManual`]).
const STAMP: MoistureContent = MoistureContent::percent(2);

/// The same for spruce-pine-fir, of which only Sitka spruce has a row: black spruce and jack
/// pine are remembered 2 above that, and a memory may be off by 1 ([`Source::UnfoundWoods`]).
const SPRUCE_PINE_FIR: MoistureContent = MoistureContent::percent(3);

/// The same where the species was not corrected for at all: what any wood reads low on any scale,
/// with what its stamp may lie above its row.
const NOT_SAID: MoistureContent = MoistureContent::percent(5);

/// A corrected reading may be this much too low.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MayReadLow {
    /// By how many points of moisture content, in all.
    pub points: MoistureContent,
    /// Of those, because the wood may be colder than was corrected for.
    pub cold: MoistureContent,
    /// The stamp of which some woods have no row; none where the species was not corrected
    /// for, or the species is known.
    pub stamp: Option<Species>,
}

/// No points.
const NONE: MoistureContent = MoistureContent::percent(0);

/// How cold wood is taken to be of which nobody read how warm it was: as cold as the chart goes,
/// as the wood of a crawl space is in winter (judgement).
const NOT_READ: Temperature = chart::COLDEST;

/// So much colder a member may be than another one of its kind, of which that was read: 10 °F
/// (judgement).
fn colder_elsewhere() -> TemperatureDifference {
    Temperature::fahrenheit(0) - Temperature::fahrenheit(10)
}

/// As cold as the wood may be, by what is known of that.
fn coldest(temperature: &WoodTemperature) -> Temperature {
    match temperature {
        WoodTemperature::Measured(wood) => *wood,
        WoodTemperature::Assumed { temperature, .. } => {
            // Read elsewhere it is known no worse than not at all.
            (*temperature + colder_elsewhere()).max(NOT_READ).min(*temperature)
        }
        WoodTemperature::NotRead => NOT_READ,
    }
}

/// The wettest that wood may be that shows `shown`, as far as its temperature goes. A meter
/// of which nobody said that it corrects for that is taken not to.
/// Source: [`Source::TemperatureChart`].
pub(super) fn at_coldest(
    shown: MoistureContent,
    meter: Option<&Meter>,
    temperature: &WoodTemperature,
) -> MoistureContent {
    if meter.is_some_and(|meter| meter.corrects_temperature == Answer::Yes) {
        return shown;
    }
    let wood = coldest(temperature);
    let reference = meter.and_then(|meter| meter.reference.as_ref()).map_or(chart::SET_FOR, |typed| typed.value);
    chart::at_worst(shown, wood, reference)
}

/// Is the wood, or the meter's own temperature, where the chart has no figures, so that what it
/// gives is no correction?
pub(super) fn is_beyond_chart(meter: Option<&Meter>, temperature: &WoodTemperature) -> bool {
    if meter.is_some_and(|meter| meter.corrects_temperature == Answer::Yes) {
        return false;
    }
    let reference = meter.and_then(|meter| meter.reference.as_ref()).map(|typed| typed.value);
    temperature.known().is_some_and(|wood| wood < chart::COLDEST)
        || reference.is_some_and(|at| !(chart::COLDEST..=chart::WARMEST).contains(&at))
}

impl MayReadLow {
    /// What there is to say once the species step is done, from the meter's scale to the wood.
    pub(super) fn after(step: Step, scale: Option<Species>, wood: Option<Species>) -> Option<Self> {
        let (Step::Applied, Some(scale), Some(wood)) = (step, scale, wood) else {
            return (step == Step::Left).then_some(Self { points: NOT_SAID, cold: NONE, stamp: None });
        };
        // A scale made for the stamp was made for its woods.
        let stamps = [scale, wood].into_iter().filter(|_| scale != wood);
        let unfound = stamps.filter(|species| without_row(*species).next().is_some());
        unfound.map(Self::of_stamp).max_by_key(|low| low.points)
    }

    /// Where no step was made for the species: none is missing from a meter that makes it, or in
    /// the wood of its scale.
    pub(super) fn unmade(meter: Option<&Meter>, wood: Option<Species>) -> Option<Self> {
        let wood = wood.and_then(Species::recognised);
        let is_right = |meter: &Meter| {
            meter.corrects_species == Answer::Yes
                || (meter.corrects_species == Answer::No && wood.is_some() && meter.scale == wood)
        };
        if meter.is_some_and(is_right) { None } else { Self::after(Step::Left, None, None) }
    }

    const fn of_stamp(stamp: Species) -> Self {
        let points = if matches!(stamp, Species::SprucePineFir) { SPRUCE_PINE_FIR } else { STAMP };
        Self { points, cold: NONE, stamp: Some(stamp) }
    }

    /// With so many points more for cold wood.
    pub(super) fn with_cold(low: Option<Self>, cold: MoistureContent) -> Option<Self> {
        if cold == NONE {
            return low;
        }
        let wood = low.map_or(NONE, |low| low.points);
        let points = MoistureContent::from_percent_f64(wood.to_percent() + cold.to_percent());
        Some(Self { points, cold, stamp: low.and_then(|low| low.stamp) })
    }

    /// Does it for want of the wood's species, or of a row for it?
    pub fn is_by_wood(self) -> bool {
        self.points > self.cold
    }

    /// Does it for want of how warm the wood was?
    pub fn is_by_cold(self) -> bool {
        self.cold > NONE
    }

    /// What would settle it: "say its species and the meter's scale".
    pub fn asks(self) -> &'static str {
        match (self.is_by_wood(), self.is_by_cold()) {
            (true, true) => {
                "say its species, the meter's scale and whether it corrects for temperature; if not, read how warm the wood is, \
                 then the wood again"
            }
            (false, true) => {
                "say whether the meter corrects for temperature; if not, read how warm the wood is, then the wood again"
            }
            (_, false) => "say its species and the meter's scale",
        }
    }

    /// The woods whose rows were not found, by name.
    pub fn woods(self) -> impl Iterator<Item = &'static str> {
        self.stamp.into_iter().flat_map(without_row)
    }

    /// The doubts in words, each with its source.
    pub fn words(self) -> impl Iterator<Item = String> {
        let cold = self.is_by_cold().then(|| {
            let points = self.cold.to_percent();
            Source::TemperatureChart
                .noted(&format!("Cold wood reads low: by judgement this may by up to {points:.1} points"))
        });
        self.is_by_wood().then(|| self.words_of_wood()).into_iter().chain(cold)
    }

    fn words_of_wood(self) -> String {
        let points = self.points.to_percent() - self.cold.to_percent();
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
        let words = after(Species::SprucePineFir).unwrap().words().next().unwrap();
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

    /// To say less is never to read drier.
    #[test]
    fn what_nobody_said_is_no_drier_than_anything_that_it_may_be() {
        let rows = || Species::ALL.into_iter().filter(|wood| has_row(*wood));
        let points = |low: Option<MayReadLow>| low.map_or(0.0, |low| low.points.to_percent());
        let mut most: f64 = 0.0;
        for hundredths in (700..=2_800).step_by(25) {
            let shown = MoistureContent::try_hundredths(hundredths).unwrap();
            for (scale, wood) in rows().flat_map(|scale| rows().map(move |wood| (scale, wood))) {
                let Some(known) = from_scale(shown, scale, wood) else { continue };
                let said =
                    known.max(shown).to_percent() + points(MayReadLow::after(Step::Applied, Some(scale), Some(wood)));
                most = most.max(said - shown.to_percent());
            }
        }
        let unsaid = points(MayReadLow::after(Step::Left, None, None));
        assert!(most <= unsaid && unsaid < most + 0.25, "{most}");
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
