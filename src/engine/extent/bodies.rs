//! Bodies of wet wood with one cause each: a patch under a leak, a strip along a wall.
//!
//! Wood that wanders about one mean cannot say how likely it is that a wet patch lies
//! between dry readings. That a floor somebody crawls under has such a body is likely;
//! where it can hide, the readings tell.

use super::variogram::distance;
use crate::engine::extent::field::feet;
use crate::engine::geometry::{Outline, Segment};

/// How likely it is, before anything is read, that there is none, a patch, a strip; and
/// the same of a second (judgement).
pub const NONE: f64 = 0.34;
const PATCH: f64 = 0.33;
const STRIP: f64 = 0.33;

/// How high a body stands above the wood about it, percent points, and the standard
/// deviation of that (judgement).
pub const HEIGHT: f64 = 10.0;
pub const HEIGHT_SPREAD: f64 = 5.0;

/// How far patches reach, feet (judgement).
const RADII: [f64; 3] = [1.5, 2.5, 4.0];

/// How far strips reach from their wall, feet (judgement).
const REACHES: [f64; 3] = [1.0, 2.0, 3.5];

/// Which part of its wall a strip is along: the middle of it and half its length, as
/// parts of the wall, with how likely that is (judgement). The first is all of it.
const PARTS: [(f64, f64, f64); 3] = [(0.5, f64::INFINITY, 0.6), (0.25, 0.3, 0.2), (0.75, 0.3, 0.2)];

/// Patches are tried so many feet apart; on large floors so that there are about so many
/// places.
const APART: f64 = 2.0;
const PLACES: f64 = 60.0;

/// Walls shorter than this, in feet, and all beyond the longest so many have no strip.
const SHORTEST_WALL: f64 = 2.0;
const MOST_WALLS: usize = 12;

/// Something wet, at its highest 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Body {
    /// Around a point.
    Patch {
        /// Its middle.
        middle: [f64; 2],
        /// Where it has fallen to a third.
        radius: f64,
    },
    /// Along a wall.
    Strip {
        /// Where the wall starts.
        from: [f64; 2],
        /// Where it ends.
        to: [f64; 2],
        /// How far from the wall it has fallen to a third.
        reach: f64,
        /// The middle of its part of the wall.
        middle: f64,
        /// Half of that part.
        half: f64,
    },
}

impl Body {
    /// How much of its height it has at a place.
    pub fn at(&self, place: [f64; 2]) -> f64 {
        match *self {
            Self::Patch { middle, radius } => {
                let away = distance(middle, place) / radius;
                libm::exp(-away * away)
            }
            Self::Strip { from, to, reach, middle, half } => {
                let (along, away) = beside(from, to, place);
                let off = (along - middle) / half;
                libm::exp(-away / reach - off * off * off * off)
            }
        }
    }

    /// All that are tried on a floor, each with how likely it is before anything is read.
    pub fn on(outline: &Outline) -> Vec<(Self, f64)> {
        let (patches, strips) = (patches(outline), strips(outline));
        let of_patches = PATCH / patches.len().max(1) as f64;
        let of_all_strips: f64 = strips.iter().map(|(_, part)| part).sum();
        let patches = patches.into_iter().map(|patch| (patch, of_patches));
        let strips = strips.into_iter().map(|(strip, part)| (strip, STRIP * part / of_all_strips));
        patches.chain(strips).collect()
    }
}

/// How far along a wall a place lies, as a part of it, and how far from it.
fn beside(from: [f64; 2], to: [f64; 2], place: [f64; 2]) -> (f64, f64) {
    let (wall, out) = ([to[0] - from[0], to[1] - from[1]], [place[0] - from[0], place[1] - from[1]]);
    let square = wall[0] * wall[0] + wall[1] * wall[1];
    let along = ((wall[0] * out[0] + wall[1] * out[1]) / square.max(1e-9)).clamp(0.0, 1.0);
    (along, distance(place, [from[0] + along * wall[0], from[1] + along * wall[1]]))
}

fn patches(outline: &Outline) -> Vec<Body> {
    let (least, most) = (feet(outline.bounds().least()), feet(outline.bounds().most()));
    let size = [most[0] - least[0], most[1] - least[1]];
    let apart = libm::sqrt(size[0] * size[1] / PLACES).max(APART);
    let [columns, rows] = size.map(|size| libm::round(size / apart).max(1.0));
    let middle = |column: usize, row: usize| {
        let part = |at: usize, of: f64| (at as f64 + 0.5) / of;
        [least[0] + part(column, columns) * size[0], least[1] + part(row, rows) * size[1]]
    };
    let middles = (0..rows as usize).flat_map(|row| (0..columns as usize).map(move |column| middle(column, row)));
    let of = |middle: [f64; 2]| RADII.into_iter().map(move |radius| Body::Patch { middle, radius });
    middles.flat_map(of).collect()
}

fn strips(outline: &Outline) -> Vec<(Body, f64)> {
    let ends = |side: Segment| (feet(side.from), feet(side.to));
    let mut walls: Vec<_> =
        outline.sides().map(ends).filter(|wall| distance(wall.0, wall.1) >= SHORTEST_WALL).collect();
    walls.sort_by(|a, b| distance(b.0, b.1).total_cmp(&distance(a.0, a.1)));
    walls.truncate(MOST_WALLS);
    let of = |(from, to): ([f64; 2], [f64; 2])| {
        REACHES.into_iter().flat_map(move |reach| {
            PARTS.into_iter().map(move |(middle, half, part)| (Body::Strip { from, to, reach, middle, half }, part))
        })
    };
    walls.into_iter().flat_map(of).collect()
}
