//! What an observation would read on a given outline, and how that changes with each
//! corner.

use super::network::Observation;

/// A point in inches.
pub type Spot = (f64, f64);

/// An observation on an outline: what it would read, what was read less that, and how
/// the reading changes with each corner's x and y. Inches, and radians for angles.
#[derive(Debug, Clone, PartialEq)]
pub struct Equation {
    /// What was read, less what the outline says.
    pub misfit: f64,
    /// The reading's standard deviation.
    pub sigma: f64,
    /// Corner, and the changes with its x and y.
    pub slopes: Vec<(usize, f64, f64)>,
}

/// The equation of an observation at these corners; none where two of its corners
/// coincide, since a direction is needed.
pub fn equation(observation: &Observation, corners: &[Spot]) -> Option<Equation> {
    let at = |corner: usize| corners.get(corner).copied();
    match *observation {
        Observation::Distance { from, to, is, sigma } => {
            let line = Line::between(at(from)?, at(to)?)?;
            let slopes = vec![(from, -line.x, -line.y), (to, line.x, line.y)];
            Some(Equation { misfit: is.to_inches() - line.length, sigma: sigma.to_inches(), slopes })
        }
        Observation::Angle { at: corner, is, sigma } => {
            let count = corners.len();
            let (before, after) = ((corner + count - 1) % count, (corner + 1) % count);
            let (one, other) = (Line::between(at(before)?, at(corner)?)?, Line::between(at(corner)?, at(after)?)?);
            let turned = libm::atan2(one.across(other), one.along(other));
            let mut slopes = one.turning(before, corner, -1.0);
            slopes.extend(other.turning(corner, after, 1.0));
            Some(Equation { misfit: within_half_turn(is.to_radians() - turned), sigma: sigma.to_radians(), slopes })
        }
        // How square houses are is put in before anything is computed.
        Observation::Built { .. } => None,
        Observation::Offset { of, from, to, is, sigma } => {
            let (line, along, aside) = located(at(of)?, at(from)?, at(to)?)?;
            let normal = (-line.y, line.x);
            let mut slopes = vec![(of, normal.0, normal.1), (from, -normal.0, -normal.1)];
            slopes.extend(line.turning(from, to, -along));
            Some(Equation { misfit: is.to_inches() - aside, sigma: sigma.to_inches(), slopes })
        }
        Observation::Along { of, from, to, is, sigma } => {
            let (line, along, aside) = located(at(of)?, at(from)?, at(to)?)?;
            let mut slopes = vec![(of, line.x, line.y), (from, -line.x, -line.y)];
            slopes.extend(line.turning(from, to, aside));
            Some(Equation { misfit: is.to_inches() - along, sigma: sigma.to_inches(), slopes })
        }
    }
}

/// A direction of length 1, and how far it goes.
#[derive(Debug, Clone, Copy)]
struct Line {
    x: f64,
    y: f64,
    length: f64,
}

impl Line {
    fn between(from: Spot, to: Spot) -> Option<Self> {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = libm::hypot(dx, dy);
        (length > 1e-9).then(|| Self { x: dx / length, y: dy / length, length })
    }

    fn along(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// Positive where `other` turns clockwise on the page.
    fn across(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// How `by` times its heading changes with its two ends.
    fn turning(self, from: usize, to: usize, by: f64) -> Vec<(usize, f64, f64)> {
        let (x, y) = (-self.y / self.length * by, self.x / self.length * by);
        vec![(from, -x, -y), (to, x, y)]
    }
}

/// A line, and how far along it and to its right a point lies.
fn located(of: Spot, from: Spot, to: Spot) -> Option<(Line, f64, f64)> {
    let line = Line::between(from, to)?;
    let (dx, dy) = (of.0 - from.0, of.1 - from.1);
    Some((line, line.x * dx + line.y * dy, line.x * dy - line.y * dx))
}

fn within_half_turn(radians: f64) -> f64 {
    let turns = libm::round(radians / std::f64::consts::TAU);
    radians - turns * std::f64::consts::TAU
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::units::{Angle, Length};

    const ROOM: [Spot; 4] = [(0.0, 0.0), (100.0, 3.0), (97.0, 61.0), (-2.0, 60.0)];

    fn all() -> Vec<Observation> {
        let (is, sigma) = (Length::ZERO, Length::INCH);
        vec![
            Observation::Distance { from: 0, to: 2, is, sigma },
            Observation::Angle { at: 0, is: Angle::QUARTER, sigma: Angle::degrees(1) },
            Observation::Angle { at: 2, is: Angle::QUARTER, sigma: Angle::degrees(1) },
            Observation::Offset { of: 3, from: 0, to: 2, is, sigma },
            Observation::Along { of: 3, from: 0, to: 2, is, sigma },
        ]
    }

    #[test]
    fn slopes_are_what_a_small_step_changes() {
        const STEP: f64 = 1e-5;
        for observation in all() {
            let equation_at = |corners: &[Spot]| equation(&observation, corners).unwrap();
            let here = equation_at(&ROOM);
            for corner in 0..ROOM.len() {
                let slope = |pick: fn(&(usize, f64, f64)) -> f64| -> f64 {
                    here.slopes.iter().filter(|slope| slope.0 == corner).map(pick).sum()
                };
                let mut moved = ROOM;
                moved[corner].0 += STEP;
                let by_x = (here.misfit - equation_at(&moved).misfit) / STEP;
                let mut moved = ROOM;
                moved[corner].1 += STEP;
                let by_y = (here.misfit - equation_at(&moved).misfit) / STEP;
                assert!((by_x - slope(|slope| slope.1)).abs() < 1e-5, "{observation:?} {corner}");
                assert!((by_y - slope(|slope| slope.2)).abs() < 1e-5, "{observation:?} {corner}");
            }
        }
    }

    #[test]
    fn a_right_turn_is_positive_and_right_of_a_line_too() {
        let square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)];
        let turn = Observation::Angle { at: 1, is: Angle::QUARTER, sigma: Angle::degrees(1) };
        assert!(equation(&turn, &square).unwrap().misfit.abs() < 1e-12);
        let offset = Observation::Offset { of: 2, from: 0, to: 1, is: Length::inches(10), sigma: Length::INCH };
        assert!(equation(&offset, &square).unwrap().misfit.abs() < 1e-12);
    }

    #[test]
    fn corners_that_coincide_have_no_direction() {
        let room = [(0.0, 0.0), (0.0, 0.0), (1.0, 1.0)];
        assert_eq!(
            equation(&Observation::Distance { from: 0, to: 1, is: Length::INCH, sigma: Length::INCH }, &room),
            None
        );
    }
}
