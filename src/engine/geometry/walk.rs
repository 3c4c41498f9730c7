//! A walk along rectilinear walls, side by side as they are measured.

use super::{Axis, ClosingError, Heading, Point, Segment, Suspect, Turn};
use crate::engine::units::Length;

/// How near its start a walk that has turned once round must end to count as
/// come round: 3 in. More than honest tape readings lose over a room's sides, less
/// than the shortest jog that anybody measures. A display rule of our own: it
/// decides when the app offers to close, never what is computed.
pub const COME_ROUND_TOLERANCE: Length = Length::inches(3);

/// Quarter turns in one turn round.
const ONCE_ROUND: i64 = 4;

/// One side as measured, and which way the wall turns at its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Step {
    /// How long the side is.
    pub length: Length,
    /// The turn at its end.
    pub turn: Turn,
}

/// The sides walked so far, from the origin, the first one heading East.
///
/// A walk takes any lengths as they come, wrong ones too, and says what they add
/// up to; only an [`Outline`](super::Outline) vouches for its shape.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Walk {
    steps: Vec<Step>,
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

    /// The heading of each side in turn.
    pub fn headings(&self) -> impl Iterator<Item = Heading> {
        self.steps.iter().scan(Heading::East, |next, step| {
            let heading = *next;
            *next = heading.turned(step.turn);
            Some(heading)
        })
    }

    /// Where the next side would head.
    pub fn heading(&self) -> Heading {
        self.steps.iter().fold(Heading::East, |heading, step| heading.turned(step.turn))
    }

    /// Every corner reached, the origin first and the end of the last side last:
    /// one more than there are sides.
    pub fn corners(&self) -> Vec<Point> {
        std::iter::once(Point::ORIGIN).chain(self.sides().map(|side| side.to)).collect()
    }

    /// The sides in turn.
    pub fn sides(&self) -> impl Iterator<Item = Segment> {
        self.steps.iter().zip(self.headings()).scan(Point::ORIGIN, |at, (step, heading)| {
            let from = *at;
            *at = from + heading.go(step.length);
            Some(Segment { from, to: *at })
        })
    }

    /// Where the last side ends.
    pub fn end(&self) -> Point {
        self.sides().last().map_or(Point::ORIGIN, |side| side.to)
    }

    /// Quarter turns made in all, clockwise positive.
    pub fn quarter_turns(&self) -> i64 {
        self.steps.iter().map(|step| step.turn.quarter_turns()).sum()
    }

    /// Which way round the walk has turned, if it has turned once round.
    pub fn turned_round(&self) -> Option<Turn> {
        match self.quarter_turns() {
            ONCE_ROUND => Some(Turn::Right),
            turns if turns == -ONCE_ROUND => Some(Turn::Left),
            _ => None,
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

    /// The numbers of the sides along `axis`.
    pub fn sides_along(&self, axis: Axis) -> impl Iterator<Item = usize> {
        self.headings().enumerate().filter(move |(_, heading)| heading.axis() == axis).map(|(side, _)| side)
    }

    /// The sides of which one alone could explain the gap of a walk that has turned
    /// round: those along the gap's axis, when it lies along one, that the
    /// correction leaves with some length. Any of them would do: which one it was,
    /// only measuring again can tell.
    pub fn suspects(&self) -> Vec<Suspect> {
        let error = self.closing_error();
        let (Some(axis), Some(_)) = (error.pure_axis(), self.turned_round()) else {
            return Vec::new();
        };
        let gap = error.gap.along(axis);
        let sides = self.steps.iter().zip(self.headings()).enumerate();
        sides
            .filter(|(_, (_, heading))| heading.axis() == axis)
            .map(|(side, (step, heading))| {
                let too_long = if heading.is_forward() { gap } else { -gap };
                Suspect { side, would_be: step.length - too_long }
            })
            .filter(|suspect| suspect.would_be.is_positive())
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::rooms;
    use super::*;
    use proptest::prelude::*;

    fn right(inches: i32) -> Step {
        Step { length: Length::inches(inches), turn: Turn::Right }
    }

    fn left(inches: i32) -> Step {
        Step { length: Length::inches(inches), turn: Turn::Left }
    }

    /// An L of 11 ft by 10 ft, walked clockwise.
    fn ell() -> Vec<Step> {
        vec![right(132), right(72), left(40), right(48), right(92), right(120)]
    }

    #[test]
    fn an_empty_walk_stands_at_its_start_and_has_not_come_round() {
        let walk = Walk::new([]);
        assert_eq!(walk.corners(), [Point::ORIGIN]);
        assert_eq!(walk.heading(), Heading::East);
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
        assert!(walk.suspects().is_empty());
    }

    #[test]
    fn a_foot_lost_along_y_may_be_any_of_the_sides_along_y() {
        let mut steps = ell();
        steps[3].length = Length::inches(36);
        let walk = Walk::new(steps);
        assert!(!walk.has_come_round());
        let suspects: Vec<_> = walk.suspects().iter().map(|s| (s.side, s.would_be)).collect();
        assert_eq!(suspects, [(1, Length::inches(84)), (3, Length::inches(48)), (5, Length::inches(108))]);
    }

    #[test]
    fn a_side_that_would_have_to_vanish_is_no_suspect() {
        let walk = Walk::new([right(100), right(60), right(6), right(60)]);
        let suspects: Vec<_> = walk.suspects().iter().map(|s| (s.side, s.would_be)).collect();
        assert_eq!(suspects, [(0, Length::inches(6)), (2, Length::inches(100))]);
        let walk = Walk::new([right(6), right(60), right(100), right(160), right(200)]);
        assert!(walk.suspects().is_empty(), "five right turns are more than once round");
    }

    #[test]
    fn a_half_walked_room_that_passes_near_its_start_has_not_come_round() {
        let walk = Walk::new([right(100), right(1), right(100)]);
        assert!(walk.closing_error().misclosure() < COME_ROUND_TOLERANCE);
        assert!(!walk.has_come_round());
    }

    #[test]
    fn five_hundred_sides_of_a_kilometre_do_not_overflow() {
        let longest = Length::nm(crate::engine::units::limits::LENGTH.most);
        let steps =
            (0..500).map(|side| Step { length: longest, turn: if side % 2 == 0 { Turn::Right } else { Turn::Left } });
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
        fn correcting_any_suspect_closes_its_axis(
            room in rooms::any_room(), which in any::<prop::sample::Index>(), off in 17_i32..=4_000,
        ) {
            let mut steps = rooms::walk_round(&room).steps().to_vec();
            let wrong = which.index(steps.len());
            steps[wrong].length = steps[wrong].length + Length::sixty_fourths(off);
            let walk = Walk::new(steps.clone());
            let axis = walk.headings().nth(wrong).unwrap().axis();
            prop_assert_eq!(walk.closing_error().pure_axis(), Some(axis));
            let suspects = walk.suspects();
            prop_assert!(suspects.iter().any(|suspect| suspect.side == wrong), "the wrong side is among them");
            for suspect in suspects {
                prop_assert!(walk.sides_along(axis).any(|side| side == suspect.side));
                let mut corrected = steps.clone();
                corrected[suspect.side].length = suspect.would_be;
                prop_assert_eq!(Walk::new(corrected).closing_error().misclosure(), Length::ZERO);
            }
        }
    }
}
