//! The fold: the only place that turns entries into a job.
//!
//! Entries about one thing form a *thread*: the entry that records it, corrections of
//! it, and withdrawals. A thread is settled on its own, from its entries alone, so that
//! the job is the same for any order of arrival, and adding an entry costs one thread.
//!
//! An entry may refer only to entries with smaller ids. The logical count makes every
//! honest entry do so; what does not is reported and left out, and cycles cannot be.

use super::entry::{Act, Content, Record};
use super::observation::Observation;
use super::thing::{Shelves, Thing};
use crate::engine::entry::{EntryId, Stamp};
use crate::order::Set;
use litemap::LiteMap;

/// What the entries add up to.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Job {
    /// Everything that is so.
    pub now: Shelves,
    /// Things that were taken back, as they last stood: what refers to one still has to
    /// find its place.
    pub gone: Shelves,
    /// Entries that were taken back: things, corrections of things, and withdrawals.
    pub withdrawn: Set<EntryId>,
    /// Things whose corrections disagree: the corrections, of which the last stands
    /// in until somebody picks.
    pub conflicts: LiteMap<EntryId, Vec<EntryId>>,
    /// Entries that could not be followed, and why.
    pub faults: LiteMap<EntryId, Fault>,
    /// Entries of kinds that this build does not know, by the kind's name.
    pub unknown: LiteMap<EntryId, String>,
    /// Entries that are known to be, and are not here.
    pub absent: Set<EntryId>,
}

/// Why an entry was left out of the job. It stays in the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    /// It refers to an entry that is not here; that may still arrive.
    Dangling {
        /// The entry that is missing.
        of: EntryId,
    },
    /// It refers to itself or to a later entry.
    Backwards {
        /// The entry that it refers to.
        of: EntryId,
    },
    /// It corrects one kind of thing into another.
    ChangesKind,
    /// It is a correction that names no entry.
    CorrectsNothing,
}

/// The fold in progress: threads, and the job that they add up to so far.
#[derive(Debug, Clone, Default)]
pub struct Fold {
    nodes: LiteMap<EntryId, Node>,
    /// Which entries refer to an entry, whether that is here yet or not.
    followers: LiteMap<EntryId, Set<EntryId>>,
    job: Job,
}

#[derive(Debug, Clone)]
struct Node {
    stamp: Stamp,
    act: Act,
}

impl Fold {
    /// The job so far.
    pub const fn job(&self) -> &Job {
        &self.job
    }

    /// Adds one entry. The same id again is ignored: the log settles clashes.
    pub fn add(&mut self, record: &Record) {
        self.job.absent.remove(&record.id());
        match record.content() {
            Content::Absent => {
                self.job.absent.insert(record.id());
            }
            Content::Unknown { kind } => {
                self.job.unknown.insert(record.id(), kind.clone());
            }
            Content::Known(entry) => {
                self.add_known(entry.id, Node { stamp: entry.stamp.clone(), act: entry.act.clone() });
            }
        }
    }

    fn add_known(&mut self, id: EntryId, node: Node) {
        if self.nodes.contains_key(&id) {
            return;
        }
        if let Some(of) = node.refers_to() {
            if of >= id {
                self.job.faults.insert(id, Fault::Backwards { of });
                return;
            }
            self.followers.entry(of).or_default().insert(id);
        }
        self.nodes.insert(id, node);
        match self.beginning_of(id) {
            Ok(beginning) => self.settle(beginning),
            Err(missing) => self.leave_dangling(id, missing),
        }
    }

    /// The entry that began the thread, or the first one missing on the way to it.
    fn beginning_of(&self, id: EntryId) -> Result<EntryId, EntryId> {
        let mut at = id;
        loop {
            // Each step goes to a smaller id, so this ends.
            match self.nodes.get(&at) {
                None => return Err(at),
                Some(node) => match node.refers_to() {
                    None => return Ok(at),
                    Some(of) => at = of,
                },
            }
        }
    }

    fn leave_dangling(&mut self, id: EntryId, missing: EntryId) {
        for follower in self.thread(id) {
            self.job.faults.insert(follower, Fault::Dangling { of: missing });
        }
    }

    /// The entry and all that follow it, directly or not, in log order.
    fn thread(&self, beginning: EntryId) -> Set<EntryId> {
        let mut thread = Set::of(beginning);
        let mut open = vec![beginning];
        while let Some(id) = open.pop() {
            let followers = self.followers.get(&id).into_iter().flatten();
            open.extend(followers.filter(|follower| thread.insert(**follower)));
        }
        thread
    }

    /// Settles a whole thread anew.
    fn settle(&mut self, beginning: EntryId) {
        let thread = self.thread(beginning);
        for id in &thread {
            self.job.faults.remove(id);
        }
        self.job.now.remove(beginning);
        self.job.gone.remove(beginning);
        self.job.conflicts.remove(&beginning);

        let live = self.live(&thread);
        for id in &thread {
            if live.contains(id) {
                self.job.withdrawn.remove(id);
            } else {
                self.job.withdrawn.insert(*id);
            }
        }
        let Some((stamp, recorded)) = self.recorded(beginning) else {
            self.job.faults.insert(beginning, Fault::CorrectsNothing);
            return;
        };
        let corrections = self.corrections(&thread, &recorded);
        let stands = live.contains(&beginning);
        let heads = heads(beginning, &corrections, &live);
        let head = heads.last().copied().unwrap_or(beginning);
        let value = corrections.get(&head).map_or(recorded, |correction| correction.to.clone());
        let said = self.nodes.get(&head).map_or(stamp.at, |node| node.stamp.at);
        if stands && heads.len() > 1 {
            self.job.conflicts.insert(beginning, heads);
        }
        let shelves = if stands { &mut self.job.now } else { &mut self.job.gone };
        shelves.put(beginning, Thing { value, stamp, head, said });
    }

    /// Which entries of a thread nobody has taken back. From the last to the first:
    /// by the time an entry is looked at, all that could withdraw it are settled.
    fn live(&self, thread: &Set<EntryId>) -> Set<EntryId> {
        let mut live = thread.clone();
        for id in thread.iter().rev() {
            if let Some(Node { act: Act::Withdraw { of }, .. }) = self.nodes.get(id)
                && live.contains(id)
            {
                live.remove(of);
            }
        }
        live
    }

    fn recorded(&self, beginning: EntryId) -> Option<(Stamp, Observation)> {
        match self.nodes.get(&beginning) {
            Some(Node { stamp, act: Act::Record(observation) }) => Some((stamp.clone(), observation.clone())),
            _ => None,
        }
    }

    /// The thread's corrections that keep to its kind; the others become faults.
    fn corrections(&mut self, thread: &Set<EntryId>, recorded: &Observation) -> LiteMap<EntryId, Correction> {
        let mut corrections = LiteMap::new();
        for id in thread {
            if let Some(Node { act: Act::Correct { of, to }, .. }) = self.nodes.get(id) {
                if to.same_kind(recorded) {
                    corrections.insert(*id, Correction { of: of.clone(), to: to.clone() });
                } else {
                    self.job.faults.insert(*id, Fault::ChangesKind);
                }
            }
        }
        corrections
    }
}

struct Correction {
    of: Vec<EntryId>,
    to: Observation,
}

impl Node {
    /// The entry that this one hangs on: of several, the first in log order, which is
    /// the same on every phone.
    fn refers_to(&self) -> Option<EntryId> {
        match &self.act {
            Act::Record(_) => None,
            Act::Correct { of, .. } => of.iter().min().copied(),
            Act::Withdraw { of } => Some(*of),
        }
    }
}

/// The live values that no live correction supersedes, in log order. Superseding goes
/// through corrections that were taken back: correcting a correction replaces what that
/// one replaced.
fn heads(beginning: EntryId, corrections: &LiteMap<EntryId, Correction>, live: &Set<EntryId>) -> Vec<EntryId> {
    let mut superseded = Set::default();
    for (id, correction) in corrections {
        if live.contains(id) {
            supersede(correction, corrections, &mut superseded);
        }
    }
    let candidates = std::iter::once(&beginning).chain(corrections.keys());
    candidates.filter(|id| live.contains(id) && !superseded.contains(id)).copied().collect()
}

fn supersede(correction: &Correction, corrections: &LiteMap<EntryId, Correction>, superseded: &mut Set<EntryId>) {
    let mut open: Vec<EntryId> = correction.of.clone();
    while let Some(id) = open.pop() {
        if superseded.insert(id)
            && let Some(earlier) = corrections.get(&id)
        {
            open.extend(&earlier.of);
        }
    }
}
