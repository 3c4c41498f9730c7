//! Whether pieces fit one sheet, by trying every way to cut it.
//!
//! What is not known after so much work stays unknown: an answer is a length that pieces
//! come out of and one that they do not, and where the two do not meet nothing is said.

use super::case::Case;
use super::limits::Limits;
use super::scheme::Kind;
use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

/// Longer than any sheet.
const NEVER: i32 = i32::MAX / 4;

/// Do pieces come out of a rectangle?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fits {
    /// They do, and it is known how.
    Yes,
    /// No cutting yields them.
    No,
    /// Not found out within the work allowed.
    Unknown,
}

/// How long a sheet has to be for some pieces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Needs {
    /// They do not come out of a shorter one.
    pub at_least: i32,
    /// They come out of one so long.
    pub at_most: i32,
}

impl Needs {
    const NEVER: Self = Self::exactly(NEVER);

    const fn exactly(length: i32) -> Self {
        Self { at_least: length, at_most: length }
    }

    const fn is_exact(self) -> bool {
        self.at_least >= self.at_most
    }

    /// Do they fit a length?
    pub const fn fit(self, length: i32) -> Fits {
        if self.at_most <= length {
            Fits::Yes
        } else if self.at_least > length {
            Fits::No
        } else {
            Fits::Unknown
        }
    }
}

/// The first of two parts of some pieces, and how high up the cut between them goes along
/// the sheet; none if it goes across.
pub type Parting = (Vec<u16>, Option<i32>);

/// What was found out.
#[derive(Debug, Clone)]
struct Known {
    needs: Needs,
    /// How pieces come out of the shortest length that is known to do.
    how: Option<(Box<[u16]>, Option<i32>)>,
}

impl Known {
    /// Both are true.
    fn and(self, other: &Self) -> Self {
        let at_least = self.needs.at_least.max(other.needs.at_least);
        let at_most = self.needs.at_most.min(other.needs.at_most);
        let how = if other.needs.at_most < self.needs.at_most { other.how.clone() } else { self.how };
        Self { needs: Needs { at_least, at_most }, how }
    }
}

/// Sizes grown by a kerf, and what was found out so far.
#[derive(Debug, Clone)]
pub struct Fit {
    sizes: Vec<(i32, i32)>,
    sheet: (i32, i32),
    on_hand: Vec<(i32, i32)>,
    known: HashMap<Box<[u16]>, Known, BuildHasherDefault<Mix>>,
    /// How many kinds its keys and parts hold together, for [`Self::bytes`].
    kinds_kept: usize,
    /// How many partings were looked at so far: a measure of the work done.
    pub work: u64,
    /// How far [`Self::work`] may go: beyond that nothing new is found out.
    most_work: u64,
    /// Where to give up.
    pub limits: Limits,
}

impl Fit {
    /// For these kinds.
    pub fn new(case: &Case, kinds: &[Kind]) -> Self {
        let kerf = case.asked.kerf;
        let sizes = kinds.iter().map(|kind| (kind.width + kerf, kind.height + kerf)).collect();
        let sheet = case.asked.sheet.grown(kerf);
        let on_hand = case.asked.on_hand.iter().map(|piece| piece.grown(kerf)).collect();
        Self {
            sizes,
            sheet,
            on_hand,
            known: HashMap::default(),
            kinds_kept: 0,
            work: 0,
            most_work: 0,
            limits: case.limits,
        }
    }

    /// Allows so many partings more to be looked at from here on.
    pub fn allow(&mut self, more: u64) {
        self.most_work = self.work.saturating_add(more);
    }

    /// Is the work that was allowed used up?
    pub fn is_spent(&self) -> bool {
        self.work >= self.most_work
    }

    /// About how much memory it takes: the same on every machine.
    pub fn bytes(&self) -> usize {
        /// A key, what is known, and what keeping two lists apart takes.
        const EACH: usize = 200;
        self.known.len() * EACH + self.kinds_kept * 2
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
    pub fn fits(&mut self, kinds: &[u16], (length, width): (i32, i32)) -> Fits {
        if kinds.is_empty() { Fits::Yes } else { self.needs(kinds, width, length).fit(length) }
    }

    /// How long a sheet of some height has to be for these kinds, in order, to come out
    /// of it; longer than any if they do not. All grown by a kerf.
    pub fn least_length(&mut self, kinds: &[u16], height: i32) -> Needs {
        self.needs(kinds, height, 0)
    }

    /// How two parts of these kinds come out of the shortest length that is known to do.
    pub fn parting(&self, kinds: &[u16], height: i32) -> Option<Parting> {
        let (one, cut) = self.known.get(&*key(kinds, height))?.how.as_ref()?;
        Some((one.to_vec(), *cut))
    }

    /// The same, content with a length of `enough`.
    fn needs(&mut self, kinds: &[u16], height: i32, enough: i32) -> Needs {
        if let [kind] = kinds {
            let (width, tall) = self.size(*kind);
            return if tall <= height { Needs::exactly(width) } else { Needs::NEVER };
        }
        let area: i64 = kinds.iter().map(|kind| self.area(*kind)).sum();
        let by_area = (area + i64::from(height) - 1) / i64::from(height.max(1));
        if by_area > i64::from(self.sheet.0) || kinds.iter().any(|kind| self.size(*kind).1 > height) {
            return Needs::NEVER;
        }
        let by_area = i32::try_from(by_area).unwrap_or(NEVER);
        let key = key(kinds, height);
        let before = self.known.get(&*key).map(|known| known.needs);
        if let Some(needs) = before
            && (needs.is_exact() || needs.at_most <= enough || self.is_spent())
        {
            return needs;
        }
        let found = self.tried(kinds, height, by_area, enough);
        // What was found before stays true.
        let found = match self.known.get(&*key) {
            Some(known) => found.and(known),
            None => found,
        };
        let needs = found.needs;
        let is_news = found.how.is_some() || needs.at_least > by_area;
        if is_news && (self.known.len() < self.limits.kept || before.is_some()) {
            if before.is_none() {
                self.kinds_kept += kinds.len();
            }
            self.kinds_kept += found.how.as_ref().map_or(0, |(one, _)| one.len());
            self.known.insert(Box::from(&*key), found);
        }
        needs
    }

    /// Tries every way to part these kinds in two, as far as there is work for it.
    fn tried(&mut self, kinds: &[u16], height: i32, by_area: i32, enough: i32) -> Known {
        // The shortest that does, and the shortest that could still be found to do.
        let (mut shortest, mut hoped) = (NEVER, NEVER);
        let mut how = None;
        for (one, other) in partings(kinds) {
            if self.is_spent() {
                hoped = by_area;
                break;
            }
            self.work += 1;
            let (left, right) = (self.needs(&one, height, 0), self.needs(&other, height, 0));
            hoped = hoped.min(left.at_least.saturating_add(right.at_least));
            let side_by_side = left.at_most.saturating_add(right.at_most);
            if side_by_side < shortest {
                (shortest, how) = (side_by_side, Some((Box::from(&*one), None)));
            }
            for cut in self.cuts(&one, height) {
                let low = self.needs(&one, cut, 0);
                if low.at_least >= shortest {
                    continue;
                }
                let high = self.needs(&other, height - cut, 0);
                hoped = hoped.min(low.at_least.max(high.at_least));
                let stacked = low.at_most.max(high.at_most);
                if stacked < shortest {
                    (shortest, how) = (stacked, Some((Box::from(&*one), Some(cut))));
                }
            }
            if shortest <= by_area.max(enough) {
                // Shorter ones were not looked for.
                hoped = hoped.min(by_area);
                break;
            }
        }
        let at_most = shortest.min(NEVER);
        let at_least = hoped.clamp(by_area.min(at_most), at_most);
        // Beyond the sheet one length is as much as another.
        let needs = if at_least > self.sheet.0 { Needs::NEVER } else { Needs { at_least, at_most } };
        Known { needs, how: how.filter(|_| at_most < NEVER) }
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

/// Kinds and a height as one list, for short ones without asking for memory.
fn key(kinds: &[u16], height: i32) -> Key {
    let height = height.cast_unsigned();
    let tail = [(height >> 16) as u16, (height & 0xFFFF) as u16];
    let mut short = [0; SHORT];
    let (of_kinds, rest) = short.split_at_mut(kinds.len().min(SHORT - 2));
    if of_kinds.len() < kinds.len() {
        return Key::Long([kinds, &tail].concat());
    }
    of_kinds.copy_from_slice(kinds);
    rest.iter_mut().zip(tail).for_each(|(to, from)| *to = from);
    Key::Short(short, kinds.len() + 2)
}

/// Questions of so few pieces are looked up without a list of their own; longer ones have one.
const SHORT: usize = 24;

enum Key {
    Short([u16; SHORT], usize),
    Long(Vec<u16>),
}

impl std::ops::Deref for Key {
    type Target = [u16];

    fn deref(&self) -> &[u16] {
        match self {
            Self::Short(list, length) => list.get(..*length).unwrap_or_default(),
            Self::Long(list) => list,
        }
    }
}

/// How many ways there are to choose some of these kinds, in order, like kinds not told
/// apart: none and all of them among those.
pub fn choices(kinds: &[u16]) -> usize {
    kinds.chunk_by(|a, b| a == b).fold(1, |ways, like| ways.saturating_mul(like.len() + 1))
}

/// Every way to part kinds, in order, in two, one of the first of them in the first part,
/// like kinds not told apart.
pub fn partings(kinds: &[u16]) -> Partings {
    let counted: Vec<_> = kinds.chunk_by(|a, b| a == b).filter_map(|like| Some((*like.first()?, like.len()))).collect();
    let mut taken = vec![0; counted.len()];
    if let Some(first) = taken.first_mut() {
        *first = 1;
    }
    Partings { counted, taken, is_over: kinds.len() < 2 }
}

/// Iterates over partings, counting up how many of each kind are in the first part.
#[derive(Debug, Clone)]
pub struct Partings {
    counted: Vec<(u16, usize)>,
    taken: Vec<usize>,
    is_over: bool,
}

impl Iterator for Partings {
    type Item = (Vec<u16>, Vec<u16>);

    fn next(&mut self) -> Option<Self::Item> {
        let pairs = || self.counted.iter().zip(&self.taken);
        // The last one takes all of them: that is no parting.
        if self.is_over || pairs().all(|((_, count), taken)| count == taken) {
            return None;
        }
        let part = |of: fn(usize, usize) -> usize| {
            pairs().flat_map(|((kind, count), taken)| std::iter::repeat_n(*kind, of(*count, *taken))).collect()
        };
        let parting = (part(|_, taken| taken), part(|count, taken| count - taken));
        // The first kind counts from one, the others from nought.
        for (at, ((_, count), taken)) in self.counted.iter().zip(&mut self.taken).enumerate() {
            if *taken < *count {
                *taken += 1;
                break;
            }
            *taken = usize::from(at == 0);
        }
        Some(parting)
    }
}

/// Mixes a key's numbers quickly; nothing hangs on how well. Constants from memory.
#[derive(Debug, Clone, Copy, Default)]
pub struct Mix(u64);

impl Hasher for Mix {
    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 29)
    }

    fn write(&mut self, bytes: &[u8]) {
        bytes.chunks(8).for_each(|chunk| {
            self.write_u64(chunk.iter().rev().fold(0, |word, byte| word << 8 | u64::from(*byte)));
        });
    }

    fn write_u64(&mut self, word: u64) {
        self.0 = (self.0.rotate_left(5) ^ word).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    }

    fn write_usize(&mut self, word: usize) {
        self.write_u64(word as u64);
    }

    fn write_i32(&mut self, word: i32) {
        self.write_u64(u64::from(word.cast_unsigned()));
    }
}
