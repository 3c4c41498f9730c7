//! Things on the job's shelves.
//!
//! All of them stand in one row, in log order; a shelf is a view of those of one kind.
//! So a kind of entry more is no more code for keeping it, only for what is special.

use super::observation::Observation;
use crate::engine::entry::{EntryId, Stamp, Time};
use litemap::LiteMap;
use std::marker::PhantomData;

/// A value as it stands after corrections, with the stamp of the entry that began it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Thing<V, S = Stamp> {
    /// The value as it stands.
    pub value: V,
    /// Who, when, in which visit: of the first entry.
    pub stamp: S,
    /// The entry that the value is from: the first, or the latest correction. A new
    /// correction supersedes this one.
    pub head: EntryId,
    /// When that entry was made, by its phone's clock.
    pub said: Time,
}

/// A thing as a shelf shows it.
pub type Seen<'a, T> = Thing<&'a T, &'a Stamp>;

/// What an entry can say, as one type.
pub trait Kind: Sized + 'static {
    /// The observation's value, if it is of this kind.
    fn of(observation: &Observation) -> Option<&Self>;
}

/// Everything that is so, each thing under the id of the entry that began it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Shelves {
    all: LiteMap<EntryId, Thing<Observation>>,
}

impl Shelves {
    /// A thing as it stands, of whatever kind.
    pub fn get(&self, id: EntryId) -> Option<&Thing<Observation>> {
        self.all.get(&id)
    }

    /// Everything, in log order.
    pub fn things(&self) -> impl Iterator<Item = &Thing<Observation>> {
        self.all.values()
    }

    pub(super) fn put(&mut self, id: EntryId, thing: Thing<Observation>) {
        self.all.insert(id, thing);
    }

    pub(super) fn remove(&mut self, id: EntryId) {
        self.all.remove(&id);
    }

    pub(super) const fn shelf<T: Kind>(&self) -> Shelf<'_, T> {
        Shelf { all: &self.all, kind: PhantomData }
    }
}

/// The things of one kind, in log order.
#[derive(Debug)]
pub struct Shelf<'a, T> {
    all: &'a LiteMap<EntryId, Thing<Observation>>,
    kind: PhantomData<T>,
}

impl<T> Clone for Shelf<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Shelf<'_, T> {}

impl<T: Kind + PartialEq> PartialEq for Shelf<'_, T> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl<'a, T: Kind> Shelf<'a, T> {
    /// Each thing with the id of the entry that began it.
    pub fn iter(self) -> impl DoubleEndedIterator<Item = (&'a EntryId, Seen<'a, T>)> + Clone {
        self.all.iter().filter_map(|(id, thing)| Some((id, seen(thing)?)))
    }

    /// Each thing.
    pub fn values(self) -> impl DoubleEndedIterator<Item = Seen<'a, T>> + Clone {
        self.iter().map(|(_, thing)| thing)
    }

    /// The id of each.
    pub fn keys(self) -> impl DoubleEndedIterator<Item = &'a EntryId> + Clone {
        self.iter().map(|(id, _)| id)
    }

    /// One of them.
    pub fn get(self, id: &EntryId) -> Option<Seen<'a, T>> {
        seen(self.all.get(id)?)
    }

    /// Is this one of them?
    pub fn contains_key(self, id: &EntryId) -> bool {
        self.get(id).is_some()
    }

    /// The one begun first.
    pub fn first(self) -> Option<(&'a EntryId, Seen<'a, T>)> {
        self.iter().next()
    }

    /// The one begun last.
    pub fn last(self) -> Option<(&'a EntryId, Seen<'a, T>)> {
        self.iter().next_back()
    }

    /// How many there are.
    pub fn len(self) -> usize {
        self.iter().count()
    }

    /// Is there none?
    pub fn is_empty(self) -> bool {
        self.first().is_none()
    }
}

fn seen<T: Kind>(thing: &Thing<Observation>) -> Option<Seen<'_, T>> {
    Some(Thing { value: T::of(&thing.value)?, stamp: &thing.stamp, head: thing.head, said: thing.said })
}
