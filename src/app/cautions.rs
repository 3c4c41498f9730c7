//! Cautions: where and when they matter, until somebody has read them.

use crate::app::session::session;
use crate::app::widgets::{live, memo};
use crate::engine::cautions::{self, LAST_WORD};
use crate::engine::entry::{Logger, time};
use crate::engine::job::Observation;
use leptos::prelude::*;

/// What a card shows of a caution.
#[derive(Debug, Clone, PartialEq)]
struct Shown {
    name: &'static str,
    title: &'static str,
    words: &'static str,
    because: String,
    sources: Vec<String>,
    read_by: Option<String>,
    is_due: bool,
}

fn shown(raised: cautions::Raised<'_>, by: Option<&Logger>) -> Shown {
    let is_due = raised.is_due(by);
    let caution = raised.caution;
    let cited = caution.sources.iter().map(|source| source.citation().to_string());
    Shown {
        name: caution.name,
        title: caution.title,
        words: caution.words,
        because: raised.because,
        sources: cited.collect(),
        read_by: raised.read.first().map(|stamp| format!("{} on {}", stamp.by.initials, time::day(stamp.at))),
        is_due,
    }
}

fn raised() -> Memo<Vec<Shown>> {
    let session = session();
    memo(move || {
        let by = session.phone.with(|phone| phone.logger.clone());
        let shown = |raised| shown(raised, by.as_ref());
        session.job(|job| cautions::all_triggered(job).into_iter().map(shown).collect()).unwrap_or_default()
    })
}

/// The cautions that are still to be read here, with the key that says so.
#[component]
pub fn Cautions() -> impl IntoView {
    let session = session();
    let raised = raised();
    let due = memo(move || raised.get().into_iter().filter(|shown| shown.is_due).collect::<Vec<_>>());
    let read = move |name: &'static str| {
        if let Some(caution) = cautions::named(name) {
            session.record(Observation::Acknowledgement(caution.acknowledgement()));
        }
    };
    view! {
        <For each=move || due.get() key=|shown| shown.name children=move |shown| view! {
            <section class="card due">
                <h2>{shown.title}</h2>
                <p>{shown.words}</p>
                <p class="detail">{shown.because}</p>
                <button type="button" class="key wide" on:click=move |_| read(shown.name)>"read"</button>
            </section>
        }/>
        {live(move || due.with(|due| !due.is_empty()).then(|| view! { <p class="detail">{LAST_WORD}</p> }))}
    }
}

/// Every caution that the job calls for, read or not.
#[component]
pub fn CautionList() -> impl IntoView {
    let raised = raised();
    view! {
        <ul>
            <For each=move || raised.get() key=|shown| (shown.name, shown.read_by.clone()) children=|shown| view! {
                <li>
                    <b>{shown.title}</b>" "{shown.words}" "{shown.because}" "
                    <em>{shown.sources.join("; ")}"."</em>
                    {shown.read_by.map(|by| format!(" Read by {by}."))}
                </li>
            }/>
        </ul>
        <p>{LAST_WORD}</p>
    }
}
