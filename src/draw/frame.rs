//! Where the job lies on the canvas.

use super::Spot;
use super::px::PxBox;
use crate::engine::geometry::Point;
use crate::engine::units::Length;

/// The least extent drawn along either axis: a lone point or a single short side is
/// not blown up to fill the canvas.
const LEAST_EXTENT: Length = Length::inches(36);

/// The map between job coordinates and canvas pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// The point that lies at `at`.
    origin: Point,
    at: Spot,
    /// Pixels in an inch.
    scale: f64,
    from_below: bool,
}

/// What the points to be drawn span; it may have no width or no height.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Extent {
    pub(super) least: Point,
    pub(super) most: Point,
}

impl Extent {
    pub(super) fn of(points: impl Iterator<Item = Point>) -> Option<Self> {
        points
            .map(|point| Self { least: point, most: point })
            .reduce(|a, b| Self { least: a.least.min(b.least), most: a.most.max(b.most) })
    }

    fn middle(self) -> Point {
        Point::new((self.least.x + self.most.x).half(), (self.least.y + self.most.y).half())
    }
}

impl Frame {
    /// The frame that shows `extent` as large as it goes in the middle of `area`.
    pub(super) fn fit(extent: Extent, area: PxBox, from_below: bool) -> Self {
        let span = extent.most - extent.least;
        let inches = |length: Length| length.max(LEAST_EXTENT).to_inches();
        // A canvas too small for its margins gets a speck of a drawing, not an upside-down one.
        let scale = (area.width() / inches(span.dx)).min(area.height() / inches(span.dy)).max(0.01);
        Self { origin: extent.middle(), at: area.middle(), scale, from_below }
    }

    /// Where `point` lies on the canvas.
    pub fn spot(&self, point: Point) -> Spot {
        let from = point - self.origin;
        let right = if self.from_below { -from.dx } else { from.dx };
        Spot { x: self.at.x + self.px(right), y: self.at.y + self.px(from.dy) }
    }

    /// The job point at a spot of the canvas, to the nearest nanometre: what a tap means.
    pub fn point(&self, spot: Spot) -> Point {
        let right = self.length(spot.x - self.at.x);
        let dx = if self.from_below { -right } else { right };
        Point::new(self.origin.x + dx, self.origin.y + self.length(spot.y - self.at.y))
    }

    /// How many pixels a length takes.
    pub fn px(&self, length: Length) -> f64 {
        length.to_inches() * self.scale
    }

    /// The length that `px` pixels show.
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates, and so do lengths")]
    pub fn length(&self, px: f64) -> Length {
        Length::nm(libm::round(px / self.scale * Length::INCH.to_nm() as f64) as i64)
    }

    /// Is the job seen from below, left and right exchanged?
    pub const fn is_from_below(&self) -> bool {
        self.from_below
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(x: i32, y: i32) -> Point {
        Point::new(Length::inches(x), Length::inches(y))
    }

    fn frame(from_below: bool) -> Frame {
        let extent = Extent::of([at(-20, 10), at(140, 130)].into_iter()).unwrap();
        let area = PxBox { left: 30.0, top: 20.0, right: 350.0, bottom: 220.0 };
        Frame::fit(extent, area, from_below)
    }

    #[test]
    fn the_extent_fills_the_area_one_way_and_lies_in_its_middle_the_other() {
        let (top_left, bottom_right) = (frame(false).spot(at(-20, 10)), frame(false).spot(at(140, 130)));
        assert!((top_left.y - 20.0).abs() < 1e-9 && (bottom_right.y - 220.0).abs() < 1e-9);
        assert!((top_left.x + bottom_right.x - 380.0).abs() < 1e-9);
    }

    #[test]
    fn a_lone_point_lies_in_the_middle() {
        let area = PxBox { left: 0.0, top: 0.0, right: 100.0, bottom: 60.0 };
        let frame = Frame::fit(Extent::of(std::iter::once(at(7, 7))).unwrap(), area, false);
        assert_eq!(frame.spot(at(7, 7)), Spot { x: 50.0, y: 30.0 });
    }

    proptest! {
        #[test]
        fn a_tap_on_a_point_means_that_point(x in -500_i32..500, y in -500_i32..500, from_below: bool) {
            let frame = frame(from_below);
            let missed = frame.point(frame.spot(at(x, y))) - at(x, y);
            prop_assert!(missed.length() < Length::nm(1_000), "{missed:?}");
        }

        #[test]
        fn seen_from_below_left_and_right_change_places_and_nothing_else(x in -500_i32..500, y in -500_i32..500) {
            let (above, below) = (frame(false).spot(at(x, y)), frame(true).spot(at(x, y)));
            prop_assert!((above.y - below.y).abs() < 1e-9);
            prop_assert!((above.x + below.x - 2.0 * frame(false).at.x).abs() < 1e-9);
        }
    }
}
