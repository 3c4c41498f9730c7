//! What lies in the room and what does not. What is logged anew lies in it; what an old log
//! holds outside of it is told.

use super::{Floor, Joists, Opening, Shape};
use crate::engine::geometry::Rect;
use crate::engine::job::{Job, Observation};
use crate::engine::place::{Element, Face, JoistNumber, Place, Position};
use crate::engine::take::Units;
use crate::engine::units::Length;

/// A joist's center lies so far outside the walls' inner faces at most: under a wall of
/// 2x4s and its board (common practice, no source).
pub const UNDER_A_WALL: Length = Length::inches(4);

/// So far beyond a wall a tape may say that a joist still is: corners are known no better
/// (a judgement, no source).
pub const BEYOND_A_WALL: Length = Length::INCH;

/// Sills, rim joists and girders lie so far outside the room's walls at most (a judgement, no
/// source).
pub const OUTSIDE_THE_ROOM: Length = Length::inches(12);

/// Why something cannot be where it is said to be, and what would do; none if it can, or
/// nobody knows yet.
pub fn refuses(job: &Job, seen: &Observation, units: Units) -> Option<String> {
    let floor = floor(job)?;
    match seen {
        Observation::Place(place) => refuses_place(&floor, place, units),
        Observation::Joists(joists) => refuses_joists(&floor, joists, units),
        Observation::JoistCenter(center) => refuses_center(&floor, center.center.value, units),
        Observation::Opening(opening) => refuses_opening(&floor, opening, units),
        Observation::Obstacle(obstacle) => refuses_opening(&floor, &obstacle.takes, units),
        _ => None,
    }
}

/// What stands outside the room in the log, each in a sentence: it is kept and told.
pub fn told(job: &Job, units: Units) -> Vec<String> {
    let Some(floor) = floor(job) else { return Vec::new() };
    let places = job.now.places().values().filter_map(|place| {
        let end = (place.value.face == Some(Face::End)).then(|| "nobody said which end".to_owned());
        let why = refuses_place(&floor, place.value, units).or(end)?;
        Some(format!("{}: {why}", place.value.name()))
    });
    let centers = floor.joists.iter().flat_map(|joists| {
        let of = |number: u16| Some((number, refuses_center(&floor, joists.center(number), units)?));
        (1..=joists.count()).filter_map(of).map(|(number, why)| format!("Joist {number}, center: {why}"))
    });
    let openings = job.now.openings().values().zip(1..).filter_map(|(opening, number)| {
        Some(format!("Opening {number}: {}", refuses_opening(&floor, opening.value, units)?))
    });
    let overlaps = overlapping(&floor).map(|(one, other)| format!("Openings {one} and {other} overlap"));
    let mut all: Vec<_> = places.chain(centers).chain(openings).chain(overlaps).collect();
    all.dedup();
    all
}

/// The floor with what is placed on it where the measurements put it.
pub(crate) fn floor(job: &Job) -> Option<Floor> {
    Shape::of(job).map(|shape| shape.floor).or_else(|| Floor::of(job))
}

fn overlapping(floor: &Floor) -> impl Iterator<Item = (usize, usize)> {
    let all = floor.openings.iter().enumerate();
    all.flat_map(move |(at, (_, one))| {
        let others = floor.openings.iter().enumerate().skip(at + 1);
        others.filter(move |(_, (_, other))| one.overlaps(*other)).map(move |(other, _)| (at + 1, other + 1))
    })
}

/// Why a place cannot be there.
pub fn refuses_place(floor: &Floor, place: &Place, units: Units) -> Option<String> {
    match &place.position {
        Position::OnJoist { joist, along } => {
            let count = floor.joists.as_ref()?.count();
            if joist.get() > count {
                return Some(format!("there are {count} joists: 1 to {count} is accepted"));
            }
            along.as_ref().and_then(|along| refuses_along(floor, *joist, along.value, units))
        }
        Position::OnPlan { right, down } => {
            let outline = floor.placed_outline()?;
            let at = crate::engine::geometry::Point::new(right.value, down.value);
            let reach = match place.element {
                Element::Sill | Element::RimJoist | Element::Girder => OUTSIDE_THE_ROOM,
                _ => Length::ZERO,
            };
            let near = [(0, 0), (1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (1, -1), (-1, 1), (-1, -1)];
            let moved = |(x, y): (i64, i64)| crate::engine::geometry::Point::new(at.x + reach * x, at.y + reach * y);
            if near.into_iter().map(moved).any(|point| outline.contains(point)) {
                return None;
            }
            let (least, most) = (outline.bounds().least(), outline.bounds().most());
            let range =
                |from: Length, to: Length| format!("{} to {}", units.read(from - reach), units.read(to + reach));
            let ranges = (range(least.x, most.x), range(least.y, most.y));
            let room = if outline.corners().len() > 4 { ", within the room's walls," } else { "" };
            Some(format!("that is outside the room: {} right and {} down{room} is accepted", ranges.0, ranges.1))
        }
        Position::Named => None,
    }
}

/// Why a distance cannot be along a joist, by the walls that it meets.
fn refuses_along(floor: &Floor, joist: JoistNumber, along: Length, units: Units) -> Option<String> {
    let stretches = floor.stretches(joist)?;
    let (start, _) = floor.starts(joist);
    let at = start + along;
    let holds = |stretch: &super::Stretch| (stretch.from - BEYOND_A_WALL..=stretch.to + BEYOND_A_WALL).contains(&at);
    if stretches.is_empty() || stretches.iter().any(holds) {
        return None;
    }
    let parts: Vec<_> = stretches
        .iter()
        .map(|stretch| {
            let [from, to] =
                [stretch.from - start, stretch.to - start].map(|end| units.read(end.to_nearest(SIXTEENTH)));
            format!("{from} to {to}, from side {} to side {},", stretch.starts_at, stretch.ends_at)
        })
        .collect();
    Some(format!("joist {} is not there: {} is accepted", joist.get(), parts.join(" or ")))
}

const SIXTEENTH: Length = Length::sixty_fourths(4);

fn refuses_joists(floor: &Floor, joists: &Joists, units: Units) -> Option<String> {
    let last = joists.first.value + joists.spacing.value * (i64::from(joists.count) - 1);
    let run = joists.run;
    let (least, most) = across(floor, run)?;
    if let Some(why) = refuses_within(joists.first.value, least, most, units) {
        return Some(format!("joist 1 is {why}"));
    }
    if last <= most {
        return None;
    }
    let spacing = joists.spacing.value.to_nm().max(1);
    let fit = ((most - joists.first.value).to_nm() / spacing).max(0) + 1;
    let what = format!("joist {} would be {} from corner 1, outside the room", joists.count, units.read(last));
    Some(format!("{what}: at this spacing up to {fit} joists are accepted"))
}

/// Why a joist's center cannot be there.
pub fn refuses_center(floor: &Floor, center: Length, units: Units) -> Option<String> {
    let (least, most) = across(floor, floor.joists.as_ref()?.run())?;
    refuses_within(center, least, most, units)
}

/// Why the first center of joists that run some way cannot be there.
pub fn refuses_first(floor: &Floor, run: super::Run, center: Length, units: Units) -> Option<String> {
    let (least, most) = across(floor, run)?;
    refuses_within(center, least, most, units)
}

fn refuses_within(center: Length, least: Length, most: Length, units: Units) -> Option<String> {
    if (least..=most).contains(&center) {
        return None;
    }
    let [least, most] = [least, most].map(|end| units.read(end.to_nearest(SIXTEENTH)));
    Some(format!("outside the room: {least} to {most} from corner 1 is accepted"))
}

/// From where to where joists of a run can lie under the room.
fn across(floor: &Floor, run: super::Run) -> Option<(Length, Length)> {
    let bounds = floor.placed_outline()?.bounds();
    Some((run.across(bounds.least()) - UNDER_A_WALL, run.across(bounds.most()) + UNDER_A_WALL))
}

/// Why an opening, or what stands in the floor, cannot be there.
pub fn refuses_opening(floor: &Floor, opening: &Opening, units: Units) -> Option<String> {
    let outline = floor.placed_outline()?;
    let holds = |opening: &Opening| {
        let inset = floor.place(opening).and_then(|rect| shrunk(rect, BEYOND_A_WALL));
        inset.is_none_or(|rect| outline.holds_rect(rect))
    };
    if holds(opening) {
        return None;
    }
    let fits_exactly = |opening: &Opening| floor.place(opening).is_some_and(|rect| outline.holds_rect(rect));
    // The largest size into the room that would do, to the inch; else the largest along.
    let sized = |length: Length, width: Length| {
        let mut sized = opening.clone();
        (sized.length.value, sized.width.value) = (length, width);
        sized
    };
    let fits = |size: Length, of: &dyn Fn(Length) -> Opening| {
        let inches = (1..=i64::from(u16::MAX)).map(|inches| Length::INCH * inches).take_while(|it| *it <= size);
        inches.take_while(|size| fits_exactly(&of(*size))).last()
    };
    let (length, width) = (opening.length.value, opening.width.value);
    let would_do = fits(width, &|width| sized(length, width))
        .map(|most| format!("up to {} into the room is accepted here", units.read(most)))
        .or_else(|| {
            let most = fits(length, &|length| sized(length, width))?;
            Some(format!("up to {} along the side is accepted here", units.read(most)))
        });
    let would_do = would_do.unwrap_or_else(|| "start it nearer to its corner, or size it smaller".to_owned());
    Some(format!("that reaches beyond the walls: {would_do}"))
}

/// The rectangle with every side moved in; none if nothing is left.
fn shrunk(rect: Rect, by: Length) -> Option<Rect> {
    let (least, most) = (rect.least(), rect.most());
    let point = crate::engine::geometry::Point::new;
    let (from, to) = (point(least.x + by, least.y + by), point(most.x - by, most.y - by));
    (from.x < to.x && from.y < to.y).then(|| Rect::between(from, to)).flatten()
}

/// An end of a joist has to be one of the two, and says which wall is there.
pub fn which_end(floor: Option<&Floor>, joist: Option<JoistNumber>) -> String {
    let named = |face: Face| {
        let side = joist.zip(floor).and_then(|(joist, floor)| floor.end(joist, face));
        side.map_or_else(|| face.label().to_owned(), |(_, side)| format!("{}, at side {side}", face.label()))
    };
    format!("which end? {} or {} is accepted", named(Face::NearEnd), named(Face::FarEnd))
}
