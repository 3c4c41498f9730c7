//! Which widths the first course may have, and which of them come to the same.

use super::super::case::{Case, Request};
use super::super::courses::{choices, classes, is_sliver};
use super::super::limits::Limits;
use super::super::scheme::{Kind, NotApart, Scheme};
use super::{floor, within};

fn first_widths(request: Request) -> Vec<(usize, i32)> {
    let case = Case::new(request).unwrap();
    choices(&case).iter().map(|levels| (levels.len(), levels[0].1 - levels[0].0)).collect()
}

/// Beside a wall no course is narrower than the least rip, none wider than a sheet.
#[test]
fn a_floor_as_wide_as_a_sheet_is_one_course_and_a_sixteenth_more_is_two() {
    assert_eq!(first_widths(floor(1000, 767, 256)), [(1, 767)]);
    // 24 in twice, less a gap, is too wide by 2 for a sheet: it goes in two as well.
    assert_eq!(first_widths(floor(1000, 768, 256)), [(1, 768)]);
    assert_eq!(first_widths(floor(1000, 769, 256)), [], "384 twice and a gap are 770");
    assert_eq!(first_widths(floor(1000, 770, 256)), [(2, 384)]);
    assert_eq!(first_widths(floor(1000, 771, 256)), [(2, 384), (2, 385)]);
    // Two whole sheets and a gap; beyond that a third course.
    assert_eq!(first_widths(floor(1000, 1538, 256)).first(), Some(&(2, 768)));
    let three: Vec<_> = first_widths(floor(1000, 1540, 256));
    assert_eq!(three, [(3, 384)], "384, 768 and 384, gaps between");
    assert_eq!(first_widths(floor(1000, 1539, 256)), []);
}

#[test]
fn courses_fill_the_floor_a_gap_apart() {
    let case = Case::new(floor(1000, 3000, 256)).unwrap();
    for levels in choices(&case) {
        assert_eq!((levels[0].0, levels[levels.len() - 1].1), (0, 3000));
        assert!(levels.windows(2).all(|pair| pair[0].1 + 2 == pair[1].0));
        assert!(levels[1..levels.len() - 1].iter().all(|(low, high)| high - low == 768));
        let ends = [levels[0], levels[levels.len() - 1]].map(|(low, high)| high - low);
        assert!(ends.iter().all(|width| (384..=768).contains(width)), "{ends:?}");
    }
}

#[test]
fn a_sliver_is_less_than_a_sixteenth_of_a_sheet() {
    let case = Case::new(floor(1000, 3000, 256)).unwrap();
    assert_eq!([47, 48, 49].map(|height| is_sliver(&case, height)), [true, false, false]);
}

/// Whatever the limit, each width is in one class.
#[test]
fn with_too_many_stacks_each_width_is_a_class_of_its_own() {
    let all = Case::new(floor(1000, 3000, 256)).unwrap();
    let with = |stacks: usize| {
        let classes = classes(&within(all.clone(), Limits { stacks, ..Limits::USUAL }));
        (classes.len(), classes.iter().map(|class| class.members.len()).sum::<usize>())
    };
    let widths = choices(&all).len();
    let (usual, members) = with(Limits::USUAL.stacks);
    assert!(usual < widths && members == widths);
    assert_eq!(with(0), (widths, widths));
    let enough = (0..200).find(|stacks| with(*stacks).0 == usual).unwrap();
    assert!(enough > 0 && with(enough - 1).0 > usual && with(enough + 1).0 == usual);
    assert!((0..enough).all(|stacks| with(stacks).1 == widths));
}

/// Of too many kinds nothing is said, least of all that there is no layout.
#[test]
fn with_too_many_kinds_a_class_is_not_taken_apart() {
    let case = Case::new(floor(3000, 2000, 256)).unwrap();
    let levels = choices(&case)[0].clone();
    let kinds = Scheme::new(&case, levels.clone()).unwrap().kinds.len();
    let with = |most: usize| {
        let case = within(case.clone(), Limits { kinds: most, ..Limits::USUAL });
        Scheme::new(&case, levels.clone()).map(|scheme| scheme.kinds.len())
    };
    assert_eq!(with(kinds - 1), Err(NotApart::TooMuch));
    assert_eq!(with(kinds), Ok(kinds));
    assert_eq!(with(kinds + 1), Ok(kinds));
}

/// A bay that a sheet just bridges, and one that it does not.
#[test]
fn a_bay_as_wide_as_a_sheet_is_bridged_and_a_sixteenth_more_is_not() {
    let with = |second: i32| {
        let request = Request { joists: vec![200, second], min_bays: 1, ..floor(3000, 700, 256) };
        let case = Case::new(request).unwrap();
        Scheme::new(&case, choices(&case)[0].clone()).map(|_| ())
    };
    // From joint to joint a sheet and a gap: 1538.
    assert_eq!([with(1737), with(1738)], [Ok(()), Ok(())]);
    assert_eq!(with(1739), Err(NotApart::Uncoverable));
}

/// As small as the smallest in each place, and with all cells of either.
#[test]
fn what_stands_for_several_classes_is_no_larger_than_any() {
    // A floor out of square: each width has pieces of its own.
    let mut request = floor(2000, 2000, 256);
    request.outline = vec![(3, 0), (2000, 11), (1990, 2000), (0, 1989)];
    let case = Case::new(request).unwrap();
    let schemes: Vec<_> =
        choices(&case).into_iter().take(5).map(|levels| Scheme::new(&case, levels).unwrap()).collect();
    let least = Scheme::least_of(&schemes).unwrap();
    for scheme in &schemes {
        for (mine, theirs) in least.course_shapes().zip(scheme.course_shapes()) {
            for (mine, theirs) in mine.runs.iter().zip(&theirs.runs) {
                for cell in &theirs.cells {
                    let like = mine.cells.iter().find(|other| (other.from, other.to) == (cell.from, cell.to)).unwrap();
                    let pairs = like.kinds.iter().zip(&cell.kinds);
                    let no_larger =
                        |small: Kind, large: Kind| small.width <= large.width && small.height <= large.height;
                    assert!(
                        pairs
                            .into_iter()
                            .all(|(a, b)| { no_larger(least.kinds[usize::from(*a)], scheme.kinds[usize::from(*b)]) })
                    );
                }
            }
        }
    }
    let mut other = floor(2000, 2000, 250);
    other.outline = case.asked.outline.clone();
    let other = Case::new(other).unwrap();
    let unlike = Scheme::new(&other, choices(&other)[0].clone()).unwrap();
    let joists: Vec<_> = other.asked.joists.iter().zip(&case.asked.joists).collect();
    assert!(joists.iter().any(|(a, b)| a != b));
    assert!(Scheme::least_of(&[]).is_none());
    assert!(Scheme::least_of(&[unlike.clone(), unlike]).is_some());
}
