//! The file that a case is in.

use duckboard::engine::sheets::layout::{Case, Fault, Request, Sheet};
use serde::Deserialize;

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
            on_hand: Vec::new(),
            gap: self.gap,
            kerf: self.kerf,
            min_rip: self.min_rip,
            min_bays: self.min_bays,
            stagger: self.stagger_joists,
        })
    }
}
