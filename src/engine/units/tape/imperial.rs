//! What feet, inches and fractions say.

use super::field::Unit;
use super::meaning::value;
use super::parse::{Fraction, Group, Number};
use super::problem::{Fix, Refusal, Trouble};
use super::span::Span;
use crate::engine::units::decimal::{Exact, Numeral};

/// What a tape is divided into. Any other denominator is more likely a slip of the
/// thumb than a measurement.
const TAPE_DIVISIONS: [i128; 7] = [2, 3, 4, 8, 16, 32, 64];

const INCHES_PER_FOOT: i128 = 12;

/// `12' 3 1/2"`: a group of feet and one of inches.
pub(super) fn feet_and_inches(feet: &Group, inches: &Group) -> Result<Exact, Refusal> {
    check(&feet.numbers)?;
    check(&inches.numbers)?;
    match feet.numbers.as_slice() {
        [Number::Plain(whole, _)] if whole.is_whole() => joined(whole, &inches.numbers),
        [Number::Plain(_, span)] => Err(Refusal::at(*span, Trouble::DecimalsNotLast)),
        [.., Number::Fraction(..)] => Err(Refusal::at(feet.span, Trouble::FractionOfAFoot)),
        _ => Err(Refusal::at(feet.span, Trouble::MarksMixedUp)),
    }
}

/// `12'`: a group of feet alone.
pub(super) fn feet(group: &Group) -> Result<Exact, Refusal> {
    check(&group.numbers)?;
    match group.numbers.as_slice() {
        [Number::Plain(feet, _)] => value(feet, Unit::Foot),
        [Number::Fraction(fraction, _)] => Err(fraction_of_a_foot(group, None, *fraction)),
        [Number::Plain(whole, _), Number::Fraction(fraction, _)] => {
            Err(fraction_of_a_foot(group, Some(whole), *fraction))
        }
        [first, rest @ ..] => {
            let rest: Vec<_> = rest.iter().map(Number::text).collect();
            let meant = format!("{}' {}\"", first.text(), rest.join(" "));
            Err(Refusal::at(group.span, Trouble::MarksMixedUp).fixes([Fix::Whole(meant)]))
        }
        [] => Err(Refusal::of_whole(Trouble::NoNumber)),
    }
}

/// `3 1/2"`, or feet first without a mark: `12 3 1/2"`.
pub(super) fn inches(group: &Group) -> Result<Exact, Refusal> {
    check(&group.numbers)?;
    match group.numbers.as_slice() {
        [Number::Plain(feet, _), rest @ ..] if matches!(rest, [Number::Plain(..), ..]) => joined(feet, rest),
        numbers => inches_alone(numbers),
    }
}

/// How the numbers of an unmarked group would be written with marks.
pub(super) fn with_marks(group: &Group) -> String {
    let text = |numbers: &[Number]| {
        let pieces: Vec<_> = numbers.iter().map(Number::text).collect();
        pieces.join(" ")
    };
    match group.numbers.as_slice() {
        [feet @ Number::Plain(..), rest @ ..] if matches!(rest, [Number::Plain(..), ..]) => {
            format!("{}' {}\"", feet.text(), text(rest))
        }
        numbers => format!("{}\"", text(numbers)),
    }
}

/// Points for commas, proper fractions of a tape, and only the last number in parts.
fn check(numbers: &[Number]) -> Result<(), Refusal> {
    let mut before: Option<&Number> = None;
    for number in numbers {
        match number {
            Number::Plain(numeral, span) => check_comma(numeral, *span)?,
            Number::Fraction(fraction, span) => check_fraction(*fraction, *span, before)?,
        }
        match before {
            Some(Number::Fraction(..)) => return Err(Refusal::at(number.span(), Trouble::FractionNotLast)),
            Some(Number::Plain(numeral, span)) if !numeral.is_whole() => {
                return Err(Refusal::at(*span, Trouble::DecimalsNotLast));
            }
            _ => before = Some(number),
        }
    }
    Ok(())
}

fn check_comma(numeral: &Numeral, span: Span) -> Result<(), Refusal> {
    if !numeral.has_comma() {
        return Ok(());
    }
    let without = (numeral.decimals() == 3).then(|| Fix::Piece(numeral.text().replace(',', "")));
    let decimal = Fix::Piece(numeral.with_point());
    Err(Refusal::at(span, Trouble::CommaInInches).fixes(without.into_iter().chain([decimal])))
}

fn check_fraction(fraction: Fraction, span: Span, before: Option<&Number>) -> Result<(), Refusal> {
    let Fraction { over, under } = fraction;
    if under == 0 {
        return Err(Refusal::at(span, Trouble::ZeroDenominator));
    }
    if over >= under {
        return Err(improper(fraction, span, before));
    }
    if !TAPE_DIVISIONS.contains(&under) {
        let close = TAPE_DIVISIONS.into_iter().find(|division| (division - under).abs() == 1 && over < *division);
        let meant = close.map(|division| Fix::Piece(format!("{over}/{division}")));
        return Err(Refusal::at(span, Trouble::NotOnATape).fixes(meant));
    }
    Ok(())
}

/// `31/2`, which may be meant as `3 1/2`, and `3 5/4`, which may be meant as `4 1/4`.
fn improper(fraction: Fraction, span: Span, before: Option<&Number>) -> Refusal {
    let (span, text, whole) = match before {
        Some(number @ Number::Plain(whole, first)) => (first.to(span), number.text(), whole_value(whole)),
        _ => (span, String::new(), Some(0)),
    };
    let spaced = missed_spaces(fraction).into_iter().map(|spaced| format!("{text} {spaced}").trim().to_owned());
    let over = whole.and_then(|whole| whole.checked_mul(fraction.under)?.checked_add(fraction.over));
    let carried = over.map(|over| mixed(over, fraction.under));
    Refusal::at(span, Trouble::ImproperFraction).fixes(spaced.chain(carried).map(Fix::Piece))
}

/// Where a space may have been missed: `147/16` → `14 7/16`. People reduce fractions,
/// so only odd numerators are likely.
fn missed_spaces(fraction: Fraction) -> Vec<String> {
    let Fraction { over, under } = fraction;
    let digits = over.to_string();
    let splits = (1..digits.len()).filter_map(|place| digits.split_at_checked(place));
    let likely =
        |part: &str| part.parse::<i128>().is_ok_and(|over| over % 2 == 1 && over < under) && !part.starts_with('0');
    splits.filter(|(_, part)| likely(part)).map(|(whole, part)| format!("{whole} {part}/{under}")).collect()
}

/// `5 1/2'`, which may be meant as `5' 6"` or as `5 1/2"`.
fn fraction_of_a_foot(group: &Group, feet: Option<&Numeral>, fraction: Fraction) -> Refusal {
    let feet = feet.map_or(String::new(), |feet| format!("{}' ", feet.text()));
    let inches = mixed(fraction.over * INCHES_PER_FOOT, fraction.under);
    let of_foot = format!("{feet}{inches}\"");
    let of_inch = format!("{}\"", group.text());
    Refusal::at(group.span, Trouble::FractionOfAFoot).fixes([Fix::Whole(of_foot), Fix::Whole(of_inch)])
}

/// Whole feet and the inches after them, which stay below a foot.
fn joined(feet: &Numeral, inches: &[Number]) -> Result<Exact, Refusal> {
    let rest = inches_alone(inches)?;
    if let [Number::Plain(whole, span), ..] = inches
        && whole_value(whole).is_none_or(|whole| whole >= INCHES_PER_FOOT)
    {
        let meant = carried(feet, whole, inches).map(Fix::Whole);
        return Err(Refusal::at(*span, Trouble::InchesPastAFoot).fixes(meant));
    }
    value(feet, Unit::Foot)?.plus(rest).ok_or_else(Refusal::out_of_range)
}

/// `12' 14 1/2"` as it would be written: `13' 2 1/2"`.
fn carried(feet: &Numeral, whole: &Numeral, inches: &[Number]) -> Option<String> {
    let past = whole_value(whole)?;
    let feet = whole_value(feet)?.checked_add(past / INCHES_PER_FOOT)?;
    let decimals = if whole.is_whole() { String::new() } else { format!(".{}", whole.decimal_digits()) };
    let fraction = match inches {
        [_, fraction] => format!(" {}", fraction.text()),
        _ => String::new(),
    };
    Some(format!("{feet}' {}{decimals}{fraction}\"", past % INCHES_PER_FOOT))
}

/// Inches that no feet precede: a number, a fraction, or both.
fn inches_alone(numbers: &[Number]) -> Result<Exact, Refusal> {
    match numbers {
        [Number::Plain(number, _)] => value(number, Unit::Inch),
        [Number::Fraction(fraction, _)] => part_of_an_inch(*fraction),
        [Number::Plain(whole, _), Number::Fraction(fraction, _)] => {
            value(whole, Unit::Inch)?.plus(part_of_an_inch(*fraction)?).ok_or_else(Refusal::out_of_range)
        }
        [.., last] => Err(Refusal::at(last.span(), Trouble::TooManyNumbers)),
        [] => Err(Refusal::of_whole(Trouble::NoNumber)),
    }
}

fn part_of_an_inch(fraction: Fraction) -> Result<Exact, Refusal> {
    let exact = Exact::ratio(fraction.over, fraction.under).and_then(|part| part.times(Unit::Inch.nanometres()));
    exact.ok_or_else(Refusal::out_of_range)
}

/// The whole part of a numeral; a numeral of decimals only has none.
fn whole_value(numeral: &Numeral) -> Option<i128> {
    if numeral.whole_digits().is_empty() { Some(0) } else { numeral.whole_digits().parse().ok() }
}

/// `over / under` as a whole number, a reduced fraction, or both.
fn mixed(over: i128, under: i128) -> String {
    let (whole, rest) = (over / under, over % under);
    let common = common_divisor(rest, under);
    match (whole, rest) {
        (whole, 0) => whole.to_string(),
        (0, rest) => format!("{}/{}", rest / common, under / common),
        (whole, rest) => format!("{whole} {}/{}", rest / common, under / common),
    }
}

const fn common_divisor(mut a: i128, mut b: i128) -> i128 {
    while a != 0 {
        (a, b) = (b % a, a);
    }
    b
}
