//! Stores that break one promise each, to see that the contract notices.

use super::super::{Batch, Blob, BlobKey, BlobKind, JobKey, Line, Memory, NoteKey, NoteScope, Store, StoreError};
use super::{Storage, checks, job};
use pollster::block_on;
use std::collections::BTreeSet;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sin {
    StartsWithAJob,
    TrimsTexts,
    RepeatsLines,
    OverwritesLines,
    ReversesLines,
    MixesJobs,
    RefusesEmptyBatches,
    CutsLargeBatches,
    ForgetsWhenReopened,
    KeepsTheFirstNote,
    KeepsRemovedNotes,
    AppliesNotesBackwards,
    MixesScopes,
    MakesJobsOfNotes,
    DropsNotesBesideLines,
    CutsLargePhotos,
    MixesKindsOfBlob,
    KeepsTheFirstPhoto,
    KeepsThumbnails,
    ReversesBlobKeys,
}

const SINS: [Sin; 20] = [
    Sin::StartsWithAJob,
    Sin::TrimsTexts,
    Sin::RepeatsLines,
    Sin::OverwritesLines,
    Sin::ReversesLines,
    Sin::MixesJobs,
    Sin::RefusesEmptyBatches,
    Sin::CutsLargeBatches,
    Sin::ForgetsWhenReopened,
    Sin::KeepsTheFirstNote,
    Sin::KeepsRemovedNotes,
    Sin::AppliesNotesBackwards,
    Sin::MixesScopes,
    Sin::MakesJobsOfNotes,
    Sin::DropsNotesBesideLines,
    Sin::CutsLargePhotos,
    Sin::MixesKindsOfBlob,
    Sin::KeepsTheFirstPhoto,
    Sin::KeepsThumbnails,
    Sin::ReversesBlobKeys,
];

#[test]
fn every_sin_is_found_out_and_every_check_finds_one() {
    let all: BTreeSet<_> = checks::<Sinner>().iter().map(|(law, _)| *law).collect();
    let mut found = BTreeSet::new();
    for sin in SINS {
        let broken = laws_broken_by(sin);
        assert!(!broken.is_empty(), "{sin:?} goes unnoticed");
        found.extend(broken);
    }
    assert_eq!(all, found);
}

fn laws_broken_by(sin: Sin) -> Vec<&'static str> {
    let fails = |check: super::Check<Sinner>| {
        let store = Memory::default();
        block_on(check(&Sinner { sin, store })).is_err()
    };
    let laws = checks::<Sinner>().into_iter();
    laws.filter_map(|(law, check)| fails(check).then_some(law)).collect()
}

struct Sinner {
    sin: Sin,
    store: Memory,
}

impl Storage for Sinner {
    type Store = Self;
    fn open(&self) -> Self {
        let store = if self.sin == Sin::ForgetsWhenReopened { Memory::default() } else { self.store.clone() };
        let sin = self.sin;
        Self { sin, store }
    }
}

impl Sinner {
    async fn alter(&self, batch: &Batch) -> Result<Batch, StoreError> {
        let mut batch = batch.clone();
        match self.sin {
            Sin::TrimsTexts => trim(&mut batch),
            Sin::CutsLargeBatches => batch.lines.truncate(1_000),
            Sin::AppliesNotesBackwards => batch.notes.reverse(),
            Sin::KeepsRemovedNotes => batch.notes.retain(|(_, text)| text.is_some()),
            Sin::DropsNotesBesideLines if !batch.lines.is_empty() => batch.notes.clear(),
            Sin::MixesJobs => batch.lines.iter_mut().for_each(|line| line.0 = job(1)),
            Sin::KeepsTheFirstNote => {
                let mut unset = Vec::new();
                for (key, text) in batch.notes {
                    if text.is_none() || self.store.note(&key).await?.is_none() {
                        unset.push((key, text));
                    }
                }
                batch.notes = unset;
            }
            Sin::RefusesEmptyBatches if batch.is_empty() => return Err(StoreError::Blocked),
            _ => {}
        }
        Ok(batch)
    }

    fn kind(&self, kind: BlobKind) -> BlobKind {
        match self.sin {
            Sin::MixesKindsOfBlob => BlobKind::Photo,
            _ => kind,
        }
    }
}

fn trim(batch: &mut Batch) {
    for (_, line) in &mut batch.lines {
        line.json = line.json.trim().to_owned();
    }
    for (_, text) in &mut batch.notes {
        *text = text.take().map(|text| text.trim().to_owned());
    }
}

impl Store for Sinner {
    async fn commit(&self, batch: &Batch) -> Result<(), StoreError> {
        self.store.commit(&self.alter(batch).await?).await
    }

    async fn jobs(&self) -> Result<Vec<JobKey>, StoreError> {
        let mut jobs = self.store.jobs().await?;
        let has_notes = NoteScope::Job(job(1));
        match self.sin {
            Sin::StartsWithAJob => jobs.push(job(9)),
            Sin::MakesJobsOfNotes if !self.store.notes(&has_notes).await?.is_empty() => {
                jobs.push(job(1));
            }
            _ => {}
        }
        Ok(jobs)
    }

    async fn lines(&self, job: &JobKey) -> Result<Vec<Line>, StoreError> {
        let mut lines = self.store.lines(job).await?;
        match self.sin {
            Sin::RepeatsLines => lines.extend(lines.clone()),
            Sin::OverwritesLines => lines.dedup_by(|a, b| a.id == b.id),
            Sin::ReversesLines => lines.reverse(),
            _ => {}
        }
        Ok(lines)
    }

    async fn note(&self, key: &NoteKey) -> Result<Option<String>, StoreError> {
        self.store.note(key).await
    }

    async fn notes(&self, scope: &NoteScope) -> Result<Vec<(NoteKey, String)>, StoreError> {
        let mut notes = self.store.notes(scope).await?;
        if self.sin == Sin::MixesScopes && *scope != NoteScope::Phone {
            notes.extend(self.store.notes(&NoteScope::Phone).await?);
        }
        Ok(notes)
    }

    async fn put_blob(&self, kind: BlobKind, key: &BlobKey, blob: &Blob) -> Result<(), StoreError> {
        let kind = self.kind(kind);
        let mut blob = blob.clone();
        if self.sin == Sin::CutsLargePhotos {
            blob.bytes.truncate(1_000);
        }
        if self.sin == Sin::KeepsTheFirstPhoto && self.store.blob(kind, key).await?.is_some() {
            return Ok(());
        }
        self.store.put_blob(kind, key, &blob).await
    }

    async fn blob(&self, kind: BlobKind, key: &BlobKey) -> Result<Option<Blob>, StoreError> {
        self.store.blob(self.kind(kind), key).await
    }

    async fn remove_blob(&self, key: &BlobKey) -> Result<(), StoreError> {
        let kept = self.store.blob(BlobKind::Thumbnail, key).await?;
        self.store.remove_blob(key).await?;
        match kept {
            Some(kept) if self.sin == Sin::KeepsThumbnails => {
                self.store.put_blob(BlobKind::Thumbnail, key, &kept).await
            }
            _ => Ok(()),
        }
    }

    async fn blob_keys(&self, kind: BlobKind) -> Result<Vec<BlobKey>, StoreError> {
        let mut keys = self.store.blob_keys(self.kind(kind)).await?;
        if self.sin == Sin::ReversesBlobKeys {
            keys.reverse();
        }
        Ok(keys)
    }
}
