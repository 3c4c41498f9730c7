//! The sides of rooms in the order that they are walked.

use crate::engine::entry::EntryId;
use crate::engine::job::Job;
use std::collections::{BTreeMap, BTreeSet};

/// Every side as its room, its number counted from one, and its entry.
///
/// A side put in later follows the one it names at once, before those that followed
/// it already. Sides that no walk reaches come last, in log order.
pub(super) fn numbered_sides(job: &Job) -> Vec<(EntryId, usize, EntryId)> {
    let mut following: BTreeMap<(EntryId, Option<EntryId>), Vec<EntryId>> = BTreeMap::new();
    for (id, thing) in &job.now.sides {
        following.entry((thing.value.room, thing.value.after)).or_default().push(*id);
    }
    let rooms: BTreeSet<EntryId> = job.now.sides.values().map(|thing| thing.value.room).collect();
    rooms.into_iter().flat_map(|room| walk(job, room, &following)).collect()
}

fn walk(
    job: &Job,
    room: EntryId,
    following: &BTreeMap<(EntryId, Option<EntryId>), Vec<EntryId>>,
) -> Vec<(EntryId, usize, EntryId)> {
    let after = |side: Option<EntryId>| following.get(&(room, side)).into_iter().flatten().copied();
    let mut order = Vec::new();
    let mut seen = BTreeSet::new();
    // The last of the open ones is next: the latest that follows the side just walked.
    let mut open: Vec<EntryId> = after(None).collect();
    while let Some(side) = open.pop() {
        if seen.insert(side) {
            order.push(side);
            open.extend(after(Some(side)));
        }
    }
    let in_room = job.now.sides.iter().filter(|(_, thing)| thing.value.room == room).map(|(id, _)| *id);
    order.extend(in_room.filter(|side| !seen.contains(side)));
    order.into_iter().enumerate().map(|(nth, side)| (room, nth + 1, side)).collect()
}
