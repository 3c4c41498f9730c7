//! The checklist: questions that one tap answers.

use crate::draw::card::{Act, Ask, Card, Line};
use crate::engine::closing::asked_for_closing;
use crate::engine::entry::Label;
use crate::engine::framing::schedule::schedule;
use crate::engine::job::{Job, Observation};
use crate::engine::moisture::Answer;
use crate::engine::origin::{Check, Evidence, is_answered, origin};
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
    let asked = asked_for_closing(job, &schedule(job, Units::default()));
    asked.into_iter().map(|asked| ask(job, asked.name, asked.asks)).collect()
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
