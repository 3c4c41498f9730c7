//! Named limits, each with its source unless the job states its own.

use super::decision::{Condition, InTheWay};
use crate::engine::job::Job;
use crate::engine::moisture::Corrected;
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::moisture::flooring::SUBFLOOR;
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, Typed};

/// Dry lumber's own limit ([`Source::DryLumber`]).
const FRAMING: MoistureContent = MoistureContent::percent(19);

/// Most fungi need this much to carry on ([`Source::DecaySpreads`]). It is no line that
/// decay keeps to: out of wetter wood beside it rot may go on below it
/// ([`Source::DecayFromWetter`]), and a fungus with strands brings its own water
/// ([`Source::WaterConductingFungi`]).
const DECAY_SPREADS: MoistureContent = MoistureContent::percent(20);

/// From about here on decay can begin: fiber saturation, less the meter's 2 %
/// ([`Source::DecayBegins`], [`Source::MeterAccuracy`]).
const DECAY_BEGINS: MoistureContent = MoistureContent::percent(28);

/// A limit, and who says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limit {
    /// Up to here it is dry enough.
    pub at: MoistureContent,
    /// Its source; none where the job states it.
    pub source: Option<Source>,
    /// What the job states, where that is above what anybody allows and does not count.
    pub too_high: Option<MoistureContent>,
}

/// The limits that a floor is closed by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Joists, sills and girders.
    pub framing: Limit,
    /// The subfloor under finished wood.
    pub subfloor: Limit,
}

/// What a reading says against its limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// It is compared with dry wood of its kind, and with no limit.
    Relative,
    /// Under the limit by more than a meter can be off.
    Dry,
    /// Under the limit, and not by enough to be sure.
    Close,
    /// Sure by the meter, and not by what is known of the wood.
    CloseByWood,
    /// Under it, by a number that it can't be held to: nobody said of which meter or of what
    /// wood, or it was colder than any table goes.
    Loose,
    /// A number that nobody believes.
    Doubted,
    /// Over it, by no more than its treatment may add.
    OverBySalts,
    /// Over it.
    Over,
    /// Decay that has begun goes on.
    Wet,
    /// Decay can begin.
    Soaked,
}

impl Limits {
    /// As the job states them, or as published.
    pub fn of(job: &Job) -> Self {
        // Nobody allows more than the usual limit (judgement).
        let limit = |stated: Option<&Typed<MoistureContent>>, usual: MoistureContent, source: Source| {
            let stated = stated.map(|stated| stated.value);
            match stated.filter(|stated| *stated <= usual) {
                Some(at) => Limit { at, source: None, too_high: None },
                None => Limit { at: usual, source: Some(source), too_high: stated },
            }
        };
        Self {
            framing: limit(job.framing_limit(), FRAMING, Source::DryLumber),
            subfloor: limit(job.subfloor_limit(), SUBFLOOR, Source::FlooringGuide),
        }
    }
}

impl Limit {
    /// "19.0 % (source; mark)".
    pub fn words(&self) -> String {
        let percent = |moisture: MoistureContent| format!("{:.1} %", moisture.to_percent());
        let at = match self.too_high {
            None => percent(self.at),
            Some(stated) => format!("{}, and not the {} stated for this job", percent(self.at), percent(stated)),
        };
        self.source.map_or_else(|| format!("{at} (stated for this job)"), |source| source.noted(&at))
    }
}

/// No limit that the job states is above what anybody allows.
pub(super) fn allowed(limits: &Limits) -> Condition {
    let both = [(limits.framing, "framing"), (limits.subfloor, "the subfloor")];
    let lines = both.into_iter().filter_map(|(limit, what)| {
        let stated = limit.too_high?.to_percent();
        let what = format!("a limit of {stated:.1} % for {what} is above what anybody allows");
        Some(InTheWay::known(what, format!("state {:.0} % or less", limit.at.to_percent())))
    });
    Condition::of("no limit is set higher than is allowed anywhere", lines.collect(), "none is")
}

/// What a reading says against a limit.
pub fn verdict(reading: &Corrected, limit: MoistureContent) -> Verdict {
    let moisture = reading.corrected.bound();
    match moisture {
        _ if reading.relative => Verdict::Relative,
        _ if reading.corrected.is_over() => Verdict::Soaked,
        _ if reading.doubted => Verdict::Doubted,
        _ if moisture >= DECAY_BEGINS => Verdict::Soaked,
        _ if moisture > limit && !reading.is_surely_above(limit) => Verdict::OverBySalts,
        _ if moisture > limit && moisture >= DECAY_SPREADS => Verdict::Wet,
        _ if moisture > limit => Verdict::Over,
        _ if !reading.is_firm() => Verdict::Loose,
        _ if !is_surely_under(moisture, limit) => Verdict::Close,
        _ if !is_surely_under(reading.at_worst(), limit) => Verdict::CloseByWood,
        _ => Verdict::Dry,
    }
}

/// Is it under the limit by more than a meter can be off?
fn is_surely_under(moisture: MoistureContent, limit: MoistureContent) -> bool {
    moisture.to_percent() <= limit.to_percent() - METER_ERROR
}

impl Verdict {
    /// The words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Relative => "relative only: compare it with dry wood of its kind",
            Self::Dry => "under the limit by more than a meter can be off",
            Self::Close => "under the limit by less than a meter can be off: read it again",
            Self::CloseByWood => "under the limit, unless the wood reads low",
            Self::Loose => "under the limit, by a number that can't be counted on",
            Self::Doubted => "a number that nobody believes: read it again",
            Self::OverBySalts => "over the limit by no more than its treatment may add: let it dry, and read it again",
            Self::Over => "over the limit for closing",
            Self::Wet => "wet: decay that has begun can go on",
            Self::Soaked => "soaked: decay can begin",
        }
    }

    /// What that rests on beside the limit.
    pub const fn source(self) -> Source {
        match self {
            Self::CloseByWood => Source::UnfoundWoods,
            Self::Relative | Self::Dry | Self::Close | Self::Loose | Self::Doubted | Self::Over => {
                Source::MeterAccuracy
            }
            Self::OverBySalts => Source::TreatedWood,
            Self::Wet => Source::DecaySpreads,
            Self::Soaked => Source::DecayBegins,
        }
    }
}
