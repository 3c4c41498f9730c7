//! A walk along walls, side by side as they are measured.

use super::{ClosingError, Point, Segment, Turn, Vector};
use crate::engine::units::{Angle, Length};

/// How near its start a walk that has turned once round must end to count as
/// come round: 3 in. More than honest tape readings lose over a room's sides, less
/// than the shortest jog that anybody measures. A display rule of our own: it
/// decides when the app offers to close, never what is computed.
pub const COME_ROUND_TOLERANCE: Length = Length::inches(3);

/// How near to one whole turn the turns of a room must add up: 20 degrees. Less than
/// half the flattest corner that is built (45 degrees), more than rough angles of a
/// bay lose. A display rule of our own.
pub const ROUND_TOLERANCE: Angle = Angle::degrees(20);

/// One whole turn.
const ONCE_ROUND: Angle = Angle::degrees(360);

/// One side as measured, and how far the wall turns at its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Step {
    /// How long the side is.
    pub length: Length,
    /// The turn at its end, clockwise positive.
    pub turn: Angle,
}

/// The sides walked so far, from the origin, the first one heading East.
///
/// A walk takes any lengths as they come, wrong ones too, and says what they add
/// up to; only an [`Outline`](super::Outline) vouches for its shape. Along the axes
/// its corners are exact, else each side ends at the nearest nanometre.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Walk {
    steps: Vec<Step>,
}

impl Step {
    /// A side that ends in a square corner.
    pub const fn square(length: Length, turn: Turn) -> Self {
        Self { length, turn: turn.quarter() }
    }
}

impl Walk {
    /// The walk along `steps`.
    pub fn new(steps: impl IntoIterator<Item = Step>) -> Self {
        Self { steps: steps.into_iter().collect() }
    }

    /// The sides as measured.
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// The direction of each side in turn, clockwise from East.
    pub fn bearings(&self) -> impl Iterator<Item = Angle> {
        self.steps.iter().scan(Angle::ZERO, |next, step| {
            let bearing = *next;
            *next = bearing + step.turn;
            Some(bearing)
        })
    }

    /// Every corner reached, the origin first and the end of the last side last:
    /// one more than there are sides.
    pub fn corners(&self) -> Vec<Point> {
        std::iter::once(Point::ORIGIN).chain(self.sides().map(|side| side.to)).collect()
    }

    /// The sides in turn.
    pub fn sides(&self) -> impl Iterator<Item = Segment> {
        self.steps.iter().zip(self.bearings()).scan(Point::ORIGIN, |at, (step, bearing)| {
            let from = *at;
            *at = from + Vector::towards(bearing, step.length);
            Some(Segment { from, to: *at })
        })
    }

    /// Where the last side ends.
    pub fn end(&self) -> Point {
        self.sides().last().map_or(Point::ORIGIN, |side| side.to)
    }

    /// All turns together, clockwise positive.
    pub fn turned(&self) -> Angle {
        self.steps.iter().map(|step| step.turn).sum()
    }

    /// Which way round the walk has turned, if it has turned once round, within
    /// [`ROUND_TOLERANCE`].
    pub fn turned_round(&self) -> Option<Turn> {
        let is_round = |turned: Angle| (turned - ONCE_ROUND).abs() <= ROUND_TOLERANCE;
        let turned = self.turned();
        if is_round(turned) {
            Some(Turn::Right)
        } else if is_round(-turned) {
            Some(Turn::Left)
        } else {
            None
        }
    }

    /// How far the end misses the start.
    pub fn closing_error(&self) -> ClosingError {
        ClosingError {
            gap: self.end() - Point::ORIGIN,
            perimeter: self.steps.iter().map(|step| step.length.abs()).sum(),
        }
    }

    /// Has it come round: turned once round, and ended within
    /// [`COME_ROUND_TOLERANCE`] of its start?
    pub fn has_come_round(&self) -> bool {
        self.turned_round().is_some() && self.closing_error().misclosure() <= COME_ROUND_TOLERANCE
    }
}

#[cfg(test)]
mod tests {
    use super::super::rooms;
    use super::*;
    use proptest::prelude::*;

    fn right(inches: i32) -> Step {
        Step::square(Length::inches(inches), Turn::Right)
    }

    fn left(inches: i32) -> Step {
        Step::square(Length::inches(inches), Turn::Left)
    }

    /// An L of 11 ft by 10 ft, walked clockwise.
    fn ell() -> Vec<Step> {
        vec![right(132), right(72), left(40), right(48), right(92), right(120)]
    }

    #[test]
    fn an_empty_walk_stands_at_its_start_and_has_not_come_round() {
        let walk = Walk::new([]);
        assert_eq!(walk.corners(), [Point::ORIGIN]);
        assert_eq!(walk.turned(), Angle::ZERO);
        assert!(!walk.has_come_round());
    }

    #[test]
    fn corners_grow_one_by_one() {
        for sides in 0..=ell().len() {
            let shorter = Walk::new(ell().into_iter().take(sides));
            assert_eq!(shorter.corners(), Walk::new(ell()).corners()[..=sides]);
        }
    }

    #[test]
    fn an_ell_comes_round_and_closes_exactly() {
        let walk = Walk::new(ell());
        assert_eq!(walk.closing_error().misclosure(), Length::ZERO);
        assert_eq!(walk.closing_error().perimeter, Length::inches(504));
        assert_eq!(walk.turned_round(), Some(Turn::Right));
        assert!(walk.has_come_round());
    }

    #[test]
    fn a_foot_lost_is_a_foot_short_of_the_start() {
        let mut steps = ell();
        steps[3].length = Length::inches(36);
        let walk = Walk::new(steps);
        assert!(!walk.has_come_round());
        assert_eq!(walk.closing_error().misclosure(), Length::FOOT);
    }

    #[test]
    fn a_half_walked_room_that_passes_near_its_start_has_not_come_round() {
        let walk = Walk::new([right(100), right(1), right(100)]);
        assert!(walk.closing_error().misclosure() < COME_ROUND_TOLERANCE);
        assert!(!walk.has_come_round());
    }

    /// A bay of three equal walls before a straight one: corners of 45 and 90 + 45
    /// degrees. Each slanting wall of 3 ft goes 3 / √2 ft out.
    #[test]
    fn a_bay_with_slanting_walls_comes_round() {
        let turn = |inches, degrees| Step { length: Length::inches(inches), turn: Angle::degrees(degrees) };
        let walk = Walk::new([turn(36, 45), turn(36, 45 + 90), turn(87, 90 + 45), turn(36, 45)]);
        assert_eq!(walk.turned(), Angle::degrees(360));
        assert!(walk.has_come_round(), "{:?}", walk.closing_error());
        let roughly = Walk::new([turn(36, 44), turn(36, 134), turn(87, 136), turn(36, 50)]);
        assert_eq!(roughly.turned_round(), Some(Turn::Right));
    }

    #[test]
    fn five_hundred_sides_of_a_kilometre_do_not_overflow() {
        let longest = Length::nm(crate::engine::units::limits::LENGTH.most);
        let steps = (0..500).map(|side| Step::square(longest, if side % 2 == 0 { Turn::Right } else { Turn::Left }));
        let walk = Walk::new(steps);
        let error = walk.closing_error();
        assert_eq!(error.gap.dx, longest * 250);
        assert_eq!(error.perimeter, longest * 500);
        assert_eq!(error.one_part_in(), Some(1));
    }

    #[test]
    fn the_usual_rooms_come_round() {
        for (name, room) in rooms::named() {
            assert!(rooms::walk_round(room.corners()).has_come_round(), "{name}");
        }
    }

    proptest! {
        #[test]
        fn a_room_walked_round_closes_exactly(room in rooms::any_room()) {
            let walk = rooms::walk_round(&room);
            prop_assert!(walk.has_come_round());
            prop_assert_eq!(walk.closing_error().misclosure(), Length::ZERO);
        }

        #[test]
        fn turning_the_walk_does_not_change_what_it_misses(
            room in rooms::any_room(), off in 1_i32..=4_000, degrees in 1_i32..=359,
        ) {
            let mut steps = rooms::walk_round(&room).steps().to_vec();
            steps[0].length = steps[0].length + Length::sixty_fourths(off);
            let straight = Walk::new(steps.clone()).closing_error().misclosure();
            // A first side of nothing turns all that follow.
            steps.insert(0, Step { length: Length::ZERO, turn: Angle::degrees(degrees) });
            let slanting = Walk::new(steps.clone()).closing_error().misclosure();
            prop_assert!((slanting - straight).abs() <= Length::nm(i64::try_from(steps.len()).unwrap() + 1));
        }
    }
}
