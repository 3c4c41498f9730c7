//! Notches and holes. Source: [`Source::JoistCuts`], [`Source::HolesApart`],
//! [`Source::EngineeredWood`].

use super::notches::notches;
use super::reason;
use crate::engine::framing::joist::Joist;
use crate::engine::framing::member::MemberType;
use crate::engine::framing::schedule::{Fate, NEW, Reason};
use crate::engine::framing::section::{CutLimits, Section};
use crate::engine::framing::since::Since;
use crate::engine::framing::spots::{Hole, Notch, NotchAt, Stretch};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

pub(super) fn reasons(joist: &Joist, units: Units) -> Vec<Reason> {
    let Some(section) = joist.section() else { return Vec::new() };
    let limits = section.cut_limits().value;
    let cuts = Cuts { joist, section, limits, units };
    let notches = notches(joist);
    let notches = notches.iter().filter_map(|notch| cuts.one_notch(notch));
    let holes = joist.spots.holes.iter().filter_map(|hole| cuts.one_hole(hole));
    notches.chain(holes).chain(cuts.apart()).collect()
}

/// Any cut in what is not sawn is its maker's or a designer's to allow.
pub(super) fn of_engineered(joist: &Joist, member: MemberType) -> Option<Reason> {
    (joist.spots.cut_count() > 0).then(|| {
        let words = format!("{}: cuts only as its maker or a designer allows", member.label());
        let since = joist.spots.cuts_since().and(joist.since.member);
        reason(Fate::Engineer, Source::EngineeredWood, since, words)
    })
}

/// Does this notch take nothing of what the joist carries: is it no deeper and no longer than
/// allowed where it is, or at an end, where the span's section goes on whole?
pub(super) fn is_allowed(notch: &Notch, joist: &Joist, limits: &CutLimits) -> bool {
    match notch.part(joist) {
        Some(NotchAt::End) => true,
        Some(NotchAt::Outer) => {
            notch.depth.is_some_and(|depth| depth <= limits.notch)
                && notch.stretch.long().is_some_and(|long| long <= limits.notch_length)
        }
        // In another span it takes nothing of this one, and is asked about.
        Some(NotchAt::Beyond) => notch.stretch.from.zip(joist.clear).is_some_and(|(from, clear)| from >= clear),
        Some(NotchAt::Middle) | None => false,
    }
}

/// What lies past the span that was measured is in another one, or over its support: no rule
/// here says which.
pub(super) fn beyond(what: &str, stretch: &Stretch, joist: &Joist, units: Units) -> Option<Reason> {
    let clear = joist.clear.filter(|clear| stretch.is_beyond(*clear))?;
    let along = stretch.ends().map_or(clear, |(from, to)| if from > clear { from } else { to });
    let words = format!(
        "{what} at {}, beyond the first span of {}: say where the next support is. If it is there, say the clear span \
         again; if the joist goes on past a support, an engineer looks",
        units.length(along),
        units.length(clear)
    );
    Some(reason(Fate::Open, Source::EngineerLooks, joist.since.span, words).ended_by(&NEW))
}

struct Cuts<'a> {
    joist: &'a Joist,
    section: Section,
    limits: CutLimits,
    units: Units,
}

impl Cuts<'_> {
    fn judged(&self, fate: Fate, since: Since, words: String) -> Option<Reason> {
        let since = Since::all([since, self.joist.since.section, self.joist.since.span]);
        let judged = reason(fate, Source::JoistCuts, since, words);
        Some(if fate == Fate::Open { judged.ended_by(&NEW) } else { judged })
    }

    fn one_notch(&self, notch: &Notch) -> Option<Reason> {
        let source = match () {
            () if notch.is_several => Source::NotchesTogether,
            () if notch.is_from_bearing(self.joist) => Source::EndNotches,
            () => Source::JoistCuts,
        };
        let judged = |fate, words: String| Some(Reason { source, ..self.judged(fate, notch.since, words)? });
        let shown = |length| self.units.length(length);
        let Some(depth) = notch.depth else {
            return judged(Fate::Open, again("measure how deep its notch is", &notch.stretch));
        };
        if !depth.is_positive() || notch.stretch.long().is_some_and(|long| !long.is_positive()) {
            return judged(Fate::Open, "a notch of 0: measure how deep and how long it is, or take it back".to_owned());
        }
        if notch.is_in_side() {
            let words = format!("notched {} deep in a side, where no rule here says how deep", shown(depth));
            return judged(Fate::Engineer, words);
        }
        let part = notch.part(self.joist);
        let (limit, place) = match part {
            Some(NotchAt::End) => (self.limits.notch_at_end, "at an end".to_owned()),
            Some(NotchAt::Outer) if notch.is_from_bearing(self.joist) => {
                (self.limits.notch, format!("from its bearing on, farther than {}", shown(self.limits.notch_length)))
            }
            Some(NotchAt::Outer) => (self.limits.notch, "in an outer third".to_owned()),
            Some(NotchAt::Middle) => (Length::ZERO, "in the middle third".to_owned()),
            Some(NotchAt::Beyond) | None => {
                let fate = if depth * 3 > self.section.depth { Fate::Engineer } else { Fate::Open };
                let words = format!("notched {} deep: say from where to where along it", shown(depth));
                let words = again(&words, &notch.stretch);
                let what = format!("notched {} deep", shown(depth));
                let beyond = beyond(&what, &notch.stretch, self.joist, self.units);
                return judged(fate, beyond.map_or(words, |beyond| beyond.words));
            }
        };
        if depth > limit {
            let most = if limit.is_positive() { format!("up to {}", shown(limit)) } else { "none".to_owned() };
            let fate = if depth * 3 > self.section.depth { Fate::Engineer } else { Fate::Sister };
            return judged(fate, format!("notched {} deep {place}, where {most} is allowed", shown(depth)));
        }
        match notch.stretch.long() {
            None => judged(Fate::Open, again("measure how long its notch is along it", &notch.stretch)),
            Some(long) if part == Some(NotchAt::Outer) && long > self.limits.notch_length => {
                let most = shown(self.limits.notch_length);
                judged(Fate::Sister, format!("notched {} long, where up to {most} is allowed", shown(long)))
            }
            Some(_) => None,
        }
    }

    fn one_hole(&self, hole: &Hole) -> Option<Reason> {
        let judged = |fate, words: String| self.judged(fate, hole.since, words);
        let open = |words: &str| judged(Fate::Open, again(words, &hole.stretch));
        let shown = |length| self.units.length(length);
        let limits = &self.limits;
        let Some(across) = hole.across else { return open("measure how large its hole is") };
        let most = match limits.hole_between_edges {
            most if most.is_positive() => {
                format!("up to {}, {} from edges, is allowed", shown(most), shown(limits.from_edges))
            }
            _ => format!("none is allowed in a joist so shallow, {} from both edges", shown(limits.from_edges)),
        };
        let words = format!("a hole of {}: {most}", shown(across));
        if across > limits.hole {
            return judged(Fate::Engineer, words);
        }
        let is_nothing = |length: Option<Length>| length.is_some_and(|length| !length.is_positive());
        if is_nothing(Some(across)) || is_nothing(hole.high) || is_nothing(hole.stretch.long()) {
            let words = "a hole of 0: measure how long and how high it is, or take it back";
            return judged(Fate::Open, words.to_owned());
        }
        let Some(to_edge) = hole.to_edge else { return open("measure from its hole to the nearest edge") };
        if to_edge < limits.from_edges || across > limits.hole_between_edges {
            return judged(Fate::Sister, words);
        }
        let Some(high) = hole.high else { return open("measure how high its hole is") };
        if to_edge * 2 + high > self.section.depth {
            let words = format!(
                "a hole {} high cannot be {} from its nearest edge in a joist of {}: measure it again",
                shown(high),
                shown(to_edge),
                shown(self.section.depth)
            );
            return judged(Fate::Open, words);
        }
        if hole.stretch.ends().is_none() {
            return open("say from where to where along it its hole is");
        }
        beyond("a hole", &hole.stretch, self.joist, self.units)
            .map(|reason| Reason { since: reason.since.and(hole.since), ..reason })
    }

    /// A hole keeps its distance from every other hole and notch.
    fn apart(&self) -> Option<Reason> {
        let spots = &self.joist.spots;
        if spots.holes.is_empty() || spots.cut_count() < 2 {
            return None;
        }
        let since = spots.cuts_since();
        let cuts =
            || spots.holes.iter().map(|hole| hole.stretch).chain(spots.notches.iter().map(|notch| notch.stretch));
        if cuts().any(|cut| cut.ends().is_none()) {
            let words = "say from where to where each of its notches and holes is: a hole keeps 2 in from the next cut";
            return Some(reason(Fate::Open, Source::HolesApart, since, words).ended_by(&NEW));
        }
        let holes = spots.holes.iter().map(|hole| hole.stretch).enumerate();
        let gaps = holes.flat_map(|(at, hole)| {
            cuts().enumerate().filter(move |(other, _)| *other != at).filter_map(move |(_, other)| gap(&hole, &other))
        });
        let least = gaps.min()?;
        (least < self.limits.from_edges).then(|| {
            let words = format!(
                "a hole {} from the next cut, where {} is asked for",
                self.units.length(least),
                self.units.length(self.limits.from_edges)
            );
            reason(Fate::Sister, Source::HolesApart, since, words)
        })
    }
}

/// What is asked of a cut of which something was not said. Logged again whole at the same place it
/// is the same; one that nobody placed may be anywhere.
fn again(asks: &str, stretch: &Stretch) -> String {
    let ends = match stretch.from.or(stretch.to) {
        Some(_) => "log it again at the same place",
        None => "log it again with where it is, and take this one back",
    };
    format!("{asks}; {ends}")
}

/// What is left between two cuts; none of what has no place.
fn gap(one: &Stretch, other: &Stretch) -> Option<Length> {
    let ((from, to), (begins, ends)) = (one.ends()?, other.ends()?);
    Some((begins - to).max(from - ends).max(Length::ZERO))
}
