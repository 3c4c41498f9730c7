//! The book: a log and the job it adds up to, kept in step, and the pen that writes in it.

use super::entry::{Act, Entry, Record};
use super::fold::{Fold, Job};
use super::log::{Added, Log};
use super::observation::Observation;
use super::when::InVisit;
use crate::engine::entry::{DeviceId, EntryId, Stamp};
use crate::order;

/// A log and its job. Entries can be added, and nothing else can happen to it.
#[derive(Debug, Clone, Default)]
pub struct Book {
    log: Log,
    fold: Fold,
}

impl Book {
    /// A book of these records.
    pub fn of(records: impl IntoIterator<Item = Record>) -> Self {
        let mut book = Self::default();
        book.add_all(records);
        book
    }

    /// Adds many records. Whatever clashes there are, the job is folded anew once.
    pub fn add_all(&mut self, records: impl IntoIterator<Item = Record>) {
        let mut clashed = false;
        for record in records {
            let id = record.id();
            match self.log.add(record) {
                Added::New if !clashed => self.fold_in(id),
                Added::New | Added::Known => {}
                Added::Clash => clashed = true,
            }
        }
        if clashed {
            self.refold();
        }
    }

    /// Adds a record to the log and to the job.
    pub fn add(&mut self, record: Record) -> Added {
        let id = record.id();
        let added = self.log.add(record);
        match added {
            Added::New => self.fold_in(id),
            Added::Known => {}
            // Which of the two counts may have changed, and threads with it.
            Added::Clash => self.refold(),
        }
        added
    }

    /// The entries.
    pub const fn log(&self) -> &Log {
        &self.log
    }

    /// What they add up to.
    pub const fn job(&self) -> &Job {
        self.fold.job()
    }

    fn refold(&mut self) {
        self.fold = Fold::with_clashes(self.log.clashes());
        let ids: Vec<EntryId> = self.log.records().map(Record::id).collect();
        for id in ids {
            self.fold_in(id);
        }
    }

    fn fold_in(&mut self, id: EntryId) {
        if let Some(record) = self.log.get(id) {
            self.fold.add(record);
        }
    }
}

/// What writes entries: it knows the device and the stamp, and gives ids.
#[derive(Debug, Clone)]
pub struct Pen {
    next: EntryId,
    stamp: Stamp,
}

impl Pen {
    /// A pen that goes on where the log ends.
    pub fn new(log: &Log, device: DeviceId, stamp: Stamp) -> Self {
        Self { next: log.next_id(device), stamp }
    }

    /// Records something new.
    pub fn record(&mut self, observation: impl Into<Observation>) -> Entry {
        self.write(Act::Record(observation.into()))
    }

    /// Corrects entries of one thing.
    pub fn correct(&mut self, mut of: Vec<EntryId>, to: impl Into<Observation>) -> Entry {
        order::sort(&mut of);
        of.dedup();
        self.write(Act::Correct { of, to: to.into() })
    }

    /// Takes an entry back that nobody corrected.
    pub fn withdraw(&mut self, of: EntryId) -> Entry {
        self.write(Act::Withdraw { of, seen: vec![of] })
    }

    /// Takes an entry back as it stands in this job. A correction that the job does not know of
    /// is not taken back with it.
    pub fn take_back(&mut self, of: EntryId, job: &Job) -> Entry {
        self.write(Act::Withdraw { of, seen: job.seen(of) })
    }

    /// From here on, entries belong to this visit.
    pub const fn begin_visit(&mut self, visit: EntryId) {
        self.stamp.visit = Some(visit);
    }

    /// The visit that entries belong to.
    pub const fn visit(&self) -> Option<EntryId> {
        self.stamp.visit
    }

    /// In which visit the next entry is, by its time too.
    pub const fn in_visit(&self) -> InVisit {
        InVisit::of(&self.stamp)
    }

    /// From here on, entries carry this stamp.
    pub fn stamp_from(&mut self, stamp: Stamp) {
        self.stamp = stamp;
    }

    fn write(&mut self, act: Act) -> Entry {
        let id = self.next;
        self.next.count = self.next.count.saturating_add(1);
        Entry { id, stamp: self.stamp.clone(), act }
    }
}
