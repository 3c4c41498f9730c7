//! Boxes and strokes on the canvas, in pixels.

use super::Spot;

/// A direction of length 1 on the canvas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Way {
    pub(super) x: f64,
    pub(super) y: f64,
}

/// A box square to the canvas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PxBox {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

/// A straight stroke.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stroke {
    pub(super) from: Spot,
    pub(super) to: Spot,
}

impl Spot {
    pub(super) fn gone(self, way: Way, by: f64) -> Self {
        Self { x: self.x + way.x * by, y: self.y + way.y * by }
    }

    pub(super) fn halfway(self, other: Self) -> Self {
        Self { x: (self.x + other.x) / 2.0, y: (self.y + other.y) / 2.0 }
    }
}

impl Way {
    /// A quarter turn counter-clockwise on the canvas.
    pub(super) fn left(self) -> Self {
        Self { x: self.y, y: -self.x }
    }

    pub(super) fn back(self) -> Self {
        Self { x: -self.x, y: -self.y }
    }

    /// Does it run more across the canvas than up or down?
    pub(super) const fn is_across(self) -> bool {
        self.x.abs() >= self.y.abs()
    }
}

impl PxBox {
    pub(super) fn around(middle: Spot, width: f64, height: f64) -> Self {
        let (across, down) = (width / 2.0, height / 2.0);
        Self { left: middle.x - across, top: middle.y - down, right: middle.x + across, bottom: middle.y + down }
    }

    pub(super) fn middle(self) -> Spot {
        Spot { x: (self.left + self.right) / 2.0, y: (self.top + self.bottom) / 2.0 }
    }

    pub(super) fn width(self) -> f64 {
        self.right - self.left
    }

    pub(super) fn height(self) -> f64 {
        self.bottom - self.top
    }

    pub(super) fn grown(self, by: f64) -> Self {
        Self { left: self.left - by, top: self.top - by, right: self.right + by, bottom: self.bottom + by }
    }

    pub(super) fn overlaps(self, other: Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    pub(super) fn is_within(self, other: Self) -> bool {
        self.left >= other.left && self.right <= other.right && self.top >= other.top && self.bottom <= other.bottom
    }

    /// The spot in it that lies nearest `spot`.
    pub(super) fn nearest(self, spot: Spot) -> Spot {
        Spot { x: spot.x.max(self.left).min(self.right), y: spot.y.max(self.top).min(self.bottom) }
    }

    fn corners(self) -> [Spot; 4] {
        let Self { left, top, right, bottom } = self;
        [(left, top), (right, top), (right, bottom), (left, bottom)].map(|(x, y)| Spot { x, y })
    }

    /// Does `stroke` pass through it?
    pub(super) fn is_hit_by(self, stroke: Stroke) -> bool {
        // A stroke along an axis has a box without width, which overlaps all the same.
        self.overlaps(stroke.bounds()) && {
            let hands = self.corners().map(|corner| stroke.hand(corner));
            !(hands.iter().all(|hand| *hand > 0.0) || hands.iter().all(|hand| *hand < 0.0))
        }
    }
}

impl Stroke {
    pub(super) const fn new(from: Spot, to: Spot) -> Self {
        Self { from, to }
    }

    pub(super) fn length(self) -> f64 {
        libm::hypot(self.to.x - self.from.x, self.to.y - self.from.y)
    }

    pub(super) fn middle(self) -> Spot {
        self.from.halfway(self.to)
    }

    /// Which way it runs; nothing for a stroke without length.
    pub(super) fn way(self) -> Option<Way> {
        let length = self.length();
        (length > f64::EPSILON)
            .then(|| Way { x: (self.to.x - self.from.x) / length, y: (self.to.y - self.from.y) / length })
    }

    /// Does it lead to the side that `way` points to?
    pub(super) fn heads(self, way: Way) -> bool {
        (self.to.x - self.from.x) * way.x + (self.to.y - self.from.y) * way.y > 0.0
    }

    /// Moved sideways, `by` pixels along `way`.
    pub(super) fn moved(self, way: Way, by: f64) -> Self {
        Self { from: self.from.gone(way, by), to: self.to.gone(way, by) }
    }

    /// Made longer at both ends, or shorter when `by` is negative.
    pub(super) fn stretched(self, by: f64) -> Self {
        self.way().map_or(self, |way| Self { from: self.from.gone(way, -by), to: self.to.gone(way, by) })
    }

    pub(super) fn bounds(self) -> PxBox {
        let Self { from, to } = self;
        PxBox { left: from.x.min(to.x), top: from.y.min(to.y), right: from.x.max(to.x), bottom: from.y.max(to.y) }
    }

    fn hand(self, spot: Spot) -> f64 {
        (self.to.x - self.from.x) * (spot.y - self.from.y) - (self.to.y - self.from.y) * (spot.x - self.from.x)
    }

    /// Do they cross, each passing to the other's far side?
    pub(super) fn crosses(self, other: Self) -> bool {
        let parted = |by: Self, ends: Self| by.hand(ends.from) * by.hand(ends.to) < 0.0;
        parted(self, other) && parted(other, self)
    }

    /// Do they run side by side, nearer than `gap`, for some part of their length?
    /// Only strokes along the canvas's axes are ever told so.
    pub(super) fn crowds(self, other: Self, gap: f64) -> bool {
        let (a, b) = (self.bounds(), other.bounds());
        let flat = |of: PxBox| of.height() < 0.5;
        let upright = |of: PxBox| of.width() < 0.5;
        if flat(a) && flat(b) {
            (a.top - b.top).abs() < gap && a.left < b.right && b.left < a.right
        } else if upright(a) && upright(b) {
            (a.left - b.left).abs() < gap && a.top < b.bottom && b.top < a.bottom
        } else {
            false
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stroke(x0: f64, y0: f64, x1: f64, y1: f64) -> Stroke {
        Stroke::new(Spot { x: x0, y: y0 }, Spot { x: x1, y: y1 })
    }

    #[test]
    fn a_box_is_hit_by_what_passes_through_it_and_not_by_what_passes_its_corner() {
        let area = PxBox { left: 0.0, top: 0.0, right: 10.0, bottom: 10.0 };
        assert!(area.is_hit_by(stroke(-5.0, 5.0, 15.0, 5.0)));
        assert!(area.is_hit_by(stroke(2.0, 2.0, 3.0, 3.0)));
        assert!(area.is_hit_by(stroke(5.0, -5.0, 5.0, 15.0)));
        assert!(!area.is_hit_by(stroke(-5.0, 4.0, 4.0, -5.0)));
        assert!(!area.is_hit_by(stroke(-5.0, 11.0, 15.0, 11.0)));
    }

    #[test]
    fn strokes_that_only_touch_do_not_cross() {
        assert!(stroke(0.0, 0.0, 10.0, 0.0).crosses(stroke(5.0, -5.0, 5.0, 5.0)));
        assert!(!stroke(0.0, 0.0, 10.0, 0.0).crosses(stroke(5.0, 0.0, 5.0, 5.0)));
    }

    #[test]
    fn neighbours_in_one_line_do_not_crowd_each_other_and_parallels_do() {
        let string = stroke(0.0, 0.0, 10.0, 0.0);
        assert!(!string.crowds(stroke(10.0, 0.0, 20.0, 0.0), 5.0));
        assert!(string.crowds(stroke(8.0, 3.0, 20.0, 3.0), 5.0));
        assert!(!string.crowds(stroke(8.0, 6.0, 20.0, 6.0), 5.0));
    }
}
