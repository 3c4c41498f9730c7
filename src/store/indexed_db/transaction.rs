//! Writes that count only once they are flushed, and reads.

use super::super::StoreError;
use super::events::{TRANSACTION_PATIENCE, first_event};
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbDatabase, IdbObjectStore, IdbRequest, IdbTransaction};

/// Makes all of `requests` in one transaction, and resolves when the browser has
/// flushed it, not before: a request that has succeeded is not saved yet.
pub(super) async fn write(
    database: &IdbDatabase,
    stores: &[&str],
    requests: impl FnOnce(&IdbTransaction) -> Result<(), JsValue>,
) -> Result<(), StoreError> {
    let transaction = begin_strict(database, stores)?;
    if let Err(thrown) = requests(&transaction) {
        abort(&transaction);
        return Err(thrown.into());
    }
    let events = ["complete", "abort"];
    match first_event(&transaction, &events, TRANSACTION_PATIENCE).await {
        Some("complete") => Ok(()),
        Some(_) => Err(match transaction.error() {
            Some(error) => JsValue::from(error).into(),
            None => lost("the transaction was aborted"),
        }),
        None => {
            abort(&transaction);
            Err(lost("no answer to a write"))
        }
    }
}

/// Makes one request in a transaction that only reads, and gives its result.
pub(super) async fn read(
    database: &IdbDatabase,
    store: &str,
    request: impl FnOnce(&IdbObjectStore) -> Result<IdbRequest, JsValue>,
) -> Result<JsValue, StoreError> {
    let transaction = database.transaction_with_str(store)?;
    let request = request(&transaction.object_store(store)?)?;
    let events = ["success", "error"];
    match first_event(&request, &events, TRANSACTION_PATIENCE).await {
        Some("success") => Ok(request.result()?),
        Some(_) => Err(JsValue::from(request.error()?).into()),
        None => Err(lost("no answer to a read")),
    }
}

#[wasm_bindgen]
extern "C" {
    /// A database that takes options for a transaction. web-sys knows them only
    /// behind the flag for what is unstable.
    type DatabaseWithOptions;

    #[wasm_bindgen(method, catch)]
    fn transaction(
        this: &DatabaseWithOptions,
        stores: &Array,
        mode: &str,
        options: &Object,
    ) -> Result<IdbTransaction, JsValue>;
}

/// Without `strict`, "complete" means that the system has the data, not the disk. It
/// is a hint, and an engine that does not know it takes no notice.
fn begin_strict(database: &IdbDatabase, stores: &[&str]) -> Result<IdbTransaction, JsValue> {
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    let stores: Array = stores.iter().map(|store| JsValue::from_str(store)).collect();
    let database = database.unchecked_ref::<DatabaseWithOptions>();
    database.transaction(&stores, "readwrite", &options)
}

/// Takes everything back. It throws if there is nothing to take back any more.
fn abort(transaction: &IdbTransaction) {
    let _ = transaction.abort();
}

fn lost(said: &str) -> StoreError {
    StoreError::ConnectionLost { said: said.to_owned() }
}
