//! What is known between readings: kriged, or weighed by distance.

use super::Spot;
use super::kriging::{Asked, Kriging};
use super::variogram::{METER_NOISE, Sample, Variogram, distance};
use crate::engine::geometry::Point;

/// Fewer readings than this say nothing of how they go together (common practice, no
/// source).
pub const FEWEST_KRIGED: usize = 6;

/// How fast a reading loses what it says when only distance counts: so many percent
/// points squared a foot (judgement).
const LOST_A_FOOT: f64 = 4.0;

/// Readings drawn out between their places.
pub(super) enum Field {
    /// With how they go together.
    Kriged(Kriging),
    /// By the square of their distance.
    ByDistance(Vec<Sample>),
}

/// What is known of a place, in percent and its square.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Guess {
    /// The best guess.
    pub value: f64,
    /// How far off, as a variance.
    pub variance: f64,
    /// How much of what readings could tell of it they do tell, from 0 to 1.
    pub support: f64,
}

pub(super) fn feet(point: Point) -> [f64; 2] {
    [point.x.to_feet(), point.y.to_feet()]
}

impl Field {
    pub fn of(spots: &[Spot]) -> Self {
        let samples: Vec<_> =
            spots.iter().map(|spot| Sample { at: feet(spot.at), value: spot.moisture.to_percent() }).collect();
        if samples.len() < FEWEST_KRIGED {
            return Self::ByDistance(samples);
        }
        let variogram = Variogram::fitted(&samples);
        match Kriging::new(samples.clone(), variogram) {
            Some(kriging) => Self::Kriged(kriging),
            None => Self::ByDistance(samples),
        }
    }

    pub const fn is_kriged(&self) -> bool {
        matches!(self, Self::Kriged(_))
    }

    pub const fn variogram(&self) -> Option<Variogram> {
        match self {
            Self::Kriged(kriging) => Some(kriging.variogram),
            Self::ByDistance(_) => None,
        }
    }

    pub fn guess(&self, at: [f64; 2]) -> Guess {
        match self {
            Self::Kriged(kriging) => of_asked(kriging, &kriging.ask(at)),
            Self::ByDistance(samples) => by_distance(samples, at),
        }
    }

    /// How far it is to the nearest reading, in feet.
    pub fn nearest(&self, at: [f64; 2]) -> f64 {
        let samples = match self {
            Self::Kriged(kriging) => kriging.samples(),
            Self::ByDistance(samples) => samples,
        };
        samples.iter().map(|sample| distance(sample.at, at)).fold(f64::INFINITY, f64::min)
    }
}

pub(super) fn of_asked(kriging: &Kriging, asked: &Asked) -> Guess {
    let sill = kriging.variogram.sill;
    let support = if sill > 0.0 { (1.0 - asked.variance / sill).clamp(0.0, 1.0) } else { 1.0 };
    Guess { value: asked.value, variance: asked.variance, support }
}

fn by_distance(samples: &[Sample], at: [f64; 2]) -> Guess {
    let (mut weights, mut sum, mut nearest) = (0.0, 0.0, f64::INFINITY);
    for sample in samples {
        let away = distance(sample.at, at).max(0.01);
        let weight = 1.0 / (away * away);
        weights += weight;
        sum += weight * sample.value;
        nearest = nearest.min(away);
    }
    let variance = METER_NOISE + LOST_A_FOOT * nearest;
    Guess { value: sum / weights, variance, support: METER_NOISE / variance }
}
