//! JSON taken apart one level at a time: the parts stay slices of the file's own text.

use serde::Deserialize;
use serde::de::{DeserializeSeed, Deserializer, Error as _, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;
use std::borrow::Cow;
use std::fmt;

/// One field of an object: its name as written (quotes and escapes included), and its value.
#[derive(Debug, Clone, Copy)]
pub(super) struct Field<'a> {
    pub(super) name: &'a RawValue,
    pub(super) value: &'a RawValue,
}

/// The fields of an object in their order, up to `most`.
pub(super) fn fields(json: &str, most: usize) -> Result<Vec<Field<'_>>, serde_json::Error> {
    whole(json, Fields { most })
}

/// The elements of an array in their order, up to `most`.
pub(super) fn elements(json: &str, most: usize) -> Result<Vec<&RawValue>, serde_json::Error> {
    whole(json, Elements { most })
}

/// A value of type `T`, its fault told without the position, which would count from
/// the start of this slice.
pub(super) fn value<'a, T: Deserialize<'a>>(json: &'a RawValue) -> Result<T, String> {
    serde_json::from_str(json.get()).map_err(|error| plain(&error))
}

/// A JSON string, borrowed from the file where it has no escapes.
pub(super) fn text(json: &RawValue) -> Result<Cow<'_, str>, String> {
    match serde_json::from_str::<&str>(json.get()) {
        Ok(text) => Ok(Cow::Borrowed(text)),
        Err(_) => value::<String>(json).map(Cow::Owned),
    }
}

/// The message of an error without its position.
pub(super) fn plain(error: &serde_json::Error) -> String {
    let message = error.to_string();
    message.split(" at line ").next().unwrap_or(&message).to_owned()
}

fn whole<'a, S: DeserializeSeed<'a>>(json: &'a str, seed: S) -> Result<S::Value, serde_json::Error> {
    let mut deserializer = serde_json::Deserializer::from_str(json);
    let value = seed.deserialize(&mut deserializer)?;
    deserializer.end()?;
    Ok(value)
}

struct Fields {
    most: usize,
}

impl<'a> DeserializeSeed<'a> for Fields {
    type Value = Vec<Field<'a>>;
    fn deserialize<D: Deserializer<'a>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        deserializer.deserialize_map(self)
    }
}

impl<'a> Visitor<'a> for Fields {
    type Value = Vec<Field<'a>>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'a>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut fields = Vec::new();
        while let Some((name, value)) = map.next_entry()? {
            if fields.len() == self.most {
                return Err(A::Error::custom(format_args!("more than {} fields", self.most)));
            }
            fields.push(Field { name, value });
        }
        Ok(fields)
    }
}

struct Elements {
    most: usize,
}

impl<'a> DeserializeSeed<'a> for Elements {
    type Value = Vec<&'a RawValue>;
    fn deserialize<D: Deserializer<'a>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        deserializer.deserialize_seq(self)
    }
}

impl<'a> Visitor<'a> for Elements {
    type Value = Vec<&'a RawValue>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an array")
    }

    fn visit_seq<A: SeqAccess<'a>>(self, mut seq: A) -> Result<Self::Value, A::Error> {
        let mut elements = Vec::new();
        while let Some(element) = seq.next_element()? {
            if elements.len() == self.most {
                return Err(A::Error::custom(format_args!("more than {} elements", self.most)));
            }
            elements.push(element);
        }
        Ok(elements)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_object_comes_apart_into_its_own_text() {
        let fields = fields(r#"{ "a" : [1, 2] , "\u0062":{"c":1.00} }"#, 9).unwrap();
        let texts: Vec<_> = fields.iter().map(|field| (field.name.get(), field.value.get())).collect();
        assert_eq!(texts, [(r#""a""#, "[1, 2]"), (r#""\u0062""#, r#"{"c":1.00}"#)]);
        assert_eq!(text(fields[1].name).unwrap(), "b");
    }

    #[test]
    fn too_many_parts_are_refused_while_reading() {
        assert!(plain(&elements("[1,1,1]", 2).unwrap_err()).starts_with("more than 2"));
        assert!(plain(&fields(r#"{"a":1,"a":1}"#, 1).unwrap_err()).starts_with("more than 1"));
        assert_eq!(elements("[1,1]", 2).unwrap().len(), 2);
    }

    #[test]
    fn nesting_costs_no_stack() {
        let deep = "[".repeat(200_000) + &"]".repeat(200_000);
        assert_eq!(elements(&deep, 1).unwrap().len(), 1);
    }
}
