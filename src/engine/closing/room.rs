//! The room that all else is placed in: one room, whose measurements agree, and in which
//! every entry has its place.

use super::decision::{Condition, InTheWay};
use super::trust::Answers;
use crate::engine::describe::counted;
use crate::engine::job::{Job, When};
use crate::engine::particular::Part;
use crate::engine::place::Position;
use crate::engine::survey::{Floor, disagreement, inside};
use crate::engine::take::Units;

pub use crate::engine::framing::shared::SAME_JOISTS;

/// Everything lies in one room that agrees with itself.
pub(super) fn one_room(job: &Job, units: Units) -> Condition {
    let mut lines = Vec::new();
    let rooms = job.now.rooms().len();
    if rooms > 1 {
        lines.push(InTheWay::unknown(
            format!("{} are begun, and only the first is looked at here", counted(rooms, "room")),
            "take the others back, or keep each in a job of its own",
        ));
    }
    let floor = Floor::of(job);
    if floor.as_ref().is_some_and(|floor| floor.outline.is_err()) {
        lines.push(InTheWay::unknown("the room's sides do not close", "measure every side"));
    }
    let outside = inside::told(job, units);
    lines.extend(outside.into_iter().map(|it| InTheWay::unknown(it, "put it right, or take it back")));
    let placed = floor.map_or(0, |floor| floor.openings.len());
    let lost = job.now.openings().len().saturating_sub(placed);
    if lost > 0 {
        lines.push(InTheWay::unknown(
            format!("{} that cannot be placed in the room", counted(lost, "opening")),
            "measure it again from a corner of this room, or take it back",
        ));
    }
    let disagreement = disagreement(job);
    if disagreement.stops() {
        let says = disagreement.says().unwrap_or("they contradict each other");
        lines.push(InTheWay::known(
            format!("the room's measurements disagree: {}", says.trim_end_matches('.')),
            "measure again what is named",
        ));
    }
    lines.extend(renumbered(job));
    Condition::of("all of it lies in one room, and its measurements agree", lines, "it does")
}

/// Were joists laid out anew, with anything said of them by number that may be older? Then
/// somebody has to say that the numbers mean the same joists. What was said between a layout
/// and its being taken back went by the numbers of that one.
pub fn asks_for_same_joists(job: &Job) -> bool {
    let laid_out = laid_out(job);
    let is_taken_back = !job.gone.joists().is_empty();
    let is_corrected = job.now.joists().iter().any(|(id, it)| it.head != *id);
    let is_anew = is_taken_back || is_corrected || laid_out.len() > 1;
    let is_older = |said: When| is_taken_back || !said.is_after_all(&laid_out);
    !laid_out.is_empty() && is_anew && said_by_number(job).into_iter().any(is_older)
}

/// Each time that joists were laid out, those included that were taken back.
fn laid_out(job: &Job) -> Vec<When> {
    let joists = job.now.joists().values().chain(job.gone.joists().values());
    joists.map(|joists| joists.when()).collect()
}

fn renumbered(job: &Job) -> Option<InTheWay> {
    let is_open = asks_for_same_joists(job) && !Answers::to(job, SAME_JOISTS).is_yes_since(&laid_out(job));
    is_open.then(|| {
        InTheWay::unknown(
            "the joists were laid out anew after something was said of them by number",
            "see whether every number still means the same joist, and answer the check",
        )
    })
}

/// When anything was said of a joist by its number.
fn said_by_number(job: &Job) -> Vec<When> {
    let is_one = |part: &Part| matches!(part, Part::Joist(_));
    let places = job.now.places().values().filter(|it| matches!(it.value.position, Position::OnJoist { .. }));
    let spots = job.now.damages().values().filter(|it| is_one(&it.value.of));
    let particulars = job.now.particulars().values().filter(|it| is_one(&it.value.of));
    let places = places.map(|it| it.when());
    places.chain(spots.map(|it| it.when())).chain(particulars.map(|it| it.when())).collect()
}
