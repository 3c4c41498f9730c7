//! The plan on the screen: drawn, tapped, and looked at from nearer by.

mod nearer;
mod view;

pub use view::PlanView;

use crate::app::session::session;
use crate::app::widgets::{memo, says};
use crate::draw::{Canvas, Frame, Spot, View, job_plan, svg};
use crate::engine::geometry::Point;
use crate::engine::take::Instrument;
use leptos::ev::{MouseEvent, TouchEvent};
use leptos::html::Div;
use leptos::prelude::*;
use nearer::{Fingers, Nearness};
use wasm_bindgen::JsCast;

/// The job's plan on a canvas of so many pixels; with the cursor where the next value
/// goes, if `cursor`. With the tape in
/// the hand it shows lengths, with another instrument readings, else both.
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
    /// From how near it is looked at.
    #[prop(optional)]
    nearness: RwSignal<Nearness>,
    /// Called with the point of the job that was tapped.
    #[prop(optional)]
    on_tap: Option<Callback<Point>>,
) -> impl IntoView {
    let session = session();
    // Looked at from nearer by it is drawn larger, its letters as they are.
    let canvas = memo(move || nearness.get().enlarged(Canvas { width_px: width, height_px: height }));
    let drawing = memo(move || {
        let draft = cursor.then(|| session.draft());
        let units = session.prefs.get().units;
        let of = match &draft {
            Some(draft) if draft.instrument == Instrument::Tape => job_plan::without_readings,
            Some(_) => job_plan::without_dimensions,
            None => job_plan::of,
        };
        let input = session.job(|job| of(job, units, draft.as_ref().map(|draft| &draft.spot)))?;
        Some(crate::draw::plan(&input, canvas.get(), View { from_below: from_below.get() }))
    });
    let shown = NodeRef::<Div>::new();
    nearer::keep_the_middle(shown, nearness);
    let fingers = Fingers::default();
    let on_touch = move |event: TouchEvent| fingers.moved(&event, nearness);
    let on_click = move |event: MouseEvent| {
        let frame = drawing.with_untracked(|drawing| drawing.as_ref().and_then(|drawing| drawing.frame));
        if let (Some(on_tap), Some(point)) =
            (on_tap, frame.and_then(|frame| tapped(&event, canvas.get_untracked(), frame)))
        {
            on_tap.run(point);
        }
    };
    let markup = says(move || drawing.with(|drawing| drawing.as_ref().map(svg::write).unwrap_or_default()));
    // The one place where markup is set: `svg::write` escapes every text that goes in.
    view! {
        <div class="plan" node_ref=shown data-nearness=says(move || nearness.get().steps().to_string())
            on:click=on_click on:touchstart=on_touch on:touchmove=on_touch inner_html=markup></div>
    }
}

/// The job's point under a tap: the canvas is fitted into its box, in the middle.
fn tapped(event: &MouseEvent, canvas: Canvas, frame: Frame) -> Option<Point> {
    let plan: web_sys::Element = event.current_target()?.dyn_into().ok()?;
    let shown = plan.first_element_child()?.get_bounding_client_rect();
    let (width, height) = (f64::from(canvas.width_px), f64::from(canvas.height_px));
    let scale = (shown.width() / width).min(shown.height() / height);
    let spot = |at: f64, start: f64, room: f64, size: f64| (at - start - (room - size * scale) / 2.0) / scale;
    Some(frame.point(Spot {
        x: spot(f64::from(event.client_x()), shown.left(), shown.width(), width),
        y: spot(f64::from(event.client_y()), shown.top(), shown.height(), height),
    }))
}
