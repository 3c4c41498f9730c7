//! What the page shows.

use crate::{browser, faults, kill};
use duckboard::store::IndexedDb;
use duckboard::store::contract::{self, Storage};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Document, Element};

/// Does what the address asks for.
pub fn start() {
    console_error_panic_hook::set_once();
    spawn_local(async {
        if let Err(thrown) = run().await {
            web_sys::console::error_1(&thrown);
        }
    });
}

async fn run() -> Result<(), JsValue> {
    let window = web_sys::window().ok_or("no window")?;
    let document = window.document().ok_or("no document")?;
    let report = Report::on(&document)?;
    let title = match window.location().hash()?.as_str() {
        "#write" => kill::write().await,
        "#read" => kill::read().await,
        _ => run_contract(&report).await,
    };
    report.write_line(&title);
    document.set_title(&title);
    Ok(())
}

/// A database of one check's own.
struct Database(&'static str);

impl Storage for Database {
    type Store = IndexedDb;
    fn open(&self) -> IndexedDb {
        IndexedDb::named(self.0)
    }
}

async fn run_contract(report: &Report) -> String {
    let mut all_passed = true;
    for (law, check) in contract::checks::<Database>() {
        let database = Database(law);
        browser::delete_database(law).await;
        let outcome = check(&database).await.map_err(|broken| broken.to_string());
        browser::delete_database(law).await;
        all_passed &= report.outcome(law, outcome);
    }
    for (law, check) in faults::checks() {
        browser::delete_database(law).await;
        let outcome = check(law).await;
        browser::mend();
        browser::delete_database(law).await;
        all_passed &= report.outcome(law, outcome);
    }
    let end = if all_passed { "passed" } else { "failed" };
    format!("contract {end}")
}

/// The lines on the page.
struct Report(Element);

impl Report {
    fn on(document: &Document) -> Result<Self, JsValue> {
        let lines = document.create_element("pre")?;
        document.body().ok_or("no body")?.append_child(&lines)?;
        Ok(Self(lines))
    }

    fn outcome(&self, law: &str, outcome: Result<(), String>) -> bool {
        match &outcome {
            Ok(()) => self.write_line(&format!("pass: {law}")),
            Err(why) => self.write_line(&format!("fail: {law}: {why}")),
        }
        outcome.is_ok()
    }

    /// Adds a line as text, not as markup: a reason may quote anything.
    fn write_line(&self, text: &str) {
        let old = self.0.text_content().unwrap_or_default();
        self.0.set_text_content(Some(&format!("{old}{text}\n")));
    }
}
