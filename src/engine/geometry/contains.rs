//! What lies inside an outline.

use super::{Outline, Point, Rect, Segment};
use crate::engine::units::Area;

impl Outline {
    /// Does `point` lie inside, or on a side?
    pub fn contains(&self, point: Point) -> bool {
        holds(self.sides(), point)
    }

    /// Does all of `rect` lie inside? It may touch the sides from within.
    pub fn holds_rect(&self, rect: Rect) -> bool {
        // No side passes through it, so it lies all inside or all outside, and its
        // middle tells which. Doubled, the middle needs no rounding.
        let middle = rect.least() + (rect.most() - Point::ORIGIN);
        let doubled = self.sides().map(|side| Segment { from: twice(side.from), to: twice(side.to) });
        !self.sides().any(|side| passes_through(side, rect)) && holds(doubled, middle)
    }
}

/// Do clockwise `sides` wind around `point`, or is it on one of them?
fn holds(sides: impl Iterator<Item = Segment>, point: Point) -> bool {
    let mut winding = 0_i32;
    for side in sides {
        if side.holds(point) {
            return true;
        }
        // A side counts if it passes the level of the point on the point's right;
        // one end belongs to it and the other does not, so no corner counts twice.
        if side.from.y <= point.y && point.y < side.to.y && side.hand(point) > Area::ZERO {
            winding += 1;
        } else if side.to.y <= point.y && point.y < side.from.y && side.hand(point) < Area::ZERO {
            winding -= 1;
        }
    }
    winding != 0
}

/// Does a side have a point inside `rect`, its edge not counted? A line separates
/// what has none: one of the rectangle's edges, or the side itself.
fn passes_through(side: Segment, rect: Rect) -> bool {
    let (least, most) = (side.from.min(side.to), side.from.max(side.to));
    let beside =
        most.x <= rect.least().x || least.x >= rect.most().x || most.y <= rect.least().y || least.y >= rect.most().y;
    let hands = rect.corners().map(|corner| side.hand(corner));
    let all_on_one_hand = hands.iter().all(|hand| *hand <= Area::ZERO) || hands.iter().all(|hand| *hand >= Area::ZERO);
    !beside && !all_on_one_hand
}

fn twice(point: Point) -> Point {
    Point::new(point.x * 2, point.y * 2)
}

#[cfg(test)]
mod tests {
    use super::super::{naive, rooms};
    use super::*;
    use crate::engine::units::Length;
    use proptest::prelude::*;

    fn at(x: i32, y: i32) -> Point {
        Point::new(Length::inches(x), Length::inches(y))
    }

    fn rect(x0: i32, y0: i32, x1: i32, y1: i32) -> Rect {
        Rect::between(at(x0, y0), at(x1, y1)).unwrap()
    }

    /// A U, open at the top between x = 40 and x = 80, down to y = 60.
    fn u() -> Outline {
        rooms::outline(&[(0, 0), (40, 0), (40, 60), (80, 60), (80, 0), (120, 0), (120, 100), (0, 100)])
    }

    #[test]
    fn walls_and_corners_belong_to_the_inside() {
        for point in [at(0, 0), at(20, 0), at(40, 30), at(60, 60), at(120, 50), at(60, 80), at(0, 100)] {
            assert!(u().contains(point), "{point:?}");
        }
        for point in [at(60, 30), at(60, 0), at(-1, 50), at(121, 50), at(60, 101), at(-5, 0), at(130, 0)] {
            assert!(!u().contains(point), "{point:?}");
        }
    }

    #[test]
    fn a_rectangle_that_fills_the_notch_is_outside_though_all_its_corners_are_on_walls() {
        assert!(rect(40, 0, 80, 60).corners().into_iter().all(|corner| u().contains(corner)));
        assert!(!u().holds_rect(rect(40, 0, 80, 60)));
    }

    #[test]
    fn a_rectangle_may_touch_the_walls_from_within_but_not_pass_them() {
        assert!(u().holds_rect(rect(0, 60, 120, 100)));
        assert!(u().holds_rect(rect(0, 0, 40, 100)));
        assert!(!u().holds_rect(rect(0, 59, 120, 100)));
        assert!(!u().holds_rect(rect(0, 0, 41, 100)));
        assert!(!u().holds_rect(rect(-10, 20, 130, 30)), "corners outside, both arms crossed");
        assert!(!u().holds_rect(rect(200, 0, 210, 10)));
    }

    #[test]
    fn a_sliver_one_nanometre_thin_is_judged_exactly() {
        let outside = Rect::between(at(120, 40), Point::new(at(120, 0).x + Length::nm(1), at(0, 50).y)).unwrap();
        let inside = Rect::between(at(120, 40), Point::new(at(120, 0).x - Length::nm(1), at(0, 50).y)).unwrap();
        assert!(!u().holds_rect(outside));
        assert!(u().holds_rect(inside));
    }

    proptest! {
        #[test]
        fn inside_is_where_a_ray_says_so(
            corners in prop::collection::vec((-4_i32..=4, -4_i32..=4), 3..8), x in -5_i32..=5, y in -5_i32..=5,
        ) {
            let corners = corners.into_iter().map(|(x, y)| at(x, y)).collect();
            if let Ok(outline) = Outline::new(corners) {
                prop_assert_eq!(outline.contains(at(x, y)), naive::contains(&outline, at(x, y)));
            }
        }

        // Steps of 2 in against walls on multiples of 4 in: on, beside and between them.
        #[test]
        fn a_room_holds_a_rectangle_if_it_holds_all_its_inches(
            room in rooms::any_room(), dx in 0_i32..100, dy in 0_i32..100, width in 1_i32..12, height in 1_i32..12,
        ) {
            let outline = Outline::new(room).unwrap();
            let from = outline.bounds().least();
            let least = Point::new(from.x + Length::inches(2 * dx), from.y + Length::inches(2 * dy));
            let most = Point::new(least.x + Length::inches(2 * width), least.y + Length::inches(2 * height));
            let rect = Rect::between(least, most).unwrap();
            let mut middles = (0..2 * width).flat_map(|x| (0..2 * height).map(move |y| {
                let half = |inches| Length::inches(inches) + Length::INCH.half();
                Point::new(least.x + half(x), least.y + half(y))
            }));
            prop_assert_eq!(outline.holds_rect(rect), middles.all(|middle| naive::contains(&outline, middle)));
        }
    }
}
