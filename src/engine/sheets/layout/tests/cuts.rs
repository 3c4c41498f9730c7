//! What comes out of a sheet: fitting, packing, the dearest filling, cutting.

use super::super::bound::Proof;
use super::super::cutting::shortest;
use super::super::fit::{Fit, Fits, choices, partings};
use super::super::knapsack::Knapsack;
use super::super::limits::Limits;
use super::super::packing::{Dead, Packing, is_too_much, pack, pack_simply};
use super::{comes_out, kinds, of_kinds, sheets, within};
use proptest::prelude::*;

const PLENTY: u64 = 1_000_000;

/// A proof that says nothing: no price at all.
fn nothing(kinds: usize) -> Proof {
    Proof { prices: vec![0; kinds], most_on_sheet: 1, most_on_hand: Vec::new(), least_layout: 0 }
}

fn fit(limits: Limits, sizes: &[(i32, i32)]) -> Fit {
    Fit::new(&within(sheets(1536, 768, 2), limits), &kinds(sizes))
}

/// A fit, and a sheet of its case grown by a kerf.
fn fits_with(work: u64, limits: Limits, sizes: &[(i32, i32)], pieces: &[u16]) -> (Fits, u64) {
    let mut fit = fit(limits, sizes);
    fit.allow(work);
    let fits = fit.fits(pieces, (1538, 770));
    (fits, fit.work)
}

/// 8 in wide, 48 in long: eleven take 1430 of 1538 sixteenths, twelve 1560.
const NARROW: [(i32, i32); 1] = [(128, 768)];

#[test]
fn eleven_narrow_pieces_fit_and_twelve_do_not() {
    let fits = |count: usize| fits_with(PLENTY, Limits::USUAL, &NARROW, &vec![0; count]).0;
    assert_eq!(
        [fits(1), fits(10), fits(11), fits(12), fits(40)],
        [Fits::Yes, Fits::Yes, Fits::Yes, Fits::No, Fits::No]
    );
    assert_eq!(fits(0), Fits::Yes);
}

#[test]
fn a_piece_fits_what_is_as_large_and_nothing_smaller() {
    let mut fit = fit(Limits::USUAL, &[(100, 200)]);
    fit.allow(0);
    let mut fits = |size| fit.fits(&[0], size);
    assert_eq!(fits((102, 202)), Fits::Yes);
    assert_eq!([fits((101, 202)), fits((102, 201))], [Fits::No, Fits::No]);
}

/// Three of these side by side are exactly a sheet; a sixteenth more is not.
#[test]
fn pieces_that_fill_a_sheet_fit_and_a_sixteenth_more_does_not() {
    let across = |width: i32| fits_with(PLENTY, Limits::USUAL, &[(width, 768), (508, 768)], &[0, 1, 1]).0;
    assert_eq!([across(515), across(516), across(517)], [Fits::Yes, Fits::Yes, Fits::No]);
    let up = |height: i32| fits_with(PLENTY, Limits::USUAL, &[(1536, height), (1536, 300)], &[0, 1]).0;
    assert_eq!([up(465), up(466), up(467)], [Fits::Yes, Fits::Yes, Fits::No]);
}

/// As many partings as it takes are enough; one less is not, and then it is unknown: of two
/// that neither lie side by side nor one above the other, and two small ones.
#[test]
fn without_work_for_it_whether_pieces_fit_is_unknown() {
    let sizes = [(800, 500), (790, 490), (300, 200), (250, 180)];
    let pieces: Vec<u16> = (0..4).collect();
    let (truth, takes) = fits_with(PLENTY, Limits::USUAL, &sizes, &pieces);
    assert_eq!(truth, Fits::No);
    let with = |work: u64| fits_with(work, Limits::USUAL, &sizes, &pieces).0;
    let enough = (0..=takes).find(|work| with(*work) == Fits::No).unwrap();
    assert!(enough > 0 && (0..enough).all(|work| with(work) == Fits::Unknown));
    assert_eq!([with(enough), with(enough + 1)], [Fits::No, Fits::No]);
}

#[test]
fn what_is_not_remembered_is_worked_out_again() {
    let sizes = [(700, 300), (500, 400), (300, 460), (900, 360), (200, 250)];
    let pieces: Vec<u16> = (0..5).collect();
    let (truth, takes) = fits_with(PLENTY, Limits::USUAL, &sizes, &pieces);
    for kept in [0, 1, 5] {
        let (fits, work) = fits_with(PLENTY, Limits { kept, ..Limits::USUAL }, &sizes, &pieces);
        assert_eq!(fits, truth, "{kept} kept");
        assert!(work >= takes, "{kept} kept");
    }
}

/// What was found out with little work stays true with more, and is not taken for all.
#[test]
fn what_was_unknown_is_found_out_with_more_work() {
    let sizes = [(700, 300), (500, 400), (300, 460), (900, 360), (200, 250)];
    let pieces: Vec<u16> = (0..5).collect();
    let mut fit = fit(Limits::USUAL, &sizes);
    for _ in 0..200 {
        fit.allow(3);
        match fit.fits(&pieces, (1538, 770)) {
            Fits::No => panic!("they fit"),
            Fits::Yes => return,
            Fits::Unknown => {}
        }
    }
    fit.allow(PLENTY);
    assert_eq!(fit.fits(&pieces, (1538, 770)), Fits::Yes);
}

#[test]
fn partings_tell_like_kinds_apart_by_number_only() {
    assert_eq!(choices(&[]), 1);
    assert_eq!(choices(&[1, 1, 1, 2]), 8);
    let all: Vec<_> = partings(&[1, 1, 2]).collect();
    assert_eq!(all, [(vec![1], vec![1, 2]), (vec![1, 1], vec![2]), (vec![1, 2], vec![1])]);
    assert_eq!(partings(&[3]).count(), 0);
    assert_eq!(partings(&[]).count(), 0);
    assert_eq!(partings(&[0; 20]).count(), 19);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]
    #[test]
    fn what_is_said_to_fit_fits_and_what_is_said_not_to_does_not(
        sizes in prop::collection::vec((1..=6_i32, 1..=4_i32), 1..=5),
        (length, width, kerf) in (4..=11_i32, 3..=6_i32, 0..=1_i32),
        work in prop_oneof![0..30_u64, Just(PLENTY)],
    ) {
        let mut fit = Fit::new(&sheets(length, width, kerf), &kinds(&sizes));
        fit.allow(work);
        let pieces: Vec<u16> = (0..sizes.len() as u16).collect();
        let truth = comes_out(&sizes, length, width, kerf);
        match fit.fits(&pieces, (length + kerf, width + kerf)) {
            Fits::Yes => prop_assert!(truth),
            Fits::No => prop_assert!(!truth),
            Fits::Unknown => prop_assert!(work < PLENTY),
        }
        if truth {
            // And it can be cut so, whether by every order or as it is known.
            for choices in [0, 1 << 10] {
                let case = within(sheets(length, width, kerf), Limits { choices, ..Limits::USUAL });
                let mut fit = Fit::new(&case, &kinds(&sizes));
                prop_assert!(shortest(&mut fit, kerf, &pieces, (length + kerf, width + kerf)).is_some());
            }
        }
    }

    /// One sheet or several: brute force over which piece goes where.
    #[test]
    fn packing_is_impossible_only_where_it_is(
        sizes in prop::collection::vec((1..=6_i32, 1..=4_i32), 1..=5),
        (length, width) in (4..=8_i32, 3..=5_i32),
        sheets_given in 1..=3_u32,
        effort in prop_oneof![0..6_usize, Just(10_000)],
    ) {
        let case = sheets(length, width, 0);
        let pieces: Vec<u16> = (0..sizes.len() as u16).collect();
        let goes = |assigned: u32| {
            (0..sheets_given).all(|sheet| {
                let mine = (0..sizes.len() as u32).filter(|at| assigned / sheets_given.pow(*at) % sheets_given == sheet);
                comes_out(&mine.map(|at| sizes[at as usize]).collect::<Vec<_>>(), length, width, 0)
            })
        };
        let each_fits = sizes.iter().all(|(along, across)| *along <= length && *across <= width);
        prop_assume!(each_fits);
        let truth = (0..sheets_given.pow(sizes.len() as u32)).any(goes);
        let mut fit = Fit::new(&case, &kinds(&sizes));
        let proof = nothing(sizes.len());
        let packing = pack(&mut fit, &mut Dead::default(), std::iter::once(&proof), &pieces, sheets_given, effort);
        match packing {
            Packing::Packed(filled) => {
                prop_assert!(truth);
                let mut all = filled.concat();
                all.sort_unstable();
                prop_assert_eq!(all, pieces.clone());
            }
            Packing::Impossible => prop_assert!(!truth),
            Packing::Unknown => prop_assert!(effort < 10_000),
        }
        let simply = pack_simply(&mut fit, &pieces).concat();
        prop_assert_eq!(simply.len(), pieces.len());
    }

    /// The dearest filling is as dear as the dearest set that comes out.
    #[test]
    fn the_dearest_filling_is_the_dearest(
        sizes in prop::collection::vec((1..=6_i32, 1..=4_i32), 1..=3),
        prices in prop::collection::vec(0..9_i64, 3),
        (length, width, kerf) in (3..=9_i32, 2..=6_i32, 0..=1_i32),
        lengths in 2..12_usize,
    ) {
        let case = sheets(length, width, kerf);
        let scheme = of_kinds(&sizes);
        let prices: Vec<_> = prices.into_iter().take(sizes.len()).collect();
        let (dearest, pieces) = Knapsack::new(&case, &scheme, |_| true).best(&prices).pop().unwrap();
        let all: Vec<_> = pieces.iter().flat_map(|(kind, count)| vec![sizes[usize::from(*kind)]; usize::from(*count)]).collect();
        let worth: i64 = pieces.iter().map(|(kind, count)| prices[usize::from(*kind)] * i64::from(*count)).sum();
        prop_assert_eq!(worth, dearest);
        if all.len() <= 6 {
            prop_assert!(comes_out(&all, length, width, kerf), "{:?}", all);
        }
        prop_assert_eq!(dearest, dearest_by_trying(&sizes, &prices, length, width, kerf));
        // With fewer lengths it can only be dearer.
        let coarse = within(case, Limits { lengths, ..Limits::USUAL });
        let (coarsely, _) = Knapsack::new(&coarse, &scheme, |_| true).best(&prices).pop().unwrap();
        prop_assert!(coarsely >= dearest);
    }
}

/// By every cut at every unit.
fn dearest_by_trying(sizes: &[(i32, i32)], prices: &[i64], length: i32, width: i32, kerf: i32) -> i64 {
    let mut known = vec![vec![0_i64; width as usize + 1]; length as usize + 1];
    for along in 1..=length {
        for across in 1..=width {
            let whole = sizes.iter().zip(prices).filter(|((x, y), _)| *x <= along && *y <= across);
            let mut best = whole.map(|(_, price)| *price).max().unwrap_or(0);
            let at = |x: i32, y: i32| known[x.max(0) as usize][y.max(0) as usize];
            best = (1..along).map(|cut| at(cut, across) + at(along - cut - kerf, across)).fold(best, i64::max);
            best = (1..across).map(|cut| at(along, cut) + at(along, across - cut - kerf)).fold(best, i64::max);
            known[along as usize][across as usize] = best;
        }
    }
    known[length as usize][width as usize]
}

/// 21, 23 and 26 long out of 100: 99 of it at best, by three of 26 and one of 21. Rounded
/// down by steps of 4 five of 23 are five of 20, worth 115.
#[test]
fn with_one_length_too_few_sizes_are_rounded_down() {
    let (case, scheme) = (sheets(100, 4, 0), of_kinds(&[(21, 4), (23, 4), (26, 4)]));
    let dearest = |lengths: usize| {
        let case = within(case.clone(), Limits { lengths, ..Limits::USUAL });
        Knapsack::new(&case, &scheme, |_| true).best(&[21, 23, 26]).pop().unwrap().0
    };
    let enough = (2..100).rev().take_while(|lengths| dearest(*lengths) == 99).last().unwrap();
    assert_eq!([dearest(enough - 1), dearest(enough), dearest(enough + 1)], [115, 99, 99]);
    assert_eq!(dearest(usize::MAX), 99);
}

/// Sizes of one sixteenth cannot be rounded down to anything: every length counts then, and
/// it comes to an end.
#[test]
fn the_smallest_pieces_are_not_rounded_down_to_nothing() {
    let case = within(sheets(1000, 700, 0), Limits { lengths: 10, ..Limits::USUAL });
    let scheme = of_kinds(&[(1, 1), (600, 500)]);
    assert_eq!(Knapsack::new(&case, &scheme, |_| true).best(&[1, 0]).pop().unwrap().0, 700_000);
}

#[test]
fn packing_gives_up_with_too_little_effort_and_says_so() {
    let mut fit = fit(Limits::USUAL, &NARROW);
    let proof = nothing(1);
    let mut packed = |count: usize, sheets: u32, effort: usize| {
        pack(&mut fit, &mut Dead::default(), std::iter::once(&proof), &vec![0; count], sheets, effort)
    };
    assert_eq!(packed(22, 2, 0), Packing::Unknown);
    assert_eq!(packed(22, 2, 1), Packing::Unknown);
    assert!(matches!(packed(22, 2, 2), Packing::Packed(_)));
    assert!(matches!(packed(22, 2, 3), Packing::Packed(_)));
    assert_eq!(packed(23, 2, 400), Packing::Impossible);
    assert!(matches!(packed(23, 3, 400), Packing::Packed(_)));
}

#[test]
fn without_work_packing_is_unknown_and_not_impossible() {
    // Two pieces that fill a sheet together: whether they fit takes one parting, and as much
    // again to see whether it is looked at.
    let limits = |work_a_filling| Limits { work_a_filling, ..Limits::USUAL };
    let packed = |work: u64| {
        let mut fit = fit(limits(work), &[(1000, 768), (534, 768)]);
        let proof = nothing(2);
        pack(&mut fit, &mut Dead::default(), std::iter::once(&proof), &[0, 1], 1, 1)
    };
    assert_eq!(packed(0), Packing::Unknown);
    assert!(matches!(packed(100), Packing::Packed(_)));
    let enough = (1..100).find(|work| matches!(packed(*work), Packing::Packed(_))).unwrap();
    assert_eq!(packed(enough - 1), Packing::Unknown);
    assert!(matches!(packed(enough + 1), Packing::Packed(_)));
}

#[test]
fn prices_refute_what_is_worth_more_than_the_sheets_and_not_what_is_worth_as_much() {
    let proof = |price| Proof { prices: vec![price], most_on_sheet: 10, most_on_hand: vec![3], least_layout: 0 };
    // Three of them on two sheets and a part on hand: 23 at most.
    assert!(!is_too_much([&proof(7)], &[0, 0, 0], 2));
    assert!(is_too_much([&proof(8)], &[0, 0, 0], 2));
    let exact = Proof { most_on_hand: vec![4], ..proof(8) };
    assert!(!is_too_much([&exact], &[0, 0, 0], 2), "24 of 24");
}

/// What did not fit is dead for every layout that leaves as much, with as many sheets.
#[test]
fn what_is_dead_stays_dead_and_nothing_else_does() {
    let mut fit = fit(Limits::USUAL, &NARROW);
    let proof = nothing(1);
    for most in [0, 1, 100] {
        fit.limits.dead = most;
        let mut dead = Dead::default();
        let mut packed = |count: usize, sheets: u32| {
            pack(&mut fit, &mut dead, std::iter::once(&proof), &vec![0; count], sheets, 400)
        };
        assert_eq!(packed(12, 1), Packing::Impossible);
        assert!(matches!(packed(12, 2), Packing::Packed(_)));
        assert!(matches!(packed(11, 1), Packing::Packed(_)));
        assert_eq!(packed(12, 1), Packing::Impossible);
    }
}
