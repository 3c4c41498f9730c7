//! A plan with the keys to look at it.

use super::Plan;
use super::nearer::Nearness;
use crate::app::widgets::says;
use crate::engine::geometry::Point;
use leptos::prelude::*;

/// The job's plan, to be looked at from nearer by and from below.
#[component]
pub fn PlanView(
    /// Pixels across.
    width: u32,
    /// Pixels down.
    height: u32,
    /// Show where the next value goes?
    cursor: bool,
    /// Called with the point of the job that was tapped.
    #[prop(optional)]
    on_tap: Option<Callback<Point>>,
) -> impl IntoView {
    let nearness = RwSignal::new(Nearness::default());
    let is_nearest = move || nearness.get().next() == Nearness::default();
    let from_below = RwSignal::new(false);
    let on_tap = on_tap.unwrap_or_else(|| Callback::new(|_| ()));
    view! {
        <div class="plan-view">
            <Plan width height cursor from_below nearness on_tap/>
            <div class="plan-keys">
                <button type="button" class="chip" aria-label=says(move || if is_nearest() { "whole plan" } else { "nearer" }.to_owned())
                    on:click=move |_| nearness.update(|from| *from = from.next())>
                    {says(move || if is_nearest() { "−" } else { "+" }.to_owned())}
                </button>
                <button type="button" class="chip view-key" aria-pressed=says(move || from_below.get().to_string())
                    on:click=move |_| from_below.update(|below| *below = !*below)>
                    {says(move || if from_below.get() { "from below" } else { "from above" }.to_owned())}
                </button>
            </div>
        </div>
    }
}
