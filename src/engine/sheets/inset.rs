//! A floor's outline moved inwards, for the gap around sheets.

use super::layout::{Corner, twice_the_area};

/// The polygon with every side moved inwards by so many sixteenths: exact where sides
/// are square to the axes, else to the nearest sixteenth. None where so much is taken off
/// that a side is gone, or runs the other way.
pub fn inset(outline: &[Corner], by: i32) -> Option<Vec<Corner>> {
    let count = outline.len();
    let corner = |at: usize| outline.get(at % count).copied().unwrap_or_default();
    let turned = twice_the_area(outline).signum() as f64;
    // The unit vector that points inwards from a side.
    let inwards = |side: usize| {
        let (from, to) = (corner(side), corner(side + 1));
        let (dx, dy) = (f64::from(to.0 - from.0), f64::from(to.1 - from.1));
        let length = libm::hypot(dx, dy);
        if length > 0.0 { (-dy / length * turned, dx / length * turned) } else { (0.0, 0.0) }
    };
    let moved = (0..count).map(|at| {
        let (one, other) = (inwards(at + count - 1), inwards(at));
        // Where both moved sides meet. A corner as sharp as a needle is moved as if it
        // were not: the layout then says what is wrong with it.
        let together = (1.0 + one.0 * other.0 + one.1 * other.1).max(0.1);
        let step = |a: f64, b: f64| f64::from(by) * (a + b) / together;
        let (x, y) = corner(at);
        (nearest(f64::from(x) + step(one.0, other.0)), nearest(f64::from(y) + step(one.1, other.1)))
    });
    let moved: Vec<_> = moved.collect();
    let is_there = |at: usize| {
        let (from, to) = (moved.get(at)?, moved.get((at + 1) % count)?);
        let (dx, dy) = (corner(at + 1).0 - corner(at).0, corner(at + 1).1 - corner(at).1);
        let along = i64::from(to.0 - from.0) * i64::from(dx) + i64::from(to.1 - from.1) * i64::from(dy);
        (along > 0).then_some(())
    };
    (0..count).try_for_each(is_there)?;
    Some(moved)
}

#[expect(clippy::cast_possible_truncation, reason = "a float cast saturates, and a case refuses what is too far")]
fn nearest(sixteenths: f64) -> i32 {
    libm::round(sixteenths) as i32
}

#[cfg(test)]
mod tests {
    use super::*;

    const ELL: [Corner; 6] = [(0, 0), (200, 0), (200, 100), (120, 100), (120, 180), (0, 180)];

    #[test]
    fn square_corners_move_exactly_either_way_round() {
        let moved = [(3, 3), (197, 3), (197, 97), (117, 97), (117, 177), (3, 177)];
        assert_eq!(inset(&ELL, 3), Some(moved.to_vec()));
        let mut backwards = ELL;
        backwards.reverse();
        let mut expected = moved;
        expected.reverse();
        assert_eq!(inset(&backwards, 3), Some(expected.to_vec()));
        assert_eq!(inset(&ELL, 0), Some(ELL.to_vec()));
    }

    #[test]
    fn a_slanting_side_keeps_its_distance() {
        // A side at 45 degrees moves by √2 along the axes.
        let moved = inset(&[(0, 0), (1000, 0), (0, 1000)], 100);
        assert_eq!(moved, Some(vec![(100, 100), (759, 100), (100, 759)]));
    }

    #[test]
    fn what_is_no_polygon_stays_harmless() {
        assert_eq!(inset(&[], 3), Some(Vec::new()));
        assert_eq!(inset(&[(5, 5), (5, 5)], 3), None);
    }

    #[test]
    fn a_floor_too_narrow_for_its_gap_is_gone_and_not_turned_inside_out() {
        let rectangle = |x, y| [(0, 0), (x, 0), (x, y), (0, y)];
        assert_eq!(inset(&rectangle(200, 21), 10), Some(vec![(10, 10), (190, 10), (190, 11), (10, 11)]));
        assert_eq!(inset(&rectangle(200, 20), 10), None);
        assert_eq!(inset(&rectangle(200, 5), 10), None);
        assert_eq!(inset(&rectangle(5, 5), 10), None, "inside out twice over");
    }
}
