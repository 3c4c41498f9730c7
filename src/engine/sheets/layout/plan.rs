//! A layout that can be built: every piece, where it lies, and where it is cut from.

use super::case::Case;
use super::courses::Levels;
use super::cutting::{Cutting, shortest};
use super::fit::Fit;
use super::options::Ways;
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
    /// How each sheet is cut.
    pub cuttings: Vec<Rc<Cutting>>,
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
    /// Its sheet.
    pub sheet: usize,
    /// Its rectangle's lower left corner on that sheet.
    pub on_sheet: Corner,
}

impl Layout {
    /// How many sheets it takes.
    pub fn sheets(&self) -> u32 {
        self.cuttings.len() as u32
    }

    /// Fewer sheets come first, then fewer pieces, then less sawing.
    pub fn rank(&self) -> (u32, usize, i64) {
        (self.sheets(), self.pieces.len(), self.cut)
    }

    /// Puts joints and filled sheets together. None if they do not belong together.
    pub fn new(
        case: &Case,
        scheme: &Scheme,
        ways: &Ways,
        joints: &[u32],
        filled: &[Vec<u16>],
        fit: &mut Fit,
    ) -> Option<Self> {
        let kerf = case.asked.kerf;
        let mut spots = Spots::new();
        let mut cuttings = Vec::new();
        let mut cut = 0;
        for (sheet, kinds) in filled.iter().enumerate() {
            let (way, cutting) = shortest(fit, kerf, kinds);
            cut += way;
            place(&cutting, (0, 0), kerf, &mut |kind, at| spots.entry(kind).or_default().push((sheet, at)));
            cuttings.push(cutting);
        }
        let mut pieces = Vec::new();
        let mut inside = 0.0;
        for (course, (way, shape)) in joints.iter().zip(scheme.course_shapes()).enumerate() {
            let (low, high) = *scheme.levels.get(course)?;
            let band = case.region.band(low, high);
            let way = ways.of_course(course).get(*way as usize)?;
            for (run, cell) in &way.cells {
                let cell = shape.runs.get(usize::from(*run))?.cells.get(usize::from(*cell))?;
                for (part, kind) in band.parts(cell.x.0, cell.x.1).iter().zip(&cell.kinds) {
                    let (sheet, on_sheet) = spots.get_mut(kind)?.pop()?;
                    let size = Kind { width: part.width, height: part.height };
                    pieces.push(Piece { course, x: cell.x, at: part.at, size, sheet, on_sheet });
                    inside += part.inside_cut;
                }
            }
        }
        Some(Self { levels: scheme.levels.clone(), pieces, cuttings, cut: cut + libm::round(inside) as i64 })
    }
}

/// Where each kind is on the sheets.
type Spots = BTreeMap<u16, Vec<(usize, Corner)>>;

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
