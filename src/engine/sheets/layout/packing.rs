//! Pieces onto what is on hand and a given number of sheets, by trying every way that
//! could do.

use super::bound::Proof;
use super::fit::Fit;
use std::collections::HashSet;

/// So many partings may be looked at, on average, for one filling.
const WORK_A_FILLING: u64 = 60;

/// What became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Packing {
    /// The kinds on each piece on hand, then on each sheet, in order.
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
    /// How many blanks there are: what is on hand, and then the sheets.
    blanks: usize,
    /// What is known not to fit the blanks from some number on.
    dead: HashSet<(Vec<u16>, usize)>,
}

/// Puts `kinds` (in order) onto `sheets` sheets, looking at no more than `effort`
/// sheets' fillings. The proof's prices say what a sheet must hold at least.
pub fn pack(fit: &mut Fit, proof: &Proof, kinds: &[u16], sheets: u32, effort: usize) -> Packing {
    let mut left = kinds.to_vec();
    // The largest first: what is hardest to place has the fewest ways.
    left.sort_by_key(|kind| (std::cmp::Reverse(fit.area(*kind)), *kind));
    let most_work = fit.work.saturating_add((effort as u64).saturating_mul(WORK_A_FILLING));
    let on_hand = fit.on_hand();
    let blanks = on_hand + sheets as usize;
    let mut attempt = Try { fit, proof, effort, most_work, blanks, dead: HashSet::new() };
    let mut filled = Vec::new();
    if attempt.fill(&left, 0, &mut filled) {
        filled.resize(filled.len().max(on_hand), Vec::new());
        return Packing::Packed(filled);
    }
    if attempt.effort == 0 { Packing::Unknown } else { Packing::Impossible }
}

impl Try<'_> {
    /// Fills the blanks from number `blank` on with all that is left.
    fn fill(&mut self, left: &[u16], blank: usize, filled: &mut Vec<Vec<u16>>) -> bool {
        let Some((first, rest)) = left.split_first() else { return true };
        let (spare_area, spare_price) = self.spare(left, blank);
        if blank == self.blanks || spare_area < 0 || spare_price < 0 || self.effort == 0 {
            return false;
        }
        let state = (left.to_vec(), blank);
        if self.dead.contains(&state) {
            return false;
        }
        // The first of what is left goes onto some sheet, so it may as well be the next;
        // what is on hand may do without it.
        let seed = if blank < self.fit.on_hand() { (&[][..], left) } else { (std::slice::from_ref(first), rest) };
        for filling in self.fillings(blank, seed, spare_area, spare_price) {
            if self.effort == 0 {
                return false;
            }
            self.effort = if self.fit.work > self.most_work { 0 } else { self.effort - 1 };
            let after = without(left, &filling);
            filled.push(filling);
            if self.fill(&after, blank + 1, filled) {
                return true;
            }
            filled.pop();
        }
        if self.effort > 0 {
            self.dead.insert(state);
        }
        false
    }

    /// How much area and price the blanks from one on have beyond what is left.
    fn spare(&self, left: &[u16], from: usize) -> (i64, i64) {
        let area: i64 = left.iter().map(|kind| self.fit.area(*kind)).sum();
        let price: i64 = left.iter().map(|kind| self.price(*kind)).sum();
        let first_sheet = self.fit.on_hand().max(from);
        let sheets = self.blanks.saturating_sub(first_sheet) as i64;
        let on_hand = || from..self.fit.on_hand();
        let areas: i64 = on_hand().map(|blank| self.whole(blank)).sum();
        let most: i64 = on_hand().map(|blank| self.most(blank)).sum();
        (areas + sheets * self.whole(first_sheet) - area, most + sheets * self.proof.most_on_sheet - price)
    }

    /// A blank's area.
    fn whole(&self, blank: usize) -> i64 {
        let (length, width) = self.fit.blank(blank);
        i64::from(length) * i64::from(width)
    }

    /// The most that the pieces out of a blank cost.
    fn most(&self, blank: usize) -> i64 {
        self.proof.most_on_hand.get(blank).copied().unwrap_or(self.proof.most_on_sheet)
    }

    fn price(&self, kind: u16) -> i64 {
        self.proof.prices.get(usize::from(kind)).copied().unwrap_or_default()
    }

    /// Every filling of a blank with `seed` and what else fits of the rest, to which
    /// nothing more could be added, that wastes no more than there is to spare; the
    /// fullest first.
    fn fillings(
        &mut self,
        blank: usize,
        (seed, rest): (&[u16], &[u16]),
        spare_area: i64,
        spare_price: i64,
    ) -> Vec<Vec<u16>> {
        let size = self.fit.blank(blank);
        let mut found = Vec::new();
        let mut open = vec![(seed.to_vec(), 0_usize)];
        while let Some((set, from)) = open.pop() {
            if self.fit.work > self.most_work {
                self.effort = 0;
                break;
            }
            let mut last = None;
            for (at, kind) in rest.iter().enumerate().skip(from) {
                if last.replace(*kind) != Some(*kind) {
                    let more = with(&set, *kind);
                    if self.fit.fits(&more, size) {
                        open.push((more, at + 1));
                    }
                }
            }
            found.push(set);
        }
        let mut rated: Vec<(i64, i64, Vec<u16>)> = Vec::new();
        for set in found {
            let area: i64 = set.iter().map(|kind| self.fit.area(*kind)).sum();
            let price: i64 = set.iter().map(|kind| self.price(*kind)).sum();
            if self.whole(blank) - area <= spare_area
                && self.most(blank) - price <= spare_price
                && self.is_full(size, seed, &set, rest)
            {
                rated.push((-price, -area, set));
            }
        }
        rated.sort_unstable();
        rated.into_iter().map(|(_, _, set)| set).collect()
    }

    fn is_full(&mut self, size: (i32, i32), seed: &[u16], set: &[u16], rest: &[u16]) -> bool {
        let others = without(rest, &without(set, seed));
        let mut last = None;
        others.iter().all(|kind| last.replace(*kind) == Some(*kind) || !self.fit.fits(&with(set, *kind), size))
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
