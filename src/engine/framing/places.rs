//! What was found and read at places on joists, and on which joist a place is.

use super::measured::visit;
use super::since::Since;
use super::spots::Found;
use crate::engine::condition::Finding;
use crate::engine::entry::EntryId;
use crate::engine::geometry::Point;
use crate::engine::job::{Job, Seen};
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::moisture::{Answer, Corrected, Material};
use crate::engine::origin::Check;
use crate::engine::place::{Element, JoistNumber, Place, Position};
use crate::engine::results::{readings, standing};
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::survey::reach::Start;
use crate::engine::survey::{AlongFrom, Floor, Framing};
use crate::engine::units::{Length, MoistureContent};

/// Wood wetter than that is wet in service ([`Source::WetService`]).
const WET: MoistureContent = MoistureContent::percent(19);

/// The name of the check that says that insects were named and seen to. It never changes.
pub const INSECTS_GONE: &str = "gone.insects";

/// What the latest readings say of a joist: of several places the one that says most
/// against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reads {
    /// Nobody read it.
    Unread,
    /// By a reading that is relative only, which holds it to no limit.
    RelativeOnly,
    /// As dry as dry lumber, by more than a meter can be off.
    Dry,
    /// Under that limit, by a number that it can't be held to: nobody said of which meter or of
    /// what wood, or it was colder than any table goes.
    Loose,
    /// By a number that nobody believes.
    Doubted,
    /// Too close to that limit to tell.
    Close,
    /// Over that, by a reading that is relative only.
    RelativelyWet,
    /// Over that.
    Wet,
}

/// How much was found of decay and damage that is on no joist laid out: by a chalk mark
/// alone, beyond the last joist, or nobody said where.
pub fn found_nowhere(job: &Job) -> usize {
    let grave = job.now.conditions().values().filter(|it| is_grave(it.value.finding));
    grave.filter(|it| is_nowhere(job, it.value.place)).count()
}

/// Is a finding at this place on no joist laid out, nor on anything else that is named?
pub fn is_nowhere(job: &Job, place: Option<EntryId>) -> bool {
    let framing = Floor::of(job).and_then(|floor| floor.joists);
    match place.and_then(|place| job.now.places().get(&place)) {
        None => true,
        Some(place) if place.value.element != Element::Joist => false,
        Some(place) => {
            let number = framing.as_ref().and_then(|framing| number_of(place.value, framing));
            number.is_none_or(|number| framing.as_ref().is_none_or(|framing| number.get() > framing.count()))
        }
    }
}

/// Does a finding speak against framing that it is on?
pub const fn is_grave(finding: Finding) -> bool {
    matches!(finding, Finding::Soft | Finding::Rotten | Finding::Cracked)
}

/// What was found at places on a joist and in its bay: each with its entry and how far
/// along the joist.
pub(super) fn found(job: &Job, framing: &Framing, number: JoistNumber, begins: Begins) -> Vec<Found> {
    let here = job.now.conditions().values().filter_map(|it| {
        let place = job.now.places().get(&it.value.place?)?;
        let is_here = number_of(place.value, framing) == Some(number);
        is_here.then(|| Found {
            finding: it.value.finding,
            face: place.value.face,
            along: along(place.value, framing, begins),
            since: Since::of(&it).and(Since::of(&place)),
            visit: visit(&it),
        })
    });
    here.filter(|found| !is_seen_to(job, found)).collect()
}

/// Was it said, after the finding, that insects were named and seen to?
fn is_seen_to(job: &Job, found: &Found) -> bool {
    let mut checks = job.now.checks().values().rev();
    let said = checks.find(|check| check.value.of.as_str() == INSECTS_GONE);
    let is_gone = |check: Seen<'_, Check>| check.value.answer == Answer::Yes && Since::of(&check).is_after(found.since);
    found.finding == Finding::Insects && said.is_some_and(is_gone)
}

/// Where a joist begins, at the face of what it first bears on: none where nobody can tell.
/// Spans are from there, and so is everything that is held against them.
#[derive(Clone, Copy)]
pub(super) struct Begins {
    /// By distances along it as they are said: those of jobs before format 1.5 are from the
    /// first corner, wherever the joist begins.
    pub(super) said: Option<Length>,
    /// By the plan.
    plan: Option<Length>,
}

impl Begins {
    /// Of a member whose distances are from its own end.
    pub(super) const fn at_its_end() -> Self {
        Self { said: Some(Length::ZERO), plan: None }
    }

    pub(super) fn of(floor: &Floor, number: JoistNumber) -> Self {
        let plan = floor.stretches(number).and_then(|parts| parts.first().map(|first| first.from));
        let from_wall = floor.joists.as_ref().is_some_and(|joists| joists.laid_out.along == AlongFrom::Wall);
        let is_there = from_wall || floor.starts(number).1 == Start::AtTheCorner;
        Self { said: if is_there { Some(Length::ZERO) } else { plan }, plan }
    }
}

/// How far along its joist a place is from where that begins, if that was said.
fn along(place: &Place, framing: &Framing, begins: Begins) -> Option<Length> {
    match &place.position {
        Position::OnJoist { along, .. } => Some(along.as_ref()?.value - begins.said?),
        Position::OnPlan { right, down } => {
            Some(framing.run().along(Point::new(right.value, down.value)) - begins.plan?)
        }
        Position::Named => None,
    }
}

/// The joist that a place is on: by its number, or by the nearest center on the plan.
pub fn number_of(place: &Place, framing: &Framing) -> Option<JoistNumber> {
    if place.element != Element::Joist {
        return None;
    }
    match &place.position {
        Position::OnJoist { joist, .. } => Some(*joist),
        Position::OnPlan { right, down } => framing.nearest(Point::new(right.value, down.value)),
        Position::Named => None,
    }
}

/// What each reading of a joist that stands says against dry lumber's limit.
///
/// One that is said to be of dry panel counts as well: a joist is no panel.
pub(super) fn read_joists(job: &Job, framing: &Framing) -> Vec<Read> {
    let all = readings(job);
    let of_joists = standing(job, &all).filter_map(|(_, reading, known)| {
        let joist = number_of(job.now.places().get(&reading.value.place)?.value, framing)?;
        Some(Read { joist, reads: reads(&known.value), since: Since::of(reading) })
    });
    of_joists.collect()
}

/// A reading of a joist that no later one stands for.
pub(super) struct Read {
    pub(super) joist: JoistNumber,
    pub(super) reads: Reads,
    pub(super) since: Since,
}

/// Was any joist read as treated lumber?
pub(super) fn are_treated(job: &Job) -> bool {
    let element = |place: EntryId| job.now.places().get(&place).map(|place| place.value.element);
    let mut treated = job.now.readings().values().filter(|it| it.value.wood.material == Material::Treated);
    treated.any(|it| element(it.value.place) == Some(Element::Joist))
}

/// What a reading says against dry lumber's limit.
fn reads(reading: &Corrected) -> Reads {
    let is_over = reading.corrected.is_above(WET);
    match () {
        () if reading.relative && is_over => Reads::RelativelyWet,
        () if reading.relative => Reads::RelativeOnly,
        () if is_over && !reading.is_surely_above(WET) => Reads::Close,
        () if is_over => Reads::Wet,
        () if reading.doubted => Reads::Doubted,
        () if !reading.is_firm() => Reads::Loose,
        () if reading.at_worst().to_percent() > WET.to_percent() - METER_ERROR => Reads::Close,
        () => Reads::Dry,
    }
}
