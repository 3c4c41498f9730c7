//! Where a side's dimension string and its text might go, and what each place costs.

use crate::draw::lettering::{Lettering, Measured};
use crate::draw::plan::Sketch;
use crate::draw::px::{PxBox, Stroke, Way};
use crate::draw::{Reads, Spot};

/// From the wall to its string, and from one string to the next. It holds a letter
/// with a little air and the wall's own thickness.
pub(super) const ROW: f64 = 18.0;
/// How far a string runs on beyond its ticks.
pub(super) const OVERRUN: f64 = 4.0;
/// Half the slash's extent along each axis.
const TICK: f64 = 5.0;
/// Between a text and its string.
pub(super) const AIR: f64 = 2.5;
/// Between a wall and the lines that lead out from its corner.
const CLEAR: f64 = 4.0;
/// How long witness lines remain that are cut short.
const CUT_SHORT: f64 = 12.0;
/// How many rows out a string may lie.
const ROWS: u8 = 3;

/// What a makeshift costs, in rows: how much further out a plain string would have
/// to lie to be no better.
pub(super) mod cost {
    /// On the outer side of its string instead of between string and wall.
    pub const OUTER: f64 = 0.3;
    /// Carried out to the edge of the room.
    pub const CARRIED: f64 = 0.6;
    /// And for every pixel so carried.
    pub const CARRIED_PX: f64 = 0.01;
    /// Beside the end of its string.
    pub const BESIDE: f64 = 1.2;
    /// Wider than its string.
    pub const OVERHANGING: f64 = 1.0;
    /// Its witness lines cut short.
    pub const CUT_SHORT: f64 = 0.5;
    /// For every string crossed.
    pub const CROSSING: f64 = 3.0;
    /// On a leader, without a string.
    pub const LED: f64 = 6.0;
    /// And that inside the room.
    pub const INDOORS: f64 = 4.0;
}

/// A side with its text.
#[derive(Clone, Copy)]
pub(super) struct Side<'a> {
    pub(super) wall: Stroke,
    pub(super) way: Way,
    pub(super) out: Way,
    pub(super) text: Measured<'a>,
}

/// A place for a string and its text.
pub(super) struct Candidate {
    pub(super) wall: Stroke,
    pub(super) string: Stroke,
    pub(super) witnesses: Option<[Stroke; 2]>,
    pub(super) area: PxBox,
    pub(super) reads: Reads,
    pub(super) cost: f64,
}

/// A place for a text about a string, and what it costs.
struct Place {
    at: Spot,
    reads: Reads,
    cost: f64,
}

impl<'a> Side<'a> {
    pub(super) fn new(wall: Stroke, outside_is_left: bool, text: Measured<'a>) -> Self {
        // A side without length, which a walk may have, runs no way: any will do.
        let way = wall.way().unwrap_or(Way { x: 1.0, y: 0.0 });
        let out = if outside_is_left { way.left() } else { way.left().back() };
        Self { wall, way, out, text }
    }
}

/// All places that a side's string might take.
pub(super) fn candidates(sketch: &Sketch, side: Side) -> Vec<Candidate> {
    let row = sketch.lettering.scaled(ROW);
    let near = (0..ROWS).map(|n| (f64::from(n + 1) * row, f64::from(n)));
    let edge = to_edge(sketch, side);
    let carried = (0..ROWS).filter(|_| edge > 1.0).map(|n| {
        let cost = f64::from(n) + cost::CARRIED + edge * cost::CARRIED_PX;
        (edge + f64::from(n + 1) * row, cost)
    });
    near.chain(carried).flat_map(|(off, cost)| about_string(sketch, side, off, cost)).collect()
}

/// How far it is from a side along an axis to the edge of all that is drawn.
fn to_edge(sketch: &Sketch, Side { wall, out, .. }: Side) -> f64 {
    let PxBox { left, top, right, bottom } = sketch.bounds;
    let at = wall.middle();
    match (out.x, out.y) {
        (x, _) if x > 0.999 => right - at.x,
        (x, _) if x < -0.999 => at.x - left,
        (_, y) if y > 0.999 => bottom - at.y,
        (_, y) if y < -0.999 => at.y - top,
        _ => 0.0,
    }
}

/// All that can be done with a string `off` pixels from its wall.
fn about_string(sketch: &Sketch, side: Side, off: f64, base: f64) -> Vec<Candidate> {
    let string = side.wall.moved(side.out, off);
    let places =
        over_string(sketch.lettering, side, string).into_iter().chain(beside_string(sketch.lettering, side, string));
    let witnessed = witnesses(sketch, side, off);
    let candidates = places.flat_map(|Place { at, reads, cost }| {
        let area = side.text.around(at, reads);
        let with = |&(witnesses, more)| Candidate {
            wall: side.wall,
            string,
            witnesses,
            area,
            reads,
            cost: base + cost + more,
        };
        witnessed.iter().map(with).collect::<Vec<_>>()
    });
    candidates.collect()
}

/// The places of a text over its string's middle.
fn over_string(lettering: Lettering, Side { way, out, text, .. }: Side, string: Stroke) -> [Place; 2] {
    let (along, middle) = (reads_along(way), string.middle());
    let (air, tick) = (lettering.scaled(AIR), lettering.scaled(TICK));
    let over = air + text.height / 2.0;
    if text.width <= string.length() - 2.0 * tick {
        let inner = Place { at: middle.gone(out, -over), reads: along, cost: 0.0 };
        return [inner, Place { at: middle.gone(out, over), reads: along, cost: cost::OUTER }];
    }
    // It hangs over both ends, where the ticks stand out.
    let half = text.half_along(out, Reads::Across);
    let turned = Place { at: middle.gone(out, over + tick - air), reads: along, cost: cost::OVERHANGING };
    [turned, Place { at: middle.gone(out, tick + air + half), reads: Reads::Across, cost: cost::OVERHANGING }]
}

/// The places of a text in line with its string, beyond either end.
fn beside_string(lettering: Lettering, Side { way, text, .. }: Side, string: Stroke) -> impl Iterator<Item = Place> {
    [reads_along(way), Reads::Across].into_iter().flat_map(move |reads| {
        let beyond = lettering.scaled(OVERRUN + AIR) + text.half_along(way, reads);
        let ends = [string.to.gone(way, beyond), string.from.gone(way, -beyond)];
        ends.map(|at| Place { at, reads, cost: cost::BESIDE })
    })
}

const fn reads_along(way: Way) -> Reads {
    if way.is_across() { Reads::Across } else { Reads::Up }
}

/// The lines out to a string that does not lie hard by its wall, with what they
/// cost: all the way from the wall, or only the last of it where something stands
/// between, such as the joists' numbers.
fn witnesses(sketch: &Sketch, Side { wall, out, .. }: Side, off: f64) -> Vec<(Option<[Stroke; 2]>, f64)> {
    if off < sketch.lettering.scaled(ROW) + 1.0 {
        return vec![(None, 0.0)];
    }
    let end = off + sketch.lettering.scaled(OVERRUN);
    let from = |corner: Spot, start: f64| Stroke::new(corner.gone(out, start), corner.gone(out, end));
    let both = |start: f64| Some([from(wall.from, start), from(wall.to, start)]);
    let clear = sketch.lettering.scaled(CLEAR);
    vec![(both(clear), 0.0), (both(off - sketch.lettering.scaled(CUT_SHORT)), cost::CUT_SHORT)]
}

/// The slashes at the ends of a string.
pub(super) fn ticks(lettering: Lettering, string: Stroke) -> [Stroke; 2] {
    let by = lettering.scaled(TICK);
    let slash = |Spot { x, y }| Stroke::new(Spot { x: x - by, y: y + by }, Spot { x: x + by, y: y - by });
    [slash(string.from), slash(string.to)]
}
