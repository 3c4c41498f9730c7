//! Blocks cut from lumber as it is sold: the fewest feet, and as many feet in the
//! fewest sticks.
//!
//! What is left to cut is a count of each length. Some stick holds the longest that is
//! left; every way to fill it up is tried, and what remains is the same question again.
//! Whatever was answered once is remembered, so that the answer is the least there is:
//! a stick that could take more is never better, since what is left to cut only shrinks.
//! When there are too many questions the fullest stick is taken at each, and the answer
//! claims to be the least only if no fewer feet hold so much wood and so many kerfs.

use crate::engine::take::Units;
use crate::engine::units::Length;
use std::collections::HashMap;

/// Lengths that lumber is sold in, in feet ([`crate::engine::sources::Source::LumberLengths`]).
const SOLD: [i32; 5] = [8, 10, 12, 14, LONGEST_FEET];
const LONGEST_FEET: i32 = 16;
/// The longest of them ([`crate::engine::sources::Source::LumberLengths`]).
pub const LONGEST_SOLD: Length = Length::feet(LONGEST_FEET);
/// How many ways to cut a stick are looked at. With more what is bought does, and is not said
/// to be the least ([`Bought::is_least`]).
const MOST_FILLINGS: usize = 300;
/// How many questions are answered before the search gives up being exact. So too.
const MOST_QUESTIONS: usize = 2_000;

/// What to buy, and what to cut from each.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bought {
    /// Equal sticks together, the longest first.
    pub sticks: Vec<Stick>,
    /// Is it proven that fewer feet do not do?
    pub is_least: bool,
}

/// Sticks that are cut alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stick {
    /// How many of them.
    pub count: usize,
    /// How long each is, in feet.
    pub feet: i32,
    /// What is cut from each: how many of what length, the longest first.
    pub cuts: Vec<(Length, usize)>,
}

impl Stick {
    /// What is cut from each, in words: `12 × 1' 2 1/2", 1 × 10 1/2"`.
    pub fn cuts_in_words(&self, units: Units) -> String {
        let cuts = self.cuts.iter().map(|(length, count)| format!("{count} × {}", units.length(*length)));
        cuts.collect::<Vec<_>>().join(", ")
    }
}

impl Bought {
    /// How many feet, all in all.
    pub fn feet(&self) -> i32 {
        self.sticks.iter().map(|stick| stick.feet * i32::try_from(stick.count).unwrap_or(i32::MAX)).sum()
    }

    /// How many sticks.
    pub fn count(&self) -> usize {
        self.sticks.iter().map(|stick| stick.count).sum()
    }
}

/// The lumber for pieces of these lengths with a saw of that kerf. None if a piece is
/// longer than any stick.
pub fn cut_from_sticks(pieces: &[Length], kerf: Length) -> Option<Bought> {
    let mut lengths = pieces.to_vec();
    lengths.sort_unstable_by(|a, b| b.cmp(a));
    if lengths.first().is_some_and(|longest| *longest > LONGEST_SOLD) {
        return None;
    }
    let wanted: Pieces =
        lengths.chunk_by(|a, b| a == b).filter_map(|same| Some((*same.first()?, same.len()))).collect();
    let mut yard = Yard { kerf, answers: HashMap::new(), is_exact: true };
    let (feet, _) = yard.answer(&wanted);
    let is_least = yard.is_exact || feet <= yard.fewest_feet(&wanted);
    Some(Bought { sticks: yard.sticks(wanted), is_least })
}

/// Feet first, then sticks.
type Price = (i32, usize);

/// How many of each length, the longest first; of each at least one.
type Pieces = Vec<(Length, usize)>;

/// What is cheapest for what is left to cut.
struct Answer {
    price: Price,
    /// The stick that comes next, unless nothing is left.
    next: Option<(i32, Pieces)>,
}

struct Yard {
    kerf: Length,
    answers: HashMap<Pieces, Answer>,
    is_exact: bool,
}

impl Yard {
    fn answer(&mut self, left: &Pieces) -> Price {
        if let Some(answer) = self.answers.get(left) {
            return answer.price;
        }
        let mut best = Answer { price: (0, 0), next: None };
        let fewest = self.fewest_feet(left);
        for (feet, cuts) in self.tries(left) {
            let is_found = best.next.is_some();
            if is_found && best.price.0 <= fewest && best.price.1 <= fewest_sticks(fewest) {
                break;
            }
            if is_found && self.answers.len() > MOST_QUESTIONS {
                self.is_exact = false;
                break;
            }
            let (rest_feet, rest_sticks) = self.answer(&without(left, &cuts));
            let price = (rest_feet + feet, rest_sticks + 1);
            if best.next.is_none() || price < best.price {
                best = Answer { price, next: Some((feet, cuts)) };
            }
        }
        let price = best.price;
        self.answers.insert(left.clone(), best);
        price
    }

    /// The sticks that may come next.
    fn tries(&mut self, left: &Pieces) -> Vec<(i32, Pieces)> {
        let mut tries = Vec::new();
        let Some((longest, _)) = left.first() else { return tries };
        for feet in SOLD {
            // A piece takes its kerf along; the last one's may run off the stick.
            let mut fillings = Vec::new();
            self.fill(left, Length::feet(feet) + self.kerf, Vec::new(), &mut fillings);
            fillings.retain(|(cuts, room)| takes(cuts, *longest) && !self.takes_more(left, cuts, *room));
            tries.extend(fillings.into_iter().map(|(cuts, _)| (feet, cuts)));
        }
        tries.sort_by_cached_key(|stick| std::cmp::Reverse(used(stick)));
        tries
    }

    /// No fewer feet do: a stick holds its pieces with a kerf each but the last, and none
    /// is shorter than the shortest sold. Sold are even feet.
    fn fewest_feet(&self, left: &Pieces) -> i32 {
        let taken = left.iter().filter_map(|(length, count)| Some((*length + self.kerf) * i64::try_from(*count).ok()?));
        let taken = taken.fold(Length::ZERO, |sum, next| sum + next);
        let shortest = SOLD.into_iter().min().unwrap_or(1);
        let most_for_a_foot = Length::feet(shortest) + self.kerf;
        let feet = i128::from(taken.to_nm()) * i128::from(shortest);
        let feet = (feet + i128::from(most_for_a_foot.to_nm()) - 1) / i128::from(most_for_a_foot.to_nm()).max(1);
        i32::try_from(feet + feet % 2).unwrap_or(i32::MAX)
    }

    /// Ways to cut a stick with so much room left, as much as can be of the longest
    /// first; with what is then left of it.
    fn fill(&mut self, left: &[(Length, usize)], room: Length, cuts: Pieces, found: &mut Vec<(Pieces, Length)>) {
        if found.len() >= MOST_FILLINGS {
            self.is_exact = false;
            return;
        }
        let Some(((length, count), shorter)) = left.split_first() else {
            found.push((cuts, room));
            return;
        };
        let mut rooms = vec![room];
        rooms.extend((1..=*count).map_while(|count| room_after(room, *length + self.kerf, count)));
        for (taken, room) in rooms.into_iter().enumerate().rev() {
            let cut = (taken > 0).then_some((*length, taken));
            self.fill(shorter, room, cuts.iter().copied().chain(cut).collect(), found);
        }
    }

    /// Could more be cut from a stick?
    fn takes_more(&self, left: &Pieces, cuts: &Pieces, room: Length) -> bool {
        without(left, cuts).iter().any(|(length, _)| *length + self.kerf <= room)
    }

    /// The sticks of the cheapest answer, equal ones together.
    fn sticks(&self, mut left: Pieces) -> Vec<Stick> {
        let mut sticks = Vec::new();
        while let Some((feet, cuts)) = self.answers.get(&left).and_then(|answer| answer.next.as_ref()) {
            left = without(&left, cuts);
            sticks.push((*feet, cuts));
        }
        sticks.sort_unstable_by(|a, b| b.cmp(a));
        let alike = sticks.chunk_by(|a, b| a == b).filter_map(|alike| Some((alike.len(), alike.first()?)));
        alike.map(|(count, (feet, cuts))| Stick { count, feet: *feet, cuts: (*cuts).clone() }).collect()
    }
}

fn fewest_sticks(feet: i32) -> usize {
    let longest = SOLD.into_iter().max().unwrap_or(1);
    usize::try_from((feet + longest - 1) / longest).unwrap_or(0)
}

fn takes(cuts: &Pieces, longest: Length) -> bool {
    cuts.first().is_some_and(|(length, _)| *length == longest)
}

fn room_after(room: Length, each: Length, count: usize) -> Option<Length> {
    let taken = each * i64::try_from(count).ok()?;
    (taken <= room).then(|| room - taken)
}

/// What is left when these are cut.
fn without(left: &Pieces, cuts: &Pieces) -> Pieces {
    let cut = |length: Length| cuts.iter().find(|(other, _)| *other == length).map_or(0, |(_, count)| *count);
    let rest = left.iter().map(|(length, count)| (*length, count.saturating_sub(cut(*length))));
    rest.filter(|(_, count)| *count > 0).collect()
}

/// How much of each foot bought is used.
fn used((feet, cuts): &(i32, Pieces)) -> i64 {
    let taken = cuts.iter().map(|(length, count)| length.to_nm().saturating_mul(i64::try_from(*count).unwrap_or(0)));
    taken.sum::<i64>() / i64::from(*feet)
}
