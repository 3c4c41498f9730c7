//! Which rules leave a floor without a layout, and the nearest one to give up.
//!
//! Each rule is left out by itself, and a layout is looked for with all the others. Those
//! without which there is one stand in the way; the nearest is the one whose layout breaks
//! it in the fewest places. Where no single rule is enough, two are left out, and then joists
//! are put into the bays of which no sheet bridges two.

use super::layout::{Broken, Case, Layout, Request, Search, Step, check};
use super::refused::tape;
use super::to_lay::{ToLay, length};
use crate::engine::describe::counted;

/// So many steps a layout is looked for without a rule. That none is found then says
/// nothing.
const MOST_STEPS: usize = 3_000;

/// And so many more that it takes fewer sheets: its price is that of a layout that there is,
/// and not said to be the least.
const STEPS_FOR_ITS_PRICE: usize = 200;

/// A rule that can be given up, and what takes its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Relaxed {
    /// Joints of neighbouring courses may lie on one joist.
    Stagger,
    /// A piece may span one bay.
    Bays,
    /// A course at an edge may be narrower: as wide as it can be where both edges share what
    /// whole courses leave.
    Rip,
    /// Where that is not enough: half as wide as the rule has it.
    NarrowRip,
    /// Both may be.
    StaggerAndBays,
    /// There are so many more joists in the widest bay.
    Joists(u8),
    /// In every bay of which no sheet bridges two.
    JoistsInEach(u8),
}

/// A layout that there is without a rule, and what it takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Works {
    /// What was given up.
    pub without: Relaxed,
    /// In how many places that is made use of.
    pub places: usize,
    /// How many sheets it takes: no layout is claimed to be the least.
    pub sheets: u32,
    /// How many pieces.
    pub pieces: usize,
    /// How wide its narrowest course is.
    pub narrowest: i32,
}

/// What stands in the way of a floor's layouts, step by step.
#[derive(Debug, Clone)]
pub struct InTheWay {
    case: Case,
    /// What is left out next, the next one last.
    ahead: Vec<Relaxed>,
    now: Option<Box<Try>>,
    works: Vec<Works>,
    /// Was something tried to its end in vain, and not shown to be impossible?
    gave_up: bool,
    /// What was tried and is over took so much work.
    spent: u64,
    phase: Phase,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Phase {
    One,
    Two,
    Joists,
    Over,
}

#[derive(Debug, Clone)]
struct Try {
    without: Relaxed,
    search: Search,
    steps: usize,
    steps_with: usize,
}

impl InTheWay {
    /// Begins for a floor that has no layout.
    pub fn new(case: &Case) -> Self {
        let ahead = vec![Relaxed::Rip, Relaxed::Bays, Relaxed::Stagger];
        Self { case: case.clone(), ahead, now: None, works: Vec::new(), gave_up: false, spent: 0, phase: Phase::One }
    }

    /// One step; false when there is nothing more to come.
    pub fn step(&mut self) -> bool {
        let Some(mut attempt) = self.now.take() else { return self.next() };
        let step = attempt.search.step();
        attempt.steps += 1;
        attempt.steps_with += usize::from(attempt.search.best().is_some());
        let is_proven = attempt.search.is_proven();
        if step == Step::Done || is_proven || attempt.steps >= MOST_STEPS || attempt.steps_with > STEPS_FOR_ITS_PRICE {
            self.note(&attempt);
        } else {
            self.now = Some(attempt);
        }
        true
    }

    /// What was done so far: a measure of the work.
    pub fn work(&self) -> u64 {
        self.spent + self.now.as_ref().map_or(0, |attempt| attempt.search.work())
    }

    /// What works, the nearest first.
    pub fn works(&self) -> &[Works] {
        &self.works
    }

    /// Begins with what is left out next.
    fn next(&mut self) -> bool {
        if let Some(without) = self.ahead.pop() {
            // A rule that says nothing is in nobody's way.
            let asked = relaxed(&self.case, without);
            let Ok(case) = Case::new(asked) else { return true };
            let search = Search::new(case);
            self.now = Some(Box::new(Try { without, search, steps: 0, steps_with: 0 }));
            return true;
        }
        if !self.works.is_empty() {
            self.phase = Phase::Over;
        }
        (self.phase, self.ahead) = match self.phase {
            Phase::One => (Phase::Two, vec![Relaxed::StaggerAndBays]),
            Phase::Two => (Phase::Joists, joists()),
            Phase::Joists | Phase::Over => (Phase::Over, Vec::new()),
        };
        self.phase != Phase::Over
    }

    fn note(&mut self, attempt: &Try) {
        self.spent += attempt.search.work();
        match attempt.search.best() {
            Some(layout) => {
                let works = Works {
                    without: attempt.without,
                    places: places(&self.case, attempt.without, layout),
                    sheets: layout.sheets(),
                    pieces: layout.pieces.len(),
                    narrowest: layout.levels.iter().map(|(low, high)| high - low).min().unwrap_or(0),
                };
                self.works.push(works);
                self.works.sort_by_key(|works| (works.places, works.without));
                // The fewest joists are enough to name.
                if self.phase == Phase::Joists {
                    self.ahead.clear();
                }
            }
            None => {
                self.gave_up |= !attempt.search.is_impossible();
                let asked = &attempt.search.case().asked;
                if attempt.without == Relaxed::Rip && asked.min_rip > half_a_rip(&self.case) {
                    self.ahead.push(Relaxed::NarrowRip);
                }
            }
        }
    }

    /// All that in words.
    pub fn words(&self, floor: &ToLay) -> String {
        let Some(nearest) = self.works.first() else {
            let too_wide =
                widest(&self.case).filter(|(from, to)| to - from > self.case.asked.sheet.length + self.case.asked.gap);
            let why = too_wide.map_or_else(String::new, |(from, to)| {
                format!(
                    " In the way: {} is farther from one joist to the next than a sheet bridges.",
                    tape(length(to - from))
                )
            });
            let tried = if self.gave_up || self.phase != Phase::Over {
                "Nothing was found that would do."
            } else {
                "No rule given up, and no three joists more in a bay, would do."
            };
            return format!("No layout keeps the rules.{why} {tried}");
        };
        let rules: Vec<_> = self.works.iter().filter_map(|works| works.without.rule(&self.case.asked)).collect();
        let in_the_way = match rules.as_slice() {
            [] => self.bay_in_the_way(),
            [one] => one.clone(),
            several => format!("{}; giving up any one of these is enough", several.join(", and ")),
        };
        let price =
            format!("then {} for {}", counted(nearest.sheets as usize, "sheet"), counted(nearest.pieces, "piece"));
        let found = if self.gave_up { " found" } else { "" };
        format!(
            "No layout keeps the rules. In the way: {in_the_way}. The nearest{found} that works: {}; {price}.{}",
            nearest.words(&self.case, floor),
            nearest.without.caution()
        )
    }

    /// Where a joist helps and no rule does: the widest bay, if a sheet does not bridge it.
    fn bay_in_the_way(&self) -> String {
        let widest = widest(&self.case).unwrap_or_default();
        let apart = widest.1 - widest.0;
        if apart > self.case.asked.sheet.length + self.case.asked.gap {
            format!("a bay of {}, wider than a sheet bridges", tape(length(apart)))
        } else {
            "where the joists are".to_owned()
        }
    }
}

impl Relaxed {
    /// The rule as it stands; none for a joist that is put in.
    fn rule(self, asked: &Request) -> Option<String> {
        let stagger = "joints of neighboring courses on different joists";
        let bays = "each piece over two bays or more";
        match self {
            Self::Stagger => Some(stagger.to_owned()),
            Self::Bays => Some(bays.to_owned()),
            Self::StaggerAndBays => Some(format!("{stagger}, together with {bays}")),
            Self::Rip | Self::NarrowRip => Some(format!("no course narrower than {}", tape(length(asked.min_rip)))),
            Self::Joists(_) | Self::JoistsInEach(_) => None,
        }
    }

    /// What whoever gives it up has to mind.
    const fn caution(self) -> &'static str {
        match self {
            Self::Stagger | Self::Bays | Self::StaggerAndBays | Self::Rip | Self::NarrowRip => {
                " That is weaker than the rule: ask the sheets' maker or a designer, and local code, before you do."
            }
            Self::Joists(_) | Self::JoistsInEach(_) => " What joists take at their ends is not worked out here.",
        }
    }
}

impl Works {
    /// What is given up, and where.
    fn words(&self, case: &Case, floor: &ToLay) -> String {
        let places = counted(self.places, "place");
        match self.without {
            Relaxed::Stagger => format!("joints of neighboring courses on one joist, in {places}"),
            Relaxed::Bays => format!("pieces over one bay, {places}"),
            Relaxed::StaggerAndBays => {
                format!("joints of neighboring courses on one joist and pieces over one bay, in {places}")
            }
            Relaxed::Rip | Relaxed::NarrowRip => format!("a course at an edge {} wide", tape(length(self.narrowest))),
            Relaxed::Joists(each) => {
                let from_corner = |at: i32| tape(floor.run.across(floor.on_plan((at, 0))));
                let at: Vec<_> = widest(case).into_iter().flat_map(|bay| within(bay, each)).map(from_corner).collect();
                format!("{}, {} from corner 1", joists_more(each), at.join(" and "))
            }
            Relaxed::JoistsInEach(each) => {
                format!("{} in each bay wider than {}", joists_more(each), tape(length(half_a_sheet(case))))
            }
        }
    }
}

/// What is asked without a rule.
fn relaxed(case: &Case, without: Relaxed) -> Request {
    let mut asked = case.asked.clone();
    match without {
        Relaxed::Stagger => asked.stagger = 0,
        Relaxed::Bays => asked.min_bays = 1,
        Relaxed::StaggerAndBays => (asked.stagger, asked.min_bays) = (0, 1),
        Relaxed::Rip => asked.min_rip = evened(case).min(asked.min_rip).max(half_a_rip(case)),
        Relaxed::NarrowRip => asked.min_rip = half_a_rip(case),
        Relaxed::Joists(each) => asked.joists.extend(widest(case).into_iter().flat_map(|bay| within(bay, each))),
        Relaxed::JoistsInEach(each) => asked.joists.extend(wide(case).into_iter().flat_map(|bay| within(bay, each))),
    }
    asked
}

const fn half_a_rip(case: &Case) -> i32 {
    if case.asked.min_rip > 1 { case.asked.min_rip / 2 } else { 1 }
}

/// How wide the narrower of both edge courses can be at most, of as few courses as a floor
/// takes.
fn evened(case: &Case) -> i32 {
    let ys = || case.asked.outline.iter().map(|corner| corner.1);
    let across = ys().max().unwrap_or(0) - ys().min().unwrap_or(0);
    let (width, gap) = (case.asked.sheet.width.max(1), case.asked.gap);
    let courses = (across + gap + width + gap - 1) / (width + gap);
    if courses < 2 { across } else { (across - (courses - 1) * gap - (courses - 2) * width) / 2 }
}

/// In how many places a layout breaks what was asked.
fn places(case: &Case, without: Relaxed, layout: &Layout) -> usize {
    match without {
        Relaxed::Joists(each) => return usize::from(each),
        Relaxed::JoistsInEach(each) => return usize::from(each) * wide(case).len(),
        Relaxed::Stagger | Relaxed::Bays | Relaxed::StaggerAndBays | Relaxed::Rip | Relaxed::NarrowRip => {}
    }
    let is_it = |broken: &&Broken| match broken {
        Broken::Stagger { .. } => matches!(without, Relaxed::Stagger | Relaxed::StaggerAndBays),
        Broken::Span { .. } => matches!(without, Relaxed::Bays | Relaxed::StaggerAndBays),
        Broken::Courses => matches!(without, Relaxed::Rip | Relaxed::NarrowRip),
        _ => false,
    };
    check(case, layout).err().map_or(0, |broken| broken.iter().filter(is_it).count())
}

/// From one place that bears to the next, along the sheets.
fn bays(case: &Case) -> Vec<(i32, i32)> {
    let xs = || case.asked.outline.iter().map(|corner| corner.0);
    let (left, right) = (xs().min().unwrap_or(0), xs().max().unwrap_or(0));
    let inner = case.asked.joists.iter().copied().filter(|joist| (left..=right).contains(joist));
    let mut at: Vec<_> = [left, right].into_iter().chain(inner).collect();
    at.sort_unstable();
    at.iter().zip(at.iter().skip(1)).map(|(from, to)| (*from, *to)).collect()
}

/// The widest, the first of several.
fn widest(case: &Case) -> Option<(i32, i32)> {
    bays(case).into_iter().max_by_key(|(from, to)| (to - from, -from))
}

/// The longest bay of which two fit under a sheet.
const fn half_a_sheet(case: &Case) -> i32 {
    case.asked.sheet.length / 2
}

/// The bays that are longer.
fn wide(case: &Case) -> Vec<(i32, i32)> {
    bays(case).into_iter().filter(|(from, to)| to - from > half_a_sheet(case)).collect()
}

/// Up to three joists more, in the widest bay and then in all wide ones; the fewest last,
/// which are tried first.
fn joists() -> Vec<Relaxed> {
    let in_each = (1..=3).rev().map(Relaxed::JoistsInEach);
    in_each.chain((1..=3).rev().map(Relaxed::Joists)).collect()
}

/// Where so many joists part a bay evenly.
fn within((from, to): (i32, i32), each: u8) -> Vec<i32> {
    let parts = i32::from(each) + 1;
    (1..parts).map(|part| from + (to - from) * part / parts).collect()
}

fn joists_more(each: u8) -> String {
    if each == 1 { "one more joist".to_owned() } else { format!("{each} more joists") }
}
