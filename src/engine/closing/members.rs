//! The joists within one bay of what comes out, and decay that is on none of them.

use super::decision::{Condition, InTheWay};
use super::near::Near;
use super::trust::Answers;
use crate::engine::condition::Condition as FoundThere;
use crate::engine::describe::counted;
use crate::engine::figure::Figure;
use crate::engine::framing::joist::{found_nowhere, is_grave, is_nowhere};
use crate::engine::framing::schedule::named;
use crate::engine::framing::supports::carrier;
use crate::engine::framing::{Done, Fate, Judged};
use crate::engine::job::{Job, Seen};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::Element;
use crate::engine::survey::Floor;
use crate::engine::units::Length;

/// Every joist there is settled.
pub(super) fn joists(schedule: &Figure<Vec<Judged>>, near: &Near) -> Condition {
    let what = "every joist there is sound, or what it needed is done";
    let judged = schedule.value().map(Vec::as_slice).unwrap_or_default();
    let of = |number: &u16| judged.iter().find(|judged| judged.joist.number.get() == *number);
    let open = near.joists().iter().filter_map(of).filter(|judged| !judged.is_settled());
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
    let unjudged: Vec<_> = near.joists().iter().filter(|number| of(number).is_none()).map(u16::to_string).collect();
    let unjudged = (!unjudged.is_empty()).then(|| {
        InTheWay::unknown(format!("{}: nothing can be said", named(&unjudged)), "measure the joists' spacing")
    });
    Condition::of(what, lines.chain(unjudged).collect(), "all are")
}

/// What keeps a joist open, and what really ends each reason that nothing ended yet: of what
/// has to be done the least, and then what is left to say.
fn in_the_way(judged: &Judged) -> InTheWay {
    let mut to_do: Vec<_> = judged.unsettled().filter(|reason| reason.fate > Fate::Open).collect();
    // What has the fewest ways to end comes first: it may end the others with it.
    to_do.sort_by_key(|reason| reason.ended_by.len());
    let mut done: Vec<Done> = Vec::new();
    let (mut words, mut ends) = (Vec::new(), Vec::new());
    for reason in to_do {
        let is_ended = reason.ended_by.iter().any(|way| done.contains(way));
        if let Some(way) = reason.ended_by.first().filter(|_| !is_ended) {
            done.push(*way);
            words.push(reason.words.as_str());
            // What asks for a sister, and is not ended by one, has something to be said first.
            let first = if reason.wants_a_sister_yet() { "do that first, or " } else { "" };
            ends.push(format!("{first}{}", to_do_for(*way)));
        }
    }
    let open = judged.unsettled().filter(|reason| reason.fate <= Fate::Open);
    let open = open.filter(|reason| !reason.ended_by.iter().any(|way| done.contains(way)));
    let open: Vec<_> = open.map(|reason| reason.words.as_str()).collect();
    if words.is_empty() {
        return InTheWay::unknown("not enough to say", open.join("; "));
    }
    let ends: Vec<_> = ends.iter().map(String::as_str).chain(open).collect();
    InTheWay::known(words.join("; "), ends.join("; "))
}

const fn to_do_for(way: Done) -> &'static str {
    match way {
        Done::EndsMended => "mend its ends, and say that it is done",
        Done::Sistered => "sister it, and say that it is done",
        Done::SisteredBeyond => {
            "sister it along its span past the girder, say that it is done, and then answer the check"
        }
        Done::Replaced => "replace it, and say that it is done",
        Done::AsTheEngineerSays => "have an engineer look, do what they write, and say that it is done",
    }
}

/// What is said of a joist has a joist: a spot of all joists at once, or of one that is not
/// laid out, is on none that is judged.
pub(super) fn on_a_joist(job: &Job) -> Condition {
    let count = Floor::of(job).and_then(|floor| floor.joists).map_or(0, |framing| framing.count());
    let is_none = |part: &Part| match part {
        Part::Joists => true,
        Part::Joist(number) => number.get() > count,
        _ => false,
    };
    let spots = job.now.damages().values().filter(|it| it.value.is_bad());
    let spots = spots.filter(|it| is_none(&it.value.of)).map(|it| (&it.value.of, it.value.kind.found()));
    let said =
        Particulars::of(job).parts(is_none).into_iter().filter_map(|part| Some((part, speaks_against(job, part)?)));
    let ends = "log it on the joist that has it, lay that joist out, or take this one back";
    let mut lines: Vec<_> =
        spots.chain(said).map(|(part, what)| InTheWay::known(format!("{}: {what}", part.name()), ends)).collect();
    lines.dedup();
    Condition::of("everything that was found has a joist that is laid out", lines, "it has")
}

/// What particulars say against a part.
fn speaks_against<'a>(job: &'a Job, part: &Part) -> Option<&'a str> {
    let said = Particulars::of(job);
    let awl = said.words(part, &list::AWL).filter(|awl| *awl != "stops everywhere");
    let is_some = |item| said.length(part, item).is_some_and(Length::is_positive);
    let spot = [(&list::SOFT_DEPTH, "soft"), (&list::NOTCH, "notched"), (&list::HOLE, "a hole")];
    let spot = || spot.into_iter().find(|(item, _)| is_some(item)).map(|(_, what)| what);
    awl.map(|awl| if awl == "goes in" { "an awl goes in" } else { "an awl cannot reach it" }).or_else(spot)
}

/// Soft, rotten and broken wood that is on no joist and on nothing that carries one: in the
/// floor itself, or where nobody said.
pub(super) fn elsewhere(job: &Job) -> Condition {
    let what = "no decayed or broken wood is left in the floor itself, or where nobody said";
    let found: Vec<_> = job.now.conditions().values().filter(|it| is_elsewhere(job, it.value)).collect();
    if found.is_empty() {
        return Condition::of(what, Vec::new(), "none was found there");
    }
    let since: Vec<_> = found.iter().map(Seen::when).collect();
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
