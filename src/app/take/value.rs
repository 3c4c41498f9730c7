//! The value: the largest thing on the screen. It is a real input that holds the focus,
//! so that a keyboard, a laser or a meter can type into it.

use crate::app::session::{Session, session};
use crate::app::widgets::{live, memo, perhaps, says};
use crate::engine::take::{Draft, Question};
use leptos::ev::KeyboardEvent;
use leptos::html::Input;
use leptos::prelude::*;

/// The value as typed so far, its unit, and the value taken last.
#[component]
pub fn Value(question: Memo<Option<Question>>) -> impl IntoView {
    let session = session();
    let input = NodeRef::<Input>::new();
    let text = memo(move || session.draft().text);
    let asked = memo(move || session.draft().instrument);
    // The focus comes back whenever another instrument is in the hand.
    Effect::new(move |_| {
        asked.track();
        if let Some(input) = input.get() {
            let _ = input.focus();
        }
    });
    let on_key = move |event: KeyboardEvent| {
        if matches!(event.key().as_str(), "Enter" | "Tab") && !session.draft().text.is_empty() {
            event.prevent_default();
            session.press_save();
        }
    };
    let on_input = move |event| {
        let typed = event_target_value(&event);
        // A value that was refused is not typed on: the next one begins anew.
        let typed = if session.refused.get_untracked().is_some() { after(&session.draft().text, typed) } else { typed };
        type_text(session, |_| typed);
    };
    // More than this does not fit in the largest type.
    let long = move || text.get().chars().count() > 9;
    let label = perhaps(move || question.get().map(|question| question.asks));
    view! {
        <div class="value-line">
            <input
                class="value"
                class:long=long
                node_ref=input
                type="text"
                inputmode="none"
                autocomplete="off"
                aria-label=label
                aria-invalid=says(move || session.refused.with(Option::is_some).to_string())
                prop:value=says(move || text.get())
                on:input=on_input
                on:keydown=on_key
            />
            <span class="unit">{says(move || question.get().map(|question| question.unit).unwrap_or_default())}</span>
            <LastTaken/>
        </div>
        <Refusal/>
    }
}

/// Where nothing is typed, only what was taken last.
#[component]
pub fn NoValue() -> impl IntoView {
    view! {
        <div class="value-line"><LastTaken/></div>
        <Refusal/>
    }
}

/// Why the last value was not taken.
#[component]
fn Refusal() -> impl IntoView {
    let session = session();
    view! { <p class="refused" role="alert">{says(move || session.refused.get().unwrap_or_default())}</p> }
}

#[component]
fn LastTaken() -> impl IntoView {
    let session = session();
    live(move || {
        session.read_back.get().map(|last| {
            view! {
                <p class="last" role="status">
                    <span>{format!("last: {}", last.of)}</span>
                    <b>{last.value}</b>
                </p>
            }
        })
    })
}

/// Changes the typed text. After a refusal the first change begins anew.
pub fn type_text(session: Session, change: impl FnOnce(&str) -> String) {
    let refused = session.refused.get_untracked().is_some();
    session.forget_refusal();
    session.draft_to(|draft| {
        let text = if refused { change("") } else { change(&draft.text) };
        Draft { text, ..draft }
    });
}

/// What was typed behind a refused text.
fn after(refused: &str, typed: String) -> String {
    typed.strip_prefix(refused).map(ToOwned::to_owned).unwrap_or(typed)
}
