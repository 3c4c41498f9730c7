//! Which entries hang together: a record, its corrections and withdrawals. Leaving out
//! a thing means leaving out its whole thread, or its words would survive in a
//! correction.

use crate::engine::entry::EntryId;
use crate::engine::job::{Act, Entry, Record};
use crate::order::Set;
use litemap::LiteMap;

/// Every entry that hangs together with one that `picked` names, directly or not.
/// All entries of a clash are looked at, not only the one that counts.
pub(super) fn threads_with(records: &[Record], picked: impl Fn(&Entry) -> bool) -> Set<EntryId> {
    let known = || records.iter().filter_map(Record::entry);
    let beside = neighbours(known());
    let mut open: Vec<EntryId> = known().filter(|entry| picked(entry)).map(|entry| entry.id).collect();
    let mut found = Set::default();
    found.extend(open.iter().copied());
    while let Some(id) = open.pop() {
        let next = beside.get(&id).into_iter().flatten();
        open.extend(next.filter(|id| found.insert(**id)));
    }
    found
}

/// For each entry those that it names and those that name it.
fn neighbours<'a>(entries: impl Iterator<Item = &'a Entry>) -> LiteMap<EntryId, Set<EntryId>> {
    let mut beside: LiteMap<EntryId, Set<EntryId>> = LiteMap::new();
    for entry in entries {
        for of in named(&entry.act) {
            beside.entry(of).or_default().insert(entry.id);
            beside.entry(entry.id).or_default().insert(of);
        }
    }
    beside
}

fn named(act: &Act) -> Vec<EntryId> {
    match act {
        Act::Record(_) => Vec::new(),
        Act::Correct { of, .. } => of.clone(),
        Act::Withdraw { of, .. } => vec![*of],
    }
}
