//! Whether what was measured of the room agrees well enough to cut sheets by it.

use crate::engine::job::Job;
use crate::engine::survey::Floor;
use crate::engine::survey::adjust::{Measured, Off, Suspect, Unfixed};
use crate::engine::survey::shape::{Shape, Standing};
use crate::engine::units::Length;
use crate::engine::units::tape::{LengthStyle, format};

/// While measurements of the room disagree by so much nothing is laid (a judgement, no
/// source: it is no joint's play, and a mistyped foot is more).
pub const STOPS_AT: Length = Length::inches(3);

/// What disagrees so far that nothing is laid on it, in words; none if nothing does.
pub fn disagrees(job: &Job) -> Option<String> {
    let floor = Floor::of(job)?;
    let standing = Shape::standing(job, floor.clone());
    let by = match &standing {
        Standing::Unfixed(Unfixed::Restless) => return standing.complaint(),
        // What was walked is laid as it was walked, if it came round.
        Standing::AsWalked | Standing::Unfixed(_) => {
            floor.walk.turned_round().map(|_| floor.walk.closing_error().misclosure())
        }
        Standing::Known(shape) => Some(misfit(&floor, shape)),
    };
    let by = by.filter(|by| stops(*by))?;
    let complaint = standing.complaint().map_or_else(|| "its sides miss their start".to_owned(), |complaint| complaint);
    let by = format(by, LengthStyle::default());
    Some(format!("what was measured of the room disagrees by {}: {complaint}", by.unmarked()))
}

/// Does a disagreement of so much stop the laying?
fn stops(by: Length) -> bool {
    by >= STOPS_AT
}

/// How far a room is off: by what is accused, and by what the best outline leaves of any
/// length.
fn misfit(floor: &Floor, shape: &Shape) -> Length {
    let accused = shape.adjusted.verdict.iter().flat_map(|verdict| &verdict.suspects);
    let accused = accused.map(|suspect| off_by(floor, suspect));
    let left = shape.adjusted.checked.iter().map(|checked| match checked.residual {
        Off::By(length) => length.abs(),
        Off::Turned(_) => Length::ZERO,
    });
    accused.chain(left).max().unwrap_or(Length::ZERO)
}

/// How far one measurement is off; an angle by what that comes to at the end of the longer
/// of its walls.
fn off_by(floor: &Floor, suspect: &Suspect) -> Length {
    match (suspect.off, suspect.measured) {
        (Off::By(length), _) => length.abs(),
        (Off::Turned(angle), Measured::Corner(corner)) => {
            let wall = |side: usize| floor.walk.steps().get(side).map_or(Length::ZERO, |step| step.length);
            let before = corner.checked_sub(1).unwrap_or(floor.sides.len().saturating_sub(1));
            wall(before).max(wall(corner)).scaled(libm::sin(angle.abs().to_radians().min(core::f64::consts::FRAC_PI_2)))
        }
        (Off::Turned(_), _) => Length::ZERO,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_inches_stop_and_a_nanometre_less_does_not() {
        assert!(!stops(STOPS_AT - Length::nm(1)));
        assert!(stops(STOPS_AT));
        assert!(stops(STOPS_AT + Length::nm(1)));
    }
}
