//! Where joints may be, and what is listed of that.

use super::super::case::{Case, Request};
use super::super::courses::choices;
use super::super::joints::{Agreed, agree};
use super::super::limits::Limits;
use super::super::options::{Cheapest, Ways};
use super::super::scheme::Scheme;
use super::super::search::{Search, Step};
use super::{floor, within};

fn scheme(request: Request) -> (Case, Scheme) {
    let case = Case::new(request).unwrap();
    let levels = choices(&case)[0].clone();
    let scheme = Scheme::new(&case, levels).unwrap();
    (case, scheme)
}

/// Three courses of 20 ft over joists 16 in apart.
fn room() -> (Case, Scheme) {
    scheme(floor(3840, 2000, 256))
}

fn ways(scheme: &Scheme, most: usize) -> Ways {
    Ways::of(scheme, 1, most, &Limits::USUAL)
}

#[test]
fn as_many_ways_as_there_are_are_all_and_one_fewer_are_not() {
    let (_, scheme) = room();
    let all = ways(&scheme, 100_000);
    let most = (0..all.courses()).filter_map(|course| Some(all.of_course(course)?.len())).max().unwrap();
    assert!(all.are_all && most > 1);
    assert!(ways(&scheme, most).are_all && ways(&scheme, most + 1).are_all);
    assert!(!ways(&scheme, most - 1).are_all);
}

/// With too few pairs compared the cheapest is unknown, and never said not to be there.
#[test]
fn the_cheapest_is_unknown_when_too_many_would_be_compared() {
    let (_, scheme) = room();
    let prices = vec![1_i64; scheme.kinds.len()];
    let cheapest = |compared: u64| {
        let ways = Ways::of(&scheme, 1, 100_000, &Limits { compared, ..Limits::USUAL });
        ways.cheapest(&ways.costs(&prices))
    };
    let Cheapest::Are(best) = cheapest(u64::MAX) else { panic!("there are some") };
    let enough = (0..1_000_000).find(|compared| cheapest(*compared) != Cheapest::Unknown).unwrap();
    assert!(enough > 0);
    assert_eq!(cheapest(enough - 1), Cheapest::Unknown);
    assert_eq!([cheapest(enough), cheapest(enough + 1)], [Cheapest::Are(best.clone()), Cheapest::Are(best)]);
}

/// Every set of pieces of every way that costs little enough, and no other.
#[test]
fn sets_within_a_limit_are_those_of_all_ways() {
    let (_, scheme) = room();
    let prices: Vec<_> = (0..scheme.kinds.len() as i64).map(|kind| 10 + kind * 7 % 5).collect();
    let all = ways(&scheme, 100_000);
    let costs = all.costs(&prices);
    let least: i64 = (0..all.courses()).map(|course| costs[all.shape_of(course)].iter().min().unwrap()).sum();
    for spare in [-1, 0, 1, 12] {
        let sets = Ways::sets_within(&scheme, &prices, least + spare, &Limits::USUAL).unwrap();
        for course in 0..all.courses() {
            let (listed, costs) = (all.of_course(course).unwrap(), &costs[all.shape_of(course)]);
            let room = costs.iter().min().unwrap() + spare;
            let cheap = (0..listed.len() as u32).filter(|way| spare >= 0 && costs[*way as usize] <= room);
            let mut expected: Vec<_> = cheap.map(|way| listed.kinds(way).to_vec()).collect();
            expected.sort_unstable();
            expected.dedup();
            let found = sets.of_course(course).unwrap();
            let mut found: Vec<_> = (0..found.len() as u32).map(|way| found.kinds(way).to_vec()).collect();
            found.sort_unstable();
            assert_eq!(found, expected, "{spare} to spare");
        }
    }
}

#[test]
fn of_too_many_sets_none_is_listed() {
    let (_, scheme) = room();
    let prices = vec![1_i64; scheme.kinds.len()];
    let is_listed =
        |sets: usize| Ways::sets_within(&scheme, &prices, 1000, &Limits { sets, ..Limits::USUAL }).is_some();
    let enough = (0..100_000).find(|sets| is_listed(*sets)).unwrap();
    assert!(enough > 1 && !is_listed(enough - 1) && is_listed(enough + 1));
}

/// Joints are found where there are some, not where there are none, and with too few cells
/// tried nothing is said.
#[test]
fn joints_for_given_pieces_are_found_or_not_there_or_unknown() {
    let (_, scheme) = room();
    let all = ways(&scheme, 100_000);
    let prices = vec![1_i64; scheme.kinds.len()];
    let joints = all.cheapest(&all.costs(&prices)).found().unwrap();
    let pieces: Vec<_> = (0..).zip(&joints.ways).filter_map(|(course, way)| all.kinds_of(course, *way)).collect();
    let Agreed::On(found) = agree(&scheme, 1, &pieces, 1_000_000) else { panic!("the cheapest are there") };
    assert!(found.windows(2).all(|pair| pair[0] & pair[1] == 0));
    let enough = (0..100_000).find(|most| matches!(agree(&scheme, 1, &pieces, *most), Agreed::On(_))).unwrap();
    assert_eq!(agree(&scheme, 1, &pieces, enough - 1), Agreed::Unknown);
    assert!(matches!(agree(&scheme, 1, &pieces, enough + 1), Agreed::On(_)));
    // No two courses keep so far apart.
    assert_eq!(agree(&scheme, 100, &pieces, 1_000_000), Agreed::Nothing);
}

/// A joint two joists from another is apart by two, not by three.
#[test]
fn joints_keep_apart_by_as_many_joists_as_are_asked_for() {
    let (_, scheme) = room();
    for (apart, agrees) in [(1, true), (2, true), (3, false), (0, true)] {
        let ways = Ways::of(&scheme, apart, 100_000, &Limits::USUAL);
        assert_eq!(ways.reach(1 << 10) & 1 << 12 == 0, agrees, "{apart}");
    }
    let none = Ways::of(&scheme, 0, 100_000, &Limits::USUAL);
    assert_eq!(none.reach(1 << 10), 0);
}

/// With memory for one class only, all else is put back and taken up again: what is found
/// and proven stays the same.
#[test]
fn a_search_short_of_memory_ends_where_one_with_plenty_does() {
    let mut request = floor(3074, 2703, 256);
    request.outline = vec![(1, 2703), (3071, 2703), (3074, 1169), (1922, 1164), (1927, 12), (9, 1)];
    let case = Case::new(request).unwrap();
    let ended = |bytes: usize| {
        let mut search = Search::new(within(case.clone(), Limits { bytes, in_a_group: 1, ..Limits::USUAL }));
        let mut most = 0;
        while !search.is_proven() && search.step() != Step::Done {
            most = most.max(search.bytes());
        }
        (search.best().unwrap().sheets(), search.bound(), most)
    };
    let (sheets, bound, plenty) = ended(usize::MAX);
    assert_eq!(sheets, bound);
    let (again, bound, little) = ended(0);
    assert_eq!((again, bound), (sheets, sheets));
    assert!(little < plenty, "{little} of {plenty}");
}
