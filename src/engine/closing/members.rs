//! The framing within one bay of what comes out: joists, rim joist, sill, girder.

use super::decision::{Condition, InTheWay};
use super::near::Near;
use super::trust::Answers;
use crate::engine::condition::{Condition as FoundThere, Finding};
use crate::engine::describe::counted;
use crate::engine::figure::Figure;
use crate::engine::framing::joist::{found_nowhere, is_grave, is_nowhere};
use crate::engine::framing::schedule::named;
use crate::engine::framing::supports::{carrier, unsound};
use crate::engine::framing::{Fate, Judged, schedule};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::Element;
use crate::engine::take::Units;

/// What comes out, and what it is above, is known.
pub(super) fn known(near: &Near) -> Condition {
    let in_the_way = match near {
        Near::NothingComesOut => {
            vec![InTheWay::unknown(
                "nobody said what comes out",
                "place the opening, or say that the whole floor comes out",
            )]
        }
        Near::NoJoists => vec![InTheWay::unknown("the joists are not laid out", "measure the first and the spacing")],
        Near::Joists { joists, .. } if joists.is_empty() => {
            vec![InTheWay::unknown("no joist lies under what comes out", "check the opening and the joists' places")]
        }
        Near::Joists { .. } => Vec::new(),
    };
    let found = format!("{} lie within a bay of it", counted(near.joists().len(), "joist"));
    Condition::of("what comes out is known, and the joists there", in_the_way, found)
}

/// Every joist there is settled.
pub(super) fn joists(job: &Job, near: &Near, units: Units) -> Condition {
    let what = "every joist there is sound, or what it needed is done";
    let judged = match schedule(job, units) {
        Figure::Missing(_) => Vec::new(),
        Figure::Known(known) => known.value,
    };
    let of = |number: &u16| judged.iter().find(|judged| judged.joist.number.get() == *number);
    let open = near.joists().iter().filter_map(of).filter(|judged| !judged.is_settled);
    // Joists of which the same is to be said stand in one line.
    let mut lines: Vec<(InTheWay, Vec<String>)> = Vec::new();
    for judged in open {
        let line = in_the_way(judged);
        let number = judged.joist.number.get().to_string();
        match lines.iter_mut().find(|(other, _)| *other == line) {
            Some((_, numbers)) => numbers.push(number),
            None => lines.push((line, vec![number])),
        }
    }
    let lines = lines
        .into_iter()
        .map(|(line, numbers)| InTheWay { what: format!("{}: {}", named(&numbers), line.what), ..line });
    Condition::of(what, lines.collect(), "all are")
}

/// What keeps a joist open: all that is not known of it, or else its gravest reason.
fn in_the_way(judged: &Judged) -> InTheWay {
    let gravest = || judged.reasons.first().map_or_else(String::new, |reason| reason.words.clone());
    let done = |what: &str| InTheWay::known(gravest(), format!("{what}, and say that it is done"));
    match judged.fate {
        Fate::Stays | Fate::Open => {
            let words: Vec<_> = judged.reasons.iter().map(|reason| reason.words.as_str()).collect();
            InTheWay::unknown("not enough to say", words.join("; "))
        }
        Fate::Mend => done("mend its ends"),
        Fate::Sister => done("sister it"),
        Fate::Replace => done("replace it"),
        Fate::Engineer => done("have an engineer look, do what they write"),
    }
}

/// What carries those joists is sound: nothing speaks against it, and somebody looked.
pub(super) fn carriers(job: &Job, near: &Near) -> Condition {
    let mut lines: Vec<_> = unsound(job)
        .into_iter()
        .map(|unsound| {
            InTheWay::known(unsound.words, "have an engineer look, do what they write, and say that it is done")
        })
        .collect();
    let walls = matches!(near, Near::Joists { walls: true, .. });
    let looked_at = |part: &Part| was_looked_at(job, part);
    for (part, name) in [(Part::RimJoist, "rim joist"), (Part::Sill, "sill")] {
        if walls && !looked_at(&part) {
            let ends = format!("push an awl into the {name} by what comes out, and say its state");
            lines.push(InTheWay::unknown(format!("nobody said that the {name} there is sound"), ends));
        }
    }
    let girder = Particulars::of(job).words(&Part::House, &list::GIRDER_NEAR);
    let girders = Particulars::of(job).parts(|part| matches!(part, Part::Girder(_)));
    if girder != Some("no") && !girders.iter().any(|part| looked_at(part)) && !looked_at(&Part::Girder(1)) {
        let ends = "probe it and say its state, or say that none is within a bay of what comes out";
        lines.push(InTheWay::unknown("nobody said that the girder there is sound", ends));
    }
    Condition::of("rim joist, sill and girder there are sound", lines, "they were looked at, and are")
}

/// Did anybody say its state, or find it sound at a place on it? What speaks against it is
/// told apart.
fn was_looked_at(job: &Job, part: &Part) -> bool {
    let said = Particulars::of(job);
    let is_said =
        said.words(part, &list::STATE).is_some() || said.words(part, &list::DONE).is_some_and(|done| done != "not yet");
    let is_found = || {
        let mut conditions = job.now.conditions().values();
        conditions.any(|it| {
            let place = it.value.place.and_then(|place| job.now.places().get(&place));
            let is_here = place.is_some_and(|place| carrier(place.value.element).as_ref() == Some(part));
            is_here && matches!(it.value.finding, Finding::Sound | Finding::Soft | Finding::Rotten | Finding::Cracked)
        })
    };
    is_said || is_found()
}

/// Soft, rotten and broken wood that is on no joist and on nothing that carries one: in the
/// floor itself, or where nobody said.
pub(super) fn elsewhere(job: &Job) -> Condition {
    let what = "no decayed or broken wood is left in the floor or at an unknown place";
    let found: Vec<_> = job.now.conditions().values().filter(|it| is_elsewhere(job, it.value)).collect();
    if found.is_empty() {
        return Condition::of(what, Vec::new(), "none was found");
    }
    let since: Vec<_> = found.iter().map(|it| it.when()).collect();
    if Answers::to(job, DECAY_IS_OUT).is_yes_since(&since) {
        return Condition::of(what, Vec::new(), "cut out, or probed sound");
    }
    let found = match found_nowhere(job) {
        0 => "soft, rotten or broken wood was found in the floor".to_owned(),
        some => format!("{} on no joist's number", counted(some, "finding of decay or damage")),
    };
    let ends = "probe every such place, cut out what is decayed, and answer the check";
    Condition::of(what, vec![InTheWay::known(found, ends)], "")
}

/// The name of the check that says so. It never changes.
pub const DECAY_IS_OUT: &str = "decay_is_out";

/// Does neither a joist nor anything that carries one have to answer for it?
fn is_elsewhere(job: &Job, condition: &FoundThere) -> bool {
    let element = condition.place.and_then(|place| job.now.places().get(&place)).map(|place| place.value.element);
    is_grave(condition.finding)
        && match element {
            Some(Element::Joist) | None => is_nowhere(job, condition.place),
            Some(element) => carrier(element).is_none(),
        }
}
