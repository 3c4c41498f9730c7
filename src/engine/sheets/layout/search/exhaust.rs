//! Every layout whose pieces could do, one after another, the most promising first.
//!
//! A layout's cost is the price of its pieces and a toll on each. Those that fit a
//! number of sheets with a number of pieces cannot cost more than those sheets and that
//! toll, and what the courses still to come cost at least is known for each way to go
//! on: so nothing is begun that cannot be ended within the limit. Two beginnings with
//! the same pieces and the same last course can go on alike, and one of them will do.

use super::super::options::Ways;
use std::collections::BTreeSet;

/// More beginnings than this are not remembered, to spare memory.
const MOST_REMEMBERED: usize = 150_000;

/// Where the search is.
#[derive(Debug, Clone)]
pub struct Exhaust {
    /// For each course and way what it costs.
    costs: Vec<Vec<i64>>,
    /// For each course and way the least that it and all after it cost.
    to_go: Vec<Vec<i64>>,
    open: Vec<Beginning>,
    seen: BTreeSet<(Vec<u16>, usize, u32)>,
    /// How many beginnings were looked at.
    pub looked_at: usize,
}

#[derive(Debug, Clone)]
struct Beginning {
    ways: Vec<u32>,
    kinds: Vec<u16>,
    cost: i64,
    /// What it costs at least when it is ended.
    at_least: i64,
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
        let start = Beginning { ways: Vec::new(), kinds: Vec::new(), cost: 0, at_least: 0 };
        Self { costs, to_go, open: vec![start], seen: BTreeSet::new(), looked_at: 0 }
    }

    /// The next within `limit`, which may shrink from one time to the next.
    pub fn next(&mut self, ways: &Ways, limit: i64) -> Next {
        let Some(beginning) = self.open.pop() else { return Next::Nothing };
        if beginning.at_least > limit {
            return Next::Working;
        }
        self.looked_at += 1;
        let course = beginning.ways.len();
        if course == ways.courses() {
            return Next::Joints(beginning.ways);
        }
        self.go_on(ways, &beginning, course, limit);
        Next::Working
    }

    fn go_on(&mut self, ways: &Ways, beginning: &Beginning, course: usize, limit: i64) {
        let before = course.checked_sub(1).zip(beginning.ways.last());
        let before = before.and_then(|(course, way)| ways.of_course(course).get(*way as usize));
        let (Some(costs), Some(to_go)) = (self.costs.get(course), self.to_go.get(course)) else { return };
        let all = ways.of_course(course).iter().zip(costs.iter().zip(to_go)).enumerate();
        let mut further: Vec<_> = all
            .filter(|(_, (_, (_, to_go)))| beginning.cost.saturating_add(**to_go) <= limit)
            .filter(|(_, (way, _))| before.is_none_or(|before| before.joints & way.reach == 0))
            .map(|(number, (way, (cost, to_go)))| (beginning.cost + to_go, number as u32, way, *cost))
            .collect();
        // The last opened is looked at first.
        further.sort_by_key(|(at_least, number, ..)| std::cmp::Reverse((*at_least, *number)));
        for (at_least, number, way, cost) in further {
            let mut kinds = beginning.kinds.clone();
            kinds.extend(&way.kinds);
            kinds.sort_unstable();
            let remembers = self.seen.len() < MOST_REMEMBERED;
            if remembers && !self.seen.insert((kinds.clone(), course, number)) {
                continue;
            }
            let mut ways = beginning.ways.clone();
            ways.push(number);
            self.open.push(Beginning { ways, kinds, cost: beginning.cost + cost, at_least });
        }
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
