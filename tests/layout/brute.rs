//! The same question answered by trying everything, with none of the engine's means:
//! floors as grids of unit squares, pieces by flooding, sheets by every set of pieces.

use duckboard::engine::sheets::layout::Request;
use std::collections::{BTreeMap, BTreeSet};

/// A piece's size along x and y.
type Size = (i32, i32);

/// More choices among pieces than that take minutes: eight pieces of eight sizes, or as many
/// of one size as a floor has.
const MOST_CHOICES: usize = 256;

/// Has this floor a layout with too many choices to try everything?
pub fn is_too_much(asked: &Request) -> bool {
    all_layouts(asked).iter().any(|pieces| subsets(pieces).len() > MOST_CHOICES)
}

/// Every set of some of these pieces, equal ones not told apart, in order: none of them
/// first, all of them last.
fn subsets(pieces: &[Size]) -> Vec<Vec<Size>> {
    let mut sets = vec![Vec::new()];
    for like in pieces.chunk_by(|a, b| a == b) {
        let more = |set: &Vec<Size>| {
            let set = set.clone();
            (0..=like.len()).map(move |count| [set.as_slice(), &vec![like[0]; count]].concat()).collect::<Vec<_>>()
        };
        sets = sets.iter().flat_map(more).collect();
        if sets.len() > MOST_CHOICES {
            break;
        }
    }
    sets
}

/// What is left of pieces when some of them are taken.
fn without(pieces: &[Size], taken: &[Size]) -> Vec<Size> {
    let mut left = pieces.to_vec();
    for piece in taken {
        let at = left.iter().position(|other| other == piece).unwrap();
        left.remove(at);
    }
    left
}

fn all_layouts(asked: &Request) -> BTreeSet<Vec<Size>> {
    courses(asked).into_iter().flat_map(|levels| layouts(asked, &levels)).collect()
}

/// The fewest sheets, and with those the fewest pieces; none if no layout keeps the
/// rules. For square floors of a few pieces.
pub fn fewest(asked: &Request) -> Option<(u32, usize)> {
    let mut known = BTreeMap::new();
    let layouts = all_layouts(asked);
    layouts.iter().map(|pieces| (fewest_sheets(asked, pieces, &mut known), pieces.len())).min()
}

fn courses(asked: &Request) -> Vec<Vec<(i32, i32)>> {
    let low = asked.outline.iter().map(|corner| corner.1).min().unwrap();
    let high = asked.outline.iter().map(|corner| corner.1).max().unwrap();
    let mut found = Vec::new();
    for first in 1..=asked.sheet.width {
        let mut levels = vec![(low, low + first)];
        while levels.last().unwrap().1 < high {
            let from = levels.last().unwrap().1 + asked.gap;
            levels.push((from, (from + asked.sheet.width).min(high)));
        }
        let ends = [levels[0], *levels.last().unwrap()];
        let wide_enough = ends.iter().all(|(from, to)| to - from >= asked.min_rip.max(1));
        let is_one = levels.len() == 1 && levels[0].1 == high;
        if levels.last().unwrap().1 == high && (is_one || (levels.len() > 1 && wide_enough)) {
            found.push(levels);
        }
    }
    found
}

/// The sizes of the pieces of every layout with these courses, in order.
fn layouts(asked: &Request, levels: &[(i32, i32)]) -> BTreeSet<Vec<Size>> {
    let mut so_far: BTreeSet<(Vec<usize>, Vec<Size>)> = BTreeSet::from([(Vec::new(), Vec::new())]);
    for (low, high) in levels {
        let mut next = BTreeSet::new();
        for (joints, pieces) in course(asked, *low, *high) {
            for (before, others) in &so_far {
                let is_near = |a: &usize| before.iter().any(|b| a.abs_diff(*b) < asked.stagger);
                if !joints.iter().any(is_near) {
                    let mut all = [others.clone(), pieces.clone()].concat();
                    all.sort_unstable();
                    next.insert((joints.clone(), all));
                }
            }
        }
        so_far = next;
    }
    so_far.into_iter().map(|(_, pieces)| pieces).collect()
}

/// Every way to lay one course: the joists its joints are on, and its pieces.
fn course(asked: &Request, low: i32, high: i32) -> Vec<(Vec<usize>, Vec<Size>)> {
    let mut ways = vec![(Vec::new(), Vec::new())];
    for run in runs(asked, low, high) {
        let mut next = Vec::new();
        for joints in joint_sets(asked, run) {
            let Some(pieces) = pieces(asked, run, &joints, low, high) else { continue };
            for (before, others) in &ways {
                next.push(([before.clone(), joints.clone()].concat(), [others.clone(), pieces.clone()].concat()));
            }
        }
        ways = next;
    }
    ways
}

fn runs(asked: &Request, low: i32, high: i32) -> Vec<(i32, i32)> {
    let columns: Vec<i32> = (0..64).filter(|x| (low..high).any(|y| is_floor(asked, *x, y))).collect();
    let together = columns.chunk_by(|a, b| a + 1 == *b);
    together.map(|run| (run[0], run[run.len() - 1] + 1)).collect()
}

/// Is the unit square at (x, y) floor? By the crossings of a ray to the left.
fn is_floor(asked: &Request, x: i32, y: i32) -> bool {
    let crossings = |ring: &Vec<(i32, i32)>| {
        let sides = ring.iter().zip(ring.iter().cycle().skip(1));
        sides.filter(|(a, b)| a.0 == b.0 && a.0 <= x && a.1.min(b.1) <= y && y < a.1.max(b.1)).count()
    };
    std::iter::once(&asked.outline).chain(&asked.holes).map(crossings).sum::<usize>() % 2 == 1
}

fn joint_sets(asked: &Request, (left, right): (i32, i32)) -> Vec<Vec<usize>> {
    let inner = left + asked.joist_width..=right - asked.joist_width;
    let carrying: Vec<usize> = (0..asked.joists.len()).filter(|joist| inner.contains(&asked.joists[*joist])).collect();
    let sets = (0..1_u32 << carrying.len()).map(|set| {
        carrying.iter().enumerate().filter(|(bit, _)| set >> bit & 1 == 1).map(|(_, joist)| *joist).collect::<Vec<_>>()
    });
    let bays = carrying.len() + 1;
    let spans = |joints: &[usize]| {
        let at = |joist: usize| carrying.iter().position(|other| *other == joist).unwrap() + 1;
        let ends = std::iter::once(0).chain(joints.iter().map(|joist| at(*joist))).chain([bays]).collect::<Vec<_>>();
        ends.windows(2).all(|pair| pair[1] - pair[0] >= asked.min_bays.min(bays))
    };
    sets.filter(|joints| spans(joints)).collect()
}

fn pieces(asked: &Request, (left, right): (i32, i32), joints: &[usize], low: i32, high: i32) -> Option<Vec<Size>> {
    let mut pieces = Vec::new();
    let mut from = left;
    let half = asked.gap / 2;
    for end in joints.iter().map(|joist| Some(asked.joists[*joist])).chain([None]) {
        let to = end.map_or(right, |joist| joist - half);
        let parts = flood(asked, from, to, low, high);
        if to - from > asked.sheet.length || parts.is_empty() {
            return None;
        }
        pieces.extend(parts);
        from = end.map_or(right, |joist| joist + half);
    }
    Some(pieces)
}

/// The sizes of the connected parts of a cell.
fn flood(asked: &Request, from: i32, to: i32, low: i32, high: i32) -> Vec<Size> {
    let squares = (from..to).flat_map(|x| (low..high).map(move |y| (x, y)));
    let mut dry: BTreeSet<_> = squares.filter(|(x, y)| is_floor(asked, *x, *y)).collect();
    let mut sizes = Vec::new();
    while let Some(first) = dry.pop_first() {
        let (mut part, mut open) = (vec![first], vec![first]);
        while let Some((x, y)) = open.pop() {
            for next in [(x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)] {
                if dry.remove(&next) {
                    part.push(next);
                    open.push(next);
                }
            }
        }
        let extent =
            |of: fn(&(i32, i32)) -> i32| part.iter().map(of).max().unwrap() - part.iter().map(of).min().unwrap() + 1;
        sizes.push((extent(|square| square.0), extent(|square| square.1)));
    }
    sizes
}

type Known = BTreeMap<(Vec<Size>, i32, i32), bool>;

/// By every set of pieces: none on a sheet that what is on hand can hold.
fn fewest_sheets(asked: &Request, pieces: &[Size], known: &mut Known) -> u32 {
    let mut pieces = pieces.to_vec();
    pieces.sort_unstable();
    // For each set what it takes: smaller sets come first.
    let mut sets = subsets(&pieces);
    sets.sort_by_key(Vec::len);
    let mut fewest: BTreeMap<Vec<Size>, u32> = BTreeMap::from([(Vec::new(), 0)]);
    for set in sets.iter().filter(|set| !set.is_empty()) {
        // Its first piece is on some sheet.
        let parts = subsets(set).into_iter().filter(|part| part.first() == set.first());
        let parts = parts.filter(|part| fits(part, asked.sheet.length, asked.sheet.width, asked.kerf, known));
        let least = parts.map(|part| fewest[&without(set, &part)].saturating_add(1)).min();
        fewest.insert(set.clone(), least.unwrap_or(u32::MAX));
    }
    for blank in &asked.on_hand {
        let with_it = |set: &Vec<Size>, known: &mut Known| {
            let parts = subsets(set);
            let held = parts.into_iter().filter(|part| fits(part, blank.length, blank.width, asked.kerf, known));
            held.map(|part| fewest[&without(set, &part)]).min().unwrap()
        };
        fewest = sets.iter().map(|set| (set.clone(), with_it(set, known))).collect();
    }
    fewest[&pieces]
}

/// By every cut at every unit, with every parting. Pieces come in order, so that equal
/// ones are asked about once.
fn fits(pieces: &[Size], length: i32, width: i32, kerf: i32, known: &mut Known) -> bool {
    // With a kerf along two of its edges a piece still lies in a sheet that has one too.
    let with_kerf = |along: i32, across: i32| (along + kerf) * (across + kerf);
    match pieces {
        [] => return true,
        _ if length <= 0 || width <= 0 => return false,
        [(along, across)] => return *along <= length && *across <= width,
        _ if pieces.iter().map(|(along, across)| with_kerf(*along, *across)).sum::<i32>()
            > with_kerf(length, width) =>
        {
            return false;
        }
        _ if pieces.iter().any(|(along, across)| *along > length || *across > width) => return false,
        _ => {}
    }
    let key = (pieces.to_vec(), length, width);
    if let Some(fits) = known.get(&key) {
        return *fits;
    }
    let found = subsets(pieces).into_iter().any(|one| {
        let other = without(pieces, &one);
        if one.is_empty() || other.is_empty() {
            return false;
        }
        let across = |at: i32, known: &mut Known| {
            fits(&one, at, width, kerf, known) && fits(&other, length - at - kerf, width, kerf, known)
        };
        let along = |at: i32, known: &mut Known| {
            fits(&one, length, at, kerf, known) && fits(&other, length, width - at - kerf, kerf, known)
        };
        (1..length).any(|at| across(at, known)) || (1..width).any(|at| along(at, known))
    });
    known.insert(key, found);
    found
}
