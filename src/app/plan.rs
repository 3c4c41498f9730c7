//! The plan on the screen.

use crate::app::session::session;
use crate::draw::{Canvas, View, job_plan, svg};
use leptos::prelude::*;

/// The job's plan on a canvas of so many pixels; with the cursor where the next value
/// goes, if `cursor`.
#[component]
pub fn Plan(
    /// Pixels across.
    width: u32,
    /// Pixels down.
    height: u32,
    /// Show where the next value goes?
    cursor: bool,
    /// Seen from below?
    #[prop(into)]
    from_below: Signal<bool>,
) -> impl IntoView {
    let session = session();
    let drawing = Memo::new(move |_| {
        let spot = cursor.then(|| session.draft().spot);
        let units = session.prefs.get().units;
        let input = session.job(|job| job_plan::of(job, units, spot.as_ref()))?;
        let canvas = Canvas { width_px: width, height_px: height };
        Some(svg::write(&crate::draw::plan(&input, canvas, View { from_below: from_below.get() })))
    });
    // The one place where markup is set: `svg::write` escapes every text that goes in.
    view! { <div class="plan" inner_html=move || drawing.get().unwrap_or_default()></div> }
}
