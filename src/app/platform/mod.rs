//! The browser, one interface a file. Each gives plain values or a sentence that says
//! what went wrong; none knows the job.

pub mod clock;
pub mod download;
pub mod files;
pub mod later;
pub mod lock;
pub mod photo;
pub mod prefs;
pub mod random;
pub mod senses;
pub mod storage;
pub mod updates;

use wasm_bindgen::JsValue;

/// What a browser's error says.
pub fn message(error: &JsValue) -> String {
    let text = js_sys::Reflect::get(error, &"message".into()).ok().and_then(|message| message.as_string());
    text.or_else(|| error.as_string()).unwrap_or_else(|| "the browser gave no reason".to_owned())
}
