//! A cut list says all of a layout and nothing else.

use crate::{asked, laid};
use duckboard::engine::sheets::CutList;
use duckboard::engine::sheets::cut_list::{Cut, Rectangle, Way};
use duckboard::engine::sheets::layout::{Case, Layout, Request};
use std::collections::BTreeSet;

/// An L of 12 × 10 ft, 4 × 4 ft off it, joists every 16 in.
fn case() -> Case {
    let outline = vec![(0, 0), (2304, 0), (2304, 1152), (1536, 1152), (1536, 1920), (0, 1920)];
    Case::new(asked(outline, (1..9).map(|joist| joist * 256).collect())).unwrap()
}

fn listed() -> (Case, Layout, CutList) {
    let case = case();
    let layout = laid(&case);
    let list = CutList::of(&case, &layout);
    (case, layout, list)
}

#[test]
fn every_piece_has_a_number_and_every_sheet_its_place() {
    let (_, layout, list) = listed();
    assert_eq!(list.pieces.len(), layout.pieces.len());
    let numbers: Vec<_> = list.pieces.iter().map(|piece| piece.number).collect();
    assert_eq!(numbers, (1..=layout.pieces.len()).collect::<Vec<_>>());
    assert_eq!(list.sheets.len(), layout.sheets() as usize);
    let on_sheets: BTreeSet<_> =
        list.sheets.iter().flat_map(|sheet| sheet.pieces.iter().map(|piece| piece.number)).collect();
    assert_eq!(on_sheets.len(), layout.pieces.len());
}

#[test]
fn uncut_sheets_are_laid_first_and_sheets_are_cut_as_their_pieces_are_needed() {
    let (_, _, list) = listed();
    let uncut: Vec<_> = list.sheets.iter().map(|sheet| sheet.cuts.is_empty()).collect();
    assert!(uncut.is_sorted_by(|before, after| before >= after), "{uncut:?}");
    let first_pieces: Vec<_> =
        list.sheets.iter().map(|sheet| sheet.pieces.iter().map(|piece| piece.number).min()).collect();
    assert!(first_pieces.is_sorted(), "{first_pieces:?}");
}

#[test]
fn what_the_cuts_leave_is_the_pieces_and_the_offcuts() {
    let (case, _, list) = listed();
    for sheet in &list.sheets {
        let mut left = BTreeSet::from([Rectangle { at: (0, 0), length: 1536, width: 768 }]);
        for cut in &sheet.cuts {
            assert!(left.remove(&cut.of), "cut {} goes through something that is there", cut.number);
            left.extend(parts(cut, case.asked.kerf));
        }
        let pieces = sheet.pieces.iter().map(|piece| Rectangle {
            at: piece.piece.on_sheet,
            length: piece.piece.size.width,
            width: piece.piece.size.height,
        });
        let expected: BTreeSet<_> = pieces.chain(sheet.offcuts.iter().copied()).collect();
        assert_eq!(left, expected);
    }
}

#[test]
fn the_saw_goes_as_far_as_the_layout_says() {
    let (_, layout, list) = listed();
    let across = |cut: &Cut| i64::from(if cut.way == Way::Crosscut { cut.of.width } else { cut.of.length });
    let sawn: i64 = list.sheets.iter().flat_map(|sheet| &sheet.cuts).map(across).sum();
    // The notch of the L is cut out of a piece besides.
    assert!(sawn <= layout.cut, "{sawn} of {}", layout.cut);
}

/// What a cut leaves; a part that the kerf takes whole is not there.
fn parts(cut: &Cut, kerf: i32) -> Vec<Rectangle> {
    let Rectangle { at: (x, y), length, width } = cut.of;
    let beyond = cut.at + kerf;
    let both = match cut.way {
        Way::Crosscut => {
            [Rectangle { length: cut.at, ..cut.of }, Rectangle { at: (x + beyond, y), length: length - beyond, width }]
        }
        Way::Rip => {
            [Rectangle { width: cut.at, ..cut.of }, Rectangle { at: (x, y + beyond), length, width: width - beyond }]
        }
    };
    both.into_iter().filter(|part| part.length > 0 && part.width > 0).collect()
}

#[test]
fn pieces_abreast_are_those_that_a_rip_parts() {
    let abreast = |length: i32, width: i32| {
        let outline = vec![(0, 0), (length, 0), (length, width), (0, width)];
        let joists = (1..length / 256).map(|joist| joist * 256).collect();
        let case = Case::new(Request { gap: 0, kerf: 0, ..asked(outline, joists) }).unwrap();
        let list = CutList::of(&case, &laid(&case));
        list.sheets.iter().map(|sheet| (sheet.is_ripped(), sheet.abreast().len())).collect::<Vec<_>>()
    };
    assert_eq!(abreast(1536, 768), [(false, 0)], "8 × 4 ft are one sheet, uncut");
    assert_eq!(abreast(1536, 1152), [(false, 0), (true, 0)], "of 8 × 6 ft the second is ripped");
    assert_eq!(abreast(3072, 320), [(true, 2)], "two pieces of 8 ft × 20 in come side by side out of one");
}
