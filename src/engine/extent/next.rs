//! The next reading: the place within reach that would settle most about how far it is
//! wet.
//!
//! A reading there would take so much off the variance of every cell as the two have in
//! common; a cell counts as much as it is in doubt whether it is wet. Where readings are
//! too few to krige, the place farthest from all of them.

use super::field::{Field, feet};
use super::grid::Grid;
use super::kriging::{Asked, Kriging};
use crate::engine::geometry::{Outline, Point};
use crate::engine::place::JoistNumber;
use crate::engine::survey::Floor;
use crate::engine::units::{Length, MoistureContent};

/// How far apart the places lie that are looked at along a joist.
const STEP: Length = Length::feet(1);

/// No more places than this are looked at; on large floors every second, third and so on.
const MOST_PLACES: usize = 160;

/// Nor at more cells than this: those whose being wet is most in doubt.
const MOST_CELLS: usize = 160;

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
    pub(super) fn of(
        floor: &Floor,
        outline: &Outline,
        field: &Field,
        grid: &Grid,
        limit: MoistureContent,
    ) -> Option<Self> {
        let places = places(floor, outline);
        let best = match field {
            Field::Kriged(kriging) => most_telling(kriging, grid, limit, &places)?,
            Field::ByDistance(_) => {
                places.into_iter().max_by(|a, b| field.nearest(feet(*a)).total_cmp(&field.nearest(feet(*b))))?
            }
        };
        let (joist, along) = floor.nearest_joist(best)?;
        Some(Self { joist, along, at: best })
    }
}

/// Places on joists, a foot apart, inside the room.
fn places(floor: &Floor, outline: &Outline) -> Vec<Point> {
    let Some(joists) = &floor.joists else { return Vec::new() };
    let run = joists.run();
    let bounds = outline.bounds();
    let (from, to) = (run.along(bounds.least()), run.along(bounds.most()));
    let steps = ((to - from).to_nm() / STEP.to_nm()).max(0);
    let on_joist = |center: Length| (0..steps).map(move |step| run.point(center, from + STEP.half() + STEP * step));
    let all: Vec<_> = joists.centers().flat_map(on_joist).filter(|point| outline.contains(*point)).collect();
    let every = all.len().div_ceil(MOST_PLACES).max(1);
    all.into_iter().step_by(every).collect()
}

fn most_telling(kriging: &Kriging, grid: &Grid, limit: MoistureContent, places: &[Point]) -> Option<Point> {
    let doubts = grid.floor().map(|cell| (cell.chance_over(limit), cell.at));
    let mut doubts: Vec<_> = doubts.map(|(chance, at)| (chance * (1.0 - chance), at)).collect();
    doubts.sort_by(|a, b| b.0.total_cmp(&a.0));
    doubts.truncate(MOST_CELLS);
    let in_doubt: Vec<(f64, Asked)> = doubts.into_iter().map(|(doubt, at)| (doubt, kriging.ask(feet(at)))).collect();
    let telling = |place: &Point| {
        let asked = kriging.ask(feet(*place));
        let read = asked.variance + kriging.variogram.nugget;
        let taken_off = |cell: &Asked| {
            let common = kriging.left_in_common(cell, &asked);
            common * common / (read * cell.variance.max(1e-9))
        };
        in_doubt.iter().map(|(doubt, cell)| doubt * taken_off(cell)).sum::<f64>()
    };
    let rated = places.iter().map(|place| (telling(place), *place));
    rated.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, place)| place)
}
