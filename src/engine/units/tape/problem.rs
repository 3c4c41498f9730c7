//! Why a typed length was refused, and what would do.

use super::span::Span;
use super::{BareUnit, MOST_DECIMALS};
use crate::engine::units::decimal::{MOST_CHARACTERS, Spot};
use crate::engine::units::{OutOfRange, limits};
use std::fmt;

/// A length that was refused. Its `Display` names the text, what is wrong with it and
/// what would do; the caller adds the field's name. Its quotes are curly, so that they
/// cannot be taken for inch marks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// As typed, trimmed, and cut short when it is too long to show.
    pub typed: String,
    /// The unit of a bare number in the field.
    pub bare: BareUnit,
    /// The piece to blame, if it is not the whole.
    pub spot: Option<Spot>,
    /// What is wrong.
    pub trouble: Trouble,
    /// Texts that the same field accepts and that may have been meant, likeliest first.
    pub try_instead: Vec<String>,
}

/// What can be wrong with a typed length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    /// Nothing was typed.
    Empty,
    /// More than [`MOST_CHARACTERS`].
    TooLong,
    /// The spot is no number, fraction, dash or unit.
    NotALength,
    /// The spot stands between two lengths, and one is asked for.
    TwoLengths,
    /// The field takes no sign, and there is one.
    SignRefused,
    /// The spot is a mark that no number stands before; or there is no number at all.
    NoNumber,
    /// The spot ends in its point or comma.
    NothingAfterPoint,
    /// The spot has several points or commas.
    SeveralPoints,
    /// The spot ends a short unit or begins a decimal: `12ft.3in`.
    PointUnclear,
    /// Three digits follow the spot's comma, which may set off thousands or decimals.
    CommaUnclear,
    /// A decimal comma, and feet or inches.
    CommaInInches,
    /// The spot has more than [`MOST_DECIMALS`].
    TooFine,
    /// The spot has decimals, and more follows it.
    DecimalsNotLast,
    /// The spot is not two whole numbers with a slash between.
    BadFraction,
    /// The spot divides by zero.
    ZeroDenominator,
    /// The spot is a whole inch or more.
    ImproperFraction,
    /// No tape is divided like the spot.
    NotOnATape,
    /// Something follows a fraction that is not a unit.
    FractionNotLast,
    /// The inch mark stands before the fraction.
    FractionAfterMark,
    /// A fraction stands before a foot mark.
    FractionOfAFoot,
    /// The spot is one number more than a length has.
    TooManyNumbers,
    /// The spot is a dash that joins nothing, or has spaces around it.
    StrayDash,
    /// Twelve inches or more after feet.
    InchesPastAFoot,
    /// Feet and inches in the wrong order, or one of them twice.
    MarksMixedUp,
    /// Feet or inches together with metric.
    SystemsMixed,
    /// Several numbers in a metric length.
    MetricInParts,
    /// A fraction in a metric length.
    MetricFraction,
    /// Feet and inches without a mark in a metric field.
    MarksMissing,
    /// It was understood, and lies outside [`limits::LENGTH`].
    OutOfRange,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.trouble != Trouble::Empty {
            write!(f, "“{}”: ", self.typed)?;
        }
        self.write_trouble(f)?;
        match (self.trouble, self.try_instead.as_slice()) {
            (Trouble::OutOfRange, _) => Ok(()),
            (_, []) => write!(f, " Type {}", self.bare.examples()),
            (_, fixes) => write!(f, " Type {}", fixes.join(" or ")),
        }
    }
}

impl Problem {
    fn write_trouble(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let piece = self.spot.as_ref().map_or("", |spot| spot.piece.as_str());
        match self.trouble {
            Trouble::Empty => write!(f, "nothing entered."),
            Trouble::TooLong => write!(f, "at most {MOST_CHARACTERS} characters."),
            Trouble::NotALength => write!(f, "“{piece}” is not part of a length."),
            Trouble::TwoLengths => write!(f, "one length is asked for, and “{piece}” stands between two."),
            Trouble::SignRefused => write!(f, "this length takes no sign."),
            Trouble::NoNumber if piece.is_empty() => write!(f, "there is no number in it."),
            Trouble::NoNumber => write!(f, "there is no number before “{piece}”."),
            Trouble::NothingAfterPoint => write!(f, "no digit follows “{piece}”."),
            Trouble::SeveralPoints => write!(f, "“{piece}” has more than one point or comma."),
            Trouble::PointUnclear => write!(f, "is the point a decimal point or the end of a short unit?"),
            Trouble::CommaUnclear => write!(f, "is the comma a decimal comma or a thousands mark?"),
            Trouble::CommaInInches => write!(f, "feet and inches take a point, not a comma."),
            Trouble::TooFine => write!(f, "at most {MOST_DECIMALS} decimals."),
            Trouble::DecimalsNotLast => write!(f, "“{piece}” has decimals, so nothing can follow it."),
            Trouble::BadFraction => write!(f, "“{piece}” is not a fraction like 7/8."),
            Trouble::ZeroDenominator => write!(f, "“{piece}” divides by zero."),
            Trouble::ImproperFraction => write!(f, "“{piece}” has a fraction of a whole inch or more."),
            Trouble::NotOnATape => {
                write!(f, "no tape has “{piece}”, only halves, thirds, quarters and so on to 64ths.")
            }
            Trouble::FractionNotLast => write!(f, "one fraction, and it comes last."),
            Trouble::FractionAfterMark => write!(f, "the inch mark comes after the fraction."),
            Trouble::FractionOfAFoot => write!(f, "is that a fraction of a foot or of an inch?"),
            Trouble::TooManyNumbers => write!(f, "“{piece}” is one number too many."),
            Trouble::StrayDash => write!(f, "a dash stands between two numbers, without spaces, as in 12-3-1/2."),
            Trouble::InchesPastAFoot => write!(f, "after feet come fewer than 12 inches."),
            Trouble::MarksMixedUp => write!(f, "feet come first, then inches, once each."),
            Trouble::SystemsMixed => write!(f, "feet and inches, or metric, but not both."),
            Trouble::MetricInParts => write!(f, "a metric length is one number and one unit."),
            Trouble::MetricFraction => write!(f, "metric lengths take decimals, not fractions."),
            Trouble::MarksMissing => {
                write!(f, "a bare number is in {} here; feet and inches need a mark.", self.bare.symbol())
            }
            Trouble::OutOfRange => write!(f, "{}", OutOfRange { limits: limits::LENGTH }),
        }
    }
}

impl std::error::Error for Problem {}

/// A trouble inside the parser: what is wrong, where, and what may have been meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Refusal {
    pub(super) trouble: Trouble,
    pub(super) span: Option<Span>,
    fixes: Vec<Fix>,
}

/// What may have been meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Fix {
    /// This in place of the span.
    Piece(String),
    /// This in place of everything but the sign.
    Whole(String),
}

impl Refusal {
    pub(super) const fn of_whole(trouble: Trouble) -> Self {
        Self { trouble, span: None, fixes: Vec::new() }
    }

    pub(super) const fn at(span: Span, trouble: Trouble) -> Self {
        Self { trouble, span: Some(span), fixes: Vec::new() }
    }

    /// Past [`limits::LENGTH`], or past what a sum can hold, which is further.
    pub(super) const fn out_of_range() -> Self {
        Self::of_whole(Trouble::OutOfRange)
    }

    pub(super) fn fixes(mut self, fixes: impl IntoIterator<Item = Fix>) -> Self {
        self.fixes.extend(fixes);
        self
    }

    /// What may have been meant, as whole texts; nobody has checked them yet.
    pub(super) fn candidates(&self, text: &str, sign: &str) -> Vec<String> {
        let whole = |fix: &Fix| match (fix, self.span) {
            (Fix::Piece(piece), Some(span)) => Some(span.spot(text).replaced_in(text, piece)),
            (Fix::Piece(_), None) => None,
            (Fix::Whole(whole), _) => Some(format!("{sign}{whole}")),
        };
        self.fixes.iter().filter_map(whole).collect()
    }
}
