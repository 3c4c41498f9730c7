//! Courses: which widths they may have, and which of those come to the same thing.

use super::case::Case;
use super::region::{Band, Shape};
use std::collections::{BTreeMap, BTreeSet};

/// The levels of every course, from the lowest up.
pub type Levels = Vec<(i32, i32)>;

/// Is a height that changes with the first course's width too small to count in a bound
/// that holds for a whole class? Below a sixteenth of a sheet's width strips weigh next
/// to nothing, and which of them stack with what would split the widths into hundreds
/// of classes.
pub fn is_sliver(case: &Case, height: i32) -> bool {
    height < case.asked.sheet.width / 16
}

/// Widths of the first course between which no rule can tell: their courses are cut
/// alike, and the same heights stack on a sheet and on every piece on hand.
#[derive(Debug, Clone)]
pub struct Class {
    /// The courses for every such width.
    pub members: Vec<Levels>,
}

/// Every way to lay the courses.
pub fn choices(case: &Case) -> Vec<Levels> {
    let (low, high) = case.region.y;
    let (width, gap, least) = (case.asked.sheet.width, case.asked.gap, case.asked.min_rip);
    let all = high - low;
    let mut found = Vec::new();
    if all <= width {
        found.push(vec![(low, high)]);
    }
    for inner in 0.. {
        let ends = all - inner * width - (inner + 1) * gap;
        if ends < 2 * least {
            return found;
        }
        let firsts = least.max(ends - width)..=width.min(ends - least);
        found.extend(firsts.map(|first| levels(low, high, first, inner, width, gap)));
    }
    found
}

fn levels(low: i32, high: i32, first: i32, inner: i32, width: i32, gap: i32) -> Levels {
    let mut levels = vec![(low, low + first)];
    let mut at = low + first + gap;
    for _ in 0..inner {
        levels.push((at, at + width));
        at += width + gap;
    }
    levels.push((at, high));
    levels
}

/// The choices, sorted into classes in which one bound holds for all. Where walls run
/// off square every choice is a class of its own.
pub fn classes(case: &Case) -> Vec<Class> {
    let mut sorted: BTreeMap<Mark, Vec<Levels>> = BTreeMap::new();
    for levels in choices(case) {
        sorted.entry(mark(case, &levels)).or_default().push(levels);
    }
    sorted.into_values().map(|members| Class { members }).collect()
}

/// What two choices of one class have in common.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Mark {
    Shared { shapes: Vec<Shape>, stacks: Vec<Stacks> },
    Own(Levels),
}

fn mark(case: &Case, levels: &Levels) -> Mark {
    if !case.region.is_square() {
        return Mark::Own(levels.clone());
    }
    let bands: Vec<_> = levels.iter().map(|(low, high)| case.region.band(*low, *high)).collect();
    let shapes: Vec<_> = bands.iter().map(Band::shape).collect();
    let heights: Vec<_> = forms(case, &bands, &shapes).into_iter().map(|(_, height)| height).collect();
    let blanks = std::iter::once(&case.asked.sheet).chain(&case.asked.on_hand);
    let widths: BTreeSet<_> = blanks.map(|blank| blank.width).collect();
    let kerf = case.asked.kerf;
    match widths.into_iter().map(|width| stacks(&heights, width + kerf, kerf, case.limits.stacks)).collect() {
        Some(stacks) => Mark::Shared { shapes, stacks },
        None => Mark::Own(levels.clone()),
    }
}

/// Every height that a piece can have, told apart by how it depends on the first
/// course's width: by how much it grows with it, and what it is.
fn forms(case: &Case, bands: &[Band], shapes: &[Shape]) -> BTreeSet<(i32, i32)> {
    let last = bands.len().saturating_sub(1);
    let mut forms = BTreeSet::new();
    for (at, (band, shape)) in bands.iter().zip(shapes).enumerate() {
        let (low_moves, high_moves) = (i32::from(at > 0), i32::from(at < last));
        let strips = || shape.iter().flat_map(|(_, _, strips)| strips);
        let lows: BTreeSet<_> = strips().map(|(low, _)| low.map_or((low_moves, band.low), |y| (0, y))).collect();
        let highs: BTreeSet<_> = strips().map(|(_, high)| high.map_or((high_moves, band.high), |y| (0, y))).collect();
        for (low, high) in lows.iter().flat_map(|low| highs.iter().map(move |high| (low, high))) {
            let height = high.1 - low.1;
            let moves = high.0 - low.0;
            if height > 0 && (moves == 0 || !is_sliver(case, height)) {
                forms.insert((moves, height));
            }
        }
    }
    forms
}

/// What stacks on one width, as how often each height is in each stack.
type Stacks = Vec<Vec<u8>>;

/// Every stack of heights that fits; none if there are too many to tell apart.
fn stacks(heights: &[i32], room: i32, kerf: i32, most: usize) -> Option<Stacks> {
    let mut found = Vec::new();
    let mut open = vec![(vec![0_u8; heights.len()], 0_usize, room)];
    while let Some((stack, from, room)) = open.pop() {
        for (at, height) in heights.iter().enumerate().skip(from).filter(|(_, height)| **height + kerf <= room) {
            let mut higher = stack.clone();
            higher.get_mut(at).map(|count| count.checked_add(1).map(|more| *count = more))??;
            open.push((higher, at, room - height - kerf));
        }
        found.push(stack);
        if found.len() > most {
            return None;
        }
    }
    Some(found)
}
