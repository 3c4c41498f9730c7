//! Cards: one question and its answer each, with what it rests on, what can be said to it
//! and what can be drawn of it. Pages are made of them, on the screen and on paper.

use super::Drawing;
use crate::engine::describe::capital;
use crate::engine::figure::{Known, Need, Why};
use crate::engine::job::Observation;
use crate::engine::sources::Source;
use std::collections::BTreeSet;

/// One question and its answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    /// What it and those after it belong to, where that begins.
    pub group: Option<&'static str>,
    /// What it answers.
    pub title: String,
    /// The answer.
    pub headline: String,
    /// What it rests on, in order.
    pub lines: Vec<Line>,
    /// Its drawing.
    pub drawing: Option<Drawing>,
    /// Questions that one tap answers.
    pub asks: Vec<Ask>,
    /// What can be typed.
    pub fields: Vec<Field>,
    /// What can be accepted.
    pub act: Option<Act>,
    /// What that comes to, in words: it is read and looked at before anything is logged.
    pub shows: String,
}

/// A question with its answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Ask {
    /// The question.
    pub asks: String,
    /// The answers in order, each with whether it is the one that was given.
    pub answers: Vec<(Act, bool)>,
}

/// Something that can be typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// What it says, as a key: part and item.
    pub key: String,
    /// What is asked.
    pub asks: String,
    /// What it counts, if that is not a length.
    pub unit: &'static str,
    /// Does it take digits and a point alone?
    pub is_number: bool,
    /// What was typed last; nothing where it has to be said again.
    pub typed: String,
    /// What was typed, where that has to be said again, as it is or otherwise.
    pub again: String,
    /// What counts until something is: what was typed of all joists, for one of them.
    pub shared: String,
}

/// A line of a card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// How it speaks.
    pub tone: Tone,
    /// The words.
    pub text: String,
}

/// How a line speaks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// It says something.
    Plain,
    /// It heads what follows.
    Heading,
    /// It says what to do.
    Next,
    /// It was assumed or rests on something.
    Small,
}

/// Something to accept: it becomes an entry.
#[derive(Debug, Clone, PartialEq)]
pub struct Act {
    /// What the key says.
    pub label: String,
    /// What is logged.
    pub logs: Observation,
}

impl Ask {
    /// Was it answered?
    pub fn is_answered(&self) -> bool {
        self.given().is_some()
    }

    /// The answer that was given.
    pub fn given(&self) -> Option<&Act> {
        self.answers.iter().find(|(_, is_given)| *is_given).map(|(act, _)| act)
    }
}

impl Line {
    pub(in crate::draw) fn plain(text: impl Into<String>) -> Self {
        Self { tone: Tone::Plain, text: text.into() }
    }

    pub(in crate::draw) fn heading(text: impl Into<String>) -> Self {
        Self { tone: Tone::Heading, text: text.into() }
    }

    pub(in crate::draw) fn next(text: impl Into<String>) -> Self {
        Self { tone: Tone::Next, text: text.into() }
    }

    pub(in crate::draw) fn small(text: impl Into<String>) -> Self {
        Self { tone: Tone::Small, text: text.into() }
    }
}

impl Card {
    pub(in crate::draw) fn new(title: impl Into<String>, headline: impl Into<String>, lines: Vec<Line>) -> Self {
        let (title, headline) = (title.into(), headline.into());
        Self {
            group: None,
            title,
            headline,
            lines,
            drawing: None,
            asks: Vec::new(),
            fields: Vec::new(),
            act: None,
            shows: String::new(),
        }
    }

    /// What is missing, as a card.
    pub(in crate::draw) fn missing(title: impl Into<String>, needs: &[Need]) -> Self {
        let lines = needs.iter().map(|need| Line::next(format!("{}.", capital(need.words())))).collect();
        Self::new(title, "Not enough to say", lines)
    }
}

/// What a figure assumed, doubts and rests on, as small lines.
pub(in crate::draw) fn reasons<T>(known: &Known<T>) -> Vec<Line> {
    let assumed = (!known.assumed.is_empty()).then(|| format!("Assumed: {}.", known.assumed.join("; ")));
    let doubts = known.doubts.iter().cloned();
    assumed.into_iter().chain(doubts).chain([rests_on(&known.why)]).map(Line::small).collect()
}

/// Sources, each once and with its mark, as small lines.
pub(in crate::draw) fn cited(sources: impl IntoIterator<Item = Source>) -> impl Iterator<Item = Line> {
    let once: BTreeSet<_> = sources.into_iter().collect();
    once.into_iter().map(|source| Line::small(source.citation().to_string()))
}

/// "Rule: ... (source; mark)".
pub(in crate::draw) fn rests_on(why: &Why) -> String {
    let sources: Vec<_> = why.sources.iter().map(|source| source.citation().to_string()).collect();
    let inputs: Vec<_> = why.inputs.iter().map(|(name, value)| format!("{name}: {value}")).collect();
    [why.rule.clone(), inputs.join("; "), format!("Sources: {}", sources.join("; "))]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" · ")
}
