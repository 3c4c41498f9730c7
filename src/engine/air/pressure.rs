//! Air and vapor pressures, and the altitude that air pressure goes with.

use crate::engine::units::Limits;

/// Storage units in one pascal.
const PER_PASCAL: f64 = 1e6;
/// Pascals in one pound per square inch, by the definitions of pound and inch.
const PASCAL_PER_PSI: f64 = 6_894.757_293_168;

/// Pressures, in micropascals: 0 to 200 kPa, so that water vapor at the hottest
/// [`Temperature`](crate::engine::units::Temperature) fits.
const PRESSURE: Limits = Limits { what: "pressure", least: 0, most: 200_000_000_000, words: "0 to 29 psi (200 kPa)" };

/// Altitudes, in tenths of a millimetre: where houses stand, and where the standard
/// atmosphere's formula holds.
const ALTITUDE: Limits =
    Limits { what: "altitude", least: -5_000_000, most: 50_000_000, words: "-1640 to 16404 ft (-500 to 5000 m)" };

/// An absolute pressure of air or of the vapor in it, in whole micropascals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Pressure(i64);

impl Pressure {
    /// Air at sea level, 14.696 psi (101 325 Pa). Source: standard atmosphere.
    pub const SEA_LEVEL: Self = Self(101_325_000_000);

    /// The nearest micropascal to a pressure in pascals, held in 0 to 200 kPa.
    pub fn from_pascals_f64(pascals: f64) -> Self {
        Self(PRESSURE.nearest(pascals * PER_PASCAL))
    }

    /// The nearest micropascal to a pressure in pounds per square inch, held in
    /// 0 to 29 psi.
    pub fn from_psi_f64(psi: f64) -> Self {
        Self::from_pascals_f64(psi * PASCAL_PER_PSI)
    }

    /// Pascals, for formulas.
    pub fn to_pascals(self) -> f64 {
        self.0 as f64 / PER_PASCAL
    }

    /// Pounds per square inch, for formulas.
    pub fn to_psi(self) -> f64 {
        self.to_pascals() / PASCAL_PER_PSI
    }
}

/// Height above sea level, in whole tenths of a millimetre, within -500 to 5000 m.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Altitude(i64);

impl Altitude {
    /// Sea level.
    pub const SEA_LEVEL: Self = Self(0);

    /// Whole feet, held in the range.
    pub const fn feet(feet: i32) -> Self {
        Self(ALTITUDE.clamp(feet as i64 * 3_048))
    }

    /// Whole metres, held in the range.
    pub const fn metres(metres: i32) -> Self {
        Self(ALTITUDE.clamp(metres as i64 * 10_000))
    }

    /// Feet, for formulas and for showing.
    pub fn to_feet(self) -> f64 {
        self.0 as f64 / 3_048.0
    }

    /// What the air weighs there on an ordinary day: p = 14.696 (1 - 6.8754e-6 z)^5.2559
    /// psi, z in feet. Weather moves it by a few percent.
    /// Source: [`Source::StandardAtmosphere`](crate::engine::sources::Source::StandardAtmosphere).
    pub fn standard_pressure(self) -> Pressure {
        let part = libm::pow(1.0 - 6.8754e-6 * self.to_feet(), 5.2559);
        Pressure::from_pascals_f64(Pressure::SEA_LEVEL.to_pascals() * part)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn sea_level_is_sea_level() {
        assert_eq!(Altitude::SEA_LEVEL.standard_pressure(), Pressure::SEA_LEVEL);
        // The published 14.696 psi is 101 325 Pa rounded.
        assert!((Pressure::SEA_LEVEL.to_psi() - 14.696).abs() < 0.000_1);
        assert_eq!(Altitude::feet(10_000), Altitude::metres(3_048));
    }

    proptest! {
        #[test]
        fn higher_is_thinner(low in -1_600_i32..16_000, more in 1_i32..300) {
            prop_assert!(Altitude::feet(low).standard_pressure() > Altitude::feet(low + more).standard_pressure());
        }

        #[test]
        fn no_number_leaves_the_range(anything: f64, feet: i32) {
            let pressure = Pressure::from_psi_f64(anything);
            prop_assert!((0.0..=200_000.0).contains(&pressure.to_pascals()));
            prop_assert!(Altitude::feet(feet).standard_pressure() > Pressure::from_pascals_f64(50_000.0));
        }
    }
}
