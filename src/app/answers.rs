//! What it all means: answers first, then the sum behind each.

use crate::app::later::LaterPart;
use crate::app::plan::PlanView;
use crate::app::route::{Route, Tab};
use crate::app::session::session;
use crate::app::widgets::{AnswerCard, live, memo};
use crate::engine::results;
use leptos::prelude::*;

/// The pages behind this one, and what they answer.
const LATER: [(Tab, &str); 4] = [
    (Tab::Water, "Where water comes from, and when to close"),
    (Tab::Under, "Joists, levels, ground and roof water"),
    (Tab::Sheets, "Lay sheets on the joists"),
    (Tab::Orders, "Order list"),
];

/// The Answers screen.
#[component]
pub fn Answers() -> impl IntoView {
    let session = session();
    let answers = memo(move || {
        let units = session.prefs.get().units;
        session.job(|job| results::answers(job, units)).unwrap_or_default()
    });
    view! {
        <main class="page answers">
            <crate::app::widgets::Told/>
            <crate::app::widgets::Stop/>
            <section class="card plan-card"><PlanView width=318 height=280 cursor=false/></section>
            <section class="later"><LaterPart name="due"/></section>
            {live(move || {
                let href = |tab| session.job_id().map(|id| Route::Job(id, tab).href());
                LATER.map(|(tab, says)| view! { <a class="key wide" href=href(tab)>{says}</a> }).collect_view()
            })}
            {live(move || answers.get().into_iter().map(|answer| view! { <AnswerCard answer/> }).collect_view())}
            <section class="later"><LaterPart name="ventilating"/></section>
        </main>
    }
}
