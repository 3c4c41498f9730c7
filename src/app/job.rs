//! The job's facts and visits, behind its title.

use crate::app::route::{Route, Tab};
use crate::app::session::{Session, session};
use crate::app::widgets::{TextField, choice, labelled, live, memo, perhaps, says};
use crate::engine::entry::{Label, time};
use crate::engine::geometry::Heading;
use crate::engine::job::{Fact, Job, SheetEdge, SheetSize, SpanRating, Venting, Year};
use crate::engine::units::decimal::parse_moisture_content;
use crate::engine::units::tape::{self, Sign};
use crate::engine::units::{Length, MoistureContent, Typed};
use leptos::prelude::*;
use std::mem::discriminant;

/// What is said about the job as a whole.
#[component]
pub fn JobFacts() -> impl IntoView {
    let session = session();
    let now = move |read| said(session, read);
    let surely = move |read: fn(&Fact) -> Option<String>| said_surely(session, &read);
    let venting = move || session.job(|job| job.venting().copied()).flatten();
    let ventings = labelled(Venting::ALL.map(Some), |venting| venting.map_or("", Venting::label));
    let on_venting = move |venting: Option<Venting>| {
        if let Some(venting) = venting {
            session.say(Fact::Venting(venting));
        }
    };
    let archived = memo(move || session.job(Job::is_archived).unwrap_or(false));
    let back = perhaps(move || session.job_id().map(|id| Route::Job(id, Tab::Report).href()));
    view! {
        <main class="page">
            <header class="page-head"><a class="chip" href=Route::Jobs.href()>"All jobs"</a><a class="chip" href=back>"Report"</a>
                <a class="chip" href=Route::Settings.href()>"Settings"</a></header>
            <Visits/>
            <section class="card">
                <h2>"Job"</h2>
                <TextField label="Title" value=now(|job| job.title().map(ToString::to_string)) on_commit=label(session, "Title", Fact::Title)/>
                <TextField label="Office job number" value=now(|job| job.office_number().map(ToString::to_string)) on_commit=label(session, "Office job number", Fact::OfficeNumber)/>
                <TextField label="Place" value=now(|job| job.site().map(ToString::to_string)) on_commit=label(session, "Place", Fact::Site)/>
            </section>
            <section class="card">
                <h2>"House"</h2>
                <TextField label="Year built" inputmode="numeric" value=surely(|fact| if let Fact::YearBuilt(year) = fact { Some(year.get().to_string()) } else { None }) on_commit=year(session)/>
                {stated_length(Fact::CrawlHeight)}
                {choice("Crawl space", ventings, venting, on_venting)}
            <TextField label="Framing may be closed at, %" inputmode="decimal" value=surely(|fact| if let Fact::FramingLimit(limit) = fact { Some(limit.typed.clone()) } else { None }) on_commit=percent(session, "Framing limit", Fact::FramingLimit)/>
            <TextField label="Subfloor under finished wood at, %" inputmode="decimal" value=surely(|fact| if let Fact::SubfloorLimit(limit) = fact { Some(limit.typed.clone()) } else { None }) on_commit=percent(session, "Subfloor limit", Fact::SubfloorLimit)/>
                <TextField label="Distances are from" value=surely(|fact| if let Fact::MeasuredFrom(from) = fact { Some(from.to_string()) } else { None }) on_commit=label(session, "Distances are from", Fact::MeasuredFrom)/>
                <TextField label="Common mark, seen from above and below" value=surely(|fact| if let Fact::CommonMark(mark) = fact { Some(mark.to_string()) } else { None }) on_commit=label(session, "Common mark", Fact::CommonMark)/>
                <North/>
            </section>
            <SheetFacts/>
            <section class="card">
                <h2>"How well lengths are read"</h2>
                <p>"Two readings in three are off by no more than this."</p>
                {OF_RULERS.map(stated_length).collect_view()}
            </section>
            <button type="button" class="key wide" on:click=move |_| session.say(Fact::Archived(!archived.get_untracked()))>
                {says(move || if archived.get() { "Take out of the archive" } else { "Archive this job" }.to_owned())}
            </button>
            <p class="refused" role="alert">{says(move || session.refused.get().unwrap_or_default())}</p>
        </main>
    }
}

/// Which way north lies on the plan.
#[component]
fn North() -> impl IntoView {
    let session = session();
    let ways = Heading::ALL.map(|way| (Some(way), format!("north {}", way.on_page()))).into();
    let now = move || session.job(|job| job.north().copied()).flatten();
    let on_choose = move |way: Option<Heading>| {
        if let Some(way) = way {
            session.say(Fact::North(way));
        }
    };
    choice("On the plan", ways, now, on_choose)
}

/// What is said about the sheets to be laid, the saw and the joists.
#[component]
fn SheetFacts() -> impl IntoView {
    let session = session();
    let surely = move |read: fn(&Fact) -> Option<String>| said_surely(session, &read);
    let edge = move || session.job(|job| job.sheet_edge().copied()).flatten();
    let edges = labelled(SheetEdge::ALL.map(Some), |edge| edge.map_or("", SheetEdge::label));
    let on_edge = move |edge: Option<SheetEdge>| {
        if let Some(edge) = edge {
            session.say(Fact::SheetEdge(edge));
        }
    };
    view! {
        <section class="card">
            <h2>"Sheets"</h2>
            <TextField label="Sheet size, width × length" value=surely(|fact| if let Fact::Sheet(sheet) = fact { Some(format!("{} × {}", sheet.width.typed, sheet.length.typed)) } else { None }) on_commit=sheet(session)/>
            {choice("Long edges", edges, edge, on_edge)}
            <TextField label="Span rating, inches on center" inputmode="numeric" value=surely(|fact| if let Fact::SpanRating(rating) = fact { Some(u16::from(*rating).to_string()) } else { None }) on_commit=span_rating(session)/>
            {OF_SHEETS.map(stated_length).collect_view()}
            <TextField label="Lumber for blocks" value=surely(|fact| if let Fact::BlockLumber(lumber) = fact { Some(lumber.to_string()) } else { None }) on_commit=label(session, "Lumber for blocks", Fact::BlockLumber)/>
        </section>
    }
}

/// What the job says at first: a field then keeps what is typed in it.
fn said(session: Session, read: fn(&Job) -> Option<String>) -> String {
    untrack(|| session.job(read)).flatten().unwrap_or_default()
}

/// What is said of a fact at first. Where two phones say different things the field is empty, so
/// that typing either says it again.
fn said_surely(session: Session, read: &dyn Fn(&Fact) -> Option<String>) -> String {
    untrack(|| session.job(|job| job.surely(read))).flatten().unwrap_or_default()
}

#[component]
fn Visits() -> impl IntoView {
    let session = session();
    let visits = memo(move || {
        session
            .job(|job| {
                job.now
                    .visits()
                    .values()
                    .map(|visit| (time::date(visit.stamp.at), visit.value.purpose.to_string()))
                    .collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    view! {
        <section class="card">
            <h2>"Visits"</h2>
            <ol>{live(move || visits.get().into_iter().map(|(day, purpose)| view! { <li>{day}" "{purpose}</li> }).collect_view())}</ol>
            <button type="button" class="key wide" on:click=move |_| session.begin_visit(Label::default())>"Begin another visit"</button>
        </section>
    }
}

type Commit = Callback<String, Result<(), String>>;

fn label(session: Session, field: &'static str, fact: fn(Label) -> Fact) -> Commit {
    Callback::new(move |text: String| {
        let label = Label::new(&text).map_err(|problem| format!("{field}: {problem}"))?;
        session.say(fact(label));
        Ok(())
    })
}

fn percent(session: Session, field: &'static str, fact: fn(Typed<MoistureContent>) -> Fact) -> Commit {
    Callback::new(move |text: String| {
        let typed = parse_moisture_content(&text).map_err(|problem| format!("{field}: {problem}"))?;
        say(session, field, &text, fact(typed))
    })
}

/// Says a fact, if its number can be so.
fn say(session: Session, field: &str, text: &str, fact: Fact) -> Result<(), String> {
    match fact.refused() {
        Some(why) => Err(format!("{field}: \"{text}\": {why}")),
        None => {
            session.say(fact);
            Ok(())
        }
    }
}

fn year(session: Session) -> Commit {
    Callback::new(move |text: String| {
        let year =
            text.trim().parse().map_err(|_| format!("Year built: \"{text}\" is no year; 1600 to 2200 is accepted"))?;
        session.say(Fact::YearBuilt(Year::new(year)?));
        Ok(())
    })
}

fn sheet(session: Session) -> Commit {
    Callback::new(move |text: String| {
        let bare = session.prefs.get_untracked().units.bare_length();
        let size = tape::parse_size(&text, bare).map_err(|problem| format!("Sheet size: {problem}"))?;
        let [width, length] = size;
        session.say(Fact::Sheet(SheetSize { width, length }));
        Ok(())
    })
}

fn span_rating(session: Session) -> Commit {
    Callback::new(move |text: String| {
        let rating = text
            .trim()
            .parse()
            .map_err(|_| format!("Span rating: \"{text}\" is none; a whole number from 8 to 60 is accepted"))?;
        session.say(Fact::SpanRating(SpanRating::new(rating)?));
        Ok(())
    })
}

/// The field of a length that is stated of the job, holding what is said of it now.
fn stated_length(fact: fn(Typed<Length>) -> Fact) -> impl IntoView {
    let session = session();
    let unsaid = fact(Typed::new("", Length::ZERO));
    let name = unsaid.length().map_or("", |(name, _)| name);
    let now = said_surely(session, &|said| {
        let length = said.length().filter(|_| discriminant(said) == discriminant(&unsaid))?;
        Some(length.1.typed.clone())
    });
    let on_commit = Callback::new(move |text: String| {
        let bare = session.prefs.get_untracked().units.bare_length();
        let typed = tape::parse(&text, bare, Sign::Refused).map_err(|problem| format!("{name}: {problem}"))?;
        say(session, name, &text, fact(typed))
    });
    view! { <TextField label=name value=now on_commit/> }
}

const OF_SHEETS: [fn(Typed<Length>) -> Fact; 5] =
    [Fact::SheetThickness, Fact::SheetGap, Fact::EdgeGap, Fact::Kerf, Fact::JoistThickness];

const OF_RULERS: [fn(Typed<Length>) -> Fact; 3] = [Fact::TapeWithin, Fact::LaserWithin, Fact::PacesWithin];
