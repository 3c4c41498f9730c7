//! Why a typed percentage or temperature was refused.

use super::{MOST_CHARACTERS, MOST_DECIMALS, Quantity};
use crate::engine::units::OutOfRange;
use std::fmt;

/// A piece of what was typed, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spot {
    /// How many characters of the text as handed in stand before it.
    pub at: usize,
    /// The piece, as typed.
    pub piece: String,
}

impl Spot {
    /// `text` with `other` in place of this piece, trimmed.
    pub(in crate::engine::units) fn replaced_in(&self, text: &str, other: &str) -> String {
        let before = text.chars().take(self.at);
        let after = text.chars().skip(self.at + self.piece.chars().count());
        let replaced: String = before.chain(other.chars()).chain(after).collect();
        replaced.trim().to_owned()
    }
}

/// A percentage or temperature that was refused. Its `Display` names the text, what
/// is wrong with it, and what would do; the caller adds the field's name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// As typed, trimmed, and cut short when it is too long to show.
    pub typed: String,
    /// What the field takes.
    pub quantity: Quantity,
    /// The piece to blame, if it is not the whole.
    pub spot: Option<Spot>,
    /// What is wrong.
    pub trouble: Trouble,
    /// Texts that the same field accepts and that may have been meant, likeliest first.
    pub try_instead: Vec<String>,
}

/// What can be wrong with a typed percentage or temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    /// Nothing was typed.
    Empty,
    /// More than [`MOST_CHARACTERS`].
    TooLong,
    /// The spot is not a number, or there is none.
    NotANumber,
    /// The spot follows the number, and is no unit of this field.
    UnknownUnit,
    /// The spot ends in its point or comma.
    NothingAfterPoint,
    /// The spot has several points or commas.
    SeveralPoints,
    /// The spot has more than [`MOST_DECIMALS`].
    TooFine,
    /// It was understood, and lies outside the quantity's limits.
    OutOfRange,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.trouble != Trouble::Empty {
            write!(f, "“{}”: ", self.typed)?;
        }
        let piece = self.spot.as_ref().map_or("", |spot| spot.piece.as_str());
        match self.trouble {
            Trouble::Empty => write!(f, "nothing entered.")?,
            Trouble::TooLong => write!(f, "at most {MOST_CHARACTERS} characters.")?,
            Trouble::NotANumber if piece.is_empty() => write!(f, "there is no number in it.")?,
            Trouble::NotANumber => write!(f, "“{piece}” is not a number.")?,
            Trouble::UnknownUnit => write!(f, "“{piece}” cannot follow a {}.", self.quantity.limits().what)?,
            Trouble::NothingAfterPoint => write!(f, "no digit follows “{piece}”.")?,
            Trouble::SeveralPoints => write!(f, "“{piece}” has more than one point or comma.")?,
            Trouble::TooFine => write!(f, "at most {MOST_DECIMALS} decimals.")?,
            Trouble::OutOfRange => return write!(f, "{}", OutOfRange { limits: self.quantity.limits() }),
        }
        if self.try_instead.is_empty() {
            write!(f, " Type {}", self.quantity.examples())
        } else {
            write!(f, " Type {}", self.try_instead.join(" or "))
        }
    }
}

impl std::error::Error for Problem {}
