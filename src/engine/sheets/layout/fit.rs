//! Whether pieces fit one sheet, by trying every way to cut it.

use super::case::Case;
use super::scheme::Kind;
use std::collections::HashMap;

/// More pieces than this on one sheet are not tried: the ways to part them double with
/// each, and floors are not cut that small.
const MOST_PIECES: usize = 10;

/// Longer than any sheet.
const NEVER: i32 = i32::MAX / 4;

/// Sizes grown by a kerf, and what was found out so far.
#[derive(Debug, Clone)]
pub struct Fit {
    sizes: Vec<(i32, i32)>,
    sheet: (i32, i32),
    on_hand: Vec<(i32, i32)>,
    lengths: HashMap<(Vec<u16>, i32), i32>,
    /// How many partings were looked at so far: a measure of the work done.
    pub work: u64,
}

impl Fit {
    /// For these kinds.
    pub fn new(case: &Case, kinds: &[Kind]) -> Self {
        let kerf = case.asked.kerf;
        let sizes = kinds.iter().map(|kind| (kind.width + kerf, kind.height + kerf)).collect();
        let sheet = case.asked.sheet.grown(kerf);
        let on_hand = case.asked.on_hand.iter().map(|piece| piece.grown(kerf)).collect();
        Self { sizes, sheet, on_hand, lengths: HashMap::new(), work: 0 }
    }

    /// A kind's size, grown by a kerf.
    pub fn size(&self, kind: u16) -> (i32, i32) {
        self.sizes.get(usize::from(kind)).copied().unwrap_or((NEVER, NEVER))
    }

    /// How many pieces are on hand.
    pub fn on_hand(&self) -> usize {
        self.on_hand.len()
    }

    /// The size of a piece on hand or, beyond those, of a sheet, grown by a kerf.
    pub fn blank(&self, number: usize) -> (i32, i32) {
        self.on_hand.get(number).copied().unwrap_or(self.sheet)
    }

    /// A kind's area, grown by a kerf.
    pub fn area(&self, kind: u16) -> i64 {
        let (width, height) = self.size(kind);
        i64::from(width) * i64::from(height)
    }

    /// Do these kinds, in order, come out of a rectangle of this size?
    pub fn fits(&mut self, kinds: &[u16], (length, width): (i32, i32)) -> bool {
        kinds.is_empty() || self.least_length(kinds, width) <= length
    }

    /// How long a sheet of some height has to be for these kinds, in order, to come out
    /// of it; longer than any if they do not. All grown by a kerf.
    pub fn least_length(&mut self, kinds: &[u16], height: i32) -> i32 {
        if let [kind] = kinds {
            let (width, tall) = self.size(*kind);
            return if tall <= height { width } else { NEVER };
        }
        let area: i64 = kinds.iter().map(|kind| self.area(*kind)).sum();
        let least = (area + i64::from(height) - 1) / i64::from(height.max(1));
        let is_hopeless = kinds.iter().any(|kind| self.size(*kind).1 > height);
        if is_hopeless || kinds.len() > MOST_PIECES || least > i64::from(self.sheet.0) {
            return NEVER;
        }
        let key = (kinds.to_vec(), height);
        if let Some(length) = self.lengths.get(&key) {
            return *length;
        }
        let mut shortest = NEVER;
        for (one, other) in partings(kinds) {
            self.work += 1;
            let side_by_side = self.least_length(&one, height).saturating_add(self.least_length(&other, height));
            shortest = shortest.min(side_by_side);
            for cut in self.cuts(&one, height) {
                let low = self.least_length(&one, cut);
                if low < shortest {
                    shortest = shortest.min(low.max(self.least_length(&other, height - cut)));
                }
            }
            if i64::from(shortest) <= least {
                break;
            }
        }
        let shortest = shortest.min(NEVER);
        self.lengths.insert(key, shortest);
        shortest
    }

    /// The heights at which the lower of two parts may end: sums of its pieces'.
    pub fn cuts(&self, kinds: &[u16], height: i32) -> Vec<i32> {
        let mut sums = vec![0];
        for kind in kinds {
            let tall = self.size(*kind).1;
            let higher: Vec<_> = sums.iter().map(|sum| sum + tall).filter(|sum| *sum < height).collect();
            sums.extend(higher);
            sums.sort_unstable();
            sums.dedup();
        }
        sums.retain(|sum| *sum > 0);
        sums
    }
}

/// Every way to part kinds in two, the first of them in the first part, like kinds
/// not told apart.
pub fn partings(kinds: &[u16]) -> impl Iterator<Item = (Vec<u16>, Vec<u16>)> {
    let all = 1_u32 << kinds.len();
    let is_in = |mask: u32, at: usize| mask >> at & 1 == 1;
    // Of like kinds the first go into the first part.
    let is_first_of_its_like = move |mask: u32| {
        let neighbours = kinds.iter().zip(kinds.iter().skip(1)).enumerate();
        neighbours.filter(|(_, (a, b))| a == b).all(|(at, _)| is_in(mask, at) || !is_in(mask, at + 1))
    };
    (1..all - 1).step_by(2).filter(move |mask| is_first_of_its_like(*mask)).map(move |mask| {
        let part = |wanted: bool| {
            let of_part = kinds.iter().enumerate().filter(|(at, _)| is_in(mask, *at) == wanted);
            of_part.map(|(_, kind)| *kind).collect()
        };
        (part(true), part(false))
    })
}
