//! Which measurement disagrees with the rest.
//!
//! Data snooping: a residual over its own standard deviation is a standard normal
//! variable as long as nothing is wrong. The largest one is named when it is larger
//! than chance allows in all of the room's measurements together. Another measurement
//! whose residual goes nearly with that one, and is nearly as large, cannot be told
//! apart from it, and is named too.
//!
//! Source: W. Baarda's method of data snooping, from memory; the level for the room as
//! a whole by Šidák's formula, from memory.

use super::equations::Spot;
use super::matrix::Square;
use super::network::{Measured, Network, Observation, Off};
use super::normal::quantile;
use super::solve::{Checked, System, candidates};

/// A room without a mistake is accused this often, or less.
pub const SIGNIFICANCE: f64 = 0.05;

/// What disagrees with the rest.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// The measurements that could be wrong, the likeliest first: one of them is.
    pub suspects: Vec<Suspect>,
    /// If there are several: what to measure besides, to tell them apart.
    pub would_tell: Option<Measured>,
}

/// A measurement that could be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Suspect {
    /// Its number among the observations.
    pub observation: usize,
    /// What it measures.
    pub measured: Measured,
    /// How far off it would be: what was read, less what the rest says.
    pub off: Off,
    /// Its residual over its standard deviation.
    pub standardised: f64,
}

/// How large a residual over its standard deviation may be among so many, at
/// [`SIGNIFICANCE`] for all of them together.
pub fn critical_value(checked: usize) -> f64 {
    let each = 1.0 - libm::pow(1.0 - SIGNIFICANCE, 1.0 / checked.max(1) as f64);
    quantile(1.0 - each / 2.0)
}

/// The verdict on an adjusted network, if something is wrong with it.
pub fn verdict(
    network: &Network,
    corners: &[Spot],
    system: &System,
    inverse: &Square,
    checked: &[Checked],
) -> Option<Verdict> {
    let sizes: Vec<_> =
        checked.iter().enumerate().filter_map(|(n, check)| Some((n, check.standardised?.abs()))).collect();
    let (worst, size) = sizes.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1))?;
    if size <= critical_value(sizes.len()) {
        return None;
    }
    let mut named: Vec<_> = sizes
        .iter()
        .filter(|(n, other)| *n == worst || are_alike(system, inverse, (worst, size), (*n, *other)))
        .collect();
    named.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let suspects: Vec<_> = named.iter().filter_map(|(n, _)| suspect(network, system, checked, *n)).collect();
    let would_tell = if suspects.len() > 1 { telling(network, corners, system, inverse, &suspects) } else { None };
    Some(Verdict { suspects, would_tell })
}

/// Could chance have put the one residual behind the other? Two standard normal
/// variables with correlation `rho` differ by a normal variable of variance
/// `2 (1 - rho)`.
fn are_alike(system: &System, inverse: &Square, (worst, size): (usize, f64), (other, smaller): (usize, f64)) -> bool {
    /// Two-sided 5 %.
    const LEVEL: f64 = 0.975;
    let correlation = Residuals { system, inverse, besides: None }.correlation(worst, other).abs();
    size - smaller <= quantile(LEVEL) * libm::sqrt((2.0 * (1.0 - correlation)).max(0.0)) + 1e-6 && correlation > 0.5
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

fn suspect(network: &Network, system: &System, checked: &[Checked], n: usize) -> Option<Suspect> {
    let (check, equation, observation) = (checked.get(n)?, system.equations.get(n)?, network.observations.get(n)?);
    let off = observation.off(equation.misfit / check.redundancy);
    Some(Suspect { observation: n, measured: check.measured, off, standardised: check.standardised? })
}

/// The measurement that, were it there too, would tell the suspects apart best.
fn telling(
    network: &Network,
    corners: &[Spot],
    system: &System,
    inverse: &Square,
    suspects: &[Suspect],
) -> Option<Measured> {
    let first = suspects.first()?.observation;
    let alike = |observation: Observation| {
        let more = Residuals { system, inverse, besides: Some(system.added(&observation, corners)?) };
        let others = suspects.iter().skip(1);
        Some(others.map(|other| more.correlation(first, other.observation).abs()).fold(0.0, f64::max))
    };
    let rated = candidates(network, corners)
        .into_iter()
        .filter_map(|(measured, observation)| Some((alike(observation)?, measured)));
    rated.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, measured)| measured)
}
