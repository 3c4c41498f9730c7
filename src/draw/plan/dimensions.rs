//! Dimension strings outside the walls.
//!
//! Every side offers candidates, from the one a carpenter draws first (hard by the
//! wall, the text over its middle) to makeshifts (further out, beside the string's
//! end, carried out to the room's far edge). The paper rules out those that would
//! cover something, the cheapest of the rest is taken, and a side that has none
//! gets its text at the end of a leader. Long sides choose first: they have no
//! choice but their own length, and a short one slips in anywhere.

use super::{Sketch, walls};
use crate::draw::lettering::{Lettering, Measured};
use crate::draw::px::{PxBox, Stroke, Way};
use crate::draw::{Item, Reads, Role, Spot};
use crate::engine::geometry::Point;
use crate::engine::units::Area;

/// From the wall to its string, and from one string to the next. It holds a letter
/// with a little air and the wall's own thickness.
const ROW: f64 = 18.0;
/// How far a string runs on beyond its ticks.
const OVERRUN: f64 = 4.0;
/// Half the slash's extent along each axis.
const TICK: f64 = 5.0;
/// Between a text and its string.
const AIR: f64 = 2.5;
/// Between a wall and the lines that lead out from its corner.
const CLEAR: f64 = 4.0;
/// How many rows out a string may lie.
const ROWS: u8 = 3;

/// What a makeshift costs, in rows: how much further out a plain string would have
/// to lie to be no better.
mod cost {
    /// On the outer side of its string instead of between string and wall.
    pub(super) const OUTER: f64 = 0.3;
    /// Carried out to the edge of the room.
    pub(super) const CARRIED: f64 = 0.6;
    /// And for every pixel so carried.
    pub(super) const CARRIED_PX: f64 = 0.01;
    /// Beside the end of its string.
    pub(super) const BESIDE: f64 = 1.2;
    /// Wider than its string.
    pub(super) const OVERHANGING: f64 = 1.0;
    /// Its witness lines cut short.
    pub(super) const CUT_SHORT: f64 = 0.5;
    /// For every string crossed.
    pub(super) const CROSSING: f64 = 3.0;
    /// On a leader, without a string.
    pub(super) const LED: f64 = 6.0;
}

/// A side with its text.
#[derive(Clone, Copy)]
struct Side<'a> {
    wall: Stroke,
    way: Way,
    out: Way,
    text: Measured<'a>,
}

/// A place for a string and its text.
struct Candidate {
    wall: Stroke,
    string: Stroke,
    witnesses: Option<[Stroke; 2]>,
    area: PxBox,
    reads: Reads,
    cost: f64,
}

/// A place for a text about a string, and what it costs.
struct Place {
    at: Spot,
    reads: Reads,
    cost: f64,
}

/// The height of a row of strings.
pub(super) fn row(lettering: Lettering) -> f64 {
    lettering.scaled(ROW)
}

/// The strings of all sides that have a text.
pub(super) fn draw(sketch: &mut Sketch) -> Vec<Item> {
    let mut sides = sides(sketch);
    sides.sort_by(|a, b| b.wall.length().total_cmp(&a.wall.length()));
    sides.into_iter().flat_map(|side| place(sketch, side)).collect()
}

fn sides<'a>(sketch: &Sketch<'a>) -> Vec<Side<'a>> {
    let outside = outside_is_left(sketch);
    let texts = sketch.input.walls.sides().iter();
    let walls = walls::strokes(&sketch.input.walls, &sketch.frame);
    let with_text = walls.zip(texts).filter(|(_, text)| !text.is_empty());
    with_text
        .filter_map(|(wall, text)| {
            let way = wall.way()?;
            let out = if outside { way.left() } else { way.left().back() };
            Some(Side { wall, way, out, text: sketch.lettering.measure(text) })
        })
        .collect()
}

/// On the canvas, does the outside lie to the left of somebody walking the walls?
/// An outline runs clockwise; a walk that has not come round goes the way that it
/// has mostly turned.
fn outside_is_left(sketch: &Sketch) -> bool {
    let clockwise = sketch.input.walls.outline().is_some() || turns_right(sketch.input.walls.corners());
    clockwise != sketch.frame.is_from_below()
}

fn turns_right(corners: &[Point]) -> bool {
    let sides = corners.windows(2).filter_map(|pair| if let [from, to] = pair { Some(*to - *from) } else { None });
    let turns = sides.clone().zip(sides.skip(1)).map(|(side, next)| side.cross(next).cmp(&Area::ZERO) as i64);
    turns.sum::<i64>() >= 0
}

fn place(sketch: &mut Sketch, side: Side) -> Vec<Item> {
    let best = candidates(sketch, side)
        .into_iter()
        .filter(|candidate| is_free(sketch, candidate))
        .map(|candidate| Candidate { cost: candidate.cost + crossing_cost(sketch, &candidate), ..candidate })
        .min_by(|a, b| a.cost.total_cmp(&b.cost));
    match best {
        Some(best) => drawn(sketch, side, &best),
        None => led(sketch, side),
    }
}

fn is_free(sketch: &Sketch, candidate: &Candidate) -> bool {
    // However short its witness lines are drawn, nobody carries a string through a wall.
    let sight = |corner: Spot, end: Spot| !sketch.paper.is_walled_off(Stroke::new(corner, end));
    sketch.paper.lets_string_run(candidate.string)
        && sight(candidate.wall.from, candidate.string.from)
        && sight(candidate.wall.to, candidate.string.to)
        && sketch.paper.has_room_outside_for(candidate.area)
        && candidate.witnesses.iter().flatten().all(|witness| sketch.paper.lets_line_run(*witness))
        && ticks(sketch.lettering, candidate.string).into_iter().all(|tick| sketch.paper.is_off_texts(tick))
}

/// The slashes at the ends of a string.
fn ticks(lettering: Lettering, string: Stroke) -> [Stroke; 2] {
    let by = lettering.scaled(TICK);
    let slash = |Spot { x, y }| Stroke::new(Spot { x: x - by, y: y + by }, Spot { x: x + by, y: y - by });
    [slash(string.from), slash(string.to)]
}

fn crossing_cost(sketch: &Sketch, candidate: &Candidate) -> f64 {
    let witnesses = candidate.witnesses.iter().flatten();
    let lines = witnesses.chain(std::iter::once(&candidate.string));
    lines.map(|line| sketch.paper.crossings(*line) as f64 * cost::CROSSING).sum()
}

/// All places that a side's string might take.
fn candidates(sketch: &Sketch, side: Side) -> Vec<Candidate> {
    let row = row(sketch.lettering);
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
    if off < row(sketch.lettering) + 1.0 {
        return vec![(None, 0.0)];
    }
    let end = off + sketch.lettering.scaled(OVERRUN);
    let from = |corner: Spot, start: f64| Stroke::new(corner.gone(out, start), corner.gone(out, end));
    let both = |start: f64| Some([from(wall.from, start), from(wall.to, start)]);
    let clear = sketch.lettering.scaled(CLEAR);
    vec![(both(clear), 0.0), (both(off - 3.0 * clear), cost::CUT_SHORT)]
}

fn drawn(sketch: &mut Sketch, side: Side, best: &Candidate) -> Vec<Item> {
    let lettering = sketch.lettering;
    let ticks = ticks(lettering, best.string);
    let witnesses = best.witnesses.into_iter().flatten();
    sketch.cost += best.cost;
    sketch.paper.take_string(best.string);
    sketch.paper.take_text(best.area);
    witnesses.clone().chain(ticks).for_each(|line| sketch.paper.take_line(line));
    let line = |stroke: Stroke, role| Item::Line { from: stroke.from, to: stroke.to, role };
    let string = line(best.string.stretched(lettering.scaled(OVERRUN)), Role::Dimension);
    let text = lettering.write(side.text.text, best.area.middle(), best.reads, Role::DimensionText);
    let witnesses = witnesses.map(|witness| line(witness, Role::Witness));
    witnesses.chain([string]).chain(ticks.map(|tick| line(tick, Role::Tick))).chain([text]).collect()
}

/// The text at the end of a leader from the middle of its wall, or nowhere.
fn led(sketch: &mut Sketch, side: Side) -> Vec<Item> {
    let from = side.wall.middle().gone(side.out, sketch.lettering.scaled(AIR));
    let Some(led) = sketch.paper.led_from(from, Some(side.out), side.text.width, side.text.height) else {
        sketch.unplaced.push(side.text.text.to_owned());
        return Vec::new();
    };
    sketch.cost += cost::LED + led.cost;
    sketch.paper.take_text(led.area);
    sketch.paper.take_line(led.leader);
    let leader = Item::Line { from: led.leader.from, to: led.leader.to, role: Role::Leader };
    vec![leader, sketch.lettering.write(side.text.text, led.area.middle(), Reads::Across, Role::DimensionText)]
}
