//! How safely the browser keeps what it was given.

use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageManager;

/// What the browser says about storage.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Standing {
    /// Has it promised not to evict? None if it does not say.
    pub persisted: Option<bool>,
    /// Bytes used.
    pub used: Option<f64>,
    /// Bytes allowed in all.
    pub quota: Option<f64>,
}

/// Asks for persistence, then how things stand. Some browsers ask the user and answer
/// late: never wait for this before showing anything.
pub async fn ask() -> Standing {
    let Some(manager) = manager() else { return Standing::default() };
    if let Ok(promise) = manager.persist() {
        let _ = JsFuture::from(promise).await;
    }
    let persisted = match manager.persisted() {
        Ok(promise) => JsFuture::from(promise).await.ok().and_then(|answer| answer.as_bool()),
        Err(_) => None,
    };
    let estimate = match manager.estimate() {
        Ok(promise) => JsFuture::from(promise).await.ok(),
        Err(_) => None,
    };
    let number =
        |name: &str| estimate.as_ref().and_then(|estimate| field(estimate, name)).and_then(|value| value.as_f64());
    Standing { persisted, used: number("usage"), quota: number("quota") }
}

/// Is the app running from the home screen, and is this an iPhone or iPad? There the
/// browser tab and the home-screen app do not share data.
pub fn ios_tab() -> bool {
    let Some(navigator) = web_sys::window().map(|window| window.navigator()) else { return false };
    let agent = navigator.user_agent().unwrap_or_default();
    let on_ios = agent.contains("iPhone") || agent.contains("iPad");
    let standalone = field(&navigator, "standalone").and_then(|value| value.as_bool());
    on_ios && standalone != Some(true)
}

/// `navigator.storage`, which some engines lack.
fn manager() -> Option<StorageManager> {
    let navigator = web_sys::window()?.navigator();
    let there = field(&navigator, "storage").is_some_and(|storage| !storage.is_undefined());
    there.then(|| navigator.storage())
}

fn field(of: &JsValue, name: &str) -> Option<JsValue> {
    js_sys::Reflect::get(of, &name.into()).ok()
}
