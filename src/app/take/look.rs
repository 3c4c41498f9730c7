//! Findings: one tap logs. What wood is like is on one pad, what is around it on another.

use crate::app::session::session;
use crate::app::widgets::live;
use crate::engine::condition::Finding;
use leptos::prelude::*;

/// A key for each finding, and one that turns the pad over.
#[component]
pub fn Findings() -> impl IntoView {
    let session = session();
    let is_around = RwSignal::new(false);
    let key = move |finding: Finding| {
        view! {
            <button type="button" class="key finding" on:click=move |_| session.press_finding(finding)>
                {finding.label()}
            </button>
        }
    };
    live(move || {
        let around = is_around.get();
        let (findings, turn): (&[Finding], _) =
            if around { (&Finding::AROUND, "← the wood") } else { (&Finding::OF_WOOD, "around it →") };
        view! {
            <div class="findings" role="group" aria-label="Findings">
                {findings.iter().copied().map(key).collect_view()}
                <button type="button" class="key finding" on:click=move |_| is_around.set(!around)>{turn}</button>
            </div>
        }
    })
}
