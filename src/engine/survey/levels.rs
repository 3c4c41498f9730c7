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
    let line = (0..).zip(heights).map(|(at, height)| (apart * at, *height));
    largest_gap_along(&line.collect::<Vec<_>>(), reach).unwrap_or(Length::ZERO)
}

/// The same for points along a line, each with its height, in order of where they are. None
/// where no point lies between two that the edge reaches.
pub fn largest_gap_along(line: &[(Length, Length)], reach: Length) -> Option<Length> {
    let gaps = line.iter().enumerate().flat_map(|(from, start)| {
        let ends = line.iter().enumerate().skip(from + 2);
        let ends = ends.take_while(move |(_, end)| end.0 - start.0 <= reach + ROUNDING);
        ends.flat_map(move |(to, end)| {
            let between = line.get(from + 1..to).unwrap_or_default();
            between.iter().map(move |point| (point.1 - chord(*start, *end, point.0)).abs())
        })
    });
    gaps.max()
}

/// How high a straightedge lies at a place between its ends.
fn chord(from: (Length, Length), to: (Length, Length), at: Length) -> Length {
    let part = (at - from.0).to_nm() as f64 / (to.0 - from.0).to_nm().max(1) as f64;
    from.1 + (to.1 - from.1).scaled(part)
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
