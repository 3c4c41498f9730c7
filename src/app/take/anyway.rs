//! A number that is not believed is asked about once: three keys in place of the keypad, and
//! the one under the thumb does no harm.

use super::value;
use crate::app::session::session;
use crate::app::widgets::says;
use crate::engine::moisture::Outside;
use crate::engine::take::Anyway;
use leptos::prelude::*;

/// The three answers: off the scale, right in doubt, or typed again.
#[component]
pub fn Anyways() -> impl IntoView {
    let session = session();
    let off_scale = says(move || {
        let words = match session.asked.get() {
            Some(Outside::Under) => "under the meter's minimum",
            _ => "over the meter's maximum",
        };
        words.to_owned()
    });
    let kept = says(move || format!("keep {}, doubted", session.draft().text.trim()));
    let answer = move |anyway| move |_| session.press_anyway(anyway);
    view! {
        <div class="anyway" role="group" aria-label="Is it right?">
            <button type="button" class="key wide" on:click=answer(Anyway::OffScale)>{off_scale}</button>
            <button type="button" class="key wide" on:click=answer(Anyway::Kept)>{kept}</button>
            <button type="button" class="key save wide" on:click=move |_| value::type_text(session, |_| String::new())>
                "type it again"
            </button>
        </div>
    }
}
