//! The dew point: how cold a surface must be for air to wet it.

use super::{Air, shown, vapour};
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Temperature;

/// Below this, frost forms instead of dew ([`Source::SaturationCheck`] compares only
/// above it): 33 °F.
const FROST: Temperature = Temperature::fahrenheit(33);

/// The dew point of `air` over water, with its reasons. It does not depend on the
/// altitude. Drier than the range of temperatures can show is held at its cold end.
/// Source: [`Source::SaturationPressure`].
pub fn dew_point(air: Air) -> Known<Temperature> {
    let value = temperature_of_dew(air);
    let why = Why::rule("Cooled to this, the air is full: vapor condenses.", &[Source::SaturationPressure])
        .with("air temperature", shown::temperature(air.temperature))
        .with("relative humidity", shown::humidity(air.humidity));
    Known { value, assumed: Vec::new(), doubts: doubts(air, value), why }
}

/// The dew point alone. Source: [`Source::SaturationPressure`].
pub(super) fn temperature_of_dew(air: Air) -> Temperature {
    Temperature::from_celsius_f64(dew_celsius(air))
}

fn dew_celsius(air: Air) -> f64 {
    let fraction = air.humidity.to_percent() / 100.0;
    if fraction <= 0.0 {
        return f64::NEG_INFINITY;
    }
    vapour::celsius_of_exponent(libm::log(fraction) + vapour::exponent(air.temperature.to_celsius()))
}

/// What to bear in mind about a dew point.
pub(super) fn doubts(air: Air, dew: Temperature) -> Vec<String> {
    let mut doubts = vapour::range_doubts([air.temperature]);
    if dew_celsius(air) < dew.to_celsius() - 1e-6 {
        doubts.push(format!("Too dry for a dew point: it is below {}", shown::temperature(dew)));
    } else if dew <= FROST {
        doubts.push("Figured over water: on a surface below freezing, frost starts a little warmer".to_owned());
    }
    doubts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::units::RelativeHumidity;

    #[test]
    fn bone_dry_air_has_no_dew_point_to_show() {
        let dry = Air { temperature: Temperature::fahrenheit(70), humidity: RelativeHumidity::percent(0) };
        let dew = dew_point(dry);
        assert_eq!(dew.value, Temperature::celsius(-60));
        assert!(dew.doubts.iter().any(|doubt| doubt.contains("Too dry")));
    }

    #[test]
    fn frost_is_not_dew() {
        let winter = Air { temperature: Temperature::fahrenheit(40), humidity: RelativeHumidity::percent(40) };
        assert!(dew_point(winter).doubts.iter().any(|doubt| doubt.contains("frost")));
    }
}
