//! Neighbouring classes bounded together.
//!
//! Pieces as small as the smallest of any class in a group take no more sheets than the
//! pieces of each: what is proven of those is proven of all. A group of which too little is
//! proven is halved, down to classes that have to be looked at one by one.

use super::super::bound::Bounder;
use super::super::case::Case;
use super::super::courses::Class;
use super::super::options::Ways;
use super::super::scheme::{Kind, NotApart, Scheme};

/// A class of a group: its number among the hopes, and what can be cut for its first and
/// for its last member. Sizes in between lie between those.
type Member = (usize, Vec<Scheme>);

/// What is known of a group in the end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verdict {
    /// Its classes take so many sheets or more.
    Take(u32),
    /// No joints suit any of its classes.
    Nothing,
}

/// What a step brought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Told {
    /// Of these classes that.
    Of(Vec<usize>, Verdict),
    /// Nothing yet; go on.
    Working,
    /// There are no groups left.
    Over,
}

/// Groups that wait their turn, and the one that has it.
#[derive(Debug, Clone, Default)]
pub struct Groups {
    /// Classes that were not taken apart yet, in neighbourhoods; the next one last.
    ahead: Vec<Vec<usize>>,
    /// What was halved; the next one last.
    halves: Vec<Vec<Member>>,
    now: Option<Box<Group>>,
    /// The prices that proved most of the last group.
    prices: Option<Vec<(Kind, i64)>>,
    /// What was done so far: a measure of the work.
    pub work: u64,
    /// About how much memory it takes.
    pub bytes: usize,
}

#[derive(Debug, Clone)]
struct Group {
    members: Vec<Member>,
    scheme: Scheme,
    ways: Ways,
    bounder: Bounder,
    rounds: u32,
}

impl Groups {
    /// Groups of other classes, given by number, that lie next to each other in this order.
    pub fn anew(&self, case: &Case, classes: &[usize]) -> Self {
        let mut ahead: Vec<_> = classes.chunks(case.limits.in_a_group.max(1)).map(<[usize]>::to_vec).collect();
        ahead.reverse();
        Self { ahead, work: self.work, prices: self.prices.clone(), ..Self::default() }
    }

    /// One step towards a proof that classes take more than `target` sheets.
    pub fn step<'a>(&mut self, case: &Case, target: u32, class: impl Fn(usize) -> Option<&'a Class>) -> Told {
        let told = match self.now.take() {
            Some(group) => self.go_on(group, target, case.limits.group_rounds),
            None => self.next(case, target, class),
        };
        let members =
            |members: &Vec<Member>| members.iter().flat_map(|(_, ends)| ends).map(Scheme::bytes).sum::<usize>();
        let halves: usize = self.halves.iter().map(members).sum();
        let now = self.now.as_ref().map_or(0, |group| members(&group.members) + group.bytes());
        self.bytes = halves + now;
        told
    }

    /// Begins with the next group.
    fn next<'a>(&mut self, case: &Case, target: u32, class: impl Fn(usize) -> Option<&'a Class>) -> Told {
        let Some(mut members) = self.halves.pop() else {
            let Some(classes) = self.ahead.pop() else { return Told::Over };
            return self.take_apart(case, &classes, class);
        };
        if members.len() < 2 {
            // One class is worked on as such.
            return Told::Working;
        }
        let schemes = members.iter().flat_map(|(_, ends)| ends.iter().cloned());
        let Some(scheme) = Scheme::least_of(&schemes.collect::<Vec<_>>()) else {
            let half = members.split_off(members.len() / 2);
            self.halves.extend([half, members]);
            return Told::Working;
        };
        let ways = Ways::of(&scheme, case.asked.stagger, case.limits.ways, &case.limits);
        let Some(mut bounder) = Bounder::new(case, &scheme, &ways, false) else {
            return Told::Of(numbers(&members), Verdict::Nothing);
        };
        if let Some(prices) = &self.prices {
            bounder.inherit(&scheme, &ways, prices);
        }
        let group = Box::new(Group { members, scheme, ways, bounder, rounds: 0 });
        self.work += group.bounder.work();
        self.judge(group, target, case.limits.group_rounds)
    }

    /// What can be cut for classes that were not taken apart yet.
    fn take_apart<'a>(&mut self, case: &Case, classes: &[usize], class: impl Fn(usize) -> Option<&'a Class>) -> Told {
        let (mut members, mut nothing) = (Vec::new(), Vec::new());
        for number in classes {
            let Some(class) = class(*number) else { continue };
            let last = class.members.last().filter(|_| class.members.len() > 1);
            let ends = class.members.first().into_iter().chain(last);
            match ends.map(|levels| Scheme::new(case, levels.clone())).collect::<Result<Vec<_>, _>>() {
                Ok(ends) => members.push((*number, ends)),
                Err(NotApart::Uncoverable) => nothing.push(*number),
                Err(NotApart::TooMuch) => {}
            }
        }
        self.work += members.iter().flat_map(|(_, ends)| ends).map(|scheme| scheme.bytes() as u64).sum::<u64>();
        self.halves.push(members);
        if nothing.is_empty() { Told::Working } else { Told::Of(nothing, Verdict::Nothing) }
    }

    fn go_on(&mut self, mut group: Box<Group>, target: u32, most_rounds: u32) -> Told {
        let before = group.bounder.work();
        group.rounds += 1;
        group.bounder.step(&group.scheme, &group.ways);
        self.work += group.bounder.work() - before;
        self.judge(group, target, most_rounds)
    }

    /// Is a group done with?
    fn judge(&mut self, mut group: Box<Group>, target: u32, most_rounds: u32) -> Told {
        let sheets = group.bounder.proof.sheets();
        if sheets > target {
            self.prices = Some(group.priced_kinds());
            return Told::Of(numbers(&group.members), Verdict::Take(sheets));
        }
        if !group.bounder.is_hopeless(target) && group.rounds < most_rounds {
            self.now = Some(group);
            return Told::Working;
        }
        self.prices = Some(group.priced_kinds());
        let half = group.members.split_off(group.members.len() / 2);
        self.halves.extend([half, group.members]);
        Told::Working
    }
}

impl Group {
    fn priced_kinds(&self) -> Vec<(Kind, i64)> {
        self.scheme.kinds.iter().copied().zip(self.bounder.proof.prices.iter().copied()).collect()
    }

    fn bytes(&self) -> usize {
        self.scheme.bytes() + self.ways.bytes() + self.bounder.bytes()
    }
}

fn numbers(members: &[Member]) -> Vec<usize> {
    members.iter().map(|(number, _)| *number).collect()
}
