//! The floor that stays beside what comes out: boards by their limit, panels by dry panel of
//! the same kind.

use super::decision::{Condition, InTheWay};
use super::limits::Limit;
use super::near::{Near, Reach};
use super::read::{Latest, Read, is_reference_place};
use super::readings::{held_to, wettest};
use crate::engine::extent::Group;
use crate::engine::job::Job;
use crate::engine::moisture::said::tenths;
use crate::engine::moisture::{Material, Stands};
use crate::engine::place::Place;
use crate::engine::results::panel_references;
use crate::engine::units::MoistureContent;

/// What is read relatively is as dry as dry wood of its kind within so many points of this
/// visit's reference reading (judgement).
pub const ABOVE_REFERENCE: f64 = 2.0;
/// Panel that shows more is not surely dry, and no reference: the subfloor's limit, and what
/// glue and wax may shift a reading by (judgement).
pub const DRIEST_PANEL: MoistureContent = MoistureContent::percent(14);

/// The floor that stays beside what comes out is dry.
pub(super) fn floor_that_stays(job: &Job, read: &Read, limit: Limit, near: &Near) -> Condition {
    let what = "the floor that stays is dry";
    if near.is_whole() {
        return Condition::of(what, Vec::new(), "none stays");
    }
    let comes_out = |place: &Place| near.reach().is_some_and(|reach| reach.comes_out(place));
    let stays: Vec<_> = read.floor().into_iter().filter(|place| !comes_out(&place.place)).collect();
    let all: Vec<_> = stays.into_iter().filter(|place| place.speaks(limit)).collect();
    let mut lines: Vec<_> = beside(&all, near).into_iter().collect();
    let (relative, counted): (Vec<_>, Vec<_>) = all.into_iter().partition(|place| place.now.relative);
    lines.extend(held_to(&counted, limit));
    lines.extend(relative.iter().filter_map(|place| against_reference(job, place, near)));
    let found = if counted.is_empty() { "within 2 points of dry panel".to_owned() } else { wettest(&counted) };
    Condition::of(what, lines, found)
}

/// The subfloor is read beside every opening, within a bay of it.
fn beside(all: &[&Latest], near: &Near) -> Option<InTheWay> {
    let is_read = |place: &&&Latest| place.is_of_this_visit && Group::of(place.place.element).is_some();
    let read: Vec<_> = all.iter().filter(is_read).map(|place| &place.place).collect();
    let ends = "read it beside what comes out, from below; panel also where it is dry, elsewhere in the house";
    if read.is_empty() {
        return Some(InTheWay::unknown("the floor that stays was not read in this visit", ends));
    }
    let is_beside = |reach: &Reach| reach.is_beside_each(&read);
    let is_lost = near.reach().is_some_and(|reach| !is_beside(reach));
    let what = "the floor that stays was not read within a bay of every opening";
    is_lost.then(|| InTheWay::unknown(what, format!("{ends}, and say how far along")))
}

/// A relative reading against dry wood of its kind, read in the same visit.
fn against_reference(job: &Job, place: &Latest, near: &Near) -> Option<InTheWay> {
    let name = &place.name;
    if place.now.corrected.is_over() {
        return Some(InTheWay::known(format!("over the meter's maximum: {name}"), "let it dry, and read it again"));
    }
    if place.now.doubted {
        return Some(InTheWay::unknown(format!("read a number that nobody believes: {name}"), "read it again"));
    }
    if place.material.is_lumber() || place.material == Material::Unknown {
        let what = format!("read relatively, which no limit is for: {name}");
        return Some(InTheWay::unknown(what, "read it with pins, and say what it was read on"));
    }
    let kind = place.material.label();
    let read_it = format!("read {kind} where it is surely dry, elsewhere in the house, with the same meter");
    let Some(reference) = reference(job, place, near) else {
        let what = format!("{kind} reads relatively, and no dry {kind} was read in this visit: {name}");
        return Some(InTheWay::unknown(what, read_it));
    };
    let at = reference.at.bound();
    if at > DRIEST_PANEL {
        let most = DRIEST_PANEL.to_percent();
        let what = format!("the {kind} to compare with is not surely dry itself: it may hold more than {most:.0} %");
        return Some(InTheWay::unknown(what, read_it));
    }
    let (most, dry) = match reference.at {
        // However far under the scale it is, it is no wetter than dry panel may be.
        Stands::Under(_) => (DRIEST_PANEL, "under the meter's scale".to_owned()),
        _ => (at, tenths(at)),
    };
    match (place.now.corrected, reference.at) {
        (Stands::Under(_), _) => None,
        (now, _) if now.bound().to_percent() > most.to_percent() + ABOVE_REFERENCE => {
            let dry_place = reference.place;
            let what = format!("more than 2 points over the dry {kind}, which reads {dry} ({dry_place}): {name}");
            let ends = "let it dry, and read both again; or take the dry one back if it was typed wrong";
            Some(InTheWay::known(what, ends))
        }
        (_, Stands::Under(_)) => {
            let what = format!("dry {kind} reads under the meter's scale, and nobody knows how far over it is: {name}");
            let ends = "let it dry until it reads under the scale too, or read both with a meter that shows a number";
            Some(InTheWay::unknown(what, ends))
        }
        _ => None,
    }
}

/// Dry panel to compare with: what it read, and where.
struct Reference {
    at: Stands,
    place: String,
}

/// The driest panel of this kind that was read in this visit, elsewhere, by the same meter: only that
/// tells the two apart, and nobody knows that two meters are one if none was named.
fn reference(job: &Job, place: &Latest, near: &Near) -> Option<Reference> {
    let visit = job.current_visit().map(|(visit, _)| visit);
    let all = panel_references(job, visit, place.material).into_iter();
    let like = all.filter(|it| it.meter.is_some() && it.meter == place.meter);
    let elsewhere = like.filter_map(|it| {
        let place = job.now.places().get(&it.place)?.value;
        is_reference_place(place, near).then(|| Reference { at: it.at, place: place.name() })
    });
    elsewhere.min_by_key(|it| it.at)
}
