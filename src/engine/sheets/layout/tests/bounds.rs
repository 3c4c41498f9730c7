//! What is proven of the number of sheets.

use super::super::bound::{Proof, by_floor};
use super::super::case::{Case, MOST_COURSES, MOST_JOISTS, MOST_ON_HAND, Request, Sheet};
use super::floor;

/// A sheet of 10 by 5 and no saw: 50. Whatever is covered beyond a whole number of those
/// takes one more.
fn bound(request: Request, courses: usize) -> u32 {
    by_floor(&Case::new(request).unwrap(), courses)
}

fn small(width: i32, across: i32) -> Request {
    Request {
        sheet: Sheet { length: 10, width: 5 },
        joist_width: 0,
        gap: 0,
        kerf: 0,
        min_rip: 1,
        ..floor(width, across, 4)
    }
}

#[test]
fn a_floor_of_exactly_so_many_sheets_takes_those_and_one_more_unit_takes_one_more() {
    assert_eq!([bound(small(10, 4), 1), bound(small(10, 5), 1)], [1, 1]);
    assert_eq!([bound(small(10, 9), 2), bound(small(10, 10), 2), bound(small(10, 11), 3)], [2, 2, 3]);
    assert_eq!(bound(small(30, 10), 2), 6);
    assert_eq!(bound(small(31, 10), 2), 7);
}

/// 30 by 10 in two courses, gaps of 2: one gap of 30 by 2 between them, and over six joists,
/// two bays a piece, three joints in each course, 5 by 2 each. 300 - 60 - 60 are 180: four
/// sheets of 50. With one bay a piece there are six joints each: 120 are left, three sheets;
/// with three bays two joints: 200, four sheets; and 201 would be five.
#[test]
fn gaps_come_off_the_floor_as_many_as_joints_there_can_be() {
    let with = |bays: usize, joists: i32| {
        let joists: Vec<_> = (1..=joists).map(|joist| joist * 4).collect();
        bound(Request { gap: 2, min_bays: bays, joists, ..small(30, 10) }, 2)
    };
    assert_eq!([with(1, 6), with(2, 6), with(3, 6)], [3, 4, 4]);
    assert_eq!([with(2, 7), with(2, 5), with(2, 3), with(2, 1)], [4, 4, 5, 5]);
    assert_eq!(with(0, 6), with(1, 6), "every piece spans a bay");
}

#[test]
fn what_is_on_hand_and_what_stands_in_the_floor_come_off_too() {
    let on_hand = |length, width| bound(Request { on_hand: vec![Sheet { length, width }], ..small(30, 10) }, 2);
    assert_eq!([on_hand(10, 5), on_hand(9, 5), on_hand(10, 4)], [5, 6, 6]);
    let all = Request { on_hand: vec![Sheet { length: 10, width: 5 }], ..small(10, 5) };
    assert_eq!(bound(all, 1), 0);
    let hole = |across: i32| {
        let hole = vec![(5, 1), (15, 1), (15, 1 + across), (5, 1 + across)];
        bound(Request { holes: vec![hole], ..small(30, 10) }, 2)
    };
    assert_eq!([hole(4), hole(5), hole(6)], [6, 5, 5]);
}

/// A kerf grows what a sheet holds, once each way.
#[test]
fn a_sheet_holds_its_area_and_a_kerf_around_two_of_its_edges() {
    let kerf = |kerf: i32, width: i32| bound(Request { kerf, ..small(width, 6) }, 2);
    // 11 by 6 is 66.
    assert_eq!([kerf(1, 11), kerf(1, 12), kerf(0, 11)], [1, 2, 2]);
}

#[test]
fn a_proof_rounds_up_what_is_left_for_sheets() {
    let sheets = |least_layout: i64, on_hand: i64| {
        Proof { prices: Vec::new(), most_on_sheet: 10, most_on_hand: vec![on_hand], least_layout }.sheets()
    };
    assert_eq!([sheets(19, 0), sheets(20, 0), sheets(21, 0)], [2, 2, 3]);
    assert_eq!([sheets(24, 5), sheets(25, 5), sheets(26, 5)], [2, 2, 3]);
    assert_eq!([sheets(4, 5), sheets(5, 5), sheets(6, 5)], [0, 0, 1]);
    let priceless = Proof { prices: Vec::new(), most_on_sheet: 0, most_on_hand: Vec::new(), least_layout: 9 };
    assert_eq!(priceless.sheets(), 0, "prices of nothing prove nothing");
}

/// Each size at its most is worked on, and one more is refused in words.
#[test]
fn what_is_too_much_is_refused_and_what_is_just_enough_is_not() {
    let faults = |request: Request| {
        let faults = Case::new(request).err().unwrap_or_default();
        faults.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    let joists = |count: usize| faults(Request { joists: (0..count as i32).collect(), ..floor(1000, 1000, 256) });
    assert_eq!(joists(MOST_JOISTS - 1).len() + joists(MOST_JOISTS).len(), 0);
    assert_eq!(joists(MOST_JOISTS + 1), ["129 joists; up to 128 will do"]);
    let on_hand = |count: usize| {
        faults(Request { on_hand: vec![Sheet { length: 9, width: 9 }; count], ..floor(1000, 1000, 256) })
    };
    assert_eq!(on_hand(MOST_ON_HAND - 1).len() + on_hand(MOST_ON_HAND).len(), 0);
    assert_eq!(on_hand(MOST_ON_HAND + 1), ["13 pieces on hand; up to 12 will do"]);
    let courses = |across: i32| faults(floor(1000, across, 256));
    assert_eq!(courses(768 * MOST_COURSES - 1).len() + courses(768 * MOST_COURSES).len(), 0);
    let told = "a floor of 49153 sixteenths across its sheets; up to 49152 will do";
    assert_eq!(courses(768 * MOST_COURSES + 1), [told]);
    // A saw's teeth, and the two corners behind them.
    let corners = |count: i32| {
        let teeth = (0..count - 2).map(|at| (at * 10, 1000 + at % 2 * 10));
        faults(Request {
            outline: [(count * 10, 0), (-10, 0)].into_iter().chain(teeth).collect(),
            ..floor(100, 100, 30)
        })
    };
    assert_eq!(corners(255), Vec::<String>::new());
    assert_eq!(corners(256), Vec::<String>::new());
    assert_eq!(corners(257), ["257 corners; up to 256 will do"]);
    let sheet = |length: i32, width: i32| faults(Request { sheet: Sheet { length, width }, ..floor(1000, 1000, 256) });
    assert_eq!(sheet(4096, 2048), Vec::<String>::new());
    assert_eq!(sheet(4095, 2047), Vec::<String>::new());
    assert_eq!(sheet(4097, 2048), ["sheet length of 4097 sixteenths; from 1 to 4096 will do"]);
    assert_eq!(sheet(4096, 2049), ["sheet width of 2049 sixteenths; from 1 to 2048 will do"]);
}
