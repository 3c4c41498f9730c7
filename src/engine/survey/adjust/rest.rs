//! An outline at rest: where Gauss and Newton's steps on the normal equations come to,
//! each reading weighed by its standard deviation.

use super::accuracy::Accuracy;
use super::equations::{Equation, Spot, equation};
use super::matrix::{Lower, Square};
use super::network::{Measured, Network, Observation};
use super::snoop::Suspect;
use crate::engine::geometry::Problem;
use crate::engine::units::Length;

/// Steps after which an outline that still moves never comes to rest.
const MOST_STEPS: usize = 200;

/// An outline that moves less than this, in inches, has come to rest.
const AT_REST: f64 = 1e-7;

/// One that cannot be bettered and moves less than this has too.
const NEARLY_AT_REST: f64 = 1e-4;

/// How often a step that makes things worse is halved.
const MOST_HALVINGS: i32 = 20;

/// Why there is no outline.
#[derive(Debug, Clone, PartialEq)]
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
    /// They contradict each other so far that no outline comes to rest; without this one
    /// they do not.
    Contradicted(Box<Suspect>),
    /// They contradict each other so far that no outline comes to rest, whichever one is
    /// left out.
    Restless,
    /// What fits them best is no outline: what is wrong with it.
    Crossed(Problem),
}

/// An outline at rest.
#[derive(Debug, Clone)]
pub struct Rest {
    pub corners: Vec<Spot>,
    /// The normal equations there.
    pub system: System,
    /// Their matrix in factors.
    pub factor: Lower,
}

impl Rest {
    /// The outline of a network, all of whose standard deviations are known, from corners
    /// near it. Source: the method of least squares.
    pub fn of(network: &Network, from: &[Spot]) -> Result<Self, Unfixed> {
        let mut corners = from.to_vec();
        let mut system = System::new(network, &corners).ok_or(Unfixed::Restless)?;
        for _ in 0..MOST_STEPS {
            let factor = system.normal.cholesky().map_err(|unknown| loose(network, &corners, unknown))?;
            let step = factor.solve(&system.right);
            let farthest = step.iter().fold(0.0_f64, |far, by| far.max(by.abs()));
            if !farthest.is_finite() {
                return Err(Unfixed::Restless);
            }
            if farthest < AT_REST {
                return Ok(Self { corners, system, factor });
            }
            let Some((moved, better)) = descend(network, &corners, &system, &step) else {
                // No step makes it better: rounding alone is left, or nothing leads down.
                return if farthest < NEARLY_AT_REST {
                    Ok(Self { corners, system, factor })
                } else {
                    Err(Unfixed::Restless)
                };
            };
            (corners, system) = (moved, better);
        }
        Err(Unfixed::Restless)
    }

    /// The natural logarithm of how likely everything measured is, whatever the corners
    /// (Laplace's approximation, from memory).
    pub fn log_likelihood(&self) -> f64 {
        let logs: f64 = self.system.equations.iter().map(|equation| libm::log(equation.sigma)).sum();
        let fits = -logs - 0.5 * self.system.squares();
        let beyond = self.system.equations.len() as f64 - unknowns(self.corners.len()) as f64;
        fits - 0.5 * self.factor.log_determinant() - 0.5 * beyond * libm::log(std::f64::consts::TAU)
    }

    /// What was read less what this outline says, and the variance of that difference, for
    /// a reading that had no part in it.
    pub fn predicts(&self, observation: &Observation) -> Option<(f64, f64)> {
        let Equation { misfit, sigma, slopes } = equation(observation, &self.corners)?;
        Some((misfit, sigma * sigma + self.variance(&row(&slopes))))
    }

    /// The variance of what a row of slopes says.
    pub fn variance(&self, row: &[(usize, f64)]) -> f64 {
        let mut right = vec![0.0; unknowns(self.corners.len())];
        for (unknown, slope) in row {
            if let Some(entry) = right.get_mut(*unknown) {
                *entry += slope;
            }
        }
        let solved = self.factor.solve(&right);
        right.iter().zip(&solved).map(|(a, b)| a * b).sum::<f64>().max(0.0)
    }
}

/// The corners moved by a step, or by as much of it as makes everything fit better.
fn descend(network: &Network, corners: &[Spot], system: &System, step: &[f64]) -> Option<(Vec<Spot>, System)> {
    let now = system.squares();
    (0..MOST_HALVINGS).find_map(|halvings| {
        let part: Vec<_> = step.iter().map(|by| by * libm::pow(0.5, f64::from(halvings))).collect();
        let mut moved = corners.to_vec();
        move_corners(&mut moved, &part);
        let system = System::new(network, &moved)?;
        (system.squares() < now).then_some((moved, system))
    })
}

/// The walk with its turns as they look and the mean of each side's readings, its gap shared out
/// along the way.
pub fn start(network: &Network) -> Vec<Spot> {
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
pub const fn unknowns(corners: usize) -> usize {
    2 * corners - 3
}

/// The numbers of a corner's x and y among the unknowns.
pub fn unknowns_of(corner: usize) -> (Option<usize>, Option<usize>) {
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
#[derive(Debug, Clone)]
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
    /// The squared misfits over their variances, all together.
    pub fn squares(&self) -> f64 {
        self.equations.iter().map(|e| (e.misfit / e.sigma) * (e.misfit / e.sigma)).sum()
    }

    /// One more observation, as its standard deviation and its slopes by unknown.
    pub fn added(&self, observation: &Observation, corners: &[Spot]) -> Option<(f64, Vec<(usize, f64)>)> {
        let equation = equation(observation, corners)?;
        Some((equation.sigma, row(&equation.slopes)))
    }
}

/// Slopes by unknown, each once.
pub fn row(slopes: &[(usize, f64, f64)]) -> Vec<(usize, f64)> {
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

/// The corner that an unknown belongs to, and each measurement that would fix the shape
/// if it were added.
fn loose(network: &Network, corners: &[Spot], unknown: usize) -> Unfixed {
    let fixes = |(_, observation): &(Measured, Observation)| {
        let mut more = network.clone();
        more.observations.push(*observation);
        System::new(&more, corners).is_some_and(|system| system.normal.cholesky().is_ok())
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
