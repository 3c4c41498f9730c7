//! What is loaded when it is first asked for.

use js_sys::{Object, Reflect};
use web_sys::{CustomEvent, CustomEventInit};

/// Has the sheets of a job file's text laid out into the element `sheets`.
pub fn lay_sheets(job: &str, units: &str) {
    let detail = Object::new();
    for (name, value) in [("job", job), ("units", units)] {
        let _ = Reflect::set(&detail, &name.into(), &value.into());
    }
    let init = CustomEventInit::new();
    init.set_detail(&detail);
    if let (Some(window), Ok(event)) =
        (web_sys::window(), CustomEvent::new_with_event_init_dict("duckboard-sheets", &init))
    {
        let _ = window.dispatch_event(&event);
    }
}
