//! What follows from the measured floor: areas and the closing error.

use super::shape::Standing;
use super::{Floor, Shape};
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::geometry::ClosingError;
use crate::engine::job::Job;
use crate::engine::sources::Source;
use crate::engine::units::{Area, Length};

/// The room's area: of the outline that fits the measurements best, or else as walked,
/// its last corner drawn to the first.
/// Source: plane geometry (the shoelace formula).
pub fn room_area(job: &Job) -> Figure<Area> {
    let Some(floor) = Floor::of(job) else { return Figure::Missing(vec![Need::RoomOutline]) };
    let floor = match Shape::standing(job, floor.clone()) {
        Standing::Known(shape) => return adjusted_area(job, &shape),
        Standing::AsWalked | Standing::Unfixed(_) => floor,
    };
    let Ok(outline) = &floor.outline else { return Figure::Missing(vec![Need::RoomOutline]) };
    let misclosure = floor.walk.closing_error().misclosure();
    let mut doubts = Vec::new();
    if misclosure != Length::ZERO {
        doubts.push("The sides do not quite close; the last corner was drawn to the first.".to_owned());
    }
    let why = Why::rule("Area inside the walls as walked, corner to corner", &[Source::Geometry])
        .with("sides", floor.sides.len().to_string())
        .using(floor.sides.iter().copied());
    Figure::Known(Known { value: outline.area(), assumed: Vec::new(), doubts, why })
}

fn adjusted_area(job: &Job, shape: &Shape) -> Figure<Area> {
    let (_, sigma) = shape.adjusted.area;
    let mut doubts = Vec::new();
    if shape.floor.walk.closing_error().misclosure() != Length::ZERO {
        doubts.push("The sides do not quite close; the gap was shared out as the measurements fit best.".to_owned());
    }
    let verdict = shape.adjusted.verdict.as_ref();
    doubts.extend(verdict.map(|verdict| format!("Measurements disagree: {verdict}.")));
    let why = Why::rule(
        "Area inside the walls, corner to corner, of the outline that fits the measurements best",
        &[Source::Geometry, Source::LeastSquares, Source::Accuracies],
    )
    .with("measurements", shape.entries.iter().flatten().count().to_string())
    .with("uncertain by", format!("{:.2} sq ft", sigma.to_square_feet()))
    .using(shape.entries.iter().flatten().copied());
    Figure::Known(Known { value: shape.outline.area(), assumed: shape.assumed(job), doubts, why })
}

/// The area without each reading that could be wrong, with what it measures: what the room
/// is if that one is left out. None where nothing is accused.
pub fn areas_without(job: &Job) -> Vec<(String, Area)> {
    let Some(shape) = Shape::of(job) else { return Vec::new() };
    let suspects = shape.adjusted.verdict.map(|verdict| verdict.suspects).unwrap_or_default();
    suspects.iter().map(|suspect| (suspect.measured.to_string(), suspect.area_without.0)).collect()
}

/// How far the walk along the sides misses its start, once it has turned round.
/// Source: plane geometry.
pub fn closing_error(job: &Job) -> Figure<ClosingError> {
    let turned = Floor::of(job).filter(|floor| floor.walk.turned_round().is_some());
    let Some(floor) = turned else { return Figure::Missing(vec![Need::RoomOutline]) };
    let why = Why::rule("Where the last side ends, less where the first one starts", &[Source::Geometry])
        .with("sides", floor.sides.len().to_string())
        .using(floor.sides.iter().copied());
    Figure::known(floor.walk.closing_error(), why)
}

/// The area that is to come out, all openings together.
/// Source: plane geometry.
pub fn opening_area(job: &Job) -> Figure<Area> {
    let floor = Floor::of(job);
    if floor.as_ref().is_some_and(|floor| floor.whole.is_some()) {
        return room_area(job);
    }
    let openings = floor.as_ref().map_or(&[][..], |floor| &floor.openings);
    if openings.is_empty() {
        return Figure::Missing(vec![Need::Opening]);
    }
    let mut doubts = Vec::new();
    let outline = floor.as_ref().and_then(|floor| floor.outline.as_ref().ok());
    if openings.iter().any(|(_, rect)| outline.is_some_and(|outline| !outline.holds_rect(*rect))) {
        doubts.push("The opening reaches beyond the walls: check its offsets and size.".to_owned());
    }
    if openings
        .iter()
        .enumerate()
        .any(|(at, (_, one))| openings.iter().skip(at + 1).any(|(_, other)| one.overlaps(*other)))
    {
        doubts.push("Openings overlap: what they share is counted twice.".to_owned());
    }
    if openings.len() < job.now.openings().len() {
        doubts.push("An opening is left out: the side it was placed from is not part of this room.".to_owned());
    }
    let why = Why::rule("Length times width of each opening", &[Source::Geometry])
        .with("openings", openings.len().to_string())
        .using(openings.iter().map(|(id, _)| *id));
    Figure::Known(Known { value: openings.iter().map(|(_, rect)| rect.area()).sum(), assumed: Vec::new(), doubts, why })
}
