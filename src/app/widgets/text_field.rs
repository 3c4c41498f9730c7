//! A labelled line of text that is saved when it is left or Enter is pressed.

use super::live::{live, says};
use leptos::ev::{Event, KeyboardEvent};
use leptos::prelude::*;

/// A line of text. `on_commit` gives back a message when the text will not do; the text
/// stays as typed beside it.
#[component]
pub fn TextField(
    /// Its label.
    #[prop(into)]
    label: String,
    /// What stands in it at first.
    #[prop(into)]
    value: String,
    /// The keyboard it asks for.
    #[prop(default = "text")]
    inputmode: &'static str,
    /// Called with the text when it has changed.
    on_commit: Callback<String, Result<(), String>>,
) -> impl IntoView {
    let (problem, set_problem) = signal(None::<String>);
    let (kept, set_kept) = signal(value.clone());
    let commit = move |text: String| {
        if text == kept.get_untracked() {
            return;
        }
        match on_commit.run(text.clone()) {
            Ok(()) => {
                set_kept.set(text);
                set_problem.set(None);
            }
            Err(message) => set_problem.set(Some(message)),
        }
    };
    let on_key = move |event: KeyboardEvent| {
        if event.key() == "Enter" {
            commit(event_target_value(&event));
        }
    };
    view! {
        <label class="field">
            <span>{label}</span>
            <input
                type="text"
                inputmode=inputmode
                autocomplete="off"
                prop:value=value
                aria-invalid=says(move || problem.with(Option::is_some).to_string())
                on:change=move |event: Event| commit(event_target_value(&event))
                on:keydown=on_key
            />
            {live(move || problem.get().map(|problem| view! { <span class="problem" role="alert">{problem}</span> }))}
        </label>
    }
}
