//! The search for the floors' layouts, as far as phone and office both take it: steps are
//! counted and not timed, so that they show the same ones.

use super::ToLay;
use super::in_the_way::InTheWay;
use super::layout::{Layout, Search, Step, check};
use super::spare::{Spare, left_over, on_hand};
use crate::engine::job::Job;

/// Where a search ends that could go on. What it has found by then stays, and so does what
/// is proven; what is not is said not to be known.
pub const MOST_STEPS: usize = 20_000;

/// So much work ends it too ([`Search::work`]), all floors of a job together, each an equal
/// share: some seconds on a desk, and the same layouts on every machine.
pub const MOST_WORK: u64 = 6_000_000_000;

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
    /// What stands in the way, once it is shown that there is no layout.
    in_the_way: Option<InTheWay>,
    steps: usize,
    /// So much work ends it.
    most_work: u64,
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
    /// It is not laid out as it is, in words: it cannot be asked for, no layout keeps the
    /// rules and what would help, or none was found.
    NotLaid(String),
}

impl Searches {
    /// Begins, with what the job says is on hand.
    pub fn new(job: &Job, floors: Vec<ToLay>) -> Self {
        let sheet = floors.iter().find_map(|floor| floor.case.as_ref().ok()).map(|case| case.asked.sheet);
        let on_hand = sheet.map(|sheet| on_hand(job, sheet)).unwrap_or_default();
        let most_work = share_of_work(floors.len());
        let mut floors: Vec<_> = floors.into_iter().map(|floor| FloorSearch::new(floor, most_work)).collect();
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
    fn new(floor: ToLay, most_work: u64) -> Self {
        Self { floor, search: None, in_the_way: None, steps: 0, most_work, is_done: false }
    }

    /// Begins, with what is on hand for it.
    fn begin(&mut self, on_hand: &[Spare]) {
        self.floor = self.floor.clone().given(on_hand);
        self.search = self.floor.case.clone().ok().map(Search::new);
    }

    /// One step.
    fn step(&mut self) {
        self.steps += 1;
        let Some(search) = &mut self.search else {
            self.is_done = true;
            return;
        };
        let goes_on = match &mut self.in_the_way {
            Some(in_the_way) => in_the_way.step(),
            None => match search.step() {
                Step::Better | Step::Working => true,
                Step::Done if search.is_impossible() => {
                    self.in_the_way = Some(InTheWay::new(search.case()));
                    true
                }
                Step::Done => false,
            },
        };
        let (steps, work) = self.took();
        self.is_done = !goes_on || is_enough((steps, work), self.most_work);
    }

    /// What there is on hand once it is laid.
    fn leaves(&self, had: Vec<Spare>) -> Vec<Spare> {
        match (&self.floor.case, self.outcome()) {
            (Ok(case), Outcome::Laid { layout, .. }) => left_over(&self.floor, case, layout, had),
            _ => had,
        }
    }

    /// How much it took so far, in steps and in work ([`Search::work`]).
    pub fn took(&self) -> (usize, u64) {
        let works = self.search.as_ref().map_or(0, Search::work);
        (self.steps, works + self.in_the_way.as_ref().map_or(0, InTheWay::work))
    }

    /// What it has come to.
    pub fn outcome(&self) -> Outcome<'_> {
        let (case, search) = match (&self.floor.case, &self.search) {
            (Ok(case), Some(search)) => (case, search),
            (Err(why), _) => return Outcome::NotLaid(format!("This floor cannot be laid out: {why}.")),
            (Ok(_), None) => return Outcome::Nothing,
        };
        if let Some(layout) = search.best().filter(|layout| check(case, layout).is_ok()) {
            return Outcome::Laid { layout, bound: search.bound() };
        }
        match &self.in_the_way {
            _ if !self.is_done => Outcome::Nothing,
            Some(in_the_way) => Outcome::NotLaid(in_the_way.words(&self.floor)),
            None => Outcome::NotLaid(NOT_FOUND.to_owned()),
        }
    }
}

/// What each of so many floors may take.
fn share_of_work(floors: usize) -> u64 {
    MOST_WORK / (floors as u64).max(1)
}

/// Does a search end here that could go on?
const fn is_enough((steps, work): (usize, u64), most_work: u64) -> bool {
    steps >= MOST_STEPS || work >= most_work
}

/// What is said when it is neither found nor shown not to be there.
const NOT_FOUND: &str = "No layout was found within the work that is allowed; that there is none is not shown. \
                         Lay it out in parts, as openings of their own.";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_search_ends_at_its_last_step_or_at_its_last_work() {
        let is_enough = |steps, work| is_enough((steps, work), MOST_WORK);
        assert!(!is_enough(MOST_STEPS - 1, MOST_WORK - 1));
        assert!(is_enough(MOST_STEPS, 0) && is_enough(MOST_STEPS + 1, 0));
        assert!(is_enough(0, MOST_WORK) && is_enough(0, MOST_WORK + 1));
    }

    #[test]
    fn all_floors_of_a_job_together_take_no_more_work_than_one() {
        assert_eq!((share_of_work(0), share_of_work(1)), (MOST_WORK, MOST_WORK));
        for floors in 2..200_usize {
            assert!(share_of_work(floors) * floors as u64 <= MOST_WORK);
        }
    }
}
