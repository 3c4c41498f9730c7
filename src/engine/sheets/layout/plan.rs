//! A layout that can be built: every piece, where it lies, and where it is cut from.

use super::case::Case;
use super::courses::Levels;
use super::cutting::{Cutting, shortest};
use super::fit::Fit;
use super::options::JointSet;
use super::region::Corner;
use super::scheme::{Kind, Scheme};
use std::collections::BTreeMap;
use std::rc::Rc;

/// A layout and its cutting.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// The courses, from the lowest up.
    pub levels: Levels,
    /// The pieces, course by course from left to right.
    pub pieces: Vec<Piece>,
    /// How each piece on hand is cut, and then each sheet.
    pub cuttings: Vec<Rc<Cutting>>,
    /// How many of those were on hand.
    pub on_hand: usize,
    /// How far the saw goes: all cuts across sheets and what is cut out of rectangles.
    pub cut: i64,
}

/// A piece of sheet on the floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Piece {
    /// Its course, from the lowest up.
    pub course: usize,
    /// From joint to joint.
    pub x: (i32, i32),
    /// Its bounding rectangle's lower left corner in the room.
    pub at: Corner,
    /// Its bounding rectangle's size.
    pub size: Kind,
    /// What it is cut from, among the cuttings.
    pub sheet: usize,
    /// Its rectangle's lower left corner on that sheet.
    pub on_sheet: Corner,
}

impl Layout {
    /// How many sheets it takes.
    pub fn sheets(&self) -> u32 {
        (self.cuttings.len() - self.on_hand) as u32
    }

    /// Fewer sheets come first, then fewer pieces, then less sawing.
    pub fn rank(&self) -> (u32, usize, i64) {
        (self.sheets(), self.pieces.len(), self.cut)
    }

    /// Puts joints and filled sheets together. None if they do not belong together, or no
    /// cutting of some sheet was found again: that says nothing about whether there is one.
    pub fn new(case: &Case, scheme: &Scheme, joints: &[JointSet], filled: &[Vec<u16>]) -> Option<Self> {
        let mut sheets_of: BTreeMap<u16, Vec<usize>> = BTreeMap::new();
        for (sheet, kind) in
            filled.iter().enumerate().flat_map(|(sheet, kinds)| kinds.iter().map(move |kind| (sheet, kind)))
        {
            sheets_of.entry(*kind).or_default().push(sheet);
        }
        let mut cells = Vec::new();
        for (course, (joints, shape)) in joints.iter().zip(scheme.course_shapes()).enumerate() {
            for run in &shape.runs {
                for cell in run.cells_between(*joints)? {
                    let sheets = cell.kinds.iter().map(|kind| sheets_of.get_mut(kind)?.pop()).collect::<Option<_>>()?;
                    cells.push(Placed { course, x: cell.x, sheets });
                }
            }
        }
        Self::of_cells(case, scheme.levels.clone(), &cells)
    }

    /// The same joints and the same pieces on each sheet, with courses that lie otherwise.
    /// None if the pieces are then others, or do not come out of their sheets.
    pub fn moved(&self, case: &Case, levels: &Levels) -> Option<Self> {
        let same_cell = |a: &Piece, b: &Piece| (a.course, a.x) == (b.course, b.x);
        let cells = self.pieces.chunk_by(same_cell).filter_map(|pieces| {
            let first = pieces.first()?;
            Some(Placed { course: first.course, x: first.x, sheets: pieces.iter().map(|piece| piece.sheet).collect() })
        });
        Self::of_cells(case, levels.clone(), &cells.collect::<Vec<_>>())
    }

    fn of_cells(case: &Case, levels: Levels, cells: &[Placed]) -> Option<Self> {
        let bands: Vec<_> = levels.iter().map(|(low, high)| case.region.band(*low, *high)).collect();
        let (mut pieces, mut inside) = (Vec::new(), 0.0);
        for cell in cells {
            let parts = bands.get(cell.course)?.parts(cell.x.0, cell.x.1);
            if parts.len() != cell.sheets.len() {
                return None;
            }
            for (part, sheet) in parts.iter().zip(&cell.sheets) {
                let size = Kind { width: part.width, height: part.height };
                let (course, x) = (cell.course, cell.x);
                pieces.push(Piece { course, x, at: part.at, size, sheet: *sheet, on_sheet: (0, 0) });
                inside += part.inside_cut;
            }
        }
        let (sawn, cuttings) = cut_all(case, &mut pieces)?;
        let on_hand = case.asked.on_hand.len();
        Some(Self { levels, pieces, cuttings, on_hand, cut: sawn + libm::round(inside) as i64 })
    }
}

/// A cell, and the sheet that each of its pieces is cut from.
struct Placed {
    course: usize,
    x: (i32, i32),
    sheets: Vec<usize>,
}

/// Cuts every sheet the shortest way and says where on it each piece lies. None if the
/// pieces of some sheet do not come out of it.
fn cut_all(case: &Case, pieces: &mut [Piece]) -> Option<(i64, Vec<Rc<Cutting>>)> {
    let mut sizes: Vec<_> = pieces.iter().map(|piece| piece.size).collect();
    sizes.sort_unstable();
    sizes.dedup();
    let kind_of = |size: Kind| sizes.partition_point(|other| *other < size) as u16;
    let mut fit = Fit::new(case, &sizes);
    let sheets = pieces.iter().map(|piece| piece.sheet + 1).max()?;
    let (mut sawn, mut cuttings) = (0, Vec::with_capacity(sheets));
    for sheet in 0..sheets.max(fit.on_hand()) {
        let mut mine: Vec<_> = pieces.iter_mut().filter(|piece| piece.sheet == sheet).collect();
        let mut kinds: Vec<_> = mine.iter().map(|piece| kind_of(piece.size)).collect();
        kinds.sort_unstable();
        let blank = fit.blank(sheet);
        let (way, cutting) = shortest(&mut fit, case.asked.kerf, &kinds, blank)?;
        let mut spots = Spots::new();
        place(&cutting, (0, 0), case.asked.kerf, &mut |kind, at| spots.entry(kind).or_default().push(at));
        for piece in &mut mine {
            piece.on_sheet = spots.get_mut(&kind_of(piece.size))?.pop()?;
        }
        sawn += way;
        cuttings.push(cutting);
    }
    Some((sawn, cuttings))
}

/// Where each kind is on a sheet.
type Spots = BTreeMap<u16, Vec<Corner>>;

/// Tells of every piece of a cutting, and of its lower left corner.
fn place(cutting: &Cutting, (x, y): Corner, kerf: i32, tell: &mut dyn FnMut(u16, Corner)) {
    match cutting {
        Cutting::Offcut => {}
        Cutting::Piece(kind) => tell(*kind, (x, y)),
        Cutting::Crosscut { at, parts: [left, right] } => {
            place(left, (x, y), kerf, tell);
            place(right, (x + at + kerf, y), kerf, tell);
        }
        Cutting::Rip { at, parts: [low, high] } => {
            place(low, (x, y), kerf, tell);
            place(high, (x, y + at + kerf), kerf, tell);
        }
    }
}
