//! The fold: the only place that turns entries into a job.
//!
//! Entries about one thing form a *thread*: the entry that records it, corrections of
//! it, and withdrawals. A thread is settled on its own, from its entries alone, so that
//! the job is the same for any order of arrival, and adding an entry costs one thread.
//!
//! An entry may refer only to entries with smaller ids. The logical count makes every
//! honest entry do so; what does not is reported and left out, and cycles cannot be.

mod superseding;

use super::entry::{Act, Content, Record};
use super::observation::Observation;
use super::thing::{Shelves, Thing};
use crate::engine::entry::{EntryId, Stamp, Time};
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
    /// Things whose corrections disagree, or that were taken back by somebody who did not know
    /// of a correction: the corrections, of which the last stands in until somebody picks, and
    /// the withdrawals.
    pub conflicts: LiteMap<EntryId, Vec<EntryId>>,
    /// Entries that could not be followed, and why.
    pub faults: LiteMap<EntryId, Fault>,
    /// Entries that this build cannot read wholly, by the name that it does not know: of their
    /// kind, or of a field.
    pub unknown: LiteMap<EntryId, String>,
    /// Entries that are known to be, and are not here.
    pub absent: Set<EntryId>,
    /// The counts that entries have, each once.
    counts: Set<u32>,
    /// Corrections, each with the thing that it corrects.
    pub(super) corrects: LiteMap<EntryId, EntryId>,
    /// Ids under which two entries say different things, of which one counts, and which nobody
    /// took back who saw both.
    pub clashes: Set<EntryId>,
}

impl Job {
    /// What a new correction of a thing supersedes: its value as it stands, or all that are in
    /// conflict. None of what is no thing.
    pub fn heads(&self, thing: EntryId) -> Vec<EntryId> {
        let head = || self.now.get(thing).map(|thing| vec![thing.head]);
        self.conflicts.get(&thing).cloned().or_else(head).unwrap_or_default()
    }

    /// How many entries are known to be and are not here. Each takes the count after the greatest
    /// that its phone knew of: where counts leave a gap, somebody's entry is missing.
    pub fn missing(&self) -> usize {
        let greatest = self.counts.iter().next_back().map_or(0, |count| *count as usize);
        let gaps = greatest.saturating_sub(self.counts.iter().len());
        self.absent.iter().len() + gaps
    }

    /// How many things were said later than that, by the clock of whoever said them.
    pub fn dated_after(&self, now: Time) -> usize {
        self.now.things().filter(|thing| thing.said > now).count()
    }

    /// What whoever takes an entry back has seen of it: how the thing stands that it began or
    /// corrects; and that two entries share its id, which then is named twice more.
    pub(super) fn seen(&self, of: EntryId) -> Vec<EntryId> {
        let mut seen = self.heads(self.corrects.get(&of).copied().unwrap_or(of));
        if self.clashes.contains(&of) {
            seen.extend([of, of]);
        }
        seen
    }
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
    /// Ids that two entries share.
    clashes: Set<EntryId>,
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

    /// A fold of nothing yet but which ids the log holds twice.
    pub(super) fn with_clashes(clashes: impl Iterator<Item = EntryId>) -> Self {
        let mut fold = Self::default();
        fold.clashes.extend(clashes);
        fold.job.clashes = fold.clashes.clone();
        fold
    }

    /// Adds one entry. The same id again is ignored: the log settles clashes.
    pub fn add(&mut self, record: &Record) {
        self.job.counts.insert(record.id().count);
        self.job.absent.remove(&record.id());
        match record.content() {
            Content::Absent => {
                self.job.absent.insert(record.id());
            }
            Content::LeftOut => {}
            Content::Unknown { kind } => {
                self.job.unknown.insert(record.id(), kind.clone());
            }
            Content::Known(entry) => {
                if let Some(field) = record.unread() {
                    self.job.unknown.insert(entry.id, field.to_owned());
                }
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

        let recorded = self.recorded(beginning);
        let corrections =
            recorded.as_ref().map(|(_, recorded)| self.corrections(&thread, recorded)).unwrap_or_default();
        self.job.corrects.extend(corrections.keys().map(|id| (*id, beginning)));
        let mut live = self.live(&thread, &corrections);
        let mut heads = self.heads(beginning, &corrections, &live);
        let unseen = self.unseen(beginning, &heads, &corrections, &live);
        let head = unseen.last().or(heads.last()).copied().unwrap_or(beginning);
        if !unseen.is_empty() {
            // Whoever took it back did not know of that.
            live.insert(beginning);
            heads.extend(self.withdrawals(beginning, &live).map(|(id, ..)| id));
        }
        for id in &thread {
            if live.contains(id) {
                self.job.withdrawn.remove(id);
            } else {
                self.job.withdrawn.insert(*id);
            }
        }
        self.end_clashes(&thread, &live);
        let Some((stamp, recorded)) = recorded else {
            self.job.faults.insert(beginning, Fault::CorrectsNothing);
            return;
        };
        let stands = live.contains(&beginning);
        let value = corrections.get(&head).map_or(recorded, |correction| correction.to.clone());
        let said = self.nodes.get(&head).map_or(stamp.at, |node| node.stamp.at);
        if stands && heads.len() > 1 {
            self.job.conflicts.insert(beginning, heads);
        }
        let shelves = if stands { &mut self.job.now } else { &mut self.job.gone };
        shelves.put(beginning, Thing { value, stamp, head, said });
    }

    /// Two entries under one id end when somebody takes them back who saw both: what one phone
    /// takes back under an id that it shares is its own entry.
    fn end_clashes(&mut self, thread: &Set<EntryId>, live: &Set<EntryId>) {
        for id in thread.iter().filter(|id| self.clashes.contains(id)) {
            let saw_both = |seen: &[EntryId]| seen.iter().filter(|seen| *seen == id).count() > 1;
            if self.withdrawals(*id, live).any(|(_, _, seen)| saw_both(seen)) {
                self.job.clashes.remove(id);
            } else {
                self.job.clashes.insert(*id);
            }
        }
    }

    /// Which entries of a thread nobody has taken back. From the last to the first:
    /// by the time an entry is looked at, all that could withdraw it are settled. A correction
    /// that names a withdrawal takes that back.
    fn live(&self, thread: &Set<EntryId>, corrections: &LiteMap<EntryId, Correction>) -> Set<EntryId> {
        let mut live = thread.clone();
        for id in thread.iter().rev() {
            if !live.contains(id) {
                continue;
            }
            if let Some(Node { act: Act::Withdraw { of, .. }, .. }) = self.nodes.get(id) {
                live.remove(of);
            }
            for of in corrections.get(id).into_iter().flat_map(|correction| &correction.of) {
                if of < id && matches!(self.nodes.get(of), Some(Node { act: Act::Withdraw { .. }, .. })) {
                    live.remove(of);
                }
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
            Act::Withdraw { of, .. } => Some(*of),
        }
    }
}
