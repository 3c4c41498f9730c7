//! What the groups of a typed length say together.

use super::field::{BareUnit, Unit};
use super::parse::{Group, Number};
use super::problem::{Fix, Refusal, Trouble};
use super::{MOST_DECIMALS, imperial, metric};
use crate::engine::units::decimal::{Exact, Numeral};

/// The length in nanometres.
pub(super) fn nanometres(groups: &[Group], bare: BareUnit) -> Result<Exact, Refusal> {
    check_fineness(groups)?;
    match groups {
        [] => Err(Refusal::of_whole(Trouble::NoNumber)),
        [only] => one_group(only, bare),
        [first, second] => two_groups(first, second),
        [feet, inches, last] if feet.unit == Some(Unit::Foot) && is_fraction_after_mark(inches, last) => {
            let meant = format!("{}' {} {}\"", feet.text(), inches.text(), last.text());
            Err(Refusal::at(last.span, Trouble::FractionAfterMark).fixes([Fix::Whole(meant)]))
        }
        [_, _, third, ..] => Err(Refusal::at(third.span, Trouble::TooManyNumbers)),
    }
}

/// A numeral in nanometres.
pub(super) fn value(numeral: &Numeral, unit: Unit) -> Result<Exact, Refusal> {
    let exact = numeral.exact().and_then(|value| value.times(unit.nanometres()));
    exact.ok_or_else(Refusal::out_of_range)
}

fn check_fineness(groups: &[Group]) -> Result<(), Refusal> {
    for number in groups.iter().flat_map(|group| &group.numbers) {
        if let Number::Plain(numeral, span) = number
            && numeral.decimals() > MOST_DECIMALS
        {
            return Err(Refusal::at(*span, Trouble::TooFine));
        }
    }
    Ok(())
}

fn one_group(group: &Group, bare: BareUnit) -> Result<Exact, Refusal> {
    match group.unit {
        Some(Unit::Foot) => imperial::feet(group),
        Some(Unit::Inch) => imperial::inches(group),
        Some(unit) => metric::metric(group, unit),
        None if bare == BareUnit::Inches => imperial::inches(group),
        None => bare_metric(group, bare),
    }
}

/// Without a unit in a metric field: one number, and nothing that looks like a tape.
fn bare_metric(group: &Group, bare: BareUnit) -> Result<Exact, Refusal> {
    let one_number = matches!(group.numbers.as_slice(), [Number::Plain(..)]);
    if one_number || metric::without_gaps(&group.numbers).is_some() {
        return metric::metric(group, bare.unit());
    }
    let meant = Fix::Whole(imperial::with_marks(group));
    Err(Refusal::at(group.span, Trouble::MarksMissing).fixes([meant]))
}

fn two_groups(first: &Group, second: &Group) -> Result<Exact, Refusal> {
    let whole = first.span.to(second.span);
    match (first.unit, second.unit) {
        (Some(Unit::Foot), Some(Unit::Inch) | None) => imperial::feet_and_inches(first, second),
        (Some(one), Some(other)) if one.is_metric() != other.is_metric() => {
            Err(Refusal::at(whole, Trouble::SystemsMixed))
        }
        (Some(one), _) if one.is_metric() => Err(Refusal::at(whole, Trouble::MetricInParts)),
        _ if is_fraction_after_mark(first, second) => {
            let meant = format!("{} {}\"", first.text(), second.text());
            Err(Refusal::at(second.span, Trouble::FractionAfterMark).fixes([Fix::Whole(meant)]))
        }
        (one, other) => {
            let swapped = one == Some(Unit::Inch) && other == Some(Unit::Foot);
            let (feet, inches) = if swapped { (second, first) } else { (first, second) };
            let meant = format!("{}' {}\"", feet.text(), inches.text());
            Err(Refusal::at(whole, Trouble::MarksMixedUp).fixes([Fix::Whole(meant)]))
        }
    }
}

/// `3" 1/2`.
fn is_fraction_after_mark(inches: &Group, last: &Group) -> bool {
    let inch_or_none = matches!(last.unit, Some(Unit::Inch) | None);
    inches.unit == Some(Unit::Inch) && inch_or_none && matches!(last.numbers.as_slice(), [Number::Fraction(..)])
}
