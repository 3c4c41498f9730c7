//! What comes after what: what two phones said that did not know of each other, so that nobody
//! can tell which word is the last; and a visit that goes on for days.

use super::decision::{Condition, InTheWay};
use super::trust::words_of;
use crate::engine::describe::{counted, in_sentence, observation};
use crate::engine::entry::EntryId;
use crate::engine::framing::Done;
use crate::engine::framing::joist::{is_grave, number_of};
use crate::engine::framing::supports::carrier;
use crate::engine::job::{CLOCKS_APART, Fact, Job, LONGEST_VISIT, Observation, Seen, Thing, When};
use crate::engine::particular::{Part, Particular, Particulars, list};
use crate::engine::place::{Element, JoistNumber};
use crate::engine::survey::{Floor, Framing};
use crate::engine::take::Units;
use std::mem::{Discriminant, discriminant};

/// What counts as said last was said after everything else that was said of the same, and what
/// counts as done was done after what it answers.
pub(super) fn in_order(job: &Job, units: Units) -> Condition {
    let mut lines = said_apart(job, units);
    lines.extend(done_apart(job));
    lines.extend(wrong_clock(job));
    lines.dedup();
    Condition::of("no two phones said what cannot be put in order", lines, "none did")
}

/// A clock by which something was logged before the visit that it belongs to was begun. On one
/// phone the count tells what came last; of several, nothing does then.
fn wrong_clock(job: &Job) -> Option<InTheWay> {
    let begun = |visit| job.now.visits().get(&visit).map(|it| it.stamp.at);
    let is_before = |it: &&Thing<Observation>| {
        it.stamp.visit.and_then(begun).is_some_and(|begun| begun - it.stamp.at > CLOCKS_APART)
    };
    let first = job.now.things().find(is_before)?;
    let is_of_several = job.now.things().any(|it| it.head.device != first.head.device);
    is_of_several.then(|| {
        let count = job.now.things().filter(is_before).count();
        let what = counted(count, "entry");
        InTheWay::unknown(
            format!("{what} dated before the visit of it was begun: a phone's clock is wrong, and nobody can tell what came last"),
            "see which clock is wrong and set it right; take back under Log what was logged by it, or the visit if that was, and \
             log it again",
        )
    })
}

/// A visit ends when another one is begun. Where nobody began one, what was read weeks ago would
/// still be of this visit.
pub(super) fn one_visit(job: &Job) -> Condition {
    let visit = job.current_visit().map(|(visit, _)| visit);
    let things = || job.now.things().filter(|thing| thing.stamp.visit == visit && !is_beside_the_floor(&thing.value));
    let logged = || things().map(|thing| thing.stamp.at);
    let days = logged().min().zip(logged().max()).map(|(first, last)| last - first);
    let is_long = days.is_some_and(|days| days > LONGEST_VISIT);
    let most = LONGEST_VISIT.num_days();
    let line = || {
        let what = format!("this visit has gone on for more than {most} days");
        InTheWay::unknown(what, "begin another visit, and read again")
    };
    Condition::of(
        format!("this visit took no more than {most} days"),
        is_long.then(line).into_iter().collect(),
        "it did not",
    )
}

/// What two phones say differently of one thing, where the last word counts.
pub fn said_apart(job: &Job, units: Units) -> Vec<InTheWay> {
    let mut last: Vec<(Of<'_>, &Thing<Observation>)> = Vec::new();
    let mut lines = Vec::new();
    let decides = job.now.things().filter(|it| !is_beside_the_floor(&it.value));
    let all: Vec<_> = decides.filter_map(|it| Some((what_of(&it.value)?, it))).collect();
    for (of, it) in all.into_iter().rev() {
        let Some((_, later)) = last.iter().find(|(other, _)| *other == of) else {
            last.push((of, it));
            continue;
        };
        if !later.value.says_the_same(&it.value) && !later.when().is_after(it.when()) {
            let [one, other] = [it, later].map(|thing| observation(job, &thing.value, units).says);
            let what = format!("two phones say \"{one}\" and \"{other}\", and nobody can tell which came last");
            lines.push(InTheWay::unknown(what, "look, and say it again"));
        }
    }
    lines
}

/// Is it of no weight for closing: what the job is called, what is bought and how it is cut, and
/// what was read, photographed and handed over?
const fn is_beside_the_floor(observation: &Observation) -> bool {
    match observation {
        Observation::Fact(fact) => is_of_the_paper(fact),
        Observation::Particular(Particular { of: Part::Order(_), .. })
        | Observation::OnHand(_)
        | Observation::Photo(_)
        | Observation::Acknowledgement(_)
        | Observation::HandOver(_) => true,
        _ => false,
    }
}

const fn is_of_the_paper(fact: &Fact) -> bool {
    matches!(
        fact,
        Fact::Title(_)
            | Fact::OfficeNumber(_)
            | Fact::Site(_)
            | Fact::Archived(_)
            | Fact::Sheet(_)
            | Fact::SheetThickness(_)
            | Fact::SheetEdge(_)
            | Fact::SpanRating(_)
            | Fact::SheetGap(_)
            | Fact::EdgeGap(_)
            | Fact::Kerf(_)
            | Fact::BlockLumber(_)
    )
}

/// What an observation is a word on, where the last word counts; none where every word does.
fn what_of(observation: &Observation) -> Option<Of<'_>> {
    Some(match observation {
        Observation::Fact(fact) => Of::Fact(discriminant(fact)),
        Observation::Particular(it) => Of::Part(&it.of, it.what.as_str()),
        Observation::CutBack(it) => Of::Opening(it.opening),
        Observation::JoistCenter(it) => Of::Joist(it.of, it.joist),
        Observation::Corner(it) => Of::Corner(it.at),
        Observation::Joists(it) => Of::Joists(it.room),
        _ => return None,
    })
}

#[derive(PartialEq)]
enum Of<'a> {
    Fact(Discriminant<Fact>),
    Part(&'a Part, &'a str),
    Opening(EntryId),
    Joist(EntryId, JoistNumber),
    Corner(EntryId),
    Joists(EntryId),
}

/// Members that one phone says something was done to, and another that something is wrong
/// with, which it did not know of.
fn done_apart(job: &Job) -> Vec<InTheWay> {
    let bad = speaks_against(job);
    let parts = Particulars::of(job).parts(|_| true);
    let done = parts.into_iter().filter_map(|part| Some((part, words_of(job, part, &list::DONE)?)));
    let done = done.filter(|(_, (_, words))| Done::said(words).is_some());
    let is_apart = |part: &Part, done: When| {
        bad.iter().any(|(of, found)| of == part && found.id < done.id && !done.is_after(*found))
    };
    let apart = done.filter(|(part, (when, _))| is_apart(part, *when));
    let line = |part: &Part| {
        InTheWay::unknown(
            format!(
                "{}: nobody can tell whether it was mended after what another phone found",
                in_sentence(&part.name())
            ),
            "look at it again, and say what was done about it",
        )
    };
    apart.map(|(part, _)| line(part)).collect()
}

/// Every entry that speaks against a member, with the member.
fn speaks_against(job: &Job) -> Vec<(Part, When)> {
    let framing = Floor::of(job).and_then(|floor| floor.joists);
    let spots = job.now.damages().values().filter(|it| it.value.is_bad());
    let spots = spots.map(|it| (it.value.of.clone(), it.when()));
    let found = job.now.conditions().values().filter(|it| is_grave(it.value.finding));
    let found = found.filter_map(|it| Some((member(job, framing.as_ref(), it.value.place?)?, it.when())));
    let said = job.now.particulars().values().filter(is_bad_word).map(|it| (it.value.of.clone(), it.when()));
    spots.chain(found).chain(said).collect()
}

fn is_bad_word(it: &Seen<'_, Particular>) -> bool {
    let (what, typed) = (it.value.what.as_str(), it.value.is.typed());
    what == list::STATE.what && typed != "sound" || what == list::AWL.what && typed != "stops everywhere"
}

/// The member that a place is on.
fn member(job: &Job, framing: Option<&Framing>, place: EntryId) -> Option<Part> {
    let place = job.now.places().get(&place)?.value;
    if place.element != Element::Joist {
        return carrier(place.element);
    }
    number_of(place, framing?).map(Part::Joist)
}
