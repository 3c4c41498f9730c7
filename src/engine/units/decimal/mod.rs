//! Typed percentages, temperatures and angles, and how they are shown.
//!
//! ```ebnf
//! percentage  = number , [ "%" | "percent" ] ;
//! angle       = number , [ degree | "deg" | "degrees" ] ;
//! temperature = number , [ degree ] , [ "F" | "Fahrenheit" | "C" | "Celsius" ] ;
//! number      = [ sign ] , ( digits , [ point , digits ] | point , digits ) ;
//! point       = "." | "," ;
//! sign        = "-" | "−" | "–" | "+" ;
//! degree      = "°" | "º" | "˚" ;
//! ```
//!
//! Spaces (no-break ones too) may stand between the parts and around the whole, letters
//! are small or capital, and `℉` and `℃` will do. What comes without a unit takes the
//! field's, and the text kept says so: `68` is kept as `68 °F`. At most two decimals,
//! kept exactly: a third is refused, not rounded. A comma is always a decimal comma here,
//! since no value of these fields reaches a thousand.
//!
//! It never knows a screen, nor which field is being typed into: the caller puts the
//! field's name before a [`Problem`].

mod exact;
mod fixed;
mod numeral;
mod problem;
mod read;
mod shown;
#[cfg(test)]
pub(in crate::engine::units) mod table;
#[cfg(test)]
mod tests;

pub(in crate::engine::units) use exact::{Exact, nearest};
pub(in crate::engine::units) use fixed::fixed;
pub(in crate::engine::units) use numeral::{Fault, Numeral};
pub use problem::{Problem, Spot, Trouble};
pub(in crate::engine::units) use read::{is_minus, shortened};
pub use shown::{Decimals, format_moisture_content, format_relative_humidity, format_temperature};

use super::limits::{self, Limits};
use super::{Angle, MoistureContent, RelativeHumidity, Temperature, Typed};
use read::{Unit, parse};
use serde::{Deserialize, Serialize};

/// The longest text a field takes, its unit included.
pub const MOST_CHARACTERS: usize = 64;

/// The most decimals of a percentage or temperature: meters show one, tables two.
pub const MOST_DECIMALS: usize = 2;

/// Wood moisture content as typed: `18`, `18.5`, `18,5`, `18 %`.
///
/// # Errors
/// [`Problem`], with what would do.
pub fn parse_moisture_content(text: &str) -> Result<Typed<MoistureContent>, Problem> {
    parse(text, Quantity::MoistureContent, |hundredths, _| MoistureContent::try_hundredths(hundredths))
}

/// Relative humidity as typed: `80`, `80.5`, `80,5`, `80 %`.
///
/// # Errors
/// [`Problem`], with what would do.
pub fn parse_relative_humidity(text: &str) -> Result<Typed<RelativeHumidity>, Problem> {
    parse(text, Quantity::RelativeHumidity, |hundredths, _| RelativeHumidity::try_hundredths(hundredths))
}

/// A temperature as typed: `68`, `-4`, `68 °F`, `20,5 °C`. Without a scale of its own
/// it is in `bare`.
///
/// # Errors
/// [`Problem`], with what would do.
pub fn parse_temperature(text: &str, bare: Scale) -> Result<Typed<Temperature>, Problem> {
    parse(text, Quantity::Temperature(bare), |hundredths, unit| match unit {
        Unit::Degrees(Scale::Celsius) => Temperature::try_hundredths_c(hundredths),
        // Other units were refused before they could get here.
        Unit::Degrees(Scale::Fahrenheit) | Unit::Percent | Unit::OfTurn => Temperature::try_hundredths_f(hundredths),
    })
}

/// An angle between two walls as typed: `135`, `135.5`, `135°`, `135 deg`.
///
/// # Errors
/// [`Problem`], with what would do.
pub fn parse_angle(text: &str) -> Result<Typed<Angle>, Problem> {
    parse(text, Quantity::Angle, |hundredths, _| Angle::try_hundredths(hundredths))
}

/// A temperature scale: of a field, and of what is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Scale {
    /// Degrees Fahrenheit.
    #[default]
    Fahrenheit,
    /// Degrees Celsius.
    Celsius,
}

impl Scale {
    /// Every scale.
    pub const ALL: [Self; 2] = [Self::Fahrenheit, Self::Celsius];

    /// The scale in words, for a choice.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Fahrenheit => "Fahrenheit",
            Self::Celsius => "Celsius",
        }
    }

    /// How it follows a number.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Fahrenheit => "°F",
            Self::Celsius => "°C",
        }
    }
}

/// What a field takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Wood moisture content.
    MoistureContent,
    /// Relative humidity of air.
    RelativeHumidity,
    /// Temperature; a bare number is in this scale.
    Temperature(Scale),
    /// The angle between two walls.
    Angle,
}

impl Quantity {
    const fn bare_unit(self) -> Unit {
        match self {
            Self::MoistureContent | Self::RelativeHumidity => Unit::Percent,
            Self::Temperature(scale) => Unit::Degrees(scale),
            Self::Angle => Unit::OfTurn,
        }
    }

    const fn limits(self) -> Limits {
        match self {
            Self::MoistureContent => limits::MOISTURE_CONTENT,
            Self::RelativeHumidity => limits::HUMIDITY,
            Self::Temperature(_) => limits::TEMPERATURE,
            Self::Angle => limits::WALL_ANGLE,
        }
    }

    const fn examples(self) -> &'static str {
        match self {
            Self::MoistureContent => "a moisture content like 18 or 18.5",
            Self::RelativeHumidity => "a relative humidity like 80 or 80.5",
            Self::Temperature(Scale::Fahrenheit) => "a temperature like 68, 68.5 or 20 °C",
            Self::Temperature(Scale::Celsius) => "a temperature like 20, 20.5 or 68 °F",
            Self::Angle => "an angle like 90, 135 or 134.5",
        }
    }
}
