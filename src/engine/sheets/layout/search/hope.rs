//! A class of courses, and how far it was searched.

use super::super::case::Case;
use super::super::courses::Class;
use super::super::options::Joints;
use super::super::packing::Packing;
use super::super::plan::Layout;
use super::super::scheme::Kind;
use super::candidate::Candidate;
use super::exhaust::{Exhaust, Next};

/// How many sheets' fillings one try to pack looks at.
const EFFORT: usize = 400;

/// How often chance is tried on a class, for fewer sheets or for fewer pieces.
const THROWS: usize = 80;

/// How often it is tried for less sawing, and how many members of the class with it.
const SAWING_THROWS: usize = 24;
const SAWING_MEMBERS: usize = 12;

/// How many beginnings of layouts are looked at in one class before it is left open.
const MOST_BEGINNINGS: usize = 60_000;

/// How many of them one step takes.
const BEGINNINGS_A_STEP: usize = 200;

/// A class, and what is known of it.
#[derive(Debug, Clone)]
pub struct Hope {
    class: Class,
    candidate: Option<Box<Candidate>>,
    /// No layout of the class takes fewer sheets.
    pub sheets: u32,
    /// With as many sheets as the best, no layout of the class has fewer pieces.
    pub pieces: usize,
    /// How often it had its turn.
    pub rounds: u32,
    /// How often less sawing was tried.
    pub sawn: usize,
    /// Were the prices of another class tried?
    has_inherited: bool,
    hunt: Hunt,
}

/// What is looked for: so many sheets or fewer, and so many pieces or fewer if that matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    pub sheets: u32,
    pub pieces: Option<usize>,
}

/// How far a class was searched for what beats the best.
#[derive(Debug, Clone)]
enum Hunt {
    /// By chance, so many times.
    Chance(usize),
    /// One by one.
    Each(Box<OneByOne>),
    /// Nothing more is tried.
    Over,
}

#[derive(Debug, Clone)]
struct OneByOne {
    exhaust: Exhaust,
    /// What each piece costs beside its price.
    toll: i64,
    /// Could each so far be decided, and do they stand for the whole class?
    decides: bool,
}

impl Wanted {
    fn allows(self, pieces: usize) -> bool {
        self.pieces.is_none_or(|most| pieces <= most)
    }
}

impl Hope {
    /// A class of which no more is known than that it takes `sheets` or more.
    pub fn new(class: Class, sheets: u32) -> Self {
        Self {
            class,
            candidate: None,
            sheets,
            pieces: 1,
            rounds: 0,
            sawn: 0,
            has_inherited: false,
            hunt: Hunt::Chance(0),
        }
    }

    /// The class.
    pub fn class(&self) -> &Class {
        &self.class
    }

    /// Was everything tried that is ever tried?
    pub fn is_over(&self) -> bool {
        matches!(self.hunt, Hunt::Over)
    }

    /// Was it taken apart?
    pub fn is_opened(&self) -> bool {
        self.candidate.is_some()
    }

    /// Is there something to try yet for less sawing?
    pub fn may_saw_less(&self) -> bool {
        self.is_opened() && self.sawn < SAWING_THROWS
    }

    /// Were prices looked for that prove more than `sheets`, and found, or are there none?
    pub fn is_settled(&self, sheets: u32) -> bool {
        self.candidate.as_ref().is_some_and(|candidate| self.sheets > sheets || !candidate.bounder.is_open)
    }

    /// Every kind of piece with the price that proved most.
    pub fn priced_kinds(&self) -> Option<Vec<(Kind, i64)>> {
        self.candidate.as_ref().map(|candidate| candidate.priced_kinds())
    }

    /// May the prices of a class like it be tried?
    pub fn may_inherit(&self) -> bool {
        !self.has_inherited && self.candidate.as_ref().is_some_and(|candidate| candidate.bounder.is_open)
    }

    /// Tries the prices of a class like it, once.
    pub fn inherit(&mut self, prices: &[(Kind, i64)]) {
        let Some(candidate) = self.candidate.as_mut() else { return };
        candidate.bounder.inherit(&candidate.scheme, &candidate.ways, prices);
        self.sheets = self.sheets.max(candidate.proof().sheets());
        self.has_inherited = true;
    }

    /// Takes the class apart; none if no joints suit it.
    pub fn open(&mut self, case: &Case) -> Option<()> {
        let candidate = Candidate::new(case, &self.class)?;
        self.sheets = self.sheets.max(candidate.proof().sheets());
        self.candidate = Some(Box::new(candidate));
        Some(())
    }

    /// Begins the search anew, for another number of sheets.
    pub fn begin_anew(&mut self) {
        self.hunt = Hunt::Chance(0);
        self.pieces = 1;
    }

    /// One round: better prices while there are any, then chance, then one by one.
    pub fn work(&mut self, case: &Case, wanted: Wanted) -> Option<Layout> {
        let candidate = self.candidate.as_mut()?;
        if candidate.bounder.is_open {
            let joints = candidate.bounder.step(&candidate.scheme, &candidate.ways);
            self.sheets = self.sheets.max(candidate.proof().sheets());
            return candidate.cut_out(case, &joints?, wanted);
        }
        if self.pieces == 1 && wanted.pieces.is_some() {
            self.pieces = candidate.best_toll(wanted.sheets).1.max(2);
            return None;
        }
        match &mut self.hunt {
            Hunt::Chance(throws) if *throws < THROWS => {
                *throws += 1;
                let joints = candidate.by_chance(*throws, wanted.pieces.is_some())?;
                candidate.cut_out(case, &joints, wanted)
            }
            Hunt::Chance(_) => {
                self.hunt = Hunt::Each(Box::new(OneByOne::new(candidate, wanted)));
                None
            }
            Hunt::Each(_) => self.one_by_one(case, wanted),
            Hunt::Over => None,
        }
    }

    fn one_by_one(&mut self, case: &Case, wanted: Wanted) -> Option<Layout> {
        let (candidate, Hunt::Each(each)) = (self.candidate.as_mut()?, &mut self.hunt) else { return None };
        match each.next(candidate, wanted) {
            Found::Layout(joints, filled) => return candidate.layout(case, &joints, &filled),
            Found::Nothing => return None,
            Found::Exhausted => {}
        }
        // What was looked for is not there.
        if each.decides {
            match wanted.pieces {
                None => self.sheets = self.sheets.max(wanted.sheets + 1),
                Some(pieces) => self.pieces = self.pieces.max(pieces + 1),
            }
        }
        self.hunt = Hunt::Over;
        None
    }

    /// Another layout by chance, or the same in another member of the class: whichever
    /// takes the least sawing.
    pub fn sawn_otherwise(&mut self, case: &Case, wanted: Wanted) -> Option<Layout> {
        self.sawn += 1;
        let candidate = self.candidate.as_mut()?;
        let joints = candidate.by_chance(THROWS + self.sawn, true)?;
        if !wanted.allows(candidate.ways.kinds(&joints.ways).len()) {
            return None;
        }
        let Packing::Packed(filled) = candidate.pack_again(&joints.ways, wanted.sheets, EFFORT) else { return None };
        let layout = candidate.layout(case, &joints.ways, &filled)?;
        let every = self.class.members.len().div_ceil(SAWING_MEMBERS).max(1);
        let moved = self.class.members.iter().step_by(every).filter_map(|levels| layout.moved(case, levels));
        let least = moved.min_by_key(Layout::rank);
        [Some(layout), least].into_iter().flatten().min_by_key(Layout::rank)
    }
}

/// What one step of looking one by one came to.
enum Found {
    Layout(Vec<u32>, Vec<Vec<u16>>),
    Nothing,
    Exhausted,
}

impl OneByOne {
    fn new(candidate: &Candidate, wanted: Wanted) -> Self {
        let toll = if wanted.pieces.is_some() { candidate.best_toll(wanted.sheets).0 } else { 0 };
        let decides = candidate.ways.are_all && !candidate.bounder.leaves_some_out();
        Self { exhaust: Exhaust::new(&candidate.ways, &candidate.costs(toll)), toll, decides }
    }

    fn next(&mut self, candidate: &mut Candidate, wanted: Wanted) -> Found {
        let tolls = wanted.pieces.map_or(0, |pieces| self.toll.saturating_mul(pieces as i64));
        let limit = candidate.proof().most(wanted.sheets).saturating_add(tolls);
        for _ in 0..BEGINNINGS_A_STEP {
            let joints = match self.exhaust.next(&candidate.ways, limit) {
                Next::Working => continue,
                Next::Nothing => return Found::Exhausted,
                Next::Joints(joints) => joints,
            };
            if !wanted.allows(candidate.ways.kinds(&joints).len()) {
                continue;
            }
            match candidate.pack(&joints, wanted.sheets, EFFORT * 4) {
                Some(Packing::Packed(filled)) => return Found::Layout(joints, filled),
                Some(Packing::Unknown) => self.decides = false,
                Some(Packing::Impossible) | None => {}
            }
            return Found::Nothing;
        }
        let is_enough = self.exhaust.looked_at() > MOST_BEGINNINGS;
        self.decides &= !is_enough;
        if is_enough { Found::Exhausted } else { Found::Nothing }
    }
}

impl Candidate {
    /// The layout of these joints, if their pieces are few enough and come out of few
    /// enough sheets.
    fn cut_out(&mut self, case: &Case, joints: &Joints, wanted: Wanted) -> Option<Layout> {
        if !wanted.allows(self.ways.kinds(&joints.ways).len()) {
            return None;
        }
        match self.pack(&joints.ways, wanted.sheets, EFFORT)? {
            Packing::Packed(filled) => self.layout(case, &joints.ways, &filled),
            Packing::Impossible | Packing::Unknown => None,
        }
    }
}
