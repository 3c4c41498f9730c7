//! The decision, and every condition that it hangs on.
//!
//! Wet or infected wood is not enclosed ([`Source::DoNotEnclose`]); what that takes here is
//! written out, one condition after another. It is a record of what was read, and no
//! permit: local code and whoever signs decide.

use super::by_air::Ends;
use super::limits::{Limits, allowed};
use super::near::Near;
use super::read::Read;
use super::water::Water;
use super::{age, air, by_air, carriers, hazards, members, order, readings, room, stays, trust};
use crate::engine::figure::{Known, Why};
use crate::engine::framing::schedule;
use crate::engine::ground::checks::{checks, unvented_checks};
use crate::engine::job::Job;
use crate::engine::moisture::Answer;
use crate::engine::moisture::high::WITH_SALTS;
use crate::engine::origin::is_answered;
use crate::engine::sources::Source;
use crate::engine::take::Units;

/// What comes of all conditions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Decision {
    /// All hold.
    Ready,
    /// So many things are in the way.
    NotYet(usize),
    /// Nothing known is in the way, and so many things are not known.
    NotEnough(usize),
}

/// A condition of closing. It holds when nothing is in its way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Condition {
    /// What has to be so.
    pub what: String,
    /// What is in its way.
    pub in_the_way: Vec<InTheWay>,
    /// What was found, where it holds.
    pub found: String,
}

/// One thing in the way of closing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InTheWay {
    /// The thing.
    pub what: String,
    /// What ends it.
    pub ends: String,
    /// Is it known to be in the way? Otherwise nobody can tell, which keeps the floor open
    /// just as well.
    pub is_known: bool,
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
    pub fn label(self) -> String {
        let things = |count: usize| if count == 1 { "1 thing".to_owned() } else { format!("{count} things") };
        match self {
            Self::Ready => "Ready to close. Take the photos first".to_owned(),
            Self::NotYet(count) => format!("Not yet: {} in the way", things(count)),
            Self::NotEnough(count) => format!("Not enough to say: {} to find out", things(count)),
        }
    }

    /// May the floor be closed?
    pub const fn is_ready(self) -> bool {
        matches!(self, Self::Ready)
    }
}

impl InTheWay {
    /// Something that is known to be in the way.
    pub(super) fn known(what: impl Into<String>, ends: impl Into<String>) -> Self {
        Self { what: what.into(), ends: ends.into(), is_known: true }
    }

    /// Something that nobody can tell yet.
    pub(super) fn unknown(what: impl Into<String>, ends: impl Into<String>) -> Self {
        Self { what: what.into(), ends: ends.into(), is_known: false }
    }
}

impl Condition {
    pub(super) fn of(what: impl Into<String>, in_the_way: Vec<InTheWay>, found: impl Into<String>) -> Self {
        Self { what: what.into(), in_the_way, found: found.into() }
    }

    /// Is it so? None where that cannot be told.
    pub fn holds(&self) -> Option<bool> {
        match self.in_the_way.as_slice() {
            [] => Some(true),
            some if some.iter().any(|it| it.is_known) => Some(false),
            _ => None,
        }
    }
}

/// The check that says that the wettest places were read at depth. It never changes: jobs hold it.
pub const READ_AT_DEPTH: &str = "read_at_depth";

/// Whether the floor may be closed.
///
/// Source: [`Source::DoNotEnclose`], [`Source::DryLumber`], [`Source::FlooringGuide`],
/// [`Source::MeterAccuracy`].
pub fn close_in(job: &Job, units: Units) -> Known<CloseIn> {
    let limits = Limits::of(job);
    let near = Near::of(job);
    let read = Read::of(job, &limits, &near, units);
    let ends = Ends::of(job);
    let water = Water::of(job);
    let schedule = schedule(job, units);
    let mut conditions = vec![
        room::one_room(job, units),
        near.known(),
        members::joists(&schedule, &near),
        members::on_a_joist(job),
        carriers::carriers(job, &near, units),
        members::elsewhere(job),
        hazards::none_left(job),
        water.sources(),
        water.ground(),
        readings::enough(&read, &near),
    ];
    conditions.extend(readings::read_again(&read, &near));
    conditions.push(allowed(&limits));
    conditions.push(readings::framing(&read, limits.framing));
    conditions.push(stays::floor_that_stays(job, &read, limits.subfloor, &near));
    conditions.extend(readings::falling(&read, &near, &ends));
    conditions.push(by_air::none_too_dry(&read, &ends));
    conditions.push(air::crawl_air(job, limits.framing));
    conditions.push(order::in_order(job, units));
    conditions.push(order::one_visit(job));
    conditions.push(age::looked_at_lately(job, &schedule, &near, &water));
    conditions.push(trust::everything_read(job, units));
    let decision = decide(&conditions);
    let mut doubts = Vec::new();
    if is_answered(job, READ_AT_DEPTH) != Some(Answer::Yes) {
        doubts.push(
            "Pins at the face say little of the middle: read the wettest places at depth, with insulated pins."
                .to_owned(),
        );
    }
    doubts.extend(carriers::never_read(job, &near, &read));
    // No floor waits for these, and whoever closes it knows of them.
    let fails = checks(job, units).into_iter().chain(unvented_checks(job, units)).filter(|it| it.holds == Some(false));
    doubts.extend(fails.map(|it| it.source.noted(&format!("{}: {}", it.what, it.says))));
    doubts.push(Source::WaterConductingFungi.noted("Dry readings do not rule out a fungus with strands"));
    doubts.push(Source::DecayFromWetter.noted("Dry readings do not rule out rot beside wetter wood"));
    let why = Why::rule(
        "It is ready once all near what comes out is settled, seen to, dry by more than a meter can be off, and read in \
         this visit.",
        &[
            Source::DoNotEnclose,
            Source::DryLumber,
            Source::FlooringGuide,
            Source::MeterAccuracy,
            Source::WaterConductingFungi,
        ],
    )
    .with("framing", limits.framing.words())
    .with("subfloor", limits.subfloor.words())
    .using(read.entries());
    let mut assumed = schedule.as_known().map(|known| known.assumed.clone()).unwrap_or_default();
    if read.is_of_treated() && !assumed.iter().any(|it| it == WITH_SALTS) {
        assumed.push(WITH_SALTS.to_owned());
    }
    Known { value: CloseIn { decision, conditions, limits }, assumed, doubts, why }
}

/// Anything in the way keeps the floor open, known or not.
fn decide(conditions: &[Condition]) -> Decision {
    let all = || conditions.iter().flat_map(|condition| &condition.in_the_way);
    match (all().filter(|it| it.is_known).count(), all().count()) {
        (_, 0) => Decision::Ready,
        (0, unknown) => Decision::NotEnough(unknown),
        (_, all) => Decision::NotYet(all),
    }
}
