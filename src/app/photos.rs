//! A photo from the store, on the screen.

use crate::app::platform::download;
use crate::app::session::session;
use crate::engine::photo::Digest;
use crate::store::{BlobKey, BlobKind, Store};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// The kept photo, or a word when its bytes are on another phone.
#[component]
pub fn PhotoImage(sha256: Digest, alt: String) -> impl IntoView {
    let session = session();
    let (url, set_url) = signal(None::<Result<String, &'static str>>);
    spawn_local(async move {
        let store = session.store.get_value();
        let Ok(key) = BlobKey::parse(&sha256.to_string()) else { return };
        let blob = store.blob(BlobKind::Photo, &key).await.ok().flatten();
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
    move || match url.get() {
        Some(Ok(url)) => view! { <img src=url alt=alt.clone()/> }.into_any(),
        Some(Err(why)) => view! { <p class="assumed">{why}</p> }.into_any(),
        None => ().into_any(),
    }
}
