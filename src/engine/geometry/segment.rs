//! Straight sides, and how two of them meet. All answers are exact.

use super::{Point, Vector};
use crate::engine::units::{Area, Length};
use std::cmp::Ordering;

/// A straight side from one corner to the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Segment {
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

/// What two sides have in common.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Meeting {
    /// Nothing.
    Apart,
    /// A point of which at least one is an end, or a stretch of both.
    Touching,
    /// A single point inside both, where each goes over to the other's far side.
    Crossing,
}

impl Segment {
    /// From its start to its end.
    pub fn vector(self) -> Vector {
        self.to - self.from
    }

    /// Its length, to the nearest nanometre.
    pub fn length(self) -> Length {
        self.vector().length()
    }

    /// On which hand `point` lies: positive to the right of somebody walking the
    /// side, negative to the left, zero in line with it.
    pub fn hand(self, point: Point) -> Area {
        self.vector().cross(point - self.from)
    }

    /// Does `point` lie on it, ends included?
    pub fn holds(self, point: Point) -> bool {
        let (least, most) = (self.from.min(self.to), self.from.max(self.to));
        self.hand(point) == Area::ZERO && (least.x..=most.x).contains(&point.x) && (least.y..=most.y).contains(&point.y)
    }

    /// How it meets `other`.
    pub fn meets(self, other: Self) -> Meeting {
        let parted = |by: Self, ends: Self| opposite(by.hand(ends.from), by.hand(ends.to));
        if parted(self, other) && parted(other, self) {
            Meeting::Crossing
        } else if self.holds(other.from) || self.holds(other.to) || other.holds(self.from) || other.holds(self.to) {
            Meeting::Touching
        } else {
            Meeting::Apart
        }
    }

    /// Does `next`, which starts where this side ends, run back over it?
    pub fn is_folded_by(self, next: Self) -> bool {
        self.vector().cross(next.vector()) == Area::ZERO && self.vector().dot(next.vector()) < Area::ZERO
    }
}

/// Do two signed areas lie strictly on either side of zero?
fn opposite(a: Area, b: Area) -> bool {
    let sign = |area: Area| area.cmp(&Area::ZERO);
    sign(a) != Ordering::Equal && sign(a).reverse() == sign(b)
}

#[cfg(test)]
mod tests {
    use super::super::naive;
    use super::*;
    use proptest::prelude::*;

    fn segment(x0: i32, y0: i32, x1: i32, y1: i32) -> Segment {
        let at = |x, y| Point::new(Length::mm(x), Length::mm(y));
        Segment { from: at(x0, y0), to: at(x1, y1) }
    }

    #[test]
    fn a_cross_crosses_a_tee_touches_and_parallels_stay_apart() {
        let bar = segment(0, 0, 4, 0);
        assert_eq!(bar.meets(segment(2, -1, 2, 1)), Meeting::Crossing);
        assert_eq!(bar.meets(segment(2, 0, 2, 3)), Meeting::Touching);
        assert_eq!(bar.meets(segment(4, 0, 7, 0)), Meeting::Touching);
        assert_eq!(bar.meets(segment(1, 0, 9, 0)), Meeting::Touching);
        assert_eq!(bar.meets(segment(0, 1, 4, 1)), Meeting::Apart);
        assert_eq!(bar.meets(segment(5, 0, 9, 0)), Meeting::Apart);
        assert_eq!(bar.meets(segment(5, -1, 5, 1)), Meeting::Apart);
    }

    proptest! {
        // A small grid, so that touching, overlap and common ends are frequent.
        #[test]
        fn sides_meet_where_fractions_say_so(c in proptest::array::uniform8(-3_i32..=3)) {
            let (a, b) = (segment(c[0], c[1], c[2], c[3]), segment(c[4], c[5], c[6], c[7]));
            prop_assume!(a.from != a.to && b.from != b.to);
            prop_assert_eq!(a.meets(b) != Meeting::Apart, naive::share_a_point(a, b));
            prop_assert_eq!(a.meets(b), b.meets(a));
        }
    }
}
