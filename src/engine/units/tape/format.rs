//! How lengths are written and spoken.

use super::style::{LengthStyle, ShownUnit};
use crate::engine::units::Length;
use crate::engine::units::decimal::{fixed, nearest};
use std::fmt;

/// What stands before a shown length that is not exactly the length: `~12' 3 1/2"`.
pub const ROUNDED_MARK: char = '~';

/// A length as it is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shown {
    /// The text, with [`ROUNDED_MARK`] before it if it is rounded.
    pub text: String,
    /// Is it not exactly the length?
    pub rounded: bool,
}

impl Shown {
    /// The text without [`ROUNDED_MARK`]; [`parse`](super::parse) reads it.
    pub fn unmarked(&self) -> &str {
        self.text.strip_prefix(ROUNDED_MARK).unwrap_or(&self.text)
    }
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text)
    }
}

/// A length as a drawing has it: `12' 3 1/2"`, `5' 0"`, `3 1/2"`, `0"`, `-1/8"`, or in
/// metric `3745 mm`, `374.5 cm`, `3.745 m`.
///
/// Rounded to the nearest step of the style, half away from zero. Fractions are
/// reduced. Under a foot there is no feet part, and what rounds to nothing has no sign.
pub fn format(length: Length, style: LengthStyle) -> Shown {
    let steps = Steps::of(length, style);
    let text = match style.unit {
        ShownUnit::FeetInches | ShownUnit::Inches => steps.tape(style).written(steps.sign("-")),
        ShownUnit::Millimetres => steps.metric(0, "mm"),
        ShownUnit::Centimetres => steps.metric(1, "cm"),
        ShownUnit::Metres => steps.metric(3, "m"),
    };
    let mark = if steps.rounded { String::from(ROUNDED_MARK) } else { String::new() };
    Shown { text: format!("{mark}{text}"), rounded: steps.rounded }
}

/// A range of lengths as a refusal says it: `1" to 20' 0" is accepted`.
pub fn accepted(least: Length, most: Length) -> String {
    let shown = |length: Length| format(length, LengthStyle::default().as_fine_as(length)).text;
    format!("{} to {} is accepted", shown(least), shown(most))
}

/// A length as a screen reader may say it: `12 feet 3 and 1/2 inches`, `1 foot`,
/// `about 3745 millimetres`, `minus 1/8 inch`. Rounded like [`format`](format()), then with
/// `about` before it.
pub fn speak(length: Length, style: LengthStyle) -> String {
    let steps = Steps::of(length, style);
    let (about, minus) = (if steps.rounded { "about " } else { "" }, steps.sign("minus "));
    let size = Steps { count: steps.count.abs(), ..steps };
    let words = match style.unit {
        ShownUnit::FeetInches | ShownUnit::Inches => size.tape(style).spoken(),
        ShownUnit::Millimetres => size.spoken_metric(0, "millimetre"),
        ShownUnit::Centimetres => size.spoken_metric(1, "centimetre"),
        ShownUnit::Metres => size.spoken_metric(3, "metre"),
    };
    format!("{about}{minus}{words}")
}

/// A length counted in whole steps of a style.
#[derive(Clone, Copy)]
struct Steps {
    count: i128,
    rounded: bool,
}

impl Steps {
    fn of(length: Length, style: LengthStyle) -> Self {
        let (nm, step) = (i128::from(length.to_nm()), i128::from(style.step_length().to_nm()));
        let count = nearest(nm, step);
        Self { count, rounded: count * step != nm }
    }

    const fn sign(self, minus: &'static str) -> &'static str {
        if self.count < 0 { minus } else { "" }
    }

    /// Millimetres in a unit of `10^decimals` millimetres.
    fn metric(self, decimals: u32, unit: &str) -> String {
        format!("{} {unit}", fixed(self.count, 10_i128.pow(decimals), decimals))
    }

    fn spoken_metric(self, decimals: u32, unit: &str) -> String {
        let one = self.count == 10_i128.pow(decimals);
        let number = if one { "1".to_owned() } else { fixed(self.count, 10_i128.pow(decimals), decimals) };
        format!("{number} {unit}{}", if one { "" } else { "s" })
    }

    fn tape(self, style: LengthStyle) -> Tape {
        let per_inch = i128::from(style.step.per_inch());
        let (inches, part) = (self.count.abs() / per_inch, self.count.abs() % per_inch);
        let per_foot = if style.unit == ShownUnit::FeetInches { 12 } else { i128::MAX };
        // A power of two over a power of two: halving both while both are even reduces it.
        let halvings = part.trailing_zeros().min(per_inch.trailing_zeros());
        Tape {
            feet: inches / per_foot,
            inches: inches % per_foot,
            fraction: (part != 0).then(|| (part >> halvings, per_inch >> halvings)),
        }
    }
}

/// The size of a length as a tape shows it. Without feet, the inches have no bound.
struct Tape {
    feet: i128,
    inches: i128,
    fraction: Option<(i128, i128)>,
}

impl Tape {
    fn written(&self, sign: &str) -> String {
        let feet = if self.feet == 0 { String::new() } else { format!("{}' ", self.feet) };
        let inches = match self.fraction {
            None => self.inches.to_string(),
            // No lone `0` before a fraction, except after feet, where carpenters write it.
            Some((over, under)) if self.inches == 0 && self.feet == 0 => format!("{over}/{under}"),
            Some((over, under)) => format!("{} {over}/{under}", self.inches),
        };
        format!("{sign}{feet}{inches}\"")
    }

    fn spoken(&self) -> String {
        let feet = match self.feet {
            0 => None,
            1 => Some("1 foot".to_owned()),
            feet => Some(format!("{feet} feet")),
        };
        let parts: Vec<_> = feet.into_iter().chain(self.spoken_inches()).collect();
        parts.join(" ")
    }

    /// Nothing after whole feet.
    fn spoken_inches(&self) -> Option<String> {
        match (self.inches, self.fraction) {
            (0, None) if self.feet != 0 => None,
            (1, None) => Some("1 inch".to_owned()),
            (inches, None) => Some(format!("{inches} inches")),
            (0, Some((over, under))) => Some(format!("{over}/{under} inch")),
            (inches, Some((over, under))) => Some(format!("{inches} and {over}/{under} inches")),
        }
    }
}
