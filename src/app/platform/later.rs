//! What is loaded when it is first asked for.

use crate::engine::job::Observation;
use futures_channel::oneshot;
use gloo_events::EventListener;
use js_sys::{Object, Reflect};
use wasm_bindgen::JsCast;
use web_sys::{CustomEvent, CustomEventInit, Event};

/// The event by which a page hands back what was tapped on it.
pub const RECORD: &str = "duckboard-record";

/// Has a page of a job file's text, for whoever logs, shown in the element that is called like it.
pub fn show(page: &str, job: &str, units: &str, by: &str) {
    let detail = Object::new();
    for (name, value) in [("page", page), ("job", job), ("units", units), ("by", by)] {
        let _ = Reflect::set(&detail, &name.into(), &value.into());
    }
    let init = CustomEventInit::new();
    init.set_detail(&detail);
    if let (Some(window), Ok(event)) =
        (web_sys::window(), CustomEvent::new_with_event_init_dict("duckboard-later", &init))
    {
        let _ = window.dispatch_event(&event);
    }
}

/// What the module says to a page's name and a text; none if it does not answer in time.
pub async fn ask(page: &str, text: &str, units: &str) -> Option<String> {
    let window = web_sys::window()?;
    let (tell, told) = oneshot::channel();
    let mut tell = Some(tell);
    let _listening = EventListener::new(&window, format!("duckboard-{page}"), move |event| {
        let answer = event.dyn_ref::<CustomEvent>().and_then(|event| event.detail().as_string());
        if let Some(tell) = tell.take() {
            let _ = tell.send(answer);
        }
    });
    show(page, text, units, "");
    told.await.ok().flatten()
}

/// What such an event hands back, as a job file has it.
pub fn recorded(event: &Event) -> Option<Observation> {
    let detail = event.dyn_ref::<CustomEvent>()?.detail().as_string()?;
    serde_json::from_str(&detail).ok()
}
