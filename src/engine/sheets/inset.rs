//! A floor's outline moved inwards, for the gap around sheets.

use super::layout::{Corner, twice_the_area};

/// The polygon with every side moved inwards by so many sixteenths: exact where sides
/// are square to the axes, else to the nearest sixteenth.
pub fn inset(outline: &[Corner], by: i32) -> Vec<Corner> {
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
    moved.collect()
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
        assert_eq!(inset(&ELL, 3), moved);
        let mut backwards = ELL;
        backwards.reverse();
        let mut expected = moved;
        expected.reverse();
        assert_eq!(inset(&backwards, 3), expected);
        assert_eq!(inset(&ELL, 0), ELL);
    }

    #[test]
    fn a_slanting_side_keeps_its_distance() {
        // A side at 45 degrees moves by √2 along the axes.
        let moved = inset(&[(0, 0), (1000, 0), (0, 1000)], 100);
        assert_eq!(moved, [(100, 100), (759, 100), (100, 759)]);
    }

    #[test]
    fn what_is_no_polygon_stays_harmless() {
        assert_eq!(inset(&[], 3), []);
        assert_eq!(inset(&[(5, 5), (5, 5)], 3).len(), 2);
    }
}
