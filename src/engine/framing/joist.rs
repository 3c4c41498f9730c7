//! Everything that the job says of one joist.

use super::design::{Edition, Grade, LumberGroup};
use super::member::{BearsOn, Done, EndsHeld, MemberType, OverGirder, SpanAllowed};
use super::section::Section;
use super::span::{Loads, Service};
use super::spots::Spots;
use crate::engine::condition::Finding;
use crate::engine::entry::EntryId;
use crate::engine::geometry::Point;
use crate::engine::job::Job;
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::moisture::{Answer, Corrected};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::{Element, JoistNumber, Place, Position};
use crate::engine::results::readings;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::survey::{Floor, Framing};
use crate::engine::units::{Amount, Length, MoistureContent};
use litemap::LiteMap;

/// Rooms where people live ([`Source::SpanMethod`]).
const USUAL: Loads = Loads { live: 40.0, dead: 10.0 };
/// Wood wetter than that is wet in service ([`Source::WetService`]).
const WET: MoistureContent = MoistureContent::percent(19);
/// Bearing on wood or metal, and on masonry ([`Source::Bearing`]).
const ON_WOOD: Length = Length::sixty_fourths(96);
const ON_MASONRY: Length = Length::inches(3);

/// The name of the check that says that insects were named and seen to. It never changes.
pub const INSECTS_GONE: &str = "gone.insects";

/// A joist as measured and probed.
#[derive(Debug, Clone, PartialEq)]
pub struct Joist {
    /// Its number.
    pub number: JoistNumber,
    /// What it is made as; none if nobody said.
    pub member: Option<MemberType>,
    /// Who allows its span, if it is not sawn.
    pub span_allowed: Option<SpanAllowed>,
    /// Across; none if nobody measured.
    pub breadth: Option<Length>,
    /// From the lower edge to the upper.
    pub depth: Option<Length>,
    /// Between the faces of its supports.
    pub clear: Option<Length>,
    /// How much of it bears at its shorter end.
    pub bearing: Option<Length>,
    /// What its ends rest on; none if nobody said.
    pub bears_on: Option<BearsOn>,
    /// What keeps its ends from turning over.
    pub ends: Option<EndsHeld>,
    /// How it goes on over the girder.
    pub over_girder: Option<OverGirder>,
    /// How far it laps the next one there.
    pub lap: Option<Length>,
    /// What is wrong with it, spot by spot.
    pub spots: Spots,
    /// What was found on it and in its bays.
    pub found: Vec<Finding>,
    /// How wet it reads.
    pub reads: Reads,
    /// What was done about it, and by which entry.
    pub done: Option<(EntryId, Done)>,
}

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
    /// By a number that nobody believes.
    Doubted,
    /// Too close to that limit to tell.
    Close,
    /// Over that, by a reading that is relative only.
    RelativelyWet,
    /// Over that.
    Wet,
}

/// What all joists share.
#[derive(Debug, Clone, PartialEq)]
pub struct Shared {
    /// The widest distance between centers.
    pub spacing: Length,
    /// What the floor is to carry.
    pub loads: Loads,
    /// The group, if a stamp says so.
    pub group: Option<LumberGroup>,
    /// The grade, if a stamp says so.
    pub grade: Option<Grade>,
    /// By whose design values.
    pub edition: Edition,
    /// Treated through incisions?
    pub is_incised: bool,
    /// The section that sisters are cut of, if both ways were measured.
    pub sister: Option<Section>,
    /// How many joists there are: three or more share a load.
    pub count: u16,
    /// What nobody said, and is taken to be so.
    pub assumed: Vec<String>,
}

impl Joist {
    /// Its section, if both ways were measured.
    pub fn section(&self) -> Option<Section> {
        Some(Section { breadth: self.breadth?, depth: self.depth? })
    }

    /// How much of it has to bear; none where a hanger or a ribbon carries it.
    pub const fn bearing_asked(&self) -> Option<Length> {
        match self.bears_on {
            Some(BearsOn::Masonry) => Some(ON_MASONRY),
            Some(BearsOn::WoodOrMetal) | None => Some(ON_WOOD),
            Some(BearsOn::Hanger | BearsOn::Ribbon) => None,
        }
    }

    /// The span that is designed for: between faces, and half of what each bearing has to
    /// be ([`Source::SpanMethod`]).
    pub fn span(&self) -> Option<Length> {
        Some(self.clear? + self.bearing_asked().unwrap_or(ON_WOOD))
    }

    /// Does it bear on too little?
    pub fn is_short_of_bearing(&self) -> bool {
        self.bearing.zip(self.bearing_asked()).is_some_and(|(bearing, asked)| bearing < asked)
    }

    /// Was this found?
    pub fn has(&self, finding: Finding) -> bool {
        self.found.contains(&finding)
    }

    /// What it goes through. What may be over the limit counts as over it.
    pub fn service(&self, shared: &Shared) -> Service {
        Service { is_wet: self.reads >= Reads::Close, is_incised: shared.is_incised }
    }

    fn of(job: &Job, framing: &Framing, number: JoistNumber, read: &[(JoistNumber, Reads)]) -> Self {
        let said = Particulars::of(job);
        let part = Part::Joist(number);
        let length = |item| said.length_of_joist(&part, item);
        let words = |item| said.words_of_joist(&part, item);
        let found = found(job, framing, number);
        let done = said.last(&part, &list::DONE);
        let spots = Spots::of(job, &part, &found);
        let mut findings: Vec<_> = found.into_iter().map(|(_, finding, _)| finding).collect();
        findings.sort_unstable();
        findings.dedup();
        Self {
            number,
            member: words(&list::MEMBER).and_then(MemberType::said),
            span_allowed: words(&list::SPAN_ALLOWED).and_then(SpanAllowed::said),
            breadth: length(&list::BREADTH),
            depth: length(&list::DEPTH),
            clear: length(&list::CLEAR_SPAN),
            bearing: length(&list::BEARING),
            bears_on: words(&list::BEARS_ON).and_then(BearsOn::said),
            ends: words(&list::ENDS_HELD).and_then(EndsHeld::said),
            over_girder: words(&list::OVER_GIRDER).and_then(OverGirder::said),
            lap: length(&list::LAP_OF_JOISTS),
            spots,
            found: findings,
            reads: read.iter().filter(|(of, _)| *of == number).map(|(_, reads)| *reads).max().unwrap_or(Reads::Unread),
            done: done.and_then(|(id, value)| Some((id, Done::said(value.typed())?))),
        }
    }
}

impl Shared {
    /// What the job says; spacing by the joists as laid out, none without those.
    pub fn of(job: &Job) -> Option<Self> {
        let said = Particulars::of(job);
        let words = |item| said.words(&Part::House, item);
        let framing = Floor::of(job).and_then(|floor| floor.joists)?;
        let spacing = Some(framing.widest_spacing()).filter(|spacing| spacing.is_positive())?;
        let mut assumed = Vec::new();
        let [live, dead] = [(&list::LIVE_LOAD, USUAL.live), (&list::DEAD_LOAD, USUAL.dead)].map(|(item, usual)| {
            said.amount(&Part::House, item).map_or_else(
                || {
                    assumed.push(format!("{} of {usual} psf", item.what));
                    usual
                },
                Amount::get,
            )
        });
        let edition = match words(&list::EDITION) {
            Some("before 2013") => Edition::Before2013,
            Some(_) => Edition::Since2013,
            None => {
                assumed.push("design values of 2013 and later".to_owned());
                Edition::Since2013
            }
        };
        let incised = words(&list::INCISED);
        if incised.is_none() {
            assumed.push("wood that is not incised".to_owned());
        }
        Some(Self {
            spacing,
            loads: Loads { live, dead },
            group: LumberGroup::ALL.into_iter().find(|group| words(&list::SPECIES) == Some(group.label())),
            grade: Grade::ALL.into_iter().find(|grade| words(&list::GRADE) == Some(grade.label())),
            edition,
            is_incised: incised == Some("yes"),
            sister: sister(said),
            count: framing.count(),
            assumed,
        })
    }

    /// Every group and grade that it can be.
    pub fn plausible(&self) -> Vec<(LumberGroup, Grade)> {
        let groups = LumberGroup::ALL.into_iter().filter(|group| self.group.is_none_or(|known| known == *group));
        let grades = |group| {
            let of = Grade::ALL.into_iter().filter(|grade| self.grade.is_none_or(|known| known == *grade));
            of.map(move |grade| (group, grade))
        };
        groups.flat_map(grades).collect()
    }

    /// Is neither group nor grade left open?
    pub const fn is_graded(&self) -> bool {
        self.group.is_some() && self.grade.is_some()
    }
}

/// What sisters are cut of, if both ways were measured.
fn sister(said: Particulars<'_>) -> Option<Section> {
    let length = |item| said.length(&Part::House, item);
    Some(Section { breadth: length(&list::SISTER_BREADTH)?, depth: length(&list::SISTER_DEPTH)? })
}

/// Every joist that is laid out.
pub fn joists(job: &Job) -> Vec<Joist> {
    let Some(framing) = Floor::of(job).and_then(|floor| floor.joists) else { return Vec::new() };
    let read = read_joists(job, &framing);
    let numbers = (1..=framing.count()).filter_map(JoistNumber::new);
    numbers.map(|number| Joist::of(job, &framing, number, &read)).collect()
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
fn found(job: &Job, framing: &Framing, number: JoistNumber) -> Vec<(EntryId, Finding, Option<Length>)> {
    let here = job.now.conditions().iter().filter_map(|(id, it)| {
        let place = job.now.places().get(&it.value.place?)?.value;
        let is_here = number_of(place, framing) == Some(number);
        is_here.then(|| (it.head.max(*id), it.value.finding, along(place, framing)))
    });
    here.filter(|(id, finding, _)| !is_seen_to(job, *finding, *id)).collect()
}

/// Was it said, after the finding, that insects were named and seen to?
fn is_seen_to(job: &Job, finding: Finding, id: EntryId) -> bool {
    let mut checks = job.now.checks().iter().rev();
    let said = checks.find(|(_, check)| check.value.of.as_str() == INSECTS_GONE);
    finding == Finding::Insects && said.is_some_and(|(said, check)| *said > id && check.value.answer == Answer::Yes)
}

/// How far along its joist a place is, if that was said.
fn along(place: &Place, framing: &Framing) -> Option<Length> {
    match &place.position {
        Position::OnJoist { along, .. } => along.as_ref().map(|typed| typed.value),
        Position::OnPlan { right, down } => Some(framing.run().along(Point::new(right.value, down.value))),
        Position::Named => None,
    }
}

/// The joist that a place is on: by its number, or by the nearest center on the plan.
fn number_of(place: &Place, framing: &Framing) -> Option<JoistNumber> {
    if place.element != Element::Joist {
        return None;
    }
    match &place.position {
        Position::OnJoist { joist, .. } => Some(*joist),
        Position::OnPlan { right, down } => {
            let across = framing.run().across(Point::new(right.value, down.value));
            let centers = (1..).zip(framing.centers());
            let nearest = centers.min_by_key(|(_, center)| (*center - across).abs());
            nearest.and_then(|(number, _)| JoistNumber::new(number))
        }
        Position::Named => None,
    }
}

/// What the latest reading of each place on a joist says against dry lumber's limit.
fn read_joists(job: &Job, framing: &Framing) -> Vec<(JoistNumber, Reads)> {
    let mut latest: LiteMap<EntryId, (JoistNumber, Reads)> = LiteMap::new();
    for (_, reading, known) in readings(job).into_iter().filter(|(_, reading, _)| !reading.value.reference) {
        let Some(place) = job.now.places().get(&reading.value.place) else { continue };
        let reads = reads(&known.value);
        if let Some(joist) = number_of(place.value, framing) {
            latest.insert(reading.value.place, (joist, reads));
        }
    }
    latest.into_iter().map(|(_, read)| read).collect()
}

/// What a reading says against dry lumber's limit.
fn reads(reading: &Corrected) -> Reads {
    let is_over = reading.corrected.is_above(WET);
    match () {
        () if reading.relative && is_over => Reads::RelativelyWet,
        () if reading.relative => Reads::RelativeOnly,
        () if is_over => Reads::Wet,
        () if reading.doubted => Reads::Doubted,
        () if reading.at_worst().to_percent() > WET.to_percent() - METER_ERROR => Reads::Close,
        () => Reads::Dry,
    }
}
