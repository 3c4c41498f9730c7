//! What is known between readings: drawn as it may be, or weighed by distance.

use super::Spot;
use super::draws::{Draws, OfPlace, Told, chance_over};
use super::variogram::{METER_NOISE, Sample, distance};
use crate::engine::geometry::{Outline, Point};
use crate::engine::moisture::Stands;
use crate::engine::units::MoistureContent;

/// Fewer readings than this say nothing of how they go together (common practice, no
/// source).
pub const FEWEST_DRAWN: usize = 6;

/// How fast a reading loses what it says when only distance counts: so many percent
/// points squared a foot (judgement).
const LOST_A_FOOT: f64 = 4.0;

/// How far below the start of its scale a meter's wood may be, percent points, and the standard
/// deviation of that (judgement): such a reading is no number either.
const BELOW_SCALE: f64 = 1.5;
const BELOW_SCALE_SPREAD: f64 = 1.0;

/// How far beyond the end of its scale a meter's wood may be, percent points, and the
/// standard deviation of that (judgement): such a reading is no number, and the wood is
/// hardly ever drier than the scale's end.
const PAST_SCALE: f64 = 4.0;
const PAST_SCALE_SPREAD: f64 = 2.0;

/// What readings are taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Taken {
    /// For what they are.
    AsRead,
    /// For as wet as the wood may be that they were taken on.
    AtWorst,
}

/// Readings drawn out between their places.
pub(super) enum Field {
    /// Every way that they may.
    Drawn(Box<Draws>),
    /// By the square of their distance.
    ByDistance(Vec<Sample>),
}

pub(super) fn feet(point: Point) -> [f64; 2] {
    [point.x.to_feet(), point.y.to_feet()]
}

impl Field {
    pub fn of(spots: &[Spot], taken: Taken, outline: &Outline) -> Self {
        let samples: Vec<_> = spots.iter().map(|spot| sample(spot, taken)).collect();
        let drawn = (samples.len() >= FEWEST_DRAWN).then(|| Draws::of(&samples, outline)).flatten();
        drawn.map_or(Self::ByDistance(samples), |draws| Self::Drawn(Box::new(draws)))
    }

    pub fn told(&self, places: &[[f64; 2]], limit: MoistureContent) -> Told {
        match self {
            Self::Drawn(draws) => draws.told(places, limit),
            Self::ByDistance(samples) => {
                let places = places.iter().map(|place| by_distance(samples, *place, limit.to_percent()));
                Told { places: places.collect(), wet: Vec::new() }
            }
        }
    }

    pub fn drawn(&self) -> Option<&Draws> {
        match self {
            Self::Drawn(draws) => Some(draws),
            Self::ByDistance(_) => None,
        }
    }
}

fn sample(spot: &Spot, taken: Taken) -> Sample {
    let at = feet(spot.at);
    let (value, spread) = match (spot.corrected.corrected, taken) {
        (Stands::Over(most), _) => (most.to_percent() + PAST_SCALE, PAST_SCALE_SPREAD),
        (Stands::Under(least), Taken::AsRead) => (least.to_percent() - BELOW_SCALE, BELOW_SCALE_SPREAD),
        (Stands::At(moisture), Taken::AsRead) => (moisture.to_percent(), 0.0),
        (Stands::Under(_) | Stands::At(_), Taken::AtWorst) => (spot.corrected.at_worst().to_percent(), 0.0),
    };
    Sample { at, value, unsure: spread * spread }
}

/// What is off a meter's scale is no number, and goes into no mean: it counts for the chance, and
/// where it lies nearest. Of two as near the wetter one does.
fn by_distance(samples: &[Sample], at: [f64; 2], limit: f64) -> OfPlace {
    let nearer = |one: &Sample, other: &Sample| {
        away(one, at).total_cmp(&away(other, at)).then(other.value.total_cmp(&one.value))
    };
    let nearest = samples.iter().min_by(|one, other| nearer(one, other));
    let off_the_scale = nearest.filter(|sample| !sample.is_number()).map(|sample| sample.value);
    let of_numbers = weighed(samples.iter().filter(|sample| sample.is_number()), at);
    let of_all = weighed(samples, at).unwrap_or_default();
    let variance = METER_NOISE + LOST_A_FOOT * nearest.map_or(f64::INFINITY, |sample| away(sample, at));
    OfPlace {
        mean: off_the_scale.or(of_numbers).unwrap_or(of_all),
        chance: chance_over((of_all - limit) / libm::sqrt(variance)),
        support: METER_NOISE / variance,
    }
}

/// How many feet off; never none, since it divides.
fn away(sample: &Sample, at: [f64; 2]) -> f64 {
    distance(sample.at, at).max(0.01)
}

/// The mean, each weighed by the square of its distance; none without samples.
fn weighed<'a>(samples: impl IntoIterator<Item = &'a Sample>, at: [f64; 2]) -> Option<f64> {
    let (mut weights, mut sum) = (0.0, 0.0);
    for sample in samples {
        let weight = 1.0 / (away(sample, at) * away(sample, at));
        weights += weight;
        sum += weight * sample.value;
    }
    (weights > 0.0).then(|| sum / weights)
}

#[cfg(test)]
mod tests {
    use super::*;

    const NUMBER: Sample = Sample { at: [0.0, 0.0], value: 12.0, unsure: 0.0 };
    const PAST: Sample = Sample { at: [10.0, 0.0], value: 24.0, unsure: 4.0 };

    fn mean(samples: &[Sample], along: f64) -> f64 {
        by_distance(samples, [along, 0.0], 19.0).mean
    }

    #[test]
    fn what_is_off_the_scale_goes_into_no_mean_and_counts_where_nothing_is_nearer() {
        let both = [NUMBER, PAST];
        assert_eq!([1.0, 4.9].map(|along| mean(&both, along)), [12.0; 2]);
        assert_eq!([5.1, 9.0].map(|along| mean(&both, along)), [24.0; 2]);
        let numbers = [NUMBER, Sample { value: 18.0, unsure: 0.0, ..PAST }];
        assert!((mean(&numbers, 5.0) - 15.0).abs() < 1e-9, "numbers are weighed");
        assert!((mean(&[PAST], 3.0) - 24.0).abs() < 1e-9);
    }

    #[test]
    fn of_readings_at_one_spot_the_wettest_tells() {
        let under = Sample { at: [0.0, 0.0], value: 5.5, unsure: 1.0 };
        let wet = Sample { value: 25.0, ..NUMBER };
        for both in [[under, wet], [wet, under]] {
            assert!((mean(&both, 1.0) - 25.0).abs() < 1e-9);
        }
        let over = Sample { at: [0.0, 0.0], ..PAST };
        for both in [[over, NUMBER], [NUMBER, over]] {
            assert!((mean(&both, 1.0) - 24.0).abs() < 1e-9);
        }
        let far = Sample { at: [20.0, 0.0], value: 30.0, unsure: 0.0 };
        assert!((mean(&[under, far], 1.0) - 5.5).abs() < 1e-9, "what is far off wets nothing that reads dry");
    }

    #[test]
    fn what_is_past_the_scale_makes_it_likelier_that_it_is_wet() {
        let chance = |samples: &[Sample]| by_distance(samples, [4.0, 0.0], 19.0).chance;
        assert!(chance(&[NUMBER, PAST]) > chance(&[NUMBER]));
    }
}
