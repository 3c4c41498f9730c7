//! The scene of a job, and what was done about a cause.

use super::cause::Cause;
use super::evidence::Evidence;
use super::rank::{Ranking, rank};
use super::scene::{Read, Scene};
use crate::engine::air::{Air, AirLocation};
use crate::engine::condition::Finding;
use crate::engine::drying::air;
use crate::engine::entry::{EntryId, Label};
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::geometry::{Point, Rect};
use crate::engine::job::{InVisit, Job, When, last_words};
use crate::engine::moisture::{Answer, Corrected};
use crate::engine::place::Element;
use crate::engine::results::corrected;
use crate::engine::sources::Source;
use crate::engine::survey::{Floor, Shape};
use crate::engine::units::Temperature;
use crate::order;
use litemap::LiteMap;
use serde::{Deserialize, Serialize};

/// A question of the checklist, answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Check {
    /// Its name. One that this build does not know is kept and weighs nothing.
    pub of: Label,
    /// What was answered.
    pub answer: Answer,
}

/// The name under which it is answered whether a cause is dealt with.
pub fn dealt_with_name(cause: Cause) -> String {
    format!("dealt_with.{}", cause.name())
}

/// What was answered last to a question of the checklist; nothing where two phones answered
/// differently and nobody can tell which came last: it is open again.
pub fn is_answered(job: &Job, name: &str) -> Option<Answer> {
    let checks = job.now.checks().values().filter(|check| check.value.of.as_str() == name);
    let mut last = last_words(checks.map(|check| (check.when(), check.value.answer)));
    last.dedup();
    (last.len() == 1).then(|| last.first().copied()).flatten()
}

/// Where the water comes from. Source: [`Source::Evidence`].
pub fn origin(job: &Job) -> Figure<Ranking> {
    let (scene, used) = scene(job);
    if used.is_empty() {
        return Figure::Missing(vec![Need::Checks, Need::Reading]);
    }
    let value = rank(&Evidence::standard(), &scene);
    let why = Why::rule("What speaks for each cause and what against it, each weighed by itself.", &[Source::Evidence])
        .with("questions answered", scene.answers.len().to_string())
        .with("readings", scene.readings.len().to_string())
        .using(used);
    let doubts = vec!["A ranking of what was seen, and no finding: licensed trades open walls and pipes.".to_owned()];
    Figure::Known(Known { value, assumed: Vec::new(), doubts, why })
}

/// What answers a question of the checklist as well as a tap on it.
const SAID_BY_FINDINGS: [(Finding, &str); 2] =
    [(Finding::StandingWater, "water_on_soil"), (Finding::Sewage, "drain_smell")];

/// What was said to one question.
struct Said<'a> {
    id: EntryId,
    name: &'a str,
    answer: Answer,
    when: When,
    visit: InVisit,
}

/// What was answered and what was found.
fn all_said(job: &Job) -> Vec<Said<'_>> {
    let checks = job.now.checks().iter().map(|(id, it)| Said {
        id: *id,
        name: it.value.of.as_str(),
        answer: it.value.answer,
        when: it.when(),
        visit: it.in_visit(),
    });
    let found = job.now.conditions().iter().filter_map(|(id, it)| {
        let (_, name) = SAID_BY_FINDINGS.iter().find(|(finding, _)| *finding == it.value.finding)?;
        Some(Said { id: *id, name, answer: Answer::Yes, when: it.when(), visit: it.in_visit() })
    });
    checks.chain(found).collect()
}

/// Is it a yes that no "no" of the same visit put right? Nobody's "don't know" takes anything
/// back, and what a later visit does not see is gone and was there.
fn is_seen(yes: &Said<'_>, all: &[Said<'_>]) -> bool {
    let puts_right = |no: &Said<'_>| {
        no.name == yes.name && no.answer == Answer::No && no.visit.is_same(yes.visit) && no.when.is_after(yes.when)
    };
    yes.answer == Answer::Yes && !all.iter().any(puts_right)
}

/// Was what a question of the checklist asks seen, at any time, and not put right?
pub fn was_seen(job: &Job, name: &str) -> bool {
    let all = all_said(job);
    all.iter().any(|said| said.name == name && is_seen(said, &all))
}

/// Is what a question of the checklist asks seen as it was said last? Nobody's "don't know" takes
/// anything back, and of two phones that nothing puts in order the one counts that says yes.
pub fn is_seen_now(job: &Job, name: &str) -> bool {
    let all = all_said(job);
    let said = all.iter().filter(|said| said.name == name && said.answer != Answer::Unknown);
    last_words(said.map(|said| (said.when, said.answer))).contains(&Answer::Yes)
}

/// What a job knows, and the entries that say so.
fn scene(job: &Job) -> (Scene, Vec<EntryId>) {
    let mut said = all_said(job);
    order::sort_by(&mut said, |one, other| one.id.cmp(&other.id));
    let mut used: Vec<EntryId> = said.iter().map(|said| said.id).collect();
    let seen = said.iter().filter(|yes| is_seen(yes, &said)).map(|said| said.name.to_owned()).collect();
    // The last word counts that is one.
    let mut answers = LiteMap::<String, Answer>::new();
    for said in &said {
        if said.answer != Answer::Unknown || answers.get(said.name).is_none() {
            answers.insert(said.name.to_owned(), said.answer);
        }
    }
    let floor = Shape::of(job).map(|shape| shape.floor).or_else(|| Floor::of(job));
    let located = |place: EntryId| {
        let place = job.now.places().get(&place)?;
        Some((place.value.element, floor.as_ref()?.locate(place.value)?))
    };
    let found = job.now.conditions().iter().filter(|(_, condition)| condition.value.finding.is_fixture());
    let fixtures =
        found.filter_map(|(id, condition)| Some((*id, condition.value.finding, located(condition.value.place?)?.1)));
    let fixtures: Vec<_> = fixtures.collect();
    used.extend(fixtures.iter().map(|(id, ..)| *id));
    let readings = readings(job, located);
    used.extend(readings.iter().map(|(id, _)| *id));
    let air = dampest(job);
    used.extend(air.used.iter());
    let scene = Scene {
        answers,
        seen,
        fixtures: fixtures.into_iter().map(|(_, what, at)| (what, at)).collect(),
        readings: readings.into_iter().map(|(_, read)| read).collect(),
        room: floor.and_then(|floor| floor.outline.ok()).map(|outline| Rect::around(outline.corners())),
        crawl: air.crawl,
        outdoors: air.outdoors,
        coldest: air.coldest,
    };
    (scene, used)
}

/// The air of one visit.
#[derive(Default)]
struct Visited {
    crawl: Option<Air>,
    outdoors: Option<Air>,
    coldest: Option<Temperature>,
    used: Vec<EntryId>,
}

/// The air of the visit with the dampest crawl space, and with the fullest air outdoors of it;
/// without crawl air, what there is.
fn dampest(job: &Job) -> Visited {
    let of = |location: AirLocation| job.now.air().iter().filter(move |(_, air)| air.value.location == location);
    let crawl = air::dampest(of(AirLocation::Crawl).map(|(id, air)| (*id, air.value.air())));
    let visit = crawl.and_then(|(id, _)| Some(job.now.air().get(&id)?.in_visit()));
    let is_then = |other: InVisit| visit.is_none_or(|visit| visit.is_same(other));
    // One that is unlikely, and that no other of its visit bears out, says nothing.
    let of_visit = of(AirLocation::Crawl).filter(|(_, air)| is_then(air.in_visit()));
    let one_off = air::one_off(of_visit.map(|(_, air)| air.value.air()));
    let crawl = crawl.filter(|(_, air)| Some(*air) != one_off);
    let outdoors = of(AirLocation::Outdoors).filter(|(_, air)| is_then(air.in_visit()));
    let outdoors = air::fullest(outdoors.map(|(id, air)| (*id, air.value.air())));
    let surfaces = job.now.surfaces().iter().filter(|(_, surface)| is_then(surface.in_visit()));
    let coldest = surfaces.min_by_key(|(_, surface)| surface.value.temperature.value);
    let ids = [crawl.map(|(id, _)| id), outdoors.map(|(id, _)| id), coldest.map(|(id, _)| *id)];
    Visited {
        crawl: crawl.map(|(_, air)| air),
        outdoors: outdoors.map(|(_, air)| air),
        coldest: coldest.map(|(_, surface)| surface.value.temperature.value),
        used: ids.into_iter().flatten().collect(),
    }
}

/// Is it believed, and neither relative nor too high by its treatment?
fn is_evidence(known: &Corrected) -> bool {
    !known.relative && !known.doubted && known.may_read_high.is_none()
}

/// Of each place the wettest that it ever was: where water came from shows before it
/// dries. What is only relative, not believed, or too high by nobody knows how much shows nothing.
fn readings(job: &Job, located: impl Fn(EntryId) -> Option<(Element, Point)>) -> Vec<(EntryId, Read)> {
    let mut wettest: LiteMap<EntryId, (EntryId, Read)> = LiteMap::new();
    for (id, reading) in job.now.readings().iter() {
        let known = corrected(job, *id, reading).value;
        let Some((element, at)) = located(reading.value.place).filter(|_| is_evidence(&known)) else {
            continue;
        };
        let read = Read { element, at, moisture: known.corrected.bound() };
        let before = wettest.get(&reading.value.place).map(|(_, before)| before.moisture);
        if before.is_none_or(|before| read.moisture > before) {
            wettest.insert(reading.value.place, (*id, read));
        }
    }
    wettest.iter().map(|(_, read)| *read).collect()
}
