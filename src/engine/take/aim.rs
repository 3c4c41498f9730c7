//! Aiming: what a tap on the plan, or another way to say where, does to the spot.

use super::settings::Units;
use crate::engine::geometry::Point;
use crate::engine::job::Job;
use crate::engine::place::{Face, JoistNumber, Locating, Place, Position};
use crate::engine::survey::Floor;
use crate::engine::units::tape::BareUnit;
use crate::engine::units::{Length, Typed};

/// A tap this near to a known place means that place: about half a thumb on the plan of
/// a small room. By eye, no source.
const REACH: Length = Length::inches(6);

/// The spot that a tap on the plan means: a place that the job knows, else the nearest
/// joist, else the point itself.
pub fn tapped(job: &Job, spot: &Place, point: Point, units: Units) -> Place {
    let Some(floor) = Floor::of(job) else { return spot.clone() };
    if let Some(known) = known_near(job, &floor, spot, point) {
        return known.clone();
    }
    let at_joist = if spot.position.locating() == Locating::Plan { None } else { at_joist(&floor, point, units) };
    let position = at_joist.unwrap_or_else(|| on_plan(point, units));
    Place { position, chalk: None, face: along_it(spot.face), ..spot.clone() }
}

/// A face that lies at a distance along: a point is at no end.
fn along_it(face: Option<Face>) -> Option<Face> {
    if face.is_some_and(Face::is_end) { Some(Face::LowerEdge) } else { face }
}

/// The spot said in another way, at the same point as far as that is known.
pub fn located(job: &Job, spot: &Place, locating: Locating, units: Units) -> Place {
    if spot.position.locating() == locating {
        return spot.clone();
    }
    let floor = Floor::of(job);
    let point = floor.as_ref().and_then(|floor| floor.locate(spot));
    let position = match locating {
        Locating::Joist => point
            .and_then(|point| at_joist(floor.as_ref()?, point, units))
            .unwrap_or(Position::OnJoist { joist: JoistNumber::FIRST, along: None }),
        Locating::Plan => on_plan(point.unwrap_or(Point::ORIGIN), units),
        Locating::Chalk => Position::Named,
    };
    Place { position, face: along_it(spot.face), ..spot.clone() }
}

/// The known place nearest to a point within reach; of several there the one most like
/// the spot.
fn known_near<'a>(job: &'a Job, floor: &Floor, spot: &Place, point: Point) -> Option<&'a Place> {
    let near = job.now.places().values().filter_map(|thing| {
        let at = floor.locate(thing.value)?;
        let away = (at.x - point.x).abs().max((at.y - point.y).abs());
        (away <= REACH).then_some((away, thing.value))
    });
    let unlike = |place: &Place| (place.element != spot.element, place.face != spot.face);
    near.min_by_key(|(away, place)| (*away, unlike(place))).map(|(_, place)| place)
}

fn at_joist(floor: &Floor, point: Point, units: Units) -> Option<Position> {
    let (joist, along) = floor.nearest_joist(point)?;
    Some(Position::OnJoist { joist, along: Some(by_thumb(along, units)) })
}

fn on_plan(point: Point, units: Units) -> Position {
    Position::OnPlan { right: by_thumb(point.x, units), down: by_thumb(point.y, units) }
}

/// A thumb is no tape: to the inch or the centimetre, as if it had been typed.
fn by_thumb(length: Length, units: Units) -> Typed<Length> {
    let step = if units.bare_length() == BareUnit::Inches { Length::INCH } else { Length::mm(10) };
    let length = length.to_nearest(step);
    Typed::new(units.length(length), length)
}
