//! Notches and holes. Source: [`Source::JoistCuts`], [`Source::HolesApart`],
//! [`Source::EngineeredWood`].

use super::reason;
use crate::engine::framing::joist::Joist;
use crate::engine::framing::member::MemberType;
use crate::engine::framing::schedule::{Fate, Reason};
use crate::engine::framing::section::{CutLimits, Section};
use crate::engine::framing::spots::{Hole, Notch, NotchAt, Stretch};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

pub(super) fn reasons(joist: &Joist, units: Units) -> Vec<Reason> {
    let Some(section) = joist.section() else { return Vec::new() };
    let limits = section.cut_limits().value;
    let notches = joist.spots.notches.iter().filter_map(|notch| one_notch(joist, notch, section, &limits, units));
    let holes = joist.spots.holes.iter().filter_map(|hole| one_hole(hole, &limits, units));
    notches.chain(holes).chain(apart(joist, &limits, units)).collect()
}

/// Any cut in what is not sawn is its maker's or a designer's to allow.
pub(super) fn of_engineered(joist: &Joist, member: MemberType) -> Option<Reason> {
    (joist.spots.cut_count() > 0).then(|| {
        let words = format!("{}: cuts only as its maker or a designer allows", member.label());
        reason(Fate::Engineer, Source::EngineeredWood, words)
    })
}

fn one_notch(joist: &Joist, notch: &Notch, section: Section, limits: &CutLimits, units: Units) -> Option<Reason> {
    let judged = |fate, words: String| Some(reason(fate, Source::JoistCuts, words));
    let Some(depth) = notch.depth else { return judged(Fate::Open, "measure how deep its notch is".to_owned()) };
    let part = notch.part(joist.clear);
    let (limit, place) = match part {
        Some(NotchAt::End) => (limits.notch_at_end, "at an end"),
        Some(NotchAt::Outer) => (limits.notch, "in an outer third"),
        // Nobody said where: where it weakens most.
        Some(NotchAt::Middle) | None => (Length::ZERO, "in the middle third"),
    };
    if depth > limit && part.is_some() {
        let most = if limit.is_positive() { format!("up to {}", units.length(limit)) } else { "none".to_owned() };
        let fate = if depth * 3 > section.depth { Fate::Engineer } else { Fate::Sister };
        return judged(fate, format!("notched {} deep {place}, where {most} is allowed", units.length(depth)));
    }
    if part.is_none() {
        let fate = if depth * 3 > section.depth { Fate::Engineer } else { Fate::Open };
        return judged(fate, format!("notched {} deep: say from where to where along it", units.length(depth)));
    }
    if part == Some(NotchAt::End) {
        return None;
    }
    match notch.stretch.long() {
        None => judged(Fate::Open, "measure how long its notch is along it".to_owned()),
        Some(long) if long > limits.notch_length => {
            let most = units.length(limits.notch_length);
            judged(Fate::Sister, format!("notched {} long, where up to {most} is allowed", units.length(long)))
        }
        Some(_) => None,
    }
}

fn one_hole(hole: &Hole, limits: &CutLimits, units: Units) -> Option<Reason> {
    let judged = |fate, words: String| Some(reason(fate, Source::JoistCuts, words));
    let Some(across) = hole.across else { return judged(Fate::Open, "measure how large its hole is".to_owned()) };
    let most = units.length(limits.hole);
    let words = format!(
        "a hole of {}: up to {most}, {} from edges, is allowed",
        units.length(across),
        units.length(limits.from_edges)
    );
    match hole.to_edge {
        _ if across > limits.hole => judged(Fate::Engineer, words),
        Some(to_edge) if to_edge < limits.from_edges => judged(Fate::Sister, words),
        Some(_) => None,
        None => judged(Fate::Open, "measure from its hole to the nearest edge".to_owned()),
    }
}

/// A hole keeps its distance from every other hole and notch.
fn apart(joist: &Joist, limits: &CutLimits, units: Units) -> Option<Reason> {
    let spots = &joist.spots;
    if spots.holes.is_empty() || spots.cut_count() < 2 {
        return None;
    }
    let cuts = || spots.holes.iter().map(|hole| hole.stretch).chain(spots.notches.iter().map(|notch| notch.stretch));
    if cuts().any(|cut| cut.ends().is_none()) {
        let words = "say from where to where each of its notches and holes is: a hole keeps 2 in from the next cut";
        return Some(reason(Fate::Open, Source::HolesApart, words));
    }
    let holes = spots.holes.iter().map(|hole| hole.stretch).enumerate();
    let gaps = holes.flat_map(|(at, hole)| {
        cuts().enumerate().filter(move |(other, _)| *other != at).filter_map(move |(_, other)| gap(&hole, &other))
    });
    let least = gaps.min()?;
    (least < limits.from_edges).then(|| {
        let words = format!(
            "a hole {} from the next cut, where {} is asked for",
            units.length(least),
            units.length(limits.from_edges)
        );
        reason(Fate::Sister, Source::HolesApart, words)
    })
}

/// What is left between two cuts; none of what has no place.
fn gap(one: &Stretch, other: &Stretch) -> Option<Length> {
    let ((from, to), (begins, ends)) = (one.ends()?, other.ends()?);
    Some((begins - to).max(from - ends).max(Length::ZERO))
}
