//! What carries the joists, and what is framed into them: flagged, and designed by others.

use super::joist::is_grave;
use crate::engine::describe::in_sentence;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::Element;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// Headers longer than these ask for more, each with what ([`Source::FramedOpenings`]).
const HEADERS: [(Length, &str); 2] =
    [(Length::feet(4), "double header and trimmers"), (Length::feet(6), "the header hung, or on a wall or beam")];
/// Tail joists longer than this are held ([`Source::FramedOpenings`]).
pub const HELD_TAIL: Length = Length::feet(12);

/// Girders, piers and ledgers that anything was said of, in order.
pub fn supports(job: &Job) -> Vec<&Part> {
    Particulars::of(job).parts(|part| matches!(part, Part::Girder(_) | Part::Pier(_) | Part::Ledger(_)))
}

/// Those whose last word is not that they are sound, with that word. Source:
/// [`Source::EngineerLooks`].
pub fn said_unsound(job: &Job) -> impl Iterator<Item = String> {
    let said = Particulars::of(job);
    supports(job).into_iter().filter_map(move |part| {
        let state = said.words(part, &list::STATE).filter(|state| *state != "sound")?;
        Some(format!("{}: {state}", part.name()))
    })
}

/// What carries the joists and is not sound: as it was said to be, and as girders, sills
/// and rims were found. Source: [`Source::EngineerLooks`].
pub fn unsound(job: &Job) -> Vec<String> {
    let found = job.now.conditions().values().filter(|it| is_grave(it.value.finding)).filter_map(|it| {
        let place = job.now.places().get(&it.value.place?)?.value;
        let carries = matches!(place.element, Element::Girder | Element::Sill | Element::RimJoist);
        carries.then(|| format!("{}: {}", place.name(), in_sentence(it.value.finding.label())))
    });
    let mut all: Vec<_> = said_unsound(job).chain(found).collect();
    all.dedup();
    all
}

/// What a header so long asks for, each with the span beyond which it does. Source:
/// [`Source::FramedOpenings`].
pub fn header_asks(span: Length) -> impl Iterator<Item = (Length, &'static str)> {
    HEADERS.into_iter().filter(move |(beyond, _)| span > *beyond)
}
