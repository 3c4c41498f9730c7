//! What is promised of the browser's database in particular: checks that break it.

use crate::browser;
use duckboard::store::{Batch, Blob, BlobKey, BlobKind, IndexedDb, JobKey, Line, NoteKey, Store, StoreError};
use std::fmt::Debug;
use std::pin::Pin;
use std::rc::Rc;
use wasm_bindgen_futures::{JsFuture, future_to_promise};

type Outcome = Result<(), String>;
type Check = fn(&'static str) -> Pin<Box<dyn Future<Output = Outcome>>>;

/// All checks, each with the law it states, which names its database too.
pub fn checks() -> Vec<(&'static str, Check)> {
    macro_rules! checks {
        ($($law:ident,)*) => {
            vec![$((stringify!($law), (|name| Box::pin($law(name))) as Check)),*]
        };
    }
    checks![
        every_write_asks_for_strict_durability,
        a_commit_resolves_after_its_transaction_is_complete,
        a_refused_transaction_is_made_again_on_a_new_connection,
        an_aborted_write_is_made_again,
        a_second_failure_reaches_the_caller_and_the_store_recovers,
        a_batch_that_breaks_in_the_middle_saves_nothing,
        a_full_phone_is_told_as_such,
        a_read_survives_a_lost_connection,
        a_deletion_is_let_through_and_told_once,
        an_upgrade_held_up_by_another_tab_is_an_error,
        an_opening_without_an_answer_is_an_error,
        a_write_without_an_answer_is_an_error_and_is_not_saved,
        overlapping_first_commits_are_all_kept,
        no_listener_outlives_its_work,
        a_dropped_store_closes_its_connection,
    ]
}

async fn every_write_asks_for_strict_durability(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    let key = BlobKey::of(b"photo");
    let photo = Blob { media_type: "image/jpeg".to_owned(), bytes: b"photo".to_vec() };
    save(&store, "a").await?;
    same("commit", &browser::last_durability(), &"strict".to_owned())?;
    let put = store.put_blob(BlobKind::Photo, &key, &photo).await;
    same("put", &put, &Ok(()))?;
    same("put", &browser::last_durability(), &"strict".to_owned())?;
    same("remove", &store.remove_blob(&key).await, &Ok(()))?;
    same("remove", &browser::last_durability(), &"strict".to_owned())
}

async fn a_commit_resolves_after_its_transaction_is_complete(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    for id in ["a", "b", "c"] {
        let before = browser::completions();
        save(&store, id).await?;
        same("completions", &browser::completions(), &(before + 1))?;
    }
    Ok(())
}

async fn a_refused_transaction_is_made_again_on_a_new_connection(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    save(&store, "a").await?;
    for (error, id) in [("InvalidStateError", "b"), ("UnknownError", "c")] {
        let before = browser::openings();
        browser::refuse_transactions(1, error);
        save(&store, id).await?;
        same("openings", &browser::openings(), &(before + 1))?;
    }
    holds(&store, &["a", "b", "c"]).await
}

async fn an_aborted_write_is_made_again(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    browser::abort_writes(1);
    save(&store, "a").await?;
    holds(&store, &["a"]).await
}

async fn a_second_failure_reaches_the_caller_and_the_store_recovers(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    browser::refuse_transactions(2, "InvalidStateError");
    lost_connection(commit(&store, "a").await)?;
    browser::abort_writes(2);
    lost_connection(commit(&store, "a").await)?;
    holds(&store, &[]).await?;
    save(&store, "a").await?;
    holds(&store, &["a"]).await
}

async fn a_batch_that_breaks_in_the_middle_saves_nothing(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    let note = NoteKey::phone("draft");
    let batch = batch_of(&["a", "b", "c"]).with_note(note.clone(), Some("12'".to_owned()));
    for puts_before in 0..4 {
        browser::break_put_after(puts_before, "DataError");
        let other = StoreError::from_browser("DataError", "on purpose");
        same("commit", &store.commit(&batch).await, &Err(other))?;
        holds(&store, &[]).await?;
        same("note", &store.note(&note).await, &Ok(None))?;
    }
    same("commit", &store.commit(&batch).await, &Ok(()))?;
    holds(&store, &["a", "b", "c"]).await
}

async fn a_full_phone_is_told_as_such(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    browser::break_put_after(0, "QuotaExceededError");
    same("commit", &commit(&store, "a").await, &Err(StoreError::QuotaExceeded))
}

async fn a_read_survives_a_lost_connection(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    save(&store, "a").await?;
    browser::refuse_transactions(1, "InvalidStateError");
    holds(&store, &["a"]).await
}

async fn a_deletion_is_let_through_and_told_once(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    save(&store, "a").await?;
    let deleted = browser::delete_database(name).await;
    same("deleted at once", &deleted, &true)?;
    holds(&store, &[]).await?;
    same("commit", &commit(&store, "b").await, &Err(StoreError::Emptied))?;
    save(&store, "b").await?;
    holds(&store, &["b"]).await
}

async fn an_upgrade_held_up_by_another_tab_is_an_error(name: &'static str) -> Outcome {
    save(&IndexedDb::named(name), "a").await?;
    browser::hold_open(name).await;
    let store = IndexedDb::named(name);
    browser::ask_for_next_version();
    let before = browser::timers();
    same("commit", &commit(&store, "b").await, &Err(StoreError::Blocked))?;
    same("timers that went off", &browser::timers(), &before)?;
    browser::mend();
    save(&store, "b").await?;
    holds(&store, &["a", "b"]).await?;
    same("connections", &browser::connections(), &1)
}

async fn an_opening_without_an_answer_is_an_error(name: &'static str) -> Outcome {
    save(&IndexedDb::named(name), "a").await?;
    browser::hold_open(name).await;
    let deleted = browser::delete_database(name).await;
    same("deleted at once", &deleted, &false)?;
    let store = IndexedDb::named(name);
    browser::hurry_timers(5_000);
    same("commit", &commit(&store, "b").await, &Err(StoreError::Blocked))?;
    browser::mend();
    // Now the database is deleted, and what was given up makes it anew: with all its
    // object stores, or it could never be used again. Then it must not stay open.
    save(&store, "b").await?;
    holds(&store, &["b"]).await?;
    same("connections", &browser::connections(), &1)
}

async fn a_write_without_an_answer_is_an_error_and_is_not_saved(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    save(&store, "a").await?;
    browser::keep_busy(&browser::hold_open(name).await);
    // A transaction may take longer than an opening, which works here.
    browser::hurry_timers(20_000);
    lost_connection(commit(&store, "b").await)?;
    browser::mend();
    holds(&store, &["a"]).await?;
    save(&store, "b").await?;
    holds(&store, &["a", "b"]).await
}

async fn overlapping_first_commits_are_all_kept(name: &'static str) -> Outcome {
    let store = Rc::new(IndexedDb::named(name));
    let names = ["a", "b", "c", "d", "e"];
    let begun = names.map(|id| {
        let store = Rc::clone(&store);
        future_to_promise(async move {
            save(&store, id).await?;
            Ok(wasm_bindgen::JsValue::UNDEFINED)
        })
    });
    for promise in begun {
        let outcome = JsFuture::from(promise).await;
        outcome.map_err(|error| format!("{error:?}"))?;
    }
    holds(&store, &names).await?;
    same("connections", &browser::connections(), &1)
}

async fn no_listener_outlives_its_work(name: &'static str) -> Outcome {
    let before = browser::listeners();
    let store = IndexedDb::named(name);
    save(&store, "a").await?;
    let idle = browser::listeners();
    for id in ["b", "c", "d", "e"] {
        save(&store, id).await?;
        store.jobs().await.map_err(|error| error.to_string())?;
    }
    browser::refuse_transactions(1, "InvalidStateError");
    save(&store, "f").await?;
    same("connections", &browser::connections(), &1)?;
    same("while open", &browser::listeners(), &idle)?;
    drop(store);
    same("in the end", &browser::listeners(), &before)
}

async fn a_dropped_store_closes_its_connection(name: &'static str) -> Outcome {
    let store = IndexedDb::named(name);
    save(&store, "a").await?;
    same("connections", &browser::connections(), &1)?;
    drop(store);
    same("connections", &browser::connections(), &0)
}

async fn commit(store: &IndexedDb, id: &str) -> Result<(), StoreError> {
    store.commit(&batch_of(&[id])).await
}

async fn save(store: &IndexedDb, id: &str) -> Outcome {
    same("commit", &commit(store, id).await, &Ok(()))
}

fn batch_of(ids: &[&str]) -> Batch {
    let lines = ids.iter().map(|id| Line::new(*id, "{}"));
    Batch::entries(&JobKey::from_bits(1), lines)
}

async fn holds(store: &IndexedDb, wanted: &[&str]) -> Outcome {
    let lines = store.lines(&JobKey::from_bits(1)).await;
    let lines = lines.map_err(|error| error.to_string())?;
    let ids: Vec<_> = lines.iter().map(|line| line.id.as_str()).collect();
    same("ids", &ids, &wanted.to_vec())
}

fn lost_connection(outcome: Result<(), StoreError>) -> Outcome {
    match outcome {
        Err(error) if error.is_lost_connection() => Ok(()),
        other => Err(format!("{other:?} instead of a lost connection")),
    }
}

fn same<T: PartialEq + Debug>(what: &str, got: &T, wanted: &T) -> Outcome {
    if got == wanted { Ok(()) } else { Err(format!("{what}: {got:?} instead of {wanted:?}")) }
}
