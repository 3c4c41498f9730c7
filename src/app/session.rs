//! The one reactive root: what the phone holds, in signals that screens read. Screens
//! own nothing durable, and only `commands` writes here.

use super::platform::{self, prefs::Prefs};
use super::route::{Route, Tab};
use crate::engine::entry::{DeviceId, JobId, Logger};
use crate::engine::job::{Book, Job};
use crate::engine::moisture::{Meter, Outside};
use crate::engine::take::{Draft, ReadBack};
use crate::file::read::kept_line;
use crate::store::{Batch, IndexedDb, JobKey, NoteKey, NoteScope, SaveQueue, SaveState, Store, StoreError};
use leptos::prelude::*;
use litemap::LiteMap;
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::rc::Rc;

/// What is said once per phone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Phone {
    /// Minted with the database that holds the logs.
    pub device: DeviceId,
    /// Who logs.
    pub logger: Option<Logger>,
    /// The meter in the bag.
    pub meter: Option<Meter>,
}

/// Everything the app holds, by handles that are free to copy.
#[derive(Clone, Copy)]
pub struct Session {
    /// Where it is kept.
    pub store: StoredValue<Rc<IndexedDb>, LocalStorage>,
    /// What is not kept yet.
    pub queue: StoredValue<Rc<RefCell<SaveQueue>>, LocalStorage>,
    /// How keeping goes.
    pub saves: RwSignal<SaveState>,
    /// This phone.
    pub phone: RwSignal<Phone>,
    /// Every job's book.
    pub books: RwSignal<LiteMap<JobId, Book>>,
    /// What is half done, per job.
    pub drafts: RwSignal<LiteMap<JobId, Draft>>,
    /// The value taken last.
    pub read_back: RwSignal<Option<ReadBack>>,
    /// Why the last value was not taken, or the last command not done.
    pub refused: RwSignal<Option<String>>,
    /// On which side of its bounds the number lies that is asked about.
    pub asked: RwSignal<Option<Outside>>,
    /// What somebody must have read before it goes away.
    pub alarm: RwSignal<Option<&'static str>>,
    /// What came of the last command, for the next screen to say.
    pub told: RwSignal<Option<String>>,
    /// How this phone likes things.
    pub prefs: RwSignal<Prefs>,
    /// What the browser says about storage.
    pub standing: RwSignal<platform::storage::Standing>,
    /// Where we are.
    pub route: ReadSignal<Route>,
}

/// The note that holds [`Phone`].
pub fn phone_note() -> NoteKey {
    NoteKey::phone("phone")
}

/// The note that holds a job's draft.
pub fn draft_note(job: JobId) -> NoteKey {
    NoteKey::job(&key_of(job), "draft")
}

/// The note that holds what a job file said that this build does not know.
pub fn extras_note(job: JobId) -> NoteKey {
    NoteKey::job(&key_of(job), "extras")
}

/// The store's key of a job. Both are 32 hex digits.
pub fn key_of(job: JobId) -> JobKey {
    JobKey::from_bits(job.bits())
}

/// The session, from any component.
pub fn session() -> Session {
    expect_context::<Session>()
}

impl Session {
    /// Reads everything that was kept.
    ///
    /// # Errors
    /// What the store said: nothing can be logged without it.
    pub async fn open() -> Result<Self, StoreError> {
        let store = IndexedDb::new();
        let phone = read_phone(&store).await?;
        let (books, drafts) = read_jobs(&store).await?;
        let prefs = platform::prefs::load();
        Ok(Self {
            store: StoredValue::new_local(Rc::new(store)),
            queue: StoredValue::new_local(Rc::new(RefCell::new(SaveQueue::new()))),
            saves: RwSignal::new(SaveState::Saved),
            phone: RwSignal::new(phone),
            books: RwSignal::new(books),
            drafts: RwSignal::new(drafts),
            read_back: RwSignal::new(None),
            refused: RwSignal::new(None),
            asked: RwSignal::new(None),
            alarm: RwSignal::new(None),
            told: RwSignal::new(None),
            prefs: RwSignal::new(prefs),
            standing: RwSignal::new(platform::storage::Standing::default()),
            route: super::route::current(),
        })
    }

    /// How many entries are not safe yet, in words; what is half typed if there are none.
    pub fn unsaved(self) -> String {
        let entries: usize =
            self.queue.with_value(|queue| queue.borrow().unsaved().map(|batch| batch.lines.len()).sum());
        match entries {
            0 => "what is half typed".to_owned(),
            1 => "1 entry".to_owned(),
            entries => format!("{entries} entries"),
        }
    }

    /// The job on the screen.
    pub fn job_id(self) -> Option<JobId> {
        match self.route.get() {
            Route::Job(id, _) => Some(id),
            Route::Jobs | Route::Settings => None,
        }
    }

    /// The tab on the screen.
    pub fn tab(self) -> Option<Tab> {
        match self.route.get() {
            Route::Job(_, tab) => Some(tab),
            Route::Jobs | Route::Settings => None,
        }
    }

    /// Reads the book on the screen.
    pub fn book<T>(self, read: impl FnOnce(&Book) -> T) -> Option<T> {
        let id = self.job_id()?;
        self.books.with(|books| books.get(&id).map(read))
    }

    /// Reads the job on the screen.
    pub fn job<T>(self, read: impl FnOnce(&Job) -> T) -> Option<T> {
        self.book(|book| read(book.job()))
    }

    /// The draft of the job on the screen.
    pub fn draft(self) -> Draft {
        let id = self.job_id();
        self.drafts.with(|drafts| id.and_then(|id| drafts.get(&id).cloned())).unwrap_or_default()
    }
}

async fn read_phone(store: &IndexedDb) -> Result<Phone, StoreError> {
    let kept = store.note(&phone_note()).await?;
    if let Some(phone) = kept.and_then(|text| serde_json::from_str(&text).ok()) {
        return Ok(phone);
    }
    let device =
        platform::random::bits().map_err(|message| StoreError::Other { name: "Crypto".to_owned(), message })?;
    let phone = Phone { device: DeviceId::new(device), logger: None, meter: None };
    let text = serde_json::to_string(&phone).unwrap_or_default();
    store.commit(&Batch::note(phone_note(), Some(text))).await?;
    Ok(phone)
}

type Kept = (LiteMap<JobId, Book>, LiteMap<JobId, Draft>);

async fn read_jobs(store: &IndexedDb) -> Result<Kept, StoreError> {
    let (mut books, mut drafts) = Kept::default();
    for key in store.jobs().await? {
        let Ok(id) = key.as_str().parse::<JobId>() else { continue };
        let lines = store.lines(&key).await?;
        // What this build cannot read stays in the store, untouched, and is missed.
        books.insert(id, Book::of(lines.iter().flat_map(|line| kept_line(&line.id, &line.json))));
        let notes = store.notes(&NoteScope::Job(key)).await?;
        let draft = notes.iter().find(|(key, _)| key.name == "draft");
        if let Some(draft) = draft.and_then(|(_, text)| serde_json::from_str(text).ok()) {
            drafts.insert(id, draft);
        }
    }
    Ok((books, drafts))
}
