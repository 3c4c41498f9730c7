//! How much vapor air holds: as a pressure, and per pound of dry air.

use super::{Air, Altitude, Pressure, shown};
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{Limits, Temperature};

/// The temperatures between which the saturation pressure was compared with an
/// independent program ([`Source::SaturationCheck`]): 34 to 100 °F.
const CHECKED: [Temperature; 2] = [Temperature::fahrenheit(34), Temperature::fahrenheit(100)];

/// Magnus's factor; pure number. Source: [`Source::SaturationPressure`].
const B: f64 = 17.625;
/// Magnus's offset, in Celsius degrees. Source: [`Source::SaturationPressure`]. A code that says 234.04
/// has two digits swapped.
const C: f64 = 243.04;
/// Pascals over water at 0 °C. Source: [`Source::SaturationPressure`].
const SATURATION_AT_FREEZING: f64 = 610.94;

/// Grains in one pound.
const GRAINS_PER_POUND: f64 = 7_000.0;

/// A water molecule's mass over that of air's mean one; pure number.
/// Source: [`Source::HumidityRatio`].
const WATER_TO_AIR: f64 = 0.621_945;

/// Humidity ratios, in micrograms of vapor per kilogram of dry air. The top is a
/// fence, not a fact: at the boiling point the ratio grows without end.
const RATIO: Limits =
    Limits { what: "humidity ratio", least: 0, most: 10_000_000_000, words: "0 to 10 lb of vapor per lb of dry air" };

/// Vapor per mass of dry air, in whole micrograms per kilogram. Unlike relative
/// humidity it stays the same when air only warms or cools.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HumidityRatio(i64);

impl HumidityRatio {
    /// The ratio of `air` at `pressure`: W = 0.621945 pv / (p - pv). Air at or past
    /// its boiling point is held at the top of the range.
    /// Source: [`Source::HumidityRatio`].
    pub fn of(air: Air, pressure: Pressure) -> Self {
        let vapour = vapour_pascals(air);
        let dry = pressure.to_pascals() - vapour;
        if dry <= 0.0 {
            return Self(RATIO.most);
        }
        Self(RATIO.nearest(WATER_TO_AIR * vapour / dry * 1e9))
    }

    /// Grains of vapor per pound of dry air, for showing.
    pub fn to_grains_per_pound(self) -> f64 {
        self.0 as f64 / 1e9 * GRAINS_PER_POUND
    }

    /// Grams of vapor per kilogram of dry air, for showing.
    pub fn to_grams_per_kilogram(self) -> f64 {
        self.0 as f64 / 1e6
    }
}

/// How much vapor `air` holds at `altitude`, with reasons; sea level is assumed when
/// the altitude is not known, and shown as assumed.
/// Source: [`Source::HumidityRatio`], [`Source::SaturationPressure`].
pub fn humidity_ratio(air: Air, altitude: Option<Altitude>) -> Known<HumidityRatio> {
    let site = altitude.unwrap_or(Altitude::SEA_LEVEL);
    let mut sources = vec![Source::HumidityRatio, Source::SaturationPressure];
    if site != Altitude::SEA_LEVEL {
        sources.push(Source::StandardAtmosphere);
    }
    let why = Why::rule("Vapor pressure over the pressure of the dry air, times 0.621945.", &sources)
        .with("air temperature", shown::temperature(air.temperature))
        .with("relative humidity", shown::humidity(air.humidity))
        .with("altitude", shown::altitude(site));
    Known {
        value: HumidityRatio::of(air, site.standard_pressure()),
        assumed: sea_level_assumed(altitude),
        doubts: range_doubts([air.temperature]),
        why,
    }
}

/// The pressure of the vapor in `air`. Source: [`Source::SaturationPressure`].
pub fn vapour_pressure(air: Air) -> Pressure {
    Pressure::from_pascals_f64(vapour_pascals(air))
}

/// The vapor pressure over water at `temperature`, beyond which vapor condenses.
/// Source: [`Source::SaturationPressure`].
pub fn saturation_pressure(temperature: Temperature) -> Pressure {
    Pressure::from_pascals_f64(saturation_pascals(temperature))
}

/// The exponent of the saturation pressure at `celsius`; its two constants are those
/// of [`Source::SaturationPressure`].
pub(super) fn exponent(celsius: f64) -> f64 {
    B * celsius / (celsius + C)
}

/// The temperature with that exponent, in Celsius: [`exponent`] the other way round.
pub(super) fn celsius_of_exponent(exponent: f64) -> f64 {
    C * exponent / (B - exponent)
}

pub(super) fn saturation_pascals(temperature: Temperature) -> f64 {
    SATURATION_AT_FREEZING * libm::exp(exponent(temperature.to_celsius()))
}

pub(super) fn vapour_pascals(air: Air) -> f64 {
    saturation_pascals(air.temperature) * air.humidity.to_percent() / 100.0
}

/// The doubt that vapor sums at these temperatures carry, if any is out of the
/// range in which they were checked.
pub(super) fn range_doubts(temperatures: impl IntoIterator<Item = Temperature>) -> Vec<String> {
    let [coldest, warmest] = CHECKED;
    let outside = |t: Temperature| t < coldest || t > warmest;
    if temperatures.into_iter().any(outside) {
        vec![Source::SaturationCheck.noted("Outside 34 to 100 °F, where the vapor sums were not checked")]
    } else {
        Vec::new()
    }
}

/// The assumption that a figure makes when nobody said how high the house stands.
pub(super) fn sea_level_assumed(altitude: Option<Altitude>) -> Vec<String> {
    let text = "Sea level, since the altitude is not known: at 5000 ft the same air holds about 20 % more grains";
    if altitude.is_some() { Vec::new() } else { vec![text.to_owned()] }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::units::RelativeHumidity;

    #[test]
    fn boiling_is_held_at_the_fence() {
        let steam = Air { temperature: Temperature::celsius(100), humidity: RelativeHumidity::percent(100) };
        assert_eq!(HumidityRatio::of(steam, Pressure::SEA_LEVEL), HumidityRatio(RATIO.most));
        assert_eq!(humidity_ratio(steam, Some(Altitude::SEA_LEVEL)).doubts.len(), 1);
    }

    #[test]
    fn an_unknown_altitude_is_assumed_aloud() {
        let air = Air { temperature: Temperature::fahrenheit(75), humidity: RelativeHumidity::percent(60) };
        assert_eq!(humidity_ratio(air, None).assumed.len(), 1);
        assert_eq!(humidity_ratio(air, None).value, humidity_ratio(air, Some(Altitude::SEA_LEVEL)).value);
        // Computed in the reference from the standard atmosphere: about 20 % more at 5000 ft.
        let high = humidity_ratio(air, Some(Altitude::feet(5_000))).value.to_grains_per_pound();
        let low = humidity_ratio(air, None).value.to_grains_per_pound();
        assert!((high / low - 1.20).abs() < 0.015, "{}", high / low);
    }
}
