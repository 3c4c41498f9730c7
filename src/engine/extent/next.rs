//! The next reading: the place within reach that would tell most of how much is wet.
//!
//! Before anything else so much of the floor is read that it can be told how much is wet. Then, on
//! some of the floors that the readings allow more is wet, on some less; the best place is where
//! what would be read goes along with that most. Where readings are too few for that, the place
//! farthest from all of them.

use super::Spot;
use super::draws::Draws;
use super::field::feet;
use super::grid::Grid;
use super::reach::reaches;
use crate::engine::geometry::{Outline, Point};
use crate::engine::place::JoistNumber;
use crate::engine::survey::Floor;
use crate::engine::units::Length;

/// How far apart the places lie that are looked at along a joist: what a carpenter is
/// told to the foot is also what was looked at.
const STEP: Length = Length::FOOT;

/// No place lies nearer to a joist's end than this: the wood there takes up and gives off
/// water through its end grain, and stands on the sill (judgement).
pub const FROM_END: Length = Length::feet(1);

/// Nor as near as this to a place that was read.
const FROM_READ: Length = Length::feet(1);

/// No more places than this are looked at; on large floors every second, third and so on.
const MOST_PLACES: usize = 160;

/// Where to read next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NextReading {
    /// On this joist, or beside it.
    pub joist: JoistNumber,
    /// So far along it.
    pub along: Length,
    /// On the plan.
    pub at: Point,
}

impl NextReading {
    /// Where it is told how much is wet (by floors that were drawn, so many cells wet on each),
    /// the place that would tell most of it. Otherwise the one that reaches most floor that no
    /// reading reaches, and then the one farthest from all readings. None without joists.
    pub(super) fn of(
        floor: &Floor,
        outline: &Outline,
        spots: &[Spot],
        grid: &Grid,
        told: Option<(&Draws, &[f64])>,
    ) -> Option<Self> {
        let places = places(floor, outline, spots);
        let nearest = |place: Point| spots.iter().map(|spot| (spot.at - place).length()).min().unwrap_or(Length::ZERO);
        let unread: Vec<_> = grid.floor().filter(|cell| !cell.is_reached).map(|cell| cell.at).collect();
        let reached_by = |place: Point| unread.iter().filter(|at| reaches(place, **at)).count();
        let best = match told {
            Some((draws, wet)) => {
                let rated = places.into_iter().map(|place| (draws.telling(feet(place), wet), place));
                rated.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, place)| place)?
            }
            None => places.into_iter().max_by_key(|place| (reached_by(*place), nearest(*place)))?,
        };
        let (joist, along) = floor.nearest_joist(best)?;
        Some(Self { joist, along, at: best })
    }
}

/// Places on joists, whole feet along them, inside the room, away from their ends and from
/// what was read.
fn places(floor: &Floor, outline: &Outline, spots: &[Spot]) -> Vec<Point> {
    let Some(joists) = &floor.joists else { return Vec::new() };
    let run = joists.run();
    let bounds = outline.bounds();
    let (from, to) = (run.along(bounds.least()).to_feet(), run.along(bounds.most()).to_feet());
    let steps = libm::ceil(from.max(0.0)) as i64..=libm::floor(to.max(0.0)) as i64;
    let is_inside = |center: Length, along: Length| {
        [-FROM_END, Length::ZERO, FROM_END].into_iter().all(|by| outline.contains(run.point(center, along + by)))
    };
    let on_joist = |center: Length| {
        let along = steps.clone().map(|step| STEP * step).filter(move |along| is_inside(center, *along));
        along.map(move |along| run.point(center, along)).collect::<Vec<_>>()
    };
    let is_unread = |place: &Point| spots.iter().all(|spot| (spot.at - *place).length() >= FROM_READ);
    let all: Vec<_> = joists.centers().flat_map(on_joist).filter(is_unread).collect();
    let every = all.len().div_ceil(MOST_PLACES).max(1);
    all.into_iter().step_by(every).collect()
}
