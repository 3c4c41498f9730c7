//! The joist schedule: what is to become of each joist, with the reasons.
//!
//! Each thing that speaks against a joist gives a reason, and the gravest decides. Only a
//! joist that was measured, probed sound and graded can stay: what nobody knows is named
//! and never taken for good. It is a carpenter's judgement and no design: whatever is
//! grave goes to an engineer.

use super::joist::{Joist, Shared, joists};
use super::member::{BearsOn, Done};
use super::reasons::{reason, reasons};
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::place::JoistNumber;
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// More joists than this in a row are an engineer's ([`Source::EngineerLooks`]).
const MOST_IN_A_ROW: usize = 2;

/// What is to become of a joist, from the least grave.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// It can stay.
    Stays,
    /// Something has to be measured or seen first.
    Open,
    /// A hanger, a ledger, a lap or blocking at its ends.
    Mend,
    /// A sister beside it.
    Sister,
    /// It comes out.
    Replace,
    /// An engineer looks at it.
    Engineer,
}

/// Why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reason {
    /// What it comes to, by itself.
    pub fate: Fate,
    /// In words.
    pub words: String,
    /// What that rests on.
    pub source: Source,
}

/// A joist, judged.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// The joist.
    pub joist: Joist,
    /// What is to become of it.
    pub fate: Fate,
    /// Every reason, the gravest first.
    pub reasons: Vec<Reason>,
    /// How far what is left of it may span: with the weakest and with the strongest
    /// plausible wood.
    pub may_span: Option<Range>,
    /// Is it settled: it can stay, or what it needs was said to be done, and nothing bad was
    /// said of it since?
    pub is_settled: bool,
}

/// How far a section may span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Range {
    /// With the weakest wood that it can be.
    pub weakest: Length,
    /// With the strongest.
    pub strongest: Length,
    /// Where the values are from: of several the least well seen.
    pub source: Source,
}

impl Fate {
    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Stays => "it can stay",
            Self::Open => "not enough to say",
            Self::Mend => "mend its ends",
            Self::Sister => "sister it",
            Self::Replace => "replace it",
            Self::Engineer => "have an engineer look",
        }
    }
}

/// "joist 2", "joists 3, 4", by their numbers.
pub fn named(numbers: &[String]) -> String {
    let word = if numbers.len() == 1 { "joist" } else { "joists" };
    format!("{word} {}", numbers.join(", "))
}

/// Every joist with what is to become of it. Source: [`Source::SpanMethod`],
/// [`Source::JoistCuts`], [`Source::Bearing`], [`Source::SoftCountsNothing`],
/// [`Source::JoistRepair`], [`Source::EngineerLooks`].
pub fn schedule(job: &Job, units: Units) -> Figure<Vec<Judged>> {
    let Some(shared) = Shared::of(job) else { return Figure::Missing(vec![Need::Joists]) };
    let mut value: Vec<_> = joists(job).into_iter().map(|joist| judged(joist, &shared, units)).collect();
    too_many_in_a_row(&mut value);
    let loads = format!("{} live, {} dead, psf", shared.loads.live, shared.loads.dead);
    let mut why = Why::rule(
        "What is left of each joist, by today's span method, limits of cuts and bearing.",
        &[Source::SpanMethod, Source::JoistCuts, Source::Bearing, Source::SoftCountsNothing, Source::EngineerLooks],
    )
    .with("widest spacing", units.length(shared.spacing))
    .with("loads", loads);
    for range in value.iter().filter_map(|judged| judged.may_span) {
        if !why.sources.contains(&range.source) {
            why.sources.push(range.source);
        }
    }
    let assumed = shared.assumed;
    let mut doubts = vec![
        "Nobody's design: local code and a licensed engineer decide.".to_owned(),
        Source::JoistRepair.noted("How to repair"),
        Source::Shoring.noted("Before anything is cut"),
    ];
    let any_on = |what: BearsOn| value.iter().any(|judged| judged.joist.bears_on == Some(what));
    doubts.extend(any_on(BearsOn::Ribbon).then(|| Source::Ribbon.noted("Joists on a ribbon")));
    doubts.extend(any_on(BearsOn::Hanger).then(|| Source::JoistsIntoGirders.noted("Joists into a girder's side")));
    Figure::Known(Known { value, assumed, doubts, why })
}

/// What is to become of a joist, before its neighbours are looked at.
pub fn judged(joist: Joist, shared: &Shared, units: Units) -> Judged {
    let (mut reasons, may_span) = reasons(&joist, shared, units);
    reasons.sort_by_key(|reason| std::cmp::Reverse(reason.fate));
    let fate = reasons.first().map_or(Fate::Stays, |reason| reason.fate);
    if fate == Fate::Sister {
        reasons.extend(sister_fits(&joist, shared, units));
    }
    let is_settled = is_settled(fate, &joist);
    Judged { joist, fate, reasons, may_span, is_settled }
}

/// A sister is as deep as its joist, or something follows.
fn sister_fits(joist: &Joist, shared: &Shared, units: Units) -> Option<Reason> {
    let words = match (shared.sister, joist.depth?) {
        (None, _) => "say how broad and deep sisters are: one is as deep as its joist".to_owned(),
        (Some(sister), depth) if sister.depth < depth => format!(
            "a sister of {} is less deep than its joist of {}: hold it to the top edge, pack it up to its bearings, and \
             count it with its own depth",
            units.length(sister.depth),
            units.length(depth)
        ),
        (Some(sister), depth) if sister.depth > depth => format!(
            "a sister of {} is deeper than its joist of {}: rip it, or it stands over the floor or off its bearing",
            units.length(sister.depth),
            units.length(depth)
        ),
        (Some(_), _) => return None,
    };
    Some(reason(Fate::Sister, Source::JoistRepair, words))
}

/// Was what it needs said to be done, after the last thing that speaks against it?
fn is_settled(fate: Fate, joist: &Joist) -> bool {
    if fate == Fate::Stays {
        return true;
    }
    let Some((said, done)) = joist.done else { return false };
    fate.is_settled_by(done) && joist.spots.last_bad.is_none_or(|bad| bad < said)
}

impl Fate {
    /// Does having done that settle it? A new joist settles what nobody knew of the old one.
    pub const fn is_settled_by(self, done: Done) -> bool {
        match self {
            Self::Stays => true,
            Self::Mend => true,
            Self::Sister => matches!(done, Done::Sistered | Done::Replaced | Done::AsTheEngineerSays),
            Self::Open | Self::Replace => matches!(done, Done::Replaced | Done::AsTheEngineerSays),
            Self::Engineer => matches!(done, Done::AsTheEngineerSays),
        }
    }
}

/// More than two joists in a row that cannot stay are an engineer's, all of them.
fn too_many_in_a_row(all: &mut [Judged]) {
    let fails = |judged: &Judged| judged.fate >= Fate::Sister;
    let next_to = |a: &Judged, b: &Judged| a.joist.number.step(1) == b.joist.number;
    let mut runs: Vec<Vec<JoistNumber>> = Vec::new();
    for run in all.chunk_by(|a, b| fails(a) == fails(b) && next_to(a, b)) {
        if run.len() > MOST_IN_A_ROW && run.iter().all(fails) {
            runs.push(run.iter().map(|judged| judged.joist.number).collect());
        }
    }
    for run in runs {
        let words = format!("{} joists in a row cannot stay as they are", run.len());
        for judged in all.iter_mut().filter(|judged| run.contains(&judged.joist.number)) {
            judged.fate = Fate::Engineer;
            judged.is_settled = is_settled(Fate::Engineer, &judged.joist);
            judged.reasons.insert(0, reason(Fate::Engineer, Source::EngineerLooks, words.clone()));
        }
    }
}
