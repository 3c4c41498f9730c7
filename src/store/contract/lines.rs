//! What is promised of entry lines and of the list of jobs.

use super::super::{Batch, JobKey, Line, Store, StoreError};
use super::{ODD_TEXTS, Outcome, Storage, job, same};

pub(super) async fn new_storage_is_empty(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    same("jobs", &store.jobs().await?, &vec![])?;
    same("lines", &store.lines(&job(1)).await?, &vec![])
}

pub(super) async fn a_line_comes_back_byte_for_byte(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    for (number, text) in (1..).zip(ODD_TEXTS) {
        let line = Line::new(text, text);
        commit(&store, &job(number), [line.clone()]).await?;
        same(text, &store.lines(&job(number)).await?, &vec![line])?;
    }
    Ok(())
}

pub(super) async fn the_same_line_again_is_nothing_new(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let line = Line::new("a", "{}");
    commit(&store, &job(1), [line.clone(), line.clone()]).await?;
    commit(&store, &job(1), [line.clone()]).await?;
    same("lines", &store.lines(&job(1)).await?, &vec![line])
}

pub(super) async fn one_id_with_other_json_is_kept_beside_the_first(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let [first, second, third] = ["{}", "{} ", "[]"].map(|json| Line::new("a", json));
    commit(&store, &job(1), [second.clone(), third.clone()]).await?;
    commit(&store, &job(1), [first.clone()]).await?;
    let all = vec![third, first, second];
    let mut sorted = all.clone();
    sorted.sort();
    same("lines", &store.lines(&job(1)).await?, &sorted)?;
    same("how many", &sorted.len(), &all.len())
}

/// The last two ids stand the other way round in UTF-16, by which a browser sorts.
pub(super) async fn lines_come_in_their_own_order(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let sorted = ["", "a", "a\0", "aa", "b", "\u{ff5e}", "\u{10000}"].map(|id| Line::new(id, "{}"));
    for line in sorted.iter().rev() {
        commit(&store, &job(1), [line.clone()]).await?;
    }
    commit(&store, &job(2), sorted.iter().rev().cloned()).await?;
    for number in [1, 2] {
        same("lines", &store.lines(&job(number)).await?, &sorted.to_vec())?;
    }
    Ok(())
}

pub(super) async fn jobs_are_kept_apart(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let numbers = [u128::MAX, 7, 1 << 127, 0];
    let lines = numbers.map(|number| (job(number), Line::new("a", number.to_string())));
    let batch = Batch { lines: lines.to_vec(), notes: Vec::new() };
    store.commit(&batch).await?;
    for (job, line) in lines {
        same("lines", &store.lines(&job).await?, &vec![line])?;
    }
    let sorted = [0, 7, 1 << 127, u128::MAX].map(job).to_vec();
    same("jobs", &store.jobs().await?, &sorted)
}

pub(super) async fn an_empty_batch_saves_nothing(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    store.commit(&Batch::default()).await?;
    same("jobs", &store.jobs().await?, &vec![])
}

pub(super) async fn a_large_batch_is_kept_whole(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let long = "x".repeat(400);
    let lines = (0..2_000).map(|number| Line::new(format!("{number:05}"), long.as_str()));
    commit(&store, &job(1), lines.clone()).await?;
    let kept = store.lines(&job(1)).await?;
    same("how many", &kept.len(), &2_000)?;
    same("is it the same", &kept.into_iter().eq(lines), &true)
}

pub(super) async fn lines_are_there_after_reopening(storage: &impl Storage) -> Outcome {
    let line = Line::new("a", "{}");
    commit(&storage.open(), &job(1), [line.clone()]).await?;
    let store = storage.open();
    same("jobs", &store.jobs().await?, &vec![job(1)])?;
    same("lines", &store.lines(&job(1)).await?, &vec![line])
}

pub(super) async fn two_openings_see_each_other(storage: &impl Storage) -> Outcome {
    let (one, other) = (storage.open(), storage.open());
    let [first, second] = ["a", "b"].map(|id| Line::new(id, "{}"));
    commit(&one, &job(1), [first.clone()]).await?;
    commit(&other, &job(1), [second.clone()]).await?;
    for store in [one, other] {
        let both = vec![first.clone(), second.clone()];
        same("lines", &store.lines(&job(1)).await?, &both)?;
    }
    Ok(())
}

async fn commit(store: &impl Store, job: &JobKey, lines: impl IntoIterator<Item = Line>) -> Result<(), StoreError> {
    store.commit(&Batch::entries(job, lines)).await
}
