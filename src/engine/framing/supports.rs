//! What carries the joists, and what is framed into them: flagged, and designed by others.

use super::again::{Spot, standing};
use super::damage::{Damage, Depth};
use super::done::done;
use super::joist::is_grave;
use super::measured::is_put_right;
use super::member::Done;
use super::places::Begins;
use super::since::Since;
use super::stretch::Stretch;
use crate::engine::describe::in_sentence;
use crate::engine::job::{Job, Seen};
use crate::engine::particular::{Part, Particular, Particulars, list};
use crate::engine::place::Element;
use crate::engine::sources::Source;

/// The state of a member that somebody looked at and found good.
pub const SOUND: &str = "sound";

/// Something that speaks against a member which carries joists.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unsound {
    /// The member.
    pub part: Part,
    /// What speaks against it, in words that name it.
    pub words: String,
    /// Since when it is known.
    pub since: Since,
    /// What that rests on.
    pub source: Source,
    /// Is it only that nobody could get an awl to it?
    pub is_unreached: bool,
    /// Was it found at a place, which does not tell one girder from another?
    pub is_at_a_place: bool,
}

/// The state of a member that no awl can get to.
const UNREACHED: &str = "cannot reach";

/// Girders, piers and ledgers that anything was said of, in order.
pub fn supports(job: &Job) -> Vec<&Part> {
    Particulars::of(job).parts(|part| matches!(part, Part::Girder(_) | Part::Pier(_) | Part::Ledger(_)))
}

/// What was said of a member that is not sound: its state, and how a girder's plies end. Wood
/// does not heal: a state that was bad once stands until it was put right in the same visit.
pub fn said_unsound(job: &Job) -> Vec<Unsound> {
    let said = Particulars::of(job);
    let carries =
        |part: &Part| matches!(part, Part::Girder(_) | Part::Pier(_) | Part::Ledger(_) | Part::RimJoist | Part::Sill);
    let mut unsound = Vec::new();
    for part in said.parts(carries) {
        let mut add = |thing: &Seen<'_, Particular>, what: &str, source| {
            let words = format!("{}: {what}{}", part.name(), thing.value.is.typed());
            let is_unreached = thing.value.is.typed() == UNREACHED;
            unsound.push(Unsound {
                part: part.clone(),
                words,
                since: Since::of(thing),
                source,
                is_unreached,
                is_at_a_place: false,
            });
        };
        let states: Vec<_> = said.each(part, &list::STATE).collect();
        let is = |thing: &Seen<'_, Particular>, state| thing.value.is.typed() == state;
        for thing in states.iter().filter(|thing| !is(thing, SOUND)) {
            // What could not be reached may be reached since.
            let stands = match is(thing, UNREACHED) {
                true => !states.iter().any(|by| by.when().is_after(thing.when())),
                false => !states.iter().any(|by| is(by, SOUND) && is_put_right(thing, by)),
            };
            if stands {
                add(thing, "", Source::EngineerLooks);
            }
        }
        let ends = said.last_words(part, &list::PLIES_END).into_iter();
        for thing in ends.filter(|it| matches!(it.value.is.typed(), "between piers" | "cannot see")) {
            add(&thing, "plies end ", Source::BuiltUpGirders);
        }
    }
    unsound
}

/// Members that carry joists: those that anything was said of, and rim joist and sill, each
/// with what was last said of how it is.
pub fn looked_at(job: &Job) -> Vec<(&Part, Option<&str>)> {
    let said = Particulars::of(job);
    let always = [&Part::RimJoist, &Part::Sill];
    supports(job).into_iter().chain(always).map(|part| (part, said.words(part, &list::STATE))).collect()
}

/// Girders of which nobody said where their plies end, or not since they were replaced; the first
/// where none was spoken of. What an engineer has seen to is as that engineer says.
/// Source: [`Source::BuiltUpGirders`].
pub fn plies_untold(job: &Job) -> Vec<Part> {
    let said = Particulars::of(job);
    let mut girders: Vec<_> = said.parts(|part| matches!(part, Part::Girder(_))).into_iter().cloned().collect();
    if girders.is_empty() {
        girders.push(Part::Girder(1));
    }
    girders.retain(|part| {
        let replaced = done(said, part).into_iter().filter(|(done, _)| *done == Done::Replaced);
        let replaced = Since::all(replaced.map(|(_, since)| since));
        let is_told = Since::said(said, part, &list::PLIES_END).is_after(replaced);
        let last_done = said.words(part, &list::DONE).and_then(Done::said);
        !is_told && last_done != Some(Done::AsTheEngineerSays)
    });
    girders
}

/// Soft spots, notches and holes that are logged of such a member, and stand.
fn spots<'job>(job: &'job Job) -> Vec<Unsound> {
    let carries = job.now.damages().values().filter(|it| !matches!(it.value.of, Part::Joist(_) | Part::Joists));
    let spot = |it: Seen<'job, Damage>| Spot {
        damage: it.value,
        stretch: Stretch::of(it.value, Begins::at_its_end()),
        since: Since::of(&it),
    };
    // A new member in its place ends them all ([`unsound`]).
    let all: Vec<_> = carries.map(spot).collect();
    let stand = all.iter().zip(standing(&all, &[])).filter(|(spot, stands)| *stands && spot.damage.is_bad());
    let says = |spot: &Spot<'_>| {
        let Damage { of, kind, depth, .. } = spot.damage;
        let is_unreached = *depth == Some(Depth::CannotReach);
        let what = if is_unreached { "a spot that no awl can reach" } else { kind.found() };
        let words = format!("{}: {what}", of.name());
        Unsound {
            part: of.clone(),
            words,
            since: spot.since,
            source: Source::EngineerLooks,
            is_unreached,
            is_at_a_place: false,
        }
    };
    stand.map(|(spot, _)| says(spot)).collect()
}

/// What was found at places on rims, sills and girders.
fn found(job: &Job) -> impl Iterator<Item = Unsound> {
    job.now.conditions().values().filter(|it| is_grave(it.value.finding)).filter_map(|it| {
        let place = job.now.places().get(&it.value.place?)?;
        let since = Since::of(&it).and(Since::of(&place));
        let place = place.value;
        let part = carrier(place.element)?;
        let words = format!("{}: {}", place.name(), in_sentence(it.value.finding.label()));
        Some(Unsound { part, words, since, source: Source::EngineerLooks, is_unreached: false, is_at_a_place: true })
    })
}

/// The part that a place on such an element speaks for. Girders are not told apart by
/// their places: a finding on one stands against the first.
pub const fn carrier(element: Element) -> Option<Part> {
    match element {
        Element::RimJoist => Some(Part::RimJoist),
        Element::Sill => Some(Part::Sill),
        Element::Girder => Some(Part::Girder(1)),
        Element::Joist | Element::SubfloorBelow | Element::SubfloorAbove | Element::FinishedFloor => None,
    }
}

/// What carries the joists and is not sound, as long as nobody said later that it was seen
/// to: as it was said to be, as its spots are logged, and as girders, sills and rims were
/// found. Source: [`Source::EngineerLooks`].
pub fn unsound(job: &Job) -> Vec<Unsound> {
    let said = Particulars::of(job);
    let is_open = |unsound: &Unsound| {
        let ends = |(done, when): &(Done, Since)| {
            matches!(done, Done::Replaced | Done::AsTheEngineerSays) && when.is_after(unsound.since)
        };
        // A place tells no girder from another: whichever was seen to, an awl tells there.
        let is_one = |part: &Part| {
            *part == unsound.part
                || unsound.is_at_a_place && matches!((part, &unsound.part), (Part::Girder(_), Part::Girder(_)))
        };
        !said.parts(is_one).into_iter().any(|part| done(said, part).iter().any(ends))
    };
    let mut all: Vec<_> = said_unsound(job).into_iter().chain(spots(job)).chain(found(job)).collect();
    all.retain(is_open);
    all.dedup_by(|one, other| one.words == other.words);
    all
}
