//! Every layout whose pieces could do, one after another, the most promising first.
//!
//! A layout's cost is the price of its pieces and a toll on each. Those that fit a
//! number of sheets with a number of pieces cannot cost more than those sheets and that
//! toll, and what the courses still to come cost at least is known for each way to go
//! on: so nothing is begun that cannot be ended within the limit. Two beginnings with
//! the same pieces and the same last course can go on alike, and one of them will do.

use super::super::limits::Limits;
use super::super::options::{JointSet, Listed, Ways};
use std::collections::BTreeSet;

/// Where the search is.
#[derive(Debug, Clone)]
pub struct Exhaust {
    /// For each shape and way what it costs.
    costs: Vec<Vec<i64>>,
    /// For each course and way the least that it and all after it cost.
    to_go: Vec<Vec<i64>>,
    /// The beginning that is gone on from: for each of its courses the way it has, and
    /// what was not looked at yet of the next.
    path: Vec<Begun>,
    seen: BTreeSet<(Vec<u16>, u32)>,
    remembered: usize,
    /// So many beginnings are remembered.
    most: usize,
    looked_at: usize,
    /// What was done so far: a measure of the work.
    pub work: u64,
}

/// What it takes to go on with one, and to list one way to go on.
const ONE_MORE: u64 = 500;
const EACH_WAY: usize = 10;

/// A beginning of so many courses.
#[derive(Debug, Clone, Default)]
struct Begun {
    /// The way of its last course; nothing for the beginning of none.
    way: u32,
    /// The kinds of all its pieces, in order.
    kinds: Vec<u16>,
    cost: i64,
    /// Ways to go on with, the most promising last.
    open: Vec<Further>,
}

/// One course more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Further {
    /// What the layout costs at least when it is ended.
    at_least: i64,
    way: u32,
}

/// What comes next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Next {
    /// Joints of a whole layout within the limit, as ways.
    Joints(Vec<u32>),
    /// A beginning; more to come.
    Working,
    /// There are no others.
    Nothing,
}

impl Exhaust {
    /// Begins, with what each way of each shape costs.
    pub fn new(ways: &Ways, costs: Vec<Vec<i64>>, limit: i64, limits: &Limits) -> Self {
        let to_go = costs_to_go(ways, &costs, limits.compared);
        let (path, seen) = (Vec::new(), BTreeSet::new());
        let mut exhaust =
            Self { costs, to_go, path, seen, remembered: 0, most: limits.remembered, looked_at: 0, work: 0 };
        exhaust.begin(ways, Begun::default(), limit);
        exhaust
    }

    /// How many beginnings were looked at.
    pub fn looked_at(&self) -> usize {
        self.looked_at
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        let costs = self.costs.iter().chain(&self.to_go).map(|costs| costs.len() * 8).sum::<usize>();
        let open = self.path.iter().map(|begun| begun.open.len() * 16).sum::<usize>();
        costs + open + self.remembered * 2 + self.seen.len() * 60
    }

    /// The next within `limit`.
    pub fn next(&mut self, ways: &Ways, limit: i64) -> Next {
        self.work += ONE_MORE;
        let Some(last) = self.path.last_mut() else { return Next::Nothing };
        let Some(further) = last.open.pop() else {
            self.path.pop();
            return Next::Working;
        };
        if further.at_least > limit {
            return Next::Working;
        }
        let course = self.path.len() - 1;
        let Some(begun) = self.one_more(ways, course, further.way) else { return Next::Working };
        if course + 1 == ways.courses() {
            let before = self.path.iter().skip(1).map(|begun| begun.way);
            return Next::Joints(before.chain([further.way]).collect());
        }
        // The course and its way in one number: there are no more than some thousands. Where
        // all neighbours agree the way is nothing to what comes after.
        let way = if ways.always_agree() { 0 } else { further.way };
        let key = (begun.kinds.clone(), (course as u32) << 16 | way);
        let is_new = if self.seen.len() < self.most {
            self.remembered += key.0.len();
            self.seen.insert(key)
        } else {
            !self.seen.contains(&key)
        };
        if is_new {
            self.begin(ways, begun, limit);
        }
        Next::Working
    }

    /// The beginning with one course more.
    fn one_more(&self, ways: &Ways, course: usize, way: u32) -> Option<Begun> {
        let before = self.path.last()?;
        let cost = before.cost + self.costs.get(ways.shape_of(course))?.get(way as usize)?;
        let mut kinds = before.kinds.clone();
        kinds.extend(ways.of_course(course)?.kinds(way));
        kinds.sort_unstable();
        Some(Begun { way, kinds, cost, open: Vec::new() })
    }

    /// Lists every way to go on that can be ended within the limit.
    fn begin(&mut self, ways: &Ways, mut begun: Begun, limit: i64) {
        let course = self.path.len();
        self.looked_at += 1;
        self.work += (ways.of_course(course).map_or(0, Listed::len) * EACH_WAY) as u64;
        let joints = |course: usize| ways.of_course(course).map_or(&[][..], Listed::joints);
        let before = course.checked_sub(1).and_then(|before| joints(before).get(begun.way as usize).copied());
        let reach = before.map_or(0, |joints| ways.reach(joints));
        let Some(to_go) = self.to_go.get(course) else { return };
        let all = joints(course).iter().zip(to_go).enumerate().filter(|(_, (joints, _))| **joints & reach == 0);
        let all = all.map(|(way, (_, to_go))| Further { at_least: begun.cost.saturating_add(*to_go), way: way as u32 });
        begun.open = all.filter(|further| further.at_least <= limit).collect();
        begun.open.sort_unstable_by(|a, b| b.cmp(a));
        self.path.push(begun);
    }
}

/// From the last course back: the least that each way and all courses after it cost. Beyond
/// so many pairs compared neighbours may disagree in what is still to come, which can only
/// be cheaper: then more is looked at, and nothing is left out.
fn costs_to_go(ways: &Ways, costs: &[Vec<i64>], most_compared: u64) -> Vec<Vec<i64>> {
    let mut to_go: Vec<Vec<i64>> = Vec::new();
    // Of the course after: what each way costs to the end, and its joints, the cheapest first.
    let mut after: Option<Vec<(i64, JointSet)>> = None;
    let mut compared = 0_u64;
    for course in (0..ways.courses()).rev() {
        let joints = ways.of_course(course).map_or(&[][..], Listed::joints);
        let costs = costs.get(ways.shape_of(course)).map_or(&[][..], Vec::as_slice);
        let mut here = |(joints, cost): (&JointSet, &i64)| {
            let Some(after) = &after else { return *cost };
            let reach = ways.reach(*joints);
            let agrees = |(_, other): &&(i64, JointSet)| other & reach == 0 || compared > most_compared;
            let next = after.iter().enumerate().find(|(_, other)| agrees(other));
            compared += next.map_or(after.len(), |(place, _)| place + 1) as u64;
            let next = next.map(|(_, other)| other);
            next.map_or(NO_WAY, |(least, _)| (least + cost).min(NO_WAY))
        };
        let here: Vec<i64> = joints.iter().zip(costs).map(&mut here).collect();
        let mut sorted: Vec<_> = here.iter().copied().zip(joints.iter().copied()).collect();
        sorted.sort_unstable();
        after = Some(sorted);
        to_go.push(here);
    }
    to_go.reverse();
    to_go
}

/// More than any limit.
const NO_WAY: i64 = i64::MAX / 2;
