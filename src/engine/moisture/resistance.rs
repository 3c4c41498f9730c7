//! The resistance table: what a pair of pins senses in each wood, and with it the
//! way from one wood's scale to another's.

use super::Species;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{Limits, MoistureContent};

/// Resistances between pins, in ohms: from a dead short to more than any meter's.
const RESISTANCE: Limits =
    Limits { what: "resistance", least: 1, most: 1_000_000_000_000_000, words: "1 ohm to 1 000 000 000 megohms" };

/// The electrical resistance between a pair of pins, in whole ohms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Resistance(i64);

impl Resistance {
    /// The nearest ohm to a resistance in megohms, held in the range.
    pub fn from_megohms_f64(megohms: f64) -> Self {
        Self(RESISTANCE.nearest(megohms * 1e6))
    }

    /// Megohms, for formulas.
    pub fn to_megohms(self) -> f64 {
        self.0 as f64 / 1e6
    }
}

/// Megohms at 7, 8, ... 25 % moisture content: needle pins 1.25 in apart, driven
/// 5/16 in, along the grain, wood at 80 °F.
type Row = [f64; 19];

/// The moisture content of a row's first cell, in percent.
const DRIEST: f64 = 7.0;

/// That of its last.
pub(super) const TABLE_ENDS: MoistureContent = MoistureContent::percent(25);

/// Source: [`Source::ResistanceDouglasFir`](crate::engine::sources::Source::ResistanceDouglasFir).
const DOUGLAS_FIR: Row = [
    22400.0, 4780.0, 1660.0, 630.0, 265.0, 120.0, 60.0, 33.0, 18.6, 11.2, 7.1, 4.6, 3.09, 2.14, 1.51, 1.1, 0.79, 0.6,
    0.46,
];

// The rows below come from Source::ResistanceSpecies: recalled, cells not seen in print.
const WESTERN_HEMLOCK: Row = [
    22900.0, 5620.0, 2040.0, 850.0, 400.0, 185.0, 98.0, 51.0, 28.2, 16.2, 10.0, 6.0, 3.89, 2.52, 1.58, 1.05, 0.72,
    0.51, 0.37,
];
const WHITE_FIR: Row = [
    57600.0, 15850.0, 3980.0, 1120.0, 415.0, 180.0, 83.0, 46.0, 26.9, 16.6, 11.0, 6.6, 4.47, 3.02, 2.14, 1.55, 1.12,
    0.86, 0.62,
];
const LONGLEAF_PINE: Row = [
    25000.0, 8700.0, 3160.0, 1320.0, 575.0, 270.0, 135.0, 74.0, 41.7, 24.0, 14.4, 8.9, 5.76, 3.72, 2.46, 1.66, 1.15,
    0.79, 0.6,
];
const SHORTLEAF_PINE: Row = [
    43600.0, 11750.0, 3720.0, 1350.0, 560.0, 255.0, 130.0, 69.0, 38.9, 22.4, 13.8, 8.7, 5.76, 3.8, 2.63, 1.82, 1.29,
    0.93, 0.66,
];
const PONDEROSA_PINE: Row = [
    39800.0, 8910.0, 3310.0, 1410.0, 645.0, 300.0, 150.0, 81.0, 44.7, 25.1, 14.8, 9.1, 5.62, 3.55, 2.34, 1.62, 1.15,
    0.87, 0.69,
];
const SITKA_SPRUCE: Row = [
    22400.0, 5890.0, 2140.0, 830.0, 365.0, 165.0, 83.0, 44.0, 25.1, 15.5, 9.8, 6.3, 4.27, 3.02, 2.14, 1.58, 1.17, 0.91,
    0.71,
];
const WESTERN_LARCH: Row = [
    39800.0, 11200.0, 3980.0, 1445.0, 560.0, 250.0, 120.0, 63.0, 33.9, 19.9, 12.3, 7.6, 5.02, 3.39, 2.29, 1.62, 1.2,
    0.87, 0.66,
];
const CALIFORNIA_RED_FIR: Row = [
    31600.0, 6760.0, 2000.0, 725.0, 315.0, 150.0, 83.0, 48.0, 28.8, 18.2, 11.8, 7.6, 5.01, 3.31, 2.29, 1.58, 1.15,
    0.83, 0.63,
];
const REDWOOD: Row = [
    22400.0, 4680.0, 1550.0, 615.0, 250.0, 100.0, 45.0, 22.0, 12.6, 7.2, 4.7, 3.2, 2.29, 1.74, 1.32, 1.05, 0.85, 0.71,
    0.6,
];

/// A wood that may stand behind a name, and its row if that is at hand.
struct Member {
    name: &'static str,
    row: Option<Row>,
}

const fn of(name: &'static str, row: Row) -> Member {
    Member { name, row: Some(row) }
}

const fn unfound(name: &'static str) -> Member {
    Member { name, row: None }
}

/// The woods that stand behind `species`: itself, or every member of its group.
/// Source of the groups: [`Source::SpeciesGroups`](crate::engine::sources::Source::SpeciesGroups).
const fn members(species: Species) -> &'static [Member] {
    match species {
        Species::DouglasFir => const { &[of("Douglas-fir", DOUGLAS_FIR)] },
        Species::WesternLarch => const { &[of("western larch", WESTERN_LARCH)] },
        Species::CaliforniaRedFir => const { &[of("California red fir", CALIFORNIA_RED_FIR)] },
        Species::WesternHemlock => const { &[of("western hemlock", WESTERN_HEMLOCK)] },
        Species::WhiteFir => const { &[of("white fir", WHITE_FIR)] },
        Species::LongleafPine => const { &[of("longleaf pine", LONGLEAF_PINE)] },
        Species::ShortleafPine => const { &[of("shortleaf pine", SHORTLEAF_PINE)] },
        Species::PonderosaPine => const { &[of("ponderosa pine", PONDEROSA_PINE)] },
        Species::SitkaSpruce => const { &[of("Sitka spruce", SITKA_SPRUCE)] },
        Species::Redwood => const { &[of("redwood", REDWOOD)] },
        Species::WesternRedcedar => const { &[unfound("western redcedar")] },
        Species::DouglasFirLarch => const { &[of("Douglas-fir", DOUGLAS_FIR), of("western larch", WESTERN_LARCH)] },
        Species::SouthernPine => {
            const {
                &[
                    of("longleaf pine", LONGLEAF_PINE),
                    of("shortleaf pine", SHORTLEAF_PINE),
                    unfound("loblolly pine"),
                    unfound("slash pine"),
                ]
            }
        }
        Species::HemFir => {
            const {
                &[
                    of("western hemlock", WESTERN_HEMLOCK),
                    of("white fir", WHITE_FIR),
                    of("California red fir", CALIFORNIA_RED_FIR),
                    unfound("grand fir"),
                    unfound("noble fir"),
                    unfound("Pacific silver fir"),
                ]
            }
        }
        Species::SprucePineFir => {
            const {
                &[
                    of("Sitka spruce", SITKA_SPRUCE),
                    unfound("black spruce"),
                    unfound("white spruce"),
                    unfound("red spruce"),
                    unfound("Engelmann spruce"),
                    unfound("Norway spruce"),
                    unfound("jack pine"),
                    unfound("red pine"),
                    unfound("lodgepole pine"),
                    unfound("balsam fir"),
                    unfound("alpine fir"),
                ]
            }
        }
        Species::Unknown => &[],
    }
}

/// The rows that stand for `species`: its own, those of the group's woods that have one,
/// or none.
fn rows(species: Species) -> impl Iterator<Item = &'static Row> + Clone {
    members(species).iter().filter_map(|member| member.row.as_ref())
}

/// The woods of a group whose rows are not at hand, by name; of a single wood itself.
pub fn without_row(species: Species) -> impl Iterator<Item = &'static str> {
    members(species).iter().filter(|member| member.row.is_none()).map(|member| member.name)
}

/// Is there a row for `species`, or for the woods of its group?
pub fn has_row(species: Species) -> bool {
    rows(species).next().is_some()
}

/// The moisture content at which `species` has `resistance`, at 80 °F; of a group, the
/// wettest that any of its woods has there. Log-linear between whole percents; none
/// outside 7-25 % or without a row.
/// Source: [`Source::ResistanceDouglasFir`](crate::engine::sources::Source::ResistanceDouglasFir),
/// [`Source::ResistanceSpecies`](crate::engine::sources::Source::ResistanceSpecies).
pub fn moisture_at(species: Species, resistance: Resistance) -> Option<MoistureContent> {
    wettest(rows(species).map(|row| row_moisture(row, log_conductance(resistance.to_megohms()))))
}

/// The moisture content at which Douglas-fir has `resistance`, at 80 °F, by a line that a
/// third party fitted to the printed row: smoother than its cells, and up to 1 % off them.
/// Source: [`Source::ResistanceFit`].
pub fn douglas_fir_by_fit(resistance: Resistance) -> Known<MoistureContent> {
    let kilohms = resistance.to_megohms() * 1000.0;
    let value = MoistureContent::from_percent_f64(libm::pow(10.0, 1.7003 - 0.120_07 * libm::log10(kilohms)));
    let why = Why::rule("A line through the logarithms of resistance and moisture.", &[Source::ResistanceFit]);
    Known { value, assumed: Vec::new(), doubts: Vec::new(), why }
}

/// What a reading on `scale`'s scale would be on `wood`'s: each wood has the resistance
/// that was sensed at a moisture content of its own. Where a group stands for several
/// woods, the wettest answer, and none unless every one of them has one. A scale made
/// for this very wood changes nothing.
///
/// The table is for 80 °F throughout, so the step needs no temperature of its own.
/// Source: as [`moisture_at`].
pub fn from_scale(shown: MoistureContent, scale: Species, wood: Species) -> Option<MoistureContent> {
    if scale == wood {
        return Some(shown);
    }
    let sensed = rows(scale).map(|row| row_log_conductance(row, shown.to_percent()));
    wettest(sensed.flat_map(|sensed| rows(wood).map(move |row| row_moisture(row, sensed?))))
}

/// The greatest, if there is one and none is missing.
fn wettest(candidates: impl IntoIterator<Item = Option<f64>>) -> Option<MoistureContent> {
    let all: Option<Vec<f64>> = candidates.into_iter().collect();
    all?.into_iter().reduce(f64::max).map(MoistureContent::from_percent_f64)
}

/// Rises with moisture, as resistance falls.
fn log_conductance(megohms: f64) -> f64 {
    -libm::log(megohms)
}

fn knots(row: &Row) -> impl Iterator<Item = (f64, f64)> {
    std::iter::successors(Some(DRIEST), |percent| Some(percent + 1.0)).zip(row.map(log_conductance))
}

fn row_log_conductance(row: &Row, percent: f64) -> Option<f64> {
    within(knots(row), percent)
}

fn row_moisture(row: &Row, log_conductance: f64) -> Option<f64> {
    within(knots(row).map(|(percent, logged)| (logged, percent)), log_conductance)
}

/// The value at `at` on the line through `knots` of rising `x`; none beyond its ends.
fn within(knots: impl Iterator<Item = (f64, f64)>, at: f64) -> Option<f64> {
    let mut before: Option<(f64, f64)> = None;
    for (x, y) in knots {
        if at <= x {
            let Some((x0, y0)) = before else { return (at == x).then_some(y) };
            let part = (at - x0) / (x - x0);
            // Exact at both knots, so that the last cell of one row finds that of another.
            return Some(y0 * (1.0 - part) + y * part);
        }
        before = Some((x, y));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn percent(hundredths: i64) -> MoistureContent {
        MoistureContent::try_hundredths(hundredths).unwrap()
    }

    fn with_rows() -> Vec<Species> {
        Species::ALL.into_iter().filter(|species| has_row(*species)).collect()
    }

    fn single() -> impl Strategy<Value = Species> {
        proptest::sample::select(with_rows().into_iter().filter(|species| !species.is_group()).collect::<Vec<_>>())
    }

    fn any() -> impl Strategy<Value = Species> {
        proptest::sample::select(Species::ALL.to_vec())
    }

    #[test]
    fn wetter_wood_conducts_better_in_every_row() {
        for species in with_rows() {
            assert!(rows(species).all(|row| row.is_sorted_by(|drier, wetter| drier > wetter)), "{species:?}");
        }
    }

    #[test]
    fn the_recalled_douglas_fir_row_lies_within_a_percent_of_the_quoted_fit() {
        // P-secondary: log10(MC) = 1.7003 - 0.12007 log10(kilohms), which a third party
        // fitted to the printed row.
        for (mc, megohms) in (7..).map(f64::from).zip(DOUGLAS_FIR) {
            let fit = libm::pow(10.0, 1.7003 - 0.12007 * libm::log10(megohms * 1000.0));
            assert!((fit - mc).abs() <= 1.0, "{mc} % against {fit}");
        }
    }

    #[test]
    fn a_groups_answer_is_its_wettest_and_needs_all_its_woods() {
        let hem_fir = |hundredths| from_scale(percent(hundredths), Species::DouglasFir, Species::HemFir);
        // At 8 % white fir is the wetter of the two, at 12 % western hemlock.
        let alone = |hundredths, wood| from_scale(percent(hundredths), Species::DouglasFir, wood);
        assert_eq!(hem_fir(800), alone(800, Species::WhiteFir));
        assert_eq!(hem_fir(1_200), alone(1_200, Species::WesternHemlock));
        assert!(alone(2_400, Species::WesternHemlock).is_some());
        assert_eq!(hem_fir(2_400), None, "white fir has no cell for it");
    }

    #[test]
    fn woods_without_a_row_have_no_answer() {
        for wood in [Species::WesternRedcedar, Species::Unknown] {
            assert_eq!(from_scale(percent(1_500), Species::DouglasFir, wood), None);
            assert_eq!(moisture_at(wood, Resistance::from_megohms_f64(11.2)), None);
        }
    }

    #[test]
    fn a_scale_made_for_the_wood_changes_nothing_even_beyond_the_table() {
        for species in Species::ALL {
            assert_eq!(from_scale(percent(3_100), species, species), Some(percent(3_100)), "{species:?}");
            assert_eq!(from_scale(percent(1_234), species, species), Some(percent(1_234)), "{species:?}");
        }
    }

    proptest! {
        // Strictly inside the scale's row: rounding may push its ends just past themselves.
        #[test]
        fn there_and_back_is_the_reading(scale in single(), wood in single(), shown in 701_i64..2_500) {
            if let Some(there) = from_scale(percent(shown), scale, wood) {
                let back = from_scale(there, wood, scale).unwrap();
                prop_assert!((back.to_percent() - percent(shown).to_percent()).abs() < 1e-5, "{there:?} {back:?}");
            }
        }

        #[test]
        fn a_wetter_reading_is_wetter_wood(scale in any(), wood in any(), shown in 700_i64..=2_400, more in 0_i64..=100) {
            let (drier, wetter) = (from_scale(percent(shown), scale, wood), from_scale(percent(shown + more), scale, wood));
            if let (Some(drier), Some(wetter)) = (drier, wetter) {
                prop_assert!(drier <= wetter);
            }
        }

        #[test]
        fn an_answer_stays_inside_the_table(scale in any(), wood in any(), shown in 0_i64..=30_000) {
            if let Some(answer) = from_scale(percent(shown), scale, wood) && scale != wood {
                prop_assert!((percent(700)..=percent(2_500)).contains(&answer));
                prop_assert!((700..=2_500).contains(&shown));
            }
        }
    }
}
