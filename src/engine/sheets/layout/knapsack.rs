//! The dearest set of pieces that a sheet, or a part of one, yields by cuts from edge to edge.
//!
//! Pieces and sheet are grown by one kerf each way, after which cuts take nothing. Any
//! cutting can be pushed left and down until every cut lies at a sum of widths or of
//! heights, and of the two parts of a cut the smaller can come first; so only
//! the sums up to half of what is cut are looked at, and what they leave. The answer is exact.

use super::case::Case;
use super::scheme::Scheme;

/// Along one way of the sheet: the lengths that matter.
#[derive(Debug, Clone, Default)]
struct Axis {
    /// In order, from nought.
    lengths: Vec<i32>,
    /// For each length up to the sheet's the number of the last that is not longer.
    floor: Vec<u16>,
}

/// The lengths and widths that matter for a scheme, and where each kind fits.
#[derive(Debug, Clone)]
pub struct Knapsack {
    xs: Axis,
    ys: Axis,
    /// The numbers of each piece on hand along both, and last the sheet's.
    blanks: Vec<(usize, usize)>,
    /// For each kind the numbers of the least lengths that it fits; none if it fits none.
    spots: Vec<Option<(usize, usize)>>,
    /// How many cuts were compared so far: a measure of the work done.
    pub work: u64,
}

impl Knapsack {
    /// For all kinds of a scheme that `counts` says so of.
    pub fn new(case: &Case, scheme: &Scheme, counts: impl Fn(usize) -> bool) -> Self {
        let kerf = case.asked.kerf;
        let sized: Vec<_> = scheme.kinds.iter().map(|kind| (kind.width + kerf, kind.height + kerf)).collect();
        let blanks: Vec<_> =
            case.asked.on_hand.iter().chain([&case.asked.sheet]).map(|blank| blank.grown(kerf)).collect();
        let counted = || sized.iter().enumerate().filter(|(kind, _)| counts(*kind)).map(|(_, size)| *size);
        let widths: Vec<_> = counted().map(|(width, _)| width).collect();
        let heights: Vec<_> = counted().map(|(_, height)| height).collect();
        let most = case.limits.lengths;
        let (xs, x_step) = Axis::of(most, &widths, &blanks.iter().map(|(length, _)| *length).collect::<Vec<_>>());
        let (ys, y_step) = Axis::of(most, &heights, &blanks.iter().map(|(_, width)| *width).collect::<Vec<_>>());
        let spot = |(width, height): &(i32, i32)| {
            Some((xs.least_of(coarse(*width, x_step))?, ys.least_of(coarse(*height, y_step))?))
        };
        let spots = sized.iter().map(spot).collect();
        let blanks = blanks.iter().map(|(length, width)| (xs.most_of(*length), ys.most_of(*width))).collect();
        Self { xs, ys, blanks, spots, work: 0 }
    }

    /// About how much memory it takes while it works.
    pub fn bytes(&self) -> usize {
        let axis = |axis: &Axis| axis.lengths.len() * 4 + axis.floor.len() * 2;
        axis(&self.xs) + axis(&self.ys) + self.spots.len() * 24
    }

    /// The dearest filling of each piece on hand, and last of a sheet: its price, and how
    /// often it holds each kind.
    pub fn best(&mut self, prices: &[i64]) -> Vec<(i64, Vec<(u16, u16)>)> {
        let table = self.table(prices);
        let of_blank = |spot: &(usize, usize)| (table.at(*spot), self.pieces(&table, *spot, prices));
        self.blanks.iter().map(of_blank).collect()
    }

    /// The prices of those fillings alone.
    pub fn values(&mut self, prices: &[i64]) -> Vec<i64> {
        let table = self.table(prices);
        self.blanks.iter().map(|spot| table.at(*spot)).collect()
    }

    #[allow(clippy::indexing_slicing, reason = "the tables are as long as the lengths that index them")]
    fn table(&mut self, prices: &[i64]) -> Table {
        let (wide, tall) = (self.xs.lengths.len(), self.ys.lengths.len());
        let mut value = vec![0_i64; wide * tall];
        for (spot, price) in self.spots.iter().zip(prices) {
            if let Some((x, y)) = *spot {
                value[y * wide + x] = value[y * wide + x].max(*price);
            }
        }
        // Cuts that matter: one where a strip is worth no more than a shorter one can be
        // moved there, and what lies beyond it only grows.
        let mut steps_up: Vec<Vec<usize>> = vec![Vec::new(); wide];
        let (xs, ys) = (&self.xs, &self.ys);
        for y in 0..tall {
            let row = y * wide;
            let mut steps_along: Vec<usize> = Vec::new();
            for (x, steps_up) in steps_up.iter_mut().enumerate() {
                let mut best = value[row + x];
                if x > 0 {
                    best = best.max(value[row + x - 1]);
                }
                if y > 0 {
                    best = best.max(value[row - wide + x]);
                }
                for &cut in &steps_along {
                    if xs.lengths[cut] * 2 > xs.lengths[x] {
                        break;
                    }
                    best = best.max(value[row + cut] + value[row + xs.rest(x, cut)]);
                }
                for &cut in &*steps_up {
                    if ys.lengths[cut] * 2 > ys.lengths[y] {
                        break;
                    }
                    best = best.max(value[cut * wide + x] + value[ys.rest(y, cut) * wide + x]);
                }
                self.work += 1 + (steps_along.len() + steps_up.len()) as u64 / 2;
                value[row + x] = best;
                if x > 0 && best > value[row + x - 1] {
                    steps_along.push(x);
                }
                if y > 0 && best > value[row - wide + x] {
                    steps_up.push(y);
                }
            }
        }
        Table { wide, value }
    }

    /// The pieces that come to a rectangle's value.
    fn pieces(&self, table: &Table, whole: (usize, usize), prices: &[i64]) -> Vec<(u16, u16)> {
        let mut kinds = Vec::new();
        let mut open = vec![whole];
        while let Some((x, y)) = open.pop() {
            let here = table.at((x, y));
            if here == 0 {
                continue;
            }
            if x > 0 && table.at((x - 1, y)) == here {
                open.push((x - 1, y));
                continue;
            }
            if y > 0 && table.at((x, y - 1)) == here {
                open.push((x, y - 1));
                continue;
            }
            let is_it = |(spot, price): (&Option<(usize, usize)>, &i64)| *spot == Some((x, y)) && *price == here;
            if let Some(kind) = self.spots.iter().zip(prices).position(is_it) {
                kinds.push(kind as u16);
                continue;
            }
            let across = (1..x).map(|one| [(one, y), (self.xs.rest(x, one), y)]);
            let along = (1..y).map(|one| [(x, one), (x, self.ys.rest(y, one))]);
            let parted = across.chain(along).find(|[one, other]| table.at(*one) + table.at(*other) == here);
            open.extend(parted.into_iter().flatten());
        }
        kinds.sort_unstable();
        kinds.chunk_by(|a, b| a == b).filter_map(|same| Some((*same.first()?, same.len() as u16))).collect()
    }
}

/// The dearest filling's price for each rectangle.
struct Table {
    wide: usize,
    value: Vec<i64>,
}

impl Table {
    fn at(&self, (x, y): (usize, usize)) -> i64 {
        self.value.get(y * self.wide + x).copied().unwrap_or_default()
    }
}

impl Axis {
    /// For pieces of these sizes out of blanks of those, sizes as coarse as it takes; and
    /// the step that they are rounded down to.
    fn of(most: usize, sizes: &[i32], blanks: &[i32]) -> (Self, i32) {
        let least = sizes.iter().copied().min().unwrap_or(1);
        let mut step = 1;
        // Nothing can be rounded down to nothing: with pieces so small every length counts.
        while step <= least {
            let coarse: Vec<_> = sizes.iter().map(|size| coarse(*size, step)).collect();
            if let Some(axis) = Self::exact(&coarse, blanks, most) {
                return (axis, step);
            }
            step *= 2;
        }
        (Self::exact(sizes, blanks, usize::MAX).unwrap_or_default(), 1)
    }

    /// None if more than `limit` lengths matter.
    #[allow(clippy::indexing_slicing, reason = "the tables reach to the longest blank, and nothing here is longer")]
    fn exact(sizes: &[i32], blanks: &[i32], limit: usize) -> Option<Self> {
        let most = usize::try_from(blanks.iter().copied().max().unwrap_or(0)).unwrap_or(0);
        let (sums, last_sum) = sums(sizes, most);
        // Each length that matters, and what its cuts leave, from the longest down.
        let mut matters = vec![false; most + 1];
        blanks.iter().for_each(|blank| matters[*blank as usize] = true);
        let mut count = 0;
        for length in (1..=most).rev() {
            if !matters[length] {
                continue;
            }
            count += 1;
            if count > limit {
                return None;
            }
            for sum in sums.iter().skip(1).take_while(|sum| **sum * 2 <= length) {
                matters[*sum] = true;
                matters[last_sum[length - sum]] = true;
            }
        }
        matters[0] = true;
        let lengths: Vec<_> = (0..=most).filter(|length| matters[*length]).map(|length| length as i32).collect();
        let mut floor = Vec::with_capacity(most + 1);
        for matters in matters {
            let before = floor.last().map_or(0, |before| before + u16::from(matters));
            floor.push(before);
        }
        Some(Self { lengths, floor })
    }

    /// The number of what is left of one length behind another.
    #[allow(clippy::indexing_slicing, reason = "what is left is no longer than the longest")]
    fn rest(&self, of: usize, cut: usize) -> usize {
        usize::from(self.floor[(self.lengths[of] - self.lengths[cut]) as usize])
    }

    /// The number of the least length that a size fits.
    fn least_of(&self, size: i32) -> Option<usize> {
        let at = self.lengths.partition_point(|length| *length < size);
        (at < self.lengths.len()).then_some(at)
    }

    /// The number of the greatest length that fits a size.
    fn most_of(&self, size: i32) -> usize {
        self.lengths.partition_point(|length| *length <= size).saturating_sub(1)
    }
}

/// Nought, and every sum of the sizes up to `most`, in order; and for each length the last
/// that is not longer.
fn sums(sizes: &[i32], most: usize) -> (Vec<usize>, Vec<usize>) {
    let mut is_sum = vec![false; most + 1];
    if let Some(nought) = is_sum.first_mut() {
        *nought = true;
    }
    let mut sizes: Vec<_> = sizes.iter().filter_map(|size| usize::try_from(*size).ok()).collect();
    sizes.retain(|size| *size > 0 && *size <= most);
    sizes.sort_unstable();
    sizes.dedup();
    let (mut sums, mut last) = (Vec::new(), Vec::with_capacity(most + 1));
    for at in 0..is_sum.len() {
        if is_sum.get(at) == Some(&true) {
            sums.push(at);
            for size in &sizes {
                if let Some(sum) = is_sum.get_mut(at + size) {
                    *sum = true;
                }
            }
        }
        last.extend(sums.last());
    }
    (sums, last)
}

/// Down to a multiple of `step`.
const fn coarse(size: i32, step: i32) -> i32 {
    size / step * step
}
