//! Whether the floor may be closed: every condition by itself, and what to do about each
//! that does not hold.
//!
//! Wet or infected wood is not enclosed ([`Source::DoNotEnclose`]); what that takes here is
//! written out, one condition after another. It is a record of what was read, and no
//! permit: local code and whoever signs decide.

use super::limits::{Limit, Limits, METER};
use crate::engine::condition::Finding;
use crate::engine::describe::place_name;
use crate::engine::entry::EntryId;
use crate::engine::extent::Group;
use crate::engine::figure::{Known, Why};
use crate::engine::job::Job;
use crate::engine::moisture::{Answer, Corrected};
use crate::engine::origin::{Word, dealt_with, is_answered, origin};
use crate::engine::place::{Place, Position};
use crate::engine::results::corrected;
use crate::engine::sources::Source;
use crate::engine::survey::Floor;
use crate::engine::take::Units;
use crate::engine::units::MoistureContent;
use litemap::LiteMap;
use std::collections::BTreeSet;

/// Fewer framing readings in one visit are not enough (judgement).
const FEWEST: usize = 5;

/// What comes of all conditions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Decision {
    /// All hold.
    Close,
    /// One does not.
    NotYet,
    /// None fails, and one or more cannot be told.
    NotEnough,
}

/// A condition of closing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Condition {
    /// What has to be so.
    pub what: String,
    /// Is it? None where that cannot be told.
    pub holds: Option<bool>,
    /// What was found, or what to do next.
    pub says: String,
}

/// The decision, and all that it hangs on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CloseIn {
    /// The decision.
    pub decision: Decision,
    /// Every condition.
    pub conditions: Vec<Condition>,
    /// The limits that were used.
    pub limits: Limits,
}

impl Decision {
    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Close => "Close",
            Self::NotYet => "Not yet",
            Self::NotEnough => "Not enough to say",
        }
    }
}

/// A place, how it was read last and how before.
struct Latest {
    reading: EntryId,
    place: Place,
    name: String,
    now: Corrected,
    before: Option<MoistureContent>,
    was_wet: bool,
    is_of_last_visit: bool,
}

/// Whether the floor may be closed.
///
/// Source: [`Source::DoNotEnclose`], [`Source::DryLumber`], [`Source::FlooringGuide`],
/// [`Source::MeterAccuracy`].
pub fn close_in(job: &Job, units: Units) -> Known<CloseIn> {
    let limits = Limits::of(job);
    let places = latest(job, &limits, units);
    let conditions = vec![
        enough(job, &places),
        read_again(&places),
        within(&places, Group::Framing, limits.framing),
        within(&places, Group::Underside, limits.subfloor),
        falling(&places),
        source(job),
        decay(job),
    ];
    let decision = match () {
        () if conditions.iter().any(|it| it.holds == Some(false)) => Decision::NotYet,
        () if conditions.iter().any(|it| it.holds.is_none()) => Decision::NotEnough,
        () => Decision::Close,
    };
    let mut doubts = close_calls(&places, &limits);
    if is_answered(job, "read_at_depth") != Some(Answer::Yes) {
        doubts.push(
            "Pins at the face say little of the middle: read the wettest places at depth, with insulated pins."
                .to_owned(),
        );
    }
    let why = Why::rule(
        "Enough readings, all within their limits, none rising, every likely source dealt with, no decayed wood left.",
        &[Source::DoNotEnclose, Source::DryLumber, Source::FlooringGuide, Source::MeterAccuracy],
    )
    .with("framing", limits.framing.words())
    .with("subfloor", limits.subfloor.words())
    .using(places.iter().map(|place| place.reading));
    Known { value: CloseIn { decision, conditions, limits }, assumed: Vec::new(), doubts, why }
}

/// Every place that was read, as it stands.
fn latest(job: &Job, limits: &Limits, units: Units) -> Vec<Latest> {
    let mut places: LiteMap<EntryId, Latest> = LiteMap::new();
    let last_visit = job.now.readings().values().next_back().map(|reading| reading.stamp.visit);
    for (id, reading) in job.now.readings().iter() {
        let Some(place) = job.now.places().get(&reading.value.place) else { continue };
        let now = corrected(job, reading).value;
        let limit = limit_of(place.value, limits).at;
        let before = places.get(&reading.value.place);
        let was_wet = before.is_some_and(|before| before.was_wet) || now.corrected.is_above(limit);
        let latest = Latest {
            reading: *id,
            name: place_name(place.value, units),
            place: place.value.clone(),
            before: before.map(|before| before.now.corrected.bound()),
            now,
            was_wet,
            is_of_last_visit: Some(reading.stamp.visit) == last_visit,
        };
        places.insert(reading.value.place, latest);
    }
    places.into_iter().map(|(_, place)| place).collect()
}

const fn limit_of(place: &Place, limits: &Limits) -> Limit {
    match Group::of(place.element) {
        Some(Group::Framing) => limits.framing,
        _ => limits.subfloor,
    }
}

fn condition(what: impl Into<String>, holds: Option<bool>, says: impl Into<String>) -> Condition {
    Condition { what: what.into(), holds, says: says.into() }
}

/// Five framing readings or more in the last visit that a limit can be held to, and one
/// on each joist under an opening.
fn enough(job: &Job, places: &[Latest]) -> Condition {
    let counted: Vec<_> = places
        .iter()
        .filter(|place| place.is_of_last_visit && !place.now.relative)
        .filter(|place| Group::of(place.place.element) == Some(Group::Framing))
        .collect();
    let read: BTreeSet<u16> = counted.iter().filter_map(|place| joist(&place.place)).collect();
    let unread: Vec<_> = joists_under_openings(job).into_iter().filter(|joist| !read.contains(joist)).collect();
    let what = format!("{FEWEST} framing readings in one visit, one on each joist under the opening");
    if counted.len() < FEWEST {
        return condition(what, None, format!("{} count so far: read more by pins", counted.len()));
    }
    if unread.is_empty() {
        return condition(what, Some(true), format!("{} count", counted.len()));
    }
    let joists: Vec<_> = unread.iter().map(u16::to_string).collect();
    condition(what, None, format!("read joist {}", joists.join(", ")))
}

const fn joist(place: &Place) -> Option<u16> {
    match &place.position {
        Position::OnJoist { joist, .. } => Some(joist.get()),
        Position::OnPlan { .. } | Position::Named => None,
    }
}

fn joists_under_openings(job: &Job) -> Vec<u16> {
    let Some(floor) = Floor::of(job) else { return Vec::new() };
    let Some(joists) = &floor.joists else { return Vec::new() };
    let run = joists.run();
    let is_under = |number: &u16| {
        let center = joists.center(*number);
        let within = |rect: &crate::engine::geometry::Rect| {
            run.across(rect.least()) <= center && center <= run.across(rect.most())
        };
        floor.openings.iter().any(|(_, rect)| within(rect))
    };
    (1..=joists.count()).filter(is_under).collect()
}

/// What was wet was read again since.
fn read_again(places: &[Latest]) -> Condition {
    let left: Vec<_> = places.iter().filter(|place| place.was_wet && !place.is_of_last_visit).collect();
    let what = "every place that was wet is read again in the last visit";
    match left.as_slice() {
        [] => condition(what, Some(true), "done"),
        some => condition(what, None, format!("read again: {}", names(some))),
    }
}

fn names(places: &[&Latest]) -> String {
    let names: Vec<_> = places.iter().take(4).map(|place| place.name.as_str()).collect();
    let more = if places.len() > 4 { format!(" and {} more", places.len() - 4) } else { String::new() };
    names.join("; ") + &more
}

fn within(places: &[Latest], group: Group, limit: Limit) -> Condition {
    let of_group: Vec<_> = places.iter().filter(|place| Group::of(place.place.element) == Some(group)).collect();
    let what = format!("{}: {:.0} % or less", group.label(), limit.at.to_percent());
    let (relative, counted): (Vec<_>, Vec<_>) = of_group.into_iter().partition(|place| place.now.relative);
    let over: Vec<_> = counted.iter().filter(|it| it.now.corrected.is_above(limit.at)).copied().collect();
    if !over.is_empty() {
        return condition(what, Some(false), format!("let it dry, and read again: {}", names(&over)));
    }
    if counted.is_empty() && !relative.is_empty() {
        return condition(
            what,
            None,
            "all readings are relative only: hold them to dry wood of the same kind".to_owned(),
        );
    }
    match counted.iter().map(|place| place.now.corrected.bound()).max() {
        Some(wettest) => condition(what, Some(true), format!("the wettest reads {:.1} %", wettest.to_percent())),
        None if group == Group::Framing => condition(what, None, "nothing was read"),
        None => condition(what, Some(true), "none that stays was read"),
    }
}

/// No place reads wetter than before by more than a meter can be off.
fn falling(places: &[Latest]) -> Condition {
    let rising = |place: &&Latest| {
        place.before.is_some_and(|before| place.now.corrected.bound().to_percent() > before.to_percent() + METER)
    };
    let rising: Vec<_> = places.iter().filter(rising).collect();
    match rising.as_slice() {
        [] => condition("no place is getting wetter", Some(true), "none is"),
        some => condition("no place is getting wetter", Some(false), format!("find out why: {}", names(some))),
    }
}

fn source(job: &Job) -> Condition {
    let what = "every likely source is dealt with";
    let figure = origin(job);
    let Some(ranking) = figure.value().filter(|ranking| ranking.is_enough) else {
        return condition(what, None, "where the water comes from is not known: answer the checklist");
    };
    let likely = ranking.causes.iter().filter(|ranked| ranked.word == Word::Likely);
    let open: Vec<_> = likely.filter(|ranked| dealt_with(job, ranked.cause) != Some(Answer::Yes)).collect();
    match open.as_slice() {
        [] if ranking.causes.iter().any(|ranked| ranked.word == Word::Likely) => condition(what, Some(true), "done"),
        [] => condition(what, None, "no source is likely yet: answer the next check"),
        [first, ..] => condition(what, Some(false), format!("{}: {}", first.cause.label(), first.cause.remedy())),
    }
}

/// Soft and rotten wood is probed and cut out, whatever a meter says of it.
fn decay(job: &Job) -> Condition {
    let what = "no decayed wood is left";
    let found = job.now.conditions().values().any(|it| matches!(it.value.finding, Finding::Soft | Finding::Rotten));
    match (found, is_answered(job, "decay_is_out")) {
        (false, _) => condition(what, Some(true), "none was found"),
        (true, Some(Answer::Yes)) => condition(what, Some(true), "cut out, or probed sound"),
        (true, _) => {
            condition(what, Some(false), "probe every soft place, cut out what is decayed, and answer the check")
        }
    }
}

/// Readings under a limit that a meter cannot tell from it.
fn close_calls(places: &[Latest], limits: &Limits) -> Vec<String> {
    let is_close = |place: &&Latest| {
        let limit = limit_of(&place.place, limits).at;
        let now = place.now.corrected.bound();
        !place.now.relative && now <= limit && now.to_percent() > limit.to_percent() - METER
    };
    let close: Vec<_> = places.iter().filter(is_close).collect();
    let says = || format!("Under the limit by less than the meter's 2 %: {}.", names(&close));
    (!close.is_empty()).then(says).into_iter().collect()
}
