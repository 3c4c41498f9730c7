//! Handing a file out: through the share sheet where files can be shared, else saved.

use js_sys::{Array, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, ShareData, Url};

/// What came of handing over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// The share sheet took it. That is not delivery.
    Shared,
    /// It was saved as a download.
    Saved,
    /// The user closed the share sheet.
    Cancelled,
}

/// Can this browser share files at all?
pub fn can_share() -> bool {
    share_data("probe.txt", &[String::new()]).is_ok_and(|data| shareable(&data))
}

/// Shares the file as plain text. It must be called from a tap.
///
/// # Errors
/// What the browser said.
pub async fn share(name: &str, parts: &[String]) -> Result<Outcome, String> {
    let navigator = web_sys::window().ok_or("there is no window")?.navigator();
    let data = share_data(&format!("{name}.json.txt"), parts).map_err(|error| super::message(&error))?;
    match JsFuture::from(navigator.share_with_data(&data)).await {
        Ok(_) => Ok(Outcome::Shared),
        Err(error) if name_of(&error).as_deref() == Some("AbortError") => Ok(Outcome::Cancelled),
        Err(error) => Err(super::message(&error)),
    }
}

/// Saves the parts as one file named `name`.
///
/// # Errors
/// What the browser said.
pub fn save(name: &str, media_type: &str, parts: &[String]) -> Result<Outcome, String> {
    let saved = || -> Result<(), JsValue> {
        let document = web_sys::window().and_then(|window| window.document()).ok_or("there is no document")?;
        let url = Url::create_object_url_with_blob(&blob(media_type, parts)?)?;
        let anchor: HtmlAnchorElement = document.create_element("a")?.dyn_into()?;
        anchor.set_href(&url);
        anchor.set_download(name);
        anchor.click();
        // The click has taken its own hold of the data by the next turn of the loop.
        gloo_timers::callback::Timeout::new(60_000, move || drop(Url::revoke_object_url(&url))).forget();
        Ok(())
    };
    saved().map(|()| Outcome::Saved).map_err(|error| super::message(&error))
}

/// A picture's address for an `img`.
///
/// # Errors
/// What the browser said.
pub fn picture_url(media_type: &str, bytes: &[u8]) -> Result<String, String> {
    picture(media_type, bytes)
        .and_then(|blob| Url::create_object_url_with_blob(&blob))
        .map_err(|error| super::message(&error))
}

/// A picture's bytes, for the browser.
///
/// # Errors
/// What the browser said.
pub fn picture(media_type: &str, bytes: &[u8]) -> Result<Blob, JsValue> {
    let properties = BlobPropertyBag::new();
    properties.set_type(media_type);
    let parts = Array::of1(&js_sys::Uint8Array::from(bytes));
    Blob::new_with_u8_array_sequence_and_options(&parts, &properties)
}

fn blob(media_type: &str, parts: &[String]) -> Result<Blob, JsValue> {
    let properties = BlobPropertyBag::new();
    properties.set_type(media_type);
    Blob::new_with_str_sequence_and_options(&strings(parts), &properties)
}

fn share_data(name: &str, parts: &[String]) -> Result<ShareData, JsValue> {
    let properties = FilePropertyBag::new();
    properties.set_type("text/plain");
    let file = File::new_with_str_sequence_and_options(&strings(parts), name, &properties)?;
    let data = ShareData::new();
    data.set_files(&Array::of1(&file));
    Ok(data)
}

/// `navigator.canShare`, which some engines lack.
fn shareable(data: &ShareData) -> bool {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return false };
    let there = Reflect::get(&navigator, &"canShare".into()).is_ok_and(|method| method.is_function());
    there && navigator.can_share_with_data(data)
}

fn strings(parts: &[String]) -> Array {
    parts.iter().map(|part| JsValue::from_str(part)).collect()
}

fn name_of(error: &JsValue) -> Option<String> {
    Reflect::get(error, &"name".into()).ok()?.as_string()
}
