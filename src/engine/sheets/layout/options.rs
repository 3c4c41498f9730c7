//! Every way to put the joints of one course, and the cheapest way to put those of all.

use super::scheme::{Cell, Run, Scheme, Shape};
use std::sync::Arc;

/// Joints of a course as a set of joists, a bit for each.
pub type JointSet = u128;

/// Of a course with more ways than this, only those of the fewest pieces are listed.
const MOST_WAYS: usize = 6_000;

/// One way to put the joints of a course.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Way {
    /// The joists that its joints are on.
    pub joints: JointSet,
    /// The same, and the joists too near them for a neighbouring course.
    pub reach: JointSet,
    /// For each run its cells, as numbers into [`Run::cells`].
    pub cells: Vec<Vec<u16>>,
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
    /// Lists them.
    pub fn of(scheme: &Scheme, stagger: usize) -> Self {
        let listed: Vec<_> = scheme.shapes.iter().map(|shape| ways_of_shape(shape, stagger)).collect();
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
fn ways_of_shape(shape: &Shape, stagger: usize) -> (Vec<Way>, bool) {
    let mut ways = vec![Way { joints: 0, reach: 0, cells: Vec::new(), kinds: Vec::new() }];
    let mut are_all = true;
    for run in &shape.runs {
        let (mut rows, all) = rows_of_run(run);
        let room = MOST_WAYS / ways.len().max(1);
        are_all &= all && rows.len() <= room;
        rows.truncate(room.max(1));
        ways = ways.iter().flat_map(|way| rows.iter().map(move |row| join(way, run, row))).collect();
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

fn join(way: &Way, run: &Run, next: &[u16]) -> Way {
    let mut way = way.clone();
    for cell in next.iter().filter_map(|cell| run.cells.get(usize::from(*cell))) {
        way.kinds.extend(&cell.kinds);
        way.joints |= joint_after(run, cell);
    }
    way.cells.push(next.to_vec());
    way
}

/// The joint at a cell's right end; nothing at the end of a run.
fn joint_after(run: &Run, cell: &Cell) -> JointSet {
    run.supports.get(cell.to).and_then(|support| support.joist).map_or(0, |joist| 1 << joist)
}

/// The rows of cells from end to end, those of the fewest cells first, and whether
/// these are all.
fn rows_of_run(run: &Run) -> (Vec<Vec<u16>>, bool) {
    let fewest = fewest_cells(run);
    let from_start = fewest.first().copied().unwrap_or_default();
    let mut rows = Vec::new();
    for cells in from_start..=run.bays() {
        if !add_rows(run, &fewest, cells, &mut rows) {
            return (rows, false);
        }
    }
    (rows, true)
}

/// For each support the fewest cells from there to the end.
fn fewest_cells(run: &Run) -> Vec<usize> {
    let mut fewest = vec![usize::MAX; run.supports.len()];
    if let Some(end) = fewest.last_mut() {
        *end = 0;
    }
    for cell in run.cells.iter().rev() {
        let through = fewest.get(cell.to).map_or(usize::MAX, |after| after.saturating_add(1));
        if let Some(here) = fewest.get_mut(cell.from) {
            *here = through.min(*here);
        }
    }
    fewest
}

/// Adds every row of so many cells; says whether all of them went in.
fn add_rows(run: &Run, fewest: &[usize], cells: usize, rows: &mut Vec<Vec<u16>>) -> bool {
    let mut open = vec![(0_usize, Vec::new())];
    while let Some((at, row)) = open.pop() {
        if at == run.bays() && row.len() == cells {
            if rows.len() >= MOST_WAYS {
                return false;
            }
            rows.push(row);
            continue;
        }
        let left = cells - row.len();
        let leads = |cell: &Cell| fewest.get(cell.to).is_some_and(|after| *after < left);
        let next = run.cells.iter().enumerate().filter(|(_, cell)| cell.from == at && leads(cell));
        open.extend(next.map(|(number, cell)| {
            let mut row: Vec<u16> = row.clone();
            row.push(number as u16);
            (cell.to, row)
        }));
    }
    true
}
