//! The search for the best layout: step by step, the best so far and a proven bound
//! always at hand, and the same steps on every machine.
//!
//! It goes on in this order: a layout at once, if only a simple one; then bounds and
//! better layouts, class of courses by class, the most promising first, until the
//! bound meets the layout; then fewer pieces with as many sheets; then less sawing.

mod candidate;
mod dice;
mod exhaust;
mod hope;

use super::bound::by_floor;
use super::case::Case;
use super::courses::{Class, classes};
use super::options::MOST_WAYS;
use super::plan::Layout;
use super::scheme::Kind;
use candidate::Candidate;
use hope::{Hope, Wanted};

/// How many ways to put a course's joints the first layout chooses from.
const WAYS_AT_ONCE: usize = 200;

/// How many rounds a class is worked on before the next has its turn.
const ROUNDS_IN_A_ROW: u32 = 100;

/// How wide the first course is in the class's widest member.
fn first_width(class: &Class) -> i32 {
    class.members.last().and_then(|levels| levels.first()).map_or(0, |(low, high)| high - low)
}

/// A search, and what it has found.
#[derive(Debug, Clone)]
pub struct Search {
    case: Case,
    hopes: Vec<Hope>,
    /// What the floor's area proves of all classes.
    by_floor: u32,
    best: Option<Layout>,
    /// How often a first layout was looked for in vain.
    without: usize,
    steps: u64,
}

/// What a step brought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// A better layout.
    Better,
    /// Nothing yet; go on.
    Working,
    /// Nothing more will be found.
    Done,
}

impl Search {
    /// A search that has not begun.
    pub fn new(case: Case) -> Self {
        let mut classes = classes(&case);
        // Wide classes first: they leave the most freedom; of those the widest first course.
        classes.sort_by_key(|class| std::cmp::Reverse((class.members.len(), first_width(class))));
        let by_floor = classes.iter().map(|class| by_floor(&case, class.members.first().map_or(0, Vec::len)));
        let by_floor = by_floor.min().unwrap_or(0);
        let least = u32::from(case.asked.on_hand.is_empty());
        let hopes = classes.into_iter().map(|class| Hope::new(class, least)).collect();
        Self { case, hopes, by_floor, best: None, without: 0, steps: 0 }
    }

    /// The best layout so far.
    pub fn best(&self) -> Option<&Layout> {
        self.best.as_ref()
    }

    /// No layout takes fewer sheets.
    pub fn bound(&self) -> u32 {
        let least = self.by_floor.max(self.least_of_classes());
        self.best.as_ref().map_or(least, |best| least.min(best.sheets()))
    }

    fn least_of_classes(&self) -> u32 {
        self.hopes.iter().map(|hope| hope.sheets).min().unwrap_or(0)
    }

    /// Is the best layout proven to take the fewest sheets?
    pub fn is_proven(&self) -> bool {
        self.best.as_ref().is_some_and(|best| self.bound() == best.sheets())
    }

    /// Is it proven class by class? Later phases go by what that leaves.
    fn is_settled(&self) -> bool {
        self.best.as_ref().is_some_and(|best| self.least_of_classes() >= best.sheets())
    }

    /// The case.
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// How many steps it took so far.
    pub fn steps(&self) -> u64 {
        self.steps
    }

    /// One step.
    pub fn step(&mut self) -> Step {
        self.steps += 1;
        if self.best.is_none() {
            return self.first_layout();
        }
        let before = self.rank();
        let is_more_to_do = (!self.is_settled() && self.fewer_sheets()) || self.fewer_pieces() || self.less_sawing();
        match (self.rank() < before, is_more_to_do) {
            (true, _) => Step::Better,
            (false, true) => Step::Working,
            (false, false) => Step::Done,
        }
    }

    fn rank(&self) -> Option<(u32, usize, i64)> {
        self.best.as_ref().map(Layout::rank)
    }

    /// A layout of few pieces, each sheet filled as far as what is left allows: at once,
    /// from a few ways to put the joints, and if neighbours cannot agree then from all.
    fn first_layout(&mut self) -> Step {
        let sizes = [WAYS_AT_ONCE, MOST_WAYS].into_iter();
        let mut tries = sizes.flat_map(|most| self.hopes.iter().map(move |hope| (hope, most)));
        let Some((hope, most)) = tries.nth(self.without) else { return Step::Done };
        self.without += 1;
        let first = Candidate::with_ways(&self.case, hope.class(), most).and_then(|mut first| first.simple(&self.case));
        self.best = first;
        if self.best.is_some() { Step::Better } else { Step::Working }
    }

    /// Goes on with a class that could take fewer sheets than the best. False when none
    /// is left to try.
    fn fewer_sheets(&mut self) -> bool {
        let Some(target) = self.best.as_ref().map(|best| best.sheets().saturating_sub(1)) else { return false };
        // By turns: raise the lowest bound, and dig for a layout where there can be one.
        let open = || self.hopes.iter().enumerate().filter(move |(_, hope)| hope.sheets <= target && !hope.is_over());
        let lowest =
            open().filter(|(_, hope)| hope.sheets < target).min_by_key(|(at, hope)| (hope.sheets, hope.rounds, *at));
        let deepest = open().min_by_key(|(at, hope)| (!hope.is_opened(), hope.rounds / ROUNDS_IN_A_ROW, *at));
        let turn = if self.steps.is_multiple_of(2) { lowest.or(deepest) } else { deepest };
        let Some((at, _)) = turn else { return false };
        self.work_on(at, Wanted { sheets: target, pieces: None });
        true
    }

    /// Goes on with a class that could take fewer pieces than the best. False when none
    /// is left to try.
    fn fewer_pieces(&mut self) -> bool {
        let Some((sheets, pieces, _)) = self.rank() else { return false };
        let open = self.hopes.iter().enumerate();
        let open = open.filter(|(_, hope)| hope.sheets <= sheets && hope.pieces < pieces && !hope.is_over());
        let Some((at, _)) = open.min_by_key(|(at, hope)| (hope.rounds / ROUNDS_IN_A_ROW, *at)) else { return false };
        self.work_on(at, Wanted { sheets, pieces: Some(pieces - 1) });
        true
    }

    /// Tries other layouts of as many sheets and pieces. False when chance had its turns.
    fn less_sawing(&mut self) -> bool {
        let (Some((sheets, pieces, _)), case) = (self.rank(), &self.case) else { return false };
        let open = self.hopes.iter_mut().filter(|hope| hope.sheets <= sheets && hope.pieces <= pieces);
        let Some(hope) = open.filter(|hope| hope.may_saw_less()).min_by_key(|hope| hope.sawn) else { return false };
        let found = hope.sawn_otherwise(case, Wanted { sheets, pieces: Some(pieces) });
        self.keep(found);
        true
    }

    fn work_on(&mut self, at: usize, wanted: Wanted) {
        let like = self.most_like(at, wanted.sheets);
        let Some(hope) = self.hopes.get_mut(at) else { return };
        hope.rounds += 1;
        if let Some(prices) = like {
            hope.inherit(&prices);
        } else if hope.is_opened() {
            let found = hope.work(&self.case, wanted);
            self.keep(found);
        } else if hope.open(&self.case).is_none() {
            // No joints suit courses of this class.
            self.hopes.remove(at);
        }
    }

    /// The prices of the class most like one that has none of its own yet.
    fn most_like(&self, at: usize, sheets: u32) -> Option<Vec<(Kind, i64)>> {
        let first = |hope: &Hope| first_width(hope.class());
        let new = self.hopes.get(at).filter(|hope| hope.may_inherit())?;
        let settled = self.hopes.iter().filter(|hope| hope.is_settled(sheets));
        settled.min_by_key(|hope| first(hope).abs_diff(first(new)))?.priced_kinds()
    }

    fn keep(&mut self, found: Option<Layout>) {
        let Some(found) = found.filter(|found| self.best.as_ref().is_none_or(|best| found.rank() < best.rank())) else {
            return;
        };
        if self.best.as_ref().is_none_or(|best| found.sheets() < best.sheets()) {
            self.hopes.iter_mut().for_each(Hope::begin_anew);
        }
        self.best = Some(found);
    }
}
