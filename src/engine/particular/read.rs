//! What was typed into a form becomes a particular, or is refused in words.

use super::{Item, Part, Particular, Takes, Value, list};
use crate::engine::entry::Label;
use crate::engine::units::tape::{self, BareUnit, Sign};
use crate::engine::units::{Amount, Length, Typed};

/// The item that is kept under these words.
pub fn item_of(what: &str) -> Option<Item> {
    list::all().find(|item| item.what == what)
}

/// What was typed for an item of a part.
///
/// # Errors
/// A sentence with the field, the value and what would be accepted.
pub fn stated(of: Part, item: &Item, typed: &str, bare: BareUnit) -> Result<Particular, String> {
    let field = format!("{}, {}", of.name(), item.what);
    let is = value(item, typed, bare).map_err(|why| format!("{field}: {why}"))?;
    Ok(Particular { of, what: Label::fitted(item.what), is })
}

fn value(item: &Item, typed: &str, bare: BareUnit) -> Result<Value, String> {
    let value = match item.takes {
        Takes::Length { .. } => {
            let length = tape::parse(typed, bare, Sign::Refused).map_err(|problem| problem.to_string())?;
            Value::Length(length)
        }
        Takes::Amount { .. } => Value::Amount(Amount::parse(typed)?),
        Takes::OneOf(_) | Takes::Words => {
            let words = Label::new(typed).map_err(|error| error.to_string())?;
            if words.is_empty() {
                return Err("nothing was typed".to_owned());
            }
            Value::Words(words)
        }
    };
    if item.allows(&value) { Ok(value) } else { Err(format!("\"{}\": {}", value.typed(), item.accepts())) }
}

impl Item {
    /// Is this an answer, and in its range?
    pub fn allows(&self, value: &Value) -> bool {
        match (self.takes, value) {
            (Takes::Length { .. }, Value::Length(typed)) => self.holds_length(typed),
            (Takes::Amount { .. }, Value::Amount(typed)) => self.holds_amount(typed),
            (Takes::OneOf(words), Value::Words(said)) => words.contains(&said.as_str()),
            (Takes::Words, Value::Words(_)) => true,
            _ => false,
        }
    }

    fn holds_length(&self, typed: &Typed<Length>) -> bool {
        matches!(self.takes, Takes::Length { least, most } if (least..=most).contains(&typed.value))
    }

    fn holds_amount(&self, typed: &Typed<Amount>) -> bool {
        let Takes::Amount { least, most, .. } = self.takes else { return false };
        (Amount::thousandths(least)..=Amount::whole(most)).contains(&typed.value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn nonsense_is_refused_with_field_value_and_what_would_do() {
        let refused = |item: &Item, typed: &str| stated(Part::House, item, typed, BareUnit::Inches).unwrap_err();
        assert_eq!(refused(&list::RAIN, "60"), "House, rain: \"60\": 0.1 to 30 inches an hour is accepted");
        assert!(refused(&list::DEPTH, "40").contains("2\" to 2' 0\" is accepted"), "{}", refused(&list::DEPTH, "40"));
        assert!(refused(&list::SPECIES, "oak").contains("Hem-fir"));
        assert!(refused(&list::SISTER_LUMBER, " ").contains("nothing was typed"));
        assert!(refused(&list::DEPTH, "seven").starts_with("House, depth: "));
    }

    proptest! {
        #[test]
        fn whatever_is_typed_is_kept_as_typed_or_refused(at in 0..70_usize, typed in ".{0,30}") {
            let items: Vec<_> = list::all().collect();
            let item = items[at % items.len()];
            match stated(Part::Joists, &item, &typed, BareUnit::Inches) {
                Ok(particular) => prop_assert!(item.allows(&particular.is)),
                Err(words) => {
                    let begins = words.starts_with(&format!("All joists, {}: ", item.what));
                    prop_assert!(begins, "{}", words);
                }
            }
        }
    }
}
