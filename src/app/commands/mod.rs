//! What taps do: the only place that makes entries and writes to the session.
//!
//! Every command appends entries to the book at once and hands them to the save queue;
//! "saved" is said only when the store has said so. Nothing waits for a result.

pub mod files;
mod photos;

use super::platform::{self, clock, prefs::Prefs, senses};
use super::route::{Route, Tab};
use super::session::{Phone, Session, draft_note, key_of, phone_note};
use crate::engine::condition::Finding;
use crate::engine::entry::{EntryId, JobId, Label, Logger, Stamp};
use crate::engine::job::{Act, Entry, Fact, Job, Log, Observation, Pen, Record, Visit};
use crate::engine::moisture::{Bounds, Meter, Outside};
use crate::engine::take::{self, Anyway, Draft, InHand, ReadBack, Refused, Saved};
use crate::store::{Batch, Line, SaveState, StoreError, queue};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// Said until somebody has read it.
const EMPTIED: &str = "The browser emptied its storage while Duckboard was open. Everything logged was kept again, \
    but photos taken before are gone from this phone. Hand the job over soon.";

impl Session {
    /// Begins a job with its first visit, and opens it.
    pub fn begin_job(self, title: Label) {
        let Some(id) = self.new_job_id() else { return };
        let wrote = self.write(id, |_, pen| {
            let named = pen.record(Fact::Title(title));
            vec![named, pen.record(Visit { purpose: Label::default() })]
        });
        if wrote {
            Route::Job(id, Tab::Take).go();
        }
    }

    /// Opens the invented sample job, as the module that is loaded later makes it.
    pub fn open_sample(self) {
        let Some(id) = self.new_job_id() else { return };
        let device = self.phone.with_untracked(|phone| phone.device.to_string());
        self.told.set(Some("The sample is being made…".to_owned()));
        spawn_local(async move {
            let made = platform::later::ask("sample", &device, "").await;
            let entries = made.and_then(|made| serde_json::from_str(&made).ok());
            self.told.set(None);
            let Some(entries) = entries else {
                self.refused.set(Some("The sample could not be made. Open it once with a signal.".to_owned()));
                return;
            };
            if self.keep(id, entries, None) {
                Route::Job(id, Tab::Answers).go();
            }
        });
    }

    /// A new id; a message when the browser has no randomness.
    fn new_job_id(self) -> Option<JobId> {
        match platform::random::bits() {
            Ok(bits) => Some(JobId::new(bits)),
            Err(message) => {
                self.refused.set(Some(format!("No job was begun: {message}")));
                None
            }
        }
    }

    /// Says a fact about the job on the screen.
    pub fn say(self, fact: Fact) {
        self.write_here(|_, pen| vec![pen.record(fact)]);
    }

    /// Records an observation about the job on the screen.
    pub fn record(self, observation: Observation) {
        self.write_here(|_, pen| vec![pen.record(observation)]);
    }

    /// Says who logs on this phone.
    pub fn introduce(self, logger: Logger) {
        self.phone.update(|phone| phone.logger = Some(logger));
        self.keep_phone();
    }

    /// Describes the meter in the bag.
    pub fn describe_meter(self, meter: Meter) {
        self.phone.update(|phone| phone.meter = Some(meter));
        self.keep_phone();
    }

    /// Nothing is refused any more: what was tried is left as it is.
    pub fn forget_refusal(self) {
        self.refused.set(None);
        self.asked.set(None);
    }

    /// Changes a preference of this phone.
    pub fn prefer(self, change: impl FnOnce(&mut Prefs)) {
        self.prefs.update(change);
        platform::prefs::keep(self.prefs.get_untracked());
    }

    /// Begins another visit.
    pub fn begin_visit(self, purpose: Label) {
        self.write_here(|_, pen| vec![pen.record(Visit { purpose })]);
    }

    /// Changes what is half done, and keeps it.
    pub fn draft_to(self, change: impl FnOnce(Draft) -> Draft) {
        let Some(id) = self.job_id_untracked() else { return };
        let draft = change(self.draft_untracked(id));
        self.push(Batch::default().with_note(draft_note(id), serde_json::to_string(&draft).ok()));
        self.drafts.update(|drafts| {
            drafts.insert(id, draft);
        });
    }

    /// Takes the typed value.
    pub fn press_save(self) {
        let units = self.prefs.get_untracked().units;
        self.take(|draft, job, pen, meter| take::save(draft, job, pen, units, meter));
    }

    /// Takes the typed number although it is not believed.
    pub fn press_anyway(self, anyway: Anyway) {
        let units = self.prefs.get_untracked().units;
        self.take(|draft, job, pen, meter| take::save_anyway(draft, job, pen, units, meter, anyway));
    }

    /// Takes "over the meter's maximum" or "under its minimum".
    pub fn press_off_scale(self, outside: Outside) {
        let units = self.prefs.get_untracked().units;
        self.take(|draft, job, pen, meter| take::save_off_scale(draft, job, pen, units, meter, outside));
    }

    /// Takes "nobody can get there".
    pub fn press_cannot_reach(self) {
        let units = self.prefs.get_untracked().units;
        self.take(|draft, job, pen, _| take::save_cannot_reach(draft, job, pen, units));
    }

    /// Takes a finding.
    pub fn press_finding(self, finding: Finding) {
        let units = self.prefs.get_untracked().units;
        self.take(|draft, job, pen, _| take::look(draft, job, pen, units, finding));
    }

    /// Takes an entry back.
    pub fn withdraw(self, of: EntryId) {
        self.write_here(|job, pen| vec![pen.take_back(of, job)]);
    }

    /// Corrects a thing as it stands, settling a conflict about it if there is one.
    pub fn correct(self, thing: EntryId, to: Observation) {
        self.write_here(|job, pen| {
            let heads = job.heads(thing);
            if heads.is_empty() { Vec::new() } else { vec![pen.correct(heads, to)] }
        });
    }

    /// Settles a conflict: this is so, or it is taken back.
    pub fn settle(self, thing: EntryId, picked: Option<Observation>) {
        match picked {
            Some(value) => self.correct(thing, value),
            None => self.withdraw(thing),
        }
    }

    /// Takes back this phone's last entry that still stands.
    pub fn undo(self) {
        let device = self.phone.with_untracked(|phone| phone.device);
        let Some(id) = self.job_id_untracked() else { return };
        let last = self.books.with_untracked(|books| {
            let book = books.get(&id)?;
            let mine = book.log().records().filter_map(Record::entry).filter(|entry| entry.id.device == device);
            let stands = |entry: &&Entry| !book.job().withdrawn.contains(&entry.id);
            mine.filter(|entry| !matches!(entry.act, Act::Withdraw { .. })).filter(stands).last().map(|entry| entry.id)
        });
        if let Some(last) = last {
            self.withdraw(last);
        }
    }

    /// Keeps entries of a job, new here or come in with a file, and the draft that goes
    /// with them in one transaction. False if one could not be written down at all.
    pub fn keep(self, id: JobId, entries: Vec<Entry>, draft: Option<Draft>) -> bool {
        let records: Result<Vec<Record>, _> = entries.into_iter().map(Record::of).collect();
        match records {
            Ok(records) => {
                self.keep_records(id, records, draft);
                true
            }
            Err(problem) => {
                self.refused.set(Some(format!("Not logged: {problem}")));
                false
            }
        }
    }

    /// Keeps records of a job.
    pub fn keep_records(self, id: JobId, records: Vec<Record>, draft: Option<Draft>) {
        let key = key_of(id);
        let lines = records.iter().map(|record| Line::new(record.id().to_string(), record.json()));
        let mut batch = Batch::entries(&key, lines);
        if let Some(draft) = draft {
            batch = batch.with_note(draft_note(id), serde_json::to_string(&draft).ok());
            self.drafts.update(|drafts| {
                drafts.insert(id, draft);
            });
        }
        self.books.update(|books| {
            books.entry(id).or_default().add_all(records);
        });
        self.push(batch);
    }

    /// Tries again to keep what is not kept.
    pub fn retry(self) {
        let (queue, store) = (self.queue.get_value(), self.store.get_value());
        spawn_local(async move {
            queue::drain(&queue, store.as_ref(), |state| self.saves.set(state)).await;
            if let SaveState::Failed { why: StoreError::Emptied, .. } = self.saves.get_untracked() {
                // The store is new and empty: what is on the screen is all there is.
                self.queue_everything();
                self.alarm.set(Some(EMPTIED));
                queue::drain(&queue, store.as_ref(), |state| self.saves.set(state)).await;
            }
        });
    }

    fn queue_everything(self) {
        let queue = self.queue.get_value();
        self.books.with_untracked(|books| {
            for (id, book) in books {
                let lines = book.log().records().map(|record| Line::new(record.id().to_string(), record.json()));
                queue.borrow_mut().push(Batch::entries(&key_of(*id), lines));
            }
        });
        let phone = self.phone.with_untracked(|phone| serde_json::to_string(phone).ok());
        queue.borrow_mut().push(Batch::note(phone_note(), phone));
    }

    /// Sends what is to be kept on its way.
    pub fn push(self, batch: Batch) {
        let queue = self.queue.get_value();
        queue.borrow_mut().push(batch);
        // A failure stays on the screen until something has been kept again.
        if !matches!(self.saves.get_untracked(), SaveState::Failed { .. }) {
            self.saves.set(queue.borrow().state());
        }
        self.retry();
    }

    fn take(self, taken: impl FnOnce(&Draft, &Job, &mut Pen, Option<InHand>) -> Result<Saved, Refused>) {
        let Some(id) = self.job_id_untracked() else { return };
        let draft = self.draft_untracked(id);
        let Some(mut pen) = self.pen(id) else { return };
        let (meter, described) = self.meter_entry(id, &mut pen);
        let saved =
            self.books.with_untracked(|books| books.get(&id).map(|book| taken(&draft, book.job(), &mut pen, meter)));
        match saved {
            Some(Ok(Saved { entries, next, read_back })) => {
                self.forget_refusal();
                let uses_meter = entries.iter().any(|entry| matches!(&entry.act, Act::Record(Observation::Reading(_))));
                let described = described.filter(|_| uses_meter);
                if self.keep(id, described.into_iter().chain(entries).collect(), Some(next)) {
                    self.confirm(read_back);
                }
            }
            Some(Err(Refused { message, outside })) => {
                self.refused.set(Some(message));
                self.asked.set(outside);
            }
            None => {}
        }
    }

    /// Seen, felt and, if wanted, heard.
    pub fn confirm(self, read_back: ReadBack) {
        let prefs = self.prefs.get_untracked();
        if prefs.buzz {
            senses::buzz();
        }
        if prefs.aloud {
            senses::say(&read_back.spoken);
        }
        self.read_back.set(Some(read_back));
    }

    /// The job's entry for this phone's meter; a new one if the job has none like it.
    fn meter_entry(self, id: JobId, pen: &mut Pen) -> (Option<InHand>, Option<Entry>) {
        let Some(meter) = self.phone.with_untracked(|phone| phone.meter.clone()) else { return (None, None) };
        let known = self.books.with_untracked(|books| {
            let meters = books.get(&id).map(|book| book.job().now.meters())?;
            meters.iter().find(|(_, known)| *known.value == meter).map(|(id, _)| *id)
        });
        let bounds = Bounds::of(Some(&meter));
        if let Some(entry) = known {
            return (Some(InHand { entry, bounds }), None);
        }
        let described = pen.record(Observation::Meter(meter));
        (Some(InHand { entry: described.id, bounds }), Some(described))
    }

    fn write_here(self, entries: impl FnOnce(&Job, &mut Pen) -> Vec<Entry>) {
        if let Some(id) = self.job_id_untracked() {
            self.write(id, entries);
        }
    }

    /// Writes entries of a job with one pen.
    pub fn write(self, id: JobId, entries: impl FnOnce(&Job, &mut Pen) -> Vec<Entry>) -> bool {
        let Some(mut pen) = self.pen(id) else { return false };
        let entries = self.books.with_untracked(|books| match books.get(&id) {
            Some(book) => entries(book.job(), &mut pen),
            None => entries(&Job::default(), &mut pen),
        });
        self.keep(id, entries, None)
    }

    /// A pen for a job; a message when nobody has said who logs.
    pub fn pen(self, id: JobId) -> Option<Pen> {
        let Phone { device, logger, .. } = self.phone.get_untracked();
        let Some(by) = logger else {
            self.refused.set(Some("Not logged: say first who logs on this phone.".to_owned()));
            return None;
        };
        Some(self.books.with_untracked(|books| {
            let book = books.get(&id);
            let visit = book.and_then(|book| book.job().current_visit()).map(|(visit, _)| visit);
            let stamp = Stamp { at: clock::now(), by, visit };
            book.map_or_else(
                || Pen::new(&Log::default(), device, stamp.clone()),
                |book| Pen::new(book.log(), device, stamp.clone()),
            )
        }))
    }

    fn keep_phone(self) {
        let text = self.phone.with_untracked(|phone| serde_json::to_string(phone).ok());
        self.push(Batch::note(phone_note(), text));
    }

    /// The job on the screen, without watching it.
    pub fn job_id_untracked(self) -> Option<JobId> {
        match self.route.get_untracked() {
            Route::Job(id, _) => Some(id),
            Route::Jobs | Route::Settings => None,
        }
    }

    /// A job's draft, without watching it.
    pub fn draft_untracked(self, id: JobId) -> Draft {
        self.drafts.with_untracked(|drafts| drafts.get(&id).cloned()).unwrap_or_default()
    }
}
