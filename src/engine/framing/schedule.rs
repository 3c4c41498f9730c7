//! The joist schedule: what is to become of each joist, with the reasons.
//!
//! Each thing that speaks against a joist gives a reason, and the gravest decides. Only a
//! joist that was measured, probed sound and graded can stay: what nobody knows is named
//! and never taken for good. It is a carpenter's judgement and no design: whatever is
//! grave goes to an engineer.

use super::design::DesignValues;
use super::joist::{Joist, NotchAt, Shared, SoftAt, found_nowhere, joists};
use super::section::Section;
use super::span::span;
use crate::engine::condition::Finding;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::Job;
use crate::engine::place::JoistNumber;
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// What counts as lost beyond what an awl finds soft ([`Source::SoftCountsNothing`]).
const BEYOND_SOFT: Length = Length::sixty_fourths(16);
/// More joists than this in a row are an engineer's ([`Source::EngineerLooks`]).
const MOST_IN_A_ROW: usize = 2;

/// What is to become of a joist, from the least grave.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// It can stay.
    Stays,
    /// Something has to be measured or seen first.
    Open,
    /// A sister beside it, or a hanger or ledger at its end.
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
    pub may_span: Option<(Length, Length)>,
    /// Does it need a hanger or a ledger, since an end bears on too little?
    pub is_short_of_bearing: bool,
}

impl Fate {
    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Stays => "it can stay",
            Self::Open => "not enough to say",
            Self::Sister => "sister it",
            Self::Replace => "replace it",
            Self::Engineer => "have an engineer look",
        }
    }
}

/// Every joist with what is to become of it. Source: [`Source::SpanMethod`],
/// [`Source::JoistCuts`], [`Source::Bearing`], [`Source::SoftCountsNothing`],
/// [`Source::JoistRepair`], [`Source::EngineerLooks`].
pub fn schedule(job: &Job, units: Units) -> Figure<Vec<Judged>> {
    let Some(shared) = Shared::of(job) else { return Figure::Missing(vec![Need::Joists]) };
    let mut value: Vec<_> = joists(job).into_iter().map(|joist| judged(joist, &shared, units)).collect();
    too_many_in_a_row(&mut value);
    let loads = format!("{} live, {} dead, psf", shared.loads.live, shared.loads.dead);
    let why = Why::rule(
        "What is left of each joist, by today's span method, limits of cuts and bearing.",
        &[Source::SpanMethod, Source::JoistCuts, Source::Bearing, Source::SoftCountsNothing, Source::EngineerLooks],
    )
    .with("widest spacing", units.length(shared.spacing))
    .with("loads", loads);
    let unplaced = found_nowhere(job);
    let unplaced = (unplaced > 0)
        .then(|| format!("Findings on joists that no number or plan places: {unplaced}. They count for none here."));
    let doubts = unplaced.into_iter().chain([
        "Nobody's design: local code and a licensed engineer decide.".to_owned(),
        Source::JoistRepair.noted("How to repair"),
        Source::Shoring.noted("Before anything is cut"),
    ]);
    Figure::Known(Known { value, assumed: shared.assumed, doubts: doubts.collect(), why })
}

/// What is to become of a joist, before its neighbours are looked at.
pub fn judged(joist: Joist, shared: &Shared, units: Units) -> Judged {
    let mut reasons = unknown(&joist);
    reasons.extend(decay(&joist, units));
    reasons.extend(cuts(&joist, units));
    reasons.extend(bearing(&joist, units));
    let is_short_of_bearing = joist.bearing.is_some_and(|bearing| bearing < joist.bearing_asked);
    let left = left_of(&joist);
    let may_span = left.and_then(|section| range(section, shared, &joist));
    reasons.extend(capacity(&joist, left, may_span, shared, units));
    reasons.sort_by_key(|reason| std::cmp::Reverse(reason.fate));
    let fate = reasons.first().map_or(Fate::Stays, |reason| reason.fate);
    Judged { joist, fate, reasons, may_span, is_short_of_bearing }
}

fn reason(fate: Fate, source: Source, words: impl Into<String>) -> Reason {
    Reason { fate, words: words.into(), source }
}

/// What nobody measured.
fn unknown(joist: &Joist) -> Vec<Reason> {
    let needs = [
        (joist.breadth.is_none(), "its breadth"),
        (joist.depth.is_none(), "its depth"),
        (joist.clear.is_none(), "its clear span"),
        (joist.bearing.is_none(), "what it bears on at its shorter end"),
    ];
    let missing: Vec<_> = needs.into_iter().filter(|(is_missing, _)| *is_missing).map(|(_, what)| what).collect();
    let mut reasons = Vec::new();
    if !missing.is_empty() {
        reasons.push(reason(Fate::Open, Source::SpanMethod, format!("measure {}", missing.join(", "))));
    }
    if joist.soft.is_none() {
        reasons.push(reason(
            Fate::Open,
            Source::SoftCountsNothing,
            "probe it: say how deep the awl goes in, 0 if it stops",
        ));
    }
    reasons
}

fn decay(joist: &Joist, units: Units) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if joist.has(Finding::Insects) {
        reasons.push(reason(Fate::Open, Source::InsectsNamed, "insects: have them named, and probe the galleries"));
    }
    if joist.has(Finding::Cracked) {
        reasons.push(reason(Fate::Engineer, Source::EngineerLooks, "found split or broken"));
    }
    let decayed = joist.has(Finding::Rotten) || joist.has(Finding::Soft);
    let Some(soft) = joist.soft.filter(|soft| soft.is_positive()) else {
        if decayed && joist.soft.is_some() {
            reasons.push(reason(
                Fate::Open,
                Source::SoftCountsNothing,
                "found soft, yet the awl stops at once: probe again",
            ));
        }
        return reasons;
    };
    let lost = soft + BEYOND_SOFT;
    let of = if joist.soft_at == SoftAt::Side { joist.breadth } else { joist.depth };
    let words = format!("soft {} deep: {} of it counts as nothing", units.length(soft), units.length(lost));
    reasons.push(match (joist.soft_at, of) {
        (SoftAt::End, _) => reason(Fate::Replace, Source::JoistRepair, format!("{words}, at its end, where it bears")),
        (_, Some(of)) if lost * 3 > of => {
            reason(Fate::Engineer, Source::EngineerLooks, format!("{words}, more than a third"))
        }
        _ if is_most_of_it(joist) => {
            reason(Fate::Replace, Source::JoistRepair, format!("{words}, along half its span or more"))
        }
        _ => reason(
            Fate::Sister,
            Source::JoistRepair,
            format!("{words}; dry it and cut the rot out before it is sistered"),
        ),
    });
    reasons
}

/// Is it soft along so much of its span that a sister has no sound wood to lie on?
fn is_most_of_it(joist: &Joist) -> bool {
    joist.soft_along.zip(joist.clear).is_some_and(|(along, clear)| along * 2 >= clear)
}

fn cuts(joist: &Joist, units: Units) -> Vec<Reason> {
    let Some(section) = joist.section() else { return Vec::new() };
    let limits = section.cut_limits().value;
    let mut reasons = Vec::new();
    if let Some((depth, at)) = joist.notch {
        let (limit, place) = match at {
            NotchAt::End => (limits.notch_at_end, "at an end"),
            NotchAt::Outer => (limits.notch, "in an outer third"),
            NotchAt::Middle => (Length::ZERO, "in the middle third"),
        };
        let is_long = at != NotchAt::End && joist.notch_along.is_some_and(|along| along > limits.notch_length);
        if depth > limit || is_long {
            let may = if is_long { limits.notch_length } else { limit };
            let what = if is_long { "as long as" } else { "as deep as" };
            let words =
                format!("notched {} {place}: {what} {} is allowed there", units.length(depth), units.length(may));
            let grave = depth * 3 > section.depth;
            reasons.push(reason(if grave { Fate::Engineer } else { Fate::Sister }, Source::JoistCuts, words));
        }
    }
    if let Some((hole, to_edge)) = joist.hole {
        let is_near = to_edge.is_some_and(|to_edge| to_edge < limits.from_edges);
        if hole > limits.hole || is_near {
            let most = units.length(limits.hole);
            let words = format!("a hole of {}: up to {most}, 2 in from edges, is allowed", units.length(hole));
            reasons.push(reason(Fate::Sister, Source::JoistCuts, words));
        } else if to_edge.is_none() {
            reasons.push(reason(Fate::Open, Source::JoistCuts, "measure from its hole to the nearest edge"));
        }
    }
    reasons
}

fn bearing(joist: &Joist, units: Units) -> Option<Reason> {
    let short = joist.bearing.filter(|bearing| *bearing < joist.bearing_asked)?;
    let words = format!(
        "bears on {} of {}: a hanger, a ledger, or a sister to the support",
        units.length(short),
        units.length(joist.bearing_asked)
    );
    Some(reason(Fate::Sister, Source::Bearing, words))
}

/// What is left of a joist: less what is soft, and less a notch in the middle.
fn left_of(joist: &Joist) -> Option<Section> {
    let whole = joist.section()?;
    let soft = joist.soft.filter(|soft| soft.is_positive()).map(|soft| soft + BEYOND_SOFT);
    let sound = match (soft, joist.soft_at) {
        (Some(lost), SoftAt::Edge) => whole.without_edge(lost),
        (Some(lost), SoftAt::Side) => whole.without_face(lost),
        (Some(_), SoftAt::End) | (None, _) => Some(whole),
    }?;
    match joist.notch {
        Some((depth, NotchAt::Middle)) => sound.without_edge(depth),
        _ => Some(sound),
    }
}

/// How far a section may span with the weakest and the strongest plausible wood. Its
/// values go by the size that the joist was cut to, not by what is left.
fn range(section: Section, shared: &Shared, joist: &Joist) -> Option<(Length, Length)> {
    let depth = joist.depth?;
    let plausible = shared.plausible();
    let values = plausible.iter().filter_map(|(group, grade)| DesignValues::of(*group, *grade, depth, shared.edition));
    let spans =
        values.map(|values| span(section, values, shared.spacing, shared.loads, joist.service(shared)).value.allowed());
    let spans: Vec<_> = spans.collect();
    spans.iter().min().copied().zip(spans.iter().max().copied())
}

fn capacity(
    joist: &Joist,
    left: Option<Section>,
    may_span: Option<(Length, Length)>,
    shared: &Shared,
    units: Units,
) -> Option<Reason> {
    let asked = joist.span()?;
    joist.section()?;
    let Some(left) = left else {
        return Some(reason(Fate::Replace, Source::SoftCountsNothing, "nothing sound is left of it"));
    };
    let Some((weakest, strongest)) = may_span else {
        return Some(reason(Fate::Engineer, Source::DesignValues, "no design values for lumber like this"));
    };
    let spans = format!("spans {}", units.length(asked.to_nearest(Length::sixty_fourths(4))));
    let may = |length: Length| units.length(length.to_nearest(Length::INCH));
    let holds = |(weakest, strongest): (Length, Length)| {
        if weakest == strongest {
            format!("it may {}", may(weakest))
        } else {
            format!("it may {} to {}", may(weakest), may(strongest))
        }
    };
    let says = format!("{spans}; by its wood {}", holds((weakest, strongest)));
    if asked <= weakest {
        // The weakest wood that it can be would do, yet nobody knows that it is even that.
        let is_known = shared.is_graded();
        return (!is_known).then(|| {
            reason(Fate::Open, Source::DesignValues, format!("{says}: find its stamp, or have somebody grade it"))
        });
    }
    if asked <= strongest {
        return Some(reason(
            Fate::Open,
            Source::DesignValues,
            format!("{says}: find its stamp, or have somebody grade it"),
        ));
    }
    let sistered = Section { breadth: left.breadth + joist.breadth?, ..left };
    let does = range(sistered, shared, joist).is_some_and(|(weakest, _)| asked <= weakest);
    let fate = if does { Fate::Sister } else { Fate::Engineer };
    Some(reason(fate, Source::SpanMethod, format!("{says}: too far")))
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
            judged.reasons.insert(0, reason(Fate::Engineer, Source::EngineerLooks, words.clone()));
        }
    }
}
