//! Files that the user picked.

use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Event, File, HtmlInputElement};

/// The file that an input's `change` event brings; the input is emptied, so that the
/// same file can be picked again.
pub fn picked(event: &Event) -> Option<File> {
    let input: HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = input.files().and_then(|files| files.get(0));
    input.set_value("");
    file
}

/// The file's bytes.
///
/// # Errors
/// What the browser said.
pub async fn bytes(file: &File) -> Result<Vec<u8>, String> {
    let buffer = JsFuture::from(file.array_buffer()).await.map_err(|error| super::message(&error))?;
    Ok(js_sys::Uint8Array::new(&buffer).to_vec())
}
