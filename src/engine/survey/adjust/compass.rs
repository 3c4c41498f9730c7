//! The compass rule: a walk's gap shared out over its legs by their lengths.
//!
//! It is the least-squares answer when both errors of a leg, along x and along y, are
//! independent and their variance grows with its length: the sum of `v² / L` is least,
//! for residuals that add up to the gap, where `v / L` is the same for all.
//!
//! Source: the compass (Bowditch) rule, as published in surveying notes.

use crate::engine::geometry::Vector;
use crate::engine::units::Length;

/// A leg of a walk: where it goes, and how long it was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Leg {
    /// Where it goes.
    pub goes: Vector,
    /// How long it is.
    pub length: Length,
}

/// The legs of a closed walk with their gap shared out, to the nanometre.
pub fn compass(legs: &[Leg]) -> Vec<Vector> {
    let sum = |pick: fn(&Leg) -> Length| legs.iter().map(pick).sum::<Length>();
    let (gap_x, gap_y, whole) = (sum(|leg| leg.goes.dx), sum(|leg| leg.goes.dy), sum(|leg| leg.length));
    let (mut walked, mut given) = (Length::ZERO, Vector { dx: Length::ZERO, dy: Length::ZERO });
    let mut balanced = Vec::with_capacity(legs.len());
    for leg in legs {
        walked = walked + leg.length;
        // What the walk up to here has given back, less what it had before: so nothing
        // is lost to rounding, and the balanced legs close exactly.
        let upto = Vector { dx: share(gap_x, walked, whole), dy: share(gap_y, walked, whole) };
        balanced.push(Vector { dx: leg.goes.dx - (upto.dx - given.dx), dy: leg.goes.dy - (upto.dy - given.dy) });
        given = upto;
    }
    balanced
}

fn share(gap: Length, walked: Length, whole: Length) -> Length {
    let part = i128::from(gap.to_nm()) * i128::from(walked.to_nm());
    let share = part.checked_div(i128::from(whole.to_nm())).unwrap_or_default();
    Length::nm(i64::try_from(share).unwrap_or_default())
}
