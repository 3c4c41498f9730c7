//! What a metric length says: one number with decimals.

use super::field::Unit;
use super::meaning::value;
use super::parse::{Fraction, Group, Number};
use super::problem::{Fix, Refusal, Trouble};
use super::span::Span;
use crate::engine::units::decimal::{Exact, Numeral, fixed};

/// `3745 mm`.
pub(super) fn metric(group: &Group, unit: Unit) -> Result<Exact, Refusal> {
    match group.numbers.as_slice() {
        [Number::Plain(number, span)] if is_unclear(number) => Err(comma_unclear(number, *span, unit)),
        [Number::Plain(number, _)] => value(number, unit),
        [Number::Fraction(part, _)] => Err(no_fraction(group, None, *part, unit)),
        [Number::Plain(whole, _), Number::Fraction(part, _)] => Err(no_fraction(group, Some(whole), *part, unit)),
        [.., Number::Fraction(..)] => Err(Refusal::at(group.span, Trouble::MetricFraction)),
        numbers => {
            let meant = without_gaps(numbers).map(|number| with_unit(&number, unit));
            Err(Refusal::at(group.span, Trouble::MetricInParts).fixes(meant))
        }
    }
}

/// `3 745` → `3745`: the number meant, if spaces set off its thousands.
pub(super) fn without_gaps(numbers: &[Number]) -> Option<String> {
    let mut joined = String::new();
    for (place, number) in numbers.iter().enumerate() {
        let Number::Plain(numeral, _) = number else { return None };
        let (first, last) = (place == 0, place + 1 == numbers.len());
        let in_threes = if first { numeral.is_whole() } else { numeral.whole_digits().len() == 3 };
        if !in_threes || !(last || numeral.is_whole()) {
            return None;
        }
        joined.push_str(&numeral.with_point());
    }
    (numbers.len() > 1).then_some(joined)
}

/// `3,745` is three metres in one country and three thousand in the next.
fn is_unclear(number: &Numeral) -> bool {
    number.has_comma() && number.decimals() == 3
}

fn comma_unclear(number: &Numeral, span: Span, unit: Unit) -> Refusal {
    let thousands = number.whole_digits().contains(|digit| digit != '0').then(|| number.text().replace(',', ""));
    let meant = thousands.into_iter().chain([number.with_point()]).map(|number| with_unit(&number, unit));
    Refusal::at(span, Trouble::CommaUnclear).fixes(meant)
}

/// `12 1/2 mm`, which is `12.5 mm`.
fn no_fraction(group: &Group, whole: Option<&Numeral>, part: Fraction, unit: Unit) -> Refusal {
    let meant = in_decimals(whole, part).map(|number| with_unit(&number, unit));
    Refusal::at(group.span, Trouble::MetricFraction).fixes(meant)
}

/// A mixed number in up to three decimals, if they hold it.
fn in_decimals(whole: Option<&Numeral>, part: Fraction) -> Option<String> {
    const PLACES: [(u32, i128); 4] = [(0, 1), (1, 10), (2, 100), (3, 1000)];
    let whole = whole.map_or(Some(Exact::whole(0)), Numeral::exact)?;
    let sum = whole.plus(Exact::ratio(part.over, part.under)?)?;
    let (places, scale, scaled) =
        PLACES.into_iter().find_map(|(places, scale)| Some((places, scale, sum.times(scale)?.as_whole()?)))?;
    Some(fixed(scaled, scale, places))
}

fn with_unit(number: &str, unit: Unit) -> Fix {
    Fix::Whole(format!("{number} {}", unit.symbol()))
}
