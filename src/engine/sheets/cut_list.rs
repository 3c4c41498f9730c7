//! A layout as a carpenter works through it: pieces numbered in the order they are
//! laid, and for each sheet its cuts in the order they are made.

use super::layout::{Case, Corner, Cutting, Form, Layout, Piece, Sheet, form};

/// A layout in words and numbers. Lengths are sixteenths, from the sheet's lower left
/// corner unless said otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct CutList {
    /// Every piece with its number, uncut sheets first.
    pub pieces: Vec<Numbered>,
    /// The sheets in the order that their first pieces are laid.
    pub sheets: Vec<SheetPlan>,
}

/// A piece and its number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Numbered {
    /// From 1.
    pub number: usize,
    /// The number of its sheet in the list, from 1.
    pub sheet: usize,
    /// The piece.
    pub piece: Piece,
    /// What it is like once it is trimmed.
    pub form: Form,
}

impl Numbered {
    /// Do the two lie side by side on their sheet, so that a rip parts them?
    fn is_abreast(&self, other: &Self) -> bool {
        let extent = |piece: &Piece| (piece.on_sheet.0, piece.on_sheet.0 + piece.size.width);
        let ((left, right), (from, to)) = (extent(&self.piece), extent(&other.piece));
        left < to && from < right
    }
}

/// What pieces are cut from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Blank {
    /// A new sheet, by its number from 1.
    Sheet(usize),
    /// What is on hand, by its place in the case, from 0.
    OnHand(usize),
}

/// What becomes of a sheet, or of what is on hand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetPlan {
    /// Its place in the list, from 1.
    pub number: usize,
    /// What it is.
    pub blank: Blank,
    /// How large it is.
    pub size: Sheet,
    /// Its pieces.
    pub pieces: Vec<Numbered>,
    /// Its cuts, in order.
    pub cuts: Vec<Cut>,
    /// What is left over, each at its lower left corner.
    pub offcuts: Vec<Rectangle>,
}

/// A cut from edge to edge of what is left of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cut {
    /// From 1.
    pub number: usize,
    /// The rectangle that is cut in two.
    pub of: Rectangle,
    /// Which way the saw goes.
    pub way: Way,
    /// How far from the rectangle's reference edge the saw goes in: its left edge for
    /// a crosscut, its lower one for a rip. The kerf lies beyond.
    pub at: i32,
}

/// Which way the saw goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// Across the sheet's length.
    Crosscut,
    /// Along it.
    Rip,
}

/// A rectangle on a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Rectangle {
    /// Its lower left corner.
    pub at: Corner,
    /// Along the sheet.
    pub length: i32,
    /// Across it.
    pub width: i32,
}

impl SheetPlan {
    /// Is a piece ripped, so that it keeps one of its factory edges at most?
    pub fn is_ripped(&self) -> bool {
        self.cuts.iter().any(|cut| cut.way == Way::Rip)
    }

    /// The numbers of pieces that lie side by side: one keeps the one factory edge, one
    /// the other, and what lies between them none.
    pub fn abreast(&self) -> Vec<usize> {
        let side_by_side =
            |one: &&Numbered| self.pieces.iter().any(|other| other.number != one.number && one.is_abreast(other));
        self.pieces.iter().filter(side_by_side).map(|piece| piece.number).collect()
    }
}

impl CutList {
    /// Numbers a layout and takes its cuttings apart.
    pub fn of(case: &Case, layout: &Layout) -> Self {
        let order = sheets_in_order(layout);
        let place = |sheet: usize| order.iter().position(|other| *other == sheet).map_or(0, |place| place + 1);
        let mut in_order: Vec<_> = layout.pieces.iter().collect();
        in_order.sort_by_key(|piece| laid(layout, piece));
        let numbered = (1..).zip(in_order).map(|(number, piece)| Numbered {
            number,
            sheet: place(piece.sheet),
            piece: *piece,
            form: form(case, layout, piece),
        });
        let pieces: Vec<_> = numbered.collect();
        let (mut sheets, mut new) = (Vec::new(), 0);
        for (sheet, number) in order.iter().zip(1..) {
            let Some(cutting) = layout.cuttings.get(*sheet) else { continue };
            let blank = if *sheet < layout.on_hand {
                Blank::OnHand(*sheet)
            } else {
                new += 1;
                Blank::Sheet(new)
            };
            let of_sheet = pieces.iter().filter(|piece| piece.sheet == number).cloned().collect();
            let size = case.blank(*sheet);
            let mut plan = SheetPlan { number, blank, size, pieces: of_sheet, cuts: Vec::new(), offcuts: Vec::new() };
            let whole = plan.whole();
            plan.take_apart(cutting, whole, case.asked.kerf);
            sheets.push(plan);
        }
        Self { sheets, pieces }
    }
}

/// When a piece is laid: what needs no cut first, then course by course.
fn laid(layout: &Layout, piece: &Piece) -> (bool, usize, Corner) {
    let is_uncut = layout.cuttings.get(piece.sheet).is_some_and(|cutting| matches!(**cutting, Cutting::Piece(_)));
    (!is_uncut, piece.course, piece.at)
}

/// Sheets, and what is used of what is on hand, as their first pieces are laid.
fn sheets_in_order(layout: &Layout) -> Vec<usize> {
    let is_used = |sheet: &usize| layout.pieces.iter().any(|piece| piece.sheet == *sheet);
    let mut order: Vec<_> = (0..layout.cuttings.len()).filter(is_used).collect();
    order.sort_by_key(|sheet| {
        let mine = layout.pieces.iter().filter(|piece| piece.sheet == *sheet);
        mine.map(|piece| laid(layout, piece)).min()
    });
    order
}

impl SheetPlan {
    /// All of it.
    pub fn whole(&self) -> Rectangle {
        Rectangle { at: (0, 0), length: self.size.length, width: self.size.width }
    }

    /// Is it laid as it comes?
    pub fn is_laid_whole(&self) -> bool {
        self.cuts.is_empty() && self.pieces.iter().all(|piece| piece.form.trims.is_empty())
    }

    /// Notes the cuts of a rectangle, and then of what they leave, first part first.
    fn take_apart(&mut self, cutting: &Cutting, of: Rectangle, kerf: i32) {
        match cutting {
            Cutting::Offcut => self.offcuts.extend((of.length > 0 && of.width > 0).then_some(of)),
            Cutting::Piece(_) => {}
            Cutting::Crosscut { at, parts: [left, right] } => {
                self.note(of, Way::Crosscut, *at);
                let (beyond, (x, y)) = (at + kerf, of.at);
                self.take_apart(left, Rectangle { length: *at, ..of }, kerf);
                self.take_apart(right, Rectangle { at: (x + beyond, y), length: of.length - beyond, ..of }, kerf);
            }
            Cutting::Rip { at, parts: [low, high] } => {
                self.note(of, Way::Rip, *at);
                let (beyond, (x, y)) = (at + kerf, of.at);
                self.take_apart(low, Rectangle { width: *at, ..of }, kerf);
                self.take_apart(high, Rectangle { at: (x, y + beyond), width: of.width - beyond, ..of }, kerf);
            }
        }
    }

    fn note(&mut self, of: Rectangle, way: Way, at: i32) {
        self.cuts.push(Cut { number: self.cuts.len() + 1, of, way, at });
    }
}
