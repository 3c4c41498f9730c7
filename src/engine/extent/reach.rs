//! Which floor readings reach.
//!
//! Between readings, and a little beyond them, the wood goes on as it was read. What lies
//! farther off nobody read: six readings in one leak say nothing of the other end of the
//! room, and twelve by the hatch nothing of the far wall.

use super::Spot;
use crate::engine::geometry::Point;
use crate::engine::units::{Length, MoistureContent};

/// So far from its place a reading reaches (judgement: what is wet is seldom narrower than
/// twice this, and a wall whose floor is all reached has readings no farther off it, so that
/// what is wet 4 ft along it was read).
pub const REACH: Length = Length::feet(4);

/// "At least" counts no floor farther than this from a reading surely over the limit (judgement:
/// carpenters read where it is wet, and so it is wet less far about their readings than between
/// readings that are spread evenly; `tests/calibration` reads as they do).
pub const CLOSE: Length = Length::feet(2);

/// Does a place lie so close to a reading surely over the limit that "at least" may count it?
pub(super) fn is_close(spots: &[Spot], at: Point, limit: MoistureContent) -> bool {
    let mut over = spots.iter().filter(|spot| spot.corrected.is_surely_above(limit));
    over.any(|spot| (spot.at - at).length() <= CLOSE)
}

/// Does any reading reach a place?
pub(super) fn is_reached(spots: &[Spot], at: Point) -> bool {
    spots.iter().any(|spot| reaches(spot.at, at))
}

/// Does what was, or would be, read at one place reach another?
pub(super) fn reaches(read: Point, at: Point) -> bool {
    (read - at).length() <= REACH
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::{DeviceId, EntryId};
    use crate::engine::moisture::{Corrected, Stands};

    fn percent(tenths: i32) -> MoistureContent {
        MoistureContent::from_percent_f64(f64::from(tenths) / 10.0)
    }

    fn spot(corrected: Corrected) -> [Spot; 1] {
        [Spot::of(EntryId { count: 1, device: DeviceId::new(1) }, Point::default(), corrected)]
    }

    fn away(from: Length, by: i64) -> Point {
        Point::new(from + Length::nm(by), Length::ZERO)
    }

    #[test]
    fn a_reading_reaches_so_far_and_no_farther_whatever_it_reads() {
        for tenths in [120, 300] {
            let spots = spot(Corrected::as_shown(Stands::At(percent(tenths))));
            assert_eq!([-1, 0, 1].map(|by| is_reached(&spots, away(REACH, by))), [true, true, false]);
        }
        assert!(!is_reached(&[], Point::default()));
    }

    #[test]
    fn at_least_counts_what_is_close_to_readings_over_the_limit_alone() {
        let limit = percent(190);
        let close = |stands: Stands| {
            let spots = spot(Corrected::as_shown(stands));
            [-1, 0, 1].map(|by| is_close(&spots, away(CLOSE, by), limit))
        };
        assert_eq!([189, 190].map(|tenths| close(Stands::At(percent(tenths)))), [[false; 3]; 2]);
        assert_eq!(close(Stands::At(percent(191))), [true, true, false]);
        assert_eq!(close(Stands::Over(percent(180))), [true, true, false], "past the scale is over every limit");
    }
}
