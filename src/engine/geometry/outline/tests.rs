use super::super::{Step, naive, rooms};
use super::*;
use proptest::prelude::*;

fn ring(inches: &[(i32, i32)]) -> Result<Outline, Vec<Problem>> {
    Outline::new(rooms::corners(inches))
}

/// A quarter turn clockwise about the origin.
fn quarter_turned(point: Point) -> Point {
    Point::new(-point.y, point.x)
}

/// A side without length.
fn point(at: Point) -> Segment {
    Segment { from: at, to: at }
}

#[test]
fn fewer_than_three_corners_are_no_outline() {
    assert_eq!(ring(&[(0, 0), (9, 0)]), Err(vec![Problem::TooFewCorners { corners: 2 }]));
    assert_eq!(ring(&[]), Err(vec![Problem::TooFewCorners { corners: 0 }]));
}

#[test]
fn a_bow_tie_names_the_sides_that_cross() {
    let problems = ring(&[(0, 0), (9, 9), (9, 0), (0, 9)]).unwrap_err();
    assert_eq!(problems, [Problem::Crossing { first: 0, second: 2 }]);
    assert_eq!(problems[0].to_string(), "side 1 crosses side 3");
}

#[test]
fn every_problem_is_reported_not_only_the_first() {
    let problems = ring(&[(0, 0), (9, 0), (9, 0), (9, 9), (4, -5), (0, 9)]).unwrap_err();
    assert_eq!(
        problems,
        [
            Problem::NoLength { side: 1 },
            Problem::Crossing { first: 0, second: 3 },
            Problem::Crossing { first: 0, second: 4 },
        ]
    );
}

#[test]
fn a_side_that_runs_back_is_named() {
    assert_eq!(
        ring(&[(0, 0), (9, 0), (5, 0), (5, 9), (0, 9)]),
        Err(vec![Problem::FoldsBack { side: 1 }, Problem::Touching { first: 0, second: 2 }])
    );
    assert!(ring(&[(0, 0), (5, 0), (9, 0)]).is_err(), "corners in one line have no area");
}

#[test]
fn two_rooms_that_meet_in_a_corner_are_no_outline() {
    let problems = ring(&[(0, 0), (5, 0), (5, 5), (9, 5), (9, 9), (5, 9), (5, 5), (0, 5)]).unwrap_err();
    assert!(problems.contains(&Problem::Touching { first: 1, second: 5 }), "{problems:?}");
}

#[test]
fn a_corner_that_does_not_turn_is_allowed() {
    let outline = ring(&[(0, 0), (5, 0), (12, 0), (12, 12), (0, 12)]).unwrap();
    assert_eq!(outline.area(), Area::square_feet(1));
}

#[test]
fn what_no_walk_can_reach_is_refused_instead_of_overflowing() {
    let end = Length::nm(i64::MAX);
    let corners = vec![Point::ORIGIN, Point::new(end, Length::ZERO), Point::new(end, -end)];
    assert_eq!(Outline::new(corners), Err(vec![Problem::TooFar { corner: 1 }, Problem::TooFar { corner: 2 }]));
    let many = vec![Point::ORIGIN; MOST_CORNERS + 1];
    assert_eq!(Outline::new(many), Err(vec![Problem::TooManyCorners { corners: MOST_CORNERS + 1 }]));
}

#[test]
fn the_largest_outline_there_can_be_has_its_exact_area() {
    let (least, most) = (Length::nm(-FARTHEST), Length::nm(FARTHEST));
    let corners = [(least, least), (most, least), (most, most), (least, most)];
    let outline = Outline::new(corners.map(|(x, y)| Point::new(x, y)).to_vec()).unwrap();
    assert_eq!(outline.area(), Area::square_nm(4 * i128::from(FARTHEST) * i128::from(FARTHEST)));
    assert!(outline.contains(Point::ORIGIN));
    assert!(outline.holds_rect(outline.bounds()));
}

#[test]
fn a_comb_of_as_many_sides_as_there_may_be_is_an_outline() {
    let teeth = (0..124).flat_map(|n| [(2 * n + 1, 0), (2 * n + 1, 5), (2 * n + 2, 5), (2 * n + 2, 0)]);
    let comb: Vec<_> = [(0, 0)].into_iter().chain(teeth).chain([(249, 0), (249, 9), (0, 9)]).collect();
    assert_eq!(comb.len(), MOST_CORNERS);
    assert_eq!(ring(&comb).unwrap().area(), Length::inches(1) * Length::inches(249 * 9 - 124 * 5));
}

#[test]
fn a_gap_moves_the_last_corner_and_says_so() {
    let step = |inches, turn| Step::square(Length::inches(inches), turn);
    let walk = Walk::new([100, 60, 101, 60].map(|inches| step(inches, Turn::Right)));
    let closed = Outline::close(&walk).unwrap();
    assert_eq!(closed.moved, Vector { dx: Length::INCH, dy: Length::ZERO });
    assert_eq!(closed.outline.corners(), rooms::corners(&[(0, 0), (100, 0), (100, 60), (-1, 60)]));
    // As walked, with a straight side from the last corner to the start.
    assert_eq!(closed.outline.area(), (Length::inches(201) * Length::inches(60)).half());
}

#[test]
fn a_walk_that_has_not_turned_round_does_not_close() {
    let step = |inches| Step::square(Length::inches(inches), Turn::Right);
    let problems = Outline::close(&Walk::new([step(100), step(60), step(100)])).unwrap_err();
    assert_eq!(problems, [Problem::NotRound { turned: Angle::degrees(270) }]);
}

proptest! {
    #[test]
    fn what_is_accepted_has_area_and_runs_clockwise(
        corners in prop::collection::vec((-5_i32..=5, -5_i32..=5), 3..9),
    ) {
        if let Ok(outline) = ring(&corners) {
            prop_assert!(outline.area() > Area::ZERO);
            prop_assert!(outline.doubled_area() > Area::ZERO);
            prop_assert_eq!(outline.corners()[0], rooms::corners(&corners)[0]);
        }
    }

    #[test]
    fn a_slanting_ring_is_simple_if_no_two_sides_share_more_than_their_corner(
        corners in prop::collection::vec((-4_i32..=4, -4_i32..=4), 3..8),
    ) {
        let sides: Vec<_> = super::ring(&rooms::corners(&corners)).collect();
        let last = sides.len() - 1;
        let mut simple = sides.iter().all(|side| side.from != side.to);
        for (n, a) in sides.iter().enumerate() {
            for (m, b) in sides.iter().enumerate().skip(n + 1) {
                let neighbours = m == n + 1 || (n == 0 && m == last);
                simple &= if neighbours {
                    // They share a corner, and then neither far end may lie on the other.
                    let (before, after) = if m == n + 1 { (a, b) } else { (b, a) };
                    !naive::share_a_point(*before, point(after.to)) && !naive::share_a_point(*after, point(before.from))
                } else {
                    !naive::share_a_point(*a, *b)
                };
            }
        }
        prop_assert_eq!(ring(&corners).is_ok(), simple);
    }

    #[test]
    fn a_rectilinear_ring_is_simple_if_it_visits_no_place_twice(
        moves in prop::collection::vec((1_i32..=4, any::<bool>()), 1..9),
    ) {
        // Moves along x and y by turns, then home along y and x.
        let (mut corners, mut x, mut y) = (vec![(0, 0)], 0, 0);
        for (n, (inches, forward)) in moves.iter().enumerate() {
            let along = if n % 2 == 0 { &mut x } else { &mut y };
            *along += if *forward { *inches } else { -inches };
            corners.push((x, y));
        }
        corners.push(if moves.len() % 2 == 0 { (0, y) } else { (x, 0) });
        prop_assert_eq!(ring(&corners).is_ok(), naive::visits_no_place_twice(&corners) && !has_empty_side(&corners));
    }

    #[test]
    fn area_and_perimeter_do_not_depend_on_start_direction_place_turn_or_mirror(
        room in rooms::any_room(), by in (-9_000_i32..9_000, -9_000_i32..9_000), start in any::<prop::sample::Index>(),
    ) {
        let outline = Outline::new(room.clone()).unwrap();
        let shift = rooms::corners(&[by])[0] - Point::ORIGIN;
        let mut other_start = room.clone();
        other_start.rotate_left(start.index(room.len()));
        let variants = [
            other_start,
            room.iter().rev().copied().collect(),
            room.iter().map(|&corner| corner + shift).collect(),
            room.iter().map(|&corner| quarter_turned(corner)).collect(),
            room.iter().map(|corner| corner.mirrored()).collect(),
        ];
        for variant in variants {
            let variant = Outline::new(variant).unwrap();
            prop_assert_eq!(variant.area(), outline.area());
            prop_assert_eq!(variant.perimeter(), outline.perimeter());
        }
    }

    #[test]
    fn a_mirror_undoes_itself_and_keeps_the_outline_valid(
        corners in prop::collection::vec((-5_i32..=5, -5_i32..=5), 3..9),
    ) {
        if let Ok(outline) = ring(&corners) {
            let mirrored = outline.mirrored();
            prop_assert_eq!(&mirrored.mirrored(), &outline);
            prop_assert_eq!(mirrored.area(), outline.area());
            prop_assert_eq!(mirrored.bounds(), outline.bounds().mirrored());
            prop_assert_eq!(Outline::new(mirrored.corners().to_vec()), Ok(mirrored));
        }
    }

    #[test]
    fn the_bounds_hold_every_corner_and_no_smaller_ones_do(room in rooms::any_room()) {
        let outline = Outline::new(room).unwrap();
        let bounds = outline.bounds();
        prop_assert!(outline.corners().iter().all(|&corner| bounds.contains(corner)));
        prop_assert!(outline.area() <= bounds.area());
        prop_assert!(outline.corners().iter().any(|corner| corner.x == bounds.least().x));
        prop_assert!(outline.corners().iter().any(|corner| corner.y == bounds.most().y));
    }

    #[test]
    fn a_closed_walk_knows_its_sides_in_the_outline(room in rooms::any_room()) {
        let walk = rooms::walk_round(&room);
        let closed = Outline::close(&walk).unwrap();
        prop_assert_eq!(closed.moved, Vector::ZERO);
        prop_assert_eq!(closed.outline.area(), Outline::new(room).unwrap().area());
        let sides: Vec<_> = closed.outline.sides().collect();
        for (n, walked) in walk.sides().enumerate() {
            let side = sides[closed.side(n).unwrap()];
            prop_assert!(side == walked || (side.from == walked.to && side.to == walked.from));
        }
        prop_assert_eq!(closed.side(sides.len()), None);
    }
}

fn has_empty_side(corners: &[(i32, i32)]) -> bool {
    corners.iter().zip(corners.iter().cycle().skip(1)).any(|(a, b)| a == b)
}
