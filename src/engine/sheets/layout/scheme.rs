//! One choice of courses, with everything that can be cut for it: where joints may
//! be, and which pieces lie between them.

use super::case::Case;
use super::courses::Levels;
use super::region::Band;
use std::collections::BTreeMap;

/// One choice of courses and what follows from it.
#[derive(Debug, Clone)]
pub struct Scheme {
    /// The courses' levels.
    pub levels: Levels,
    /// Every size of piece.
    pub kinds: Vec<Kind>,
    /// Courses told apart by how they can be cut.
    pub shapes: Vec<Shape>,
    /// The shape of each course.
    pub courses: Vec<usize>,
}

/// A size of piece: its bounding rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Kind {
    /// Along the sheet.
    pub width: i32,
    /// Across it.
    pub height: i32,
}

/// How a course can be cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shape {
    /// Its runs, from left to right.
    pub runs: Vec<Run>,
}

/// A stretch of a course without a break.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// What carries it: both ends, and every joist that a joint may lie on.
    pub supports: Vec<Support>,
    /// Every cell that the rules allow, by where it begins.
    pub cells: Vec<Cell>,
}

/// An end of a run, or a joist under it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Support {
    /// Where.
    pub x: i32,
    /// Which joist; none for an end.
    pub joist: Option<usize>,
}

/// What lies between two joints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// The support it begins at.
    pub from: usize,
    /// The support it ends at.
    pub to: usize,
    /// Its extent.
    pub x: (i32, i32),
    /// The kinds of its pieces.
    pub kinds: Vec<u16>,
}

impl Scheme {
    /// What follows from a choice of courses; none if some run cannot be covered.
    pub fn new(case: &Case, levels: Levels) -> Option<Self> {
        let mut kinds = Kinds::default();
        let (mut shapes, mut courses) = (Vec::<(Signature, Shape)>::new(), Vec::new());
        for (low, high) in &levels {
            let band = case.region.band(*low, *high);
            let signature = Signature::of(&band);
            let known = shapes.iter().position(|(other, _)| signature.is_plain && *other == signature);
            courses.push(match known {
                Some(known) => known,
                None => {
                    shapes.push((signature, Shape::new(case, &band, &mut kinds)?));
                    shapes.len() - 1
                }
            });
        }
        let shapes = shapes.into_iter().map(|(_, shape)| shape).collect();
        Some(Self { levels, kinds: kinds.in_order, shapes, courses })
    }

    /// The cheapest pieces that cover every course, whatever its neighbours do: their
    /// price, and their kinds in order.
    pub fn cheapest(&self, prices: &[i64]) -> (i64, Vec<u16>) {
        let by_shape: Vec<_> = self.shapes.iter().map(|shape| shape.cheapest(prices)).collect();
        let courses = self.courses.iter().filter_map(|shape| by_shape.get(*shape));
        let (mut price, mut kinds) = (0, Vec::new());
        for (of_course, pieces) in courses {
            price += of_course;
            kinds.extend(pieces);
        }
        kinds.sort_unstable();
        (price, kinds)
    }

    /// The shape of each course in turn.
    pub fn course_shapes(&self) -> impl Iterator<Item = &Shape> {
        self.courses.iter().filter_map(|shape| self.shapes.get(*shape))
    }
}

/// Two plain bands (nothing but whole strips) with one signature are cut alike.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Signature {
    is_plain: bool,
    height: i32,
    runs: Vec<(i32, i32)>,
}

impl Signature {
    fn of(band: &Band) -> Self {
        let strips = band.shape();
        let is_plain = strips.iter().all(|(_, _, strips)| strips.iter().all(|strip| *strip == (None, None)));
        Self { is_plain, height: band.high - band.low, runs: band.runs() }
    }
}

#[derive(Debug, Default)]
struct Kinds {
    in_order: Vec<Kind>,
    numbers: BTreeMap<Kind, u16>,
}

impl Kinds {
    fn number(&mut self, kind: Kind) -> u16 {
        *self.numbers.entry(kind).or_insert_with(|| {
            self.in_order.push(kind);
            (self.in_order.len() - 1) as u16
        })
    }
}

impl Shape {
    fn cheapest(&self, prices: &[i64]) -> (i64, Vec<u16>) {
        let runs = self.runs.iter().map(|run| run.cheapest(prices));
        runs.fold((0, Vec::new()), |(price, mut kinds), (more, further)| {
            kinds.extend(further);
            (price + more, kinds)
        })
    }

    fn new(case: &Case, band: &Band, kinds: &mut Kinds) -> Option<Self> {
        let runs = band.runs().into_iter().map(|ends| Run::new(case, band, ends, kinds));
        Some(Self { runs: runs.collect::<Option<_>>()? })
    }
}

impl Run {
    fn new(case: &Case, band: &Band, (left, right): (i32, i32), kinds: &mut Kinds) -> Option<Self> {
        let supports = supports(case, left, right);
        let bays = supports.len() - 1;
        let fewest = case.asked.min_bays.min(bays).max(1);
        let mut cells = Vec::new();
        for (from, start) in supports.iter().enumerate() {
            for (to, end) in supports.iter().enumerate().skip(from + fewest) {
                let x = extent(case, *start, *end);
                if x.1 - x.0 > case.asked.sheet.length {
                    break;
                }
                cells.push((from, to, x));
            }
        }
        let useful = useful(&cells, bays);
        let cells = cells.into_iter().zip(useful).filter(|(_, useful)| *useful).filter_map(|((from, to, x), _)| {
            let parts = if x.0 < x.1 { band.parts(x.0, x.1) } else { Vec::new() };
            let kinds = parts.iter().map(|part| kinds.number(Kind { width: part.width, height: part.height }));
            let kinds: Vec<_> = kinds.collect();
            (!kinds.is_empty()).then_some(Cell { from, to, x, kinds })
        });
        let cells: Vec<_> = cells.collect();
        let (first, last) = (cells.iter().any(|cell| cell.from == 0), cells.iter().any(|cell| cell.to == bays));
        (first && last).then_some(Self { supports, cells })
    }

    /// The cheapest row of cells from end to end.
    fn cheapest(&self, prices: &[i64]) -> (i64, Vec<u16>) {
        let mut best: Vec<Option<(i64, usize)>> = vec![None; self.supports.len()];
        if let Some(start) = best.first_mut() {
            *start = Some((0, 0));
        }
        // Cells are in order of where they begin, so what leads there is settled.
        for (number, cell) in self.cells.iter().enumerate() {
            let price = cell.kinds.iter().filter_map(|kind| prices.get(usize::from(*kind))).sum::<i64>();
            let Some(Some((before, _))) = best.get(cell.from).copied() else { continue };
            if let Some(end) = best.get_mut(cell.to)
                && end.is_none_or(|(known, _)| before + price < known)
            {
                *end = Some((before + price, number));
            }
        }
        let (mut kinds, mut at) = (Vec::new(), self.bays());
        while at > 0 {
            let Some(cell) = best.get(at).copied().flatten().and_then(|(_, number)| self.cells.get(number)) else {
                break;
            };
            kinds.extend(&cell.kinds);
            at = cell.from;
        }
        (best.last().copied().flatten().map_or(0, |(price, _)| price), kinds)
    }

    /// How many bays it has.
    pub fn bays(&self) -> usize {
        self.supports.len().saturating_sub(1)
    }
}

fn supports(case: &Case, left: i32, right: i32) -> Vec<Support> {
    let inner = left + case.asked.joist_width..=right - case.asked.joist_width;
    let joists = case.asked.joists.iter().enumerate().filter(|(_, x)| inner.contains(x));
    let joists = joists.map(|(joist, x)| Support { x: *x, joist: Some(joist) });
    let end = |x| Support { x, joist: None };
    std::iter::once(end(left)).chain(joists).chain(std::iter::once(end(right))).collect()
}

/// From one support to another, less half a gap at each that is a joint.
fn extent(case: &Case, start: Support, end: Support) -> (i32, i32) {
    let half = |support: Support| if support.joist.is_some() { case.asked.gap / 2 } else { 0 };
    (start.x + half(start), end.x - half(end))
}

/// Which cells lie on some way from end to end.
fn useful(cells: &[(usize, usize, (i32, i32))], bays: usize) -> Vec<bool> {
    let mut reached = vec![false; bays + 1];
    let mut leads = vec![false; bays + 1];
    let is_set = |flags: &[bool], at: usize| flags.get(at).copied().unwrap_or_default();
    let set = |flags: &mut [bool], at: usize| {
        if let Some(flag) = flags.get_mut(at) {
            *flag = true;
        }
    };
    set(&mut reached, 0);
    set(&mut leads, bays);
    // Cells are in order of where they begin, so one pass each way is enough.
    for (from, to, _) in cells {
        if is_set(&reached, *from) {
            set(&mut reached, *to);
        }
    }
    for (from, to, _) in cells.iter().rev() {
        if is_set(&leads, *to) {
            set(&mut leads, *from);
        }
    }
    cells.iter().map(|(from, to, _)| is_set(&reached, *from) && is_set(&leads, *to)).collect()
}
