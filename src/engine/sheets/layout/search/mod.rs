//! The search for the best layout: step by step, the best so far and a proven bound
//! always at hand, and the same steps on every machine.
//!
//! It goes on in this order: a layout at once, if only a simple one; then bounds and
//! better layouts, class of courses by class, the most promising first, until the
//! bound meets the layout; then fewer pieces with as many sheets; then less sawing.

mod candidate;
mod dice;
mod exhaust;
mod group;
mod hope;
mod one_by_one;

use super::bound::by_floor;
use super::case::Case;
use super::courses::{Class, classes};
use super::plan::Layout;
use super::scheme::{Kind, NotApart};
use candidate::Candidate;
use group::{Groups, Told, Verdict};
use hope::{Hope, NO_LAYOUT, Wanted};

/// How many rounds a class is worked on before the next has its turn. Turns and shares change
/// the order of what is proven and never what.
const ROUNDS_IN_A_ROW: u32 = 100;

/// So much work goes into classes one by one before they are bounded together, and after
/// that so many times less.
const DUG_AT_FIRST: u64 = 20_000_000;
const DIGS_LESS: u64 = 1;

/// How wide the first course is in the class's widest member.
fn first_width(class: &Class) -> i32 {
    class.members.last().and_then(|levels| levels.first()).map_or(0, |(low, high)| high - low)
}

/// A search, and what it has found.
#[derive(Debug, Clone)]
pub struct Search {
    case: Case,
    hopes: Vec<Hope>,
    /// Classes bounded together, for the number of sheets that is looked for now.
    groups: Groups,
    /// What the floor's area proves of all classes.
    by_floor: u32,
    best: Option<Layout>,
    /// How often a first layout was looked for in vain.
    without: usize,
    /// The classes that are taken apart, the one that had the last turn last.
    opened: Vec<usize>,
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
        let groups = Groups::default();
        Self { case, hopes, groups, by_floor, best: None, without: 0, opened: Vec::new(), steps: 0 }
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

    /// What was done so far: a measure of the work, of the order of simple operations.
    pub fn work(&self) -> u64 {
        self.groups.work + self.dug() + self.hopes.iter().map(|hope| hope.besides).sum::<u64>()
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        self.groups.bytes + self.hopes.iter().map(|hope| hope.bytes).sum::<usize>()
    }

    /// Is it shown that no layout keeps the rules? Not finding one shows nothing.
    pub fn is_impossible(&self) -> bool {
        self.best.is_none() && self.hopes.iter().all(|hope| hope.sheets == NO_LAYOUT)
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
        let all = self.hopes.len();
        let (number, most) = if self.without < all {
            (self.without, self.case.limits.ways_at_once)
        } else {
            (self.without - all, self.case.limits.ways)
        };
        let Some(hope) = self.hopes.get_mut(number) else { return Step::Done };
        self.without += 1;
        if hope.sheets == NO_LAYOUT {
            return Step::Working;
        }
        match Candidate::with_ways(&self.case, hope.class(), most) {
            Ok(mut first) => {
                self.best = first.simple(&self.case);
                hope.work += first.work();
            }
            Err(NotApart::Uncoverable) => hope.sheets = NO_LAYOUT,
            Err(NotApart::TooMuch) => {}
        }
        if self.best.is_none() {
            return Step::Working;
        }
        self.group();
        Step::Better
    }

    /// The work on classes one by one.
    fn dug(&self) -> u64 {
        self.hopes.iter().map(|hope| hope.work).sum()
    }

    /// Groups the classes that could take fewer sheets than the best.
    fn group(&mut self) {
        let Some(best) = self.best.as_ref().map(Layout::sheets) else { return };
        let open = self.hopes.iter().enumerate().filter(|(_, hope)| hope.sheets < best);
        let mut open: Vec<_> = open.map(|(number, hope)| (of_sort(hope.class()), number)).collect();
        open.sort_unstable();
        let open: Vec<_> = open.into_iter().map(|(_, number)| number).collect();
        self.groups = self.groups.anew(&self.case, &open);
    }

    /// Goes on with a class that could take fewer sheets than the best. False when none
    /// is left to try.
    fn fewer_sheets(&mut self) -> bool {
        let Some(target) = self.best.as_ref().map(|best| best.sheets().saturating_sub(1)) else { return false };
        // By turns: raise bounds, and dig for a layout where there can be one. Mostly bounds,
        // as long as there are groups: they show where there can be none.
        if self.dug() > DUG_AT_FIRST + self.groups.work / DIGS_LESS && self.bound_together(target) {
            return true;
        }
        let open = || self.hopes.iter().enumerate().filter(move |(_, hope)| hope.sheets <= target && !hope.is_over());
        let wanted = Wanted::new(&self.case.limits, target, None, open().count());
        let deepest = open()
            .min_by_key(|(at, hope)| (hope.stage(wanted), !hope.was_opened(), hope.rounds / ROUNDS_IN_A_ROW, *at));
        let Some((at, _)) = deepest else { return self.bound_together(target) };
        self.work_on(at, wanted);
        true
    }

    /// Goes on with the groups. False when none is left.
    fn bound_together(&mut self, target: u32) -> bool {
        let Self { groups, hopes, case, .. } = self;
        let told =
            groups.step(case, target, |number| hopes.get(number).filter(|hope| hope.sheets <= target).map(Hope::class));
        let (numbers, sheets) = match told {
            Told::Over => return false,
            Told::Working => return true,
            Told::Of(numbers, Verdict::Take(sheets)) => (numbers, sheets),
            Told::Of(numbers, Verdict::Nothing) => (numbers, NO_LAYOUT),
        };
        for number in numbers {
            if let Some(hope) = self.hopes.get_mut(number) {
                hope.sheets = hope.sheets.max(sheets);
            }
        }
        true
    }

    /// Goes on with a class that could take fewer pieces than the best. False when none
    /// is left to try.
    fn fewer_pieces(&mut self) -> bool {
        let Some((sheets, pieces, _)) = self.rank() else { return false };
        let open = || {
            let hopes = self.hopes.iter().enumerate();
            hopes.filter(|(_, hope)| hope.sheets <= sheets && hope.pieces < pieces && !hope.is_over())
        };
        let wanted = Wanted::new(&self.case.limits, sheets, Some(pieces - 1), 1);
        let first = open().min_by_key(|(at, hope)| (hope.stage(wanted).min(1), hope.rounds / ROUNDS_IN_A_ROW, *at));
        let Some((at, _)) = first else { return false };
        self.work_on(at, wanted);
        true
    }

    /// Tries other layouts of as many sheets and pieces. False when chance had its turns.
    fn less_sawing(&mut self) -> bool {
        let (Some((sheets, pieces, _)), case) = (self.rank(), &self.case) else { return false };
        let open = self.hopes.iter_mut().filter(|hope| hope.sheets <= sheets && hope.pieces <= pieces);
        let Some(hope) = open.filter(|hope| hope.may_saw_less()).min_by_key(|hope| hope.sawn) else { return false };
        let found = hope.sawn_otherwise(case, Wanted::new(&case.limits, sheets, Some(pieces), 1));
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
        } else {
            hope.open(&self.case);
        }
        self.make_room(at);
    }

    /// Puts classes back that had no turn for the longest, until all of it is little enough.
    fn make_room(&mut self, at: usize) {
        self.opened.retain(|other| *other != at);
        self.opened.push(at);
        while self.bytes() > self.case.limits.bytes && self.opened.len() > 1 {
            let oldest = self.opened.remove(0);
            if let Some(hope) = self.hopes.get_mut(oldest) {
                hope.close();
            }
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
            self.best = Some(found);
            self.group();
            return;
        }
        self.best = Some(found);
    }
}

/// What puts classes next to each other: as many courses, and nearly as wide a first one.
fn of_sort(class: &Class) -> (usize, i32) {
    (class.members.first().map_or(0, Vec::len), first_width(class))
}
