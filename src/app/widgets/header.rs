//! What stands above and below every screen of a job.

use super::live::{live, memo, perhaps, says};
use crate::app::route::{Route, Tab};
use crate::app::session::session;
use crate::store::SaveState;
use leptos::prelude::*;

/// The job's title, its visit, and what is saved.
#[component]
pub fn JobHeader() -> impl IntoView {
    let session = session();
    let title = memo(move || {
        let heading = session.job(crate::engine::job::Job::heading).unwrap_or_default();
        let visit = session.job(|job| job.current_visit().map(|(_, number)| number)).flatten();
        visit.map_or_else(|| heading.clone(), |number| format!("Visit {number} · {heading}"))
    });
    let facts = perhaps(move || session.job_id().map(|id| Route::Job(id, Tab::Facts).href()));
    let saved = memo(move || {
        let entries = session.book(|book| book.log().len()).unwrap_or(0);
        match session.saves.get() {
            SaveState::Saved => format!("✓ {entries} saved"),
            SaveState::Saving(_) => "saving…".to_owned(),
            SaveState::Failed { .. } => format!("{} not saved", session.unsaved()),
        }
    });
    let state = says(move || {
        let failed = matches!(session.saves.get(), SaveState::Failed { .. });
        if failed { "saved failed" } else { "saved" }.to_owned()
    });
    view! {
        <header>
            <div class="job-header">
                <a class="title" href=facts><h1>{title}</h1></a>
                <span class=state role="status" data-testid="saved">{saved}</span>
            </div>
            <Invented/>
        </header>
    }
}

/// What somebody must have read before it goes away.
#[component]
pub fn Alarm() -> impl IntoView {
    let session = session();
    live(move || {
        session.alarm.get().map(|alarm| {
            view! {
                <div class="not-saved" role="alert">
                    <p>{alarm}</p>
                    <button type="button" class="key" on:click=move |_| session.alarm.set(None)>"understood"</button>
                </div>
            }
        })
    })
}

/// What came of the last command, until the next one.
#[component]
pub fn Told() -> impl IntoView {
    let session = session();
    live(move || session.told.get().map(|told| view! { <p class="told" role="status">{told}</p> }))
}

/// Says of an invented job that it is one.
#[component]
pub fn Invented() -> impl IntoView {
    let session = session();
    let invented = memo(move || session.job(crate::engine::job::Job::is_invented).unwrap_or(false));
    live(move || invented.get().then(|| view! { <p class="invented">"Invented sample: nothing here was measured"</p> }))
}

/// Loud, and it never scrolls away.
#[component]
pub fn NotSaved() -> impl IntoView {
    let session = session();
    live(move || match session.saves.get() {
        SaveState::Failed { why, .. } => Some(view! {
            <div class="not-saved" role="alert">
                <p><strong>{format!("NOT SAVED: {}", session.unsaved())}</strong>" "{format!("{why}.")}</p>
                <button type="button" class="key" on:click=move |_| session.retry()>"Try again"</button>
            </div>
        }),
        SaveState::Saved | SaveState::Saving(_) => None,
    })
}

/// The four places.
#[component]
pub fn TabBar() -> impl IntoView {
    let session = session();
    let current = memo(move || session.tab());
    let tabs = Tab::BAR
        .into_iter()
        .map(|tab| {
            let href = perhaps(move || session.job_id().map(|id| Route::Job(id, tab).href()));
            let here = perhaps(move || (current.get() == Some(tab)).then(|| "page".to_owned()));
            view! { <a class="tab" href=href aria-current=here>{tab.label()}</a> }
        })
        .collect_view();
    view! { <nav class="tabs" aria-label="Places">{tabs}</nav> }
}
