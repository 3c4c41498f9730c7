//! Places, and displacements between them.

use super::{Axis, Heading};
use crate::engine::units::{Angle, Area, Length};
use std::ops::{Add, Neg, Sub};

/// A place in job coordinates: `x` to the right, `y` down the page, of a plan
/// seen from above.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Point {
    /// To the right of the origin.
    pub x: Length,
    /// Below the origin on the page.
    pub y: Length,
}

/// How far it is from one place to another, along each axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Vector {
    /// To the right.
    pub dx: Length,
    /// Down the page.
    pub dy: Length,
}

impl Point {
    /// Where a walk starts.
    pub const ORIGIN: Self = Self::new(Length::ZERO, Length::ZERO);

    /// The place `x` to the right of the origin and `y` below it.
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// The coordinate along `axis`.
    pub const fn along(self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
        }
    }

    /// The same place on a plan seen from below: `x` changes its sign.
    #[must_use]
    pub fn mirrored(self) -> Self {
        Self { x: -self.x, y: self.y }
    }

    /// The lesser of each coordinate.
    #[must_use]
    pub fn min(self, other: Self) -> Self {
        Self { x: self.x.min(other.x), y: self.y.min(other.y) }
    }

    /// The greater of each coordinate.
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        Self { x: self.x.max(other.x), y: self.y.max(other.y) }
    }
}

impl Vector {
    /// Nowhere.
    pub const ZERO: Self = Self { dx: Length::ZERO, dy: Length::ZERO };

    /// Going `length` in a direction, clockwise from the right: exact along the axes,
    /// else to the nearest nanometre.
    pub fn towards(bearing: Angle, length: Length) -> Self {
        if bearing.is_square() {
            return Heading::nearest(bearing).go(length);
        }
        let radians = bearing.to_radians();
        Self { dx: length.scaled(libm::cos(radians)), dy: length.scaled(libm::sin(radians)) }
    }

    /// The part along `axis`.
    pub const fn along(self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.dx,
            Axis::Y => self.dy,
        }
    }

    /// The straight-line length, to the nearest nanometre.
    pub fn length(self) -> Length {
        self.dx.hypot(self.dy)
    }

    /// The signed area of the parallelogram on both: positive when `other` lies
    /// clockwise of `self` on the page.
    pub fn cross(self, other: Self) -> Area {
        self.dx * other.dy - self.dy * other.dx
    }

    /// Positive when both go roughly the same way, zero when square.
    pub fn dot(self, other: Self) -> Area {
        self.dx * other.dx + self.dy * other.dy
    }
}

impl Add<Vector> for Point {
    type Output = Self;
    fn add(self, by: Vector) -> Self {
        Self { x: self.x + by.dx, y: self.y + by.dy }
    }
}

impl Sub for Point {
    type Output = Vector;
    fn sub(self, from: Self) -> Vector {
        Vector { dx: self.x - from.x, dy: self.y - from.y }
    }
}

impl Neg for Vector {
    type Output = Self;
    fn neg(self) -> Self {
        Self { dx: -self.dx, dy: -self.dy }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::units::limits::LENGTH;
    use proptest::prelude::*;

    fn length() -> impl Strategy<Value = Length> {
        (LENGTH.least..=LENGTH.most).prop_map(Length::nm)
    }

    fn vector() -> impl Strategy<Value = Vector> {
        (length(), length()).prop_map(|(dx, dy)| Vector { dx, dy })
    }

    proptest! {
        #[test]
        fn no_way_round_is_shorter_than_the_straight_line(a in vector(), b in vector()) {
            let straight = Vector { dx: a.dx + b.dx, dy: a.dy + b.dy }.length();
            // Each of the three lengths is rounded by at most half a nanometre.
            prop_assert!(straight <= a.length() + b.length() + Length::nm(2));
        }

        #[test]
        fn a_straight_line_is_no_shorter_than_either_part(v in vector()) {
            prop_assert!(v.length() >= v.dx.abs().max(v.dy.abs()));
            prop_assert!(v.length() <= v.dx.abs() + v.dy.abs());
        }

        #[test]
        fn cross_changes_sign_with_the_order_and_dot_does_not(a in vector(), b in vector()) {
            prop_assert_eq!(a.cross(b), -b.cross(a));
            prop_assert_eq!(a.dot(b), b.dot(a));
        }

        #[test]
        fn going_there_and_back_is_going_nowhere(v in vector()) {
            prop_assert_eq!(Point::ORIGIN + v + -v, Point::ORIGIN);
            prop_assert_eq!((Point::ORIGIN + v) - Point::ORIGIN, v);
        }
    }
}
