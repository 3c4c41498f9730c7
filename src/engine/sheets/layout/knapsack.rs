//! The dearest set of pieces that a sheet, or a part of one, yields by cuts from edge to edge.
//!
//! Pieces and sheet are grown by one kerf each way, after which cuts take nothing. Any
//! cutting can be pushed left and down until every cut lies at a sum of widths or of
//! heights; so only those sums are looked at, and the answer is exact.

use super::case::Case;
use super::scheme::Scheme;

/// With more sums of widths than this, widths are rounded down to a coarser step: what
/// is found can then only be dearer, which keeps bounds true.
const MOST_SUMS: usize = 700;

/// The sums of widths and of heights that matter for a scheme, and where each kind fits.
#[derive(Debug, Clone)]
pub struct Knapsack {
    xs: Vec<i32>,
    ys: Vec<i32>,
    /// For each length up to the sheet's the last sum that is not longer.
    floor_x: Vec<u16>,
    floor_y: Vec<u16>,
    /// The number of each piece on hand among the sums, and last the sheet's.
    blanks: Vec<(usize, usize)>,
    /// For each kind the numbers of its width and height among the sums.
    spots: Vec<(usize, usize)>,
}

/// What fills a rectangle best.
#[derive(Debug, Clone, Copy)]
enum Fill {
    Nothing,
    Piece(u16),
    /// The same as another, smaller rectangle.
    Same(usize),
    /// Cut in two.
    Cut(usize, usize),
}

impl Knapsack {
    /// For all kinds of a scheme that `counts` says so of.
    pub fn new(case: &Case, scheme: &Scheme, counts: impl Fn(usize) -> bool) -> Self {
        let kerf = case.asked.kerf;
        let (length, width) = case.asked.sheet.grown(kerf);
        let sized: Vec<_> = scheme.kinds.iter().map(|kind| (kind.width + kerf, kind.height + kerf)).collect();
        let counted = || sized.iter().enumerate().filter(|(kind, _)| counts(*kind)).map(|(_, size)| *size);
        let heights: Vec<_> = counted().map(|(_, height)| height).collect();
        let ys = sums(&heights, width, usize::MAX).unwrap_or_default();
        let mut step = 1;
        let xs = loop {
            let widths: Vec<_> = counted().map(|(width, _)| coarse(width, step)).collect();
            match sums(&widths, length, MOST_SUMS) {
                Some(xs) => break xs,
                None => step *= 2,
            }
        };
        let floor_x = floors(&xs, length);
        let floor_y = floors(&ys, width);
        let floor = |floors: &[u16], at: i32| floors.get(at as usize).map_or(0, |floor| usize::from(*floor));
        let spot = |(width, height): (i32, i32)| (floor(&floor_x, width), floor(&floor_y, height));
        let spots = sized.iter().map(|(width, height)| spot((coarse(*width, step), *height))).collect();
        let blanks = case.asked.on_hand.iter().chain([&case.asked.sheet]).map(|blank| spot(blank.grown(kerf)));
        Self { blanks: blanks.collect(), xs, ys, floor_x, floor_y, spots }
    }

    /// The dearest filling of each piece on hand, and last of a sheet: its price, and how
    /// often it holds each kind.
    #[allow(clippy::indexing_slicing, reason = "the tables are as long as the sums that index them")]
    pub fn best(&self, prices: &[i64]) -> Vec<(i64, Vec<(u16, u16)>)> {
        let (wide, tall) = (self.xs.len(), self.ys.len());
        let mut value = vec![0_i64; wide * tall];
        let mut fill = vec![Fill::Nothing; wide * tall];
        for (kind, (x, y)) in self.spots.iter().enumerate() {
            let price = prices.get(kind).copied().unwrap_or_default();
            if price > value[y * wide + x] {
                value[y * wide + x] = price;
                fill[y * wide + x] = Fill::Piece(kind as u16);
            }
        }
        // Cuts that matter: one where a rectangle is worth no more than a smaller one can
        // be moved there, and what lies beyond it only grows.
        let mut steps_up: Vec<Vec<usize>> = vec![Vec::new(); wide];
        for y in 0..tall {
            let mut steps_along: Vec<usize> = Vec::new();
            for (x, steps_up) in steps_up.iter_mut().enumerate() {
                let here = y * wide + x;
                let mut best = (value[here], fill[here]);
                let mut offer = |value: i64, fill: Fill| {
                    if value > best.0 {
                        best = (value, fill);
                    }
                };
                if x > 0 {
                    offer(value[here - 1], Fill::Same(here - 1));
                }
                if y > 0 {
                    offer(value[here - wide], Fill::Same(here - wide));
                }
                for &cut in &steps_along {
                    if self.xs[cut] * 2 > self.xs[x] {
                        break;
                    }
                    let (left, right) =
                        (y * wide + cut, y * wide + usize::from(self.floor_x[(self.xs[x] - self.xs[cut]) as usize]));
                    offer(value[left] + value[right], Fill::Cut(left, right));
                }
                for &cut in &*steps_up {
                    if self.ys[cut] * 2 > self.ys[y] {
                        break;
                    }
                    let (low, high) =
                        (cut * wide + x, usize::from(self.floor_y[(self.ys[y] - self.ys[cut]) as usize]) * wide + x);
                    offer(value[low] + value[high], Fill::Cut(low, high));
                }
                (value[here], fill[here]) = best;
                if x > 0 && value[here] > value[here - 1] {
                    steps_along.push(x);
                }
                if y > 0 && value[here] > value[here - wide] {
                    steps_up.push(y);
                }
            }
        }
        let of_blank = |(x, y): &(usize, usize)| (value[y * wide + x], pieces(&fill, y * wide + x));
        self.blanks.iter().map(of_blank).collect()
    }
}

#[allow(clippy::indexing_slicing, reason = "a filling points at smaller rectangles of the same table")]
fn pieces(fill: &[Fill], whole: usize) -> Vec<(u16, u16)> {
    let mut kinds = Vec::new();
    let mut open = vec![whole];
    while let Some(at) = open.pop() {
        match fill[at] {
            Fill::Nothing => {}
            Fill::Piece(kind) => kinds.push(kind),
            Fill::Same(other) => open.push(other),
            Fill::Cut(one, other) => open.extend([one, other]),
        }
    }
    kinds.sort_unstable();
    kinds.chunk_by(|a, b| a == b).filter_map(|same| Some((*same.first()?, same.len() as u16))).collect()
}

/// Nought, every sum of the sizes up to `most`, and `most`; none if there are too many.
fn sums(sizes: &[i32], most: i32, limit: usize) -> Option<Vec<i32>> {
    let mut is_sum = vec![false; most as usize + 1];
    *is_sum.first_mut()? = true;
    let mut sizes = sizes.to_vec();
    sizes.retain(|size| *size > 0 && *size <= most);
    sizes.sort_unstable();
    sizes.dedup();
    for at in 0..is_sum.len() {
        if is_sum.get(at) == Some(&true) {
            for size in &sizes {
                if let Some(sum) = is_sum.get_mut(at + *size as usize) {
                    *sum = true;
                }
            }
        }
    }
    *is_sum.last_mut()? = true;
    let found: Vec<_> = is_sum.iter().enumerate().filter(|(_, is)| **is).map(|(at, _)| at as i32).collect();
    (found.len() <= limit).then_some(found)
}

fn floors(sums: &[i32], most: i32) -> Vec<u16> {
    (0..=most).map(|at| (sums.partition_point(|sum| *sum <= at) - 1) as u16).collect()
}

/// Down to a multiple of `step`, but never to nothing.
fn coarse(width: i32, step: i32) -> i32 {
    (width / step * step).max(step.min(width))
}
