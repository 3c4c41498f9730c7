//! What is on hand is laid before any sheet, and what one floor leaves serves the next.

use crate::desk::length;
use crate::to_lay::Site;
use duckboard::draw::Canvas;
use duckboard::draw::sheets::SheetPage;
use duckboard::engine::job::{Fact, SheetEdge};
use duckboard::engine::sheets::{OnHand, Searches};
use duckboard::engine::survey::Run;
use duckboard::engine::take::Units;

impl Site {
    /// So long along the strong axis and so wide, in inches.
    fn on_hand(mut self, along: i32, across: i32) -> Self {
        self.desk.log(OnHand { length: length(&along.to_string()), width: length(&across.to_string()) });
        self
    }
}

fn pages(searches: &Searches) -> Vec<SheetPage> {
    let canvas = Canvas { width_px: 360, height_px: 300 };
    searches.floors().iter().map(|floor| SheetPage::of(floor, &[], Units::default(), canvas).unwrap()).collect()
}

/// 8 ft by 78 in of floor: a sheet, and a course of 30 in.
fn a_sheet_and_some() -> Site {
    Site::rectangle(Run::AcrossFirstSide).opening([16, 12, 96, 78])
}

#[test]
fn a_piece_on_hand_saves_a_sheet() {
    let without = pages(&a_sheet_and_some().searched());
    assert_eq!(without[0].headline, "2 sheets");
    let with = pages(&a_sheet_and_some().on_hand(96, 30).searched());
    assert_eq!(with[0].headline, "1 sheet");
    assert!(with[0].line.starts_with("no layout takes fewer") && with[0].line.ends_with("1 of 1 on hand used"));
    let titles: Vec<_> = with[0].sheets.iter().map(|sheet| &*sheet.title).collect();
    assert!(titles.iter().any(|title| title.starts_with("Sheet 1: ")), "{titles:?}");
    assert!(titles.iter().any(|title| title.starts_with("On hand 1 (8' 0\" × 2' 6\"): ")), "{titles:?}");
}

#[test]
fn a_piece_on_hand_too_small_is_left() {
    let pages = pages(&a_sheet_and_some().on_hand(20, 10).searched());
    assert_eq!(pages[0].headline, "2 sheets");
    assert!(pages[0].line.ends_with("0 of 1 on hand used"), "{}", pages[0].line);
}

#[test]
fn what_is_larger_than_a_sheet_counts_as_one() {
    let pages = pages(&a_sheet_and_some().on_hand(120, 60).searched());
    assert_eq!(pages[0].headline, "1 sheet");
    assert!(
        pages[0].sheets.iter().any(|sheet| sheet.title.starts_with("On hand 1 (8' 0\" × 4' 0\")")),
        "{:?}",
        pages[0]
    );
}

/// Of more than twelve the largest twelve are laid from, and the proof says so.
#[test]
fn a_proof_says_that_it_counts_on_the_largest_twelve_on_hand() {
    let line = |pieces: i32| {
        let site = (0..pieces).fold(a_sheet_and_some(), |site, more| site.on_hand(12 + more, 10));
        pages(&site.searched())[0].line.clone()
    };
    assert!(line(11).ends_with("0 of 11 on hand used"), "{}", line(11));
    for pieces in [12, 13] {
        let says = "0 on hand used, the 12 largest looked at; with any smaller ones it may be fewer sheets";
        assert!(line(pieces).ends_with(says), "{}", line(pieces));
    }
}

/// Two openings of half a sheet each.
fn two_halves() -> Site {
    Site::rectangle(Run::AcrossFirstSide).opening([16, 12, 48, 48]).opening([112, 96, 48, 48])
}

#[test]
fn what_one_opening_leaves_is_laid_in_the_next() {
    let pages = pages(&two_halves().searched());
    let headlines: Vec<_> = pages.iter().map(|page| &*page.headline).collect();
    assert_eq!(headlines, ["1 sheet", "0 sheets"]);
    assert!(pages[1].sheets[0].title.starts_with("Left of opening 1, sheet 1 ("), "{:?}", pages[1].sheets);
}

#[test]
fn what_was_ripped_lacks_an_edge_for_the_next_opening() {
    // Each takes a strip of 22 in along the whole sheet: two would come out of one.
    let strips = || Site::rectangle(Run::AcrossFirstSide).opening([16, 12, 96, 22]).opening([16, 96, 96, 22]);
    let headlines = |site: &Site| pages(&site.searched()).into_iter().map(|page| page.headline).collect::<Vec<_>>();
    assert_eq!(headlines(&strips()), ["1 sheet", "0 sheets"]);
    let mut tongued = strips();
    tongued.desk.log(Fact::SheetEdge(SheetEdge::TongueAndGroove));
    assert_eq!(headlines(&tongued), ["1 sheet", "1 sheet"]);
}
