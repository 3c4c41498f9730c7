//! The search for one floor's layout, as far as phone and office both take it: steps are
//! counted and not timed, so that they show the same one.

use super::ToLay;
use super::layout::{Layout, Search, Step, check};

/// Where a search ends that could go on.
const MOST_STEPS: usize = 20_000;

/// A floor and the search for its layout.
#[derive(Debug, Clone)]
pub struct FloorSearch {
    /// The floor.
    pub floor: ToLay,
    /// None if the floor cannot be laid out as it is.
    search: Option<Search>,
    steps: usize,
    is_done: bool,
}

/// What a search has come to.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome<'a> {
    /// Nothing yet.
    Nothing,
    /// The best so far, which keeps every rule; no layout takes fewer sheets than `bound`.
    Laid {
        /// It.
        layout: &'a Layout,
        /// How few sheets there can be.
        bound: u32,
    },
    /// There is none, in words.
    Impossible(String),
}

impl FloorSearch {
    /// Begins.
    pub fn new(floor: ToLay) -> Self {
        let search = floor.case.clone().ok().map(Search::new);
        Self { is_done: search.is_none(), floor, search, steps: 0 }
    }

    /// Is there nothing more to come?
    pub fn is_done(&self) -> bool {
        self.is_done
    }

    /// One step.
    pub fn step(&mut self) {
        let Some(search) = self.search.as_mut().filter(|_| !self.is_done) else { return };
        self.steps += 1;
        self.is_done = search.step() == Step::Done || self.steps >= MOST_STEPS;
    }

    /// What it has come to.
    pub fn outcome(&self) -> Outcome<'_> {
        let (case, search) = match (&self.floor.case, &self.search) {
            (Ok(case), Some(search)) => (case, search),
            (Err(why), _) => return Outcome::Impossible(format!("This floor cannot be laid out: {why}.")),
            (Ok(_), None) => return Outcome::Nothing,
        };
        match search.best().filter(|layout| check(case, layout).is_ok()) {
            Some(layout) => Outcome::Laid { layout, bound: search.bound() },
            None if self.is_done => {
                Outcome::Impossible("No layout keeps the rules: some bay is wider than a sheet bridges.".to_owned())
            }
            None => Outcome::Nothing,
        }
    }
}
