//! Whether everything measured of a room agrees.

use super::adjust::{Checked, Measured, Off};
use super::disagreement::of_standing;
use super::shape::{Shape, Standing};
use super::{Floor, inside};
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::tape::{InchStep, LengthStyle, format};
use crate::engine::units::{Angle, Length};

/// How a room's measurements agree.
#[derive(Debug, Clone, PartialEq)]
pub struct Agreement {
    /// What disagrees, in words; none when nothing does.
    pub complaint: Option<String>,
    /// Is it so much that nothing may be cut by it?
    pub stops: bool,
    /// What the log holds outside the room, each in a sentence.
    pub outside: Vec<String>,
}

/// Does everything measured of the room fit one outline, as well as instruments allow?
/// Source: least squares and data snooping (see [`super::adjust`]).
pub fn agreement(job: &Job) -> Figure<Agreement> {
    let Some(floor) = Floor::of(job) else { return Figure::Missing(vec![Need::RoomOutline]) };
    let standing = Shape::standing(job, floor.clone());
    let disagreement = of_standing(&floor, &standing);
    let complaint = disagreement.says().map(ToOwned::to_owned);
    let outside = inside::told(job, Units::default());
    let value = Agreement { complaint, stops: disagreement.stops(), outside };
    let shape = match standing {
        Standing::Known(shape) => shape,
        // Nothing fits, and that is an answer.
        Standing::Unfixed(_) | Standing::AsWalked if value.complaint.is_some() => {
            let rule = "No outline fits everything that was measured";
            let why = Why::rule(rule, &SOURCES).using(floor.sides.iter().copied());
            return Figure::known(value, why);
        }
        Standing::AsWalked => return Figure::Missing(vec![Need::RoomOutline]),
        Standing::Unfixed(_) => return Figure::Missing(vec![Need::FixedOutline]),
    };
    let mut doubts = Vec::new();
    if !shape.is_checked() {
        let within = format(shape.adjusted.corners_within, ROUGHLY);
        doubts.push(format!(
            "Only sides were measured, so that corners are known to about {}: a diagonal or two would check them, and say which one is wrong.",
            within.unmarked()
        ));
    }
    Figure::Known(Known { value, assumed: shape.assumed(job), doubts, why: why(&shape) })
}

const SOURCES: [Source; 3] = [Source::LeastSquares, Source::DataSnooping, Source::Accuracies];

/// How well corners are known is itself known only roughly.
const ROUGHLY: LengthStyle = LengthStyle::inches(InchStep::Quarter);

fn why(shape: &Shape) -> Why {
    let mut why = Why::rule("The outline that fits all measurements best, and how far each is off it", &SOURCES);
    for checked in &shape.adjusted.checked {
        why = why.with(checked.measured.to_string(), residual(checked));
    }
    for (side, (off, sigma)) in shape.adjusted.out_of_square.iter().enumerate() {
        let corner = Measured::Corner((side + 1) % shape.corners.len());
        why = why.with(
            format!("{corner}, adjusted"),
            format!("{:+.2}°, known to {:.2}°", off.to_degrees(), sigma.to_degrees()),
        );
    }
    why.using(shape.entries.iter().flatten().copied())
}

/// How far a measurement is off, and how well it is known after all.
fn residual(checked: &Checked) -> String {
    let short = match checked.residual {
        Off::By(length) => length < Length::ZERO,
        Off::Turned(angle) => angle < Angle::ZERO,
    };
    format!("{}{}, known to {}", if short { "−" } else { "+" }, checked.residual, checked.sigma)
}
