//! Findings: one tap logs.

use crate::app::session::session;
use crate::engine::condition::Finding;
use leptos::prelude::*;

/// A key for each finding.
#[component]
pub fn Findings() -> impl IntoView {
    let session = session();
    let key = |finding: Finding| {
        view! {
            <button type="button" class="key finding" on:click=move |_| session.press_finding(finding)>
                {finding.label()}
            </button>
        }
    };
    let keys = |findings: &[Finding]| findings.iter().copied().map(key).collect_view();
    view! {
        <div class="findings" role="group" aria-label="Findings">{keys(&Finding::ALL)}</div>
        <div class="findings" role="group" aria-label="What is above or beside">{keys(&Finding::FIXTURES)}</div>
    }
}
