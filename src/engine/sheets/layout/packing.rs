//! Pieces onto what is on hand and a given number of sheets, by trying every way that
//! could do.

use super::bound::Proof;
use super::cutting::without;
use super::fit::{Fit, Fits};
use std::collections::HashSet;

/// What became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Packing {
    /// The kinds on each piece on hand, then on each sheet, in order.
    Packed(Vec<Vec<u16>>),
    /// There is no way.
    Impossible,
    /// Not found within the effort, and not shown to be impossible.
    Unknown,
}

/// One try.
struct Try<'a> {
    fit: &'a mut Fit,
    /// The prices that leave the least to spare, the tightest first; one at least.
    proofs: Vec<&'a Proof>,
    /// Fillings that may still be looked at.
    effort: usize,
    /// Was something left out that could do, for want of effort or of knowing?
    gave_up: bool,
    /// How many blanks there are: what is on hand, and then the sheets.
    blanks: usize,
    /// What was tried on the blanks from some number on, and not packed.
    failed: HashSet<(Vec<u16>, usize)>,
    dead: &'a mut Dead,
}

/// What is known not to fit what is left of the blanks: of whatever layout it is left. By
/// how many parts on hand were filled, and how many sheets are left.
#[derive(Debug, Clone, Default)]
pub struct Dead {
    known: HashSet<(Vec<u16>, usize, usize)>,
    kinds: usize,
}

impl Dead {
    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        self.known.len() * 90 + self.kinds * 2
    }

    fn insert(&mut self, state: (Vec<u16>, usize, usize), most: usize) {
        if self.known.len() < most {
            self.kinds += state.0.len();
            self.known.insert(state);
        }
    }
}

/// So many prices are gone by at once. Each only says what cannot be filled: with fewer more
/// is tried, and nothing is called impossible for it.
const MOST_PROOFS: usize = 3;

/// Do some prices show that these kinds do not come out of so many sheets?
pub fn is_too_much<'a>(proofs: impl IntoIterator<Item = &'a Proof>, kinds: &[u16], sheets: u32) -> bool {
    proofs.into_iter().any(|proof| proof.of_all(kinds) > proof.most(sheets))
}

/// Puts `kinds` (in order) onto `sheets` sheets, looking at no more than `effort`
/// sheets' fillings. The proofs' prices say what a sheet must hold at least.
pub fn pack<'a>(
    fit: &mut Fit,
    dead: &mut Dead,
    proofs: impl Iterator<Item = &'a Proof>,
    kinds: &[u16],
    sheets: u32,
    effort: usize,
) -> Packing {
    // What is to spare, in sheets; only the order hangs on it.
    let spare = |proof: &Proof| (proof.most(sheets) - proof.of_all(kinds)) as f64 / proof.most_on_sheet.max(1) as f64;
    let mut proofs: Vec<_> = proofs.collect();
    if is_too_much(proofs.iter().copied(), kinds, sheets) {
        return Packing::Impossible;
    }
    proofs.sort_by(|one, other| spare(one).total_cmp(&spare(other)));
    proofs.truncate(MOST_PROOFS);
    let mut left = kinds.to_vec();
    // The largest first: what is hardest to place has the fewest ways.
    left.sort_by_key(|kind| (std::cmp::Reverse(fit.area(*kind)), *kind));
    fit.allow((effort as u64).saturating_mul(fit.limits.work_a_filling));
    let on_hand = fit.on_hand();
    let blanks = on_hand + sheets as usize;
    let mut attempt = Try { fit, proofs, effort, gave_up: false, blanks, failed: HashSet::new(), dead };
    let mut filled = Vec::new();
    if attempt.fill(&left, 0, &mut filled) {
        filled.resize(filled.len().max(on_hand), Vec::new());
        return Packing::Packed(filled);
    }
    if attempt.gave_up { Packing::Unknown } else { Packing::Impossible }
}

/// Puts every one of `kinds` (in order) onto what is on hand or some sheet: the largest
/// that is left, and with it whatever is quickly seen to fit besides.
pub fn pack_simply(fit: &mut Fit, kinds: &[u16]) -> Vec<Vec<u16>> {
    let mut left = kinds.to_vec();
    left.sort_by_key(|kind| (std::cmp::Reverse(fit.area(*kind)), *kind));
    let mut filled = Vec::new();
    while !left.is_empty() || filled.len() < fit.on_hand() {
        fit.allow(fit.limits.work_a_filling);
        let size = fit.blank(filled.len());
        // A sheet takes any one piece.
        let mut set = if filled.len() < fit.on_hand() { Vec::new() } else { left.drain(..1).collect() };
        let mut last = None;
        left.retain(|kind| {
            let more = with(&set, *kind);
            // What did not fit does not fit a second time.
            let fits = last != Some(*kind) && fit.fits(&more, size) == Fits::Yes;
            if fits {
                set = more;
            } else {
                last = Some(*kind);
            }
            !fits
        });
        filled.push(set);
    }
    filled
}

impl Try<'_> {
    /// Fills the blanks from number `blank` on with all that is left.
    fn fill(&mut self, left: &[u16], blank: usize, filled: &mut Vec<Vec<u16>>) -> bool {
        let Some((first, rest)) = left.split_first() else { return true };
        let (spare_area, spare_prices) = self.spare(left, blank);
        if blank == self.blanks || spare_area < 0 || spare_prices.iter().any(|spare| *spare < 0) {
            return false;
        }
        let state = (left.to_vec(), blank);
        let lasting = (left.to_vec(), blank.min(self.fit.on_hand()), self.blanks - blank);
        if self.failed.contains(&state) || self.dead.known.contains(&lasting) {
            return false;
        }
        let gave_up = std::mem::take(&mut self.gave_up);
        // The first of what is left goes onto some sheet, so it may as well be the next;
        // what is on hand may do without it.
        let seed = if blank < self.fit.on_hand() { (&[][..], left) } else { (std::slice::from_ref(first), rest) };
        for filling in self.fillings(blank, seed, spare_area, &spare_prices) {
            if self.is_spent() {
                break;
            }
            self.effort -= 1;
            let after = without(left, &filling);
            filled.push(filling);
            if self.fill(&after, blank + 1, filled) {
                return true;
            }
            filled.pop();
        }
        // Where something was left out it is not dead; trying it again would bring nothing.
        if self.gave_up {
            self.failed.insert(state);
        } else {
            self.dead.insert(lasting, self.fit.limits.dead);
        }
        self.gave_up |= gave_up;
        false
    }

    /// Is there no effort left? What was not looked at then is not known to be impossible.
    fn is_spent(&mut self) -> bool {
        let is_spent = self.effort == 0 || self.fit.is_spent();
        self.gave_up |= is_spent;
        is_spent
    }

    /// How much area, and price by each proof, the blanks from one on have beyond what is
    /// left.
    fn spare(&self, left: &[u16], from: usize) -> (i64, Vec<i64>) {
        let area: i64 = left.iter().map(|kind| self.fit.area(*kind)).sum();
        let first_sheet = self.fit.on_hand().max(from);
        let sheets = self.blanks.saturating_sub(first_sheet) as i64;
        let on_hand = || from..self.fit.on_hand();
        let areas: i64 = on_hand().map(|blank| self.whole(blank)).sum();
        let spare = |proof: &&Proof| {
            let most: i64 = on_hand().map(|blank| most_on(proof, blank)).sum();
            most + sheets * proof.most_on_sheet - proof.of_all(left)
        };
        (areas + sheets * self.whole(first_sheet) - area, self.proofs.iter().map(spare).collect())
    }

    /// A blank's area.
    fn whole(&self, blank: usize) -> i64 {
        let (length, width) = self.fit.blank(blank);
        i64::from(length) * i64::from(width)
    }

    /// Every filling of a blank with `seed` and what else fits of the rest, to which
    /// nothing more could be added, that wastes no more than there is to spare; the
    /// fullest first.
    fn fillings(
        &mut self,
        blank: usize,
        (seed, rest): (&[u16], &[u16]),
        spare_area: i64,
        spare_prices: &[i64],
    ) -> Vec<Vec<u16>> {
        let size = self.fit.blank(blank);
        let whole = self.whole(blank);
        let Some(tightest) = self.proofs.first().copied() else { return Vec::new() };
        let (most, spare_price) = (most_on(tightest, blank), spare_prices.first().copied().unwrap_or_default());
        let densest = self.densest(tightest, rest);
        let totals = |set: &[u16], of: &dyn Fn(u16) -> i64| set.iter().map(|kind| of(*kind)).sum::<i64>();
        let mut found = Vec::new();
        let (area, price) = (totals(seed, &|kind| self.fit.area(kind)), totals(seed, &|kind| tightest.price(kind)));
        let mut open = vec![(seed.to_vec(), 0_usize, area, price)];
        while let Some((set, from, area, price)) = open.pop() {
            if self.is_spent() {
                break;
            }
            let mut last = None;
            for (at, kind) in rest.iter().enumerate().skip(from) {
                // Filled up with what is dearest for its area it would still waste too much.
                let (dear, of_area) = densest.get(at).copied().unwrap_or((0, 1));
                let missing = i128::from(most - spare_price - price);
                if missing * i128::from(of_area) > i128::from(dear) * i128::from(whole - area) {
                    break;
                }
                if last.replace(*kind) == Some(*kind) {
                    continue;
                }
                let (area, price) = (area + self.fit.area(*kind), price + tightest.price(*kind));
                // No sheet holds pieces worth more than the dearest filling.
                if price > most || area > whole {
                    continue;
                }
                let more = with(&set, *kind);
                // Sets that were looked at before cost too.
                self.fit.work += 1;
                match self.fit.fits(&more, size) {
                    Fits::Yes => open.push((more, at + 1, area, price)),
                    Fits::No => {}
                    Fits::Unknown => self.gave_up = true,
                }
            }
            found.push(set);
        }
        let mut rated: Vec<(i64, i64, Vec<u16>)> = Vec::new();
        for set in found {
            let area: i64 = set.iter().map(|kind| self.fit.area(*kind)).sum();
            let wastes_little = |(proof, spare): (&&Proof, &i64)| most_on(proof, blank) - proof.of_all(&set) <= *spare;
            if whole - area <= spare_area
                && self.proofs.iter().zip(spare_prices).all(wastes_little)
                && self.is_full(size, seed, &set, rest)
            {
                rated.push((-tightest.of_all(&set), -area, set));
            }
        }
        rated.sort_unstable();
        rated.into_iter().map(|(_, _, set)| set).collect()
    }

    /// For each of the kinds what is dearest for its area from there on, as price and area.
    fn densest(&self, proof: &Proof, rest: &[u16]) -> Vec<(i64, i64)> {
        let mut densest = vec![(0, 1); rest.len()];
        let mut best = (0, 1);
        for (kind, densest) in rest.iter().zip(&mut densest).rev() {
            let (price, area) = (proof.price(*kind), self.fit.area(*kind).max(1));
            if i128::from(price) * i128::from(best.1) > i128::from(best.0) * i128::from(area) {
                best = (price, area);
            }
            *densest = best;
        }
        densest
    }

    /// Is no other kind known to fit besides? One that is not known to leaves the filling in.
    fn is_full(&mut self, size: (i32, i32), seed: &[u16], set: &[u16], rest: &[u16]) -> bool {
        let others = without(rest, &without(set, seed));
        let mut last = None;
        others
            .iter()
            .all(|kind| last.replace(*kind) == Some(*kind) || self.fit.fits(&with(set, *kind), size) != Fits::Yes)
    }
}

/// The most that the pieces out of a blank cost.
fn most_on(proof: &Proof, blank: usize) -> i64 {
    proof.most_on_hand.get(blank).copied().unwrap_or(proof.most_on_sheet)
}

/// The set with one kind more, in order.
fn with(set: &[u16], kind: u16) -> Vec<u16> {
    let at = set.partition_point(|other| *other <= kind);
    let mut more = set.to_vec();
    more.insert(at, kind);
    more
}
