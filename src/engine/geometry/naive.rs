//! Slow twins, for tests: the same questions answered another way.

use super::{Outline, Point, Segment};
use std::collections::BTreeSet;

/// A coordinate as it enters the slow sums.
fn nm(point: Point) -> (i128, i128) {
    (point.x.to_nm().into(), point.y.to_nm().into())
}

/// Do two sides share a point? Solves for both parameters as fractions.
pub(super) fn share_a_point(a: Segment, b: Segment) -> bool {
    let ((ax, ay), (bx, by)) = (nm(a.from), nm(b.from));
    let ((atx, aty), (btx, bty)) = (nm(a.to), nm(b.to));
    let (ux, uy, vx, vy) = (atx - ax, aty - ay, btx - bx, bty - by);
    let (wx, wy) = (bx - ax, by - ay);
    let below = ux * vy - uy * vx;
    if below != 0 {
        let (s, t) = (wx * vy - wy * vx, wx * uy - wy * ux);
        let within = |n: i128| if below > 0 { (0..=below).contains(&n) } else { (below..=0).contains(&n) };
        return within(s) && within(t);
    }
    if wx * uy != wy * ux {
        return false;
    }
    // In one line: do their projections on the first one overlap?
    let along = |x: i128, y: i128| (x - ax) * ux + (y - ay) * uy;
    let (p, q) = (along(bx, by), along(btx, bty));
    p.min(q) <= along(atx, aty) && p.max(q) >= 0
}

/// Inside by a ray to the right: an odd number of sides passes it. On a side counts.
pub(super) fn contains(outline: &Outline, point: Point) -> bool {
    let (x, y) = nm(point);
    let mut inside = false;
    for side in outline.sides() {
        let ((x0, y0), (x1, y1)) = (nm(side.from), nm(side.to));
        if share_a_point(side, Segment { from: point, to: Point::new(point.x, point.y) }) {
            return true;
        }
        if (y0 > y) != (y1 > y) {
            // x of the side at this level, as a fraction over y1 - y0.
            let (n, d) = (x0 * (y1 - y0) + (y - y0) * (x1 - x0), y1 - y0);
            if (d > 0 && x * d < n) || (d < 0 && x * d > n) {
                inside = !inside;
            }
        }
    }
    inside
}

/// Is a rectilinear ring on whole inches simple? Steps along it inch by inch and
/// looks whether any place is visited twice.
pub(super) fn visits_no_place_twice(corners: &[(i32, i32)]) -> bool {
    let mut visited = BTreeSet::new();
    let ends = corners.iter().cycle().skip(1);
    corners.iter().zip(ends).all(|(&(x0, y0), &(x1, y1))| {
        let (dx, dy) = ((x1 - x0).signum(), (y1 - y0).signum());
        let inches = (x1 - x0).abs() + (y1 - y0).abs();
        (0..inches).all(|n| visited.insert((x0 + n * dx, y0 + n * dy)))
    })
}
