//! What is cut off a piece that is no rectangle: where a wall slants or has a corner.

use super::case::Case;
use super::plan::{Layout, Piece};
use super::ratio::Ratio;
use super::region::{Corner, Trapezoid, measure};

/// A line along which a piece is trimmed, from the lower left corner of its rectangle, to
/// the nearest sixteenth. From left to right, and upwards where it is upright.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Trim {
    /// From here.
    pub from: Corner,
    /// To here.
    pub to: Corner,
}

/// Where a piece of a layout is trimmed to the outline or around a hole.
pub fn trims(case: &Case, layout: &Layout, piece: &Piece) -> Vec<Trim> {
    let Some((low, high)) = layout.levels.get(piece.course).copied() else { return Vec::new() };
    let band = case.region.band(low, high);
    let parts = band.connected(piece.x.0, piece.x.1);
    let Some(part) = parts.iter().find(|part| measure(part).at == piece.at) else { return Vec::new() };
    let rectangle = [piece.at, (piece.at.0 + piece.size.width, piece.at.1 + piece.size.height)];
    let mut lines: Vec<_> = sloping(part).into_iter().chain(upright(part)).collect();
    lines.retain(|line| !is_on_the_edge(*line, rectangle));
    let (x, y) = piece.at;
    let trims = joined(lines).into_iter();
    trims.map(|((xa, ya), (xb, yb))| Trim { from: (xa - x, ya - y), to: (xb - x, yb - y) }).collect()
}

type Line = (Corner, Corner);

/// The lower and upper edges of all strips.
fn sloping(part: &[Trapezoid]) -> Vec<Line> {
    let line = |x: (Ratio, Ratio), y: (Ratio, Ratio)| (spot(x.0, y.0), spot(x.1, y.1));
    part.iter().flat_map(|strip| [line(strip.x, strip.low), line(strip.x, strip.high)]).collect()
}

/// Where one slab ends or the next begins and the other has nothing.
fn upright(part: &[Trapezoid]) -> Vec<Line> {
    let mut ends: Vec<_> = part.iter().flat_map(|strip| [strip.x.0, strip.x.1]).collect();
    ends.sort_unstable();
    ends.dedup();
    ends.into_iter().flat_map(|x| upright_at(part, x)).collect()
}

fn upright_at(part: &[Trapezoid], x: Ratio) -> Vec<Line> {
    let before: Vec<_> = part.iter().filter(|strip| strip.x.1 == x).map(|strip| (strip.low.1, strip.high.1)).collect();
    let after: Vec<_> = part.iter().filter(|strip| strip.x.0 == x).map(|strip| (strip.low.0, strip.high.0)).collect();
    let mut levels: Vec<_> = before.iter().chain(&after).flat_map(|(low, high)| [*low, *high]).collect();
    levels.sort_unstable();
    levels.dedup();
    let covers = |strips: &[(Ratio, Ratio)], low: Ratio, high: Ratio| strips.iter().any(|s| s.0 <= low && high <= s.1);
    let stretches = levels.iter().zip(levels.iter().skip(1));
    stretches
        .filter(|(low, high)| covers(&before, **low, **high) != covers(&after, **low, **high))
        .map(|(low, high)| (spot(x, *low), spot(x, *high)))
        .collect()
}

fn spot(x: Ratio, y: Ratio) -> Corner {
    (x.nearest(), y.nearest())
}

/// Does a line lie on the edge of a rectangle, or come to nothing?
fn is_on_the_edge(((xa, ya), (xb, yb)): Line, [least, most]: [Corner; 2]) -> bool {
    let on = |a: i32, b: i32, edges: [i32; 2]| a == b && edges.contains(&a);
    (xa, ya) == (xb, yb) || on(xa, xb, [least.0, most.0]) || on(ya, yb, [least.1, most.1])
}

/// Lines that go on straight from one to the next become one.
fn joined(lines: Vec<Line>) -> Vec<Line> {
    let mut joined: Vec<Line> = Vec::new();
    for (from, to) in lines {
        let before = joined.iter_mut().find(|before| before.1 == from && is_straight(before.0, from, to));
        match before {
            Some(before) => before.1 = to,
            None => joined.push((from, to)),
        }
    }
    joined.sort_unstable();
    joined
}

/// Do three corners lie on one line, as far as whole sixteenths can say?
fn is_straight(a: Corner, b: Corner, c: Corner) -> bool {
    let across = |from: i32, to: i32| i64::from(to) - i64::from(from);
    let area = across(a.0, c.0) * across(a.1, b.1) - across(a.1, c.1) * across(a.0, b.0);
    let longest = across(a.0, c.0).abs().max(across(a.1, c.1).abs());
    area.abs() <= longest
}
