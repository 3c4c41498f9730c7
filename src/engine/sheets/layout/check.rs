//! Whether a layout keeps every rule. It trusts nothing that made the layout: joints,
//! spans, pieces and cuts are worked out anew from the room and the numbers given.

use super::case::Case;
use super::plan::{Layout, Piece};
use super::region::Part;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::fmt;

/// A rule that a layout breaks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Broken {
    /// The courses do not fill the room from the lowest to the highest point, one gap
    /// apart, the inner ones as wide as a sheet and the outer ones no narrower than the
    /// least rip.
    Courses,
    /// A run of a course is not covered from end to end.
    Uncovered {
        /// The course.
        course: usize,
        /// The run.
        run: (i32, i32),
    },
    /// A cell that lies in no run.
    Astray {
        /// The course.
        course: usize,
        /// The cell.
        cell: (i32, i32),
    },
    /// A joint that is not a gap centered on a joist well inside the run.
    Joint {
        /// The course.
        course: usize,
        /// Where the cell to its left ends.
        after: i32,
    },
    /// A cell spans too few bays.
    Span {
        /// The course.
        course: usize,
        /// The cell.
        cell: (i32, i32),
    },
    /// A cell is longer than a sheet.
    TooLong {
        /// The course.
        course: usize,
        /// The cell.
        cell: (i32, i32),
    },
    /// The pieces of a cell are not what lies there.
    Pieces {
        /// The course.
        course: usize,
        /// The cell.
        cell: (i32, i32),
    },
    /// Joints of neighbouring courses are too near each other.
    Stagger {
        /// The lower course.
        course: usize,
        /// The joists.
        joists: (usize, usize),
    },
    /// A sheet's number is left out, or what is counted as on hand is not.
    EmptySheet {
        /// The number.
        sheet: usize,
    },
    /// A piece lies off its sheet.
    OffSheet {
        /// The sheet.
        sheet: usize,
    },
    /// Two pieces of a sheet are nearer than a kerf.
    Overlap {
        /// The sheet.
        sheet: usize,
    },
    /// No cuts from edge to edge free the pieces.
    NoCut {
        /// The sheet.
        sheet: usize,
    },
}

/// Everything that is wrong with a layout, or how far the saw goes at least for it.
pub fn check(case: &Case, layout: &Layout) -> Result<i64, Vec<Broken>> {
    let mut broken = Vec::new();
    if !courses_hold(case, layout) {
        return Err(vec![Broken::Courses]);
    }
    let mut joints = Vec::new();
    let mut inside = 0.0;
    for course in 0..layout.levels.len() {
        let mut of_course = BTreeSet::new();
        inside += check_course(case, layout, course, &mut of_course, &mut broken);
        joints.push(of_course);
    }
    broken.extend(too_near(case, &joints));
    let sawn = check_sheets(case, layout, &mut broken);
    if broken.is_empty() { Ok(sawn + libm::round(inside) as i64) } else { Err(broken) }
}

fn courses_hold(case: &Case, layout: &Layout) -> bool {
    let asked = &case.asked;
    let (Some(first), Some(last)) = (layout.levels.first(), layout.levels.last()) else { return false };
    let ends = (first.0, last.1) == case.region.y;
    let gaps = layout.levels.iter().zip(layout.levels.iter().skip(1)).all(|(low, high)| low.1 + asked.gap == high.0);
    let alone = layout.levels.len() == 1;
    let width = |(low, high): &(i32, i32)| high - low;
    let inner = layout.levels.iter().skip(1).take(layout.levels.len().saturating_sub(2));
    let inner = inner.map(width).all(|width| width == asked.sheet.width);
    let outer = [first, last]
        .map(width)
        .iter()
        .all(|width| *width > 0 && *width <= asked.sheet.width && (alone || *width >= asked.min_rip));
    ends && gaps && inner && outer
}

/// Checks a course; notes the joists that its joints are on, and returns how much is
/// cut out of its pieces' rectangles.
fn check_course(
    case: &Case,
    layout: &Layout,
    course: usize,
    joints: &mut BTreeSet<usize>,
    broken: &mut Vec<Broken>,
) -> f64 {
    let Some((low, high)) = layout.levels.get(course) else { return 0.0 };
    let band = case.region.band(*low, *high);
    let mut cells: BTreeMap<(i32, i32), Vec<&Piece>> = BTreeMap::new();
    for piece in layout.pieces.iter().filter(|piece| piece.course == course) {
        cells.entry(piece.x).or_default().push(piece);
    }
    let mut inside = 0.0;
    for run in band.runs() {
        let mine: Vec<_> = cells.keys().filter(|cell| cell.0 < run.1 && cell.1 > run.0).copied().collect();
        check_run(case, course, run, &mine, joints, broken);
        for cell in mine {
            let pieces = cells.remove(&cell).unwrap_or_default();
            let parts = band.parts(cell.0, cell.1);
            if !are_the_parts(&pieces, &parts) {
                broken.push(Broken::Pieces { course, cell });
            }
            inside += parts.iter().map(|part| part.inside_cut).sum::<f64>();
        }
    }
    broken.extend(cells.into_keys().map(|cell| Broken::Astray { course, cell }));
    inside
}

fn are_the_parts(pieces: &[&Piece], parts: &[Part]) -> bool {
    let mut have: Vec<_> = pieces.iter().map(|piece| (piece.at, piece.size.width, piece.size.height)).collect();
    let mut want: Vec<_> = parts.iter().map(|part| (part.at, part.width, part.height)).collect();
    have.sort_unstable();
    want.sort_unstable();
    have == want
}

fn check_run(
    case: &Case,
    course: usize,
    run: (i32, i32),
    cells: &[(i32, i32)],
    joints: &mut BTreeSet<usize>,
    broken: &mut Vec<Broken>,
) {
    let asked = &case.asked;
    let (Some(first), Some(last)) = (cells.first(), cells.last()) else {
        broken.push(Broken::Uncovered { course, run });
        return;
    };
    if (first.0, last.1) != run {
        broken.push(Broken::Uncovered { course, run });
    }
    let may_carry = |x: i32| run.0 + asked.joist_width <= x && x <= run.1 - asked.joist_width;
    let bays = 1 + asked.joists.iter().filter(|x| may_carry(**x)).count();
    for (left, right) in cells.iter().zip(cells.iter().skip(1)) {
        let middle = left.1 + asked.gap / 2;
        let joist = asked.joists.iter().position(|x| *x == middle && may_carry(*x));
        match joist.filter(|_| right.0 - left.1 == asked.gap) {
            Some(joist) => _ = joints.insert(joist),
            None => broken.push(Broken::Joint { course, after: left.1 }),
        }
    }
    for cell in cells {
        // Where joists have no width, one can carry the very end of a run: a bay of
        // nothing lies beyond it, and is the end cell's. Bays are counted from joint to
        // joint, however wide their gaps.
        let from = if cell.0 == run.0 { i32::MIN } else { cell.0 - asked.gap / 2 };
        let to = if cell.1 == run.1 { i32::MAX } else { cell.1 + asked.gap / 2 };
        let spans = 1 + asked.joists.iter().filter(|x| may_carry(**x) && from < **x && **x < to).count();
        if spans < asked.min_bays.min(bays) {
            broken.push(Broken::Span { course, cell: *cell });
        }
        if cell.1 - cell.0 > asked.sheet.length {
            broken.push(Broken::TooLong { course, cell: *cell });
        }
    }
}

fn too_near(case: &Case, joints: &[BTreeSet<usize>]) -> Vec<Broken> {
    let neighbours = joints.iter().zip(joints.iter().skip(1)).enumerate();
    let pairs = neighbours
        .flat_map(|(course, (low, high))| low.iter().flat_map(move |a| high.iter().map(move |b| (course, (*a, *b)))));
    let near = pairs.filter(|(_, (a, b))| a.abs_diff(*b) < case.asked.stagger);
    near.map(|(course, joists)| Broken::Stagger { course, joists }).collect()
}

/// A rectangle: left, low, right, high.
type Rectangle = (i32, i32, i32, i32);

fn check_sheets(case: &Case, layout: &Layout, broken: &mut Vec<Broken>) -> i64 {
    let asked = &case.asked;
    let mut sheets: BTreeMap<usize, Vec<Rectangle>> = BTreeMap::new();
    for piece in &layout.pieces {
        let ((x, y), size) = (piece.on_sheet, piece.size);
        sheets.entry(piece.sheet).or_default().push((x, y, x + size.width, y + size.height));
    }
    let count = sheets.last_key_value().map_or(0, |(last, _)| last + 1).max(layout.cuttings.len());
    let empty = (asked.on_hand.len()..count).filter(|sheet| !sheets.contains_key(sheet));
    let miscounted = (layout.on_hand != asked.on_hand.len()).then_some(layout.on_hand);
    broken.extend(empty.chain(miscounted).map(|sheet| Broken::EmptySheet { sheet }));
    let mut sawn = 0;
    for (sheet, mut pieces) in sheets {
        let blank = asked.on_hand.get(sheet).unwrap_or(&asked.sheet);
        let whole = (0, 0, blank.length, blank.width);
        pieces.sort_unstable();
        let is_off = |p: &Rectangle| p.0 < 0 || p.1 < 0 || p.2 > whole.2 || p.3 > whole.3;
        let pairs = pieces.iter().enumerate().flat_map(|(n, a)| pieces.iter().skip(n + 1).map(move |b| (a, b)));
        if pieces.iter().any(is_off) {
            broken.push(Broken::OffSheet { sheet });
        } else if pairs.into_iter().any(|(a, b)| !are_apart(a, b, asked.kerf)) {
            broken.push(Broken::Overlap { sheet });
        } else {
            match least_sawing(whole, &pieces, asked.kerf, &mut HashMap::new()) {
                Some(length) => sawn += length,
                None => broken.push(Broken::NoCut { sheet }),
            }
        }
    }
    sawn
}

fn are_apart(a: &Rectangle, b: &Rectangle, kerf: i32) -> bool {
    a.2 + kerf <= b.0 || b.2 + kerf <= a.0 || a.3 + kerf <= b.1 || b.3 + kerf <= a.1
}

/// The shortest cuts from edge to edge that free all pieces of a rectangle, if any do.
/// A cut begins where a piece ends, or ends where one begins: others are no shorter.
fn least_sawing(
    whole: Rectangle,
    pieces: &[Rectangle],
    kerf: i32,
    known: &mut HashMap<(Rectangle, Vec<Rectangle>), Option<i64>>,
) -> Option<i64> {
    if pieces.is_empty() || pieces == [whole] {
        return Some(0);
    }
    let key = (whole, pieces.to_vec());
    if let Some(length) = known.get(&key) {
        return *length;
    }
    let (x0, y0, x1, y1) = whole;
    let mut least: Option<i64> = None;
    let ends = |low: i32, high: i32, extent: &dyn Fn(&Rectangle) -> (i32, i32)| {
        let after = pieces.iter().map(extent).filter(|piece| piece.1 < high).map(|piece| piece.1);
        let before = pieces.iter().map(extent).filter(|piece| piece.0 > low).map(|piece| piece.0 - kerf);
        after.chain(before).collect::<BTreeSet<_>>()
    };
    for at in ends(x0, x1, &|p| (p.0, p.2)) {
        let parted = part(pieces, |p| p.2 <= at, |p| p.0 >= at + kerf);
        least = shorter(least, i64::from(y1 - y0), parted, (x0, y0, at, y1), (at + kerf, y0, x1, y1), kerf, known);
    }
    for at in ends(y0, y1, &|p| (p.1, p.3)) {
        let parted = part(pieces, |p| p.3 <= at, |p| p.1 >= at + kerf);
        least = shorter(least, i64::from(x1 - x0), parted, (x0, y0, x1, at), (x0, at + kerf, x1, y1), kerf, known);
    }
    known.insert(key, least);
    least
}

/// The pieces on either side of a cut; none if it goes through one.
fn part(
    pieces: &[Rectangle],
    is_before: impl Fn(&Rectangle) -> bool,
    is_behind: impl Fn(&Rectangle) -> bool,
) -> Option<(Vec<Rectangle>, Vec<Rectangle>)> {
    let (before, others): (Vec<_>, Vec<_>) = pieces.iter().partition(|piece| is_before(piece));
    others.iter().all(&is_behind).then_some((before, others))
}

fn shorter(
    least: Option<i64>,
    cut: i64,
    parted: Option<(Vec<Rectangle>, Vec<Rectangle>)>,
    before: Rectangle,
    behind: Rectangle,
    kerf: i32,
    known: &mut HashMap<(Rectangle, Vec<Rectangle>), Option<i64>>,
) -> Option<i64> {
    let further = || {
        let (one, other) = parted?;
        let one = least_sawing(before, &one, kerf, known)?;
        Some(cut + one + least_sawing(behind, &other, kerf, known)?)
    };
    further().into_iter().chain(least).min()
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Courses => write!(f, "the courses do not fill the room by the rules"),
            Self::Uncovered { course, run } => write!(f, "course {course} does not cover {} to {}", run.0, run.1),
            Self::Astray { course, cell } => {
                write!(f, "course {course} has pieces from {} to {} off the floor", cell.0, cell.1)
            }
            Self::Joint { course, after } => write!(f, "course {course} has a joint at {after} that no joist carries"),
            Self::Span { course, cell } => write!(f, "course {course}: {} to {} spans too few bays", cell.0, cell.1),
            Self::TooLong { course, cell } => {
                write!(f, "course {course}: {} to {} is longer than a sheet", cell.0, cell.1)
            }
            Self::Pieces { course, cell } => {
                write!(f, "course {course}: the pieces from {} to {} are not what lies there", cell.0, cell.1)
            }
            Self::Stagger { course, joists } => {
                write!(f, "joints of courses {course} and {} are on joists {} and {}", course + 1, joists.0, joists.1)
            }
            Self::EmptySheet { sheet } => write!(f, "nothing is cut from sheet {sheet}"),
            Self::OffSheet { sheet } => write!(f, "a piece lies off sheet {sheet}"),
            Self::Overlap { sheet } => write!(f, "pieces on sheet {sheet} overlap or leave no kerf"),
            Self::NoCut { sheet } => write!(f, "sheet {sheet} cannot be cut from edge to edge"),
        }
    }
}
