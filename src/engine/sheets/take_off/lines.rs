//! The lines along which a piece bears: its ends, the joists between them, and its
//! edges across the joists.

use crate::engine::job::SheetEdge;
use crate::engine::sheets::cut_list::Numbered;
use crate::engine::sheets::layout::{Case, Corner};

/// A line under a piece. Lengths and places in sixteenths.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Line {
    /// An end, on half a joist or beside a wall.
    End(i32),
    /// A joist between the ends.
    Inner(i32),
    /// The part of an edge across the joists that lies between two of them, or between
    /// one and the wall. It needs a block.
    Open(Bay),
    /// An edge across the joists that is held by a tongue in a groove. Each such seam
    /// is listed once, by the piece above it.
    Tongued(i32),
}

/// Between two joists, or between one and the wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Bay {
    /// From the center of a joist or from a wall.
    pub from: i32,
    /// To the next.
    pub to: i32,
    /// How high in the layout.
    pub y: i32,
    /// What is free between them.
    pub clear: i32,
}

/// Every line under a piece.
pub fn lines_of(case: &Case, piece: &Numbered, edge: SheetEdge) -> Vec<Line> {
    let at = piece.piece.at;
    let shift = |(x, y): Corner| (x + at.0, y + at.1);
    let mut lines = inner(case, piece);
    for trim in &piece.form.edges {
        let (from, to) = (shift(trim.from), shift(trim.to));
        let (run, rise) = ((to.0 - from.0).abs(), (to.1 - from.1).abs());
        let length = libm::round(libm::hypot(f64::from(run), f64::from(rise)));
        #[expect(clippy::cast_possible_truncation, reason = "no longer than two sheets")]
        let length = length as i32;
        if rise > run {
            lines.push(Line::End(length));
        } else if edge == SheetEdge::TongueAndGroove && is_seam(case, piece, from, to) {
            if from.1 == at.1 {
                lines.push(Line::Tongued(length));
            }
        } else {
            lines.extend(bays(case, from, to).into_iter().map(Line::Open));
        }
    }
    lines
}

/// The joists under a piece but for its ends.
fn inner(case: &Case, piece: &Numbered) -> Vec<Line> {
    let (left, right) = piece.piece.x;
    let half = case.asked.gap / 2;
    let joists = case.asked.joists.iter().filter(|joist| left < **joist - half && **joist + half < right);
    let under = joists.flat_map(|joist| {
        let x = *joist - piece.piece.at.0;
        piece
            .form
            .strips
            .iter()
            .filter(move |[low, end, ..]| low.0 <= x && x < end.0)
            .map(move |strip| height(strip, x))
    });
    under.filter(|height| *height > 0).map(Line::Inner).collect()
}

/// How high a strip is at an x in it.
fn height([low, low_end, high_end, high]: &[Corner; 4], x: i32) -> i32 {
    let at = |from: Corner, to: Corner| {
        let run = i64::from(to.0 - from.0).max(1);
        i64::from(from.1) + i64::from(to.1 - from.1) * i64::from(x - from.0) / run
    };
    i32::try_from(at(*high, *high_end) - at(*low, *low_end)).unwrap_or(0)
}

/// Does an edge lie between two courses?
fn is_seam(case: &Case, piece: &Numbered, from: Corner, to: Corner) -> bool {
    let at = piece.piece.at.1;
    let (low, high) = case.region.y;
    let ends = [at, at + piece.piece.size.height];
    from.1 == to.1 && ends.contains(&from.1) && from.1 != low && from.1 != high
}

/// The bays that an edge crosses. An end of it lies on a joist or else at a wall.
fn bays(case: &Case, from: Corner, to: Corner) -> Vec<Bay> {
    let supports = supports(case, from.0.min(to.0), from.0.max(to.0));
    let level = |x: i32| from.1 + (to.1 - from.1) * (x - from.0) / (to.0 - from.0).max(1);
    let pairs = supports.iter().zip(supports.iter().skip(1));
    let bays = pairs.map(|((from, half), (to, other_half))| {
        let clear = (to - other_half) - (from + half);
        Bay { from: *from, to: *to, y: level(i32::midpoint(*from, *to)), clear }
    });
    bays.filter(|bay| bay.clear > 0).collect()
}

/// What carries an edge, with half its thickness: its ends, and the joists in between.
fn supports(case: &Case, left: i32, right: i32) -> Vec<(i32, i32)> {
    let half = case.asked.joist_width / 2;
    let joists = &case.asked.joists;
    let near = |end: i32| joists.iter().copied().find(|joist| (joist - end).abs() <= half + case.asked.gap);
    let end = |end: i32| near(end).map_or((end, 0), |joist| (joist, half));
    let between = joists.iter().filter(|joist| left < **joist && **joist < right).map(|joist| (*joist, half));
    let mut supports: Vec<_> = [end(left)].into_iter().chain(between).chain([end(right)]).collect();
    supports.dedup_by_key(|support| support.0);
    supports
}
