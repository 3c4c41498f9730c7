//! How far everything measured of a room disagrees with itself, once it is known how square
//! the house is.

use super::Floor;
use super::adjust::{Measured, Off, Suspect, Unfixed};
use super::shape::{Shape, Standing};
use crate::engine::geometry::Walk;
use crate::engine::job::Job;
use crate::engine::units::tape::{LengthStyle, format};
use crate::engine::units::{Angle, Length};

/// A disagreement so large stops what is cut by it: no sheet hides so much (a judgement, no
/// source).
pub const STOPS_AT: Length = Length::inches(3);

/// What a room's measurements say of each other.
#[derive(Debug, Clone, PartialEq)]
pub enum Disagreement {
    /// Nothing can be held against anything: the sides have not come round, or something is
    /// loose.
    Unchecked,
    /// Everything fits. So well the corner that is known worst is known, one standard
    /// deviation.
    Fits {
        /// How well that is.
        corners_within: Length,
    },
    /// Something is off.
    Off {
        /// How far; of several that could be wrong the one that is off farthest.
        by: Length,
        /// What disagrees, in a carpenter's words.
        says: String,
    },
    /// It contradicts itself so far that nobody can say how far.
    Beyond {
        /// What contradicts what, in a carpenter's words.
        says: String,
    },
}

impl Disagreement {
    /// Does it stop what is cut by the outline? At [`STOPS_AT`] it does.
    pub fn stops(&self) -> bool {
        match self {
            Self::Unchecked | Self::Fits { .. } => false,
            Self::Off { by, .. } => *by >= STOPS_AT,
            Self::Beyond { .. } => true,
        }
    }

    /// What disagrees, if anything does.
    pub fn says(&self) -> Option<&str> {
        match self {
            Self::Unchecked | Self::Fits { .. } => None,
            Self::Off { says, .. } | Self::Beyond { says } => Some(says),
        }
    }
}

/// How far the job's room disagrees with itself. Sheets are laid, and wood is cut, only where
/// it does not [stop](Disagreement::stops) them.
pub fn disagreement(job: &Job) -> Disagreement {
    Floor::of(job).map_or(Disagreement::Unchecked, |floor| {
        let standing = Shape::standing(job, floor.clone());
        of_standing(&floor, &standing)
    })
}

/// The same of a room whose shape is known already.
pub fn of_standing(floor: &Floor, standing: &Standing) -> Disagreement {
    if let Some(says) = goes_on(floor) {
        return Disagreement::Beyond { says };
    }
    match standing {
        Standing::AsWalked if floor.walk.turned_round().is_some() => as_walked(floor),
        Standing::AsWalked | Standing::Unfixed(Unfixed::Unsound | Unfixed::Loose { .. }) => Disagreement::Unchecked,
        Standing::Unfixed(Unfixed::Contradicted(odd)) => {
            let says = Unfixed::Contradicted(odd.clone()).to_string();
            Disagreement::Off { by: off_by(floor, odd), says }
        }
        Standing::Unfixed(unfixed @ (Unfixed::Restless | Unfixed::Crossed(_))) => {
            Disagreement::Beyond { says: unfixed.to_string() }
        }
        Standing::Known(shape) => match &shape.adjusted.verdict {
            None => unless_open(floor, shape),
            Some(verdict) => {
                let by = verdict.suspects.iter().map(|suspect| off_by(floor, suspect)).max();
                Disagreement::Off { by: by.unwrap_or(Length::ZERO), says: verdict.to_string() }
            }
        },
    }
}

/// A walk that turned once round and ended no farther from its start had come round, however wrong
/// its sides (a judgement, no source): few rooms wind past their first corner so closely.
pub const PAST_ITS_START: Length = Length::feet(2);

/// A side that goes on from where the walk had come round is no part of it: whatever the sides
/// before it disagreed by would be forgotten.
fn goes_on(floor: &Floor) -> Option<String> {
    let steps = floor.walk.steps();
    let is_round = |sides: &usize| {
        let walk = Walk::new(steps.iter().take(*sides).copied());
        walk.turned_round().is_some() && walk.closing_error().misclosure() <= PAST_ITS_START
    };
    let round = (1..steps.len()).find(is_round).filter(|_| floor.walk.turned_round().is_none())?;
    Some(format!("side {round} came round: take side {} back under Log, and correct any that is wrong", round + 1))
}

/// Sides alone cannot say how square the house is: what they miss their start by is a wrong
/// side or corners out of square, and only another measurement tells which.
fn unless_open(floor: &Floor, shape: &Shape) -> Disagreement {
    let by = floor.walk.closing_error().misclosure();
    if shape.is_crossed() || by < STOPS_AT {
        return Disagreement::Fits { corners_within: shape.adjusted.corners_within };
    }
    let missed = format(by, LengthStyle::default());
    let says = format!(
        "the sides miss their start by {}: one of them is wrong, or the house is far out of square; measure a \
         diagonal, which tells",
        missed.unmarked()
    );
    Disagreement::Off { by, says }
}

/// A room of so many corners is not adjusted: what its sides miss their start by is all there
/// is to say.
fn as_walked(floor: &Floor) -> Disagreement {
    let by = floor.walk.closing_error().misclosure();
    if by < STOPS_AT {
        return Disagreement::Fits { corners_within: by };
    }
    Disagreement::Off { by, says: "the sides miss their start; measure them again".to_owned() }
}

/// How far a reading is off; an angle by what that comes to at the end of the longer of its
/// walls.
fn off_by(floor: &Floor, suspect: &Suspect) -> Length {
    match suspect.off {
        Off::By(length) => length.abs(),
        Off::Turned(angle) => {
            let wall = |side: usize| floor.walk.steps().get(side).map_or(Length::ZERO, |step| step.length);
            let corner = match suspect.measured {
                Measured::Corner(corner) => corner,
                _ => 0,
            };
            let before = (corner + floor.sides.len()).saturating_sub(1) % floor.sides.len().max(1);
            at_the_end(wall(before).max(wall(corner)), angle)
        }
    }
}

fn at_the_end(wall: Length, angle: Angle) -> Length {
    wall.scaled(libm::sin(angle.abs().to_radians().min(std::f64::consts::FRAC_PI_2)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_inches_stop_and_less_does_not() {
        let off = |by: Length| Disagreement::Off { by, says: String::new() };
        assert!(!off(STOPS_AT - Length::nm(1)).stops());
        assert!(off(STOPS_AT).stops());
        assert!(off(STOPS_AT + Length::nm(1)).stops());
    }

    #[test]
    fn what_nobody_can_measure_stops_and_what_was_not_checked_says_so() {
        assert!(Disagreement::Beyond { says: String::new() }.stops());
        assert!(!Disagreement::Unchecked.stops());
        assert_eq!(Disagreement::Unchecked.says(), None);
        assert!(!Disagreement::Fits { corners_within: STOPS_AT }.stops(), "uncertain is no disagreement");
    }

    #[test]
    fn an_angle_is_off_by_what_it_moves_the_end_of_its_wall() {
        // 3 in over 10 ft is asin(3 / 120), 1.4325 degrees.
        let off = at_the_end(Length::feet(10), Angle::micro_degrees(-1_432_539));
        assert!((off - Length::inches(3)).abs() < Length::nm(1000), "{off:?}");
    }
}
