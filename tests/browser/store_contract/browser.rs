//! The browser's side of the checks: `browser.js`, which breaks the database on
//! purpose and looks at it past the store.

use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen(module = "/tests/browser/store_contract/browser.js")]
extern "C" {
    #[wasm_bindgen(js_name = deleteDatabase)]
    async fn delete(name: &str) -> wasm_bindgen::JsValue;

    /// Opens a database and lets nobody else change it until the browser is mended.
    #[wasm_bindgen(js_name = holdOpen)]
    pub async fn hold_open(name: &str) -> Held;

    /// A connection held open.
    pub type Held;

    /// Keeps a write transaction on the lines busy until the browser is mended.
    #[wasm_bindgen(js_name = keepBusy)]
    pub fn keep_busy(held: &Held);

    /// The next so many transactions throw an error of this name.
    #[wasm_bindgen(js_name = refuseTransactions)]
    pub fn refuse_transactions(count: u32, error: &str);

    /// The next so many write transactions are aborted under way.
    #[wasm_bindgen(js_name = abortWrites)]
    pub fn abort_writes(count: u32);

    /// After so many puts the next one throws an error of this name.
    #[wasm_bindgen(js_name = breakPutAfter)]
    pub fn break_put_after(count: u32, error: &str);

    /// Databases are opened in the version after the one asked for.
    #[wasm_bindgen(js_name = askForNextVersion)]
    pub fn ask_for_next_version();

    /// Timers of so many milliseconds and more go off at once.
    #[wasm_bindgen(js_name = hurryTimers)]
    pub fn hurry_timers(longest: u32);

    /// Undoes all of the above.
    pub fn mend();

    /// How many databases were opened since the page began.
    pub fn openings() -> u32;

    /// How many connections of the store are open. One that the browser closes by
    /// itself still counts.
    pub fn connections() -> u32;

    /// How many write transactions have completed since the page began.
    pub fn completions() -> u32;

    /// The durability that the last write transaction says it has.
    #[wasm_bindgen(js_name = lastDurability)]
    pub fn last_durability() -> String;

    /// How many timers went off since the page began.
    pub fn timers() -> u32;

    /// Listeners added less listeners removed, since the page began.
    pub fn listeners() -> i32;
}

/// Deletes a database; `false` if somebody stands in the way, and then it is deleted
/// as soon as they are gone.
pub async fn delete_database(name: &str) -> bool {
    delete(name).await.is_truthy()
}
