//! Figures as a snapshot: what this build computed when the file was made, for
//! whoever opens it without an engine. The reader ignores them.
//!
//! On a phone the module that is loaded later computes them, since the order list needs
//! the search for sheets; the app is handed their text.

use crate::engine::figure::{Figure, Why};
use crate::engine::job::Job;
use crate::engine::orders::lines;
use crate::engine::results::{Said, every_answer};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use serde::Serialize;
use serde_json::value::RawValue;

/// What the snapshot says of itself.
pub const NOTE: &str = "A snapshot of what the engine computed when this file was made. \
    It is not read back: whoever opens the file computes it again from the entries.";

/// Figures as they stand in a file.
#[derive(Debug, Clone, Serialize)]
#[serde(transparent)]
pub struct Snapshot(Box<RawValue>);

impl Snapshot {
    /// These figures.
    pub fn of(figures: &[SnapshotFigure]) -> Self {
        // Text and structs of text always have a JSON form.
        Self(serde_json::value::to_raw_value(figures).unwrap_or_default())
    }

    /// None.
    pub fn none() -> Self {
        Self::parse("[]".to_owned()).unwrap_or_else(|| Self(Box::default()))
    }

    /// Figures that were written elsewhere; none if the text is no list.
    pub fn parse(json: String) -> Option<Self> {
        let is_list = json.starts_with('[');
        RawValue::from_string(json).ok().filter(|_| is_list).map(Self)
    }
}

/// Every figure of a job by its name, computed now, and then every line of its order list.
pub fn figures(job: &Job, units: Units) -> Vec<SnapshotFigure> {
    let answers = every_answer(job, units);
    let answers = answers.iter().map(|answer| SnapshotFigure::of(answer.name, &answer.said, Said::words));
    let (lines, _) = lines(job, units);
    let orders = lines.iter().map(|line| {
        let why = Why::rule(line.needed.from.join("; "), &line.needed.sources);
        SnapshotFigure::of(format!("order: {}", line.needed.name), &Figure::known(line.quantity(), why), String::clone)
    });
    answers.chain(orders).collect()
}

/// One figure as it was when the file was made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct SnapshotFigure {
    /// What it is.
    pub name: String,
    /// The value as shown, with its unit; nothing if there was not enough to say.
    pub value: Option<String>,
    /// What would have to be measured first, if there is no value.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(not(target_arch = "wasm32"), schemars(default))]
    pub missing: Vec<String>,
    /// What was assumed for want of a measurement.
    pub assumed: Vec<String>,
    /// What to bear in mind.
    pub doubts: Vec<String>,
    /// The rule in one sentence; empty if there is no value.
    pub rule: String,
    /// Where the rule and its numbers come from.
    pub sources: Vec<SnapshotSource>,
}

/// A source of a figure's rule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct SnapshotSource {
    /// Title, part and year.
    pub title: String,
    /// How far it was seen, in words.
    pub mark: String,
}

impl SnapshotFigure {
    /// A figure by name, its value shown by `show`.
    pub fn of<T>(name: impl Into<String>, figure: &Figure<T>, show: impl FnOnce(&T) -> String) -> Self {
        let empty = Self {
            name: name.into(),
            value: None,
            missing: Vec::new(),
            assumed: Vec::new(),
            doubts: Vec::new(),
            rule: String::new(),
            sources: Vec::new(),
        };
        match figure {
            Figure::Known(known) => Self {
                value: Some(show(&known.value)),
                assumed: known.assumed.clone(),
                doubts: known.doubts.clone(),
                rule: known.why.rule.clone(),
                sources: known.why.sources.iter().copied().map(SnapshotSource::of).collect(),
                ..empty
            },
            Figure::Missing(needs) => {
                Self { missing: needs.iter().map(|need| need.words().to_owned()).collect(), ..empty }
            }
        }
    }
}

impl SnapshotSource {
    fn of(source: Source) -> Self {
        let citation = source.citation();
        Self { title: citation.title.to_owned(), mark: citation.mark.label().to_owned() }
    }
}
