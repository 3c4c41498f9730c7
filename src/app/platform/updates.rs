//! A newer build waits until the user wants it.

use web_sys::CustomEvent;

/// Does a newer build wait?
pub fn waiting() -> bool {
    attribute("data-update").as_deref() == Some("waiting")
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
