//! Every way to put the joints of one course, and the cheapest way to put those of all.

use super::limits::Limits;
use super::rows::rows;
use super::scheme::{Run, Scheme, Shape};
use std::collections::BTreeSet;

/// Joints of a course as a set of joists, a bit for each.
pub type JointSet = u128;

/// The ways to put the joints of one shape of course.
#[derive(Debug, Clone, Default)]
pub struct Listed {
    /// The joists that each one's joints are on.
    joints: Vec<JointSet>,
    /// The kinds of each one's pieces, one after the other.
    kinds: Vec<u16>,
    /// Where each one's kinds end.
    ends: Vec<u32>,
}

impl Listed {
    /// How many there are.
    pub fn len(&self) -> usize {
        self.joints.len()
    }

    /// The joists that the joints of each are on.
    pub fn joints(&self) -> &[JointSet] {
        &self.joints
    }

    /// The kinds of one's pieces, in order.
    pub fn kinds(&self, way: u32) -> &[u16] {
        let way = way as usize;
        let from = way.checked_sub(1).and_then(|before| self.ends.get(before)).map_or(0, |end| *end as usize);
        let to = self.ends.get(way).map_or(from, |end| *end as usize);
        self.kinds.get(from..to).unwrap_or_default()
    }

    fn push(&mut self, joints: JointSet, kinds: &mut [u16]) {
        kinds.sort_unstable();
        self.joints.push(joints);
        self.kinds.extend_from_slice(kinds);
        self.ends.push(self.kinds.len() as u32);
    }

    fn bytes(&self) -> usize {
        self.joints.len() * 16 + self.kinds.len() * 2 + self.ends.len() * 4
    }
}

/// The ways to put the joints of each shape of course.
#[derive(Debug, Clone)]
pub struct Ways {
    /// Are these all there are, or all that matter?
    pub are_all: bool,
    stagger: usize,
    /// Pairs that are compared at most.
    most_compared: u64,
    by_shape: Vec<Listed>,
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

/// The cheapest joints, if they were found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cheapest {
    /// These.
    Are(Joints),
    /// Neighbours of those that are listed cannot agree.
    Nothing,
    /// There are too many to compare.
    Unknown,
}

impl Cheapest {
    /// Them, if they were found.
    pub fn found(self) -> Option<Joints> {
        match self {
            Self::Are(joints) => Some(joints),
            Self::Nothing | Self::Unknown => None,
        }
    }
}

impl Ways {
    /// Lists them, up to `most` a course.
    pub fn of(scheme: &Scheme, stagger: usize, most: usize, limits: &Limits) -> Self {
        let few = limits.few_ways;
        let listed: Vec<_> = scheme.shapes.iter().map(|shape| ways_of_shape(shape, most, few)).collect();
        let are_all = listed.iter().all(|(_, are_all)| *are_all);
        let by_shape = listed.into_iter().map(|(ways, _)| ways).collect();
        Self { are_all, stagger, most_compared: limits.compared, by_shape, courses: scheme.courses.clone() }
    }

    /// All pieces that a course of a layout can have that costs no more than `limit` at
    /// these prices, each set once whatever its joints: each course's no dearer than its
    /// cheapest by more than the whole has to spare. Neighbours always agree: whoever finds
    /// something here has to see whether there are joints for it ([`super::joints`]). None
    /// if there are too many.
    pub fn sets_within(scheme: &Scheme, prices: &[i64], limit: i64, limits: &Limits) -> Option<Self> {
        let least: Vec<Vec<Vec<i64>>> = scheme.shapes.iter().map(|shape| costs_to_end(shape, prices)).collect();
        let sum = |costs: &mut dyn Iterator<Item = i64>| costs.fold(0_i64, i64::saturating_add);
        let of_shape =
            |shape: usize| sum(&mut least.get(shape).into_iter().flatten().filter_map(|run| run.first().copied()));
        let spare = limit.saturating_sub(sum(&mut scheme.courses.iter().map(|shape| of_shape(*shape))));
        let mut by_shape = Vec::new();
        for (number, (shape, least)) in scheme.shapes.iter().zip(&least).enumerate() {
            let mut listed = Listed::default();
            if spare >= 0 {
                for mut kinds in
                    sets_of_shape(shape, prices, least, of_shape(number).saturating_add(spare), limits.sets)?
                {
                    listed.push(0, &mut kinds);
                }
            }
            by_shape.push(listed);
        }
        Some(Self {
            are_all: true,
            stagger: 0,
            most_compared: limits.compared,
            by_shape,
            courses: scheme.courses.clone(),
        })
    }

    /// The ways of one course.
    pub fn of_course(&self, course: usize) -> Option<&Listed> {
        self.courses.get(course).and_then(|shape| self.by_shape.get(*shape))
    }

    /// Those that have none of the kinds that are out of the question.
    pub fn without(&self, is_out: &[bool]) -> Self {
        let of_shape = |listed: &Listed| {
            let mut rest = Listed::default();
            for (way, joints) in (0..).zip(listed.joints()) {
                let kinds = listed.kinds(way);
                if !kinds.iter().any(|kind| is_out.get(usize::from(*kind)) == Some(&true)) {
                    rest.push(*joints, &mut kinds.to_vec());
                }
            }
            rest
        };
        Self { by_shape: self.by_shape.iter().map(of_shape).collect(), courses: self.courses.clone(), ..*self }
    }

    /// Every kind that is in any of them, each once.
    pub fn all_kinds(&self) -> BTreeSet<u16> {
        self.by_shape.iter().flat_map(|listed| listed.kinds.iter().copied()).collect()
    }

    /// The least that all courses cost at these prices, whatever their neighbours do; none
    /// if some course has no way left.
    pub fn least(&self, prices: &[i64]) -> Option<i64> {
        let costs = self.costs(prices);
        let least: Option<Vec<i64>> = costs.iter().map(|costs| costs.iter().min().copied()).collect();
        let least = least?;
        Some(self.courses.iter().filter_map(|shape| least.get(*shape)).sum())
    }

    /// The kinds of the pieces of one way of one course, in order.
    pub fn kinds_of(&self, course: usize, way: u32) -> Option<&[u16]> {
        Some(self.of_course(course)?.kinds(way))
    }

    /// How many courses there are.
    pub fn courses(&self) -> usize {
        self.courses.len()
    }

    /// The shape of a course.
    pub fn shape_of(&self, course: usize) -> usize {
        self.courses.get(course).copied().unwrap_or_default()
    }

    /// About how much memory they take.
    pub fn bytes(&self) -> usize {
        self.by_shape.iter().map(Listed::bytes).sum()
    }

    /// What it takes to find the cheapest of them: a measure of the work.
    pub fn work(&self) -> u64 {
        /// Each is priced, compared with some and put in order.
        const EACH: u64 = 40;
        let all: usize = self.courses.iter().filter_map(|shape| self.by_shape.get(*shape)).map(Listed::len).sum();
        all as u64 * EACH
    }

    /// The kinds of all pieces, in order.
    pub fn kinds(&self, joints: &[u32]) -> Vec<u16> {
        let ways = joints.iter().enumerate().filter_map(|(course, way)| Some(self.of_course(course)?.kinds(*way)));
        let mut kinds = ways.collect::<Vec<_>>().concat();
        kinds.sort_unstable();
        kinds
    }

    /// The joists that the joints of each course are on.
    pub fn joints(&self, ways: &[u32]) -> Vec<JointSet> {
        let joints = |(course, way): (usize, &u32)| self.of_course(course)?.joints().get(*way as usize).copied();
        ways.iter().enumerate().filter_map(joints).collect()
    }

    /// What each way of each shape costs.
    pub fn costs(&self, prices: &[i64]) -> Vec<Vec<i64>> {
        let price = |kind: &u16| prices.get(usize::from(*kind)).copied().unwrap_or_default();
        let cost = |listed: &Listed, way: usize| listed.kinds(way as u32).iter().map(price).sum();
        self.by_shape.iter().map(|listed| (0..listed.len()).map(|way| cost(listed, way)).collect()).collect()
    }

    /// Do all ways of neighbouring courses agree?
    pub fn always_agree(&self) -> bool {
        self.stagger == 0
    }

    /// Do these joints keep apart from those of a neighbouring course?
    pub fn reach(&self, joints: JointSet) -> JointSet {
        reach(joints, self.stagger)
    }

    /// The cheapest joints of all, by what each way costs. Course by course: the cheapest
    /// way down to here for each way of this course. What went before is looked through
    /// from the cheapest on, and the first that agrees will do.
    pub fn cheapest(&self, costs: &[Vec<i64>]) -> Cheapest {
        let mut back: Vec<Vec<u32>> = Vec::new();
        let mut before: Vec<(i64, u32)> = Vec::new();
        let mut compared = 0_u64;
        for (course, shape) in self.courses.iter().enumerate() {
            let (Some(listed), Some(costs)) = (self.of_course(course), costs.get(*shape)) else {
                return Cheapest::Nothing;
            };
            let above = course.checked_sub(1).and_then(|above| self.of_course(above)).map(Listed::joints);
            let above: Option<Vec<JointSet>> =
                above.map(|above| before.iter().filter_map(|(_, way)| above.get(*way as usize).copied()).collect());
            let mut sums = Vec::with_capacity(listed.len());
            let mut from = Vec::with_capacity(listed.len());
            for (number, (joints, cost)) in listed.joints().iter().zip(costs).enumerate() {
                let Some(above) = &above else {
                    sums.push((*cost, number as u32));
                    from.push(0);
                    continue;
                };
                let reach = self.reach(*joints);
                let place = above.iter().position(|above| above & reach == 0);
                compared += place.unwrap_or(above.len()) as u64 + 1;
                let best = place.and_then(|place| before.get(place));
                from.push(best.map_or(0, |(_, other)| *other));
                sums.extend(best.map(|(sum, _)| (sum + cost, number as u32)));
            }
            if compared > self.most_compared {
                return Cheapest::Unknown;
            }
            sums.sort_unstable();
            before = sums;
            back.push(from);
        }
        let Some((price, mut way)) = before.first().copied() else { return Cheapest::Nothing };
        let mut ways = vec![way];
        for from in back.iter().skip(1).rev() {
            way = from.get(way as usize).copied().unwrap_or_default();
            ways.push(way);
        }
        ways.reverse();
        Cheapest::Are(Joints { ways, price })
    }
}

/// The ways of a course, and whether these are all.
fn ways_of_shape(shape: &Shape, most: usize, few: usize) -> (Listed, bool) {
    let mut ways = vec![(0, Vec::new())];
    let mut are_all = true;
    for run in &shape.runs {
        let room = (most / ways.len().max(1)).max(1);
        let (rows, all) = rows(run, room, few.min(room));
        are_all &= all;
        let row = |(joints, kinds): &(JointSet, Vec<u16>), row: &[u16]| {
            let cells = || row.iter().filter_map(|cell| run.cells.get(usize::from(*cell)));
            let more = cells().fold(*joints, |joints, cell| joints | joint_after(run, cell.to));
            (more, kinds.iter().copied().chain(cells().flat_map(|cell| cell.kinds.iter().copied())).collect())
        };
        ways = ways.iter().flat_map(|way| rows.iter().map(move |next| row(way, next))).collect();
    }
    let mut listed = Listed::default();
    for (joints, kinds) in &mut ways {
        listed.push(*joints, kinds);
    }
    (listed, are_all)
}

/// For each run and support the least that it costs to go on to the run's end; none if
/// there is no way.
fn costs_to_end(shape: &Shape, prices: &[i64]) -> Vec<Vec<i64>> {
    let of_run = |run: &Run| {
        let mut least = vec![NO_WAY; run.supports.len()];
        if let Some(end) = least.last_mut() {
            *end = 0;
        }
        for cell in run.cells.iter().rev() {
            let on = least.get(cell.to).copied().unwrap_or(NO_WAY).saturating_add(cell.price(prices));
            if let Some(here) = least.get_mut(cell.from) {
                *here = on.min(*here);
            }
        }
        least
    };
    shape.runs.iter().map(of_run).collect()
}

/// More than anything costs.
const NO_WAY: i64 = i64::MAX / 4;

/// Every set of pieces that covers a shape for no more than `room`; none if there are too
/// many.
fn sets_of_shape(
    shape: &Shape,
    prices: &[i64],
    least: &[Vec<i64>],
    room: i64,
    most: usize,
) -> Option<BTreeSet<Vec<u16>>> {
    let mut sets = BTreeSet::from([Vec::new()]);
    let mut listed = 0;
    for (number, run) in shape.runs.iter().enumerate() {
        let to_end = least.get(number)?;
        let after = least.iter().skip(number + 1).filter_map(|run| run.first());
        let after = after.fold(0_i64, |all, run| all.saturating_add(*run));
        let mut at: Vec<BTreeSet<Vec<u16>>> = vec![BTreeSet::new(); run.supports.len()];
        *at.first_mut()? = sets;
        // Cells are in order of where they begin, so what leads there is listed.
        for cell in &run.cells {
            let on = to_end.get(cell.to)?.saturating_add(cell.price(prices)).saturating_add(after);
            let (before, behind) = at.split_at_mut_checked(cell.to)?;
            let (from, to) = (before.get(cell.from)?, behind.first_mut()?);
            for set in from {
                let price = set.iter().filter_map(|kind| prices.get(usize::from(*kind))).sum::<i64>();
                if price.saturating_add(on) <= room {
                    let mut more = [set.as_slice(), cell.kinds.as_slice()].concat();
                    more.sort_unstable();
                    listed += usize::from(to.insert(more));
                }
            }
            if listed > most {
                return None;
            }
        }
        sets = at.pop()?;
    }
    Some(sets)
}

/// The joists nearer than `stagger` to one of the set.
pub fn reach(joints: JointSet, stagger: usize) -> JointSet {
    (1..stagger.min(JointSet::BITS as usize)).fold(joints, |reach, by| reach | joints << by | joints >> by)
        & if stagger == 0 { 0 } else { JointSet::MAX }
}

/// The joint over a support of a run; nothing at its end.
pub fn joint_after(run: &Run, at: usize) -> JointSet {
    run.supports.get(at).and_then(|support| support.joist).map_or(0, |joist| 1 << joist)
}
