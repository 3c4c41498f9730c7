//! What the search costs is bounded, in steps, in work and in bytes by its own count: none of
//! this is timed.

use crate::large::large;
use crate::random::room;
use duckboard::engine::sheets::floor_search::{MOST_STEPS, MOST_WORK};
use duckboard::engine::sheets::layout::{Case, Limits, Search, Step, check};

/// Goes on until it is proven, or for so many steps and so much work.
fn searched(case: Case, steps: u64, work: u64) -> (Search, usize) {
    let mut search = Search::new(case);
    let mut most = 0;
    while !search.is_proven() && search.steps() < steps && search.work() < work && search.step() != Step::Done {
        most = most.max(search.bytes());
    }
    (search, most)
}

/// Of the first thirty rooms of `layout_rooms`, of which 29 are proven by what phone and office
/// allow, with a hundredth of that work.
#[test]
fn with_a_hundredth_of_the_work_two_small_rooms_of_three_are_proven() {
    let proven = (1..=30).filter(|seed| {
        let (search, _) = searched(room(*seed, (139, 354)), MOST_STEPS as u64, MOST_WORK / 100);
        let best = search.best().unwrap();
        assert!(check(search.case(), best).is_ok() && search.bound() <= best.sheets(), "{seed}");
        search.is_proven()
    });
    assert!(proven.count() >= 20);
}

/// Classes are put back when they take too much together; one by itself may take what it takes.
#[test]
fn no_room_takes_more_memory_than_its_limit_and_one_class() {
    for (name, case) in large() {
        let (search, most) = searched(case, 60, MOST_WORK / 100);
        assert!(most < Limits::USUAL.bytes + 45_000_000, "{name}: {most}");
        assert!(search.best().is_none_or(|best| search.bound() <= best.sheets()), "{name}");
    }
}

/// What is put back for want of room is begun again: with no room at all there is still a
/// layout, and a bound that holds.
#[test]
fn without_any_room_for_classes_the_bound_still_holds() {
    for seed in [2, 3, 5, 6, 9] {
        let (settled, _) = searched(room(seed, (139, 354)), 5_000, MOST_WORK / 100);
        let mut case = room(seed, (139, 354));
        case.limits.bytes = 0;
        let (search, _) = searched(case, 300, MOST_WORK / 100);
        let sheets = settled.best().unwrap().sheets();
        assert!(settled.is_proven() && search.bound() <= sheets && search.best().unwrap().sheets() >= sheets, "{seed}");
    }
}
