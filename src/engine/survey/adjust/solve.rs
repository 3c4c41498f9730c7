//! The outline that fits best: Gauss and Newton's steps on the normal equations.

use super::accuracy::Accuracy;
use super::equations::{Equation, Spot, equation};
use super::matrix::Square;
use super::network::{Measured, Network, Observation, Off};
use super::snoop::{Verdict, verdict};
use crate::engine::geometry::Point;
use crate::engine::units::{Angle, Area, Length};

/// Steps after which an outline that still moves never comes to rest.
const MOST_STEPS: usize = 60;

/// An outline that moves less than this, in inches, has come to rest.
const AT_REST: f64 = 1e-9;

/// Where the best outline lies, and how well everything fits it.
#[derive(Debug, Clone, PartialEq)]
pub struct Adjusted {
    /// The corners: the first at the origin, the first side along x.
    pub corners: Vec<Point>,
    /// For each observation in turn how it fits.
    pub checked: Vec<Checked>,
    /// The turn at the end of each side beyond what it looks like, as [`Network::turns`]
    /// has it: for a square corner how far out of square it is. And the standard
    /// deviation of that.
    pub out_of_square: Vec<(Angle, Angle)>,
    /// The area, and its standard deviation.
    pub area: (Area, Area),
    /// Observations beyond those that fix the shape.
    pub freedom: usize,
    /// The sum of squared residuals over their standard deviations, for each degree of
    /// freedom: about 1 where the stated accuracies hold. None without any.
    pub variance_factor: Option<f64>,
    /// What disagrees, if anything does.
    pub verdict: Option<Verdict>,
}

/// How an observation fits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Checked {
    /// What it measures.
    pub measured: Measured,
    /// The adjusted value less what was read.
    pub residual: Off,
    /// The adjusted value's standard deviation.
    pub sigma: Off,
    /// How far the rest checks it: 0 not at all, 1 fully.
    pub redundancy: f64,
    /// The residual over its own standard deviation; nothing where the rest does not
    /// check it.
    pub standardised: Option<f64>,
}

/// Why there is no outline.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unfixed {
    /// Fewer than three corners, an observation of a corner that is not there, or one
    /// without a standard deviation.
    Unsound,
    /// The measurements leave a corner loose. Any of these would fix it.
    Loose {
        /// The corner.
        corner: usize,
        /// What to measure: one of these is enough. A few of them, if there are many.
        would_fix: Vec<Measured>,
    },
    /// They contradict each other so far that no outline comes to rest.
    Restless,
}

/// The best outline of a network.
///
/// # Errors
/// Why there is none.
pub fn adjust(network: &Network) -> Result<Adjusted, Unfixed> {
    if !network.is_sound() {
        return Err(Unfixed::Unsound);
    }
    let mut corners = start(network);
    for _ in 0..MOST_STEPS {
        let system = System::new(network, &corners).ok_or(Unfixed::Restless)?;
        let inverse = system.normal.inverse().map_err(|unknown| loose(network, &corners, unknown))?;
        let step = inverse.times(&system.right);
        let farthest = step.iter().fold(0.0_f64, |far, by| far.max(by.abs()));
        if !farthest.is_finite() {
            return Err(Unfixed::Restless);
        }
        move_corners(&mut corners, &step);
        if farthest < AT_REST {
            let system = System::new(network, &corners).ok_or(Unfixed::Restless)?;
            return Ok(report(network, &corners, &system, &inverse));
        }
    }
    Err(Unfixed::Restless)
}

/// The walk with its turns as they look and the mean of each side's readings, its gap shared out
/// along the way.
fn start(network: &Network) -> Vec<Spot> {
    let count = network.corners();
    let (mut at, mut heading) = ((0.0, 0.0), (1.0, 0.0));
    let mut corners = vec![at];
    for (side, turn) in network.turns.iter().enumerate() {
        let length = side_length(network, side);
        at = (at.0 + heading.0 * length, at.1 + heading.1 * length);
        corners.push(at);
        let (sin, cos) = libm::sincos(turn.to_radians());
        heading = (heading.0 * cos - heading.1 * sin, heading.0 * sin + heading.1 * cos);
    }
    let gap = corners.pop().unwrap_or_default();
    let share = |corner: usize| corner as f64 / count as f64;
    let closed = corners.iter().enumerate().map(|(n, spot)| (spot.0 - gap.0 * share(n), spot.1 - gap.1 * share(n)));
    along_x(closed.collect())
}

/// Turned about corner 0 until corner 1 lies on the x axis.
fn along_x(corners: Vec<Spot>) -> Vec<Spot> {
    let (x, y) = corners.get(1).copied().unwrap_or((1.0, 0.0));
    let length = libm::hypot(x, y);
    if length < 1e-9 {
        return corners;
    }
    let (cos, sin) = (x / length, y / length);
    corners.into_iter().map(|(x, y)| (x * cos + y * sin, y * cos - x * sin)).collect()
}

/// The mean of a side's readings; 10 ft where there is none.
fn side_length(network: &Network, side: usize) -> f64 {
    let read = network.observations.iter().filter(|observation| network.measured(observation) == Measured::Side(side));
    let lengths: Vec<f64> = read
        .filter_map(|observation| match observation {
            Observation::Distance { is, .. } => Some(is.to_inches().abs().max(1.0)),
            _ => None,
        })
        .collect();
    if lengths.is_empty() { 120.0 } else { lengths.iter().sum::<f64>() / lengths.len() as f64 }
}

/// Corner 0 stays at the origin and corner 1 on the x axis; all else is unknown.
const fn unknowns(corners: usize) -> usize {
    2 * corners - 3
}

/// The numbers of a corner's x and y among the unknowns.
fn unknowns_of(corner: usize) -> (Option<usize>, Option<usize>) {
    match corner {
        0 => (None, None),
        1 => (Some(0), None),
        other => (Some(2 * other - 3), Some(2 * other - 2)),
    }
}

fn corner_of(unknown: usize) -> usize {
    if unknown == 0 { 1 } else { unknown.div_ceil(2) + 1 }
}

fn move_corners(corners: &mut [Spot], step: &[f64]) {
    for (corner, spot) in corners.iter_mut().enumerate() {
        let by = |unknown: Option<usize>| unknown.and_then(|unknown| step.get(unknown)).copied().unwrap_or_default();
        let (x, y) = unknowns_of(corner);
        *spot = (spot.0 + by(x), spot.1 + by(y));
    }
}

/// The normal equations at an outline.
pub struct System {
    pub equations: Vec<Equation>,
    /// Each equation's slopes by unknown.
    pub rows: Vec<Vec<(usize, f64)>>,
    pub normal: Square,
    pub right: Vec<f64>,
}

impl System {
    pub fn new(network: &Network, corners: &[Spot]) -> Option<Self> {
        let equations: Vec<_> =
            network.observations.iter().map(|observation| equation(observation, corners)).collect::<Option<_>>()?;
        let rows: Vec<_> = equations.iter().map(|equation| row(&equation.slopes)).collect();
        let size = unknowns(corners.len());
        let (mut normal, mut right) = (Square::zero(size), vec![0.0; size]);
        for (equation, row) in equations.iter().zip(&rows) {
            let weight = 1.0 / (equation.sigma * equation.sigma);
            normal.add_product(row, weight);
            for (unknown, slope) in row {
                if let Some(entry) = right.get_mut(*unknown) {
                    *entry += weight * slope * equation.misfit;
                }
            }
        }
        Some(Self { equations, rows, normal, right })
    }
}

/// The most measurements that would fix a loose corner which are looked for.
const ENOUGH: usize = 3;

impl System {
    /// One more observation, as its standard deviation and its slopes by unknown.
    pub fn added(&self, observation: &Observation, corners: &[Spot]) -> Option<(f64, Vec<(usize, f64)>)> {
        let equation = equation(observation, corners)?;
        Some((equation.sigma, row(&equation.slopes)))
    }
}

/// Slopes by unknown, each once.
fn row(slopes: &[(usize, f64, f64)]) -> Vec<(usize, f64)> {
    let mut row: Vec<(usize, f64)> = Vec::new();
    let mut add = |unknown: Option<usize>, slope: f64| {
        let Some(unknown) = unknown else { return };
        match row.iter_mut().find(|(known, _)| *known == unknown) {
            Some((_, sum)) => *sum += slope,
            None => row.push((unknown, slope)),
        }
    };
    for (corner, by_x, by_y) in slopes {
        let (x, y) = unknowns_of(*corner);
        add(x, *by_x);
        add(y, *by_y);
    }
    row
}

fn report(network: &Network, corners: &[Spot], system: &System, inverse: &Square) -> Adjusted {
    let checked: Vec<_> = network.observations.iter().zip(system.equations.iter().zip(&system.rows)).collect();
    let checked: Vec<_> = checked
        .iter()
        .map(|(observation, (equation, row))| check(network, observation, equation, inverse.between(row, row)))
        .collect();
    let freedom = network.observations.len().saturating_sub(unknowns(corners.len()));
    let squares: f64 = system.equations.iter().map(|e| (e.misfit / e.sigma) * (e.misfit / e.sigma)).sum();
    Adjusted {
        corners: corners
            .iter()
            .map(|spot| Point::new(Length::from_inches(spot.0), Length::from_inches(spot.1)))
            .collect(),
        out_of_square: network
            .turns
            .iter()
            .enumerate()
            .filter_map(|(side, turn)| out_of_square(corners, side, *turn, inverse))
            .collect(),
        area: area(corners, inverse),
        freedom,
        variance_factor: (freedom > 0).then(|| squares / freedom as f64),
        verdict: verdict(network, corners, system, inverse, &checked),
        checked,
    }
}

fn check(network: &Network, observation: &Observation, equation: &Equation, variance: f64) -> Checked {
    /// Below this the rest does not check an observation.
    const UNCHECKED: f64 = 1e-6;
    let redundancy = (1.0 - variance / (equation.sigma * equation.sigma)).clamp(0.0, 1.0);
    let residual = -equation.misfit;
    let own = equation.sigma * libm::sqrt(redundancy);
    Checked {
        measured: network.measured(observation),
        residual: observation.off(residual),
        sigma: observation.off(libm::sqrt(variance.max(0.0))),
        redundancy,
        standardised: (redundancy > UNCHECKED).then(|| residual / own),
    }
}

/// A corner's turn beyond what it looks like, at the end of a side.
fn out_of_square(corners: &[Spot], side: usize, turn: Angle, inverse: &Square) -> Option<(Angle, Angle)> {
    let at = (side + 1) % corners.len();
    let believed = Observation::Angle { at, is: turn, sigma: Angle::degrees(1) };
    let equation = equation(&believed, corners)?;
    let row = row(&equation.slopes);
    let sigma = libm::sqrt(inverse.between(&row, &row).max(0.0));
    Some((Angle::from_radians(-equation.misfit), Angle::from_radians(sigma)))
}

/// The shoelace formula, and its change with each corner.
fn area(corners: &[Spot], inverse: &Square) -> (Area, Area) {
    let count = corners.len();
    let neighbours =
        |corner: usize| Some((*corners.get((corner + count - 1) % count)?, *corners.get((corner + 1) % count)?));
    let slopes: Vec<_> = (0..count)
        .filter_map(|corner| {
            let (before, after) = neighbours(corner)?;
            Some((corner, (after.1 - before.1) / 2.0, (before.0 - after.0) / 2.0))
        })
        .collect();
    let row = row(&slopes);
    let points: Vec<_> =
        corners.iter().map(|spot| Point::new(Length::from_inches(spot.0), Length::from_inches(spot.1))).collect();
    let doubled = points.iter().zip(points.iter().cycle().skip(1));
    let doubled: Area = doubled.map(|(a, b)| a.x * b.y - a.y * b.x).sum();
    let sigma = Area::from_square_inches(libm::sqrt(inverse.between(&row, &row).max(0.0)));
    (doubled.half().abs(), sigma)
}

/// The corner that an unknown belongs to, and each measurement that would fix the shape
/// if it were added.
fn loose(network: &Network, corners: &[Spot], unknown: usize) -> Unfixed {
    let fixes = |(_, observation): &(Measured, Observation)| {
        let mut more = network.clone();
        more.observations.push(*observation);
        System::new(&more, corners).is_some_and(|system| system.normal.inverse().is_ok())
    };
    let all = candidates(network, corners).into_iter();
    let would_fix = all.filter(fixes).map(|(measured, _)| measured).take(ENOUGH).collect();
    Unfixed::Loose { corner: corner_of(unknown), would_fix }
}

/// Every distance between corners and every turn that nobody has measured yet, as it
/// would be read on this outline with a tape and a square.
pub fn candidates(network: &Network, corners: &[Spot]) -> Vec<(Measured, Observation)> {
    let count = network.corners();
    let pairs = (0..count).flat_map(|from| (from + 1..count).map(move |to| (from, to)));
    let distances = pairs.filter_map(|(from, to)| {
        let (a, b) = (corners.get(from)?, corners.get(to)?);
        let is = Length::from_inches(libm::hypot(b.0 - a.0, b.1 - a.1));
        Some(Observation::Distance { from, to, is, sigma: Accuracy::TAPE.of(is) })
    });
    let turns = network.turns.iter().enumerate();
    let sigma = Accuracy::AS_BUILT;
    let angles = turns.map(|(side, turn)| Observation::Angle { at: (side + 1) % count, is: *turn, sigma });
    let known: Vec<_> = network.observations.iter().map(|observation| network.measured(observation)).collect();
    let all = distances.chain(angles).map(|observation| (network.measured(&observation), observation));
    all.filter(|(measured, _)| !known.contains(measured)).collect()
}
