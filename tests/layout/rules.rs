//! The checker finds each rule broken that is broken on purpose.

use crate::samples::best;
use duckboard::engine::sheets::layout::{Broken, Case, Layout, check};

/// Breaks a good layout and says what the checker finds.
fn broken(id: &str, breaking: impl FnOnce(&Case, &mut Layout)) -> Vec<Broken> {
    let (case, mut layout) = best(id);
    assert_eq!(check(&case, &layout), Ok(layout.cut));
    breaking(&case, &mut layout);
    check(&case, &layout).unwrap_err()
}

macro_rules! finds {
    ($name:ident, $id:literal, $breaking:expr, $found:pat) => {
        #[test]
        fn $name() {
            let found = broken($id, $breaking);
            assert!(found.iter().any(|rule| matches!(rule, $found)), "{found:?}");
            assert!(found.iter().all(|rule| !rule.to_string().is_empty()));
        }
    };
}

finds!(a_course_moved, "p03-rect", |_, layout| layout.levels[0].1 += 1, Broken::Courses);
finds!(a_course_left_out, "p03-rect", |_, layout| _ = layout.levels.pop(), Broken::Courses);
finds!(a_piece_left_out, "p04-rect", |_, layout| _ = layout.pieces.remove(0), Broken::Uncovered { .. });
finds!(a_piece_of_another_course, "p04-rect", |_, layout| layout.pieces[0].course = 1, Broken::Joint { .. });
finds!(a_piece_too_wide, "p04-rect", |_, layout| layout.pieces[0].size.width += 1, Broken::Pieces { .. });
finds!(a_piece_elsewhere, "p04-rect", |_, layout| layout.pieces[0].at.0 += 1, Broken::Pieces { .. });
finds!(a_cell_off_the_floor, "p04-rect", |_, layout| layout.pieces[0].x = (90_000, 90_010), Broken::Astray { .. });
finds!(a_piece_off_its_sheet, "p04-rect", |_, layout| layout.pieces[0].on_sheet.0 = -1, Broken::OffSheet { .. });
finds!(
    a_sheet_left_out,
    "p04-rect",
    |_, layout| layout.pieces.iter_mut().for_each(|piece| piece.sheet += 1),
    Broken::EmptySheet { sheet: 0 }
);

finds!(
    two_pieces_in_one_place,
    "p04-rect",
    |_, layout| {
        layout.pieces[1].sheet = layout.pieces[0].sheet;
        layout.pieces.iter_mut().for_each(|piece| piece.on_sheet = (0, 0));
    },
    Broken::Overlap { .. }
);

#[test]
fn a_joint_between_joists_a_short_span_and_a_long_piece() {
    let found = broken("p04-rect", |_, layout| {
        // The first course's joint goes to where no joist is.
        for piece in layout.pieces.iter_mut().filter(|piece| piece.course == 0) {
            if piece.x.0 == 0 {
                piece.x.1 = 20;
            } else {
                piece.x.0 = 22;
            }
        }
    });
    assert!(found.iter().any(|rule| matches!(rule, Broken::Joint { course: 0, .. })), "{found:?}");
    assert!(found.iter().any(|rule| matches!(rule, Broken::Span { course: 0, .. })), "{found:?}");
    assert!(found.iter().any(|rule| matches!(rule, Broken::TooLong { course: 0, .. })), "{found:?}");
}

#[test]
fn joints_of_neighbouring_courses_on_one_joist() {
    let (case, layout) = best("p04-rect");
    let mut asked = case.asked.clone();
    asked.stagger = case.asked.joists.len();
    let stricter = Case::new(asked).unwrap();
    let found = check(&stricter, &layout).unwrap_err();
    assert!(found.iter().all(|rule| matches!(rule, Broken::Stagger { .. })), "{found:?}");
}

#[test]
fn pieces_that_no_cut_from_edge_to_edge_frees() {
    // Four around a middle, like a pinwheel: each cut would go through one of them.
    let (case, mut layout) = best("p04-rect");
    let spots = [(0, 0, 900, 300), (910, 0, 300, 500), (400, 510, 810, 200), (0, 310, 390, 400)];
    layout.pieces.truncate(4);
    for (piece, (x, y, width, height)) in layout.pieces.iter_mut().zip(spots) {
        piece.sheet = 0;
        piece.on_sheet = (x, y);
        (piece.size.width, piece.size.height) = (width, height);
    }
    let found = check(&case, &layout).unwrap_err();
    assert!(found.contains(&Broken::NoCut { sheet: 0 }), "{found:?}");
}
