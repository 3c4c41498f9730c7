//! Rectangles square to the axes: openings, sheets, bounds.

use super::Point;
use crate::engine::units::{Area, Length};

/// A rectangle square to the axes that has some width and some height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Rect {
    least: Point,
    most: Point,
}

impl Rect {
    /// The rectangle between two opposite corners, whichever they are; nothing when
    /// they lie on one line along an axis.
    pub fn between(a: Point, b: Point) -> Option<Self> {
        let (least, most) = (a.min(b), a.max(b));
        (least.x < most.x && least.y < most.y).then_some(Self { least, most })
    }

    /// The least rectangle around points that do not all lie on one line along an
    /// axis. Of those that do, it makes a rectangle without area, which the caller
    /// rules out.
    pub fn around(points: &[Point]) -> Self {
        let extreme = |pick: fn(Point, Point) -> Point| points.iter().copied().reduce(pick).unwrap_or_default();
        Self { least: extreme(Point::min), most: extreme(Point::max) }
    }

    /// The corner nearest the page's top left.
    pub const fn least(self) -> Point {
        self.least
    }

    /// The corner nearest the page's bottom right.
    pub const fn most(self) -> Point {
        self.most
    }

    /// Its extent along `x`.
    pub fn width(self) -> Length {
        self.most.x - self.least.x
    }

    /// Its extent along `y`.
    pub fn height(self) -> Length {
        self.most.y - self.least.y
    }

    /// Its area, exact.
    pub fn area(self) -> Area {
        self.width() * self.height()
    }

    /// The corners, clockwise on the page from the top left.
    pub const fn corners(self) -> [Point; 4] {
        let Self { least, most } = self;
        [least, Point::new(most.x, least.y), most, Point::new(least.x, most.y)]
    }

    /// Do both share some area? Touching is not sharing.
    pub fn overlaps(self, other: Self) -> bool {
        let (least, most) = (self.least.max(other.least), self.most.min(other.most));
        least.x < most.x && least.y < most.y
    }

    /// The same with every side moved out.
    #[must_use]
    pub fn grown(self, by: Length) -> Self {
        let Self { least, most } = self;
        Self { least: Point::new(least.x - by, least.y - by), most: Point::new(most.x + by, most.y + by) }
    }

    /// Does `point` lie in it or on its edge?
    pub fn contains(self, point: Point) -> bool {
        (self.least.x..=self.most.x).contains(&point.x) && (self.least.y..=self.most.y).contains(&point.y)
    }

    /// The same rectangle on a plan seen from below.
    #[must_use]
    pub fn mirrored(self) -> Self {
        let (a, b) = (self.least.mirrored(), self.most.mirrored());
        Self { least: a.min(b), most: a.max(b) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(x: i32, y: i32) -> Point {
        Point::new(Length::inches(x), Length::inches(y))
    }

    #[test]
    fn a_rectangle_has_some_width_and_some_height() {
        assert_eq!(Rect::between(at(0, 0), at(0, 4)), None);
        assert_eq!(Rect::between(at(0, 0), at(4, 0)), None);
        assert_eq!(Rect::between(at(0, 0), at(48, 96)).map(Rect::area), Some(Area::square_feet(32)));
    }

    proptest! {
        #[test]
        fn the_order_of_the_corners_does_not_matter(x0: i16, y0: i16, x1: i16, y1: i16) {
            let (a, b) = (at(x0.into(), y0.into()), at(x1.into(), y1.into()));
            let (c, d) = (Point::new(a.x, b.y), Point::new(b.x, a.y));
            prop_assert_eq!(Rect::between(a, b), Rect::between(b, a));
            prop_assert_eq!(Rect::between(a, b), Rect::between(c, d));
        }

        #[test]
        fn a_mirror_keeps_the_area_and_undoes_itself(x0: i16, y0: i16, x1: i16, y1: i16) {
            let Some(rect) = Rect::between(at(x0.into(), y0.into()), at(x1.into(), y1.into())) else {
                return Ok(());
            };
            prop_assert_eq!(rect.mirrored().area(), rect.area());
            prop_assert_eq!(rect.mirrored().mirrored(), rect);
            prop_assert!(rect.corners().into_iter().all(|corner| rect.contains(corner)));
            prop_assert!(rect.corners().into_iter().all(|corner| rect.mirrored().contains(corner.mirrored())));
        }
    }
}
