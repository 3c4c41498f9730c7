//! The joist schedule: what is to become of each joist, with the reasons.
//!
//! Each thing that speaks against a joist gives a reason, and the gravest decides. Only a
//! joist that was measured, probed sound and graded can stay: what nobody knows is named
//! and never taken for good. It is a carpenter's judgement and no design: whatever is
//! grave goes to an engineer.

use super::joist::{Along, Joist, joists};
use super::member::{BearsOn, Done};
use super::places::are_treated;
use super::reasons::{does_alone, reason, reasons, said_apart};
use super::shared::Shared;
use super::since::Since;
use super::spots::Goes;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::moisture::high::WITH_SALTS;
use crate::engine::place::JoistNumber;
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// More joists than this in a row are an engineer's ([`Source::EngineerLooks`]).
const MOST_IN_A_ROW: usize = 2;

/// A sister is no thinner (judgement: lumber of 2 in by name).
const LEAST_SISTER: Length = Length::sixty_fourths(96);

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
    /// What settles it, if that was done; nothing does where it has to be said or seen.
    pub ended_by: &'static [Done],
    /// Since when it is known: what was done before settles nothing of it.
    pub since: Since,
    /// Was that done, and later?
    pub is_settled: bool,
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
}

impl Judged {
    /// Is it settled: it can stay, or each reason is ended by what was done later?
    pub fn is_settled(&self) -> bool {
        self.unsettled().next().is_none()
    }

    /// What it still asks for: what the gravest reason that nothing ended yet comes to.
    pub fn asks_for(&self) -> Fate {
        self.unsettled().map(|reason| reason.fate).max().unwrap_or(Fate::Stays)
    }

    /// The spans along which a sister is asked for and nothing ended that yet.
    pub fn wants_sisters_along(&self) -> Vec<Along> {
        let of = |way: Done| {
            let mut asks = self.unsettled().filter(|reason| reason.fate == Fate::Sister);
            asks.any(|reason| reason.ended_by.contains(&way))
        };
        let both = [(Along::First, Done::Sistered), (Along::Next, Done::SisteredBeyond)];
        both.into_iter().filter(|(_, way)| of(*way)).map(|(along, _)| along).collect()
    }

    /// The reasons that nothing ended yet.
    pub fn unsettled(&self) -> impl Iterator<Item = &Reason> {
        self.reasons.iter().filter(|reason| !reason.is_settled)
    }
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

/// Is a sister asked for along the span past the girder of any joist, or was it?
pub fn asks_for_sisters_beyond(schedule: &Figure<Vec<Judged>>) -> bool {
    let asks = |judged: &Judged| judged.reasons.iter().any(|reason| reason.ended_by.contains(&Done::SisteredBeyond));
    schedule.value().is_some_and(|all| all.iter().any(asks))
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
    let mut value: Vec<_> = joists(job).into_iter().map(|joist| as_put_in(job, joist, &shared, units)).collect();
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
    let mut assumed = shared.assumed;
    assumed.extend(are_treated(job).then(|| WITH_SALTS.to_owned()));
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

/// A sister or a new joist that is in is held to what sisters were said to be when it was put in, and
/// to what they are said to be now: what was said anew for others makes it no stronger.
fn as_put_in(job: &Job, joist: Joist, shared: &Shared, units: Units) -> Judged {
    let as_then = |put_in: &Since| {
        let then = shared.as_put_in(job, *put_in)?;
        Some(judged(joist.cut_of(then.sister), &then, units))
    };
    let all: Vec<_> = joist.put_in.iter().filter_map(as_then).collect();
    let now = judged(joist, shared, units);
    match all.into_iter().max_by_key(Judged::asks_for) {
        Some(mut then) if then.asks_for() > now.asks_for() => {
            let words = "sisters were said to be otherwise when it was put in: if it is as they are said to be now, say \
                         \"not yet\", and then again what was done";
            then.reasons.push(reason(Fate::Open, Source::JoistRepair, Since::ALWAYS, words));
            then
        }
        _ => now,
    }
}

/// What is to become of a joist, before its neighbours are looked at.
pub fn judged(joist: Joist, shared: &Shared, units: Units) -> Judged {
    let (mut reasons, may_span) = reasons(&joist, shared, units);
    reasons.sort_by_key(|reason| std::cmp::Reverse(reason.fate));
    let fate = reasons.first().map_or(Fate::Stays, |reason| reason.fate);
    let has_one = joist.done.iter().any(|(done, _)| *done == Done::Sistered);
    if fate == Fate::Sister || has_one && reasons.iter().any(Reason::is_ended_by_a_sister) {
        // Nothing ends it but saying it: a new joist is cut of the same.
        let apart = said_apart(&shared.sisters_said_apart, ("sisters", ""));
        reasons.extend(apart.map(|it| Reason { fate: Fate::Sister, ended_by: &[], ..it }));
        reasons.extend(too_thin(shared, units));
        let is_beyond_alone = !reasons.iter().any(|reason| reason.ended_by.contains(&Done::Sistered));
        let fits =
            sister_fits(&joist, shared, units).map(|it| if is_beyond_alone { it.of_the_one_beyond() } else { it });
        reasons.extend(fits);
    }
    for reason in &mut reasons {
        reason.since = reason.since.and(shared.numbered);
        reason.settle(&joist);
    }
    Judged { joist, fate, reasons, may_span }
}

/// A board thinner than a joist is sold takes no nails and no load beside one.
fn too_thin(shared: &Shared, units: Units) -> Option<Reason> {
    let sister = shared.sister.filter(|sister| sister.breadth < LEAST_SISTER)?;
    let [its, least] = [sister.breadth, LEAST_SISTER].map(|length| units.length(length));
    let words = format!("a board {its} thick is no sister: take one of {least} or more");
    Some(reason(Fate::Sister, Source::JoistRepair, shared.sister_since, words).ended_by(&NEW))
}

/// A sister is as deep as its joist, or something follows.
fn sister_fits(joist: &Joist, shared: &Shared, units: Units) -> Option<Reason> {
    let depth = joist.depth?;
    let since = Since::all([joist.since.section, joist.spots.soft_since(), shared.sister_since]);
    let judged = |source, words: String| reason(Fate::Sister, source, since, words);
    let Some(sister) = shared.sister else {
        // Nobody knows what stands beside it, even where a sister is said to.
        let words = "say how broad and deep sisters are: one is as deep as its joist".to_owned();
        return Some(judged(Source::JoistRepair, words).ended_by(&NEW));
    };
    let [its, joists] = [sister.depth, depth].map(|length| units.length(length));
    if sister.depth > depth {
        let words = format!(
            "a sister of {its} is deeper than its joist of {joists}: ripped, its stamp no longer counts and it is graded \
             anew; as it is, it stands over the floor or off its bearing"
        );
        return Some(judged(Source::RippedLumber, words));
    }
    // Beside a soft joist it may have to carry alone.
    let is_sound = joist.spots.soft.iter().all(|soft| soft.goes == Goes::Nowhere);
    let carries = is_sound || does_alone(joist, sister, shared);
    if sister.depth == depth {
        let since = Since::all([since, joist.since.span, shared.since]);
        let words = "by the weakest wood that a sister can be it does not carry alone what a soft joist may leave to it: \
                     say the species and grade of sisters and whether they are incised, or take a stronger one";
        return (!carries).then(|| reason(Fate::Sister, Source::SpanMethod, since, words).ended_by(&NEW));
    }
    let (what, ended_by) = match carries {
        true => ("count it with its own depth", &SISTER[..]),
        false => ("by itself it does not carry what a soft joist may leave to it: take one as deep", &NEW[..]),
    };
    let words = format!(
        "a sister of {its} is less deep than its joist of {joists}: hold it to the top edge, pack it up to its bearings, \
         and {what}"
    );
    Some(judged(Source::JoistRepair, words).ended_by(ended_by))
}

/// A hanger, a ledger, a lap or blocking ends what is wrong with how ends bear. A sister or a
/// new joist lies on the same support.
pub(super) const ENDS: [Done; 2] = [Done::EndsMended, Done::AsTheEngineerSays];
/// A sister beside it ends what its section lost and was never sound to carry.
pub(super) const SISTER: [Done; 3] = [Done::Sistered, Done::Replaced, Done::AsTheEngineerSays];
/// What fails past the girder a sister along the first span does not end.
pub(super) const SISTER_BEYOND: [Done; 3] = [Done::SisteredBeyond, Done::Replaced, Done::AsTheEngineerSays];
/// A new joist ends what was of the old one, known or not.
pub(super) const NEW: [Done; 2] = [Done::Replaced, Done::AsTheEngineerSays];
/// What nobody can see an engineer cannot either, and what is wet stays wet whoever looks:
/// only another joist ends it.
pub(super) const NEW_ALONE: [Done; 1] = [Done::Replaced];
/// What an engineer wrote ends what an engineer was asked for.
pub(super) const ENGINEER: [Done; 1] = [Done::AsTheEngineerSays];

impl Fate {
    /// What ends a reason that comes to this, if it says nothing else. What is not known is
    /// ended by saying it.
    pub(super) const fn ended_by(self) -> &'static [Done] {
        match self {
            Self::Stays | Self::Open => &[],
            Self::Mend => &ENDS,
            Self::Sister => &SISTER,
            Self::Replace => &NEW,
            Self::Engineer => &ENGINEER,
        }
    }
}

impl Reason {
    /// Does it ask for a sister, and something has to be said or chosen before one ends it?
    pub fn wants_a_sister_yet(&self) -> bool {
        self.fate == Fate::Sister && !self.is_ended_by_a_sister()
    }

    /// Does a sister end it, along one span or the other?
    pub(super) fn is_ended_by_a_sister(&self) -> bool {
        self.ended_by.iter().any(|way| matches!(way, Done::Sistered | Done::SisteredBeyond))
    }

    /// The same, ended by that.
    pub(super) fn ended_by(self, ended_by: &'static [Done]) -> Self {
        Self { ended_by, ..self }
    }

    /// The same of a sister past the girder.
    fn of_the_one_beyond(self) -> Self {
        if self.ended_by.contains(&Done::Sistered) { self.ended_by(&SISTER_BEYOND) } else { self }
    }

    fn settle(&mut self, joist: &Joist) {
        let ends = |(done, when): &(Done, Since)| self.ended_by.contains(done) && when.is_after(self.since);
        self.is_settled = joist.done.iter().any(ends);
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
        let in_run = || all.iter().filter(|judged| run.contains(&judged.joist.number));
        let since = Since::all(in_run().flat_map(|judged| &judged.reasons).map(|reason| reason.since));
        for judged in all.iter_mut().filter(|judged| run.contains(&judged.joist.number)) {
            judged.fate = Fate::Engineer;
            let mut reason = reason(Fate::Engineer, Source::EngineerLooks, since, words.clone());
            reason.settle(&judged.joist);
            judged.reasons.insert(0, reason);
        }
    }
}
