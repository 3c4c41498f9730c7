//! A class of courses while it is searched.

use super::super::bound::{Bounder, Proof};
use super::super::case::Case;
use super::super::courses::Class;
use super::super::fit::Fit;
use super::super::options::{Joints, MOST_WAYS, Ways};
use super::super::packing::{Packing, pack};
use super::super::plan::Layout;
use super::super::scheme::{Kind, Scheme};
use super::dice::Dice;
use std::collections::BTreeSet;

/// A class of courses, taken apart.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// What can be cut for its first member.
    pub scheme: Scheme,
    /// Where joints may be.
    pub ways: Ways,
    /// What fits a sheet.
    pub fit: Fit,
    /// How few sheets there can be.
    pub bounder: Bounder,
    /// What was packed already, or cannot be, with how many sheets that was tried.
    tried: BTreeSet<(Vec<u16>, u32)>,
}

impl Candidate {
    /// Takes a class apart; none if no layout has such courses.
    pub fn new(case: &Case, class: &Class) -> Option<Self> {
        Self::with_ways(case, class, MOST_WAYS)
    }

    /// The same, with no more than so many ways to put the joints of a course.
    pub fn with_ways(case: &Case, class: &Class, most: usize) -> Option<Self> {
        let scheme = Scheme::new(case, class.members.first()?.clone())?;
        let ways = Ways::of(&scheme, case.asked.stagger, most);
        let bounder = Bounder::new(case, &scheme, &ways, class.members.len() > 1)?;
        let fit = Fit::new(case, &scheme.kinds);
        Some(Self { scheme, ways, fit, bounder, tried: BTreeSet::new() })
    }

    /// Every kind with its price.
    pub fn priced_kinds(&self) -> Vec<(Kind, i64)> {
        self.scheme.kinds.iter().copied().zip(self.proof().prices.iter().copied()).collect()
    }

    /// What the prices prove.
    pub fn proof(&self) -> &Proof {
        &self.bounder.proof
    }

    /// Tries to cut the pieces of some joints out of so many sheets. None if that was
    /// tried before.
    pub fn pack(&mut self, joints: &[u32], sheets: u32, effort: usize) -> Option<Packing> {
        let is_new = self.tried.insert((self.ways.kinds(joints), sheets));
        is_new.then(|| self.pack_again(joints, sheets, effort))
    }

    /// The same, whether it was tried before or not.
    pub fn pack_again(&mut self, joints: &[u32], sheets: u32, effort: usize) -> Packing {
        pack(&mut self.fit, &self.bounder.proof, &self.ways.kinds(joints), sheets, effort)
    }

    /// The layout of these joints and filled sheets.
    pub fn layout(&self, case: &Case, joints: &[u32], filled: &[Vec<u16>]) -> Option<Layout> {
        Layout::new(case, &self.scheme, &self.ways, joints, filled)
    }

    /// A layout of few pieces, each sheet filled as far as what is left allows.
    pub fn simple(&mut self, case: &Case) -> Option<Layout> {
        let toll = self.proof().most_on_sheet;
        let joints = self.ways.cheapest(&self.costs(toll))?;
        // With sheets enough the first filling of each will do.
        let pieces = self.ways.kinds(&joints.ways).len() as u32;
        let Packing::Packed(filled) = self.pack(&joints.ways, pieces, usize::MAX)? else { return None };
        self.layout(case, &joints.ways, &filled)
    }

    /// What each way of each shape costs: its pieces' prices, and a toll on each.
    pub fn costs(&self, toll: i64) -> Vec<Vec<i64>> {
        let prices: Vec<_> = self.proof().prices.iter().map(|price| price + toll).collect();
        self.ways.costs(&prices)
    }

    /// The toll that proves the most pieces in so many sheets, and how many.
    ///
    /// With a toll `t` on each piece the cheapest layout costs `c`. Pieces that come out
    /// of the sheets are worth no more than those, so there are `(c - sheets) / t` of
    /// them or more.
    pub fn best_toll(&self, sheets: u32) -> (i64, usize) {
        let most = self.proof().most(sheets);
        let proves = |toll: i64| {
            let joints = self.ways.cheapest(&self.costs(toll)).filter(|_| self.ways.are_all);
            let beyond = joints.map_or(0, |joints| joints.price - most).max(0);
            (toll, ((beyond + toll - 1) / toll) as usize)
        };
        let tolls = (0..8).map(|halvings| (self.proof().most_on_sheet >> halvings).max(1));
        tolls.map(proves).max_by_key(|(toll, pieces)| (*pieces, *toll)).unwrap_or((1, 1))
    }

    /// The cheapest joints at prices somewhat off, and with a toll by chance.
    pub fn by_chance(&self, throw: usize, with_toll: bool) -> Option<Joints> {
        let mut dice = Dice::new(throw as u64);
        let off = 1 << (1 + dice.throw(4));
        let whole = self.proof().most_on_sheet;
        let toll = if with_toll { whole >> dice.throw(6) } else { 0 };
        let spread = |price: &i64| price + dice.throw(price / off + whole / 64) + toll;
        let prices: Vec<_> = self.proof().prices.iter().map(spread).collect();
        self.ways.cheapest(&self.ways.costs(&prices))
    }
}
