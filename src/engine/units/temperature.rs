//! Temperatures and temperature differences, which are two types: 10 °C warmer is
//! 18 °F warmer, but 10 °C is 50 °F.

use super::limits::{self, OutOfRange};
use serde::{Deserialize, Serialize};
use std::ops::{Add, Sub};

/// Storage units in one Celsius degree. A ninth of a microdegree: the largest unit
/// in which every temperature typed to six decimals is whole in both scales.
pub(super) const PER_CELSIUS: i64 = 9_000_000;
/// Storage units in one Fahrenheit degree.
pub(super) const PER_FAHRENHEIT: i64 = 5_000_000;

/// A temperature of air, wood or a surface, within [`limits::TEMPERATURE`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "TemperatureJson", into = "TemperatureJson")]
pub struct Temperature(i64);

/// How much warmer one thing is than another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TemperatureDifference(i64);

impl Temperature {
    /// Hundredths of a Fahrenheit degree, as a keypad gives them.
    ///
    /// # Errors
    /// [`OutOfRange`] outside [`limits::TEMPERATURE`].
    pub const fn try_hundredths_f(hundredths: i64) -> Result<Self, OutOfRange> {
        let above_freezing = hundredths.saturating_sub(3_200);
        Self::try_units(above_freezing.saturating_mul(PER_FAHRENHEIT / 100))
    }

    /// Hundredths of a Celsius degree, as a keypad gives them.
    ///
    /// # Errors
    /// [`OutOfRange`] outside [`limits::TEMPERATURE`].
    pub const fn try_hundredths_c(hundredths: i64) -> Result<Self, OutOfRange> {
        Self::try_units(hundredths.saturating_mul(PER_CELSIUS / 100))
    }

    /// Whole Fahrenheit degrees, held in [`limits::TEMPERATURE`].
    pub const fn fahrenheit(degrees: i32) -> Self {
        Self(limits::TEMPERATURE.clamp((degrees as i64 - 32) * PER_FAHRENHEIT))
    }

    /// Whole Celsius degrees, held in [`limits::TEMPERATURE`].
    pub const fn celsius(degrees: i32) -> Self {
        Self(limits::TEMPERATURE.clamp(degrees as i64 * PER_CELSIUS))
    }

    /// The nearest storage unit to a computed Celsius temperature (1e-7 °C), held
    /// in [`limits::TEMPERATURE`].
    pub fn from_celsius_f64(degrees: f64) -> Self {
        Self(limits::TEMPERATURE.nearest(degrees * PER_CELSIUS as f64))
    }

    /// Celsius degrees, for formulas and drawing.
    pub fn to_celsius(self) -> f64 {
        self.0 as f64 / PER_CELSIUS as f64
    }

    /// Fahrenheit degrees, for formulas and drawing.
    pub fn to_fahrenheit(self) -> f64 {
        // Added before the division, so that what was typed comes back unblurred.
        (self.0 + 32 * PER_FAHRENHEIT) as f64 / PER_FAHRENHEIT as f64
    }

    /// Whole storage units above 0 °C, for exact writing.
    pub(super) const fn units(self) -> i64 {
        self.0
    }

    const fn try_units(units: i64) -> Result<Self, OutOfRange> {
        match limits::TEMPERATURE.check(units) {
            Ok(units) => Ok(Self(units)),
            Err(error) => Err(error),
        }
    }
}

impl TemperatureDifference {
    /// Whole Fahrenheit degrees of difference.
    pub const fn fahrenheit(degrees: i32) -> Self {
        Self(degrees as i64 * PER_FAHRENHEIT)
    }

    /// Whole Celsius degrees of difference.
    pub const fn celsius(degrees: i32) -> Self {
        Self(degrees as i64 * PER_CELSIUS)
    }

    /// Celsius degrees of difference, for formulas and drawing.
    pub fn to_celsius(self) -> f64 {
        self.0 as f64 / PER_CELSIUS as f64
    }

    /// Fahrenheit degrees of difference, for formulas and drawing.
    pub fn to_fahrenheit(self) -> f64 {
        self.0 as f64 / PER_FAHRENHEIT as f64
    }
}

impl Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}

impl Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, difference: TemperatureDifference) -> Self {
        Self(limits::TEMPERATURE.clamp(self.0.saturating_add(difference.0)))
    }
}

/// How a temperature stands in a job file: `{"f": 68.5}` or `{"c": 20.3}`,
/// whichever scale it is short in.
#[derive(Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
enum TemperatureJson {
    /// Degrees Fahrenheit.
    F(f64),
    /// Degrees Celsius.
    C(f64),
}

impl From<Temperature> for TemperatureJson {
    fn from(temperature: Temperature) -> Self {
        if temperature.0 % (PER_FAHRENHEIT / 100) == 0 {
            Self::F(temperature.to_fahrenheit())
        } else {
            Self::C(temperature.to_celsius())
        }
    }
}

impl TryFrom<TemperatureJson> for Temperature {
    type Error = OutOfRange;
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates, and the range is checked after")]
    fn try_from(json: TemperatureJson) -> Result<Self, OutOfRange> {
        let units = match json {
            TemperatureJson::F(degrees) => (degrees - 32.0) * PER_FAHRENHEIT as f64,
            TemperatureJson::C(degrees) => degrees * PER_CELSIUS as f64,
        };
        if units.is_nan() {
            return Err(OutOfRange { limits: limits::TEMPERATURE });
        }
        Self::try_units(libm::round(units) as i64)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_scales_meet_where_they_should() {
        assert_eq!(Temperature::fahrenheit(68), Temperature::celsius(20));
        assert_eq!(Temperature::fahrenheit(-40), Temperature::celsius(-40));
        assert_eq!(Temperature::celsius(10) + TemperatureDifference::fahrenheit(18), Temperature::celsius(20));
    }

    proptest! {
        #[test]
        fn what_was_typed_survives_json(hundredths in -7_600_i64..=21_200, fahrenheit: bool) {
            let typed = if fahrenheit {
                Temperature::try_hundredths_f(hundredths)
            } else {
                Temperature::try_hundredths_c((hundredths - 3_200) * 5 / 9)
            };
            let typed = typed.unwrap();
            let json = serde_json::to_string(&typed).unwrap();
            prop_assert!(json.len() < 14, "a short number stays short: {json}");
            prop_assert_eq!(serde_json::from_str::<Temperature>(&json).unwrap(), typed);
        }
    }
}
