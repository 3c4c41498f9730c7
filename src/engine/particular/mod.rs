//! Particulars of the house: what is said once of a joist, the ground, the roof or a line
//! of the order list, and may be said again. The latest counts.
//!
//! One kind of entry holds them all. It names what it says in plain words, which are also
//! how it reads in the log; [`list`] has the words that calculations go by, with what each
//! takes. Words that no list has are kept and shown like any other. The pages that ask
//! for particulars are not part of the first load, and neither is the list.

pub mod list;
mod lookup;
mod read;

pub use list::{Item, Takes};
pub use lookup::Particulars;
pub use read::{item_of, stated};

use super::describe::capital;
use super::entry::Label;
use super::place::JoistNumber;
use super::units::{Amount, Length, Typed};
use serde::{Deserialize, Serialize};

/// Something said of a part of the house.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Particular {
    /// What it is said of.
    pub of: Part,
    /// What is said, in words: "depth", "rain".
    pub what: Label,
    /// The answer.
    pub is: Value,
}

/// What particulars are said of. A file has it in words: `house`, `joist 3`, `order NAME`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub enum Part {
    /// The house as a whole.
    House,
    /// All joists that nothing else is said of.
    Joists,
    /// One joist, by its number.
    Joist(JoistNumber),
    /// A girder, counted from the first corner.
    Girder(u16),
    /// A pier.
    Pier(u16),
    /// A ledger.
    Ledger(u16),
    /// A line of the order list, by its name.
    Order(Label),
}

/// What was answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// A length.
    Length(Typed<Length>),
    /// An amount, of what the words say.
    Amount(Typed<Amount>),
    /// Words, often one of a choice.
    Words(Label),
}

impl Part {
    /// The part in words.
    pub fn name(&self) -> String {
        match self {
            Self::Joists => "All joists".to_owned(),
            Self::Order(line) => line.to_string(),
            other => capital(&String::from(other.clone())),
        }
    }
}

impl From<Part> for String {
    fn from(part: Part) -> Self {
        match part {
            Part::House => "house".to_owned(),
            Part::Joists => "joists".to_owned(),
            Part::Joist(number) => format!("joist {}", number.get()),
            Part::Girder(number) => format!("girder {number}"),
            Part::Pier(number) => format!("pier {number}"),
            Part::Ledger(number) => format!("ledger {number}"),
            Part::Order(line) => format!("order {line}"),
        }
    }
}

impl TryFrom<String> for Part {
    type Error = String;
    fn try_from(text: String) -> Result<Self, String> {
        let (kind, which) = text.split_once(' ').unwrap_or((&text, ""));
        let number = || which.parse::<u16>().ok();
        let part = match kind {
            "house" if which.is_empty() => Some(Self::House),
            "joists" if which.is_empty() => Some(Self::Joists),
            "joist" => number().and_then(JoistNumber::new).map(Self::Joist),
            "girder" => number().map(Self::Girder),
            "pier" => number().map(Self::Pier),
            "ledger" => number().map(Self::Ledger),
            "order" => Label::new(which).ok().filter(|line| !line.is_empty()).map(Self::Order),
            _ => None,
        };
        part.ok_or_else(|| {
            format!("\"{text}\" is no part: house, joists, joist 3, girder 1, pier 1, ledger 1 or order NAME")
        })
    }
}

#[cfg(not(target_arch = "wasm32"))]
impl schemars::JsonSchema for Part {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Part".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let pattern = "^(house|joists|joist [1-9][0-9]{0,2}|(girder|pier|ledger) [0-9]{1,5}|order \\S.*)$";
        schemars::json_schema!({ "type": "string", "maxLength": 86, "pattern": pattern })
    }
}

impl Value {
    /// As it was typed, or the words.
    pub fn typed(&self) -> &str {
        match self {
            Self::Length(typed) => &typed.typed,
            Self::Amount(typed) => &typed.typed,
            Self::Words(words) => words.as_str(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn parts_are_named_as_a_carpenter_says_them() {
        assert_eq!(Part::Pier(2).name(), "Pier 2");
        assert_eq!(Part::Joist(JoistNumber::FIRST).name(), "Joist 1");
        assert_eq!(Part::Order(Label::fitted("order of 3")).name(), "order of 3");
    }

    proptest! {
        #[test]
        fn any_text_is_a_part_that_stays_itself_or_refused(text in "(house|joists|joist|girder|order|pier)? ?.{0,12}") {
            if let Ok(part) = Part::try_from(text) {
                let again = Part::try_from(String::from(part.clone())).unwrap();
                prop_assert_eq!(again, part);
            }
        }
    }
}
