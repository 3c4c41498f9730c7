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

/// What particulars are said of.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
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
    /// The rim joist beside what comes out.
    RimJoist,
    /// The sill beside what comes out.
    Sill,
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
            Self::House => "House".to_owned(),
            Self::Joists => "All joists".to_owned(),
            Self::Joist(number) => format!("Joist {}", number.get()),
            Self::Girder(number) => format!("Girder {number}"),
            Self::Pier(number) => format!("Pier {number}"),
            Self::Ledger(number) => format!("Ledger {number}"),
            Self::RimJoist => "Rim joist".to_owned(),
            Self::Sill => "Sill".to_owned(),
            Self::Order(line) => line.to_string(),
        }
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
