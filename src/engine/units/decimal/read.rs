//! The reading of one number with an optional unit.

use super::{Fault, MOST_CHARACTERS, MOST_DECIMALS, Numeral, Problem, Quantity, Scale, Spot, Trouble, fixed};
use crate::engine::units::{OutOfRange, Typed};

/// A unit that can follow a number here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    Percent,
    Degrees(Scale),
    /// Degrees of an angle.
    OfTurn,
}

/// A trouble, where it is, and what may stand there instead.
struct Refusal {
    trouble: Trouble,
    spot: Option<Spot>,
    instead: Option<String>,
}

impl Refusal {
    const fn of_whole(trouble: Trouble) -> Self {
        Self { trouble, spot: None, instead: None }
    }

    const fn at(spot: Spot, trouble: Trouble) -> Self {
        Self { trouble, spot: Some(spot), instead: None }
    }

    fn or(self, instead: Option<String>) -> Self {
        Self { instead, ..self }
    }
}

/// Reads `text` as `quantity`; `make` turns hundredths of a unit into the value.
pub(super) fn parse<Q>(
    text: &str,
    quantity: Quantity,
    make: impl Fn(i64, Unit) -> Result<Q, OutOfRange>,
) -> Result<Typed<Q>, Problem> {
    let read = |text: &str| read(text, quantity, &make);
    read(text).map_err(|refusal| Problem {
        typed: shortened(text),
        quantity,
        try_instead: fix(text, &refusal).into_iter().filter(|fix| read(fix).is_ok()).collect(),
        spot: refusal.spot,
        trouble: refusal.trouble,
    })
}

/// As much of what was typed as a message can show.
pub(in crate::engine::units) fn shortened(text: &str) -> String {
    const SHOWN: usize = 24;
    let text = text.trim();
    if text.chars().nth(MOST_CHARACTERS).is_none() {
        return text.to_owned();
    }
    text.chars().take(SHOWN).chain(['…']).collect()
}

fn fix(text: &str, refusal: &Refusal) -> Option<String> {
    let (spot, instead) = (refusal.spot.as_ref()?, refusal.instead.as_ref()?);
    Some(spot.replaced_in(text, instead))
}

fn read<Q>(
    text: &str,
    quantity: Quantity,
    make: impl Fn(i64, Unit) -> Result<Q, OutOfRange>,
) -> Result<Typed<Q>, Refusal> {
    let typed = text.trim();
    if typed.is_empty() {
        return Err(Refusal::of_whole(Trouble::Empty));
    }
    if typed.chars().nth(MOST_CHARACTERS).is_some() {
        return Err(Refusal::of_whole(Trouble::TooLong));
    }
    let parts = Parts::of(text)?;
    let (unit, kept) = parts.unit(typed, quantity)?;
    if kept.chars().nth(MOST_CHARACTERS).is_some() {
        return Err(Refusal::of_whole(Trouble::TooLong));
    }
    let value = make(parts.hundredths()?, unit).map_err(|_| Refusal::of_whole(Trouble::OutOfRange))?;
    Ok(Typed::new(kept, value))
}

/// A typed number, taken apart.
struct Parts {
    negative: bool,
    numeral: Numeral,
    numeral_spot: Spot,
    /// What follows the number, trimmed.
    rest: Spot,
}

impl Parts {
    fn of(text: &str) -> Result<Self, Refusal> {
        let text = text.trim_end();
        let unsigned = text.trim_start();
        let negative = unsigned.starts_with(is_minus);
        let unsigned = unsigned.strip_prefix(|c| is_minus(c) || c == '+').unwrap_or(unsigned).trim_start();
        let (run, rest) = split_where(unsigned, |c| !Numeral::holds(c));
        let spot_of =
            |piece: &str, tail: &str| Spot { at: characters(text) - characters(tail), piece: piece.to_owned() };
        let numeral_spot = spot_of(run, unsigned);
        let rest = rest.trim_start();
        let rest = spot_of(rest, rest);
        let numeral = match Numeral::read(run) {
            Ok(numeral) => numeral,
            Err(fault) => return Err(refusal(fault, numeral_spot, rest)),
        };
        Ok(Self { negative, numeral, numeral_spot, rest })
    }

    /// The unit, and the text to keep, which names it.
    fn unit(&self, typed: &str, quantity: Quantity) -> Result<(Unit, String), Refusal> {
        let bare = quantity.bare_unit();
        let rest = self.rest.piece.to_ascii_lowercase();
        let found = match bare {
            Unit::Percent => percent(&rest).map(|named| (bare, if named { "" } else { " %" })),
            Unit::Degrees(scale) => degrees(&rest, scale),
            Unit::OfTurn => of_turn(&rest).map(|named| (bare, if named { "" } else { "°" })),
        };
        let (unit, missing) = found.ok_or_else(|| Refusal::at(self.rest.clone(), Trouble::UnknownUnit))?;
        Ok((unit, format!("{typed}{missing}")))
    }

    /// Hundredths of the unit. What does not fit is beyond every range, which then says so.
    fn hundredths(&self) -> Result<i64, Refusal> {
        let hundredths = self.numeral.exact().and_then(|value| value.times(100));
        if self.numeral.decimals() > MOST_DECIMALS {
            let rounded = hundredths.map(|value| shortest(value.nearest()));
            return Err(Refusal::at(self.numeral_spot.clone(), Trouble::TooFine).or(rounded));
        }
        let size = hundredths.and_then(|value| i64::try_from(value.nearest()).ok()).unwrap_or(i64::MAX);
        Ok(if self.negative { -size } else { size })
    }
}

fn refusal(fault: Fault, numeral: Spot, rest: Spot) -> Refusal {
    match fault {
        Fault::NoDigit if numeral.piece.is_empty() => Refusal::at(rest, Trouble::NotANumber),
        Fault::NoDigit => Refusal::at(numeral, Trouble::NotANumber),
        Fault::NothingAfterPoint(before) => Refusal::at(numeral, Trouble::NothingAfterPoint).or(Some(before)),
        Fault::SeveralPoints(meant) => Refusal::at(numeral, Trouble::SeveralPoints).or(meant),
    }
}

/// Is a percent sign there? Nothing, if something else is.
fn percent(rest: &str) -> Option<bool> {
    match rest {
        "" => Some(false),
        "%" | "percent" => Some(true),
        _ => None,
    }
}

/// Is a degree sign there? Nothing, if something else is.
fn of_turn(rest: &str) -> Option<bool> {
    match rest {
        "" => Some(false),
        "°" | "º" | "˚" | "deg" | "degrees" => Some(true),
        _ => None,
    }
}

/// The scale, and what the text to keep lacks of naming it.
fn degrees(rest: &str, bare: Scale) -> Option<(Unit, &'static str)> {
    let letters = rest.strip_prefix(['°', 'º', '˚']).unwrap_or(rest).trim_start();
    let (scale, missing) = match letters {
        "f" | "fahrenheit" | "℉" => (Scale::Fahrenheit, ""),
        "c" | "celsius" | "℃" => (Scale::Celsius, ""),
        "" if rest.is_empty() && bare == Scale::Fahrenheit => (bare, " °F"),
        "" if rest.is_empty() => (bare, " °C"),
        "" if bare == Scale::Fahrenheit => (bare, "F"),
        "" => (bare, "C"),
        _ => return None,
    };
    Some((Unit::Degrees(scale), missing))
}

/// Hundredths as a number with no more decimals than it needs.
fn shortest(hundredths: i128) -> String {
    let decimals = match hundredths {
        whole if whole % 100 == 0 => 0,
        tenths if tenths % 10 == 0 => 1,
        _ => 2,
    };
    fixed(hundredths, 100, decimals)
}

/// A minus sign, or a dash that a keyboard puts in its place.
pub(in crate::engine::units) const fn is_minus(c: char) -> bool {
    matches!(c, '-' | '\u{2010}' | '\u{2011}' | '\u{2013}' | '\u{2212}')
}

fn split_where(text: &str, ends: impl Fn(char) -> bool) -> (&str, &str) {
    let end = text.find(ends).unwrap_or(text.len());
    text.split_at_checked(end).unwrap_or((text, ""))
}

fn characters(text: &str) -> usize {
    text.chars().count()
}
