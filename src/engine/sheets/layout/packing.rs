//! Pieces onto a given number of sheets, by trying every way that could do.

use super::bound::Proof;
use super::fit::Fit;
use std::collections::HashSet;

/// So many partings may be looked at, on average, for one filling.
const WORK_A_FILLING: u64 = 60;

/// What became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Packing {
    /// The kinds on each sheet, in order.
    Packed(Vec<Vec<u16>>),
    /// There is no way.
    Impossible,
    /// Not found within the effort.
    Unknown,
}

/// One try.
struct Try<'a> {
    fit: &'a mut Fit,
    proof: &'a Proof,
    /// Fillings that may still be looked at.
    effort: usize,
    /// How far [`Fit::work`] may go.
    most_work: u64,
    /// What is known not to fit that many sheets.
    dead: HashSet<(Vec<u16>, u32)>,
}

/// Puts `kinds` (in order) onto `sheets` sheets, looking at no more than `effort`
/// sheets' fillings. The proof's prices say what a sheet must hold at least.
pub fn pack(fit: &mut Fit, proof: &Proof, kinds: &[u16], sheets: u32, effort: usize) -> Packing {
    let mut left = kinds.to_vec();
    // The largest first: what is hardest to place has the fewest ways.
    left.sort_by_key(|kind| (std::cmp::Reverse(fit.area(*kind)), *kind));
    let most_work = fit.work.saturating_add((effort as u64).saturating_mul(WORK_A_FILLING));
    let mut attempt = Try { fit, proof, effort, most_work, dead: HashSet::new() };
    let mut filled = Vec::new();
    if attempt.fill(&left, sheets, &mut filled) {
        return Packing::Packed(filled);
    }
    if attempt.effort == 0 { Packing::Unknown } else { Packing::Impossible }
}

impl Try<'_> {
    fn fill(&mut self, left: &[u16], sheets: u32, filled: &mut Vec<Vec<u16>>) -> bool {
        let Some((first, rest)) = left.split_first() else { return true };
        let (spare_area, spare_price) = self.spare(left, sheets);
        if sheets == 0 || spare_area < 0 || spare_price < 0 || self.effort == 0 {
            return false;
        }
        let state = (left.to_vec(), sheets);
        if self.dead.contains(&state) {
            return false;
        }
        for filling in self.fillings(*first, rest, spare_area, spare_price) {
            if self.effort == 0 {
                return false;
            }
            self.effort = if self.fit.work > self.most_work { 0 } else { self.effort - 1 };
            let after = without(left, &filling);
            filled.push(filling);
            if self.fill(&after, sheets - 1, filled) {
                return true;
            }
            filled.pop();
        }
        if self.effort > 0 {
            self.dead.insert(state);
        }
        false
    }

    /// How much area and price the sheets have beyond what is left.
    fn spare(&self, left: &[u16], sheets: u32) -> (i64, i64) {
        let (length, width) = self.fit.sheet();
        let area: i64 = left.iter().map(|kind| self.fit.area(*kind)).sum();
        let price: i64 = left.iter().map(|kind| self.price(*kind)).sum();
        let sheets = i64::from(sheets);
        (sheets * i64::from(length) * i64::from(width) - area, sheets * self.proof.most_on_sheet - price)
    }

    fn price(&self, kind: u16) -> i64 {
        self.proof.prices.get(usize::from(kind)).copied().unwrap_or_default()
    }

    /// Every filling of a sheet with `first` and what else fits, to which nothing more
    /// could be added, that wastes no more than there is to spare; the fullest first.
    fn fillings(&mut self, first: u16, rest: &[u16], spare_area: i64, spare_price: i64) -> Vec<Vec<u16>> {
        let mut found = Vec::new();
        let mut open = vec![(vec![first], 0_usize)];
        while let Some((set, from)) = open.pop() {
            if self.fit.work > self.most_work {
                self.effort = 0;
                break;
            }
            let mut last = None;
            for (at, kind) in rest.iter().enumerate().skip(from) {
                if last.replace(*kind) != Some(*kind) {
                    let more = with(&set, *kind);
                    if self.fit.fits(&more) {
                        open.push((more, at + 1));
                    }
                }
            }
            found.push(set);
        }
        let (length, width) = self.fit.sheet();
        let whole = i64::from(length) * i64::from(width);
        let mut rated: Vec<(i64, i64, Vec<u16>)> = Vec::new();
        for set in found {
            let area: i64 = set.iter().map(|kind| self.fit.area(*kind)).sum();
            let price: i64 = set.iter().map(|kind| self.price(*kind)).sum();
            if whole - area <= spare_area
                && self.proof.most_on_sheet - price <= spare_price
                && self.is_full(first, &set, rest)
            {
                rated.push((-price, -area, set));
            }
        }
        rated.sort_unstable();
        rated.into_iter().map(|(_, _, set)| set).collect()
    }

    fn is_full(&mut self, first: u16, set: &[u16], rest: &[u16]) -> bool {
        let others = without(rest, &without(set, &[first]));
        let mut last = None;
        others.iter().all(|kind| last.replace(*kind) == Some(*kind) || !self.fit.fits(&with(set, *kind)))
    }
}

/// The set with one kind more, in order.
fn with(set: &[u16], kind: u16) -> Vec<u16> {
    let at = set.partition_point(|other| *other <= kind);
    let mut more = set.to_vec();
    more.insert(at, kind);
    more
}

/// What is left when some are taken, each once.
fn without(left: &[u16], taken: &[u16]) -> Vec<u16> {
    let mut taken = taken.to_vec();
    let stays = |kind: &&u16| match taken.iter().position(|other| other == *kind) {
        Some(at) => {
            taken.swap_remove(at);
            false
        }
        None => true,
    };
    left.iter().filter(stays).copied().collect()
}
