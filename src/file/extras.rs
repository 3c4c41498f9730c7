//! Fields that this build does not know: carried along in their own text.

use super::fault::Fault;
use super::json::{self, Field};
use litemap::LiteMap;
use serde_json::Value;
use serde_json::value::RawValue;
use std::fmt::Write as _;
use std::sync::Arc;

/// Unknown fields of one object, by name. Names and values keep the bytes they came in.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Extras(LiteMap<String, Extra>);

#[derive(Debug, Clone, PartialEq, Eq)]
struct Extra {
    /// The name's JSON text, quotes included.
    name: Arc<str>,
    value: Arc<str>,
}

impl Extras {
    /// Is there none?
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Their names and the JSON text of their values, in the order of the names.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(name, extra)| (name.as_str(), extra.value.as_ref()))
    }

    /// Both together. Where one name has two values, the same one stays whichever
    /// comes first: the greater by its canonical text.
    #[must_use]
    pub fn union(mut self, other: Self) -> Self {
        for (name, extra) in other.0 {
            match self.0.get(&name) {
                Some(there) if there.rank() >= extra.rank() => {}
                _ => {
                    self.0.insert(name, extra);
                }
            }
        }
        self
    }

    /// Appends them to an object in the making, each with a comma before it.
    pub(super) fn write(&self, json: &mut String) {
        for extra in self.0.values() {
            // Writing to a string cannot fail.
            let _ = write!(json, ",\n{}: {}", extra.name, extra.value);
        }
    }
}

impl Extra {
    fn rank(&self) -> (String, &str, &str) {
        let canonical = serde_json::from_str::<Value>(&self.value)
            .map_or_else(|_| self.value.as_ref().to_owned(), |value| value.to_string());
        (canonical, &self.value, &self.name)
    }
}

/// An object's fields sorted into those with a known name and the rest.
pub(super) struct Sorted<'a> {
    known: LiteMap<&'static str, &'a RawValue>,
    pub(super) extras: Extras,
}

impl<'a> Sorted<'a> {
    /// Sorts the fields of the object at `path`; a name that stands twice is a fault,
    /// and the first counts.
    pub(super) fn of(fields: &[Field<'a>], names: &[&'static str], path: &str, faults: &mut Vec<Fault>) -> Self {
        let mut sorted = Self { known: LiteMap::new(), extras: Extras::default() };
        for field in fields {
            match json::text(field.name) {
                Ok(name) => {
                    if !sorted.put(&name, *field, names) {
                        faults.push(Fault::at(join(path, &name), "stands twice; once is accepted"));
                    }
                }
                Err(problem) => faults.push(Fault::at(join(path, field.name.get()), problem)),
            }
        }
        sorted
    }

    /// The value of a known field, if it is there.
    pub(super) fn get(&self, name: &str) -> Option<&'a RawValue> {
        self.known.get(name).copied()
    }

    /// Puts a field where it belongs, unless its name is taken.
    fn put(&mut self, name: &str, field: Field<'a>, names: &[&'static str]) -> bool {
        if let Some(known) = names.iter().find(|known| **known == name) {
            return put_first(&mut self.known, known, field.value);
        }
        let extra = Extra { name: field.name.get().into(), value: field.value.get().into() };
        put_first(&mut self.extras.0, name.to_owned(), extra)
    }
}

fn put_first<K: Ord, V>(map: &mut LiteMap<K, V>, key: K, value: V) -> bool {
    map.try_insert(key, value).is_none()
}

/// The path of a field; a hostile name is cut.
fn join(path: &str, name: &str) -> String {
    let name: String = name.chars().take(64).collect();
    if path.is_empty() { name } else { format!("{path}.{name}") }
}
