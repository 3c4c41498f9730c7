//! What was read of the framing: enough of it, in this visit, within its limit by more than a
//! meter can be off.

use super::by_air::Ends;
use super::decision::{Condition, InTheWay};
use super::limits::{Limit, Verdict};
use super::near::Near;
use super::read::{Latest, Read};
use crate::engine::describe::counted;
use crate::engine::moisture::Material;
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::place::{Element, JoistNumber, Place, Position};
use crate::order;
use std::collections::BTreeSet;

/// Fewer framing readings in one visit are not enough (judgement).
pub const FEWEST: usize = 5;
/// So many places are named in one line.
const MOST_NAMED: usize = 4;

/// Five framing readings or more in this visit that a limit can be held to, and one on each
/// joist within a bay of what comes out.
pub(super) fn enough(read: &Read, near: &Near) -> Condition {
    let what = format!("{FEWEST} framing readings in this visit, one on each joist near what comes out");
    let measured: Vec<_> = read.framing().into_iter().filter(|place| place.is_measured()).collect();
    let there = measured.iter().filter(|place| near.reach().is_none_or(|reach| reach.is_along(&place.place)));
    let of_joists = there.filter_map(|place| Some((joist(&place.place)?, place)));
    let joists: BTreeSet<u16> = of_joists.map(|(joist, _)| joist.get()).collect();
    let unread: Vec<_> = near.joists().iter().filter(|joist| !joists.contains(joist)).map(u16::to_string).collect();
    let mut lines = Vec::new();
    if measured.len() < FEWEST {
        let count = format!("{} of {FEWEST} framing readings in this visit", measured.len());
        lines.push(InTheWay::unknown(count, "read more with pins"));
    }
    if !unread.is_empty() {
        let what = format!("no reading that counts in this visit, near what comes out: joist {}", unread.join(", "));
        lines.push(InTheWay::unknown(what, "read each with pins, and say how far along it"));
    }
    if read.unplaced > 0 {
        let what = format!("{} at a place that was taken back", counted(read.unplaced, "reading"));
        lines.push(InTheWay::unknown(what, "take the reading back too, or read it again where it was"));
    }
    Condition::of(what, lines, format!("{} count", measured.len()))
}

/// The joist that was read there; a sill beside it is none.
fn joist(place: &Place) -> Option<JoistNumber> {
    match &place.position {
        Position::OnJoist { joist, .. } if place.element == Element::Joist => Some(*joist),
        Position::OnJoist { .. } | Position::OnPlan { .. } | Position::Named => None,
    }
}

/// What was too wet, or not surely dry, is read again in this visit. A first visit has nothing to read again.
///
/// What comes out of the floor goes with its water.
pub(super) fn read_again(read: &Read, near: &Near) -> Option<Condition> {
    let stays = |place: &&Latest| !comes_out(place, near);
    let left: Vec<_> =
        read.places.iter().filter(|place| place.was_not_dry && !place.is_of_this_visit).filter(stays).collect();
    let is_nowhere = |place: &&Latest| near.reach().is_some_and(|reach| reach.is_nowhere(&place.place));
    let ends = match left.iter().any(is_nowhere) {
        true => "read it again; what came out, and nobody said where it was, take back under Log",
        false => "read it again",
    };
    let line =
        |left: &[&Latest]| InTheWay::unknown(format!("was not surely dry, and not read since: {}", names(left)), ends);
    let lines: Vec<_> = (!left.is_empty()).then(|| line(&left)).into_iter().collect();
    (!read.is_first_visit || !lines.is_empty())
        .then(|| Condition::of("every place that was not surely dry is read again in this visit", lines, "all are"))
}

/// Is it floor that comes out, and no framing?
fn comes_out(place: &Latest, near: &Near) -> bool {
    !place.place.element.is_framing() && near.reach().is_some_and(|reach| reach.comes_out(&place.place))
}

pub(super) fn names(places: &[&Latest]) -> String {
    let names: Vec<_> = places.iter().take(MOST_NAMED).map(|place| place.name.as_str()).collect();
    let left = places.len().saturating_sub(MOST_NAMED);
    let more = if left > 0 { format!(" and {left} more") } else { String::new() };
    names.join("; ") + &more
}

/// Joists, sills and girders are dry, by more than a meter can be off.
pub(super) fn framing(read: &Read, limit: Limit) -> Condition {
    let what = format!(
        "what was read of joists, sills and girders is {:.0} % or less, by more than a meter can be off",
        limit.at.to_percent()
    );
    let all: Vec<_> = read.framing().into_iter().filter(|place| place.speaks(limit)).collect();
    let mut lines = held_to(&all, limit);
    if !all.iter().any(|place| place.is_of_this_visit) {
        lines.push(InTheWay::unknown("no framing was read in this visit", "read it with pins"));
    }
    Condition::of(what, lines, wettest(&all))
}

/// What keeps a reading from being dry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Held {
    TooWet,
    NoMeter,
    NoMaterial,
    TooCold,
    Close,
    ByWood,
    BySalts,
    Doubted,
    Relative,
}

impl Held {
    /// In the order that they are told in.
    const ALL: [Self; 9] = [
        Self::TooWet,
        Self::NoMeter,
        Self::NoMaterial,
        Self::TooCold,
        Self::Close,
        Self::ByWood,
        Self::BySalts,
        Self::Doubted,
        Self::Relative,
    ];

    fn of(place: &Latest, limit: Limit) -> Option<Self> {
        match place.verdict(limit) {
            Verdict::Over | Verdict::Wet | Verdict::Soaked => Some(Self::TooWet),
            Verdict::Relative => Some(Self::Relative),
            _ if !place.is_by_pins => Some(Self::NoMeter),
            _ if place.material == Material::Unknown => Some(Self::NoMaterial),
            // What is neither the meter nor the wood.
            Verdict::Loose => Some(Self::TooCold),
            Verdict::Doubted => Some(Self::Doubted),
            Verdict::Close => Some(Self::Close),
            Verdict::CloseByWood => Some(Self::ByWood),
            Verdict::OverBySalts => Some(Self::BySalts),
            Verdict::Dry => None,
        }
    }

    fn line(self, places: &[&Latest], limit: Limit) -> InTheWay {
        let names = names(places);
        let unknown = |what: &str, ends: String| InTheWay::unknown(format!("{what}: {names}"), ends);
        let dry_enough = limit.at.to_percent() - METER_ERROR;
        match self {
            Self::TooWet => InTheWay::known(format!("too wet: {names}"), "let it dry, and read it again"),
            Self::NoMeter => unknown(
                "read by nobody knows which meter",
                "say which meter, one with pins; or read it again".to_owned(),
            ),
            Self::NoMaterial => {
                unknown("read on nobody knows what", "say that it is lumber, or what else; or read it again".to_owned())
            }
            Self::TooCold => unknown(
                "colder than any table goes, so that it may be wetter than it reads",
                "read it again where the wood is warmer, with the meter set for it".to_owned(),
            ),
            Self::Close => unknown(
                "within what a meter can be off of the limit",
                format!("let it dry to {dry_enough:.0} %, and read it again"),
            ),
            Self::ByWood => unknown(
                "may be wetter than it reads",
                format!("{}, or let it dry to {:.0} %", asks(places), dry_enough - low(places)),
            ),
            Self::BySalts => unknown(
                "over the limit by no more than their treatment may add",
                format!("let it dry to {dry_enough:.0} %, and read it again"),
            ),
            Self::Doubted => unknown(
                "read a number that nobody believes",
                "take it back if it was typed wrong, or read it again on another day".to_owned(),
            ),
            Self::Relative => {
                unknown("read relatively, which no limit is for", "read it with pins, in lumber".to_owned())
            }
        }
    }
}

/// Readings that have a limit, held to it.
pub(super) fn held_to(places: &[&Latest], limit: Limit) -> Vec<InTheWay> {
    let lines = Held::ALL.into_iter().filter_map(|held| {
        let like: Vec<_> = places.iter().copied().filter(|place| Held::of(place, limit) == Some(held)).collect();
        (!like.is_empty()).then(|| held.line(&like, limit))
    });
    lines.collect()
}

/// What would settle how wet the wood there is.
fn asks(places: &[&Latest]) -> String {
    order::once(places.iter().filter_map(|place| place.now.asks())).join("; ")
}

/// The most that any wood there may be wetter than it reads.
fn low(places: &[&Latest]) -> f64 {
    let low = places.iter().filter_map(|place| place.now.may_read_low).map(|low| low.points.to_percent());
    low.fold(0.0, f64::max)
}

pub(super) fn wettest(places: &[&Latest]) -> String {
    let wettest = places.iter().filter(|place| !place.now.relative).max_by_key(|place| place.now.corrected);
    wettest.map_or_else(String::new, |place| format!("the wettest reads {}", place.now.words()))
}

/// No place reads wetter than it did, by more than a meter can be off, since it was last too
/// wet: a little at a time rises too. What only takes on what the air holds is no leak. A first visit
/// has no before.
pub(super) fn falling(read: &Read, near: &Near, ends: &Ends) -> Option<Condition> {
    let is_rising = |place: &&Latest| match (place.before, place.now.corrected) {
        (Some(before), now) if now.is_over() => !before.is_over(),
        (Some(before), now) => now.bound().to_percent() > before.bound().to_percent() + METER_ERROR,
        (None, _) => false,
    };
    let stays = read.places.iter().filter(|place| place.is_of_this_visit && !comes_out(place, near));
    let rising: Vec<_> = stays.filter(is_rising).filter(|place| !ends.explain(place)).collect();
    let line = |rising: &[&Latest]| {
        InTheWay::known(format!("wetter than it was: {}", names(rising)), "find out why, and let it dry again")
    };
    let lines: Vec<_> = (!rising.is_empty()).then(|| line(&rising)).into_iter().collect();
    (!read.is_first_visit || !lines.is_empty())
        .then(|| Condition::of("no place is wetter than it was once it had dried", lines, "none is"))
}
