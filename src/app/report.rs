//! The report as it is read at a desk and printed: what is missing and assumed first.

use crate::app::later::LaterPart;
use crate::app::photos::PhotoImage;
use crate::app::plan::Plan;
use crate::app::route::Tab;
use crate::app::session::session;
use crate::app::widgets::{Invented, WhyDetails, live, memo, says};
use crate::engine::figure::{Figure, Need};
use crate::engine::job::Job;
use crate::engine::results::{self, Answer};
use crate::file::tables;
use leptos::prelude::*;

/// The Report screen.
#[component]
pub fn Report() -> impl IntoView {
    let session = session();
    let answers = memo(move || {
        let units = session.prefs.get().units;
        session.job(|job| results::answers(job, units)).unwrap_or_default()
    });
    view! {
        <main class="page report">
            <button type="button" class="key no-print" on:click=|_| print()>"Print"</button>
            <TitleBlock/>
            <Missing answers/>
            <section><h2>"Plan"</h2><Plan width=640 height=460 cursor=false from_below=false/></section>
            <section><h2>"What it adds up to"</h2>{live(move || answers.get().into_iter().map(answer_row).collect_view())}</section>
            {[Tab::Water, Tab::Under, Tab::Orders].map(|tab| view! {
                <section class="later"><h2>{tab.label()}</h2><LaterPart name=tab.slug()/></section>
            }).collect_view()}
            <section class="later"><LaterPart name="logged"/></section>
            <section class="later"><h2>"Cautions"</h2><LaterPart name="cautions"/></section>
            <Photos/>
            <section class="sign"><p>"Signed"</p><p>"Date"</p></section>
        </main>
    }
}

/// A question as the subject of a sentence.
fn plain(title: &'static str) -> &'static str {
    title.trim_end_matches('?')
}

pub fn print() {
    if let Some(window) = web_sys::window() {
        let _ = window.print();
    }
}

#[component]
fn TitleBlock() -> impl IntoView {
    let session = session();
    let line = move |name: &'static str, read: fn(&Job) -> Option<String>| {
        move || session.job(read).flatten().map(|value| view! { <dt>{name}</dt><dd>{value}</dd> })
    };
    view! {
        <section class="title-block">
            <p class="report-title">{says(move || session.job(Job::heading).unwrap_or_default())}</p>
            <Invented/>
            <dl>
                {line("Office job number", |job| job.office_number().map(ToString::to_string))}
                {line("Place", |job| job.site().map(ToString::to_string))}
                {line("Year built", |job| job.year_built().map(|year| year.get().to_string()))}
                {line("Crawl height", |job| job.crawl_height().map(|height| height.typed.clone()))}
                {line("Crawl space", |job| job.venting().map(|venting| venting.label().to_owned()))}
                {line("Revision", |job| job.now.hand_overs().values().map(|sent| sent.value.revision).max().map(|revision| revision.to_string()))}
                {line("Visits", |job| Some(job.now.visits().len().to_string()))}
            </dl>
        </section>
    }
}

/// What is missing and what was assumed, before anything else.
#[component]
fn Missing(answers: Memo<Vec<Answer>>) -> impl IntoView {
    let lines = move || {
        answers.get().into_iter().flat_map(|answer| match answer.said {
            Figure::Known(known) => known
                .assumed
                .into_iter()
                .map(|what| format!("{}: assumed {what}", plain(answer.title)))
                .collect::<Vec<_>>(),
            Figure::Missing(needs) => vec![format!(
                "{}: not enough to say; {}",
                plain(answer.title),
                needs.into_iter().map(Need::words).collect::<Vec<_>>().join("; ")
            )],
        })
    };
    view! {
        <section>
            <h2>"Missing and assumed"</h2>
            <ul class="assumed">{live(move || lines().map(|line| view! { <li>{line}</li> }).collect_view())}</ul>
        </section>
    }
}

fn answer_row(answer: Answer) -> impl IntoView {
    let Figure::Known(known) = answer.said else { return ().into_any() };
    // Of the rule, and not of what was measured.
    let mark = known.why.mark().map(|mark| format!(" (rule: {})", mark.label()));
    view! {
        <div class="report-answer">
            <p>{answer.title}": "<b>{known.value.headline}</b>{mark}" "{known.value.line}</p>
            <WhyDetails of=answer.title why=known.why>{known.doubts.into_iter().map(|doubt| view! { <p class="doubt">{doubt}</p> }).collect_view()}</WhyDetails>
        </div>
    }
    .into_any()
}

#[component]
fn Photos() -> impl IntoView {
    let session = session();
    let photos = memo(move || {
        session
            .job(|job| {
                tables::photos(job)
                    .into_iter()
                    .map(|row| (row.sha256, row.place, row.caption, row.logged.by))
                    .collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    view! {
        <section>
            <h2>"Photos"</h2>
            <div class="photos">
                <For each=move || photos.get() key=|photo| photo.0 children=|(sha256, place, caption, by)| {
                    let words = format!("{place}. {caption} {by}");
                    view! { <figure><PhotoImage sha256 alt=words.clone()/><figcaption>{words}</figcaption></figure> }
                }/>
            </div>
        </section>
    }
}
