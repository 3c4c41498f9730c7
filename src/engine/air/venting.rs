//! Whether outside air dries a crawl space, or wets it.

use super::surface::humidity_at;
use super::{Air, AirLocation, Altitude, HumidityRatio, dew_point, equilibrium_moisture, shown, vapour};
use crate::engine::figure::{Figure, Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, RelativeHumidity, Temperature};

/// What outside air would do in the crawl space.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Venting {
    /// Vapor in the outside air.
    pub outside: HumidityRatio,
    /// Vapor in the crawl space's air.
    pub crawl: HumidityRatio,
    /// The outside air's dew point.
    pub outside_dew_point: Temperature,
    /// What it does at the coldest surface, if one was measured.
    pub at_surface: Option<AtSurface>,
}

/// What outside air does where it reaches a surface under the floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AtSurface {
    /// Does it condense there, whatever its own temperature?
    pub condenses: bool,
    /// Its relative humidity there.
    pub humidity: RelativeHumidity,
    /// What wood there comes to in it, as [`equilibrium_moisture`] holds its inputs.
    /// Above what the wood holds now, the air slows drying.
    pub equilibrium: MoistureContent,
}

impl Venting {
    /// Does the outside air carry vapor away? Only if it holds less.
    /// Source: [`Source::Venting`].
    pub fn removes_vapour(&self) -> bool {
        self.outside < self.crawl
    }
}

/// What outside air would do in the crawl space, with its reasons: it carries vapor
/// away only if it holds less than the air there, and wets every surface that is at
/// or below its dew point. `coldest` is the coldest joist, duct or pipe; the altitude
/// moves the grains shown, never the answer.
/// Source: [`Source::Venting`], [`Source::Condensation`].
pub fn venting(
    outside: Option<Air>,
    crawl: Option<Air>,
    coldest: Option<Temperature>,
    altitude: Option<Altitude>,
) -> Figure<Venting> {
    let missing = [(outside, AirLocation::Outdoors), (crawl, AirLocation::Crawl)];
    let (Some(outside), Some(crawl)) = (outside, crawl) else {
        return Figure::Missing(
            missing.iter().filter(|(air, _)| air.is_none()).map(|(_, place)| place.need()).collect(),
        );
    };
    let pressure = altitude.unwrap_or(Altitude::SEA_LEVEL).standard_pressure();
    let value = Venting {
        outside: HumidityRatio::of(outside, pressure),
        crawl: HumidityRatio::of(crawl, pressure),
        outside_dew_point: dew_point::temperature_of_dew(outside),
        at_surface: coldest.map(|surface| at_surface(surface, outside)),
    };
    let mut doubts = vapour::range_doubts([outside.temperature, crawl.temperature]);
    if coldest.is_none() {
        doubts.push("No surface was measured: outside air may still sweat on a cold joist, duct or pipe".to_owned());
    }
    let why = why(&value, outside, crawl, coldest);
    Figure::Known(Known { value, assumed: vapour::sea_level_assumed(altitude), doubts, why })
}

/// What outside air does at a surface. Source: [`Source::Condensation`],
/// [`Source::EquilibriumMoisture`].
pub fn at_surface(surface: Temperature, outside: Air) -> AtSurface {
    let humidity = humidity_at(surface, outside);
    AtSurface {
        condenses: dew_point::temperature_of_dew(outside) >= surface,
        humidity,
        equilibrium: equilibrium_moisture(surface, humidity),
    }
}

fn why(value: &Venting, outside: Air, crawl: Air, coldest: Option<Temperature>) -> Why {
    let rule = "Outside air carries vapor away only if it holds less than the crawl space's; \
                it wets what is at or below its dew point.";
    let mut sources = vec![Source::Venting, Source::HumidityRatio, Source::SaturationPressure];
    if coldest.is_some() {
        sources.extend([Source::Condensation, Source::EquilibriumMoisture]);
    }
    let why = Why::rule(rule, &sources)
        .with("outside", described(outside, value.outside))
        .with("crawl space", described(crawl, value.crawl))
        .with("dew point outside", shown::temperature(value.outside_dew_point));
    match coldest {
        Some(surface) => why.with("coldest surface", shown::temperature(surface)),
        None => why,
    }
}

fn described(air: Air, holds: HumidityRatio) -> String {
    format!("{}, {}, {}", shown::temperature(air.temperature), shown::humidity(air.humidity), shown::grains(holds))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::figure::Need;
    use proptest::prelude::*;

    fn air(fahrenheit: i32, percent: u16) -> Air {
        Air { temperature: Temperature::fahrenheit(fahrenheit), humidity: RelativeHumidity::percent(percent) }
    }

    #[test]
    fn without_both_airs_it_asks_for_the_one_that_is_missing() {
        assert_eq!(venting(None, Some(air(62, 85)), None, None), Figure::Missing(vec![Need::OutdoorAir]));
        assert_eq!(venting(None, None, None, None), Figure::Missing(vec![Need::OutdoorAir, Need::CrawlAir]));
    }

    #[test]
    fn outside_air_wets_what_is_just_at_its_dew_point() {
        let at = |surface| {
            let figure = venting(Some(air(60, 100)), Some(air(62, 85)), Some(Temperature::fahrenheit(surface)), None);
            figure.value().and_then(|answer| answer.at_surface).map(|there| there.condenses)
        };
        assert_eq!((at(60), at(61)), (Some(true), Some(false)));
    }

    proptest! {
        #[test]
        fn altitude_never_changes_the_answer(out in 20_i32..=100, out_rh in 1_u16..=100, crawl in 40_i32..=80, crawl_rh in 1_u16..=100, feet in -1_000_i32..=12_000) {
            let answer = |altitude| *venting(Some(air(out, out_rh)), Some(air(crawl, crawl_rh)), None, altitude).value().unwrap();
            prop_assert_eq!(answer(None).removes_vapour(), answer(Some(Altitude::feet(feet))).removes_vapour());
        }

        #[test]
        fn less_vapour_and_a_lower_dew_point_are_one_thing(out in 20_i32..=100, out_rh in 1_u16..=100, crawl in 40_i32..=80, crawl_rh in 1_u16..=100) {
            let (outside, crawl) = (air(out, out_rh), air(crawl, crawl_rh));
            let value = *venting(Some(outside), Some(crawl), None, None).value().unwrap();
            let lower = dew_point::temperature_of_dew(outside) < dew_point::temperature_of_dew(crawl);
            prop_assert_eq!(value.removes_vapour(), lower);
        }
    }
}
