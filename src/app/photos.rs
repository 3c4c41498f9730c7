//! A photo from the store, on the screen.

use crate::app::platform::download;
use crate::app::platform::photo::{Picture, THUMBNAIL_SIDE};
use crate::app::session::session;
use crate::app::widgets::{live, says};
use crate::engine::photo::{Digest, MediaType};
use crate::store::{Blob, BlobKey, BlobKind, IndexedDb, Store};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// A small picture that a tap makes large, and small again.
#[component]
pub fn Thumbnail(sha256: Digest) -> impl IntoView {
    let (large, set_large) = signal(false);
    let words = says(move || if large.get() { "photo, make it small" } else { "photo, make it large" }.to_owned());
    view! {
        <button type="button" class="thumb" class:large=large aria-label=words on:click=move |_| set_large.update(|large| *large = !*large)>
            {live(move || view! { <PhotoImage sha256 alt=String::new() small=!large.get()/> })}
        </button>
    }
}

/// The kept photo, or a word when its bytes are on another phone.
#[component]
pub fn PhotoImage(sha256: Digest, alt: String, #[prop(optional)] small: bool) -> impl IntoView {
    let session = session();
    let (url, set_url) = signal(None::<Result<String, &'static str>>);
    spawn_local(async move {
        let store = session.store.get_value();
        let Ok(key) = BlobKey::parse(&sha256.to_string()) else { return };
        let blob = if small { thumbnail(&store, &key).await } else { photo(&store, &key).await };
        let shown = blob
            .ok_or("not on this phone")
            .and_then(|blob| download::picture_url(&blob.media_type, &blob.bytes).map_err(|_| "cannot be shown"));
        set_url.try_set(Some(shown));
    });
    on_cleanup(move || {
        if let Some(Some(Ok(url))) = url.try_get_untracked() {
            let _ = web_sys::Url::revoke_object_url(&url);
        }
    });
    live(move || match url.get() {
        Some(Ok(url)) => view! { <img src=url alt=alt.clone()/> }.into_any(),
        Some(Err(why)) => view! { <p class="assumed">{why}</p> }.into_any(),
        None => ().into_any(),
    })
}

async fn photo(store: &IndexedDb, key: &BlobKey) -> Option<Blob> {
    store.blob(BlobKind::Photo, key).await.ok().flatten()
}

/// The small picture, made now if the photo came with a file; the photo itself if it
/// cannot be made.
async fn thumbnail(store: &IndexedDb, key: &BlobKey) -> Option<Blob> {
    if let Ok(Some(kept)) = store.blob(BlobKind::Thumbnail, key).await {
        return Some(kept);
    }
    let photo = photo(store, key).await?;
    let Some(small) = made_small(&photo).await else { return Some(photo) };
    // Not kept is no loss: it is made again.
    let _ = store.put_blob(BlobKind::Thumbnail, key, &small).await;
    Some(small)
}

async fn made_small(photo: &Blob) -> Option<Blob> {
    let picture = download::picture(&photo.media_type, &photo.bytes).ok()?;
    let small = Picture::decode(&picture).await.ok()?.at_most(THUMBNAIL_SIDE).await.ok()?;
    Some(Blob { media_type: MediaType::Jpeg.name().to_owned(), bytes: small.jpeg })
}
