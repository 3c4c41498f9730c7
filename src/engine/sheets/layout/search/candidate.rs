//! A class of courses while it is searched.

use super::super::bound::{Bounder, Proof};
use super::super::case::Case;
use super::super::courses::Class;
use super::super::fit::Fit;
use super::super::limits::Limits;
use super::super::options::{JointSet, Joints, Ways};
use super::super::packing::{Dead, Packing, pack, pack_simply};
use super::super::plan::Layout;
use super::super::scheme::{Kind, NotApart, Scheme};
use super::dice::Dice;
use std::collections::BTreeMap;

/// A class of courses, taken apart.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// What can be cut for its first member.
    pub scheme: Scheme,
    /// Where joints may be.
    pub ways: Ways,
    /// What fits a sheet.
    fit: Fit,
    /// How few sheets there can be.
    pub bounder: Bounder,
    /// What is known not to fit so many sheets.
    dead: Dead,
    /// What was packed already or cannot be, with how many sheets that was tried.
    tried: BTreeMap<(Vec<u16>, u32), Tried>,
    /// How many kinds are in there, for [`Self::bytes`].
    tried_kinds: usize,
    /// What was done to find joints by chance and tolls: a measure of the work.
    thrown: u64,
}

/// How many tolls are tried, each half the one before. Any toll proves something true; with
/// fewer it may be fewer pieces.
const HALVINGS: u64 = 8;

/// What became of a try to pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Tried {
    /// It cannot be.
    Impossible,
    /// It was not settled, with so much effort.
    Unsettled(usize),
}

impl Candidate {
    /// Takes a class apart. It cannot be covered if no layout has such courses.
    pub fn new(case: &Case, class: &Class) -> Result<Self, NotApart> {
        Self::with_ways(case, class, case.limits.ways)
    }

    /// The same, with no more than so many ways to put the joints of a course.
    pub fn with_ways(case: &Case, class: &Class, most: usize) -> Result<Self, NotApart> {
        let levels = class.members.first().ok_or(NotApart::Uncoverable)?;
        let scheme = Scheme::new(case, levels.clone())?;
        let ways = Ways::of(&scheme, case.asked.stagger, most, &case.limits);
        let bounder = Bounder::new(case, &scheme, &ways, class.members.len() > 1).ok_or(NotApart::Uncoverable)?;
        let fit = Fit::new(case, &scheme.kinds);
        Ok(Self {
            scheme,
            ways,
            fit,
            bounder,
            dead: Dead::default(),
            tried: BTreeMap::new(),
            tried_kinds: 0,
            thrown: 0,
        })
    }

    /// Where to give up.
    pub fn limits(&self) -> Limits {
        self.fit.limits
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        let tried = self.tried.len() * 60 + self.tried_kinds * 2;
        self.scheme.bytes() + self.ways.bytes() + self.fit.bytes() + self.dead.bytes() + self.bounder.bytes() + tried
    }

    /// What was done so far: a measure of the work.
    pub fn work(&self) -> u64 {
        /// A parting is looked at from all sides.
        const A_PARTING: u64 = 400;
        self.bounder.work() + self.fit.work * A_PARTING
    }

    /// What was done besides, by which no turns are shared out: a measure of the work.
    pub fn thrown(&self) -> u64 {
        self.thrown
    }

    /// Every kind with its price.
    pub fn priced_kinds(&self) -> Vec<(Kind, i64)> {
        self.scheme.kinds.iter().copied().zip(self.proof().prices.iter().copied()).collect()
    }

    /// What the prices prove.
    pub fn proof(&self) -> &Proof {
        &self.bounder.proof
    }

    /// Tries to cut pieces of these kinds, in order, out of so many sheets. None if that
    /// was tried before with as much effort and not settled.
    pub fn pack(&mut self, kinds: Vec<u16>, sheets: u32, effort: usize) -> Option<Packing> {
        let key = (kinds, sheets);
        match self.tried.get(&key) {
            Some(Tried::Impossible) => return Some(Packing::Impossible),
            Some(Tried::Unsettled(before)) if *before >= effort => return None,
            _ => {}
        }
        let packing = self.settle(&key.0, sheets, effort);
        let tried = match &packing {
            Packing::Impossible => Tried::Impossible,
            Packing::Unknown => Tried::Unsettled(effort),
            // The same pieces can be had of other courses: then they are packed once more.
            Packing::Packed(_) => return Some(packing),
        };
        if self.tried.len() < self.fit.limits.tried {
            self.tried_kinds += key.0.len();
            self.tried.insert(key, tried);
        }
        Some(packing)
    }

    /// A quick try, then prices by which it cannot be, then as much effort as is allowed.
    fn settle(&mut self, kinds: &[u16], sheets: u32, effort: usize) -> Packing {
        match self.pack_again(kinds, sheets, effort.min(self.fit.limits.quick_effort)) {
            Packing::Unknown if effort > self.fit.limits.quick_effort => {}
            settled => return settled,
        }
        if self.bounder.refutes(self.fit.on_hand(), kinds, sheets) {
            return Packing::Impossible;
        }
        self.pack_again(kinds, sheets, effort)
    }

    /// The same, whether it was tried before or not.
    pub fn pack_again(&mut self, kinds: &[u16], sheets: u32, effort: usize) -> Packing {
        pack(&mut self.fit, &mut self.dead, self.bounder.proofs(), kinds, sheets, effort)
    }

    /// The layout of these joints and filled sheets; none if its cuttings were not found
    /// again.
    pub fn layout(&self, case: &Case, joints: &[JointSet], filled: &[Vec<u16>]) -> Option<Layout> {
        Layout::new(case, &self.scheme, joints, filled)
    }

    /// A layout of few pieces, each sheet filled as far as what is left allows.
    pub fn simple(&mut self, case: &Case) -> Option<Layout> {
        let toll = self.proof().most_on_sheet;
        self.thrown += self.ways.work();
        let joints = self.ways.cheapest(&self.costs(toll)).found()?;
        let kinds = self.ways.kinds(&joints.ways);
        // With sheets enough the first filling of each will do.
        let filled = match self.pack_again(&kinds, kinds.len() as u32, case.limits.effort) {
            Packing::Packed(filled) => filled,
            Packing::Impossible | Packing::Unknown => pack_simply(&mut self.fit, &kinds),
        };
        self.layout(case, &self.ways.joints(&joints.ways), &filled)
    }

    /// What each way of each shape costs: its pieces' prices, and a toll on each.
    pub fn costs(&self, toll: i64) -> Vec<Vec<i64>> {
        self.ways.costs(&self.prices(toll))
    }

    /// What each kind costs, and a toll.
    pub fn prices(&self, toll: i64) -> Vec<i64> {
        self.proof().prices.iter().map(|price| price + toll).collect()
    }

    /// The toll that proves the most pieces in so many sheets, and how many.
    ///
    /// With a toll `t` on each piece the cheapest layout costs `c`. Pieces that come out
    /// of the sheets are worth no more than those, so there are `(c - sheets) / t` of
    /// them or more.
    pub fn best_toll(&mut self, sheets: u32) -> (i64, usize) {
        self.thrown += self.ways.work() * HALVINGS;
        let most = self.proof().most(sheets);
        let proves = |toll: i64| {
            let joints = self.ways.cheapest(&self.costs(toll)).found().filter(|_| self.ways.are_all);
            let beyond = joints.map_or(0, |joints| joints.price - most).max(0);
            (toll, ((beyond + toll - 1) / toll) as usize)
        };
        let tolls = (0..HALVINGS).map(|halvings| (self.proof().most_on_sheet >> halvings).max(1));
        tolls.map(proves).max_by_key(|(toll, pieces)| (*pieces, *toll)).unwrap_or((1, 1))
    }

    /// The cheapest joints at prices somewhat off, and with a toll by chance.
    pub fn by_chance(&mut self, throw: usize, with_toll: bool) -> Option<Joints> {
        self.thrown += self.ways.work();
        let mut dice = Dice::new(throw as u64);
        let off = 1 << (1 + dice.throw(4));
        let whole = self.proof().most_on_sheet;
        let toll = if with_toll { whole >> dice.throw(6) } else { 0 };
        let spread = |price: &i64| price + dice.throw(price / off + whole / 64) + toll;
        let prices: Vec<_> = self.proof().prices.iter().map(spread).collect();
        self.ways.cheapest(&self.ways.costs(&prices)).found()
    }
}
