//! What laying takes beside sheets.

use crate::desk::Desk;
use crate::{asked, laid};
use duckboard::engine::job::{Job, SheetEdge};
use duckboard::engine::sheets::layout::{Case, Request};
use duckboard::engine::sheets::stock::Stock;
use duckboard::engine::sheets::take_off::{Bought, cut_from_sticks};
use duckboard::engine::sheets::{CutList, TakeOff};
use duckboard::engine::survey::{Floor, Run};
use duckboard::engine::units::Length;
use proptest::prelude::*;

const KERF: Length = Length::sixty_fourths(8);

fn sixteenths(count: i32) -> Length {
    Length::sixty_fourths(4) * i64::from(count)
}

/// One block row of a floor of 25 ft, joists 16 in apart and the last 12 in: 18 blocks of
/// 14 1/2 in and one of 10 1/2 (computed): 271 1/2 in, so that 24 ft are the least that
/// is sold.
#[test]
fn a_row_of_blocks_comes_out_of_the_fewest_feet() {
    let mut pieces = vec![sixteenths(232); 18];
    pieces.push(sixteenths(168));
    let bought = cut_from_sticks(&pieces, KERF).unwrap();
    assert_eq!((bought.feet(), bought.is_least), (24, true), "{bought:?}");
    cuts_everything(&pieces, &bought);
}

/// 96 in, 24 in pieces, a kerf of 1/8 in: three, not four (common practice, no source).
#[test]
fn the_kerf_counts() {
    let fours = cut_from_sticks(&[Length::inches(24); 4], KERF).unwrap();
    assert_eq!(fours.feet(), 10);
    let threes = cut_from_sticks(&[Length::inches(24); 3], KERF).unwrap();
    assert_eq!(threes.feet(), 8);
    assert_eq!(cut_from_sticks(&[Length::inches(24); 4], Length::ZERO).unwrap().feet(), 8);
}

#[test]
fn nothing_needs_no_lumber_and_what_is_too_long_has_none() {
    assert_eq!(cut_from_sticks(&[], KERF).unwrap().count(), 0);
    assert_eq!(cut_from_sticks(&[Length::feet(16)], KERF).unwrap().feet(), 16);
    assert_eq!(cut_from_sticks(&[Length::feet(16) + KERF], KERF), None);
}

fn cuts_everything(pieces: &[Length], bought: &Bought) {
    let mut cut: Vec<Length> = Vec::new();
    for stick in &bought.sticks {
        let all: Vec<_> = stick.cuts.iter().flat_map(|(length, count)| vec![*length; *count]).collect();
        let taken = all.iter().fold(Length::ZERO, |sum, piece| sum + *piece + KERF);
        assert!(taken <= Length::feet(stick.feet) + KERF, "{stick:?}");
        cut.extend((0..stick.count).flat_map(|_| all.clone()));
    }
    let mut pieces = pieces.to_vec();
    pieces.sort_unstable();
    cut.sort_unstable();
    assert_eq!(cut, pieces);
}

/// The fewest feet by putting each piece on every stick in turn.
fn fewest_feet(pieces: &[Length], sticks: &mut Vec<Length>) -> i32 {
    let Some((piece, rest)) = pieces.split_first() else {
        let sold = |taken: &Length| [8, 10, 12, 14, 16].into_iter().find(|feet| *taken <= Length::feet(*feet) + KERF);
        return sticks.iter().filter(|taken| taken.is_positive()).map(sold).sum::<Option<i32>>().unwrap_or(i32::MAX);
    };
    let mut least = i32::MAX;
    for at in 0..=sticks.len() {
        if at == sticks.len() {
            sticks.push(Length::ZERO);
        }
        sticks[at] = sticks[at] + *piece + KERF;
        least = least.min(fewest_feet(rest, sticks));
        sticks[at] = sticks[at] - *piece - KERF;
    }
    sticks.pop();
    least
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]
    #[test]
    fn no_other_way_to_cut_buys_less(pieces in prop::collection::vec(prop::sample::select(vec![232, 168, 500, 760, 1100]), 1..7)) {
        let pieces: Vec<_> = pieces.into_iter().map(sixteenths).collect();
        let bought = cut_from_sticks(&pieces, KERF).unwrap();
        cuts_everything(&pieces, &bought);
        prop_assert!(bought.is_least);
        prop_assert_eq!(bought.feet(), fewest_feet(&pieces, &mut Vec::new()));
    }
}

/// A floor of 8 ft × 8 ft on joists 16 in apart, walls at its ends.
fn take_off(edge: SheetEdge) -> TakeOff {
    let outline = vec![(0, 0), (1536, 0), (1536, 1536), (0, 1536)];
    let request = Request { gap: 0, ..asked(outline, (1..6).map(|joist| joist * 256).collect()) };
    let case = Case::new(request).unwrap();
    let mut desk = Desk::new();
    let (room, _) = desk.room(&[]);
    desk.joists(room, Run::AcrossFirstSide, "16", "16", 5);
    let floor = Floor::of(desk.job()).unwrap();
    let stock = Stock { edge, ..Stock::of(&Job::default(), &floor) };
    let layout = laid(&case);
    assert_eq!(layout.pieces.len(), 2, "two sheets, laid whole");
    TakeOff::of(&case, &CutList::of(&case, &layout), &stock)
}

#[test]
fn square_edges_are_blocked_and_tongues_are_not() {
    let square = take_off(SheetEdge::Square);
    // Two edges at walls and one seam, six bays each: 14 1/2 in between joists, 15 1/4 in
    // beside a wall.
    assert_eq!(square.blocking.blocks.len(), 18);
    let lengths: Vec<_> = square.blocking.blocks.iter().take(6).map(|block| block.length).collect();
    assert_eq!(lengths[0], sixteenths(244));
    assert_eq!(lengths[1..5], [sixteenths(232); 4]);
    let tongued = take_off(SheetEdge::TongueAndGroove);
    assert_eq!(tongued.blocking.blocks.len(), 12, "only at the walls");
}

#[test]
fn fasteners_follow_ends_joists_and_blocks() {
    let tongued = take_off(SheetEdge::TongueAndGroove);
    // 43 a sheet on joists 16 in apart (computed); along each wall two more in each of six bays.
    assert_eq!(tongued.fasteners.count, 2 * 43 + 2 * 6 * 2);
    let square = take_off(SheetEdge::Square);
    assert_eq!(square.fasteners.count, 2 * 43 + 4 * 6 * 2);
}

#[test]
fn glue_goes_on_joists_ends_blocks_and_into_the_groove() {
    let tongued = take_off(SheetEdge::TongueAndGroove);
    // Two sheets: two ends and five joists of 4 ft each; blocks along two walls; a groove of 8 ft.
    let blocks = (sixteenths(244) * 2 + sixteenths(232) * 4) * 2;
    assert_eq!(tongued.adhesive.bead, Length::feet(2 * 7 * 4 + 8) + blocks);
    assert_eq!(tongued.adhesive.tubes, 1);
}

/// Beside slanting walls hardly two blocks are alike.
#[test]
fn blocks_of_many_lengths_are_cut_too_and_with_a_proof() {
    let odd = [251, 249, 246, 244, 243, 243, 243, 241, 237, 235, 125, 106, 103];
    let pieces: Vec<_> = odd.into_iter().chain([232; 45]).map(sixteenths).collect();
    let bought = cut_from_sticks(&pieces, KERF).unwrap();
    cuts_everything(&pieces, &bought);
    // 13 206 sixteenths and a kerf of 2 for each but the last of a stick: more than 68 ft.
    assert_eq!((bought.feet(), bought.is_least), (70, true), "{bought:?}");
}
