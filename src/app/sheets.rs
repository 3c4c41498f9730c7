//! Sheets laid on the joists. The search and its page are not part of the first load:
//! `public/later` holds them, and this screen asks for them.

use crate::app::platform::later;
use crate::app::session::session;
use crate::app::widgets::Invented;
use leptos::prelude::*;

/// The Sheets screen.
#[component]
pub fn Sheets() -> impl IntoView {
    let session = session();
    // Whatever changes the job lays it out anew.
    Effect::new(move |_| {
        let units = session.prefs.with(|prefs| serde_json::to_string(&prefs.units)).unwrap_or_default();
        if let Some(job) = session.book(|book| session.plain_file(book)).flatten() {
            later::lay_sheets(&job, &units);
        }
    });
    view! {
        <main class="page sheets">
            <button type="button" class="key no-print" on:click=|_| crate::app::report::print()>"Print"</button>
            <Invented/>
            <div id="sheets" aria-live="polite"><p class="assumed">"Laying out…"</p></div>
        </main>
    }
}
