//! An amount of something that is no length, area, temperature or moisture: pounds a
//! square foot, inches of rain an hour, pieces, dollars. What it counts, the field says.

use super::decimal::{Fault, Numeral};
use super::limits;
use super::{OutOfRange, Typed};
use serde::{Deserialize, Serialize};

/// Storage units in one.
const PER_ONE: i64 = 1_000;

/// So many decimals are kept.
const MOST_DECIMALS: usize = 3;

/// A number of thousandths, from nought to a thousand million whole ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "i64", into = "i64")]
pub struct Amount(#[cfg_attr(not(target_arch = "wasm32"), schemars(range(min = 0, max = 1_000_000_000_000_i64)))] i64);

impl Amount {
    /// The most there is.
    pub const MOST: Self = Self(limits::AMOUNT.most);

    /// The nearest thousandth to a computed number, held in the range.
    pub fn nearest(number: f64) -> Self {
        Self(limits::AMOUNT.nearest(number * PER_ONE as f64))
    }

    /// So many whole ones.
    pub const fn whole(ones: u32) -> Self {
        Self(ones as i64 * PER_ONE)
    }

    /// So many thousandths.
    pub const fn thousandths(thousandths: u32) -> Self {
        Self(thousandths as i64)
    }

    /// The number, for formulas and drawing.
    pub fn get(self) -> f64 {
        self.0 as f64 / PER_ONE as f64
    }

    /// As it is read in print: `6.8`.
    pub fn shown(self) -> String {
        let (ones, rest) = (self.0 / PER_ONE, self.0 % PER_ONE);
        if rest == 0 { ones.to_string() } else { format!("{ones}.{rest:03}").trim_end_matches('0').to_owned() }
    }

    /// An amount as typed: `40`, `6.8`, `6,8`. A comma is a decimal comma.
    ///
    /// # Errors
    /// What is wrong and what would do, to be put after the field's name.
    pub fn parse(text: &str) -> Result<Typed<Self>, String> {
        let text = text.trim();
        let refused = |would_do: &str| format!("\"{text}\": {would_do}");
        if text.is_empty() || !text.chars().all(Numeral::holds) {
            return Err(refused("digits and a point are accepted, as 6.8"));
        }
        let numeral = Numeral::read(text).map_err(|fault| match fault {
            Fault::SeveralPoints(Some(meant)) => refused(&format!("leave out the thousands marks: {meant}")),
            Fault::NoDigit | Fault::NothingAfterPoint(_) | Fault::SeveralPoints(None) => {
                refused("digits and one point are accepted, as 6.8")
            }
        })?;
        if numeral.decimals() > MOST_DECIMALS {
            return Err(refused("three decimals are accepted"));
        }
        if numeral.has_comma() && numeral.decimals() == MOST_DECIMALS {
            return Err(refused("a comma before three digits reads two ways; type a point, or none"));
        }
        let digits = format!("{}{:0<3}", numeral.whole_digits(), numeral.decimal_digits());
        let thousandths = digits.parse().unwrap_or(i64::MAX);
        let value = Self::try_from(thousandths).map_err(|error| refused(&error.to_string()))?;
        Ok(Typed::new(text, value))
    }
}

impl TryFrom<i64> for Amount {
    type Error = OutOfRange;
    fn try_from(thousandths: i64) -> Result<Self, OutOfRange> {
        limits::AMOUNT.check(thousandths).map(Self)
    }
}

impl From<Amount> for i64 {
    fn from(amount: Amount) -> Self {
        amount.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_is_shown_reads_back(thousandths in 0_i64..=1_000_000_000_000) {
            let amount = Amount::try_from(thousandths).unwrap();
            prop_assert_eq!(Amount::parse(&amount.shown()).unwrap().value, amount);
        }

        #[test]
        fn any_text_is_the_amount_it_says_or_is_refused_by_name(
            text in prop_oneof!["[0-9]{0,13}[.,]?[0-9]{0,4}", "[0-9.,]{0,8}", "[0-9.,]{1,4} ?[-a-z]{1,3}", ".{0,8}"]
        ) {
            let text = text.trim();
            match (Amount::parse(text), by_hand(text)) {
                (Ok(typed), Some(thousandths)) => {
                    prop_assert_eq!(i64::from(typed.value), thousandths);
                    prop_assert_eq!(typed.typed, text);
                }
                (Err(words), None) => prop_assert!(words.starts_with(&format!("\"{text}\": ")), "{}", words),
                (parsed, by_hand) => prop_assert!(false, "{text}: {parsed:?} instead of {by_hand:?}"),
            }
        }
    }

    /// The thousandths that a text says, a digit at a time; nothing if it must be refused.
    fn by_hand(text: &str) -> Option<i64> {
        let (mut thousandths, mut mark, mut decimals) = (0_i128, None, 0_u32);
        for c in text.chars() {
            match c.to_digit(10) {
                Some(digit) => {
                    thousandths = thousandths * 10 + i128::from(digit) * 1_000;
                    decimals += u32::from(mark.is_some());
                }
                None if mark.is_none() && (c == '.' || c == ',') => mark = Some(c),
                None => return None,
            }
        }
        let is_whole = mark.is_none() && !text.is_empty();
        let reads_one_way = match mark {
            Some(',') => decimals < 3,
            _ => decimals <= 3,
        };
        let thousandths = i64::try_from(thousandths / 10_i128.pow(decimals)).ok()?;
        ((is_whole || decimals > 0) && reads_one_way && thousandths <= 1_000_000_000_000).then_some(thousandths)
    }

    #[test]
    fn the_most_is_a_thousand_million_and_three_decimals() {
        assert_eq!(Amount::parse("1000000000").unwrap().value, Amount::MOST);
        assert_eq!(Amount::parse("999999999.999").unwrap().value, Amount::try_from(999_999_999_999).unwrap());
        assert!(Amount::parse("1000000000.001").unwrap_err().contains("0 to 1000 million"));
        assert!(Amount::parse("6.8001").unwrap_err().contains("three decimals"));
        assert!(Amount::parse("6.").unwrap_err().contains("digits and one point"));
        assert!(Amount::parse(".").unwrap_err().contains("digits and one point"));
    }

    #[test]
    fn a_slip_is_told_with_what_would_do() {
        assert_eq!(Amount::parse("6,8").unwrap().value, Amount::thousandths(6_800));
        assert!(Amount::parse("1,200").unwrap_err().contains("reads two ways"));
        assert!(Amount::parse("1,200,000").unwrap_err().contains("1200000"));
        assert!(Amount::parse("40 psf").unwrap_err().contains("\"40 psf\""));
        assert!(Amount::parse("-3").is_err());
    }
}
