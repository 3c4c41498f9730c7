//! What comes out, and how far that reaches, in a room that agrees with itself.

use crate::house::joist;
use crate::{Site, after, drop_, held_by, length, ready};
use duckboard::engine::condition::Finding;
use duckboard::engine::geometry::Turn;
use duckboard::engine::moisture::Answer;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::{CutBack, Opening, Run, WholeFloor};

#[test]
fn without_knowing_what_comes_out_and_where_the_joists_are_nothing_is_ready() {
    held_by(
        |site| {
            let opening = *site.desk.job().now.openings().keys().next().unwrap();
            site.desk.withdraw(opening);
        },
        "nobody said what comes out",
    );
    held_by(
        |site| {
            let joists = *site.desk.job().now.joists().keys().next().unwrap();
            site.desk.withdraw(joists);
        },
        "the joists are not laid out",
    );
    let whole = after(|site| {
        let room = *site.desk.job().now.rooms().keys().next().unwrap();
        site.desk.log(WholeFloor { room });
    });
    assert!(whole.in_the_way().iter().any(|line| line.contains("joist 7, 8")), "{:#?}", whole.in_the_way());
    assert!(!whole.in_the_way().iter().any(|line| line.contains("floor that stays")), "{:#?}", whole.in_the_way());
}

/// The room is 144 by 120 in.
#[test]
fn an_opening_from_wall_to_wall_leaves_no_floor_to_be_read_beside_it() {
    let asks = |inches: [&'static str; 4]| {
        let site = after(|site| {
            let (id, it) =
                site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            let [along, out, long, wide] = inches.map(length);
            site.desk.correct(id, Opening { along, out, length: long, width: wide, ..it });
        });
        let lines = site.in_the_way();
        assert!(lines.iter().any(|line| line.contains("joist 7, 8")), "{lines:#?}");
        lines.iter().any(|line| line.contains("floor that stays"))
    };
    assert!(!asks(["0", "0", "144", "120"]));
    assert!(asks(["0", "0", "143 63/64", "120"]) && asks(["0", "0", "144", "119 63/64"]));
    assert!(asks(["1/64", "0", "143 63/64", "120"]) && asks(["0", "1/64", "144", "119 63/64"]));
}

/// Lays out so many joists from the first, 16 in apart, and opens the floor from 40 in on for
/// so long.
fn laid_out(count: u16, long: &'static str) -> impl FnOnce(&mut Site) {
    move |site: &mut Site| {
        let (id, joists) = site.desk.job().now.joists().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
        site.desk.correct(id, duckboard::engine::survey::Joists { count, ..joists });
        let (id, it) = site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
        site.desk.correct(id, Opening { length: length(long), ..it });
        site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
        site.answers(&[("same_joists", Answer::Yes)]);
    }
}

/// The opening goes from 24 in to 72 along the joists, 16 in is a bay, and the far wall is at 120.
#[test]
fn what_comes_out_is_what_is_cut_and_not_what_was_placed() {
    let cut = |inches: &'static str| {
        move |site: &mut Site| {
            let opening = *site.desk.job().now.openings().keys().next().unwrap();
            site.desk.log(CutBack { opening, width: Some(length(inches)), finish: None });
        }
    };
    let sill = "nobody said that the sill there is sound";
    let is_asked = |inches| {
        let site = after(|site| {
            cut(inches)(site);
            site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
        });
        site.in_the_way().iter().any(|line| line.contains(sill))
    };
    assert_eq!(["79 15/16", "80", "90"].map(is_asked), [false, true, true]);
    held_by(cut("50"), "no girder was near, before what comes out was placed as it is now");
}

/// No girder is said to be near; a joist's bearing on one is within a bay of 24 to 72 in.
#[test]
fn a_girder_that_joists_lap_on_there_is_near_whatever_is_said() {
    let laps = |over: &'static str, clear: &'static str| {
        let site = after(|site| {
            site.desk.says(joist(4), &list::OVER_GIRDER, over);
            site.desk.says(joist(4), &list::CLEAR_SPAN, clear);
        });
        site.in_the_way().iter().any(|line| line.contains("by their spans one is: joist 4"))
    };
    assert_eq!(
        ["7 15/16", "8", "5'", "88", "88 1/16"].map(|clear| laps("laps the next", clear)),
        [false, true, true, true, false]
    );
    assert!(laps("goes through", "5'") && laps("butts, tied", "5'") && !laps("does not reach one", "5'"));
}

const BEYOND: &str = "what comes out goes on where no joist is laid out";

/// Six joists: the last is 96 in from the first corner, and the room 144 in long.
#[test]
fn what_comes_out_beyond_the_last_joist_is_not_known() {
    held_by(laid_out(6, "95"), BEYOND);
    held_by(laid_out(6, "56 1/16"), BEYOND);
    // Joist 8 is 128 in from the corner, a bay from the wall.
    let beyond = |count, long| after(laid_out(count, long)).in_the_way().iter().any(|line| line.contains(BEYOND));
    assert!(!beyond(6, "56"));
    assert!(!beyond(8, "100") && beyond(7, "100"));
    // All of the floor comes out up to the walls.
    let whole = |count| {
        let site = after(|site| {
            laid_out(count, "40")(site);
            let room = *site.desk.job().now.rooms().keys().next().unwrap();
            site.desk.log(WholeFloor { room });
        });
        site.in_the_way().iter().any(|line| line.contains(BEYOND))
    };
    assert!(!whole(8) && whole(7));
}

#[test]
fn what_stands_outside_the_room_holds_closing() {
    let opening = |inches: [&'static str; 4]| {
        move |site: &mut Site| {
            let (id, it) =
                site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            let [along, out, long, wide] = inches.map(length);
            site.desk.correct(id, Opening { along, out, length: long, width: wide, ..it });
            site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
        }
    };
    let outside = |inches| after(opening(inches)).in_the_way().iter().any(|line| line.starts_with("Opening 1: "));
    // The room is 120 in that way.
    assert!(!outside(["40", "24", "40", "96"]) && outside(["40", "24", "40", "98"]));
    assert!(outside(["40", "180", "40", "48"]), "all of it");
    held_by(
        |site| {
            let position = Position::OnJoist { joist: JoistNumber::new(9).unwrap(), along: Some(length("3'")) };
            let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
            site.desk.log(place);
        },
        "there are 8 joists",
    );
}

#[test]
fn a_room_whose_sides_do_not_close_holds_closing() {
    held_by(
        |site| {
            let last = *site.desk.job().now.sides().keys().next_back().unwrap();
            site.desk.withdraw(last);
        },
        "the room's sides do not close: measure every side",
    );
}

#[test]
fn joists_that_lie_nowhere_hold_nothing_up_and_so_hold_closing() {
    let spaced = |spacing: &'static str, count: u16| {
        move |site: &mut Site| {
            let room = *site.desk.job().now.rooms().keys().next().unwrap();
            drop_(site.desk.joists(room, Run::AcrossFirstSide, "60", spacing, count));
        }
    };
    for (spacing, count) in [("0", 6), ("0", 1), ("16", 1)] {
        held_by(spaced(spacing, count), "the joists do not lie one after the other");
    }
    held_by(spaced("0", 6), "nothing can be said");
}

#[test]
fn joists_laid_out_anew_after_something_was_said_of_them_are_not_known_to_be_the_same() {
    let anew = |site: &mut Site| {
        let room = *site.desk.job().now.rooms().keys().next().unwrap();
        drop_(site.desk.joists(room, Run::AcrossFirstSide, "16", "16", 8));
    };
    held_by(anew, "the joists were laid out anew");
    held_by(
        |site| {
            site.answers(&[("same_joists", Answer::Yes)]);
            anew(site);
        },
        "the joists were laid out anew",
    );
    for answer in [Answer::No, Answer::Unknown] {
        held_by(
            |site| {
                anew(site);
                site.answers(&[("same_joists", answer)]);
            },
            "the joists were laid out anew",
        );
    }
    ready(|site| {
        anew(site);
        site.answers(&[("same_joists", Answer::Yes)]);
    });
    // What was said while another layout stood went by that one's numbers.
    held_by(
        |site| {
            let room = *site.desk.job().now.rooms().keys().next().unwrap();
            let other = site.desk.joists(room, Run::AcrossFirstSide, "8", "16", 8);
            site.desk.says(joist(3), &list::AWL, "stops everywhere");
            site.desk.withdraw(other);
        },
        "the joists were laid out anew",
    );
    // What was laid out once, and spoken of after that, is what was meant.
    ready(|site| drop_(site.desk.says(joist(3), &list::AWL, "stops everywhere")));
}

#[test]
fn a_second_room_is_not_looked_at_and_holds_closing() {
    let second = |site: &mut Site| site.desk.room(&["12'", "10'", "12'", "10'"].map(|side| (side, Turn::Right)));
    held_by(|site| drop_(second(site)), "2 rooms are begun");
    held_by(
        |site| {
            let (room, _) = second(site);
            site.desk.log(WholeFloor { room });
        },
        "2 rooms are begun",
    );
}

#[test]
fn an_opening_that_cannot_be_placed_holds_closing() {
    held_by(
        |site| {
            let side = *site.desk.job().now.sides().keys().next().unwrap();
            site.desk.opening(side, ["90", "24", "0", "48"]);
        },
        "1 opening that cannot be placed",
    );
}

/// The room is 12 ft wide, and its sides say so: a diagonal of 18 ft contradicts them by more than 2 ft.
#[test]
fn a_room_whose_measurements_disagree_by_3_in_or_more_holds_closing() {
    let across = |diagonal: &'static str| {
        move |site: &mut Site| {
            let sides: Vec<_> = site.desk.job().now.sides().keys().copied().collect();
            drop_(site.desk.tie(sides[0], sides[2], diagonal));
        }
    };
    held_by(across("18'"), "the room's measurements disagree");
    // By Pythagoras: 144 and 120 in give 187 7/16 in.
    ready(across("15' 7 7/16\""));
}

/// The saw goes from joist to joist, wherever between them the opening was placed: here from joist
/// 2, at 32 in, to joist 5, at 80.
#[test]
fn joists_and_walls_are_within_a_bay_of_what_is_really_cut() {
    let placed = |along: &'static str, long: &'static str| {
        move |site: &mut Site| {
            let (id, it) =
                site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            site.desk.correct(id, Opening { along: length(along), length: length(long), ..it });
            site.desk.says(Part::House, &list::GIRDER_NEAR, "no");
        }
    };
    let and_soft = |along: &'static str, long: &'static str, number: u16| {
        move |site: &mut Site| {
            placed(along, long)(site);
            drop_(site.desk.says(joist(number), &list::AWL, "goes in"));
        }
    };
    for (along, long) in [("32", "48"), ("33", "46"), ("47", "18")] {
        ready(placed(along, long));
        held_by(and_soft(along, long, 1), "joist 1");
        held_by(and_soft(along, long, 6), "joist 6");
        ready(and_soft(along, long, 7));
    }
    // From joist 1, which is a bay from the wall.
    held_by(placed("31", "32"), "nobody said that the sill there is sound");
}

/// The first joist is so far from the wall, and the opening begins 8 in from it.
#[test]
fn what_comes_out_before_the_first_joist_is_not_known() {
    let beyond = |first: &'static str| {
        let site = after(|site| {
            let (id, joists) =
                site.desk.job().now.joists().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            site.desk.correct(id, duckboard::engine::survey::Joists { first: length(first), ..joists });
            let (id, it) =
                site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
            site.desk.correct(id, Opening { along: length("8"), ..it });
        });
        site.in_the_way().iter().any(|line| line.contains(BEYOND))
    };
    // A bay is 16 in; so is the first one.
    assert_eq!(["8", "16", "16 1/16", "24"].map(beyond), [false, false, true, true]);
}

/// It is at 4 ft along a joist: within a bay of 24 to 72 in, and of what is cut from joist 2 to 5.
#[test]
fn a_girder_looked_at_elsewhere_is_not_the_one_there() {
    let looked_at = |joist: u16, along: &'static str| {
        move |site: &mut Site| {
            site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
            let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: Some(length(along)) };
            let place = Place { element: Element::Girder, position, face: None, height: None, chalk: None };
            let place = site.desk.log(place);
            site.finds(Finding::Sound, Some(place));
        }
    };
    let is_told = |joist, along| {
        let lines = after(looked_at(joist, along)).in_the_way();
        !lines.iter().any(|line| line.contains("nobody said that the girder there is sound"))
    };
    for (joist, along) in [(4, "4'"), (1, "4'"), (6, "4'"), (4, "8"), (4, "88")] {
        assert!(is_told(joist, along), "{joist} {along}");
    }
    for (joist, along) in [(7, "4'"), (4, "7 15/16"), (4, "88 1/16")] {
        assert!(!is_told(joist, along), "{joist} {along}");
    }
}
