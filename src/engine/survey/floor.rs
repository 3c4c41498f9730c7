//! A room's floor, put together from what was measured.

use super::{Corner, Framing, Opening, Side};
use crate::engine::entry::EntryId;
use crate::engine::geometry::{Axis, Heading, Outline, Point, Problem, Rect, Step, Walk};
use crate::engine::job::{Job, Shelf};
use crate::engine::place::{JoistNumber, Place, Position};
use crate::engine::units::{Angle, Length};
use crate::order;
use litemap::LiteMap;

/// A room's floor as far as it has been measured. Derived from the job, never kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Floor {
    /// The room.
    pub room: EntryId,
    /// Its sides in walking order.
    pub sides: Vec<EntryId>,
    /// The walk along them.
    pub walk: Walk,
    /// The outline, or what keeps the walk from being one.
    pub outline: Result<Outline, Vec<Problem>>,
    /// The openings that could be placed, in log order.
    pub openings: Vec<(EntryId, Rect)>,
    /// The whole floor comes out, by this entry.
    pub whole: Option<EntryId>,
    /// What stands in the floor and could be placed, in log order.
    pub obstacles: Vec<(EntryId, Rect)>,
    /// The joists under the room, if they were laid out.
    pub joists: Option<Framing>,
    /// The corners that all of that was placed from.
    corners: Vec<Point>,
}

impl Floor {
    /// The floor of the job's room; of several the one begun first.
    pub fn of(job: &Job) -> Option<Self> {
        let room = *job.now.rooms().first()?.0;
        Some(Self::of_room(job, room))
    }

    /// The floor of one room.
    pub fn of_room(job: &Job, room: EntryId) -> Self {
        let sides = sides_in_order(job, room);
        let walk = walk(job, &sides);
        let outline = Outline::close(&walk).map(|closed| closed.outline);
        let whole = job.now.whole_floors().iter().find(|(_, whole)| whole.value.room == room).map(|(id, _)| *id);
        let joists = Framing::under(job, room);
        let corners = walk.corners();
        let (openings, obstacles) = (Vec::new(), Vec::new());
        Self { room, sides, outline, openings, whole, obstacles, joists, walk, corners: Vec::new() }
            .placed(job, corners)
    }

    /// The floor with its rectangles placed from these corners.
    #[must_use]
    pub fn placed(mut self, job: &Job, corners: Vec<Point>) -> Self {
        self.corners = corners;
        let placing = Placing::new(&self);
        let openings = job.now.openings().iter().filter_map(|(id, it)| Some((*id, placing.rect(it.value)?)));
        let obstacles = job.now.obstacles().iter().filter_map(|(id, it)| Some((*id, placing.rect(&it.value.takes)?)));
        (self.openings, self.obstacles) = (openings.collect(), obstacles.collect());
        self
    }

    /// An opening cut so wide along the joists, from the edge that it was placed by; no
    /// narrower than it was placed. None without joists or the opening.
    pub(super) fn ripped(&self, job: &Job, opening: EntryId, width: Length) -> Option<Rect> {
        let run = self.joists.as_ref()?.run();
        let mut opening = job.now.openings().get(&opening)?.value.clone();
        let placing = Placing::new(self);
        let side_runs_along = placing.axis(opening.from)? == run.axis();
        let along_joists = if side_runs_along { &mut opening.length } else { &mut opening.width };
        along_joists.value = along_joists.value.max(width);
        placing.rect(&opening)
    }

    /// The rectangle of an opening that need not be logged.
    pub(super) fn place(&self, opening: &Opening) -> Option<Rect> {
        Placing::new(self).rect(opening)
    }

    /// Does the room lie on the right of its walk?
    pub(super) fn is_inward_right(&self) -> bool {
        self.walk.turned() >= Angle::ZERO
    }

    /// The corners that all of it is placed from, in walking order, each once.
    pub(super) fn placed_corners(&self) -> &[Point] {
        self.corners.get(..self.sides.len()).unwrap_or(&self.corners)
    }

    /// What was last said of the corner that a side starts at.
    pub fn corner(job: &Job, side: EntryId) -> Option<(EntryId, &Corner)> {
        let said = job.now.corners().iter().rev().find(|(_, corner)| corner.value.at == side);
        said.map(|(id, corner)| (*id, corner.value))
    }

    /// The number, from 1, of the corner that a side starts at.
    pub fn corner_number(job: &Job, side: EntryId) -> Option<usize> {
        let room = job.now.sides().get(&side)?.value.room;
        Self::of_room(job, room).sides.iter().position(|other| *other == side).map(|before| before + 1)
    }

    /// How many sides stand before one that is put in after `after`: all of them, unless
    /// that is one of them.
    pub fn sides_before(&self, after: Option<EntryId>) -> usize {
        let at = self.sides.iter().position(|side| Some(*side) == after);
        at.map_or(self.sides.len(), |at| at + 1)
    }

    /// Where a place is on the plan, if that can be said.
    pub fn locate(&self, place: &Place) -> Option<Point> {
        match &place.position {
            Position::OnPlan { right, down } => Some(Point::new(right.value, down.value)),
            Position::OnJoist { joist, along: Some(along) } => {
                let joists = self.joists.as_ref()?;
                let across = joists.center(joist.get());
                Some(joists.run().point(across, self.starts(*joist).0 + along.value))
            }
            Position::OnJoist { joist, along: None } => {
                let joists = self.joists.as_ref()?;
                let (along, _) = self.end(*joist, place.face?)?;
                Some(joists.run().point(joists.center(joist.get()), along))
            }
            Position::Named => None,
        }
    }
}

impl Floor {
    /// The joist nearest to a point of the plan, and how far along it the point is, from where
    /// distances along it start. None
    /// before the joists are laid out.
    pub fn nearest_joist(&self, point: Point) -> Option<(JoistNumber, Length)> {
        let joists = self.joists.as_ref()?;
        let joist = joists.nearest(point)?;
        Some((joist, (joists.run().along(point) - self.starts(joist).0).max(Length::ZERO)))
    }
}

/// A room's sides in walking order. Each side says which one it follows; of two that
/// follow the same one the later comes first, so that a side put in later lands where
/// it was put. A side that names no earlier side of this room starts the walk.
fn sides_in_order(job: &Job, room: EntryId) -> Vec<EntryId> {
    let mut following = followers(job, room);
    // Depth first, by a stack: each list is in ascending order and popped from its end.
    let mut order = Vec::new();
    let mut open = following.remove(&None).unwrap_or_default();
    while let Some(id) = open.pop() {
        order.push(id);
        open.extend(following.remove(&Some(id)).unwrap_or_default());
    }
    order
}

/// The sides that follow each side, in ascending order. Where a side was taken back,
/// what followed it follows the one before it.
fn followers(job: &Job, room: EntryId) -> LiteMap<Option<EntryId>, Vec<EntryId>> {
    let of_room = |shelf: &Shelf<Side>| {
        let sides = shelf.iter().filter(|(_, side)| side.value.room == room);
        order::map(sides.map(|(id, side)| (*id, side.value.after)))
    };
    let (now, gone) = (of_room(&job.now.sides()), of_room(&job.gone.sides()));
    let all = order::map(gone.into_iter().chain(now.clone()));
    let mut following: LiteMap<_, Vec<_>> = LiteMap::new();
    // For each side so far the one that stands in its place. References go to smaller
    // ids only, so it is there when it is asked for; in a file with gaps the nearest
    // earlier one keeps the walk together.
    let mut standing: LiteMap<EntryId, Option<EntryId>> = LiteMap::new();
    for (id, after) in all {
        let before = after.filter(|after| *after < id);
        let before = before.and_then(|before| *nearest_before(&standing, before)?);
        if now.contains_key(&id) {
            following.entry(before).or_default().push(id);
        }
        standing.insert(id, if now.contains_key(&id) { Some(id) } else { before });
    }
    following
}

/// What is under `key`, or else under the greatest smaller one.
fn nearest_before<V>(map: &LiteMap<EntryId, V>, key: EntryId) -> Option<&V> {
    let at = map.find_index(&key).or_else(|after| after.checked_sub(1).ok_or(())).ok()?;
    map.get_indexed(at).map(|(_, value)| value)
}

/// The walk along the sides. Each turns at its end as the corner there was measured, or
/// else by a right angle.
fn walk(job: &Job, sides: &[EntryId]) -> Walk {
    let ends = sides.iter().cycle().skip(1);
    let steps = sides.iter().zip(ends).filter_map(|(id, end)| {
        let side = &job.now.sides().get(id)?.value;
        let angle = Floor::corner(job, *end).and_then(|(_, corner)| corner.angle.as_ref());
        let turn = angle.map_or(side.turn.quarter(), |angle| side.turn.by(Angle::STRAIGHT - angle.value));
        Some(Step { length: side.length.value, turn })
    });
    Walk::new(steps)
}

/// Where rectangles that are measured from corners lie on the plan.
struct Placing {
    /// Where each side starts, and the way it goes.
    starts: LiteMap<EntryId, (Point, Heading)>,
    inward_is_right: bool,
}

impl Placing {
    fn new(floor: &Floor) -> Self {
        let headings = floor.walk.bearings().map(Heading::nearest);
        let starts = floor.sides.iter().copied().zip(floor.corners.iter().copied().zip(headings));
        Self { starts: order::map(starts), inward_is_right: floor.is_inward_right() }
    }

    /// Which way of the page a side runs.
    fn axis(&self, side: EntryId) -> Option<Axis> {
        self.starts.get(&side).map(|(_, along)| along.axis())
    }

    /// The rectangle on the plan, its sides along the page's; none if it has no size.
    fn rect(&self, opening: &Opening) -> Option<Rect> {
        let (corner, along) = *self.starts.get(&opening.from)?;
        let inward = if self.inward_is_right { along.right() } else { along.left() };
        let at = |forward: Length, into: Length| -> Point { corner + along.go(forward) + inward.go(into) };
        let near = at(opening.along.value, opening.out.value);
        let far = at(opening.along.value + opening.length.value, opening.out.value + opening.width.value);
        Rect::between(near, far)
    }
}
