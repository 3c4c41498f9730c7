//! What lies within one bay of what comes out.

use super::decision::{Condition, InTheWay};
use crate::engine::describe::counted;
use crate::engine::geometry::{Point, Rect};
use crate::engine::job::Job;
use crate::engine::place::{JoistNumber, Place};
use crate::engine::survey::{CutLines, Floor, Framing, Run};
use crate::engine::units::Length;
use crate::order;

/// What of the framing lies within one bay of what comes out.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Near {
    /// Nobody said what comes out.
    NothingComesOut,
    /// Nobody laid out the joists.
    NoJoists,
    /// This much.
    Joists(Box<Reach>),
}

/// How far what comes out reaches, a bay around it counted in.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Reach {
    /// The joists, by their numbers, in order.
    joists: Vec<u16>,
    /// What comes out; of a whole floor nothing by itself.
    openings: Vec<Rect>,
    /// Where it comes within a bay of a wall: from its edge outward, a bay farther to each side.
    walls: Vec<Rect>,
    /// Does it reach within a bay of a wall at all? Where the walls do not close, it may.
    is_by_a_wall: bool,
    /// Does the whole floor come out?
    is_whole: bool,
    /// Does it go on where no joist is laid out?
    goes_beyond: bool,
    /// Do the joists lie in the order of their numbers, some way apart?
    is_in_order: bool,
    bay: Length,
    floor: Floor,
}

impl Near {
    /// Of a job.
    pub(super) fn of(job: &Job) -> Self {
        let Some(floor) = Floor::of(job) else { return Self::NothingComesOut };
        if floor.whole.is_none() && floor.openings.is_empty() {
            return Self::NothingComesOut;
        }
        match floor.joists.clone() {
            None => Self::NoJoists,
            Some(framing) => Self::Joists(Box::new(Reach::of(job, floor, &framing))),
        }
    }

    /// The joists.
    pub(super) fn joists(&self) -> &[u16] {
        self.reach().map_or(&[], |reach| &reach.joists)
    }

    /// How far it reaches, if that can be said.
    pub(super) fn reach(&self) -> Option<&Reach> {
        match self {
            Self::Joists(reach) => Some(reach),
            Self::NothingComesOut | Self::NoJoists => None,
        }
    }

    /// Does the whole floor come out?
    pub(super) fn is_whole(&self) -> bool {
        self.reach().is_some_and(|reach| reach.is_whole)
    }

    /// What comes out, and what it is above, is known.
    pub(super) fn known(&self) -> Condition {
        let lines = match self {
            Self::NothingComesOut => vec![InTheWay::unknown(
                "nobody said what comes out",
                "place the opening, or say that the whole floor comes out",
            )],
            Self::NoJoists => {
                vec![InTheWay::unknown("the joists are not laid out", "measure the first and the spacing")]
            }
            Self::Joists(reach) => reach.not_known(),
        };
        let found = format!("{} lie within a bay of it", counted(self.joists().len(), "joist"));
        Condition::of("what comes out is known, and the joists there", lines, found)
    }
}

impl Reach {
    fn of(job: &Job, floor: Floor, framing: &Framing) -> Self {
        let bay = framing.widest_spacing();
        // What ends just a bay from a wall counts as within it.
        let reach = bay + Length::sixty_fourths(1);
        let outline = floor.outline.as_ref().ok();
        let openings: Vec<_> = CutLines::of(job, &floor, outline).iter().map(|lines| lines.cut).collect();
        let is_whole = floor.whole.is_some() || openings.iter().any(|rect| takes_all(&floor, *rect));
        let out = if is_whole { all_of(&floor) } else { openings.clone() };
        let inside = |rect: Rect| floor.outline.as_ref().is_ok_and(|outline| outline.holds_rect(rect));
        let walls = openings.iter().flat_map(|rect| strips(*rect, reach));
        Self {
            joists: if is_whole { (1..=framing.count()).collect() } else { joists_near(framing, &openings) },
            walls: walls.filter(|(grown, _)| !inside(*grown)).map(|(_, strip)| strip).collect(),
            is_by_a_wall: is_whole || !openings.iter().all(|rect| inside(rect.grown(reach))),
            goes_beyond: out.is_empty() || out.iter().any(|rect| goes_beyond(&floor, framing, *rect, reach)),
            is_in_order: framing.count() > 1 && bay.is_positive() && framing.out_of_order().is_none(),
            bay: reach,
            openings,
            is_whole,
            floor,
        }
    }

    fn not_known(&self) -> Vec<InTheWay> {
        let mut lines = Vec::new();
        if self.joists.is_empty() {
            let ends = "check the opening and the joists' places";
            lines.push(InTheWay::unknown("no joist lies under what comes out", ends));
        }
        if !self.is_in_order {
            let what = "the joists do not lie one after the other, as they are laid out";
            lines.push(InTheWay::unknown(what, "measure their spacing and how many there are"));
        }
        if self.goes_beyond {
            let what = "what comes out goes on where no joist is laid out";
            lines.push(InTheWay::unknown(what, "lay out every joist of the room, from wall to wall"));
        }
        lines
    }

    /// Does it come within a bay of a wall?
    pub(super) const fn is_by_a_wall(&self) -> bool {
        self.is_by_a_wall
    }

    /// Is there one of these places at every wall that it comes near?
    pub(super) fn is_at_every_wall(&self, places: &[&Place]) -> bool {
        let points: Vec<_> = places.iter().filter_map(|place| self.floor.locate(place)).collect();
        !self.walls.is_empty() && self.walls.iter().all(|wall| points.iter().any(|point| wall.contains(*point)))
    }

    /// Does a place lie in what comes out, off its edges?
    pub(super) fn comes_out(&self, place: &Place) -> bool {
        let lies_in = |point: Point| {
            let inner = |rect: &Rect| {
                let (least, most) = (rect.least(), rect.most());
                least.x < point.x && point.x < most.x && least.y < point.y && point.y < most.y
            };
            self.openings.iter().any(inner)
        };
        self.is_whole || self.floor.locate(place).is_some_and(lies_in)
    }

    /// Can nobody tell where on the plan a place is?
    pub(super) fn is_nowhere(&self, place: &Place) -> bool {
        self.floor.locate(place).is_none()
    }

    /// Is a place within a bay of what comes out? One that is nowhere on the plan may be.
    pub(super) fn may_hold(&self, place: &Place) -> bool {
        self.is_whole
            || self.floor.locate(place).is_none_or(|at| self.openings.iter().any(|it| it.grown(self.bay).contains(at)))
    }

    /// Does a place lie along the joists where something comes out, or within a bay of that? Nobody
    /// can tell of one that is nowhere on the plan.
    pub(super) fn is_along(&self, place: &Place) -> bool {
        let Some(run) = self.floor.joists.as_ref().map(Framing::run) else { return false };
        self.is_whole || self.floor.locate(place).is_some_and(|at| self.is_along_at(run, run.along(at)))
    }

    /// Does a point of a joist, so far along it, lie within a bay of what comes out?
    pub(super) fn reaches_along(&self, joist: JoistNumber, along: Length) -> bool {
        let Some(run) = self.floor.joists.as_ref().map(Framing::run) else { return true };
        self.is_whole || self.is_along_at(run, self.floor.starts(joist).0 + along)
    }

    fn is_along_at(&self, run: Run, along: Length) -> bool {
        let holds = |it: &Rect| {
            let it = it.grown(self.bay);
            (run.along(it.least())..=run.along(it.most())).contains(&along)
        };
        self.openings.iter().any(holds)
    }

    /// Is a place surely within a bay of what comes out?
    pub(super) fn holds(&self, place: &Place) -> bool {
        self.floor
            .locate(place)
            .is_some_and(|at| self.is_whole || self.openings.iter().any(|it| it.grown(self.bay).contains(at)))
    }

    /// Is there one of these places beside every opening, within a bay of it?
    pub(super) fn is_beside_each(&self, places: &[&Place]) -> bool {
        let stays = places.iter().filter(|place| !self.comes_out(place));
        let points: Vec<_> = stays.filter_map(|place| self.floor.locate(place)).collect();
        self.openings.iter().all(|it| points.iter().any(|point| it.grown(self.bay).contains(*point)))
    }
}

/// Does an opening reach from wall to wall both ways, so that no floor stays beside it?
fn takes_all(floor: &Floor, opening: Rect) -> bool {
    all_of(floor).iter().any(|all| opening.contains(all.least()) && opening.contains(all.most()))
}

/// All of a floor whose walls close.
fn all_of(floor: &Floor) -> Vec<Rect> {
    floor.outline.iter().map(|outline| Rect::around(outline.corners())).collect()
}

/// The joists under the openings and the next one on each side, however far that is.
fn joists_near(framing: &Framing, rects: &[Rect]) -> Vec<u16> {
    let run = framing.run();
    let mut near = Vec::new();
    for rect in rects {
        let (least, most) = (run.across(rect.least()), run.across(rect.most()));
        let under: Vec<_> =
            (1..=framing.count()).filter(|number| (least..=most).contains(&framing.center(*number))).collect();
        let before = (1..=framing.count()).filter(|number| framing.center(*number) < least).max();
        let after = (1..=framing.count()).find(|number| framing.center(*number) > most);
        near.extend(before.into_iter().chain(under).chain(after));
    }
    order::once(near)
}

/// Is there neither a joist nor a wall within reach of the first and last joist on some side?
fn goes_beyond(floor: &Floor, framing: &Framing, rect: Rect, reach: Length) -> bool {
    let run = framing.run();
    let (first, last) = (framing.centers().min().unwrap_or_default(), framing.centers().max().unwrap_or_default());
    let (starts, ends) = (first <= run.across(rect.least()), run.across(rect.most()) <= last);
    let walls = all_of(floor).first().map(|all| (run.across(all.least()), run.across(all.most())));
    let (from_wall, to_wall) = (walls.map(|(least, _)| first - least), walls.map(|(_, most)| most - last));
    let is_near = |far: Option<Length>| far.is_some_and(|far| far <= reach);
    !(starts || is_near(from_wall)) || !(ends || is_near(to_wall))
}

/// A rectangle grown toward each of its four sides, and what it grew by, which goes as far
/// along the wall to both sides.
fn strips(rect: Rect, reach: Length) -> impl Iterator<Item = (Rect, Rect)> {
    let (least, most, all) = (rect.least(), rect.most(), rect.grown(reach));
    let (far, near) = (all.most(), all.least());
    let at = Point::new;
    let sides = [
        (at(least.x, near.y), most, near, at(far.x, least.y)),
        (least, at(most.x, far.y), at(near.x, most.y), far),
        (at(near.x, least.y), most, near, at(least.x, far.y)),
        (least, at(far.x, most.y), at(most.x, near.y), far),
    ];
    sides.into_iter().filter_map(|(from, to, one, other)| Some((Rect::between(from, to)?, Rect::between(one, other)?)))
}
