//! The list of jobs, and the empty first screen.

use crate::app::platform::{files, storage, updates};
use crate::app::route::{Route, Tab};
use crate::app::session::session;
use crate::app::widgets::{live, memo, says};
use crate::engine::entry::{JobId, Label};
use leptos::prelude::*;

/// Every job on this phone.
#[component]
pub fn Jobs() -> impl IntoView {
    let session = session();
    let (archived_too, set_archived_too) = signal(false);
    let jobs = memo(move || {
        session.books.with(|books| {
            let shown = books.iter().filter(|(_, book)| archived_too.get() || !book.job().is_archived());
            shown
                .map(|(id, book)| (*id, book.job().heading(), book.job().is_invented(), book.log().len()))
                .collect::<Vec<_>>()
        })
    });
    let any_archived = memo(move || session.books.with(|books| books.values().any(|book| book.job().is_archived())));
    view! {
        <main class="page jobs">
            <header class="page-head"><h1>"Duckboard"</h1><a class="chip" href=Route::Settings.href()>"Settings"</a></header>
            <IosTab/>
            <NewBuild/>
            {live(move || jobs.with(Vec::is_empty).then(|| view! { <p class="lead">"Log lengths, moisture and photos under the house. No signal needed."</p> }))}
            <ul class="job-list">
                {live(move || jobs.get().into_iter().map(job_line).collect_view())}
            </ul>
            <NewJob/>
            <button type="button" class="key wide" on:click=move |_| session.open_sample()>"Open the invented sample job"</button>
            <crate::app::widgets::Told/>
            <OpenFile/>
            {live(move || any_archived.get().then(|| view! {
                <button type="button" class="chip" aria-pressed=says(move || archived_too.get().to_string())
                    on:click=move |_| set_archived_too.update(|shown| *shown = !*shown)>"show archived"</button>
            }))}
            <p class="refused" role="alert">{says(move || session.refused.get().unwrap_or_default())}</p>
            <Standing/>
        </main>
    }
}

fn job_line((id, heading, invented, entries): (JobId, String, bool, usize)) -> impl IntoView {
    view! {
        <li><a class="card job-line" href=Route::Job(id, Tab::Take).href()>
            <b>{heading}</b>
            <span>{format!("{entries} entries")}{invented.then_some(" · invented sample")}</span>
        </a></li>
    }
}

#[component]
fn NewJob() -> impl IntoView {
    let session = session();
    let (title, set_title) = signal(String::new());
    let begin = move || match Label::new(&title.get_untracked()) {
        Ok(title) => {
            session.forget_refusal();
            session.begin_job(title);
        }
        Err(problem) => session.refused.set(Some(format!("Job title: {problem}"))),
    };
    view! {
        <form class="new-job" on:submit=move |event| { event.prevent_default(); begin(); }>
            <label class="field">
                <span>"New job"</span>
                <input type="text" autocomplete="off" placeholder="Title" prop:value=title
                    on:input=move |event| set_title.set(event_target_value(&event))/>
            </label>
            <button type="submit" class="key save">"Begin"</button>
        </form>
    }
}

/// Opening a job file, judged by its content.
#[component]
pub fn OpenFile() -> impl IntoView {
    let session = session();
    let (refused, set_refused) = signal(None::<String>);
    let on_picked = move |event| {
        if let Some(file) = files::picked(&event) {
            set_refused.set(None);
            session.told.set(None);
            session.open_file(file, Callback::new(move |message| set_refused.set(Some(message))));
        }
    };
    view! {
        <label class="key wide file-key">
            <span>"Open a job file"</span>
            <input type="file" accept=".json,.txt,application/json,text/plain" aria-label="Open a job file" on:change=on_picked/>
        </label>
        <p class="refused faults" role="alert">{says(move || refused.get().unwrap_or_default())}</p>
    }
}

/// Where the tab and the home-screen app do not share data, the home screen comes first.
#[component]
fn IosTab() -> impl IntoView {
    storage::ios_tab().then(|| {
        view! {
            <p class="assumed card">"Before the first job: tap Share, then Add to Home Screen, and log there. What is logged in this tab is not in the home-screen app, and the phone may delete it."</p>
        }
    })
}

/// A newer build waits until nothing is open.
#[component]
fn NewBuild() -> impl IntoView {
    let waiting = updates::waiting();
    live(move || {
        waiting.get().then(|| {
            view! {
                <button type="button" class="key wide" on:click=|_| updates::use_it()>"A newer Duckboard is here: use it"</button>
            }
        })
    })
}

/// How safely things are kept, in plain words.
#[component]
pub fn Standing() -> impl IntoView {
    let session = session();
    live(move || {
        let standing = session.standing.get();
        let safe = match standing.persisted {
            Some(true) => "The browser has promised to keep what is logged here.",
            Some(false) => "The browser may delete what is logged here when the phone runs short: hand jobs over soon.",
            None => "The browser does not say how safely it keeps what is logged here.",
        };
        let size =
            |bytes: f64| if bytes < 1e9 { format!("{:.1} MB", bytes / 1e6) } else { format!("{:.1} GB", bytes / 1e9) };
        let room = standing
            .used
            .zip(standing.quota)
            .map(|(used, quota)| format!(" {} used, {} left.", size(used), size((quota - used).max(0.0))));
        view! { <p class="standing">{safe}{room}</p> }
    })
}
