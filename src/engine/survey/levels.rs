//! Joist tops as a laser shows them: shims, and how flat they lie.

#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// So far off a limit still counts as on it: a rounding of the reading.
const ROUNDING: Length = Length::nm(1);

/// The number, from 0, of the highest joist, and what each needs to come up to it. Read
/// down from the beam: more is lower. None without readings. Source: [`Source::Shims`].
pub fn shims(down: &[Length]) -> Option<(usize, Vec<Length>)> {
    let (highest, least) = down.iter().copied().enumerate().min_by_key(|(at, reading)| (*reading, *at))?;
    Some((highest, down.iter().map(|reading| *reading - least).collect()))
}

/// The largest gap between a floor and a straightedge from any of its points to any other,
/// as far as the edge reaches. Heights stand evenly apart. Source: [`Source::Flatness`].
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

/// Is a floor as flat as a limit asks, within so much of it? Inclusive.
pub fn is_flat(heights: &[Length], apart: Length, reach: Length, limit: Length) -> bool {
    largest_gap(heights, apart, reach) <= limit + ROUNDING
}
