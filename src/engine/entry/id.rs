//! Identity: devices, jobs and entries.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// Defines a 128-bit random identity, written as 32 lower-case hex digits. The bits
/// are handed in: the engine has no randomness.
macro_rules! identity {
    ($(#[$docs:meta])* $name:ident) => {
        $(#[$docs])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub struct $name(u128);

        impl $name {
            /// An identity from 128 random bits.
            pub const fn new(random: u128) -> Self {
                Self(random)
            }

            /// The 128 bits.
            pub const fn bits(self) -> u128 {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{:032x}", self.0)
            }
        }

        impl FromStr for $name {
            type Err = BadId;
            fn from_str(text: &str) -> Result<Self, BadId> {
                hex128(text).map(Self).ok_or_else(|| BadId { found: shortened(text), expected: "32 hex digits" })
            }
        }

        impl TryFrom<String> for $name {
            type Error = BadId;
            fn try_from(text: String) -> Result<Self, BadId> {
                text.parse()
            }
        }

        impl From<$name> for String {
            fn from(id: $name) -> Self {
                id.to_string()
            }
        }

        #[cfg(not(target_arch = "wasm32"))]
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }
            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "string", "pattern": "^[0-9a-f]{32}$" })
            }
        }
    };
}

identity! {
    /// One log of one phone: minted with the database that holds the log, and anew
    /// whenever that is new, so that a lost log can never reuse an entry's id.
    DeviceId
}

identity! {
    /// One job.
    JobId
}

/// An entry's identity: a logical count, one more than the greatest that the device
/// had seen, and the device. Unique, and ordered so that whatever refers to an entry
/// comes after it. Wall clocks lie; this order does not use them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct EntryId {
    /// One more than the greatest count that the device had seen.
    pub count: u32,
    /// The device that made the entry.
    pub device: DeviceId,
}

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.count, self.device)
    }
}

impl FromStr for EntryId {
    type Err = BadId;
    fn from_str(text: &str) -> Result<Self, BadId> {
        let bad = || BadId { found: shortened(text), expected: "a count, a point and 32 hex digits" };
        let (count, device) = text.split_once('.').ok_or_else(bad)?;
        let canonical = count.bytes().all(|byte| byte.is_ascii_digit()) && (count == "0" || !count.starts_with('0'));
        if !canonical {
            return Err(bad());
        }
        Ok(Self { count: count.parse().map_err(|_| bad())?, device: device.parse().map_err(|_| bad())? })
    }
}

impl TryFrom<String> for EntryId {
    type Error = BadId;
    fn try_from(text: String) -> Result<Self, BadId> {
        text.parse()
    }
}

impl From<EntryId> for String {
    fn from(id: EntryId) -> Self {
        id.to_string()
    }
}

#[cfg(not(target_arch = "wasm32"))]
impl schemars::JsonSchema for EntryId {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "EntryId".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "pattern": "^(0|[1-9][0-9]{0,9})\\.[0-9a-f]{32}$",
            "description": "A logical count, a point, and the device's 32 hex digits."
        })
    }
}

/// Text that is no identity.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadId {
    found: String,
    expected: &'static str,
}

impl fmt::Display for BadId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "\"{}\" is not an id: expected {}", self.found, self.expected)
    }
}

impl std::error::Error for BadId {}

/// Exactly 32 lower-case hex digits.
fn hex128(text: &str) -> Option<u128> {
    let plain = text.len() == 32 && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
    plain.then(|| u128::from_str_radix(text, 16).ok()).flatten()
}

/// Enough of a hostile text for a message.
fn shortened(text: &str) -> String {
    text.chars().take(48).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn an_id_is_its_text(count: u32, device: u128) {
            let id = EntryId { count, device: DeviceId::new(device) };
            prop_assert_eq!(id.to_string().parse::<EntryId>().unwrap(), id);
        }

        #[test]
        fn no_text_panics(text in ".{0,60}") {
            if let Ok(id) = text.parse::<EntryId>() {
                prop_assert_eq!(id.to_string(), text);
            }
        }
    }

    #[test]
    fn a_later_count_is_later_whatever_the_device() {
        let early = EntryId { count: 9, device: DeviceId::new(u128::MAX) };
        let late = EntryId { count: 10, device: DeviceId::new(0) };
        assert!(early < late);
    }
}
