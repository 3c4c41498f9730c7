//! Cautions: what a careful crew bears in mind, shown where it matters and until
//! somebody has read it.
//!
//! [`data`] is the table, [`trigger`] says when a line of it matters. This folder
//! gives no legal advice and never decides: see [`LAST_WORD`]. Who has read what is an
//! entry of the job, so that the office can see it; nothing here is kept.

pub mod data;
mod finds;
pub mod trigger;

pub use data::CAUTIONS;
pub use trigger::Trigger;

use super::entry::{Label, Logger, Stamp};
use super::job::{Acknowledgement, Job};
use super::sources::Source;

/// What stands under every list of cautions.
pub const LAST_WORD: &str = "The usual cautions, not legal advice: local code and licensed practice decide.";

/// The cautions that go wherever a fan that pulls air out from under a house is named.
pub const OF_EXHAUST: [&str; 2] = ["exhaust_fan", "radon"];

/// One caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    /// What an [`Acknowledgement`] keeps. Never changed once it has been released, or
    /// what was read would be asked again.
    pub name: &'static str,
    /// How bad it can get.
    pub severity: Severity,
    /// What it is about.
    pub title: &'static str,
    /// What to do.
    pub words: &'static str,
    /// Where that is from. What no source says is marked as practice.
    pub sources: &'static [Source],
    /// When it matters.
    pub trigger: Trigger,
}

/// How bad it can get, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// It can kill within the hour.
    Deadly,
    /// It can hurt, sicken, or bring the floor down.
    Harmful,
    /// It harms slowly, or spoils the work.
    Lasting,
}

/// A caution that a job calls for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Raised<'a> {
    /// The caution.
    pub caution: &'static Caution,
    /// What in the job calls for it, in a sentence.
    pub because: String,
    /// Who has read it about what calls for it, and when, the first reader first.
    pub read: Vec<&'a Stamp>,
}

impl Raised<'_> {
    /// Is it still to be read by whoever holds this phone? What can kill everybody reads who
    /// goes there, the rest somebody.
    pub fn is_due(&self, by: Option<&Logger>) -> bool {
        let is_theirs = |stamp: &&Stamp| by.is_none_or(|by| stamp.by == *by);
        match self.caution.severity {
            Severity::Deadly => !self.read.iter().any(is_theirs),
            Severity::Harmful | Severity::Lasting => self.read.is_empty(),
        }
    }
}

/// Every caution that a job calls for, read or not, the worst first.
pub fn all_triggered(job: &Job) -> Vec<Raised<'_>> {
    let raised = |caution: &'static Caution| {
        let because = caution.trigger.because(job)?;
        Some(Raised { caution, because, read: readers(job, caution) })
    };
    CAUTIONS.iter().filter_map(raised).collect()
}

/// The cautions that a job calls for and that are still to be read by whoever logs, the worst
/// first.
pub fn due(job: &Job, by: Option<&Logger>) -> Vec<&'static Caution> {
    let raised = all_triggered(job).into_iter();
    raised.filter(|raised| raised.is_due(by)).map(|raised| raised.caution).collect()
}

/// The caution of a name; none if this build has no such caution.
pub fn named(name: &str) -> Option<&'static Caution> {
    CAUTIONS.iter().find(|caution| caution.name == name)
}

impl Caution {
    /// What is logged when somebody has read it.
    pub fn acknowledgement(&self) -> Acknowledgement {
        Acknowledgement { caution: Label::fitted(self.name) }
    }
}

fn readers<'a>(job: &'a Job, caution: &'static Caution) -> Vec<&'a Stamp> {
    let finds = caution.trigger.finds(job);
    let read = job.now.acknowledged().values().filter(|read| read.value.caution.as_str() == caution.name);
    read.filter(|read| finds::is_about_all(read, &finds)).map(|read| read.stamp).collect()
}

#[cfg(test)]
mod tests;
