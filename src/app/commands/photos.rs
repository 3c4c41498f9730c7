//! Taking a photo: bytes first, then the entry that names them.

use crate::app::platform::photo::{LONGEST_SIDE, Picture, THUMBNAIL_SIDE};
use crate::app::session::Session;
use crate::engine::entry::{JobId, Note};
use crate::engine::job::Observation;
use crate::engine::photo::{Digest, MediaType, Photo};
use crate::engine::take::{self, Draft, ReadBack, place_at};
use crate::store::{Blob, BlobKey, BlobKind, Store};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use web_sys::File;

impl Session {
    /// Keeps a photo at the draft's place; `done` is called when it is safe or refused.
    /// A refusal loses nothing: the photo stays wanted.
    pub fn take_photo(self, file: File, done: Callback<()>) {
        let Some(id) = self.job_id_untracked() else { return };
        spawn_local(async move {
            match self.kept(&file).await {
                Ok(photo) => {
                    self.refused.set(None);
                    self.log_photo(id, photo);
                }
                Err(message) => self.refused.set(Some(format!("Photo: {message}"))),
            }
            done.run(());
        });
    }

    /// Scales the photo and commits its bytes, and the thumbnail's, before anything
    /// names them.
    async fn kept(self, file: &File) -> Result<Photo, String> {
        let picture = Picture::decode(file).await?;
        let (full, thumbnail) = (picture.at_most(LONGEST_SIDE).await?, picture.at_most(THUMBNAIL_SIDE).await?);
        drop(picture);
        let sha256 = Digest::of(&full.jpeg);
        let size = u32::try_from(full.jpeg.len()).map_err(|_| "the picture is too large to keep".to_owned())?;
        let key = BlobKey::of(&full.jpeg);
        let store = self.store.get_value();
        let media_type = MediaType::Jpeg;
        let blob = |bytes| Blob { media_type: media_type.name().to_owned(), bytes };
        let kept = |error: crate::store::StoreError| format!("not saved: {error}");
        store.put_blob(BlobKind::Thumbnail, &key, &blob(thumbnail.jpeg)).await.map_err(kept)?;
        store.put_blob(BlobKind::Photo, &key, &blob(full.jpeg)).await.map_err(kept)?;
        let (width, height) = (full.width, full.height);
        Ok(Photo { place: None, sha256, media_type, size, width, height, caption: Note::default() })
    }

    fn log_photo(self, id: JobId, photo: Photo) {
        let draft = self.draft_untracked(id);
        let Some(mut pen) = self.pen(id) else { return };
        let units = self.prefs.get_untracked().units;
        let stands = self.books.with_untracked(|books| {
            books.get(&id).map_or(Ok(()), |book| take::standing(book.job(), &draft.spot, units))
        });
        // The photo itself is kept, at no place.
        if let Err(message) = stands {
            let entry = pen.record(Observation::Photo(photo));
            if self.keep(id, vec![entry], Some(Draft { photo_wanted: false, ..draft })) {
                self.refused.set(Some(format!("The photo is kept without a place. {message}")));
            }
            return;
        }
        let Some((place, new_place)) =
            self.books.with_untracked(|books| books.get(&id).map(|book| place_at(book.job(), &mut pen, &draft.spot)))
        else {
            return;
        };
        let entry = pen.record(Observation::Photo(Photo { place: Some(place), ..photo }));
        let of = draft.spot.name();
        let next = Draft { photo_wanted: false, ..draft };
        if self.keep(id, new_place.into_iter().chain([entry]).collect(), Some(next)) {
            self.confirm(ReadBack { of, value: "photo".to_owned(), spoken: "photo saved".to_owned() });
        }
    }
}
