//! What stands in a record: plain objects with named fields, so that later builds
//! can add fields without a new version of the database.

use super::super::{Blob, Line, NoteKey, NoteScope, StoreError};
use js_sys::{ArrayBuffer, Object, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

pub(super) fn line(line: &Line) -> Result<JsValue, JsValue> {
    record([("id", JsValue::from_str(&line.id)), ("json", JsValue::from_str(&line.json))])
}

pub(super) fn read_line(record: JsValue) -> Result<Line, StoreError> {
    Ok(Line { id: text(&record, "id")?, json: text(&record, "json")? })
}

pub(super) fn note(key: &NoteKey, text: &str) -> Result<JsValue, JsValue> {
    record([("name", JsValue::from_str(&key.name)), ("text", JsValue::from_str(text))])
}

pub(super) fn read_note(scope: &NoteScope, record: &JsValue) -> Result<(NoteKey, String), StoreError> {
    let key = NoteKey { scope: scope.clone(), name: text(record, "name")? };
    Ok((key, text(record, "text")?))
}

/// The bytes go in as an `ArrayBuffer`: some engines lose or refuse a `Blob`.
pub(super) fn blob(blob: &Blob) -> Result<JsValue, JsValue> {
    let bytes = Uint8Array::from(blob.bytes.as_slice());
    record([("mediaType", JsValue::from_str(&blob.media_type)), ("bytes", bytes.buffer().into())])
}

pub(super) fn read_blob(record: &JsValue) -> Result<Blob, StoreError> {
    let bytes = Reflect::get(record, &"bytes".into())?;
    let Some(buffer) = bytes.dyn_ref::<ArrayBuffer>() else {
        return Err(damaged("bytes"));
    };
    Ok(Blob { media_type: text(record, "mediaType")?, bytes: Uint8Array::new(buffer).to_vec() })
}

fn record<const N: usize>(fields: [(&str, JsValue); N]) -> Result<JsValue, JsValue> {
    let record = Object::new();
    for (name, value) in fields {
        Reflect::set(&record, &name.into(), &value)?;
    }
    Ok(record.into())
}

fn text(record: &JsValue, field: &str) -> Result<String, StoreError> {
    let value = Reflect::get(record, &field.into())?;
    value.as_string().ok_or_else(|| damaged(field))
}

fn damaged(field: &str) -> StoreError {
    StoreError::Damaged { what: format!("it has no {field:?}") }
}
