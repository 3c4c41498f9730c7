//! From a job to its plan: which of the things that are so are drawn, and where.

use super::plan::{Gap, Joist, Joists, Opening, PlanInput, Reading, ReadingMark, Walls};
use super::ramp;
use crate::engine::geometry::{Point, Turn};
use crate::engine::job::Job;
use crate::engine::moisture::said::legend;
use crate::engine::moisture::{Corrected, Stands};
use crate::engine::place::Place;
use crate::engine::results::{readings, wettest_of_each};
use crate::engine::survey::{CutLines, Floor, Shape};
use crate::engine::take::Units;

/// The job's plan without its readings: for measuring, when its lengths matter.
pub fn without_readings(job: &Job, units: Units, cursor: Option<&Place>) -> PlanInput {
    PlanInput { readings: Vec::new(), legend: None, unread: Vec::new(), cursor: None, ..of(job, units, cursor) }
}

/// The job's plan without its dimension strings: the room as large as it goes, for
/// finding one's way among the readings.
pub fn without_dimensions(job: &Job, units: Units, cursor: Option<&Place>) -> PlanInput {
    let mut input = of(job, units, cursor);
    let (Walls::Open { sides, .. } | Walls::Closed { sides, .. }) = &mut input.walls;
    sides.clear();
    input
}

/// The job's plan, with `cursor` where the next value goes.
pub fn of(job: &Job, units: Units, cursor: Option<&Place>) -> PlanInput {
    let Some(walked) = Floor::of(job) else {
        return PlanInput {
            title: "Plan: nothing measured yet".to_owned(),
            note: Some("The room is drawn as you measure it".to_owned()),
            ..PlanInput::default()
        };
    };
    let shape = Shape::standing(job, walked.clone()).known();
    let (floor, adjusted) = shape.map_or((walked, None), |shape| (shape.floor, Some(shape.outline)));
    let lengths: Vec<String> = floor.walk.steps().iter().map(|step| units.length(step.length)).collect();
    let outline = adjusted.or_else(|| floor.outline.clone().ok());
    let lines = CutLines::of(job, &floor, outline.as_ref());
    let walls = match outline {
        Some(outline) => {
            // The outline runs clockwise, whichever way round the room was walked.
            let mut sides = lengths;
            if floor.walk.turned_round() == Some(Turn::Left) {
                sides.reverse();
            }
            Walls::Closed { outline, sides }
        }
        None => Walls::Open { corners: floor.walk.corners(), sides: lengths },
    };
    let openings = floor.openings.iter().map(|(_, rect)| Opening { rect: *rect, label: String::new() }).collect();
    let standing = floor.obstacles.iter().filter_map(|(id, rect)| {
        let label = job.now.obstacles().get(id)?.value.what.label().to_owned();
        Some(Opening { rect: *rect, label })
    });
    let (read, unread) = marks(job, &floor);
    PlanInput {
        title: format!("Plan of {}", job.heading()),
        walls,
        openings,
        standing: standing.collect(),
        cut_backs: lines.iter().map(|lines| lines.cut).collect(),
        finish_lines: lines.iter().filter_map(|lines| lines.finish).collect(),
        joists: joists(&floor),
        legend: legend(read.iter().map(|(_, corrected)| corrected)),
        readings: read.iter().map(|(at, corrected)| reading(*at, corrected)).collect(),
        unread,
        cursor: cursor.and_then(|place| floor.locate(place)),
        gap: gap(&floor, units),
        north: job.north().copied(),
        ..PlanInput::default()
    }
}

/// The reading that stands at each place that can be located, the wettest of several, and the
/// places without one.
fn marks(job: &Job, floor: &Floor) -> (Vec<(Point, Corrected)>, Vec<Point>) {
    let all = readings(job);
    let wettest = wettest_of_each(job, &all);
    let (mut read, mut unread) = (Vec::new(), Vec::new());
    for (id, place) in job.now.places().iter() {
        let Some(at) = floor.locate(place.value) else { continue };
        match wettest.get(id) {
            Some((.., known)) => read.push((at, known.value)),
            None => unread.push(at),
        }
    }
    (read, unread)
}

/// A reading as it is drawn. Off the scale it has the colour of that end, and no number.
fn reading(at: Point, corrected: &Corrected) -> Reading {
    let (moisture, off) = match corrected.corrected {
        Stands::At(moisture) => (moisture, ReadingMark::Plain),
        Stands::Under(_) => (ramp::DRIEST, ReadingMark::OffScale),
        Stands::Over(_) => (ramp::WETTEST, ReadingMark::OffScale),
    };
    let mark = if corrected.doubted { ReadingMark::Flagged } else { off };
    Reading { at, text: corrected.mark(), moisture, mark }
}

fn joists(floor: &Floor) -> Option<Joists> {
    let joists = floor.joists.as_ref()?;
    let each = (1..=joists.count()).map(|number| Joist { at: joists.center(number), number: u32::from(number) });
    Some(Joists { run: joists.run().axis(), joists: each.collect() })
}

/// The misclosure, once the walk has turned round and does not quite meet.
fn gap(floor: &Floor, units: Units) -> Option<Gap> {
    floor.walk.turned_round()?;
    let error = floor.walk.closing_error().misclosure();
    error.is_positive().then(|| Gap { from: Point::ORIGIN, to: floor.walk.end(), text: units.length(error) })
}
