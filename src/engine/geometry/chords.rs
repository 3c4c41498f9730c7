//! Where a straight line across the page runs inside an outline.

use super::{Axis, Outline, Point, Segment};
use crate::engine::units::Length;
use crate::order;

/// A stretch of a line that lies inside an outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Chord {
    /// Where it enters: the lesser coordinate along the line.
    pub from: Length,
    /// Where it leaves.
    pub to: Length,
}

impl Outline {
    /// The stretches inside the outline of the line that runs along `axis` at
    /// coordinate `at` of the other axis, in order. Ends on slanting sides are
    /// rounded to the nanometre.
    ///
    /// A line that runs in a wall counts as lying a hair beyond it, so that it runs
    /// inside along one of two facing walls and never along both.
    pub fn chords(&self, axis: Axis, at: Length) -> Vec<Chord> {
        let across = axis.other();
        let passes = |side: &Segment| (side.from.along(across) <= at) != (side.to.along(across) <= at);
        let mut ends: Vec<_> = self.sides().filter(passes).map(|side| crossing(side, axis, at)).collect();
        order::sort(&mut ends);
        // An outline is closed: a line that enters it leaves it again.
        let (pairs, _) = ends.as_chunks::<2>();
        pairs.iter().filter(|[from, to]| from < to).map(|&[from, to]| Chord { from, to }).collect()
    }
}

/// Where `side` passes coordinate `at` across `axis`, rounded along `axis`.
#[expect(clippy::cast_possible_truncation, reason = "a point of the side, whose ends are i64")]
fn crossing(side: Segment, axis: Axis, at: Length) -> Length {
    let nm = |point: Point, axis| i128::from(point.along(axis).to_nm());
    let across = axis.other();
    let (low, high) =
        if side.from.along(across) < side.to.along(across) { (side.from, side.to) } else { (side.to, side.from) };
    let run = nm(high, across) - nm(low, across);
    let rise = nm(high, axis) - nm(low, axis);
    let done = i128::from(at.to_nm()) - nm(low, across);
    // Rounded half up: the floor of rise * done / run + 1/2.
    let along = (2 * rise * done + run).div_euclid(2 * run);
    Length::nm((nm(low, axis) + along) as i64)
}

#[cfg(test)]
mod tests {
    use super::super::rooms;
    use super::*;
    use proptest::prelude::*;

    fn chord(from: i32, to: i32) -> Chord {
        Chord { from: Length::inches(from), to: Length::inches(to) }
    }

    /// A U, open at the top between x = 40 and x = 80, down to y = 60.
    fn u() -> Outline {
        rooms::outline(&[(0, 0), (40, 0), (40, 60), (80, 60), (80, 0), (120, 0), (120, 100), (0, 100)])
    }

    #[test]
    fn a_joist_across_the_arms_of_a_u_comes_in_two_parts() {
        assert_eq!(u().chords(Axis::X, Length::inches(30)), [chord(0, 40), chord(80, 120)]);
        assert_eq!(u().chords(Axis::X, Length::inches(80)), [chord(0, 120)]);
        assert_eq!(u().chords(Axis::Y, Length::inches(60)), [chord(60, 100)]);
        assert_eq!(u().chords(Axis::Y, Length::inches(130)), []);
    }

    #[test]
    fn a_line_in_a_wall_runs_inside_along_one_of_two_facing_walls() {
        assert_eq!(u().chords(Axis::Y, Length::ZERO), [chord(0, 100)]);
        assert_eq!(u().chords(Axis::Y, Length::inches(120)), []);
        assert_eq!(u().chords(Axis::Y, Length::inches(40)), [chord(60, 100)]);
    }

    #[test]
    fn a_slanting_side_is_met_half_way() {
        let triangle = rooms::outline(&[(0, 0), (10, 0), (0, 20)]);
        assert_eq!(triangle.chords(Axis::Y, Length::inches(5)), [chord(0, 10)]);
        assert_eq!(triangle.chords(Axis::X, Length::inches(10)), [chord(0, 5)]);
    }

    proptest! {
        #[test]
        fn every_chord_lies_inside_and_ends_on_the_outline(room in rooms::any_room(), at in 0_i32..400, along_x: bool) {
            let outline = Outline::new(room).unwrap();
            let (axis, least) = if along_x {
                (Axis::X, outline.bounds().least().y)
            } else {
                (Axis::Y, outline.bounds().least().x)
            };
            let at = least + Length::inches(at);
            let place = |along| if along_x { Point::new(along, at) } else { Point::new(at, along) };
            let chords = outline.chords(axis, at);
            prop_assert!(chords.is_sorted_by(|a, b| a.to < b.from), "apart and in order: {:?}", chords);
            for Chord { from, to } in chords {
                prop_assert!(outline.contains(place(from)) && outline.contains(place(to)));
                prop_assert!(outline.contains(place((from + to).half())));
                for end in [from, to] {
                    prop_assert!(outline.sides().any(|side| side.holds(place(end))), "an end is on a wall");
                }
            }
        }

        #[test]
        fn the_chords_of_a_room_add_up_to_its_area(room in rooms::any_room()) {
            let outline = Outline::new(room).unwrap();
            let (least, most) = (outline.bounds().least().y, outline.bounds().most().y);
            // Walls lie on multiples of 4 in, so each strip of 4 in has one width.
            let strip = Length::inches(4);
            let strips = (most - least).to_nm() / strip.to_nm();
            let area = (0..strips).flat_map(|n| outline.chords(Axis::X, least + strip * n)).map(|c| (c.to - c.from) * strip);
            prop_assert_eq!(area.sum::<crate::engine::units::Area>(), outline.area());
        }
    }
}
