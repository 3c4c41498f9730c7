//! Air against a surface: does it sweat, and is it damp enough there for mold?

use super::{Air, dew_point, shown, vapour};
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{RelativeHumidity, Temperature, TemperatureDifference};

/// A surface this much or less above the dew point may be at it: the wide end of
/// 3 to 5 °F, since a dry surface taken for wet costs a second look, the reverse a
/// floor ([`Source::ProbeMargin`]).
const PROBE_MARGIN: TemperatureDifference = TemperatureDifference::fahrenheit(5);

/// The surface humidity from which mold is to be watched for ([`Source::MouldLine`]).
const MOULD_LINE: RelativeHumidity = RelativeHumidity::percent(80);

/// How a surface stands in some air.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SurfaceInAir {
    /// The air's dew point.
    pub dew_point: Temperature,
    /// How far the surface is above the dew point; negative below it.
    pub margin: TemperatureDifference,
    /// Relative humidity of the air where it touches the surface; 100 % where it
    /// condenses.
    pub humidity: RelativeHumidity,
}

impl SurfaceInAir {
    /// Does vapor condense on it? At the dew point it does.
    /// Source: [`Source::Condensation`].
    pub fn condenses(&self) -> bool {
        self.margin <= TemperatureDifference::fahrenheit(0)
    }

    /// Is it so near the dew point that a probe's error decides? True also when it
    /// condenses. Source: [`Source::ProbeMargin`].
    pub fn is_close(&self) -> bool {
        self.margin <= PROBE_MARGIN
    }

    /// Is it damp enough there to watch for mold? Source: [`Source::MouldLine`].
    pub fn is_on_mould_watch(&self) -> bool {
        self.humidity >= MOULD_LINE
    }
}

/// How a surface at `surface` stands in `air`, with its reasons.
/// Source: [`Source::Condensation`], [`Source::SaturationPressure`].
pub fn in_air(surface: Temperature, air: Air) -> Known<SurfaceInAir> {
    let dew = dew_point::temperature_of_dew(air);
    let value = SurfaceInAir { dew_point: dew, margin: surface - dew, humidity: humidity_at(surface, air) };
    let mut doubts = dew_point::doubts(air, dew);
    if value.is_close() && !value.condenses() {
        let margin = shown::difference(value.margin);
        doubts.push(Source::ProbeMargin.noted(&format!("Only {margin} above the dew point: take it as wet")));
    }
    if value.is_on_mould_watch() {
        doubts.push(Source::MouldLine.noted("Damp enough at the surface to watch for mold"));
    }
    let why = Why::rule(
        "A surface at or below the dew point of the air sweats.",
        &[Source::Condensation, Source::SaturationPressure],
    )
    .with("surface", shown::temperature(surface))
    .with("air temperature", shown::temperature(air.temperature))
    .with("relative humidity", shown::humidity(air.humidity))
    .with("dew point", shown::temperature(dew));
    Known { value, assumed: Vec::new(), doubts, why }
}

/// The relative humidity that `air` has when it is brought to the temperature of a
/// surface: its vapor pressure over the saturation pressure there, at most 100 %.
/// Source: [`Source::SaturationPressure`].
pub(super) fn humidity_at(surface: Temperature, air: Air) -> RelativeHumidity {
    RelativeHumidity::from_percent_f64(100.0 * vapour::vapour_pascals(air) / vapour::saturation_pascals(surface))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn air(fahrenheit: i32, percent: u16) -> Air {
        Air { temperature: Temperature::fahrenheit(fahrenheit), humidity: RelativeHumidity::percent(percent) }
    }

    #[test]
    fn a_surface_at_the_dew_point_sweats() {
        let foggy = air(60, 100);
        assert!(in_air(Temperature::fahrenheit(60), foggy).value.condenses());
        let above = in_air(Temperature::fahrenheit(61), foggy);
        assert!(!above.value.condenses() && above.value.is_close());
        assert!(above.doubts.iter().any(|doubt| doubt.contains("take it as wet")));
        assert!(in_air(Temperature::fahrenheit(65), foggy).value.is_close());
        assert!(!in_air(Temperature::fahrenheit(66), foggy).value.is_close());
    }

    #[test]
    fn mould_is_watched_for_from_eighty_percent_at_the_surface() {
        let at = |percent| in_air(Temperature::fahrenheit(60), air(60, percent));
        assert!(at(80).value.is_on_mould_watch() && !at(79).value.is_on_mould_watch());
        let told = |percent| at(percent).doubts.iter().any(|doubt| doubt.contains("watch for mold"));
        assert!(told(80) && !told(79));
    }

    proptest! {
        #[test]
        fn a_surface_as_warm_as_the_air_has_its_humidity(fahrenheit in -40_i32..=200, percent in 0_u16..=100) {
            let air = air(fahrenheit, percent);
            prop_assert_eq!(humidity_at(air.temperature, air), air.humidity);
        }

        #[test]
        fn where_it_condenses_the_air_is_full(fahrenheit in 0_i32..=120, percent in 1_u16..=100, surface in 0_i32..=120) {
            let value = in_air(Temperature::fahrenheit(surface), air(fahrenheit, percent)).value;
            prop_assert!(!value.condenses() || value.humidity == RelativeHumidity::percent(100));
            prop_assert!(!value.condenses() || value.is_on_mould_watch());
        }
    }
}
