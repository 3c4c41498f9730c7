//! What is promised of photos and thumbnails.

use super::super::{Blob, BlobKey, BlobKind, Store};
use super::{Outcome, Storage, same};

pub(super) async fn a_photo_comes_back_byte_for_byte(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let every_byte = (0..=u8::MAX).cycle();
    let sizes = [0, 1, 256, 1 << 20];
    for kind in BlobKind::ALL {
        for size in sizes {
            let blob = blob("image/png", every_byte.clone().take(size).collect());
            let key = BlobKey::of(&blob.bytes);
            store.put_blob(kind, &key, &blob).await?;
            let came_back = store.blob(kind, &key).await? == Some(blob);
            same(&format!("{kind:?} of {size} bytes"), &came_back, &true)?;
        }
        let keys = store.blob_keys(kind).await?;
        same("how many", &keys.len(), &sizes.len())?;
    }
    Ok(())
}

pub(super) async fn a_photo_and_its_thumbnail_are_kept_apart(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let key = BlobKey::of(b"photo");
    let (photo, thumbnail) = (jpeg(b"photo"), blob("image/webp", b"small".to_vec()));
    store.put_blob(BlobKind::Thumbnail, &key, &thumbnail).await?;
    let none = store.blob(BlobKind::Photo, &key).await?;
    same("photo before", &none, &None)?;
    store.put_blob(BlobKind::Photo, &key, &photo).await?;
    let kept = store.blob(BlobKind::Photo, &key).await?;
    same("photo", &kept, &Some(photo))?;
    let kept = store.blob(BlobKind::Thumbnail, &key).await?;
    same("thumbnail", &kept, &Some(thumbnail))
}

pub(super) async fn a_second_photo_takes_the_first_ones_place(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let key = BlobKey::of(b"whole");
    for bytes in [b"torn!", b"whole", b"whole"] {
        store.put_blob(BlobKind::Photo, &key, &jpeg(bytes)).await?;
        let kept = store.blob(BlobKind::Photo, &key).await?;
        same("photo", &kept, &Some(jpeg(bytes)))?;
    }
    let keys = store.blob_keys(BlobKind::Photo).await?;
    same("keys", &keys, &vec![key])
}

pub(super) async fn removing_takes_photo_and_thumbnail(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let (key, other) = (BlobKey::of(b"one"), BlobKey::of(b"other"));
    for kind in BlobKind::ALL {
        store.put_blob(kind, &key, &jpeg(b"one")).await?;
        store.put_blob(kind, &other, &jpeg(b"other")).await?;
    }
    for _ in 0..2 {
        store.remove_blob(&key).await?;
        for kind in BlobKind::ALL {
            same("removed", &store.blob(kind, &key).await?, &None)?;
            let left = store.blob_keys(kind).await?;
            same("left", &left, &vec![other.clone()])?;
        }
    }
    store.put_blob(BlobKind::Photo, &key, &jpeg(b"one")).await?;
    let again = store.blob(BlobKind::Photo, &key).await?;
    same("put again", &again, &Some(jpeg(b"one")))
}

pub(super) async fn blob_keys_are_sorted(storage: &impl Storage) -> Outcome {
    let store = storage.open();
    let mut sorted = [b"a", b"b", b"c", b"d"].map(|bytes| BlobKey::of(bytes)).to_vec();
    sorted.sort();
    for key in sorted.iter().rev() {
        store.put_blob(BlobKind::Photo, key, &jpeg(b"x")).await?;
    }
    same("photos", &store.blob_keys(BlobKind::Photo).await?, &sorted)?;
    let thumbnails = store.blob_keys(BlobKind::Thumbnail).await?;
    same("thumbnails", &thumbnails, &vec![])
}

pub(super) async fn photos_are_there_after_reopening(storage: &impl Storage) -> Outcome {
    let (key, gone) = (BlobKey::of(b"one"), BlobKey::of(b"gone"));
    let first = storage.open();
    for kind in BlobKind::ALL {
        first.put_blob(kind, &key, &jpeg(b"one")).await?;
        first.put_blob(kind, &gone, &jpeg(b"gone")).await?;
    }
    first.remove_blob(&gone).await?;
    drop(first);
    let store = storage.open();
    for kind in BlobKind::ALL {
        let kept = store.blob(kind, &key).await?;
        same("kept", &kept, &Some(jpeg(b"one")))?;
        same("gone", &store.blob(kind, &gone).await?, &None)?;
    }
    Ok(())
}

fn blob(media_type: &str, bytes: Vec<u8>) -> Blob {
    Blob { media_type: media_type.to_owned(), bytes }
}

fn jpeg(bytes: &[u8]) -> Blob {
    blob("image/jpeg", bytes.to_vec())
}
