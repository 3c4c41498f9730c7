//! The checklist: questions that one tap answers.

use crate::draw::card::{Act, Ask, Card, Line};
use crate::engine::closing::{
    COVERED_NOW, DECAY_IS_OUT, READ_AT_DEPTH, SAME_JOISTS, asks_for_cover, asks_for_same_joists, hazards, to_deal_with,
};
use crate::engine::entry::Label;
use crate::engine::framing::headers::{HEADER_DONE, asks_for_header_done};
use crate::engine::framing::joist::{SISTERS_BEYOND, is_grave};
use crate::engine::framing::past::{PAST_SPANS, asks_for_past_spans};
use crate::engine::framing::schedule::{asks_for_sisters_beyond, schedule};
use crate::engine::job::{Job, Observation};
use crate::engine::moisture::Answer;
use crate::engine::origin::{Check, Evidence, dealt_with_name, is_answered, origin};
use crate::engine::take::Units;

/// The question that would change the ranking most, with its answers.
pub(super) fn next_check(job: &Job) -> Option<Card> {
    let figure = origin(job);
    let next = figure.value()?.next.clone()?;
    let asks = Evidence::standard().observation(&next)?.asks.clone()?;
    // Paper has no buttons: there the headline asks.
    let card = Card::new("Next check", asks.clone(), vec![Line::small("It would change the ranking most.")]);
    Some(Card { asks: vec![ask(job, next, asks)], ..card })
}

/// Every question, the open ones first.
pub(super) fn checklist(job: &Job) -> Card {
    let observations = Evidence::standard().observations;
    let mut asks: Vec<_> = observations.into_iter().filter_map(|it| Some(ask(job, it.name, it.asks?))).collect();
    asks.sort_by_key(Ask::is_answered);
    let open = asks.iter().filter(|ask| !ask.is_answered()).count();
    let headline = if open == 0 { "All answered".to_owned() } else { format!("{open} open") };
    let lines = vec![Line::small("\"Can't tell\" is an answer too: it weighs nothing.")];
    Card { asks, ..Card::new("Checklist", headline, lines) }
}

/// What closing hangs on beside readings.
pub(super) fn for_closing(job: &Job) -> Vec<Ask> {
    let mut asks: Vec<_> = to_deal_with(job)
        .into_iter()
        .map(|cause| ask(job, dealt_with_name(cause), format!("Is it dealt with: {}?", cause.label())))
        .collect();
    asks.extend(hazards(job).into_iter().map(|hazard| ask(job, hazard.check.to_owned(), hazard.asks.to_owned())));
    if asks_for_cover(job) {
        let cover = "Is all soil covered now, laps and edges sealed?";
        asks.push(ask(job, COVERED_NOW.to_owned(), cover.to_owned()));
    }
    if asks_for_same_joists(job) {
        let same = "Joists were laid out anew: does every number still mean the same joist?";
        asks.push(ask(job, SAME_JOISTS.to_owned(), same.to_owned()));
    }
    if asks_for_header_done(job) {
        let header = "Is the header doubled where it is over 4 ft, hung or on a wall or beam where it is over 6 ft, and are \
                      tail joists over 12 ft held by hangers or a ledger?";
        asks.push(ask(job, HEADER_DONE.to_owned(), header.to_owned()));
    }
    if asks_for_past_spans(job) {
        let past = "What comes out reaches past the joists' measured spans: is what carries the floor there sound and dry, by \
                    a job of its own that is ready to close, or by an engineer?";
        asks.push(ask(job, PAST_SPANS.to_owned(), past.to_owned()));
    }
    if asks_for_sisters_beyond(&schedule(job, Units::default())) {
        let beyond = "Sisters of joists that go through over the girder: does one lie along the span past it, from bearing \
                      to bearing, wherever that is asked for?";
        asks.push(ask(job, SISTERS_BEYOND.to_owned(), beyond.to_owned()));
    }
    if job.now.conditions().values().any(|it| is_grave(it.value.finding)) {
        let decay = "Is all decayed or broken wood out of the floor, or probed sound?";
        asks.push(ask(job, DECAY_IS_OUT.to_owned(), decay.to_owned()));
    }
    if !job.now.readings().is_empty() {
        let depth = "Were the wettest places read at depth, with insulated pins?";
        asks.push(ask(job, READ_AT_DEPTH.to_owned(), depth.to_owned()));
    }
    asks
}

fn ask(job: &Job, name: String, asks: String) -> Ask {
    let given = is_answered(job, &name);
    let answer = |answer: Answer| {
        let label = if answer == Answer::Unknown { "can't tell" } else { answer.label() };
        let logs = Observation::Check(Check { of: Label::fitted(&name), answer });
        (Act { label: label.to_owned(), logs }, given == Some(answer))
    };
    Ask { answers: Answer::ALL.into_iter().map(answer).collect(), asks }
}
