//! The few places that floors are drawn at, and what lies between them.

use super::field::feet;
use super::variogram::distance;
use crate::engine::geometry::Rect;

/// About so many nodes, whatever the floor's size.
const NODES: f64 = 150.0;

/// Nodes in rows and columns, the outer ones on the floor's edges.
#[derive(Debug, Clone)]
pub(super) struct Lattice {
    /// All, row by row, in feet.
    pub nodes: Vec<[f64; 2]>,
    least: [f64; 2],
    step: [f64; 2],
    /// Nodes in a row, and in a column.
    count: [usize; 2],
}

/// The four nodes around a place, each with its weight.
#[derive(Debug, Clone, Copy)]
pub(super) struct Around([(usize, f64); 4]);

impl Lattice {
    pub fn over(bounds: Rect) -> Self {
        let (least, most) = (feet(bounds.least()), feet(bounds.most()));
        let size = [most[0] - least[0], most[1] - least[1]];
        let apart = libm::sqrt(size[0] * size[1] / NODES).max(1e-6);
        let count = size.map(|size| (libm::round(size / apart) as usize).clamp(1, NODES as usize) + 1);
        let step = [size[0] / (count[0] - 1) as f64, size[1] / (count[1] - 1) as f64];
        let node = |column: usize, row: usize| [least[0] + column as f64 * step[0], least[1] + row as f64 * step[1]];
        let nodes = (0..count[1]).flat_map(|row| (0..count[0]).map(move |column| node(column, row)));
        Self { nodes: nodes.collect(), least, step, count }
    }

    /// How much of what wanders shows on no node: the mean square of what a place between
    /// them is off the value between theirs, from 0 to 1. A place half-way to the middle
    /// of a cell stands for all.
    pub fn between(&self, alike: impl Fn(f64) -> f64) -> f64 {
        let place = [self.least[0] + 0.25 * self.step[0], self.least[1] + 0.25 * self.step[1]];
        let nodes = self.around(place).0.map(|(node, weight)| (self.nodes.get(node).copied().unwrap_or(place), weight));
        let to_place: f64 = nodes.iter().map(|(node, weight)| weight * alike(distance(*node, place))).sum();
        let each_other = nodes.iter().flat_map(|(a, x)| nodes.iter().map(move |(b, y)| (distance(*a, *b), x * y)));
        let among: f64 = each_other.map(|(apart, weight)| weight * alike(apart)).sum();
        (1.0 - 2.0 * to_place + among).max(0.0)
    }

    pub fn around(&self, place: [f64; 2]) -> Around {
        let along = |axis: fn([f64; 2]) -> f64, count: usize| {
            let steps = ((axis(place) - axis(self.least)) / axis(self.step).max(1e-9)).clamp(0.0, (count - 1) as f64);
            let before = (steps as usize).min(count - 2);
            (before, steps - before as f64)
        };
        let (column, right) = along(|[x, _]| x, self.count[0]);
        let (row, down) = along(|[_, y]| y, self.count[1]);
        let at = |column: usize, row: usize| row * self.count[0] + column;
        Around([
            (at(column, row), (1.0 - right) * (1.0 - down)),
            (at(column + 1, row), right * (1.0 - down)),
            (at(column, row + 1), (1.0 - right) * down),
            (at(column + 1, row + 1), right * down),
        ])
    }
}

impl Around {
    /// A value between those of the nodes.
    pub fn of(&self, nodes: &[f64]) -> f64 {
        self.0.iter().map(|(node, weight)| weight * nodes.get(*node).copied().unwrap_or_default()).sum()
    }
}
