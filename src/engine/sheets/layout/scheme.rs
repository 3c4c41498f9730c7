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

/// Why a choice of courses was not taken apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotApart {
    /// Some run of a course cannot be covered: no layout has such courses.
    Uncoverable,
    /// It has too many kinds of pieces ([`super::limits::Limits::kinds`]): nothing is known of it.
    TooMuch,
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
    /// What follows from a choice of courses, or why nothing does.
    pub fn new(case: &Case, levels: Levels) -> Result<Self, NotApart> {
        let mut kinds = Kinds::default();
        let (mut shapes, mut courses) = (Vec::<(Signature, Shape)>::new(), Vec::new());
        for (low, high) in &levels {
            let band = case.region.band(*low, *high);
            let signature = Signature::of(&band);
            let known = shapes.iter().position(|(other, _)| signature.is_plain && *other == signature);
            courses.push(match known {
                Some(known) => known,
                None => {
                    let shape = Shape::new(case, &band, &mut kinds);
                    if kinds.in_order.len() > case.limits.kinds {
                        return Err(NotApart::TooMuch);
                    }
                    shapes.push((signature, shape.ok_or(NotApart::Uncoverable)?));
                    shapes.len() - 1
                }
            });
        }
        let shapes = shapes.into_iter().map(|(_, shape)| shape).collect();
        Ok(Self { levels, kinds: kinds.in_order, shapes, courses })
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        let runs = self.shapes.iter().flat_map(|shape| &shape.runs);
        self.kinds.len() * 8 + runs.map(|run| 48 + run.supports.len() * 24 + run.cells.len() * 100).sum::<usize>()
    }

    /// What takes no more than any of these: each piece as small as the smallest that any of
    /// them has in its place, and every cell that any of them has. Whatever is proven of it
    /// is proven of all of them. None if they are not alike enough to be one.
    pub fn least_of(all: &[Self]) -> Option<Self> {
        let (first, others) = all.split_first()?;
        let mut kinds = Kinds::default();
        let (mut shapes, mut courses) = (Vec::<Shape>::new(), Vec::new());
        for course in 0..first.courses.len() {
            let mine = first.course_shape(course)?;
            let theirs = others.iter().map(|other| other.course_shape(course)).collect::<Option<Vec<_>>>()?;
            if others.iter().any(|other| other.courses.len() != first.courses.len())
                || theirs.iter().any(|shape| !shape.is_like(mine))
            {
                return None;
            }
            let runs = (0..mine.runs.len()).map(|run| {
                let mut cells: BTreeMap<(usize, usize), Least> = BTreeMap::new();
                let of = all.iter().zip(std::iter::once(&mine).chain(&theirs));
                for (scheme, shape) in of {
                    for cell in &shape.runs.get(run)?.cells {
                        let sizes = cell.kinds.iter().filter_map(|kind| scheme.kinds.get(usize::from(*kind)).copied());
                        let least = cells.entry((cell.from, cell.to)).or_insert_with(|| Least::new(cell));
                        least.and(sizes.collect());
                    }
                }
                let supports = mine.runs.get(run)?.supports.clone();
                let cells = cells.into_values().map(|least| least.cell(&mut kinds)).collect();
                Some(Run { supports, cells })
            });
            let shape = Shape { runs: runs.collect::<Option<_>>()? };
            let known = shapes.iter().position(|other| *other == shape);
            courses.push(known.unwrap_or(shapes.len()));
            if known.is_none() {
                shapes.push(shape);
            }
            // Of more than there are numbers nothing is said.
            if kinds.in_order.len() > usize::from(u16::MAX) {
                return None;
            }
        }
        let kinds = kinds.in_order;
        Some(Self { levels: first.levels.clone(), kinds, shapes, courses })
    }

    fn course_shape(&self, course: usize) -> Option<&Shape> {
        self.courses.get(course).and_then(|shape| self.shapes.get(*shape))
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

/// A cell as small as the smallest of some.
struct Least {
    cell: Cell,
    /// The sizes of its pieces, the largest first; none before the first is known.
    sizes: Option<Vec<Kind>>,
}

impl Least {
    fn new(cell: &Cell) -> Self {
        Self { cell: cell.clone(), sizes: None }
    }

    /// Pieces in the same order that are no larger than those of either; of more on one
    /// side the smallest are left out.
    fn and(&mut self, mut sizes: Vec<Kind>) {
        sizes.sort_unstable_by_key(|size| (std::cmp::Reverse(i64::from(size.width) * i64::from(size.height)), *size));
        let least = |(one, other): (&Kind, &Kind)| Kind {
            width: one.width.min(other.width),
            height: one.height.min(other.height),
        };
        self.sizes = Some(match &self.sizes {
            None => sizes,
            Some(before) => before.iter().zip(&sizes).map(least).collect(),
        });
    }

    fn cell(self, kinds: &mut Kinds) -> Cell {
        let sizes = self.sizes.unwrap_or_default();
        Cell { kinds: sizes.into_iter().map(|kind| kinds.number(kind)).collect(), ..self.cell }
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
            // Of too many no use is made.
            (self.in_order.len() - 1) as u16
        })
    }
}

impl Shape {
    /// Does it have the same runs, over the same joists?
    fn is_like(&self, other: &Self) -> bool {
        let joists = |run: &Run| run.supports.iter().map(|support| support.joist).collect::<Vec<_>>();
        self.runs.len() == other.runs.len() && self.runs.iter().zip(&other.runs).all(|(a, b)| joists(a) == joists(b))
    }

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

impl Cell {
    /// What its pieces cost together.
    pub fn price(&self, prices: &[i64]) -> i64 {
        self.kinds.iter().filter_map(|kind| prices.get(usize::from(*kind))).sum()
    }
}

impl Run {
    /// Its cells when its joints are on these joists; none if the rules allow no such.
    pub fn cells_between(&self, joints: u128) -> Option<Vec<&Cell>> {
        let is_joint = |support: &Support| support.joist.is_none_or(|joist| joints >> joist & 1 == 1);
        let ends = self.supports.iter().enumerate().skip(1).filter(|(_, support)| is_joint(support));
        let mut from = 0;
        let cell = |(to, _): (usize, &Support)| {
            let cell = self.cells.iter().find(|cell| (cell.from, cell.to) == (from, to));
            from = to;
            cell
        };
        ends.map(cell).collect()
    }

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
            let price = cell.price(prices);
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
