//! What was read, and what it says: enough of it, in this visit, within its limits by more
//! than a meter can be off.

use super::decision::{Condition, InTheWay};
use super::limits::{Limit, Limits, Verdict, verdict};
use super::near::Near;
use crate::engine::describe::place_name;
use crate::engine::entry::EntryId;
use crate::engine::extent::Group;
use crate::engine::job::Job;
use crate::engine::moisture::correction::METER_ERROR;
use crate::engine::moisture::{Corrected, Material, Stands};
use crate::engine::place::{Place, Position};
use crate::engine::results::{corrected, panel_reference};
use crate::engine::take::Units;
use litemap::LiteMap;
use std::collections::BTreeSet;

/// Fewer framing readings in one visit are not enough (judgement).
pub const FEWEST: usize = 5;
/// What is read relatively is as dry as dry wood of its kind within so many points of this
/// visit's reference reading (judgement).
pub const ABOVE_REFERENCE: f64 = 2.0;
/// So many places are named in one line.
const MOST_NAMED: usize = 4;

/// Every place that was read, as it stands.
pub(super) struct Read {
    places: Vec<Latest>,
    is_first_visit: bool,
}

/// A place, how it was read last and how before.
struct Latest {
    reading: EntryId,
    place: Place,
    name: String,
    material: Material,
    meter: Option<EntryId>,
    now: Corrected,
    before: Option<Stands>,
    was_wet: bool,
    is_of_this_visit: bool,
}

impl Read {
    /// Of a job. What counts is of its last visit.
    pub(super) fn of(job: &Job, limits: &Limits, units: Units) -> Self {
        let mut places: LiteMap<EntryId, Latest> = LiteMap::new();
        let this_visit = job.current_visit().map(|(visit, _)| visit);
        // What was read elsewhere in the house, on dry panel, is no part of this floor.
        for (id, reading) in job.now.readings().iter().filter(|(_, reading)| !reading.value.reference) {
            let Some(place) = job.now.places().get(&reading.value.place) else { continue };
            let now = corrected(job, reading).value;
            let limit = limit_of(place.value, limits).at;
            let before = places.get(&reading.value.place);
            let latest = Latest {
                reading: *id,
                name: place_name(place.value, units),
                place: place.value.clone(),
                material: reading.value.wood.material,
                meter: reading.value.meter,
                before: before.map(|before| before.now.corrected),
                was_wet: before.is_some_and(|before| before.was_wet) || now.corrected.is_above(limit),
                now,
                is_of_this_visit: reading.stamp.visit == this_visit,
            };
            places.insert(reading.value.place, latest);
        }
        let is_first_visit = job.now.visits().len() <= 1;
        Self { places: places.into_iter().map(|(_, place)| place).collect(), is_first_visit }
    }

    /// The readings that count.
    pub(super) fn entries(&self) -> impl Iterator<Item = EntryId> {
        self.places.iter().map(|place| place.reading)
    }

    fn of_this_visit(&self, is_in: impl Fn(Group) -> bool) -> Vec<&Latest> {
        let in_group = |place: &&Latest| Group::of(place.place.element).is_some_and(&is_in);
        self.places.iter().filter(|place| place.is_of_this_visit).filter(in_group).collect()
    }
}

const fn limit_of(place: &Place, limits: &Limits) -> Limit {
    match Group::of(place.element) {
        Some(Group::Framing) => limits.framing,
        _ => limits.subfloor,
    }
}

/// Five framing readings or more in this visit that a limit can be held to, and one on each
/// joist within a bay of what comes out.
pub(super) fn enough(read: &Read, near: &Near) -> Condition {
    let what = format!("{FEWEST} framing readings in this visit, one on each joist near what comes out");
    let counted: Vec<_> =
        read.of_this_visit(|group| group == Group::Framing).into_iter().filter(|place| !place.now.relative).collect();
    let joists: BTreeSet<u16> = counted.iter().filter_map(|place| joist(&place.place)).collect();
    let unread: Vec<_> = near.joists().iter().filter(|joist| !joists.contains(joist)).map(u16::to_string).collect();
    let mut lines = Vec::new();
    if counted.len() < FEWEST {
        let count = format!("{} of {FEWEST} framing readings in this visit", counted.len());
        lines.push(InTheWay::unknown(count, "read more with pins"));
    }
    if !unread.is_empty() {
        let what = format!("not read in this visit: joist {}", unread.join(", "));
        lines.push(InTheWay::unknown(what, "read each with pins"));
    }
    Condition::of(what, lines, format!("{} count", counted.len()))
}

const fn joist(place: &Place) -> Option<u16> {
    match &place.position {
        Position::OnJoist { joist, .. } => Some(joist.get()),
        Position::OnPlan { .. } | Position::Named => None,
    }
}

/// What was wet is read again in this visit. A first visit has nothing to read again.
pub(super) fn read_again(read: &Read) -> Option<Condition> {
    let left: Vec<_> = read.places.iter().filter(|place| place.was_wet && !place.is_of_this_visit).collect();
    let line =
        |left: &[&Latest]| InTheWay::unknown(format!("was wet, and not read since: {}", names(left)), "read it again");
    let lines: Vec<_> = (!left.is_empty()).then(|| line(&left)).into_iter().collect();
    (!read.is_first_visit || !lines.is_empty())
        .then(|| Condition::of("every place that was wet is read again in this visit", lines, "all are"))
}

fn names(places: &[&Latest]) -> String {
    let names: Vec<_> = places.iter().take(MOST_NAMED).map(|place| place.name.as_str()).collect();
    let left = places.len().saturating_sub(MOST_NAMED);
    let more = if left > 0 { format!(" and {left} more") } else { String::new() };
    names.join("; ") + &more
}

/// Joists, sills and girders are dry, by more than a meter can be off.
pub(super) fn framing(read: &Read, limit: Limit) -> Condition {
    let what = format!(
        "joists, sills and girders read {:.0} % or less, by more than a meter can be off",
        limit.at.to_percent()
    );
    let counted = read.of_this_visit(|group| group == Group::Framing);
    let mut lines = held_to(&counted, limit);
    if counted.is_empty() {
        lines.push(InTheWay::unknown("no framing was read in this visit", "read it with pins"));
    }
    Condition::of(what, lines, wettest(&counted))
}

/// Readings that have a limit, held to it.
fn held_to(places: &[&Latest], limit: Limit) -> Vec<InTheWay> {
    let like = |is_like: fn(Verdict) -> bool| -> Vec<&Latest> {
        places.iter().filter(|place| is_like(verdict(&place.now, limit.at))).copied().collect()
    };
    let over = like(|verdict| matches!(verdict, Verdict::Over | Verdict::Wet | Verdict::Soaked));
    let close = like(|verdict| verdict == Verdict::Close);
    let by_wood = like(|verdict| verdict == Verdict::CloseByWood);
    let doubted = like(|verdict| verdict == Verdict::Doubted);
    let relative = like(|verdict| verdict == Verdict::Relative);
    let mut lines = Vec::new();
    if !over.is_empty() {
        lines.push(InTheWay::known(format!("too wet: {}", names(&over)), "let it dry, and read it again"));
    }
    if !close.is_empty() {
        let what = format!("within what a meter can be off of the limit: {}", names(&close));
        lines.push(InTheWay::unknown(
            what,
            format!("let it dry to {:.0} %, and read it again", limit.at.to_percent() - METER_ERROR),
        ));
    }
    if !by_wood.is_empty() {
        let what = format!("may be wetter than it reads, by its wood: {}", names(&by_wood));
        lines.push(InTheWay::unknown(
            what,
            format!("say its species and the meter's scale, or {}", dry_for_any(&by_wood, limit)),
        ));
    }
    if !doubted.is_empty() {
        let what = format!("read a number that nobody believes: {}", names(&doubted));
        lines.push(InTheWay::unknown(what, "read it again"));
    }
    if !relative.is_empty() {
        let what = format!("read relatively, which no limit is for: {}", names(&relative));
        lines.push(InTheWay::unknown(what, "read it with pins, in untreated lumber"));
    }
    lines
}

/// "let it dry to 14 %": so dry that no wood that it may be is over the limit.
fn dry_for_any(places: &[&Latest], limit: Limit) -> String {
    let low = places.iter().filter_map(|place| place.now.may_read_low).map(|low| low.points.to_percent());
    let most = low.fold(0.0, f64::max);
    format!("let it dry to {:.0} %", limit.at.to_percent() - METER_ERROR - most)
}

fn wettest(places: &[&Latest]) -> String {
    let wettest = places.iter().filter(|place| !place.now.relative).max_by_key(|place| place.now.corrected);
    wettest.map_or_else(String::new, |place| format!("the wettest reads {}", place.now.words()))
}

/// The floor that stays beside what comes out is dry: boards by their limit, panels by dry
/// panel of the same kind.
pub(super) fn floor_that_stays(job: &Job, read: &Read, limit: Limit, near: &Near) -> Condition {
    let what = "the floor that stays is dry";
    if near.is_whole() {
        return Condition::of(what, Vec::new(), "none stays");
    }
    let all = read.of_this_visit(|group| group != Group::Framing);
    if all.is_empty() {
        let ends = "read it beside what comes out, from below; panel also where it is dry, elsewhere in the house";
        return Condition::of(
            what,
            vec![InTheWay::unknown("the floor that stays was not read in this visit", ends)],
            "",
        );
    }
    let (relative, counted): (Vec<_>, Vec<_>) = all.into_iter().partition(|place| place.now.relative);
    let mut lines = held_to(&counted, limit);
    lines.extend(relative.iter().filter_map(|place| against_reference(job, place)));
    let found = if counted.is_empty() { "within 2 points of dry panel".to_owned() } else { wettest(&counted) };
    Condition::of(what, lines, found)
}

/// A relative reading against dry wood of its kind, read in the same visit.
fn against_reference(job: &Job, place: &Latest) -> Option<InTheWay> {
    let kind = place.material.label();
    let visit = job.current_visit().map(|(visit, _)| visit);
    // Only the same meter tells the two apart.
    let reference = panel_reference(job, visit, place.material).filter(|reference| reference.meter == place.meter);
    match (place.now.corrected, reference) {
        (Stands::Over(_), _) => {
            Some(InTheWay::known(format!("over the meter's maximum: {}", place.name), "let it dry, and read it again"))
        }
        (_, None) => Some(InTheWay::unknown(
            format!("{kind} reads relatively, and no dry {kind} was read in this visit: {}", place.name),
            format!("read {kind} where it is surely dry, elsewhere in the house, as the reference"),
        )),
        (now, Some(reference)) if now.bound().to_percent() > reference.at.to_percent() + ABOVE_REFERENCE => {
            Some(InTheWay::known(
                format!("more than 2 points over dry {kind}: {}", place.name),
                "let it dry, and read both again",
            ))
        }
        (_, Some(_)) => None,
    }
}

/// No place reads wetter than before by more than a meter can be off. A first visit has no
/// before.
pub(super) fn falling(read: &Read) -> Option<Condition> {
    let is_rising = |place: &&Latest| match (place.before, place.now.corrected) {
        (Some(before), now) if now.is_over() => !before.is_over(),
        (Some(before), now) => now.bound().to_percent() > before.bound().to_percent() + METER_ERROR,
        (None, _) => false,
    };
    let rising: Vec<_> = read.places.iter().filter(|place| place.is_of_this_visit).filter(is_rising).collect();
    let line =
        |rising: &[&Latest]| InTheWay::known(format!("wetter than last time: {}", names(rising)), "find out why");
    let lines: Vec<_> = (!rising.is_empty()).then(|| line(&rising)).into_iter().collect();
    (!read.is_first_visit || !lines.is_empty())
        .then(|| Condition::of("no place is wetter than last time", lines, "none is"))
}
