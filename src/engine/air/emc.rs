//! Equilibrium moisture content: what wood comes to in air that stays as it is.

use super::shown;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};

/// The wettest air that the curve is used for, 95 %: beyond, it climbs to 27-29 %,
/// and a pin reading there means liquid water, not air. The table's end
/// ([`Source::EquilibriumRange`]).
const WETTEST: RelativeHumidity = RelativeHumidity::percent(95);

/// The coldest wood that the curve is used for, 30 °F ([`Source::EquilibriumRange`]).
const COLDEST: Temperature = Temperature::fahrenheit(30);

/// The warmest wood that the curve is used for, 130 °F. The table goes on, but no
/// crawl space does ([`Source::EquilibriumRange`]).
const WARMEST: Temperature = Temperature::fahrenheit(130);

/// The moisture content that wood at `temperature` comes to in air which is at
/// `humidity` where it touches the wood, with its reasons.
///
/// Inputs beyond 30-130 °F and 0-95 % RH are held at the end of the range, and the
/// figure says so. Any softwood or hardwood; fit for practice, not for science, says
/// the laboratory that publishes the curve (FPL-GTR-229, published).
/// Source: [`Source::EquilibriumMoisture`].
pub fn emc(temperature: Temperature, humidity: RelativeHumidity) -> Known<MoistureContent> {
    let mut doubts = vec![
        Source::Hysteresis
            .noted("The curve averages wetting and drying: wood that dries from wet sits 1 to 2 % above it"),
    ];
    if humidity > WETTEST {
        let text = "Wetter than 95 %, figured at 95 %: more than this in the wood is liquid water, not air";
        doubts.push(Source::EquilibriumRange.noted(text));
    }
    if temperature != temperature.clamp(COLDEST, WARMEST) {
        let end = shown::temperature(temperature.clamp(COLDEST, WARMEST));
        doubts.push(Source::EquilibriumRange.noted(&format!("Outside 30 to 130 °F, figured at {end}")));
    }
    let why =
        Why::rule("Wood left long enough in air that stays as it is comes to this.", &[Source::EquilibriumMoisture])
            .with("temperature", shown::temperature(temperature))
            .with("relative humidity", shown::humidity(humidity));
    Known { value: equilibrium_moisture(temperature, humidity), assumed: Vec::new(), doubts, why }
}

/// The same without reasons, for forecasts that ask many times: inputs beyond the
/// range are held at its ends. Source: [`Source::EquilibriumMoisture`].
pub fn equilibrium_moisture(temperature: Temperature, humidity: RelativeHumidity) -> MoistureContent {
    let celsius = temperature.clamp(COLDEST, WARMEST).to_celsius();
    let fraction = humidity.min(WETTEST).to_percent() / 100.0;
    MoistureContent::from_percent_f64(percent(celsius, fraction))
}

/// Wood Handbook equation 4-5, its Celsius form, with the handbook's own letters:
/// the mass `w` of wood that takes up one mole of water, the activity `k` of the
/// water dissolved in it, the equilibria `k1` and `k2` of one and two hydrates.
fn percent(t: f64, h: f64) -> f64 {
    let w = 349.0 + 1.29 * t + 0.0135 * t * t;
    let k = 0.805 + 0.000_736 * t - 0.000_002_73 * t * t;
    let k1 = 6.27 - 0.009_38 * t - 0.000_303 * t * t;
    let k2 = 1.91 + 0.0407 * t - 0.000_293 * t * t;
    let kh = k * h;
    let hydrates = k1 * kh + k1 * k2 * kh * kh;
    let dissolved = kh / (1.0 - kh);
    let bound = (hydrates + k1 * k2 * kh * kh) / (1.0 + hydrates);
    1800.0 / w * (dissolved + bound)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_of_the_range_hold_and_say_so() {
        let (warm, wet) = (Temperature::fahrenheit(70), RelativeHumidity::percent(95));
        let soaked = emc(warm, RelativeHumidity::percent(100));
        assert_eq!(soaked.value, equilibrium_moisture(warm, wet));
        assert_eq!(soaked.doubts.len(), 2);
        let frozen = emc(Temperature::fahrenheit(0), wet);
        assert_eq!(frozen.value, equilibrium_moisture(COLDEST, wet));
        assert!(frozen.doubts.iter().any(|doubt| doubt.contains("30.0 °F")));
        assert_eq!(emc(warm, wet).doubts.len(), 1);
    }
}
