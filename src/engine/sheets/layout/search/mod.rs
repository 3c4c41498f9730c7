//! The search for the best layout: step by step, the best so far and a proven bound
//! always at hand, and the same steps on every machine.
//!
//! It goes on in this order: a layout at once, if only a simple one; then bounds and
//! better layouts, class of courses by class, the most promising first, until the
//! bound meets the layout; then fewer pieces with as many sheets; then less sawing.

mod candidate;
mod dice;
mod exhaust;

use super::case::Case;
use super::courses::{Class, classes};
use super::options::{Joints, MOST_WAYS};
use super::packing::Packing;
use super::plan::Layout;
use candidate::Candidate;
use dice::Dice;
use exhaust::{Exhaust, Next};

/// How many sheets' fillings one try to pack looks at.
const EFFORT: usize = 400;

/// How often chance is tried on a class, for fewer sheets or for fewer pieces.
const THROWS: usize = 80;

/// How many ways to put a course's joints the first layout chooses from.
const WAYS_AT_ONCE: usize = 200;

/// How many rounds a class is worked on before the next has its turn.
const ROUNDS_IN_A_ROW: u32 = 100;

/// How many beginnings of layouts are looked at in one class before it is left open.
const MOST_BEGINNINGS: usize = 60_000;

/// How many of them one step takes.
const BEGINNINGS_A_STEP: usize = 200;

/// A search, and what it has found.
#[derive(Debug, Clone)]
pub struct Search {
    case: Case,
    hopes: Vec<Hope>,
    best: Option<Layout>,
    /// How often a first layout was looked for in vain.
    without: usize,
    steps: u64,
}

/// A class of courses, and what is known of it.
#[derive(Debug, Clone)]
struct Hope {
    class: Class,
    candidate: Option<Box<Candidate>>,
    /// No layout of the class takes fewer sheets.
    sheets: u32,
    /// With as many sheets as the best, no layout of the class has fewer pieces.
    pieces: usize,
    hunt: Hunt,
    rounds: u32,
}

/// How far a class was searched for what beats the best.
#[derive(Debug, Clone)]
enum Hunt {
    /// By chance, so many times.
    Chance(usize),
    /// One by one; whether each could be decided.
    Each(Box<Exhaust>, i64, bool),
    /// Nothing more is tried.
    Over,
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
        let first =
            |class: &Class| class.members.last().and_then(|levels| levels.first()).map_or(0, |(low, high)| high - low);
        classes.sort_by_key(|class| std::cmp::Reverse((class.members.len(), first(class))));
        let hope = |class| Hope { class, candidate: None, sheets: 1, pieces: 1, hunt: Hunt::Chance(0), rounds: 0 };
        Self { case, hopes: classes.into_iter().map(hope).collect(), best: None, without: 0, steps: 0 }
    }

    /// The best layout so far.
    pub fn best(&self) -> Option<&Layout> {
        self.best.as_ref()
    }

    /// No layout takes fewer sheets.
    pub fn bound(&self) -> u32 {
        let least = self.hopes.iter().map(|hope| hope.sheets).min().unwrap_or(0);
        self.best.as_ref().map_or(least, |best| least.min(best.sheets()))
    }

    /// Is the best layout proven to take the fewest sheets?
    pub fn is_proven(&self) -> bool {
        self.best.as_ref().is_some_and(|best| self.bound() == best.sheets())
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
        let is_more_to_do = if self.is_proven() { self.fewer_pieces() } else { self.fewer_sheets() };
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
        let tries =
            [WAYS_AT_ONCE, MOST_WAYS].into_iter().flat_map(|most| self.hopes.iter().map(move |hope| (hope, most)));
        let Some((hope, most)) = tries.skip(self.without).next() else { return Step::Done };
        self.without += 1;
        let first = Candidate::with_ways(&self.case, &hope.class, most).and_then(|mut first| first.simple(&self.case));
        self.best = first;
        if self.best.is_some() { Step::Better } else { Step::Working }
    }

    /// Goes on with the class that could take the fewest sheets. False when all that
    /// could beat the best have been given up.
    fn fewer_sheets(&mut self) -> bool {
        let Some(target) = self.best.as_ref().map(|best| best.sheets().saturating_sub(1)) else { return false };
        // By turns: raise the lowest bound, and dig for a layout where there can be one.
        let open = || {
            let hopes = self.hopes.iter().enumerate();
            hopes.filter(move |(_, hope)| hope.sheets <= target && !matches!(hope.hunt, Hunt::Over))
        };
        let lowest =
            || open().filter(|(_, hope)| hope.sheets < target).min_by_key(|(at, hope)| (hope.sheets, hope.rounds, *at));
        let deepest = || open().min_by_key(|(at, hope)| (hope.candidate.is_none(), hope.rounds / ROUNDS_IN_A_ROW, *at));
        let turn = if self.steps % 2 == 0 { lowest().or_else(deepest) } else { deepest() };
        let Some((at, _)) = turn else { return self.fewer_pieces() };
        self.work_on(at, target, usize::MAX);
        true
    }

    /// Goes on with the class that could take the fewest pieces.
    fn fewer_pieces(&mut self) -> bool {
        let Some((sheets, pieces, _)) = self.rank() else { return false };
        let open = self.hopes.iter().enumerate();
        let open =
            open.filter(|(_, hope)| hope.sheets <= sheets && hope.pieces < pieces && !matches!(hope.hunt, Hunt::Over));
        let Some((at, _)) = open.min_by_key(|(at, hope)| (hope.rounds, *at)) else { return false };
        self.work_on(at, sheets, pieces - 1);
        true
    }

    fn work_on(&mut self, at: usize, sheets: u32, pieces: usize) {
        let case = &self.case;
        let Some(hope) = self.hopes.get_mut(at) else { return };
        hope.rounds += 1;
        if hope.candidate.is_none() {
            if hope.open(case).is_none() {
                self.hopes.remove(at);
            }
            return;
        }
        let Some(found) = hope.work(case, sheets, pieces) else { return };
        let fewer_sheets = self.best.as_ref().is_none_or(|best| found.sheets() < best.sheets());
        if self.best.as_ref().is_none_or(|best| found.rank() < best.rank()) {
            self.best = Some(found);
        }
        if fewer_sheets {
            for hope in &mut self.hopes {
                hope.begin_anew();
            }
        }
    }
}

impl Hope {
    fn open(&mut self, case: &Case) -> Option<&mut Candidate> {
        let candidate = Candidate::new(case, &self.class)?;
        self.sheets = self.sheets.max(candidate.proof().sheets());
        Some(self.candidate.insert(Box::new(candidate)))
    }

    fn begin_anew(&mut self) {
        self.hunt = Hunt::Chance(0);
        self.pieces = 1;
    }

    /// One round: better prices while there are any, then chance, then one by one.
    fn work(&mut self, case: &Case, sheets: u32, pieces: usize) -> Option<Layout> {
        let candidate = self.candidate.as_mut()?;
        if candidate.bounder.is_open {
            let joints = candidate.bounder.step(&candidate.scheme, &candidate.ways);
            self.sheets = self.sheets.max(candidate.proof().sheets());
            return self.try_joints(case, joints?, sheets, pieces);
        }
        if self.pieces == 1 && pieces < usize::MAX {
            self.pieces = fewest_pieces(candidate, sheets);
            return None;
        }
        match &mut self.hunt {
            Hunt::Chance(throws) if *throws < THROWS => {
                *throws += 1;
                let joints = by_chance(candidate, *throws, pieces < usize::MAX);
                self.try_joints(case, joints?, sheets, pieces)
            }
            Hunt::Chance(_) => {
                let toll = if pieces < usize::MAX { best_toll(candidate, sheets).0 } else { 0 };
                let costs = candidate.costs(toll);
                let decides = candidate.ways.are_all && !candidate.bounder.leaves_some_out();
                self.hunt = Hunt::Each(Box::new(Exhaust::new(&candidate.ways, &costs)), toll, decides);
                None
            }
            Hunt::Each(..) => self.one_by_one(case, sheets, pieces),
            Hunt::Over => None,
        }
    }

    fn try_joints(&mut self, case: &Case, joints: Joints, sheets: u32, pieces: usize) -> Option<Layout> {
        let candidate = self.candidate.as_mut()?;
        if candidate.ways.kinds(&joints.ways).len() > pieces {
            return None;
        }
        match candidate.pack(&joints.ways, sheets, EFFORT)? {
            Packing::Packed(filled) => candidate.layout(case, &joints.ways, &filled),
            Packing::Impossible | Packing::Unknown => None,
        }
    }

    fn one_by_one(&mut self, case: &Case, sheets: u32, pieces: usize) -> Option<Layout> {
        let candidate = self.candidate.as_mut()?;
        let Hunt::Each(exhaust, toll, all_decided) = &mut self.hunt else { return None };
        let proof = candidate.proof();
        let limit =
            (proof.most_on_sheet * i64::from(sheets)).saturating_add(toll.saturating_mul(pieces.min(1 << 20) as i64));
        for _ in 0..BEGINNINGS_A_STEP {
            match exhaust.next(&candidate.ways, limit) {
                Next::Working => {}
                Next::Nothing => {
                    if *all_decided {
                        self.settle(sheets, pieces);
                    }
                    self.hunt = Hunt::Over;
                    return None;
                }
                Next::Joints(joints) => {
                    if candidate.ways.kinds(&joints).len() > pieces {
                        continue;
                    }
                    match candidate.pack(&joints, sheets, EFFORT * 4) {
                        Some(Packing::Packed(filled)) => return candidate.layout(case, &joints, &filled),
                        Some(Packing::Unknown) => *all_decided = false,
                        Some(Packing::Impossible) | None => {}
                    }
                    return None;
                }
            }
        }
        if exhaust.looked_at() > MOST_BEGINNINGS {
            self.hunt = Hunt::Over;
        }
        None
    }

    /// Everything was tried: what was looked for is not there.
    fn settle(&mut self, sheets: u32, pieces: usize) {
        if pieces == usize::MAX {
            self.sheets = self.sheets.max(sheets + 1);
        } else {
            self.pieces = self.pieces.max(pieces + 1);
        }
    }
}

/// The fewest pieces of a layout whose pieces could come out of so many sheets.
fn fewest_pieces(candidate: &Candidate, sheets: u32) -> usize {
    best_toll(candidate, sheets).1
}

/// The toll that proves the most pieces, and how many.
///
/// With a toll `t` on each piece the cheapest layout costs `c`; one that fits has
/// pieces worth at most the sheets, so at least `(c - sheets) / t` of them.
fn best_toll(candidate: &Candidate, sheets: u32) -> (i64, usize) {
    let proof = candidate.proof();
    let most = proof.most_on_sheet * i64::from(sheets);
    let proves = |toll: i64| {
        let joints = candidate.ways.cheapest(&candidate.costs(toll));
        let beyond = joints.map_or(0, |joints| joints.price - most).max(0);
        (toll, ((beyond + toll - 1) / toll) as usize)
    };
    let tolls = (0..8).map(|halvings| (proof.most_on_sheet >> halvings).max(1));
    tolls.map(proves).max_by_key(|(toll, pieces)| (*pieces, *toll)).unwrap_or((1, 1))
}

/// The cheapest joints at prices somewhat off, and with a toll by chance.
fn by_chance(candidate: &Candidate, throw: usize, with_toll: bool) -> Option<Joints> {
    let mut dice = Dice::new(throw as u64);
    let off = 1 << (1 + dice.throw(4));
    let whole = candidate.proof().most_on_sheet;
    let toll = if with_toll { whole >> dice.throw(6) } else { 0 };
    let spread = |price: &i64| price + dice.throw(price / off + whole / 64) + toll;
    let prices: Vec<_> = candidate.proof().prices.iter().map(spread).collect();
    candidate.ways.cheapest(&candidate.ways.costs(&prices))
}
