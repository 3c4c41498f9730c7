//! Joist tops as a laser shows them: shims, and how flat they lie.

use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// So far off a limit still counts as on it: a rounding of the reading.
const ROUNDING: Length = Length::nm(1);

/// What brings joists level.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shims {
    /// The highest joist, from 0.
    pub highest: usize,
    /// What each needs to come up to it.
    pub each: Vec<Length>,
}

/// How flat a floor is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Flatness {
    /// The largest gap under a straightedge.
    pub gap: Length,
    /// Is that within the limit, which counts as within?
    pub holds: bool,
}

/// What joists need to come up to the highest. Read down from the beam: more is lower.
/// None without readings. Source: [`Source::Shims`].
pub fn shims(down: &[Length]) -> Option<Known<Shims>> {
    let (highest, least) = down.iter().copied().enumerate().min_by_key(|(at, reading)| (*reading, *at))?;
    let value = Shims { highest, each: down.iter().map(|reading| *reading - least).collect() };
    let why = Why::rule("Up to the highest joist: each reading less the smallest.", &[Source::Shims]);
    let doubts =
        vec!["A laser's plane is off by about 1/8 in at 30 ft: set it once, and sight back to the start.".to_owned()];
    Some(Known { value, assumed: Vec::new(), doubts, why })
}

/// The largest gap between a floor and a straightedge from any of its points to any other,
/// as far as the edge reaches. Heights stand evenly apart.
pub fn largest_gap(heights: &[Length], apart: Length, reach: Length) -> Length {
    let window = usize::try_from((reach.to_nm() + ROUNDING.to_nm()) / apart.to_nm().max(1)).unwrap_or(0);
    let gaps = heights.iter().enumerate().flat_map(|(from, low)| {
        let ends = heights.iter().enumerate().skip(from + 2).take_while(move |(to, _)| to - from <= window);
        ends.flat_map(move |(to, high)| {
            (from + 1..to).filter_map(move |at| {
                let part = (at - from) as f64 / (to - from) as f64;
                let chord = *low + (*high - *low).scaled(part);
                Some((*heights.get(at)? - chord).abs())
            })
        })
    });
    gaps.max().unwrap_or(Length::ZERO)
}

/// Is a floor as flat as a limit asks under a straightedge of some reach? Source:
/// [`Source::Flatness`].
pub fn flatness(heights: &[Length], apart: Length, reach: Length, limit: Length) -> Known<Flatness> {
    let gap = largest_gap(heights, apart, reach);
    let why = Why::rule(
        "The largest gap between the floor and a straightedge across any two of its points.",
        &[Source::Flatness],
    );
    Known { value: Flatness { gap, holds: gap <= limit + ROUNDING }, assumed: Vec::new(), doubts: Vec::new(), why }
}
