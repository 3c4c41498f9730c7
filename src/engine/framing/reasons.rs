//! What speaks against a joist, thing by thing.

use super::design::DesignValues;
use super::joist::{Joist, NotchAt, ON_MASONRY, Reads, Shared, SoftAt};
use super::schedule::{Fate, Range, Reason};
use super::section::Section;
use super::span::span;
use crate::engine::condition::Finding;
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// What counts as lost beyond what an awl finds soft ([`Source::SoftCountsNothing`]).
const BEYOND_SOFT: Length = Length::sixty_fourths(16);
/// Lumber no thicker has the design values that are known here: that of 2 in by name, and
/// an old house's ([`Source::DesignValues`]).
const THICKEST: Length = Length::sixty_fourths(160);
/// Fewer joists share no load ([`Source::SpanMethod`]).
const FEWEST: u16 = 3;

/// Everything that speaks against a joist, and how far what is left of it may span.
pub(super) fn reasons(joist: &Joist, shared: &Shared, units: Units) -> (Vec<Reason>, Option<Range>) {
    let mut reasons = unknown(joist);
    reasons.extend(wetness(joist));
    reasons.extend(decay(joist, units));
    reasons.extend(cuts(joist, units));
    reasons.extend(bearing(joist, units));
    let left = left_of(joist);
    let may_span = left.and_then(|section| range(section, shared, joist));
    reasons.extend(capacity(joist, left, may_span, shared, units));
    (reasons, may_span)
}

pub(super) fn reason(fate: Fate, source: Source, words: impl Into<String>) -> Reason {
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
    if !joist.is_support_said && joist.bearing.is_some_and(|bearing| bearing < ON_MASONRY) {
        reasons.push(reason(Fate::Open, Source::Bearing, "say what it bears on: wood, metal or masonry"));
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

/// An awl does not show all that wet wood has lost.
fn wetness(joist: &Joist) -> Option<Reason> {
    let words = match joist.reads {
        Reads::Wet => "it reads over 19 %: dry it, then read and probe it again",
        Reads::RelativelyWet => "it reads over 19 % by a reading that is relative only: read it with pins",
        Reads::Dry | Reads::Unread => return None,
    };
    Some(reason(Fate::Open, Source::DryLumber, words))
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
    match joist.soft.filter(|soft| soft.is_positive()) {
        Some(soft) => reasons.push(soft_wood(joist, soft, units)),
        None if decayed && joist.soft.is_some() => {
            let words = "found soft, yet the awl stops at once: probe again";
            reasons.push(reason(Fate::Open, Source::SoftCountsNothing, words));
        }
        None => {}
    }
    reasons
}

/// What so much soft wood comes to. Where a measurement is missing that could make it
/// worse, that is asked for, and nothing milder is said.
fn soft_wood(joist: &Joist, soft: Length, units: Units) -> Reason {
    let lost = soft + BEYOND_SOFT;
    let words = format!("soft {} deep: {} of it counts as nothing", units.length(soft), units.length(lost));
    let open = |what: &str| reason(Fate::Open, Source::EngineerLooks, format!("{words}; {what}"));
    let of = match joist.soft_at {
        None => return open("say where: an edge, a side or an end"),
        Some(SoftAt::End) => {
            return reason(Fate::Replace, Source::JoistRepair, format!("{words}, at its end, where it bears"));
        }
        Some(SoftAt::Side) => joist.breadth,
        Some(SoftAt::Edge) => joist.depth,
    };
    let Some(of) = of else { return open("measure its breadth and depth, to tell what part that is") };
    if (lost + notch_beside(joist)) * 3 > of {
        return reason(Fate::Engineer, Source::EngineerLooks, format!("{words}, with its cuts more than a third"));
    }
    match is_most_of_it(joist) {
        true => reason(Fate::Replace, Source::JoistRepair, format!("{words}, along half its span or more")),
        false => reason(
            Fate::Sister,
            Source::JoistRepair,
            format!("{words}; dry it and cut the rot out before it is sistered"),
        ),
    }
}

/// A notch takes of the same depth as decay at an edge.
fn notch_beside(joist: &Joist) -> Length {
    match joist.notch {
        Some((depth, NotchAt::Outer | NotchAt::Middle)) if joist.soft_at == Some(SoftAt::Edge) => depth,
        _ => Length::ZERO,
    }
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
        let most = if at == NotchAt::Middle { "none".to_owned() } else { format!("up to {}", units.length(limit)) };
        if depth > limit {
            let words = format!("notched {} deep {place}, where {most} is allowed", units.length(depth));
            let fate = if depth * 3 > section.depth { Fate::Engineer } else { Fate::Sister };
            reasons.push(reason(fate, Source::JoistCuts, words));
        }
        let long = joist.notch_along.filter(|along| at == NotchAt::Outer && *along > limits.notch_length);
        reasons.extend(long.map(|along| {
            let most = units.length(limits.notch_length);
            reason(
                Fate::Sister,
                Source::JoistCuts,
                format!("notched {} long, where up to {most} is allowed", units.length(along)),
            )
        }));
    }
    if let Some((hole, to_edge)) = joist.hole {
        let most = units.length(limits.hole);
        let words = format!("a hole of {}: up to {most}, 2 in from edges, is allowed", units.length(hole));
        match to_edge {
            _ if hole > limits.hole => reasons.push(reason(Fate::Engineer, Source::JoistCuts, words)),
            Some(to_edge) if to_edge < limits.from_edges => {
                reasons.push(reason(Fate::Sister, Source::JoistCuts, words));
            }
            Some(_) => {}
            None => reasons.push(reason(Fate::Open, Source::JoistCuts, "measure from its hole to the nearest edge")),
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
        (Some(lost), Some(SoftAt::Edge) | None) => whole.without_edge(lost),
        (Some(lost), Some(SoftAt::Side)) => whole.without_face(lost),
        (Some(_), Some(SoftAt::End)) | (None, _) => Some(whole),
    }?;
    match joist.notch {
        Some((depth, NotchAt::Middle)) => sound.without_edge(depth),
        _ => Some(sound),
    }
}

/// How far a section may span with the weakest and the strongest plausible wood. Its
/// values go by the size that the joist was cut to, not by what is left. None for what the
/// method does not hold for: thick timber, or joists too few to share a load.
fn range(section: Section, shared: &Shared, joist: &Joist) -> Option<Range> {
    let depth = joist.depth?;
    if joist.breadth? > THICKEST || shared.count < FEWEST {
        return None;
    }
    let plausible = shared.plausible();
    let values = plausible.iter().filter_map(|(group, grade)| DesignValues::of(*group, *grade, depth, shared.edition));
    let spans = values.map(|values| {
        let span = span(section, values, shared.spacing, shared.loads, joist.service(shared));
        (span.value.allowed(), values.source)
    });
    let spans: Vec<_> = spans.collect();
    let source = spans.iter().map(|(_, source)| *source).max_by_key(|source| source.citation().mark)?;
    let lengths = || spans.iter().map(|(length, _)| *length);
    Some(Range { weakest: lengths().min()?, strongest: lengths().max()?, source })
}

fn capacity(
    joist: &Joist,
    left: Option<Section>,
    may_span: Option<Range>,
    shared: &Shared,
    units: Units,
) -> Option<Reason> {
    let asked = joist.span()?;
    joist.section()?;
    let Some(left) = left else {
        return Some(reason(Fate::Replace, Source::SoftCountsNothing, "nothing sound is left of it"));
    };
    let Some(range) = may_span else {
        let words = "no design values for it: deeper or thicker than joists are, fewer than three of them, or a grade \
                     that none is known for";
        return Some(reason(Fate::Engineer, Source::DesignValues, words));
    };
    let says = format!(
        "spans {}; by its wood it may span {}",
        units.length(asked.up_to(Length::sixty_fourths(4))),
        range.words(units)
    );
    let stamp = || reason(Fate::Open, range.source, format!("{says}: find its stamp, or have somebody grade it"));
    if asked <= range.weakest {
        // The weakest wood that it can be would do, yet nobody knows that it is even that.
        return (!shared.is_graded()).then(stamp);
    }
    if asked <= range.strongest {
        return Some(stamp());
    }
    let sistered = Section { breadth: left.breadth + joist.breadth?, ..left };
    let does = self::range(sistered, shared, joist).is_some_and(|range| asked <= range.weakest);
    let fate = if does { Fate::Sister } else { Fate::Engineer };
    Some(reason(fate, range.source, format!("{says}: too far")))
}

impl Range {
    /// "12' 9\"", or "9' 2\" to 12' 9\"": rounded down, since it may span no more.
    pub fn words(self, units: Units) -> String {
        let down = |length: Length| units.length(length.down_to(Length::INCH));
        match self.weakest == self.strongest {
            true => down(self.weakest),
            false => format!("{} to {}", down(self.weakest), down(self.strongest)),
        }
    }
}
