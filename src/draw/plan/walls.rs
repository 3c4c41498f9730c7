//! The walls on the canvas.

use super::{Sketch, Walls};
use crate::draw::px::Stroke;
use crate::draw::{Frame, Item, Role, Spot};

/// The walls in pixels.
pub(super) struct OnCanvas {
    pub(super) strokes: Vec<Stroke>,
    /// The corners, if the room is closed.
    pub(super) room: Vec<Spot>,
}

pub(super) fn on_canvas(walls: &Walls, frame: &Frame) -> OnCanvas {
    let spots: Vec<_> = walls.corners().iter().map(|corner| frame.spot(*corner)).collect();
    let strokes = strokes(walls, frame).collect();
    OnCanvas { strokes, room: if walls.outline().is_some() { spots } else { Vec::new() } }
}

/// The sides in turn, as many as are walked or all of a closed room.
pub(super) fn strokes(walls: &Walls, frame: &Frame) -> impl Iterator<Item = Stroke> {
    let corners = walls.corners();
    let sides = if walls.outline().is_some() { corners.len() } else { corners.len().saturating_sub(1) };
    let ends = corners.iter().cycle().skip(1);
    corners.iter().zip(ends).take(sides).map(|(from, to)| Stroke::new(frame.spot(*from), frame.spot(*to)))
}

pub(super) fn floor(sketch: &Sketch) -> Vec<Item> {
    let closed = sketch.input.walls.outline().is_some();
    closed.then(|| Item::Path { spots: spots(sketch), closed, role: Role::Floor }).into_iter().collect()
}

pub(super) fn lines(sketch: &Sketch) -> Vec<Item> {
    let spots = spots(sketch);
    if sketch.input.walls.outline().is_some() {
        return vec![Item::Path { spots, closed: true, role: Role::Wall }];
    }
    let disc = |at: &Spot, px, role| Item::Disc { at: *at, radius: sketch.lettering.scaled(px), fill: None, role };
    let start = spots.first().map(|at| disc(at, 3.0, Role::WallStart));
    let end = spots.last().filter(|_| spots.len() > 1).map(|at| disc(at, 5.0, Role::WallEnd));
    let line = (spots.len() > 1).then(|| Item::Path { spots: spots.clone(), closed: false, role: Role::WallOpen });
    line.into_iter().chain(start).chain(end).collect()
}

fn spots(sketch: &Sketch) -> Vec<Spot> {
    sketch.input.walls.corners().iter().map(|corner| sketch.frame.spot(*corner)).collect()
}
