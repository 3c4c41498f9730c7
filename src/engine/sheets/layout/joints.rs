//! Joints for given pieces: where neighbouring courses agree, if they can.

use super::options::{JointSet, joint_after, reach};
use super::scheme::{Scheme, Shape};

/// What came of looking for joints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Agreed {
    /// These, course by course.
    On(Vec<JointSet>),
    /// There are none.
    Nothing,
    /// Not found within the effort, and not shown to be impossible.
    Unknown,
}

/// Looks for joints by which each course has the pieces given, in order, and no two
/// neighbours are at odds. No more than `most` cells are tried; beyond that nothing is said.
pub fn agree(scheme: &Scheme, stagger: usize, pieces: &[&[u16]], most: usize) -> Agreed {
    let shapes: Vec<_> = scheme.course_shapes().collect();
    let mut looking = Looking { shapes, stagger, pieces, tried: 0, most, found: Vec::new() };
    let left = pieces.first().map_or_else(Vec::new, |first| first.to_vec());
    if looking.cover(Spot { course: 0, run: 0, at: 0 }, 0, left) {
        Agreed::On(looking.found)
    } else if looking.tried > most {
        Agreed::Unknown
    } else {
        Agreed::Nothing
    }
}

/// Up to where courses are covered.
#[derive(Debug, Clone, Copy)]
struct Spot {
    course: usize,
    run: usize,
    at: usize,
}

struct Looking<'a> {
    shapes: Vec<&'a Shape>,
    stagger: usize,
    pieces: &'a [&'a [u16]],
    tried: usize,
    most: usize,
    /// The joints of the courses that are covered.
    found: Vec<JointSet>,
}

impl Looking<'_> {
    /// Covers what lies beyond a spot with what is left of the course's pieces.
    fn cover(&mut self, spot: Spot, joints: JointSet, left: Vec<u16>) -> bool {
        let Some(shape) = self.shapes.get(spot.course).copied() else { return true };
        let Some(run) = shape.runs.get(spot.run) else {
            return left.is_empty() && self.next_course(spot.course, joints);
        };
        if spot.at == run.bays() {
            return self.cover(Spot { run: spot.run + 1, at: 0, ..spot }, joints, left);
        }
        let forbidden = self.found.last().map_or(0, |before| reach(*before, self.stagger));
        for cell in run.cells.iter().filter(|cell| cell.from == spot.at) {
            self.tried += 1;
            if self.tried > self.most {
                return false;
            }
            let joint = joint_after(run, cell.to);
            if joint & forbidden != 0 {
                continue;
            }
            let Some(left) = less(&left, &cell.kinds) else { continue };
            if self.cover(Spot { at: cell.to, ..spot }, joints | joint, left) {
                return true;
            }
        }
        false
    }

    fn next_course(&mut self, course: usize, joints: JointSet) -> bool {
        self.found.push(joints);
        let left = self.pieces.get(course + 1).map_or_else(Vec::new, |pieces| pieces.to_vec());
        let is_covered = self.cover(Spot { course: course + 1, run: 0, at: 0 }, 0, left);
        if !is_covered {
            self.found.pop();
        }
        is_covered
    }
}

/// What is left when all of some kinds are taken; none if not all are there.
fn less(left: &[u16], taken: &[u16]) -> Option<Vec<u16>> {
    let mut left = left.to_vec();
    for kind in taken {
        let at = left.iter().position(|other| other == kind)?;
        left.remove(at);
    }
    Some(left)
}
