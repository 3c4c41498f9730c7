//! Dimension strings outside the walls.
//!
//! Every side offers candidates, from the one a carpenter draws first (hard by the
//! wall, the text over its middle) to makeshifts (further out, beside the string's
//! end, carried out to the room's far edge). The paper rules out those that would
//! cover something, the cheapest of the rest is taken, and a side that has none
//! gets its text at the end of a leader. Long sides choose first: they have no
//! choice but their own length, and a short one slips in anywhere.

mod candidates;

use super::{Sketch, walls};
use crate::draw::lettering::Lettering;
use crate::draw::paper::{Led, Region};
use crate::draw::px::{Stroke, Way};
use crate::draw::{Item, Reads, Role, Spot};
use crate::engine::geometry::Point;
use crate::engine::units::Area;
use crate::order;
use candidates::{AIR, Candidate, OVERRUN, ROW, Side, candidates, cost, ticks};

/// How much of a slash's tip may reach into the box of a text, which is taller than
/// its digits.
const TICK_GRACE: f64 = 2.0;
/// The height of a row of strings.
pub(super) fn row(lettering: Lettering) -> f64 {
    lettering.scaled(ROW)
}

/// The strings of all sides that have a text.
pub(super) fn draw(sketch: &mut Sketch) -> Vec<Item> {
    let mut sides = sides(sketch);
    order::sort_by(&mut sides, |a, b| b.wall.length().total_cmp(&a.wall.length()));
    sides.into_iter().flat_map(|side| place(sketch, side)).collect()
}

fn sides<'a>(sketch: &Sketch<'a>) -> Vec<Side<'a>> {
    let outside_is_left = outside_is_left(sketch);
    let texts = sketch.input.walls.sides().iter();
    let walls = walls::strokes(&sketch.input.walls, &sketch.frame);
    let with_text = walls.zip(texts).filter(|(_, text)| !text.is_empty());
    with_text.map(|(wall, text)| Side::new(wall, outside_is_left, sketch.lettering.measure(text))).collect()
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
    match cheapest(sketch, candidates(sketch, side)) {
        Some(best) => drawn(sketch, side, &best),
        None => led(sketch, side),
    }
}

/// The cheapest candidate that is free, what it crosses counted.
fn cheapest(sketch: &Sketch, mut candidates: Vec<Candidate>) -> Option<Candidate> {
    order::sort_by(&mut candidates, |a, b| a.cost.total_cmp(&b.cost));
    let mut best: Option<Candidate> = None;
    for candidate in candidates {
        if best.as_ref().is_some_and(|best| best.cost <= candidate.cost) {
            break;
        }
        if !is_free(sketch, &candidate) {
            continue;
        }
        let candidate = Candidate { cost: candidate.cost + crossing_cost(sketch, &candidate), ..candidate };
        if best.as_ref().is_none_or(|best| candidate.cost < best.cost) {
            best = Some(candidate);
        }
    }
    best
}

fn is_free(sketch: &Sketch, candidate: &Candidate) -> bool {
    // However short its witness lines are drawn, nobody carries a string through a wall.
    let sight = |corner: Spot, end: Spot| !sketch.paper.is_walled_off(Stroke::new(corner, end));
    sketch.paper.lets_string_run(candidate.string)
        && sight(candidate.wall.from, candidate.string.from)
        && sight(candidate.wall.to, candidate.string.to)
        && sketch.paper.has_room_outside_for(candidate.area)
        && candidate.witnesses.iter().flatten().all(|witness| sketch.paper.lets_line_run(*witness))
        && ticks(sketch.lettering, candidate.string)
            .into_iter()
            .all(|tick| sketch.paper.is_off_texts(tick.stretched(-TICK_GRACE)))
}

fn crossing_cost(sketch: &Sketch, candidate: &Candidate) -> f64 {
    let witnesses = candidate.witnesses.iter().flatten();
    let lines = witnesses.chain(std::iter::once(&candidate.string));
    lines.map(|line| sketch.paper.crossings(*line) as f64 * cost::CROSSING).sum()
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
    let Some((led, cost)) = place_led(sketch, side) else {
        sketch.unplaced.push(side.text.text.to_owned());
        return Vec::new();
    };
    sketch.cost += cost + led.cost;
    sketch.paper.take_text(led.area);
    sketch.paper.take_line(led.leader);
    let leader = Item::Line { from: led.leader.from, to: led.leader.to, role: Role::Leader };
    vec![leader, sketch.lettering.write(side.text.text, led.area.middle(), Reads::Across, Role::DimensionText)]
}

/// Outside if possible; in a closed room inside if not.
fn place_led(sketch: &Sketch, Side { wall, out, text, .. }: Side) -> Option<(Led, f64)> {
    let clear = sketch.lettering.scaled(AIR);
    let from =
        |way: Way, region| sketch.paper.led_from(wall.middle().gone(way, clear), region, text.width, text.height);
    if sketch.input.walls.outline().is_none() {
        return from(out, Region::Ahead(out)).map(|led| (led, cost::LED));
    }
    let outdoors = from(out, Region::Outdoors).map(|led| (led, cost::LED));
    outdoors.or_else(|| from(out.back(), Region::Indoors).map(|led| (led, cost::LED + cost::INDOORS)))
}
