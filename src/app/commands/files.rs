//! Job files out and in.

use crate::app::platform::{clock, download, files, later};
use crate::app::route::{Route, Tab};
use crate::app::session::{Session, extras_note};
use crate::engine::entry::JobId;
use crate::engine::job::{Act, Book, HandOver, Observation, Record};
use crate::engine::photo::Digest;
use crate::file::{self, FilePhoto, JobFile, Made, Snapshot, invitation, write};
use crate::order;
use crate::store::{Blob, BlobKey, BlobKind, Store};
use leptos::prelude::*;
use litemap::LiteMap;
use wasm_bindgen_futures::spawn_local;
use web_sys::File;

/// What goes into a job file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Packing {
    /// The photos' bytes.
    pub photos: bool,
    /// The client's details.
    pub client: bool,
    /// Only what a second phone needs to join in.
    pub invitation: bool,
}

/// A job file ready to be handed over: it is made before the tap that shares it, since
/// a share must follow its tap at once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Package {
    /// The file's name without its ending.
    pub name: String,
    /// The file in parts.
    pub parts: Vec<String>,
    /// Its revision.
    pub revision: u32,
}

impl Session {
    /// Packs the job on the screen, and logs that it was.
    pub fn pack(self, packing: Packing, ready: Callback<Result<Package, String>>) {
        let Some(id) = self.job_id_untracked() else { return };
        let revision = self.next_revision(id);
        if !packing.invitation {
            let entries = self.books.with_untracked(|books| u32::try_from(books.get(&id)?.log().len()).ok());
            let hand_over = HandOver { revision, with_photos: packing.photos, with_client: packing.client, entries };
            self.write(id, |_, pen| vec![pen.record(Observation::HandOver(hand_over))]);
        }
        spawn_local(async move { ready.run(self.packed(id, packing, revision).await) });
    }

    /// What the job comes to, by the module that is loaded later. The file goes without if
    /// that does not answer: whoever opens it computes it again.
    async fn figures(self, book: &Book) -> Snapshot {
        let units = self.prefs.with_untracked(|prefs| serde_json::to_string(&prefs.units)).unwrap_or_default();
        let told = match self.plain_file(book) {
            Some(job) => later::ask("figures", &job, &units).await,
            None => None,
        };
        told.and_then(Snapshot::parse).unwrap_or_else(Snapshot::none)
    }

    /// The job as a file's text, without photos.
    pub fn plain_file(self, book: &Book) -> Option<String> {
        let file = JobFile::of(book, self.job_id_untracked()?, 1, Made::here(clock::now()));
        Some(write::parts(&file, &Snapshot::none()).collect())
    }

    fn next_revision(self, id: JobId) -> u32 {
        let last = |book: &Book| book.job().now.hand_overs().values().map(|sent| sent.value.revision).max();
        self.books.with_untracked(|books| books.get(&id).and_then(last)).unwrap_or(0).saturating_add(1)
    }

    async fn packed(self, id: JobId, packing: Packing, revision: u32) -> Result<Package, String> {
        let book = self.books.with_untracked(|books| books.get(&id).cloned()).ok_or("there is no such job")?;
        let figures = self.figures(&book).await;
        let made = Made::here(clock::now());
        let file = match packing.invitation {
            true => invitation(&book, id, revision, made),
            false => JobFile::of(&book, id, revision, made),
        };
        let file = self.with_extras(id, file).await;
        let mut photos = wanted(&book);
        photos.extend(passed_through(&book, &file));
        let file = if packing.client { file } else { file::without_client(file) };
        let with_photos = packing.photos && !packing.invitation;
        let file = if with_photos {
            let bytes = self.photos(&photos).await?;
            file.with_photos(bytes)
        } else {
            file::without_photos(file)
        };
        Ok(Package {
            name: file_name(&book, revision, packing),
            parts: write::parts(&file, &figures).collect(),
            revision,
        })
    }

    /// What an opened file said that this build does not know goes back out with the job.
    async fn with_extras(self, id: JobId, mut file: JobFile) -> JobFile {
        let kept = self.store.get_value().note(&extras_note(id)).await.ok().flatten();
        if let Some(kept) = kept.and_then(|text| file::read::salvage(text.as_bytes()).ok()) {
            file.extra = file.extra.union(kept.file.extra);
            file.job.extra = file.job.extra.union(kept.file.job.extra);
            file = file.with_photos(kept.file.photos);
        }
        file
    }

    async fn photos(self, wanted: &[(Digest, crate::engine::entry::Time)]) -> Result<Vec<FilePhoto>, String> {
        let store = self.store.get_value();
        let mut photos = Vec::new();
        for (sha256, at) in wanted {
            let Ok(key) = BlobKey::parse(&sha256.to_string()) else { continue };
            let blob = store.blob(BlobKind::Photo, &key).await.map_err(|error| error.to_string())?;
            // A photo whose bytes are on another phone is named in the entries all the same.
            if let Some(blob) = blob {
                photos.push(FilePhoto::of(blob.bytes, *at).map_err(|_| "a kept photo could not be read".to_owned())?);
            }
        }
        Ok(photos)
    }

    /// Opens a picked job file: merges it, or says why not and changes nothing.
    pub fn open_file(self, picked: File, refused: Callback<String>) {
        spawn_local(async move {
            match self.opened(&picked).await {
                Ok(message) => self.told.set(Some(message)),
                Err(message) => refused.run(message),
            }
        });
    }

    async fn opened(self, picked: &File) -> Result<String, String> {
        let bytes = files::bytes(picked).await?;
        let file = file::read(&bytes).map_err(|refusal| format!("Not opened, and nothing was changed. {refusal}"))?;
        drop(bytes);
        self.keep_photos(&file).await?;
        let id = file.job.id;
        let before = self.books.with_untracked(|books| books.get(&id).map_or(0, |book| book.log().len()));
        self.keep_extras(id, &file);
        self.keep_records(id, file.records.clone(), None);
        let (now, carried) = self
            .books
            .with_untracked(|books| books.get(&id).map_or((0, 0), |book| (book.log().len(), book.job().unknown.len())));
        Route::Job(id, Tab::Answers).go();
        let carried = if carried == 0 {
            String::new()
        } else {
            format!(", {carried} that this Duckboard cannot read wholly, carried along")
        };
        Ok(format!("Opened: {} new entries{carried}.", now.saturating_sub(before)))
    }

    /// Bytes before the entries that name them.
    async fn keep_photos(self, file: &JobFile) -> Result<(), String> {
        let store = self.store.get_value();
        for photo in &file.photos {
            let Some(bytes) = &photo.bytes else { continue };
            let Ok(key) = BlobKey::parse(&photo.sha256.to_string()) else { continue };
            let blob = Blob { media_type: photo.media_type.name().to_owned(), bytes: bytes.to_vec() };
            let kept = store.put_blob(BlobKind::Photo, &key, &blob).await;
            kept.map_err(|error| format!("Not opened: a photo could not be kept ({error})."))?;
        }
        Ok(())
    }

    /// What this build does not know of the file is kept: the file without its entries
    /// and without the photos' bytes, which are in the store.
    fn keep_extras(self, id: JobId, file: &JobFile) {
        if file.extra.is_empty() && file.job.extra.is_empty() && file.photos.is_empty() {
            return;
        }
        let head = |photo: &FilePhoto| FilePhoto { bytes: None, ..photo.clone() };
        let photos = file.photos.iter().map(head).collect();
        let shell = JobFile { records: Vec::new(), photos, ..file.clone() };
        let text: String = write::parts(&shell, &Snapshot::none()).collect();
        self.push(crate::store::Batch::default().with_note(extras_note(id), Some(text)));
    }

    /// Empties the bin: the bytes of photos that were taken back and stand nowhere else.
    pub fn empty_bin(self, done: Callback<String>) {
        spawn_local(async move {
            let standing = self.books.with_untracked(|books| {
                let photos = books.values().flat_map(|book| book.job().now.photos().values());
                order::once(photos.map(|photo| photo.value.sha256.to_string()))
            });
            let stands = |key: &BlobKey| standing.binary_search_by(|known| known.as_str().cmp(key.as_str())).is_ok();
            let store = self.store.get_value();
            let keys = store.blob_keys(BlobKind::Photo).await.unwrap_or_default();
            let mut removed = 0;
            for key in keys.iter().filter(|key| !stands(key)) {
                if store.remove_blob(key).await.is_ok() {
                    removed += 1;
                }
            }
            done.run(format!("{removed} photos removed."));
        });
    }
}

/// The photos that stand, each once, with the time of their entry.
fn wanted(book: &Book) -> Vec<(Digest, crate::engine::entry::Time)> {
    let mut wanted = LiteMap::new();
    for photo in book.job().now.photos().values() {
        let _there_already = wanted.try_insert(photo.value.sha256, photo.stamp.at);
    }
    wanted.into_tuple_vec()
}

/// Photos that came with a file and that no photo entry known here names: an entry of a
/// later version may, so they go on with the job.
fn passed_through(book: &Book, file: &JobFile) -> Vec<(Digest, crate::engine::entry::Time)> {
    let named = |record: &Record| match &record.entry()?.act {
        Act::Record(Observation::Photo(photo)) => Some(photo.sha256),
        _ => None,
    };
    let named = order::once(book.log().records().filter_map(named));
    file.photos
        .iter()
        .filter(|photo| named.binary_search(&photo.sha256).is_err())
        .map(|photo| (photo.sha256, photo.at))
        .collect()
}

fn file_name(book: &Book, revision: u32, packing: Packing) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let heading = if packing.client { book.job().heading() } else { "job".to_owned() };
    let heading: String = heading.chars().map(plain).take(40).collect();
    let sample = if book.job().is_invented() { "-invented-sample" } else { "" };
    let kind = if packing.invitation { "invitation".to_owned() } else { format!("r{revision}") };
    format!("duckboard-{}{sample}-{kind}", heading.trim_matches('-'))
}

/// Hands a package over by the share sheet, or saves it.
pub async fn hand_over(package: &Package, share: bool) -> Result<download::Outcome, String> {
    if share {
        download::share(&package.name, &package.parts).await
    } else {
        download::save(&format!("{}.json", package.name), "application/json", &package.parts)
    }
}
