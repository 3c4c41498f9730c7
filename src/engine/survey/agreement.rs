//! Whether everything measured of a room agrees.

use super::Floor;
use super::adjust::{Checked, Measured, Off, Verdict};
use super::shape::{Shape, Standing};
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::sources::Source;
use crate::engine::units::{Angle, Length};

/// How a room's measurements agree.
#[derive(Debug, Clone, PartialEq)]
pub struct Agreement {
    /// What disagrees, in words; none when nothing does.
    pub complaint: Option<String>,
}

/// Does everything measured of the room fit one outline, as well as instruments allow?
/// Source: least squares and data snooping (see [`super::adjust`]).
pub fn agreement(job: &Job) -> Figure<Agreement> {
    let Some(floor) = Floor::of(job) else { return Figure::Missing(vec![Need::RoomOutline]) };
    let shape = match Shape::standing(job, floor) {
        Standing::AsWalked => return Figure::Missing(vec![Need::RoomOutline]),
        Standing::Unfixed(_) => return Figure::Missing(vec![Need::FixedOutline]),
        Standing::Known(shape) => shape,
    };
    let complaint = shape.adjusted.verdict.as_ref().map(Verdict::to_string);
    let mut doubts = Vec::new();
    if !shape.is_checked() {
        doubts.push(
            "Only sides were measured: a diagonal or two would check them, and say which one is wrong.".to_owned(),
        );
    }
    Figure::Known(Known { value: Agreement { complaint }, assumed: shape.assumed(job), doubts, why: why(&shape) })
}

fn why(shape: &Shape) -> Why {
    let sources = [Source::LeastSquares, Source::DataSnooping, Source::Accuracies];
    let mut why = Why::rule("The outline that fits all measurements best, and how far each is off it", &sources);
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
