//! Which values of a thread stand: what corrections supersede, and what withdrawals had not seen.

use super::{Act, Correction, Fold, Node};
use crate::engine::entry::EntryId;
use crate::engine::job::When;
use crate::order::Set;
use litemap::LiteMap;

impl Fold {
    /// The live withdrawals of an entry: when each was made, and what it had seen.
    pub(super) fn withdrawals(
        &self,
        entry: EntryId,
        live: &Set<EntryId>,
    ) -> impl Iterator<Item = (EntryId, When, &[EntryId])> {
        let followers = self.followers.get(&entry).into_iter().flatten().filter(|id| live.contains(id));
        followers.filter_map(move |id| match self.nodes.get(id)? {
            Node { stamp, act: Act::Withdraw { seen, .. } } => {
                Some((*id, When { id: *id, at: stamp.at }, seen.as_slice()))
            }
            _ => None,
        })
    }

    /// Of a thing that was taken back, the values of which nobody who took it back knew. Whoever
    /// did not write down what they had seen knew of what was surely said before.
    pub(super) fn unseen(
        &self,
        beginning: EntryId,
        heads: &[EntryId],
        corrections: &LiteMap<EntryId, Correction>,
        live: &Set<EntryId>,
    ) -> Vec<EntryId> {
        if live.contains(&beginning) {
            return Vec::new();
        }
        let mut known = Superseded::default();
        for (id, when, seen) in self.withdrawals(beginning, live) {
            if seen.is_empty() {
                let is_before =
                    |id: &&EntryId| **id == beginning || self.when(**id).is_some_and(|at| when.is_after(at));
                known.all.extend(heads.iter().filter(is_before).copied());
            }
            self.supersede(id, seen, corrections, live, &mut known);
        }
        heads.iter().filter(|head| !known.all.contains(head)).copied().collect()
    }

    /// The values that stand and no live correction supersedes, in log order: of a thing that was
    /// taken back too, as if it was not.
    pub(super) fn heads(
        &self,
        beginning: EntryId,
        corrections: &LiteMap<EntryId, Correction>,
        live: &Set<EntryId>,
    ) -> Vec<EntryId> {
        let mut superseded = Superseded::default();
        for (id, correction) in corrections.iter().filter(|(id, _)| live.contains(id)) {
            self.supersede(*id, &correction.of, corrections, live, &mut superseded);
        }
        let corrections = corrections.keys().filter(|id| live.contains(id));
        let candidates = std::iter::once(&beginning).chain(corrections);
        candidates.filter(|id| !superseded.all.contains(id)).copied().collect()
    }

    /// Puts in what an entry names, and all that this superseded. Superseding goes through
    /// corrections that were taken back: correcting a correction replaces what that one replaced.
    /// But not where whoever took it back did not know of who names it: then both stand.
    fn supersede(
        &self,
        by: EntryId,
        these: &[EntryId],
        corrections: &LiteMap<EntryId, Correction>,
        live: &Set<EntryId>,
        superseded: &mut Superseded,
    ) {
        let mut open: Vec<_> = these.iter().map(|id| (by, *id)).collect();
        while let Some((by, id)) = open.pop() {
            superseded.all.insert(id);
            if let Some(earlier) = corrections.get(&id)
                && self.was_known(by, id, corrections, live)
                && superseded.passed.insert(id)
            {
                open.extend(earlier.of.iter().map(|of| (id, *of)));
            }
        }
    }

    /// Did all who took a correction back know of an entry that names it?
    fn was_known(
        &self,
        by: EntryId,
        correction: EntryId,
        corrections: &LiteMap<EntryId, Correction>,
        live: &Set<EntryId>,
    ) -> bool {
        self.withdrawals(correction, live).all(|(_, when, seen)| match seen.is_empty() {
            true => self.when(by).is_some_and(|by| when.is_after(by)),
            false => is_behind(by, seen, corrections),
        })
    }

    fn when(&self, id: EntryId) -> Option<When> {
        self.nodes.get(&id).map(|node| When { id, at: node.stamp.at })
    }
}

/// Is an entry one of these, or one that they correct, however often?
fn is_behind(id: EntryId, these: &[EntryId], corrections: &LiteMap<EntryId, Correction>) -> bool {
    let (mut open, mut found) = (these.to_vec(), Set::default());
    while let Some(next) = open.pop() {
        if found.insert(next) {
            open.extend(corrections.get(&next).into_iter().flat_map(|correction| &correction.of));
        }
    }
    found.contains(&id)
}

/// What was superseded, and through which corrections.
#[derive(Default)]
struct Superseded {
    all: Set<EntryId>,
    passed: Set<EntryId>,
}
