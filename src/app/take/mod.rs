//! The screen under the house: plan, question, value, instruments, keypad. One thumb,
//! no scrolling.

mod anyway;
mod look;
mod photo;
mod sheet;
mod value;

use crate::app::plan::PlanView;
use crate::app::session::session;
use crate::app::widgets::{KeyAction, Keypad, Stop, live, memo, press, says};
use crate::engine::job::Job;
use crate::engine::survey::room_area;
use crate::engine::take::{Draft, Instrument, Keys, Question, Units, tapped, travel};
use crate::engine::units::tape::BareUnit;
use leptos::ev::MouseEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The Take screen.
#[component]
pub fn Take() -> impl IntoView {
    let session = session();
    let question = memo(move || {
        let units = session.prefs.get().units;
        let draft = session.draft();
        session.job(|job| Question::of(&draft, job, units))
    });
    let (choosing, set_choosing) = signal(false);
    let done = Callback::new(move |()| set_choosing.set(false));
    let choose = Callback::new(move |()| set_choosing.set(true));
    view! {
        <main class="take" on:mousedown=move |event| if !choosing.get_untracked() { keep_focus(event) }>
            {live(move || if choosing.get() {
                view! { <sheet::Sheet on_done=done/> }.into_any()
            } else {
                view! { <Desk question choose/> }.into_any()
            })}
        </main>
    }
}

/// The value keeps the focus whatever is tapped, so that a laser or a meter can go on
/// typing into it; only another field may take it.
fn keep_focus(event: MouseEvent) {
    let on_field = event.target().is_some_and(|target| target.dyn_ref::<web_sys::HtmlInputElement>().is_some());
    if !on_field {
        event.prevent_default();
    }
}

/// Plan, question, value, instruments, and the keys that answer.
#[component]
fn Desk(question: Memo<Option<Question>>, choose: Callback<()>) -> impl IntoView {
    let keys = memo(move || question.get().map_or(Keys::Length, |question| question.keys));
    let session = session();
    let asked = memo(move || session.asked.get().filter(|_| keys.get() == Keys::Moisture));
    let answer = live(move || match keys.get() {
        Keys::Moisture if asked.get().is_some() => view! { <anyway::Anyways/> }.into_any(),
        Keys::Findings => view! { <look::Findings/> }.into_any(),
        Keys::Camera => view! { <photo::Camera/> }.into_any(),
        _ => view! { <Pad keys/> }.into_any(),
    });
    view! {
        <PlanAbove/>
        <Stop/>
        <div class="question-line">
            <button type="button" class="question" on:click=move |_| choose.run(())>
                <span class="asks">{says(move || question.get().map(|question| question.asks).unwrap_or_default())}"\u{a0}▾"</span>
                <span class="detail">{says(move || question.get().filter(|question| question.detail_asks.is_none()).map(|question| question.detail).unwrap_or_default())}</span>
            </button>
            <DetailKey question/>
            <sheet::TurnKey/>
        </div>
        {live(move || match keys.get() {
            Keys::Findings | Keys::Camera => view! { <value::NoValue/> }.into_any(),
            _ => view! { <value::Value question/> }.into_any(),
        })}
        <Instruments/>
        <div class="answer">{answer}</div>
    }
}

/// Where the spot is, more closely: its key asks for that.
#[component]
fn DetailKey(question: Memo<Option<Question>>) -> impl IntoView {
    let session = session();
    let asks = move || question.get().and_then(|question| Some((question.detail_asks?, question.detail)));
    live(move || {
        asks().map(|(what, detail)| {
            let ask = move |_| session.draft_to(|draft| draft.asking_where(what));
            view! { <button type="button" class="turn detail-key" on:click=ask>{detail}</button> }
        })
    })
}

/// The plan; on a small screen one line of it.
#[component]
fn PlanAbove() -> impl IntoView {
    let session = session();
    let go_to = Callback::new(move |point| {
        let units = session.prefs.get_untracked().units;
        let spot = untrack(|| session.job(|job| tapped(job, &session.draft().spot, point, units)));
        if let Some(spot) = spot {
            session.draft_to(|draft| Draft { spot, ..draft });
        }
    });
    let strip = memo(move || {
        let units = session.prefs.get().units;
        session.job(|job| job_strip(job, units)).unwrap_or_default()
    });
    view! {
        <div class="take-plan"><PlanView width=318 height=208 cursor=true on_tap=go_to/></div>
        <p class="strip">{strip}</p>
    }
}

/// The plan in one line.
fn job_strip(job: &Job, units: Units) -> String {
    let sides = job.now.sides().len();
    let room =
        room_area(job).value().map_or_else(|| format!("{sides} sides"), |area| format!("room {}", units.area(*area)));
    format!("{room} · {} readings · {} photos", job.now.readings().len(), job.now.photos().len())
}

/// The keypad of the question, working on the draft.
#[component]
fn Pad(keys: Memo<Keys>) -> impl IntoView {
    let session = session();
    let on_key = Callback::new(move |action: KeyAction| match action {
        KeyAction::Save => session.press_save(),
        KeyAction::OffScale(outside) => session.press_off_scale(outside),
        KeyAction::CannotReach => session.press_cannot_reach(),
        KeyAction::Step => {
            let spot = untrack(|| session.job(|job| travel::step(job, &session.draft().spot, 1)));
            session.draft_to(|draft| Draft { spot: spot.unwrap_or_else(|| draft.spot.clone()), ..draft });
        }
        KeyAction::Type(typed) => value::type_text(session, |text| press(text, typed)),
        KeyAction::Back => value::type_text(session, |text| {
            let mut text = text.trim_end().to_owned();
            text.pop();
            text
        }),
        KeyAction::Flip => {}
    });
    let metric = memo(move || session.prefs.get().units.bare_length() != BareUnit::Inches);
    live(move || view! { <Keypad keys=keys.get() metric=metric.get() on_key/> })
}

#[component]
fn Instruments() -> impl IntoView {
    let session = session();
    let in_hand = memo(move || session.draft().instrument);
    let keys = Instrument::ALL
        .into_iter()
        .map(|instrument| {
            view! {
                <button
                    type="button"
                    class="instrument"
                    aria-pressed=says(move || (in_hand.get() == instrument).to_string())
                    on:click=move |_| {
                        session.forget_refusal();
                        session.draft_to(|draft| draft.with(instrument));
                    }
                >
                    {icon(instrument)}
                    <span>{instrument.label()}</span>
                </button>
            }
        })
        .collect_view();
    view! { <div class="instruments" role="group" aria-label="Instruments">{keys}</div> }
}

/// Drawn for this project, always with its word.
fn icon(instrument: Instrument) -> impl IntoView {
    let path = match instrument {
        Instrument::Tape => "M4 18a7 7 0 1 1 7 0M9 12a2 2 0 1 0 4 0a2 2 0 1 0-4 0M4 18h16v3",
        Instrument::Meter => "M7 3h10v11H7zM10 6h4M10 14v7M14 14v7",
        Instrument::Air => "M3 9h11a3 3 0 1 0-3-3M3 13h15a3 3 0 1 1-3 3M3 17h7",
        Instrument::Level => "M2 8h20v8H2zM9 8v8M15 8v8M11 12h2",
        Instrument::Look => "M2 12c4-7 16-7 20 0c-4 7-16 7-20 0zM9 12a3 3 0 1 0 6 0a3 3 0 1 0-6 0",
        Instrument::Photo => "M3 7h4l2-3h6l2 3h4v13H3zM8 13a4 4 0 1 0 8 0a4 4 0 1 0-8 0",
    };
    view! { <svg class="icon" viewBox="0 0 24 24" aria-hidden="true"><path d=path/></svg> }
}
