//! The camera. Opening it can kill the page, so that a photo is wanted here is kept
//! before it opens.

use crate::app::platform::files;
use crate::app::session::session;
use crate::app::widgets::{live, memo, says};
use crate::engine::take::Draft;
use leptos::prelude::*;

/// The camera key, and what became of the last photo.
#[component]
pub fn Camera() -> impl IntoView {
    let session = session();
    let wanted = memo(move || session.draft().photo_wanted);
    let (busy, set_busy) = signal(false);
    let on_picked = move |event| {
        let Some(file) = files::picked(&event) else { return };
        set_busy.set(true);
        session.take_photo(file, Callback::new(move |()| set_busy.set(false)));
    };
    let put_off = move |_| session.draft_to(|draft| Draft { photo_wanted: false, ..draft });
    view! {
        <div class="camera">
            {live(move || wanted.get().then(|| view! {
                <p class="assumed">"A photo is wanted here. "
                    <button type="button" class="chip" on:click=put_off>"not now"</button>
                </p>
            }))}
            <label class="key save camera-key">
                <span>{says(move || if busy.get() { "saving the photo…" } else { "Take photo" }.to_owned())}</span>
                <input
                    type="file"
                    accept="image/*"
                    capture="environment"
                    aria-label="Take photo"
                    on:click=move |_| session.draft_to(|draft| Draft { photo_wanted: true, ..draft })
                    on:change=on_picked
                />
            </label>
            <p>{live(move || session.job(|job| match job.now.photos().len() {
                1 => "1 photo in this job".to_owned(),
                photos => format!("{photos} photos in this job"),
            }))}</p>
        </div>
    }
}
