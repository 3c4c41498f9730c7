//! How percentages and temperatures are written.

use super::{Scale, fixed};
use crate::engine::units::percent::PER_PERCENT;
use crate::engine::units::temperature::{PER_CELSIUS, PER_FAHRENHEIT};
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};

/// To how many decimals a value is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Decimals {
    /// None.
    Whole,
    /// One.
    Tenths,
    /// Two.
    Hundredths,
}

impl Decimals {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::Whole, Self::Tenths, Self::Hundredths];

    const fn count(self) -> u32 {
        match self {
            Self::Whole => 0,
            Self::Tenths => 1,
            Self::Hundredths => 2,
        }
    }
}

/// A moisture content as `18.5 %`, rounded half away from zero.
pub fn format_moisture_content(value: MoistureContent, decimals: Decimals) -> String {
    percentage(value.units(), decimals)
}

/// A relative humidity as `80 %`, rounded half away from zero.
pub fn format_relative_humidity(value: RelativeHumidity, decimals: Decimals) -> String {
    percentage(value.units(), decimals)
}

/// A temperature as `68 °F`, rounded half away from zero, never `-0`.
pub fn format_temperature(value: Temperature, scale: Scale, decimals: Decimals) -> String {
    let (units, per_degree) = match scale {
        Scale::Fahrenheit => (value.units() + 32 * PER_FAHRENHEIT, PER_FAHRENHEIT),
        Scale::Celsius => (value.units(), PER_CELSIUS),
    };
    format!("{} {}", written(units, per_degree, decimals), scale.symbol())
}

fn percentage(units: i64, decimals: Decimals) -> String {
    format!("{} %", written(units, PER_PERCENT, decimals))
}

fn written(units: i64, per_one: i64, decimals: Decimals) -> String {
    fixed(i128::from(units), i128::from(per_one), decimals.count())
}
