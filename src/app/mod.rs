//! The phone app: draws the job, and turns taps into entries.
use leptos::prelude::*;

/// Mounts the app on the page.
pub fn start() {
    mount_to_body(|| view! { <main>"Duckboard"</main> });
}
