//! Quantities as a figure's inputs show them.

use super::{Altitude, HumidityRatio};
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature, TemperatureDifference};

/// A temperature, `62.0 °F`.
pub fn temperature(value: Temperature) -> String {
    format!("{} °F", tenths(value.to_fahrenheit()))
}

/// A temperature difference, `4.5 °F`.
pub fn difference(value: TemperatureDifference) -> String {
    format!("{} °F", tenths(value.to_fahrenheit()))
}

/// A relative humidity, `85.0 %`.
pub fn humidity(value: RelativeHumidity) -> String {
    format!("{} %", tenths(value.to_percent()))
}

/// A moisture content, `18.5 %`.
pub fn moisture(value: MoistureContent) -> String {
    format!("{} %", tenths(value.to_percent()))
}

/// A humidity ratio, `81.9 grains/lb`.
pub fn grains(value: HumidityRatio) -> String {
    format!("{} grains/lb", tenths(value.to_grains_per_pound()))
}

/// An altitude, `5000 ft`.
pub fn altitude(value: Altitude) -> String {
    format!("{:.0} ft", plain_zero(libm::round(value.to_feet())))
}

fn tenths(value: f64) -> String {
    format!("{:.1}", plain_zero(libm::round(value * 10.0) / 10.0))
}

/// No `-0`.
fn plain_zero(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tenth_is_enough_and_zero_has_no_sign() {
        assert_eq!(temperature(Temperature::celsius(20)), "68.0 °F");
        assert_eq!(tenths(-0.04), "0.0");
        assert_eq!(moisture(MoistureContent::try_hundredths(1_846).unwrap()), "18.5 %");
    }
}
