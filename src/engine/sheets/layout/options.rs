//! Every way to put the joints of one course, and the cheapest way to put those of all.

use super::rows::rows;
use super::scheme::{Cell, Run, Scheme, Shape};
use std::sync::Arc;

/// Joints of a course as a set of joists, a bit for each.
pub type JointSet = u128;

/// Of a course with more ways than this, only those of the fewest pieces are listed.
pub const MOST_WAYS: usize = 6_000;

/// So many of them then.
const FEW_WAYS: usize = 700;

/// One way to put the joints of a course.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Way {
    /// The joists that its joints are on.
    pub joints: JointSet,
    /// The same, and the joists too near them for a neighbouring course.
    pub reach: JointSet,
    /// Its cells from left to right: the run's number, and the cell's in it.
    pub cells: Vec<(u16, u16)>,
    /// The kinds of its pieces, in order.
    pub kinds: Vec<u16>,
}

/// The ways to put the joints of each shape of course.
#[derive(Debug, Clone)]
pub struct Ways {
    /// Are these all there are?
    pub are_all: bool,
    by_shape: Vec<Arc<[Way]>>,
    courses: Vec<usize>,
}

/// Joints for every course, no two neighbours at odds.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Joints {
    /// For each course the number of its way.
    pub ways: Vec<u32>,
    /// What its pieces cost together.
    pub price: i64,
}

impl Ways {
    /// Lists them, up to `most` a course.
    pub fn of(scheme: &Scheme, stagger: usize, most: usize) -> Self {
        let listed: Vec<_> = scheme.shapes.iter().map(|shape| ways_of_shape(shape, stagger, most)).collect();
        let are_all = listed.iter().all(|(_, are_all)| *are_all);
        let by_shape = listed.into_iter().map(|(ways, _)| Arc::from(ways)).collect();
        Self { are_all, by_shape, courses: scheme.courses.clone() }
    }

    /// The ways of one course.
    pub fn of_course(&self, course: usize) -> &[Way] {
        let shape = self.courses.get(course).and_then(|shape| self.by_shape.get(*shape));
        shape.map_or(&[], |ways| ways)
    }

    /// How many courses there are.
    pub fn courses(&self) -> usize {
        self.courses.len()
    }

    /// The kinds of all pieces, in order.
    pub fn kinds(&self, joints: &[u32]) -> Vec<u16> {
        let ways = joints.iter().enumerate().filter_map(|(course, way)| self.of_course(course).get(*way as usize));
        let mut kinds: Vec<_> = ways.flat_map(|way| way.kinds.iter().copied()).collect();
        kinds.sort_unstable();
        kinds
    }

    /// What each way of each shape costs.
    pub fn costs(&self, prices: &[i64]) -> Vec<Vec<i64>> {
        let price = |kind: &u16| prices.get(usize::from(*kind)).copied().unwrap_or_default();
        let cost = |way: &Way| way.kinds.iter().map(price).sum();
        self.by_shape.iter().map(|ways| ways.iter().map(cost).collect()).collect()
    }

    /// What each way of one course costs, by what the ways of each shape do.
    pub fn costs_of_course(&self, course: usize, by_shape: &[Vec<i64>]) -> Vec<i64> {
        self.courses.get(course).and_then(|shape| by_shape.get(*shape)).cloned().unwrap_or_default()
    }

    /// The cheapest joints of all, by what each way costs; none if neighbours cannot
    /// agree. Course by course: the cheapest way down to here for each way of this
    /// course. What went before is looked through from the cheapest on, and the first
    /// that agrees will do.
    pub fn cheapest(&self, costs: &[Vec<i64>]) -> Option<Joints> {
        let mut back: Vec<Vec<u32>> = Vec::new();
        let mut before: Vec<(i64, u32)> = Vec::new();
        for (course, shape) in self.courses.iter().enumerate() {
            let (ways, costs) = (self.of_course(course), costs.get(*shape)?);
            let above = course.checked_sub(1).map(|above| self.of_course(above));
            let mut sums = Vec::with_capacity(ways.len());
            let mut from = Vec::with_capacity(ways.len());
            for (number, (way, cost)) in ways.iter().zip(costs).enumerate() {
                let Some(above) = above else {
                    sums.push((*cost, number as u32));
                    from.push(0);
                    continue;
                };
                let agrees =
                    |other: &u32| above.get(*other as usize).is_some_and(|other| other.joints & way.reach == 0);
                let best = before.iter().find(|(_, other)| agrees(other));
                from.push(best.map_or(0, |(_, other)| *other));
                sums.extend(best.map(|(sum, _)| (sum + cost, number as u32)));
            }
            sums.sort_unstable();
            before = sums;
            back.push(from);
        }
        let (price, mut way) = *before.first()?;
        let mut ways = vec![way];
        for from in back.iter().skip(1).rev() {
            way = *from.get(way as usize)?;
            ways.push(way);
        }
        ways.reverse();
        Some(Joints { ways, price })
    }
}

/// The ways of a course, and whether these are all.
fn ways_of_shape(shape: &Shape, stagger: usize, most: usize) -> (Vec<Way>, bool) {
    let mut ways = vec![Way { joints: 0, reach: 0, cells: Vec::new(), kinds: Vec::new() }];
    let mut are_all = true;
    for (number, run) in shape.runs.iter().enumerate() {
        let room = (most / ways.len().max(1)).max(1);
        let (rows, all) = rows(run, room, FEW_WAYS.min(room));
        are_all &= all;
        let row = |way, row: &Vec<u16>| join(way, (number as u16, run), row);
        ways = ways.iter().flat_map(|way| rows.iter().map(move |next| row(way, next))).collect();
    }
    for way in &mut ways {
        way.kinds.sort_unstable();
        way.reach = reach(way.joints, stagger);
    }
    (ways, are_all)
}

/// The joists nearer than `stagger` to one of the set.
fn reach(joints: JointSet, stagger: usize) -> JointSet {
    (1..stagger.min(JointSet::BITS as usize)).fold(joints, |reach, by| reach | joints << by | joints >> by)
        & if stagger == 0 { 0 } else { JointSet::MAX }
}

fn join(way: &Way, (number, run): (u16, &Run), next: &[u16]) -> Way {
    let mut way = way.clone();
    for cell in next.iter().filter_map(|cell| run.cells.get(usize::from(*cell))) {
        way.kinds.extend(&cell.kinds);
        way.joints |= joint_after(run, cell);
    }
    way.cells.extend(next.iter().map(|cell| (number, *cell)));
    way
}

/// The joint at a cell's right end; nothing at the end of a run.
fn joint_after(run: &Run, cell: &Cell) -> JointSet {
    run.supports.get(cell.to).and_then(|support| support.joist).map_or(0, |joist| 1 << joist)
}
