//! The files that cases and solutions are exchanged in.

use duckboard::engine::sheets::layout::{Case, Fault, Layout, Request, Sheet};
use serde::{Deserialize, Serialize};

/// A case as it stands in a file. Sixteenths of an inch throughout.
#[derive(Debug, Deserialize)]
pub struct CaseFile {
    pub id: String,
    outline: Vec<(i32, i32)>,
    #[serde(default)]
    holes: Vec<Vec<(i32, i32)>>,
    joists: Vec<i32>,
    joist_width: i32,
    sheet: SheetSize,
    gap: i32,
    kerf: i32,
    min_rip: i32,
    min_bays: usize,
    stagger_joists: usize,
}

#[derive(Debug, Deserialize)]
struct SheetSize {
    length: i32,
    width: i32,
}

impl CaseFile {
    /// The case, ready to be worked on.
    pub fn case(&self) -> Result<Case, Vec<Fault>> {
        Case::new(Request {
            outline: self.outline.clone(),
            holes: self.holes.clone(),
            joists: self.joists.clone(),
            joist_width: self.joist_width,
            sheet: Sheet { length: self.sheet.length, width: self.sheet.width },
            gap: self.gap,
            kerf: self.kerf,
            min_rip: self.min_rip,
            min_bays: self.min_bays,
            stagger: self.stagger_joists,
        })
    }
}

/// A layout as it goes into a file.
#[derive(Debug, Serialize)]
pub struct SolutionFile<'a> {
    id: &'a str,
    sheets: u32,
    pieces: Vec<PieceRow>,
}

#[derive(Debug, Serialize)]
struct PieceRow {
    course: usize,
    x0: i32,
    y0: i32,
    x1: i32,
    y1: i32,
    sheet: usize,
    sx: i32,
    sy: i32,
    w: i32,
    h: i32,
}

impl<'a> SolutionFile<'a> {
    /// Writes a layout down.
    pub fn of(id: &'a str, layout: &Layout) -> Self {
        let rows = layout.pieces.iter().filter_map(|piece| {
            let (y0, y1) = *layout.levels.get(piece.course)?;
            let ((x0, x1), (sx, sy)) = (piece.x, piece.on_sheet);
            let (w, h) = (piece.size.width, piece.size.height);
            Some(PieceRow { course: piece.course, x0, y0, x1, y1, sheet: piece.sheet, sx, sy, w, h })
        });
        Self { id, sheets: layout.sheets(), pieces: rows.collect() }
    }
}
