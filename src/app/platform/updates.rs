//! A newer build waits until the user wants it.

use leptos::prelude::*;
use web_sys::CustomEvent;

/// Does a newer build wait?
pub fn waiting() -> ReadSignal<bool> {
    let (waiting, set_waiting) = signal(attribute("data-update").as_deref() == Some("waiting"));
    if let Some(window) = web_sys::window() {
        let listener = gloo_events::EventListener::new(&window, "duckboard-update", move |_| {
            set_waiting.try_set(true);
        });
        // Kept for as long as the screen that asked.
        StoredValue::new_local(listener);
    }
    waiting
}

/// Use the newer build: the page is loaded again.
pub fn use_it() {
    if let (Some(window), Ok(event)) = (web_sys::window(), CustomEvent::new("duckboard-use-update")) {
        let _ = window.dispatch_event(&event);
    }
}

fn attribute(name: &str) -> Option<String> {
    web_sys::window()?.document()?.document_element()?.get_attribute(name)
}
