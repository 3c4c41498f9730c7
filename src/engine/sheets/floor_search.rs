//! The search for the floors' layouts, as far as phone and office both take it: steps are
//! counted and not timed, so that they show the same ones.

use super::ToLay;
use super::layout::{Layout, Search, Step, check};
use super::spare::{Spare, left_over, on_hand};
use crate::engine::job::Job;

/// Where a search ends that could go on.
const MOST_STEPS: usize = 20_000;

/// The searches for all floors of a job, one after the other: each floor is first laid
/// of what is on hand, and then of what the floors before it left.
#[derive(Debug, Clone)]
pub struct Searches {
    floors: Vec<FloorSearch>,
    on_hand: Vec<Spare>,
}

/// A floor and the search for its layout.
#[derive(Debug, Clone)]
pub struct FloorSearch {
    /// The floor.
    pub floor: ToLay,
    /// None before it is begun, and for ever if the floor cannot be laid out as it is.
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

impl Searches {
    /// Begins, with what the job says is on hand.
    pub fn new(job: &Job, floors: Vec<ToLay>) -> Self {
        let sheet = floors.iter().find_map(|floor| floor.case.as_ref().ok()).map(|case| case.asked.sheet);
        let on_hand = sheet.map(|sheet| on_hand(job, sheet)).unwrap_or_default();
        let mut floors: Vec<_> = floors.into_iter().map(FloorSearch::new).collect();
        if let Some(first) = floors.first_mut() {
            first.begin(&on_hand);
        }
        Self { floors, on_hand }
    }

    /// The searches at their end.
    pub fn finished(job: &Job, floors: Vec<ToLay>) -> Self {
        let mut searches = Self::new(job, floors);
        while searches.step() {}
        searches
    }

    /// The floors in the order that they are laid.
    pub fn floors(&self) -> &[FloorSearch] {
        &self.floors
    }

    /// One step: false when there is nothing more to come.
    pub fn step(&mut self) -> bool {
        let Some(at) = self.floors.iter().position(|floor| !floor.is_done) else { return false };
        let Some(floor) = self.floors.get_mut(at) else { return false };
        floor.step();
        if floor.is_done {
            self.on_hand = floor.leaves(std::mem::take(&mut self.on_hand));
            if let Some(next) = self.floors.get_mut(at + 1) {
                next.begin(&self.on_hand);
            }
        }
        true
    }
}

impl FloorSearch {
    fn new(floor: ToLay) -> Self {
        Self { floor, search: None, steps: 0, is_done: false }
    }

    /// Begins, with what is on hand for it.
    fn begin(&mut self, on_hand: &[Spare]) {
        self.floor = self.floor.clone().given(on_hand);
        self.search = self.floor.case.clone().ok().map(Search::new);
    }

    /// One step.
    fn step(&mut self) {
        self.steps += 1;
        let step = self.search.as_mut().map_or(Step::Done, Search::step);
        self.is_done = step == Step::Done || self.steps >= MOST_STEPS;
    }

    /// What there is on hand once it is laid.
    fn leaves(&self, had: Vec<Spare>) -> Vec<Spare> {
        match (&self.floor.case, self.outcome()) {
            (Ok(case), Outcome::Laid { layout, .. }) => left_over(&self.floor, case, layout, had),
            _ => had,
        }
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
