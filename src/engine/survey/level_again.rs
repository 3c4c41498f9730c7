//! Stations that are read again before anything hangs on them: one that lies far from those
//! beside it, and one of which two phones read different drops.

use super::flat::IN_LINE;
use super::level_plan::Station;
use crate::engine::units::Length;

/// A joist's top is read again where it differs from those beside it by more than this and a
/// twenty-fourth of their distance, which is a floor that falls half an inch a foot (judgement).
const STEP: Length = Length::INCH;
const FALL: f64 = 1.0 / 24.0;
/// Two readings of one spot agree when they are no farther apart: a laser's plane is off by as
/// much (common practice, no source).
pub const AGREE: Length = Length::sixty_fourths(8);

/// Does a station differ from all that was read beside it, across the joists or along its own?
pub(super) fn is_far_off(station: &Station, all: &[Station]) -> bool {
    let Some((joist, at)) = station.joist.zip(station.at) else { return false };
    let others = || all.iter().filter_map(|it| Some((it.joist?, it.at?, it.drop)));
    let next = |is_one: &dyn Fn(Side) -> bool| {
        others()
            .filter(|(number, spot, _)| is_one(side((joist, at), (*number, *spot))))
            .min_by_key(|(number, spot, _)| (number.get().abs_diff(joist.get()), (spot.1 - at.1).abs()))
    };
    let is_off = |(_, spot, drop): &(_, (Length, Length), Length)| {
        let apart = (spot.0 - at.0).hypot(spot.1 - at.1);
        (*drop - station.drop).abs() > STEP + apart.scaled(FALL)
    };
    let beside = |one: Side, other: Side| {
        let found: Vec<_> = [one, other].into_iter().filter_map(|which| next(&|is| is == which)).collect();
        !found.is_empty() && found.iter().all(is_off)
    };
    beside(Side::Below, Side::Above) || beside(Side::Before, Side::After)
}

/// On which side of a station another is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    /// On a joist of a lower number.
    Below,
    /// On one of a higher.
    Above,
    /// On the same, nearer to its start.
    Before,
    /// Farther.
    After,
    /// At the same spot.
    Here,
}

type Spot<Joist> = (Joist, (Length, Length));

fn side<Joist: Ord>(of: Spot<Joist>, other: Spot<Joist>) -> Side {
    let further = other.1.1 - of.1.1;
    match other.0.cmp(&of.0) {
        std::cmp::Ordering::Less => Side::Below,
        std::cmp::Ordering::Greater => Side::Above,
        std::cmp::Ordering::Equal if further > IN_LINE => Side::After,
        std::cmp::Ordering::Equal if -further > IN_LINE => Side::Before,
        std::cmp::Ordering::Equal => Side::Here,
    }
}

/// Were two readings of a spot, the last two of them, the same?
pub(super) fn is_confirmed(drops: &[Length]) -> bool {
    matches!(drops, [.., before, last] if (*last - *before).abs() <= AGREE)
}
