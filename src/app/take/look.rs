//! Findings: one tap logs.

use crate::app::session::session;
use crate::engine::condition::Finding;
use leptos::prelude::*;

/// A key for each finding.
#[component]
pub fn Findings() -> impl IntoView {
    let session = session();
    let keys = Finding::ALL
        .into_iter()
        .map(|finding| {
            view! {
                <button type="button" class="key finding" on:click=move |_| session.press_finding(finding)>
                    {finding.label()}
                </button>
            }
        })
        .collect_view();
    view! { <div class="findings" role="group" aria-label="Findings">{keys}</div> }
}
