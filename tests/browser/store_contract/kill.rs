//! Is what was called safe still there after the browser was killed?

use duckboard::store::{Batch, Blob, BlobKey, BlobKind, IndexedDb, JobKey, Line, NoteKey, Store, StoreError};

const DATABASE: &str = "kill";
const COUNT: usize = 20;

/// Saves, and ends as soon as the store says that all of it is safe.
pub async fn write() -> String {
    match save(&IndexedDb::named(DATABASE)).await {
        Ok(()) => "written".to_owned(),
        Err(error) => format!("not written: {error}"),
    }
}

/// Compares what is there with what was saved.
pub async fn read() -> String {
    match find(&IndexedDb::named(DATABASE)).await {
        Ok(None) => "kept".to_owned(),
        Ok(Some(lost)) => format!("lost: {lost}"),
        Err(error) => format!("lost: {error}"),
    }
}

async fn save(store: &IndexedDb) -> Result<(), StoreError> {
    let photo = photo();
    let key = BlobKey::of(&photo.bytes);
    store.put_blob(BlobKind::Photo, &key, &photo).await?;
    for (number, line) in lines().into_iter().enumerate() {
        let batch = Batch::entries(&job(), [line]).with_note(note(), Some(number.to_string()));
        store.commit(&batch).await?;
    }
    Ok(())
}

async fn find(store: &IndexedDb) -> Result<Option<&'static str>, StoreError> {
    let photo = photo();
    let key = BlobKey::of(&photo.bytes);
    let last = (COUNT - 1).to_string();
    Ok(if store.lines(&job()).await? != lines() {
        Some("a line")
    } else if store.note(&note()).await? != Some(last) {
        Some("the note")
    } else if store.blob(BlobKind::Photo, &key).await? != Some(photo) {
        Some("the photo")
    } else {
        None
    })
}

fn job() -> JobKey {
    JobKey::from_bits(1)
}

fn lines() -> Vec<Line> {
    let line = |number| Line::new(format!("{number:02}"), format!("{{\"number\": {number}}}"));
    (0..COUNT).map(line).collect()
}

fn note() -> NoteKey {
    NoteKey::phone("last")
}

fn photo() -> Blob {
    Blob { media_type: "image/jpeg".to_owned(), bytes: (0..=u8::MAX).cycle().take(400_000).collect() }
}
