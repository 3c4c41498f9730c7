//! What is promised of notes.

use super::super::{Batch, Line, NoteKey, NoteScope, Store, StoreError};
use super::{ODD_TEXTS, Outcome, Storage, job, same};

pub(super) async fn a_note_says_what_it_was_last_told(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let key = NoteKey::phone("profile");
    same("before", &store.note(&key).await?, &None)?;
    for text in ["first", "second", "", "first"] {
        set(&store, &key, text).await?;
        same("after", &store.note(&key).await?, &Some(text.to_owned()))?;
    }
    Ok(())
}

pub(super) async fn a_note_comes_back_byte_for_byte(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    for text in ODD_TEXTS {
        let key = NoteKey::job(&job(1), text);
        set(&store, &key, text).await?;
        same(text, &store.note(&key).await?, &Some(text.to_owned()))?;
    }
    let all = store.notes(&NoteScope::Job(job(1))).await?;
    same("how many", &all.len(), &ODD_TEXTS.len())
}

pub(super) async fn a_removed_note_is_gone(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let (key, other) = (NoteKey::phone("draft"), NoteKey::phone("draft 2"));
    set(&store, &key, "12'").await?;
    set(&store, &other, "3'").await?;
    for _ in 0..2 {
        store.commit(&Batch::note(key.clone(), None)).await?;
        same("note", &store.note(&key).await?, &None)?;
    }
    let left = vec![(other, "3'".to_owned())];
    same("left", &store.notes(&NoteScope::Phone).await?, &left)
}

pub(super) async fn the_last_change_in_a_batch_holds(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let [kept, gone] = ["kept", "gone"].map(NoteKey::phone);
    let batch = Batch::note(kept.clone(), Some("1".to_owned()))
        .with_note(gone.clone(), Some("1".to_owned()))
        .with_note(kept.clone(), None)
        .with_note(gone.clone(), None)
        .with_note(kept.clone(), Some("2".to_owned()));
    store.commit(&batch).await?;
    same("kept", &store.note(&kept).await?, &Some("2".to_owned()))?;
    same("gone", &store.note(&gone).await?, &None)
}

/// The last two names stand the other way round in UTF-16, by which a browser sorts.
pub(super) async fn notes_are_listed_by_scope_and_sorted(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let names = ["", "a", "b", "\u{ff5e}", "\u{10000}"];
    let scopes = [NoteScope::Phone, NoteScope::Job(job(0)), NoteScope::Job(job(u128::MAX))];
    let key = |scope: &NoteScope, name: &str| NoteKey { scope: scope.clone(), name: name.to_owned() };
    for name in names.iter().rev() {
        for scope in &scopes {
            set(&store, &key(scope, name), &format!("{scope:?} {name}")).await?;
        }
    }
    for scope in &scopes {
        let sorted = names.map(|name| (key(scope, name), format!("{scope:?} {name}")));
        same("notes", &store.notes(scope).await?, &sorted.to_vec())?;
    }
    let none = store.notes(&NoteScope::Job(job(5))).await?;
    same("of another job", &none, &vec![])
}

pub(super) async fn notes_alone_make_no_job(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    set(&store, &NoteKey::job(&job(1), "draft"), "12'").await?;
    same("jobs", &store.jobs().await?, &vec![])
}

pub(super) async fn a_note_and_its_entry_change_together(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let draft = NoteKey::job(&job(1), "draft");
    set(&store, &draft, "12'").await?;
    let line = Line::new("a", "{}");
    let batch = Batch::entries(&job(1), [line.clone()]).with_note(draft.clone(), None);
    store.commit(&batch).await?;
    same("lines", &store.lines(&job(1)).await?, &vec![line])?;
    same("draft", &store.note(&draft).await?, &None)
}

pub(super) async fn notes_are_there_after_reopening(storage: &impl Storage) -> Outcome {
    let [kept, gone] = ["kept", "gone"].map(NoteKey::phone);
    let first = storage.open();
    set(&first, &kept, "1").await?;
    set(&first, &gone, "1").await?;
    first.commit(&Batch::note(gone.clone(), None)).await?;
    drop(first);
    let store = storage.open();
    same("kept", &store.note(&kept).await?, &Some("1".to_owned()))?;
    same("gone", &store.note(&gone).await?, &None)
}

async fn set(store: &impl Store, key: &NoteKey, text: &str) -> Result<(), StoreError> {
    let batch = Batch::note(key.clone(), Some(text.to_owned()));
    store.commit(&batch).await
}
