//! Every layout whose pieces could do, one after another, the most promising first.
//!
//! A layout's cost is the price of its pieces and a toll on each. Those that fit a
//! number of sheets with a number of pieces cannot cost more than those sheets and that
//! toll, and what the courses still to come cost at least is known for each way to go
//! on: so nothing is begun that cannot be ended within the limit. Two beginnings with
//! the same pieces and the same last course can go on alike, and one of them will do.

use super::super::options::{Way, Ways};
use std::collections::BTreeSet;

/// More beginnings than this are not remembered, to spare memory.
const MOST_REMEMBERED: usize = 60_000;

/// Where the search is.
#[derive(Debug, Clone)]
pub struct Exhaust {
    /// For each course and way what it costs.
    costs: Vec<Vec<i64>>,
    /// For each course and way the least that it and all after it cost.
    to_go: Vec<Vec<i64>>,
    /// Ways to go on that were not looked at yet, the most promising last.
    open: Vec<Further>,
    /// The beginnings that some of them go on from.
    begun: Vec<Beginning>,
    seen: BTreeSet<(Vec<u16>, usize, u32)>,
}

#[derive(Debug, Clone, Default)]
struct Beginning {
    ways: Vec<u32>,
    kinds: Vec<u16>,
    cost: i64,
}

/// One course more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Further {
    /// What the layout costs at least when it is ended.
    at_least: i64,
    way: u32,
    beginning: usize,
}

/// What comes next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Next {
    /// Joints of a whole layout within the limit.
    Joints(Vec<u32>),
    /// A beginning; more to come.
    Working,
    /// There are no others.
    Nothing,
}

impl Exhaust {
    /// Begins, with what each way of each shape costs.
    pub fn new(ways: &Ways, by_shape: &[Vec<i64>]) -> Self {
        let costs: Vec<Vec<i64>> = (0..ways.courses()).map(|course| ways.costs_of_course(course, by_shape)).collect();
        let to_go = costs_to_go(ways, &costs);
        let mut exhaust = Self { costs, to_go, open: Vec::new(), begun: Vec::new(), seen: BTreeSet::new() };
        exhaust.begin(ways, Beginning::default(), i64::MAX);
        exhaust
    }

    /// How many beginnings were looked at.
    pub fn looked_at(&self) -> usize {
        self.begun.len()
    }

    /// The next within `limit`, which may shrink from one time to the next.
    pub fn next(&mut self, ways: &Ways, limit: i64) -> Next {
        let Some(further) = self.open.pop() else { return Next::Nothing };
        if further.at_least > limit {
            return Next::Working;
        }
        let Some(beginning) = self.one_more(ways, further) else { return Next::Working };
        let course = beginning.ways.len();
        if course == ways.courses() {
            return Next::Joints(beginning.ways);
        }
        let remembers = self.seen.len() < MOST_REMEMBERED;
        let key = (beginning.kinds.clone(), course, further.way);
        if !remembers || self.seen.insert(key) {
            self.begin(ways, beginning, limit);
        }
        Next::Working
    }

    /// A beginning with one course more.
    fn one_more(&self, ways: &Ways, further: Further) -> Option<Beginning> {
        let mut beginning = self.begun.get(further.beginning)?.clone();
        let course = beginning.ways.len();
        let way = ways.of_course(course).get(further.way as usize)?;
        beginning.cost += self.costs.get(course)?.get(further.way as usize)?;
        beginning.kinds.extend(&way.kinds);
        beginning.kinds.sort_unstable();
        beginning.ways.push(further.way);
        Some(beginning)
    }

    /// Lists every way to go on that can be ended within the limit.
    fn begin(&mut self, ways: &Ways, beginning: Beginning, limit: i64) {
        let course = beginning.ways.len();
        let before = course.checked_sub(1).zip(beginning.ways.last());
        let before = before.and_then(|(course, way)| ways.of_course(course).get(*way as usize));
        let Some(to_go) = self.to_go.get(course) else { return };
        let agrees = |way: &Way| before.is_none_or(|before| before.joints & way.reach == 0);
        let all = ways.of_course(course).iter().zip(to_go).enumerate().filter(|(_, (way, _))| agrees(way));
        let all = all.map(|(number, (_, to_go))| Further {
            at_least: beginning.cost.saturating_add(*to_go),
            way: number as u32,
            beginning: self.begun.len(),
        });
        let mut further: Vec<_> = all.filter(|further| further.at_least <= limit).collect();
        further.sort_unstable_by(|a, b| b.cmp(a));
        self.open.extend(further);
        self.begun.push(beginning);
    }
}

/// From the last course back: the least that each way and all courses after it cost.
fn costs_to_go(ways: &Ways, costs: &[Vec<i64>]) -> Vec<Vec<i64>> {
    let mut to_go: Vec<Vec<i64>> = Vec::new();
    let mut after: Option<Vec<(i64, u32)>> = None;
    for (course, costs) in costs.iter().enumerate().rev() {
        let here: Vec<i64> = ways
            .of_course(course)
            .iter()
            .zip(costs)
            .map(|(way, cost)| match &after {
                None => *cost,
                Some(after) => {
                    let agrees = |other: &u32| {
                        ways.of_course(course + 1)
                            .get(*other as usize)
                            .is_some_and(|other| other.reach & way.joints == 0)
                    };
                    let next = after.iter().find(|(_, other)| agrees(other));
                    next.map_or(i64::MAX / 2, |(least, _)| least + cost)
                }
            })
            .collect();
        let mut sorted: Vec<_> = here.iter().enumerate().map(|(way, least)| (*least, way as u32)).collect();
        sorted.sort_unstable();
        after = Some(sorted);
        to_go.push(here);
    }
    to_go.reverse();
    to_go
}
