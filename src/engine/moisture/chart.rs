//! The temperature chart of pin meters: cold wood reads low, warm wood high.

use crate::engine::units::{MoistureContent, Temperature};

/// The wood temperature for which the chart's meter is set: 70 °F.
/// Source: [`Source::TemperatureChart`](crate::engine::sources::Source::TemperatureChart).
pub const SET_FOR: Temperature = Temperature::fahrenheit(70);

/// The coldest wood on the chart, 32 °F. Same source.
pub const COLDEST: Temperature = Temperature::celsius(0);

/// The warmest wood on the chart, 122 °F. Same source.
pub const WARMEST: Temperature = Temperature::celsius(50);

/// One value for each of the chart's columns, or for each of its rows.
type Ten = [f64; 10];

/// The rows' readings, in percent.
const READINGS: Ten = [8.0, 10.0, 12.0, 14.0, 15.0, 16.0, 18.0, 20.0, 22.0, 25.0];

/// The columns' wood temperatures, in Celsius degrees.
const CELSIUS: Ten = [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0];

/// From the coldest column to the next, Celsius degrees.
const FIRST_STEP: f64 = 5.0;

/// Percent to add to a reading, by row and column. FPL-GTR-6 fig. 5 (James 1988) as a
/// third party digitised it: good to 0.15 % a curve, and neighbouring cells wobble by
/// 0.1 to 0.2. Chosen over the published-elsewhere equation, which could not be seen
/// in print and shifts by only 0.7 to 0.8 of this.
/// Source: [`Source::TemperatureChart`](crate::engine::sources::Source::TemperatureChart).
const ADD: [Ten; 10] = [
    [2.4, 1.8, 1.1, 0.6, 0.1, -0.3, -0.8, -1.2, -1.6, -2.4],
    [2.7, 2.0, 1.3, 0.7, 0.1, -0.4, -0.9, -1.4, -1.8, -2.7],
    [3.1, 2.2, 1.5, 0.8, 0.1, -0.5, -1.1, -1.6, -2.2, -3.1],
    [3.6, 2.6, 1.7, 0.9, 0.2, -0.5, -1.2, -1.8, -2.4, -3.5],
    [3.9, 2.7, 1.8, 1.0, 0.2, -0.5, -1.2, -1.8, -2.5, -3.6],
    [4.3, 3.0, 1.9, 1.0, 0.2, -0.6, -1.3, -1.9, -2.6, -3.8],
    [4.2, 3.2, 2.2, 1.2, 0.2, -0.6, -1.4, -2.1, -2.8, -4.1],
    [4.8, 3.5, 2.2, 1.2, 0.2, -0.7, -1.6, -2.4, -3.1, -4.4],
    [5.2, 3.7, 2.5, 1.3, 0.2, -0.8, -1.8, -2.6, -3.4, -4.8],
    [6.0, 4.3, 2.8, 1.4, 0.2, -0.9, -1.9, -2.8, -3.8, -5.4],
];

/// What `shown` would be at the temperature that the meter is set for, the wood being
/// at `wood`: linear between cells, held at the chart's edges.
///
/// The chart is for a meter set for 70 °F. Another `reference` is met by asking first
/// what such a meter would have shown on the same wood, which is the chart read
/// backwards at `reference`, and then correcting that. So at its own reference a
/// meter's reading stands exactly; at 70 °F the chart itself is off by its wobble.
/// Source: [`Source::TemperatureChart`](crate::engine::sources::Source::TemperatureChart), and for another reference
/// [`Source::ChartReference`](crate::engine::sources::Source::ChartReference).
pub fn at_reference(shown: MoistureContent, wood: Temperature, reference: Temperature) -> MoistureContent {
    let shown = shown.to_percent();
    let at_seventy =
        if reference == SET_FOR { shown } else { shown - across(&rows_true(reference), &added(reference), shown) };
    MoistureContent::from_percent_f64(at_seventy + across(&READINGS, &added(wood), at_seventy))
}

/// The wettest that wood at `wood` may be that shows `shown`: as [`at_reference`], and in wood
/// colder than the chart as if it went on the way that it ends (judgement).
pub fn at_worst(shown: MoistureContent, wood: Temperature, reference: Temperature) -> MoistureContent {
    let a_degree = ADD.map(|[coldest, next, ..]| (coldest - next) / FIRST_STEP);
    let colder = (COLDEST.to_celsius() - wood.to_celsius()).max(0.0);
    let beyond = colder * across(&READINGS, &a_degree, shown.to_percent());
    MoistureContent::from_percent_f64(at_reference(shown, wood, reference).to_percent() + beyond)
}

/// What is added in each row at `wood`.
fn added(wood: Temperature) -> Ten {
    ADD.map(|row| across(&CELSIUS, &row, wood.to_celsius()))
}

/// The rows by true moisture content at `wood` instead of by reading. They keep their
/// order, since no row is corrected by as much as it lies above the one before.
fn rows_true(wood: Temperature) -> Ten {
    let mut rows = READINGS;
    for (row, add) in rows.iter_mut().zip(added(wood)) {
        *row += add;
    }
    rows
}

/// The value at `at` on the line through `values` over the rising `axis`, level beyond
/// its ends.
fn across(axis: &Ten, values: &Ten, at: f64) -> f64 {
    let ([mut x0, ..], [mut y0, ..]) = (*axis, *values);
    if at <= x0 {
        return y0;
    }
    for (&x, &y) in axis.iter().zip(values) {
        if at <= x {
            let part = (at - x0) / (x - x0);
            return y0 * (1.0 - part) + y * part;
        }
        (x0, y0) = (x, y);
    }
    y0
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn percent(hundredths: i64) -> MoistureContent {
        MoistureContent::try_hundredths(hundredths).unwrap()
    }

    fn fahrenheit(tenths: i64) -> Temperature {
        Temperature::try_hundredths_f(tenths * 10).unwrap()
    }

    fn gap(a: MoistureContent, b: MoistureContent) -> f64 {
        (a.to_percent() - b.to_percent()).abs()
    }

    #[test]
    fn every_row_falls_with_warmth_so_warmer_wood_never_reads_wetter() {
        assert!(ADD.iter().all(|row| row.is_sorted_by(|colder, warmer| colder > warmer)));
        assert!(CELSIUS.is_sorted_by(|a, b| a < b) && READINGS.is_sorted_by(|a, b| a < b));
    }

    #[test]
    fn true_rows_keep_their_order_at_every_column() {
        for celsius in CELSIUS {
            assert!(rows_true(Temperature::from_celsius_f64(celsius)).is_sorted_by(|a, b| a < b), "{celsius}");
        }
    }

    proptest! {
        #[test]
        fn a_seventy_degree_meter_stands_at_seventy_within_the_charts_wobble(shown in 0_i64..=10_000) {
            prop_assert!(gap(at_reference(percent(shown), SET_FOR, SET_FOR), percent(shown)) <= 0.05);
        }

        #[test]
        fn a_meter_stands_exactly_at_its_own_reference(shown in 700_i64..=10_000, reference in 200_i64..=1_400) {
            prop_assume!(reference != 700);
            let reference = fahrenheit(reference);
            prop_assert!(gap(at_reference(percent(shown), reference, reference), percent(shown)) < 1e-5);
        }

        #[test]
        fn a_meter_set_a_hair_off_seventy_is_a_seventy_degree_meter(shown in 800_i64..=2_500, wood in 200_i64..=1_400) {
            let (shown, wood) = (percent(shown), fahrenheit(wood));
            prop_assert!(gap(at_reference(shown, wood, fahrenheit(701)), at_reference(shown, wood, SET_FOR)) < 0.08);
        }

        #[test]
        fn beyond_the_chart_colder_wood_may_be_wetter_still_and_on_it_the_chart_stands(shown in 0_i64..=30_000, wood in -400_i64..=320, colder in 1_i64..=300, reference in 200_i64..=1_400) {
            let (shown, reference) = (percent(shown), fahrenheit(reference));
            let worst = |tenths| at_worst(shown, fahrenheit(tenths), reference);
            prop_assert!(worst(wood - colder) >= worst(wood) && worst(wood) >= at_reference(shown, fahrenheit(wood), reference));
            prop_assert_eq!(worst(320 + colder), at_reference(shown, fahrenheit(320 + colder), reference));
        }

        #[test]
        fn warmer_wood_is_never_wetter(shown in 0_i64..=30_000, wood in -700_i64..=2_000, warmer in 0_i64..=120, reference in 200_i64..=1_400) {
            let (shown, reference) = (percent(shown), fahrenheit(reference));
            let colder = at_reference(shown, fahrenheit(wood), reference);
            prop_assert!(at_reference(shown, fahrenheit(wood + warmer), reference) <= colder);
        }

        #[test]
        fn a_wetter_reading_is_wetter_wood(shown in 0_i64..=29_000, more in 0_i64..=1_000, wood in -700_i64..=2_100, reference in 200_i64..=1_400) {
            let (wood, reference) = (fahrenheit(wood), fahrenheit(reference));
            prop_assert!(at_reference(percent(shown), wood, reference) <= at_reference(percent(shown + more), wood, reference));
        }
    }
}
