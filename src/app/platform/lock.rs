//! One tab at a time: two would give two entries the same id.

use gloo_timers::future::TimeoutFuture;
use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

const NAME: &str = "duckboard";

/// A page that is loaded again may come before the one that goes has let go of its lock.
const TRIES: u32 = 10;
const BETWEEN_MS: u32 = 200;

/// Takes the app's lock for as long as the page lives. False if another tab has it and keeps it;
/// browsers without locks are trusted.
pub async fn take() -> bool {
    let Some(locks) = locks() else { return true };
    let Ok(request) = Reflect::get(&locks, &"request".into()).and_then(JsCast::dyn_into::<Function>) else {
        return true;
    };
    for _ in 1..TRIES {
        if is_granted(&locks, &request).await {
            return true;
        }
        TimeoutFuture::new(BETWEEN_MS).await;
    }
    is_granted(&locks, &request).await
}

/// Asks once, and waits for nobody.
async fn is_granted(locks: &JsValue, request: &Function) -> bool {
    let answer = Promise::new(&mut |resolve, _| {
        let held = Closure::once_into_js(move |lock: JsValue| {
            let _ = resolve.call1(&JsValue::NULL, &JsValue::from_bool(!lock.is_null()));
            // A promise that never settles holds the lock.
            if lock.is_null() { JsValue::UNDEFINED } else { Promise::new(&mut |_, _| {}).into() }
        });
        let options = Object::new();
        let _ = Reflect::set(&options, &"ifAvailable".into(), &JsValue::TRUE);
        let _ = request.call3(locks, &NAME.into(), &options, &held);
    });
    JsFuture::from(answer).await.ok().and_then(|taken| taken.as_bool()).unwrap_or(true)
}

fn locks() -> Option<JsValue> {
    let navigator = web_sys::window()?.navigator();
    Reflect::get(&navigator, &"locks".into()).ok().filter(|locks| !locks.is_undefined())
}
