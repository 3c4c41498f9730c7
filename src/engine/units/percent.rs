//! What moisture content and relative humidity share: both are percentages held
//! as whole millionths of a percent, and neither may be taken for the other.

use serde::{Deserialize, Serialize};

/// Storage units in one percent.
pub(super) const PER_PERCENT: i64 = 1_000_000;

/// How a percentage stands in a job file: `{"percent": 18.5}`.
#[derive(Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub(super) struct PercentJson {
    /// Percent.
    pub(super) percent: f64,
}

/// Defines a percentage type with its range and its exits.
macro_rules! percentage {
    ($(#[$docs:meta])* $name:ident, $limits:path) => {
        $(#[$docs])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
        #[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
        #[serde(try_from = "super::percent::PercentJson", into = "super::percent::PercentJson")]
        pub struct $name(i64);

        impl $name {
            /// Hundredths of a percent, as a keypad gives them.
            ///
            /// # Errors
            /// `OutOfRange` outside the type's range.
            pub const fn try_hundredths(hundredths: i64) -> Result<Self, super::OutOfRange> {
                match $limits.check(hundredths.saturating_mul(super::percent::PER_PERCENT / 100)) {
                    Ok(units) => Ok(Self(units)),
                    Err(error) => Err(error),
                }
            }

            /// Whole percent, held in the type's range.
            pub const fn percent(percent: u16) -> Self {
                Self($limits.clamp(percent as i64 * super::percent::PER_PERCENT))
            }

            /// The nearest millionth of a percent to a computed value, held in the
            /// type's range.
            pub fn from_percent_f64(percent: f64) -> Self {
                Self($limits.nearest(percent * super::percent::PER_PERCENT as f64))
            }

            /// Percent, for formulas and drawing.
            pub fn to_percent(self) -> f64 {
                self.0 as f64 / super::percent::PER_PERCENT as f64
            }

            /// Whole storage units, for exact writing.
            pub(super) const fn units(self) -> i64 {
                self.0
            }
        }

        impl From<$name> for super::percent::PercentJson {
            fn from(value: $name) -> Self {
                Self { percent: value.to_percent() }
            }
        }

        impl TryFrom<super::percent::PercentJson> for $name {
            type Error = super::OutOfRange;
            #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates, and the range is checked after")]
            fn try_from(json: super::percent::PercentJson) -> Result<Self, super::OutOfRange> {
                if json.percent.is_nan() {
                    return Err(super::OutOfRange { limits: $limits });
                }
                let units = libm::round(json.percent * super::percent::PER_PERCENT as f64) as i64;
                $limits.check(units).map(Self)
            }
        }
    };
}
pub(super) use percentage;
