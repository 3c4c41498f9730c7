//! The phone app: draws the job and turns taps into entries. Thin, and wasm32 only.
//!
//! - [`session`] is the one reactive root; [`commands`] its only writer.
//! - `platform` holds the browser, one interface a file.
//! - `widgets` know props and no job; the other folders are screens.
//!
//! It computes no figure and rounds nothing: `engine` and `draw` do.

mod answers;
mod commands;
mod hand_over;
mod job;
mod jobs;
mod later;
mod log;
mod photos;
mod plan;
mod platform;
mod report;
mod route;
mod session;
mod settings;
mod take;
mod widgets;

use crate::app::widgets::{live, memo};
use leptos::prelude::*;
use route::{Route, Tab};
use session::{Session, session};
use wasm_bindgen_futures::spawn_local;

/// Reads what was kept and mounts the app on the page.
pub fn start() {
    console_error_panic_hook::set_once();
    platform::prefs::keep(platform::prefs::load());
    spawn_local(async {
        if !platform::lock::take().await {
            return mount_to_body(|| view! { <OtherTab/> });
        }
        match Session::open().await {
            Ok(session) => {
                ask_about_storage(session);
                mount_to_body(move || {
                    provide_context(session);
                    view! { <App/> }
                });
            }
            Err(error) => {
                let why = error.to_string();
                mount_to_body(move || view! { <NoStore why/> });
            }
        }
    });
}

/// Never waited for: some browsers ask the user first.
fn ask_about_storage(session: Session) {
    spawn_local(async move {
        session.standing.set(platform::storage::ask().await);
    });
}

#[component]
fn App() -> impl IntoView {
    let session = session();
    let introduced = memo(move || session.phone.with(|phone| phone.logger.is_some()));
    // Why something was refused belongs to the screen where it was tried.
    Effect::new(move |_| {
        session.route.track();
        session.forget_refusal();
    });
    live(move || {
        if !introduced.get() {
            return view! { <settings::Introduction/> }.into_any();
        }
        match session.route.get() {
            Route::Jobs => view! { <jobs::Jobs/> }.into_any(),
            Route::Settings => view! { <settings::Settings/> }.into_any(),
            Route::Job(..) => view! { <JobScreen/> }.into_any(),
        }
    })
}

/// A job: title on top, the tab between, the four places at the bottom.
#[component]
fn JobScreen() -> impl IntoView {
    let session = session();
    let known = memo(move || session.book(|_| ()).is_some());
    let tab = memo(move || session.tab());
    later::log_what_they_hand_back();
    live(move || {
        if !known.get() {
            return view! { <jobs::Jobs/> }.into_any();
        }
        let screen = match tab.get().unwrap_or(Tab::Take) {
            Tab::Take => view! { <take::Take/> }.into_any(),
            Tab::Answers => view! { <answers::Answers/> }.into_any(),
            Tab::Log => view! { <log::LogScreen/> }.into_any(),
            Tab::HandOver => view! { <hand_over::HandOverScreen/> }.into_any(),
            Tab::Facts => view! { <job::JobFacts/> }.into_any(),
            Tab::Report => view! { <report::Report/> }.into_any(),
            tab @ (Tab::Sheets | Tab::Water | Tab::Under | Tab::Orders) => view! { <later::Later tab/> }.into_any(),
        };
        view! {
            <div class="job-screen">
                <widgets::JobHeader/>
                <widgets::NotSaved/>
                <widgets::Alarm/>
                {screen}
                <widgets::TabBar/>
            </div>
        }
        .into_any()
    })
}

/// Two tabs would give two entries the same id.
#[component]
fn OtherTab() -> impl IntoView {
    let reload = |_| {
        if let Some(window) = web_sys::window() {
            let _ = window.location().reload();
        }
    };
    view! {
        <main class="page">
            <h1>"Duckboard is open in another tab"</h1>
            <p role="alert">"Log in one place at a time, so that no two entries mix. Close the other tab, then go on here."</p>
            <button type="button" class="key save wide" on:click=reload>"Go on here"</button>
        </main>
    }
}

/// Without a store nothing may be logged: it would be lost.
#[component]
fn NoStore(why: String) -> impl IntoView {
    view! {
        <main class="page">
            <h1>"Nothing can be kept here"</h1>
            <p role="alert">{format!("Duckboard could not open its storage: {why}.")}</p>
            <p>"Close the other windows of Duckboard and open it again. In a private window it may not work at all."</p>
        </main>
    }
}
