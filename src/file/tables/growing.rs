//! Payloads that are still growing, read through their JSON form rather than their
//! fields: a field that comes is told, one that goes is not missed.

use crate::engine::entry::EntryId;
use serde::Serialize;
use serde_json::Value;

/// The value of a field in words; nothing if there is no such field.
pub(super) fn said(payload: &impl Serialize, field: &str) -> Option<String> {
    let value = serde_json::to_value(payload).ok()?;
    words(value.get(field)?)
}

/// The entry that a field names.
pub(super) fn named(payload: &impl Serialize, field: &str) -> Option<EntryId> {
    serde_json::to_value(payload).ok()?.get(field)?.as_str()?.parse().ok()
}

/// Every field but references, in words: "temperature 68.5 °F, humidity 71 %".
pub(super) fn everything(payload: &impl Serialize) -> String {
    let Ok(Value::Object(fields)) = serde_json::to_value(payload) else { return String::new() };
    let told = fields.iter().filter_map(|(name, value)| Some((name.replace('_', " "), words(value)?)));
    told.map(|(name, words)| format!("{name} {words}")).collect::<Vec<_>>().join(", ")
}

fn words(value: &Value) -> Option<String> {
    match value {
        Value::Null => None,
        Value::String(text) if text.parse::<EntryId>().is_ok() => None,
        Value::String(text) => Some(text.replace('_', " ")),
        Value::Object(fields) => match (fields.get("typed"), fields.iter().next()) {
            (Some(Value::String(typed)), _) => Some(typed.clone()),
            (_, Some((name, inner))) if fields.len() == 1 => {
                Some(words(inner).map_or_else(|| name.clone(), |inner| format!("{} {inner}", name.replace('_', " "))))
            }
            _ => Some(value.to_string()),
        },
        other => Some(other.to_string()),
    }
}
