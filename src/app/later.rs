//! Pages that are not part of the first load: sheets laid on the joists, water, what is
//! under the house, the order list.
//! `public/later` holds them, and this screen asks for them. What is tapped there comes
//! back as an observation and is logged like any other.

use crate::app::platform::later;
use crate::app::route::Tab;
use crate::app::session::session;
use crate::app::widgets::{Invented, says};
use crate::engine::job::Job;
use leptos::prelude::*;

/// A page that is loaded when it is asked for.
#[component]
pub fn Later(tab: Tab) -> impl IntoView {
    view! {
        <main class="page later">
            <button type="button" class="key no-print" on:click=|_| crate::app::report::print()>"Print"</button>
            <p class="on-paper report-title">{says(move || session().job(Job::heading).unwrap_or_default())}</p>
            <Invented/>
            <LaterPart name=tab.slug()/>
        </main>
    }
}

/// What such a page shows, wherever it is shown; its name is known to the later module.
#[component]
pub fn LaterPart(name: &'static str) -> impl IntoView {
    let session = session();
    // Whatever changes the job makes it anew.
    Effect::new(move |_| {
        let by = session.phone.with(|phone| serde_json::to_string(&phone.logger)).unwrap_or_default();
        let units = session.prefs.with(|prefs| serde_json::to_string(&prefs.units)).unwrap_or_default();
        if let Some(job) = session.book(|book| session.plain_file(book)).flatten() {
            later::show(name, &job, &units, &by);
        }
    });
    view! { <div id=name aria-live="polite"><p class="assumed">"Working it out…"</p></div> }
}

/// Logs what is tapped and typed on such pages, however many of them are on the screen.
pub fn log_what_they_hand_back() {
    let session = session();
    let listening = window_event_listener_untyped(later::RECORD, move |event| {
        if let Some(observation) = later::recorded(&event) {
            session.record(observation);
        }
    });
    on_cleanup(move || listening.remove());
}
