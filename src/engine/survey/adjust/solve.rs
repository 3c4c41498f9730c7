//! The outline that fits best, and how well everything fits it.

use super::accuracy::Accuracy;
use super::equations::{Equation, Spot, equation};
use super::matrix::Square;
use super::network::{Measured, Network, Observation, Off};
use super::rest::{Rest, Unfixed, row, start, unknowns, unknowns_of};
use super::snoop::{Verdict, suspect, verdict};
use super::squareness::{Possible, Squareness};
use super::weigh::{odd_one_out, weigh};
use crate::engine::geometry::Point;
use crate::engine::units::{Angle, Area, Length};

/// Below this redundancy the rest does not check an observation.
pub const UNCHECKED: f64 = 1e-6;

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
    /// How square the house is, where any corner rests on that.
    pub squareness: Option<Squareness>,
    /// The area, and its standard deviation.
    pub area: (Area, Area),
    /// How well the corner that is known worst is known beside the first side: one standard
    /// deviation.
    pub corners_within: Length,
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

/// The best outline of a network.
///
/// # Errors
/// Why there is none.
pub fn adjust(network: &Network) -> Result<Adjusted, Unfixed> {
    if !network.is_sound() {
        return Err(Unfixed::Unsound);
    }
    let from = start(network);
    let is_built = network.is_built();
    let unknown = Possible { sigma: Accuracy::AS_BUILT, log_weight: 0.0 };
    let possible = if is_built { network.house.possible() } else { vec![unknown] };
    let weighed = match weigh(network, &from, &possible) {
        Err(Unfixed::Restless) => return Err(contradictory(network, &possible)),
        other => other?,
    };
    // Nobody takes a house for squarer than houses are because a few readings agree.
    let accused = weighed.doubted.first().filter(|_| weighed.is_accused());
    let found = accused.map_or(weighed.square, |doubted| doubted.square);
    let sigma = found.max(network.house.at_best());
    let squareness = is_built.then(|| Squareness { sigma, is_measured: found > network.house.at_best() });
    let known = network.as_square_as(sigma);
    let Ok(rest) = Rest::of(&known, &weighed.corners) else { return Err(contradictory(network, &possible)) };
    let verdict = verdict(network, &rest, &weighed);
    Ok(Adjusted { verdict, squareness, ..report(&known, &rest) })
}

/// Nothing fits all readings: which one has to go.
fn contradictory(network: &Network, possible: &[Possible]) -> Unfixed {
    let odd = odd_one_out(network, possible).and_then(|doubted| suspect(network, &doubted, None));
    odd.map_or(Unfixed::Restless, |suspect| Unfixed::Contradicted(Box::new(suspect)))
}

fn report(network: &Network, rest: &Rest) -> Adjusted {
    let (system, corners, inverse) = (&rest.system, &rest.corners, rest.factor.inverse());
    let of_each = network.observations.iter().zip(system.equations.iter().zip(&system.rows));
    let checked: Vec<_> = of_each
        .map(|(observation, (equation, row))| check(network, observation, equation, inverse.between(row, row)))
        .collect();
    let freedom = network.observations.len().saturating_sub(unknowns(corners.len()));
    let turns = network.turns.iter().enumerate();
    Adjusted {
        corners: points(corners),
        out_of_square: turns.filter_map(|(side, turn)| out_of_square(corners, side, *turn, &inverse)).collect(),
        squareness: None,
        area: area(corners, &inverse),
        corners_within: corners_within(corners.len(), &inverse),
        freedom,
        variance_factor: (freedom > 0).then(|| system.squares() / freedom as f64),
        verdict: None,
        checked,
    }
}

fn check(network: &Network, observation: &Observation, equation: &Equation, variance: f64) -> Checked {
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

fn corners_within(corners: usize, inverse: &Square) -> Length {
    let variance = |corner| {
        let (x, y) = unknowns_of(corner);
        [x, y].into_iter().flatten().map(|unknown| inverse.between(&[(unknown, 1.0)], &[(unknown, 1.0)])).sum::<f64>()
    };
    Length::from_inches(libm::sqrt((0..corners).map(variance).fold(0.0, f64::max)))
}

fn points(corners: &[Spot]) -> Vec<Point> {
    corners.iter().map(|spot| Point::new(Length::from_inches(spot.0), Length::from_inches(spot.1))).collect()
}

/// The shoelace formula, and its change with each corner.
pub fn area(corners: &[Spot], inverse: &Square) -> (Area, Area) {
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
    let points = points(corners);
    let doubled = points.iter().zip(points.iter().cycle().skip(1));
    let doubled: Area = doubled.map(|(a, b)| a.x * b.y - a.y * b.x).sum();
    let sigma = Area::from_square_inches(libm::sqrt(inverse.between(&row, &row).max(0.0)));
    (doubled.half().abs(), sigma)
}
