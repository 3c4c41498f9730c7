//! What a piece is like that is no rectangle, and what is cut off it: where a wall slants
//! or has a corner.

use super::case::Case;
use super::plan::{Layout, Piece};
use super::ratio::Ratio;
use super::region::{Corner, Trapezoid, measure};

/// An edge of a piece, and often a line along which it is trimmed: from the lower left
/// corner of its rectangle, to the nearest sixteenth. From left to right, and upwards
/// where it is upright.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Trim {
    /// From here.
    pub from: Corner,
    /// To here.
    pub to: Corner,
}

/// What a piece is like, in sixteenths from the lower left corner of its rectangle.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Form {
    /// Strips that cover it, each by its corners in turn.
    pub strips: Vec<[Corner; 4]>,
    /// All around it.
    pub edges: Vec<Trim>,
    /// Those of them that are no edge of its rectangle, nor within a sixteenth of one:
    /// where it is trimmed to the outline or around a hole.
    pub trims: Vec<Trim>,
}

/// What a piece of a layout is like.
pub fn form(case: &Case, layout: &Layout, piece: &Piece) -> Form {
    let Some((low, high)) = layout.levels.get(piece.course).copied() else { return Form::default() };
    let band = case.region.band(low, high);
    let parts = band.connected(piece.x.0, piece.x.1);
    let Some(part) = parts.iter().find(|part| measure(part).at == piece.at) else { return Form::default() };
    let from_corner = |(x, y): Corner| (x - piece.at.0, y - piece.at.1);
    let lines = sloping(part).into_iter().chain(upright(part));
    let lines = lines.map(|(from, to)| (from_corner(from), from_corner(to))).filter(|(from, to)| from != to);
    let edges = joined(lines.collect());
    let size = (piece.size.width, piece.size.height);
    let trims = edges.iter().copied().filter(|line| !is_on_the_edge(*line, size));
    let strips = part.iter().map(|strip| corners(strip).map(from_corner));
    Form { strips: strips.collect(), trims: trims.collect(), edges }
}

fn corners(strip: &Trapezoid) -> [Corner; 4] {
    let (left, right) = strip.x;
    [spot(left, strip.low.0), spot(right, strip.low.1), spot(right, strip.high.1), spot(left, strip.high.0)]
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

/// Does a line lie on the edge of a rectangle, as far as a saw can tell?
fn is_on_the_edge(line: Trim, (width, height): Corner) -> bool {
    let near = |a: i32, b: i32, edge: i32| (a - edge).abs() <= 1 && (b - edge).abs() <= 1;
    let (from, to) = (line.from, line.to);
    near(from.0, to.0, 0) || near(from.0, to.0, width) || near(from.1, to.1, 0) || near(from.1, to.1, height)
}

/// Lines that go on straight from one to the next become one.
fn joined(lines: Vec<Line>) -> Vec<Trim> {
    let mut joined: Vec<Line> = Vec::new();
    for (from, to) in lines {
        let before = joined.iter_mut().find(|before| before.1 == from && is_straight(before.0, from, to));
        match before {
            Some(before) => before.1 = to,
            None => joined.push((from, to)),
        }
    }
    joined.sort_unstable();
    joined.into_iter().map(|(from, to)| Trim { from, to }).collect()
}

/// Do three corners lie on one line, as far as whole sixteenths can say?
fn is_straight(a: Corner, b: Corner, c: Corner) -> bool {
    let across = |from: i32, to: i32| i64::from(to) - i64::from(from);
    let area = across(a.0, c.0) * across(a.1, b.1) - across(a.1, c.1) * across(a.0, b.0);
    let longest = across(a.0, c.0).abs().max(across(a.1, c.1).abs());
    area.abs() <= longest
}
