//! The file that a layout goes into.

use duckboard::engine::sheets::layout::Layout;
use serde::Serialize;

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
