//! The evidence as `evidence.json` has it.

use super::cause::Cause;
use crate::engine::moisture::Answer;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The whole model.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct Evidence {
    causes: Vec<Prior>,
    /// What can be seen or asked, in the order that a checklist asks it.
    pub observations: Vec<Observation>,
}

#[derive(Debug, Clone, PartialEq, Deserialize)]
struct Prior {
    name: Cause,
    prior: f64,
    /// Observations that show the cause itself.
    #[serde(default)]
    signs: Vec<String>,
}

/// Something that can be so or not, and what that says.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct Observation {
    /// Its name, as scenarios and jobs have it.
    pub name: String,
    /// The question, if it is asked.
    #[serde(default)]
    pub asks: Option<String>,
    /// The look at the place that it comes from, where others come from the same one.
    #[serde(default)]
    look: Option<String>,
    /// What is so after a yes, and after a no.
    says: [String; 2],
    yes: BTreeMap<Cause, f64>,
    no: BTreeMap<Cause, f64>,
    /// Where one of these is so, that explains a yes, or a no: it says nothing of the cause.
    #[serde(default)]
    moot: Moot,
    /// What it rests on.
    pub source: String,
}

#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
struct Moot {
    #[serde(default)]
    yes: BTreeMap<Cause, Vec<String>>,
    #[serde(default)]
    no: BTreeMap<Cause, Vec<String>>,
}

impl Evidence {
    /// The evidence of this build. Never without causes: a test reads it.
    pub fn standard() -> Self {
        serde_json::from_str(include_str!("evidence.json"))
            .unwrap_or(Self { causes: Vec::new(), observations: Vec::new() })
    }

    /// What a cause begins with.
    pub fn prior(&self, cause: Cause) -> f64 {
        self.causes.iter().find(|prior| prior.name == cause).map_or(0.0, |prior| prior.prior)
    }

    /// The observations that show a cause itself: without a yes to one of them all that
    /// speaks for it could come from another cause too.
    pub fn signs(&self, cause: Cause) -> &[String] {
        self.causes.iter().find(|prior| prior.name == cause).map_or(&[], |prior| &prior.signs)
    }

    /// An observation by its name.
    pub fn observation(&self, name: &str) -> Option<&Observation> {
        self.observations.iter().find(|observation| observation.name == name)
    }
}

impl Observation {
    /// What an answer weighs for a cause.
    pub fn weight(&self, answer: Answer, cause: Cause) -> f64 {
        let weights = match answer {
            Answer::Yes => &self.yes,
            Answer::No => &self.no,
            Answer::Unknown => return 0.0,
        };
        weights.get(&cause).copied().unwrap_or(0.0)
    }

    /// The look at the place that it comes from: its own, where no other shares it.
    pub fn look(&self) -> &str {
        self.look.as_deref().unwrap_or(&self.name)
    }

    /// What explains an answer away when it is so, as far as a cause goes.
    pub fn explained_by(&self, answer: Answer, cause: Cause) -> &[String] {
        let moot = match answer {
            Answer::Yes => &self.moot.yes,
            Answer::No => &self.moot.no,
            Answer::Unknown => return &[],
        };
        moot.get(&cause).map_or(&[], Vec::as_slice)
    }

    /// What is so by an answer; nothing when nobody knows.
    pub fn says(&self, answer: Answer) -> Option<&str> {
        let [yes, no] = &self.says;
        match answer {
            Answer::Yes => Some(yes),
            Answer::No => Some(no),
            Answer::Unknown => None,
        }
    }
}
