//! Which reading disagrees with the rest.
//!
//! When the measurements say that one of them is wrong ([`weigh`](super::weigh)), the
//! likeliest are named: as many as it takes to be nearly sure that the wrong one is among them,
//! three at the most, since nobody measures a whole room again.

use super::equations::Spot;
use super::matrix::Square;
use super::network::{Measured, Network, Off};
use super::rest::{Rest, System, candidates, start};
use super::solve::area;
use super::weigh::{Doubted, Weighed};
use crate::engine::units::{Angle, Area};

/// The named readings are the wrong one with this chance, or there are [`MOST_NAMED`].
const SURE: f64 = 0.97;

/// No more are named.
pub const MOST_NAMED: usize = 3;

/// What disagrees with the rest.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// The readings that could be wrong, the likeliest first: one of them is.
    pub suspects: Vec<Suspect>,
    /// Could it be another one as well?
    pub may_be_another: bool,
    /// If there are several: what to measure besides, to tell them apart.
    pub would_tell: Option<Measured>,
}

/// A reading that could be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Suspect {
    /// Its number among the observations.
    pub observation: usize,
    /// What it measures.
    pub measured: Measured,
    /// How far off it would be: what was read, less what the rest says.
    pub off: Off,
    /// How likely it is the wrong one.
    pub chance: f64,
    /// The area of the outline that the rest makes, and its standard deviation.
    pub area_without: (Area, Area),
}

/// The verdict on a network, if something is wrong with it.
pub fn verdict(network: &Network, rest: &Rest, weighed: &Weighed) -> Option<Verdict> {
    if !weighed.is_accused() {
        return None;
    }
    let wrong = 1.0 - weighed.clean;
    let mut sure = 0.0;
    let mut named = Vec::new();
    for doubted in weighed.doubted.iter().take(MOST_NAMED) {
        if sure < SURE * wrong {
            sure += doubted.chance;
            named.push(*doubted);
        }
    }
    let suspects: Vec<_> = named.iter().filter_map(|doubted| suspect(network, doubted, Some(&rest.corners))).collect();
    let would_tell = if suspects.len() > 1 { telling(network, rest, &suspects) } else { None };
    (!suspects.is_empty()).then_some(Verdict { suspects, may_be_another: sure < SURE * wrong, would_tell })
}

/// A reading as one that is wrong; the outline without it is sought from these corners, or from
/// the walk.
pub fn suspect(network: &Network, doubted: &Doubted, from: Option<&[Spot]>) -> Option<Suspect> {
    let n = doubted.observation;
    let observation = network.observations.get(n)?;
    // Without it the house may be squarer than with it.
    let square: Angle = doubted.square.max(network.house.at_best());
    let without = network.without(n).as_square_as(square);
    let rest = Rest::of(&without, from.unwrap_or(&start(&without))).ok()?;
    let (off, _) = rest.predicts(observation)?;
    Some(Suspect {
        observation: n,
        measured: network.measured(observation),
        off: observation.off(off),
        chance: doubted.chance,
        area_without: area(&rest.corners, &rest.factor.inverse()),
    })
}

/// How residuals vary together.
struct Residuals<'a> {
    system: &'a System,
    inverse: &'a Square,
    /// One more observation, as its standard deviation and its slopes.
    besides: Option<(f64, Vec<(usize, f64)>)>,
}

impl Residuals<'_> {
    /// How far two of them go together, from -1 to 1.
    fn correlation(&self, one: usize, other: usize) -> f64 {
        let (Some(both), Some(first), Some(second)) =
            (self.covariance(one, other), self.covariance(one, one), self.covariance(other, other))
        else {
            return 0.0;
        };
        let scale = libm::sqrt((first * second).max(0.0));
        if scale > 0.0 { (both / scale).clamp(-1.0, 1.0) } else { 0.0 }
    }

    fn covariance(&self, one: usize, other: usize) -> Option<f64> {
        let (a, b) = (self.system.rows.get(one)?, self.system.rows.get(other)?);
        let own = if one == other { self.system.equations.get(one)?.sigma } else { 0.0 };
        let between = |a: &[(usize, f64)], b: &[(usize, f64)]| self.inverse.between(a, b);
        // One more observation lessens the inverse by a product of vectors (the formula
        // of Sherman and Morrison, from memory).
        let less = self
            .besides
            .as_ref()
            .map_or(0.0, |(sigma, row)| between(a, row) * between(row, b) / (sigma * sigma + between(row, row)));
        Some(own * own - (between(a, b) - less))
    }
}

/// The measurement that, were it there too, would tell the suspects apart best.
fn telling(network: &Network, rest: &Rest, suspects: &[Suspect]) -> Option<Measured> {
    let Rest { corners, system, factor } = rest;
    let inverse = &factor.inverse();
    let first = suspects.first()?.observation;
    let alike = |observation| {
        let more = Residuals { system, inverse, besides: Some(system.added(&observation, corners)?) };
        let others = suspects.iter().skip(1);
        Some(others.map(|other| more.correlation(first, other.observation).abs()).fold(0.0, f64::max))
    };
    let rated = candidates(network, corners)
        .into_iter()
        .filter_map(|(measured, observation)| Some((alike(observation)?, measured)));
    rated.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, measured)| measured)
}
