//! A class of courses while it is searched.

use super::super::bound::{Bounder, Proof};
use super::super::case::Case;
use super::super::courses::Class;
use super::super::fit::Fit;
use super::super::options::{MOST_WAYS, Ways};
use super::super::packing::{Packing, pack};
use super::super::plan::Layout;
use super::super::scheme::Scheme;
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
        let fit = Fit::new(case, &scheme);
        Some(Self { scheme, ways, fit, bounder, tried: BTreeSet::new() })
    }

    /// What the prices prove.
    pub fn proof(&self) -> &Proof {
        &self.bounder.proof
    }

    /// Tries to cut the pieces of some joints out of so many sheets. None if that was
    /// tried before.
    pub fn pack(&mut self, joints: &[u32], sheets: u32, effort: usize) -> Option<Packing> {
        let kinds = self.ways.kinds(joints);
        if !self.tried.insert((kinds.clone(), sheets)) {
            return None;
        }
        Some(pack(&mut self.fit, &self.bounder.proof, &kinds, sheets, effort))
    }

    /// The layout of these joints and filled sheets.
    pub fn layout(&mut self, case: &Case, joints: &[u32], filled: &[Vec<u16>]) -> Option<Layout> {
        Layout::new(case, &self.scheme, &self.ways, joints, filled, &mut self.fit)
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
}
