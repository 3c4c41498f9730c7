//! Everything that the job says of one joist.

use super::design::{Edition, Grade, LumberGroup};
use super::section::Section;
use super::span::{Loads, Service};
use crate::engine::condition::Finding;
use crate::engine::entry::EntryId;
use crate::engine::geometry::Point;
use crate::engine::job::Job;
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
pub(super) const ON_MASONRY: Length = Length::inches(3);

/// A joist as measured and probed.
#[derive(Debug, Clone, PartialEq)]
pub struct Joist {
    /// Its number.
    pub number: JoistNumber,
    /// Across; none if nobody measured.
    pub breadth: Option<Length>,
    /// From the lower edge to the upper.
    pub depth: Option<Length>,
    /// Between the faces of its supports.
    pub clear: Option<Length>,
    /// What it rests on at its shorter end.
    pub bearing: Option<Length>,
    /// What that is to be.
    pub bearing_asked: Length,
    /// Did anybody say what its ends rest on?
    pub is_support_said: bool,
    /// How deep an awl goes in.
    pub soft: Option<Length>,
    /// How far along.
    pub soft_along: Option<Length>,
    /// Where; none if nobody said.
    pub soft_at: Option<SoftAt>,
    /// How deep it is notched, and where.
    pub notch: Option<(Length, NotchAt)>,
    /// How long that is along it.
    pub notch_along: Option<Length>,
    /// Its widest hole, and that one's distance from the nearest edge.
    pub hole: Option<(Length, Option<Length>)>,
    /// What was found on it and in its bays.
    pub found: Vec<Finding>,
    /// How wet it reads.
    pub reads: Reads,
}

/// What the latest readings say of a joist, from the best.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reads {
    /// As dry as dry lumber.
    Dry,
    /// Nobody read it.
    Unread,
    /// Over that, by a reading that is relative only.
    RelativelyWet,
    /// Over that.
    Wet,
}

/// Where a joist is soft.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SoftAt {
    /// At an edge: it loses depth.
    Edge,
    /// At a side: it loses breadth.
    Side,
    /// At an end: it loses bearing.
    End,
}

/// Where a notch is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotchAt {
    /// At an end, over the bearing.
    End,
    /// In an outer third of the span.
    Outer,
    /// In the middle third.
    Middle,
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

    /// The span that is designed for: between faces, and half of what each bearing has to
    /// be ([`Source::SpanMethod`]).
    pub fn span(&self) -> Option<Length> {
        Some(self.clear? + self.bearing_asked)
    }

    /// Was this found?
    pub fn has(&self, finding: Finding) -> bool {
        self.found.contains(&finding)
    }

    /// What it goes through.
    pub fn service(&self, shared: &Shared) -> Service {
        Service { is_wet: self.reads >= Reads::RelativelyWet, is_incised: shared.is_incised }
    }

    fn of(job: &Job, framing: &Framing, number: JoistNumber, read: &[(JoistNumber, Reads)]) -> Self {
        let said = Particulars::of(job);
        let part = Part::Joist(number);
        let of = |item| said.length_of_joist(&part, item);
        let own = |item| said.length(&part, item);
        let bears_on = said.words_of_joist(&part, &list::BEARS_ON);
        let bearing_asked = match bears_on {
            Some("masonry") => ON_MASONRY,
            _ => ON_WOOD,
        };
        let soft_at = match said.words(&part, &list::SOFT_FACE) {
            Some("near side" | "far side") => Some(SoftAt::Side),
            Some("end") => Some(SoftAt::End),
            Some(_) => Some(SoftAt::Edge),
            None => None,
        };
        // Nobody said where: where it weakens most.
        let notch_at = match said.words(&part, &list::NOTCH_AT) {
            Some("end") => NotchAt::End,
            Some("outer third") => NotchAt::Outer,
            _ => NotchAt::Middle,
        };
        let cut = |length: &Length| length.is_positive();
        Self {
            number,
            breadth: of(&list::BREADTH),
            depth: of(&list::DEPTH),
            clear: of(&list::CLEAR_SPAN),
            bearing: of(&list::BEARING),
            bearing_asked,
            is_support_said: bears_on.is_some(),
            soft: own(&list::SOFT_DEPTH),
            soft_along: own(&list::SOFT_LENGTH),
            soft_at,
            notch: own(&list::NOTCH).filter(cut).map(|depth| (depth, notch_at)),
            notch_along: own(&list::NOTCH_LENGTH),
            hole: own(&list::HOLE).filter(cut).map(|hole| (hole, own(&list::HOLE_TO_EDGE))),
            found: found(job, framing, number),
            reads: read.iter().filter(|(of, _)| *of == number).map(|(_, reads)| *reads).max().unwrap_or(Reads::Unread),
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
    let framing = Floor::of(job).and_then(|floor| floor.joists);
    let grave = job.now.conditions().values().filter(|it| is_grave(it.value.finding));
    let is_nowhere = |place: Option<EntryId>| match place.and_then(|place| job.now.places().get(&place)) {
        None => true,
        Some(place) if place.value.element != Element::Joist => false,
        Some(place) => {
            let number = framing.as_ref().and_then(|framing| number_of(place.value, framing));
            number.is_none_or(|number| framing.as_ref().is_none_or(|framing| number.get() > framing.count()))
        }
    };
    grave.filter(|it| is_nowhere(it.value.place)).count()
}

/// Does a finding speak against framing that it is on?
pub const fn is_grave(finding: Finding) -> bool {
    matches!(finding, Finding::Soft | Finding::Rotten | Finding::Cracked)
}

/// What was found at places on a joist, and in its bay.
fn found(job: &Job, framing: &Framing, number: JoistNumber) -> Vec<Finding> {
    let here = job.now.conditions().values().filter(|it| {
        let place = it.value.place.and_then(|place| job.now.places().get(&place));
        place.is_some_and(|place| number_of(place.value, framing) == Some(number))
    });
    let mut found: Vec<_> = here.map(|it| it.value.finding).collect();
    found.sort_unstable();
    found.dedup();
    found
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
    for (_, reading, known) in readings(job) {
        let Some(place) = job.now.places().get(&reading.value.place) else { continue };
        let reads = match (known.value.corrected.is_above(WET), known.value.relative) {
            (false, _) => Reads::Dry,
            (true, true) => Reads::RelativelyWet,
            (true, false) => Reads::Wet,
        };
        if let Some(joist) = number_of(place.value, framing) {
            latest.insert(reading.value.place, (joist, reads));
        }
    }
    latest.into_iter().map(|(_, read)| read).collect()
}
