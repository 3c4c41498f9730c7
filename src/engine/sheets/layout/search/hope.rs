//! A class of courses, and how far it was searched.

use super::super::bound::Proof;
use super::super::case::Case;
use super::super::courses::Class;
use super::super::limits::Limits;
use super::super::options::Joints;
use super::super::packing::Packing;
use super::super::plan::Layout;
use super::super::scheme::{Kind, NotApart};
use super::candidate::Candidate;
use super::one_by_one::{Found, OneByOne};

/// How often chance is tried on a class at least. Chance finds layouts and proves nothing.
const FEWEST_THROWS: usize = 5;

/// How often it is tried for less sawing, and how many members of the class with it. No
/// layout is said to take the least sawing.
const SAWING_THROWS: usize = 24;
const SAWING_MEMBERS: usize = 12;

/// No layout takes so many: there is none.
pub const NO_LAYOUT: u32 = u32::MAX;

/// A class, and what is known of it.
#[derive(Debug, Clone)]
pub struct Hope {
    class: Class,
    candidate: Option<Box<Candidate>>,
    /// What is kept of it while it is not taken apart.
    kept: Option<Kept>,
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
    /// About how much memory it takes, as of its last turn.
    pub bytes: usize,
    /// What was done in its turns so far: a measure of the work.
    pub work: u64,
    /// That of what is taken apart now, as of its last turn.
    work_of_candidate: u64,
    /// What was done in its turns besides, which takes nothing off them.
    pub besides: u64,
    besides_as_of: u64,
}

/// What is kept of a class.
#[derive(Debug, Clone)]
struct Kept {
    proof: Proof,
    kinds: Vec<Kind>,
    is_open: bool,
}

/// What is looked for: so many sheets or fewer, and so many pieces or fewer if that matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    pub sheets: u32,
    pub pieces: Option<usize>,
    /// How often chance is tried.
    throws: usize,
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

impl Wanted {
    /// In one of so many classes that are still open.
    pub fn new(limits: &Limits, sheets: u32, pieces: Option<usize>, open: usize) -> Self {
        let throws = (limits.throws_in_all / open.max(1)).max(FEWEST_THROWS).min(limits.throws);
        Self { sheets, pieces, throws }
    }

    pub fn allows(self, pieces: usize) -> bool {
        self.pieces.is_none_or(|most| pieces <= most)
    }
}

impl Hope {
    /// A class of which no more is known than that it takes `sheets` or more.
    pub fn new(class: Class, sheets: u32) -> Self {
        Self {
            class,
            candidate: None,
            kept: None,
            sheets,
            pieces: 1,
            rounds: 0,
            sawn: 0,
            has_inherited: false,
            hunt: Hunt::Chance(0),
            bytes: 0,
            work: 0,
            work_of_candidate: 0,
            besides: 0,
            besides_as_of: 0,
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

    /// What is next for it: prices and chance first, then what goes on one by one, then
    /// what is to be gone through so.
    pub fn stage(&self, wanted: Wanted) -> u8 {
        let is_open = match (&self.candidate, &self.kept) {
            (Some(candidate), _) => candidate.bounder.is_open(),
            (None, Some(kept)) => kept.is_open,
            (None, None) => true,
        };
        match &self.hunt {
            _ if is_open => 0,
            Hunt::Chance(throws) if *throws < wanted.throws => 0,
            Hunt::Each(_) => 1,
            Hunt::Chance(_) | Hunt::Over => 2,
        }
    }

    /// Was it ever taken apart?
    pub fn was_opened(&self) -> bool {
        self.is_opened() || self.kept.is_some()
    }

    /// Is it taken apart?
    pub fn is_opened(&self) -> bool {
        self.candidate.is_some()
    }

    /// Is there something to try yet for less sawing?
    pub fn may_saw_less(&self) -> bool {
        self.is_opened() && self.sawn < SAWING_THROWS
    }

    /// Were prices looked for that prove more than `sheets`, and found, or are there none?
    pub fn is_settled(&self, sheets: u32) -> bool {
        let is_open = match (&self.candidate, &self.kept) {
            (Some(candidate), _) => candidate.bounder.is_open(),
            (None, Some(kept)) => kept.is_open,
            (None, None) => return false,
        };
        self.sheets > sheets || !is_open
    }

    /// Every kind of piece with the price that proved most.
    pub fn priced_kinds(&self) -> Option<Vec<(Kind, i64)>> {
        match (&self.candidate, &self.kept) {
            (Some(candidate), _) => Some(candidate.priced_kinds()),
            (None, Some(kept)) => Some(kept.kinds.iter().copied().zip(kept.proof.prices.iter().copied()).collect()),
            (None, None) => None,
        }
    }

    /// May the prices of a class like it be tried?
    pub fn may_inherit(&self) -> bool {
        !self.has_inherited && self.candidate.as_ref().is_some_and(|candidate| candidate.bounder.is_open())
    }

    /// Tries the prices of a class like it, once.
    pub fn inherit(&mut self, prices: &[(Kind, i64)]) {
        let Some(candidate) = self.candidate.as_mut() else { return };
        candidate.bounder.inherit(&candidate.scheme, &candidate.ways, prices);
        self.sheets = self.sheets.max(candidate.proof().sheets());
        self.has_inherited = true;
        self.measure();
    }

    /// Takes the class apart, if it can be.
    pub fn open(&mut self, case: &Case) {
        match Candidate::new(case, &self.class) {
            Ok(mut candidate) => {
                if let Some(kept) = self.kept.take() {
                    candidate.bounder.resume(kept.proof, kept.is_open);
                }
                self.sheets = self.sheets.max(candidate.proof().sheets());
                self.candidate = Some(Box::new(candidate));
                self.work_of_candidate = 0;
            }
            Err(NotApart::Uncoverable) => self.sheets = NO_LAYOUT,
            // Nothing is known of it, and nothing more will be.
            Err(NotApart::TooMuch) => self.hunt = Hunt::Over,
        }
        self.measure();
    }

    /// Gives its memory back. What was proven stays, and what it takes to go on.
    pub fn close(&mut self) {
        if let Some(candidate) = self.candidate.take() {
            let is_open = candidate.bounder.is_open();
            let Candidate { scheme, bounder, .. } = *candidate;
            self.kept = Some(Kept { proof: bounder.proof, kinds: scheme.kinds, is_open });
        }
        if matches!(self.hunt, Hunt::Each(_)) {
            self.hunt = Hunt::Chance(usize::MAX);
        }
        self.measure();
    }

    /// Begins the search anew, for another number of sheets.
    pub fn begin_anew(&mut self) {
        self.hunt = Hunt::Chance(0);
        self.pieces = 1;
    }

    /// Takes note of what it takes.
    fn measure(&mut self) {
        let each = match &self.hunt {
            Hunt::Each(each) => each.bytes(),
            Hunt::Chance(_) | Hunt::Over => 0,
        };
        let kept = self.kept.as_ref().map_or(0, |kept| kept.kinds.len() * 16);
        self.bytes = kept + each + self.candidate.as_ref().map_or(0, |candidate| candidate.bytes());
        let work = self.candidate.as_ref().map_or(0, |candidate| candidate.work());
        self.work += work.saturating_sub(self.work_of_candidate);
        self.work_of_candidate = work;
        let thrown = self.candidate.as_ref().map_or(0, |candidate| candidate.thrown());
        let each = match &self.hunt {
            Hunt::Each(each) => each.work(),
            Hunt::Chance(_) | Hunt::Over => 0,
        };
        let besides = thrown + each;
        self.besides += besides.saturating_sub(self.besides_as_of);
        self.besides_as_of = besides;
    }

    /// One round: better prices while there are any, then chance, then one by one.
    pub fn work(&mut self, case: &Case, wanted: Wanted) -> Option<Layout> {
        let found = self.one_round(case, wanted);
        self.measure();
        found
    }

    fn one_round(&mut self, case: &Case, wanted: Wanted) -> Option<Layout> {
        let candidate = self.candidate.as_mut()?;
        if candidate.bounder.is_open() {
            let joints = candidate.bounder.step(&candidate.scheme, &candidate.ways);
            self.sheets = self.sheets.max(candidate.proof().sheets());
            return candidate.cut_out(case, &joints?, wanted);
        }
        if self.pieces == 1 && wanted.pieces.is_some() {
            self.pieces = candidate.best_toll(wanted.sheets).1.max(2);
            return None;
        }
        match &mut self.hunt {
            Hunt::Chance(throws) if *throws < wanted.throws => {
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
        match each.next(candidate, wanted, case) {
            Found::Layout(layout) => return Some(*layout),
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
        let found = self.sawn_by_chance(case, wanted);
        self.measure();
        found
    }

    fn sawn_by_chance(&mut self, case: &Case, wanted: Wanted) -> Option<Layout> {
        let candidate = self.candidate.as_mut()?;
        let limits = candidate.limits();
        let joints = candidate.by_chance(limits.throws + self.sawn, true)?;
        let kinds = candidate.ways.kinds(&joints.ways);
        if !wanted.allows(kinds.len()) {
            return None;
        }
        let Packing::Packed(filled) = candidate.pack_again(&kinds, wanted.sheets, limits.effort) else { return None };
        let layout = candidate.layout(case, &candidate.ways.joints(&joints.ways), &filled)?;
        let every = self.class.members.len().div_ceil(SAWING_MEMBERS).max(1);
        let moved = self.class.members.iter().step_by(every).filter_map(|levels| layout.moved(case, levels));
        let least = moved.min_by_key(Layout::rank);
        [Some(layout), least].into_iter().flatten().min_by_key(Layout::rank)
    }
}

impl Candidate {
    /// The layout of these joints, if their pieces are few enough and come out of few
    /// enough sheets.
    fn cut_out(&mut self, case: &Case, joints: &Joints, wanted: Wanted) -> Option<Layout> {
        let kinds = self.ways.kinds(&joints.ways);
        if !wanted.allows(kinds.len()) {
            return None;
        }
        match self.pack(kinds, wanted.sheets, self.limits().effort)? {
            Packing::Packed(filled) => self.layout(case, &self.ways.joints(&joints.ways), &filled),
            Packing::Impossible | Packing::Unknown => None,
        }
    }
}
