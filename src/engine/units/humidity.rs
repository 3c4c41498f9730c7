//! Relative humidity of air.

use super::limits;
use super::percent::percentage;

percentage! {
    /// Relative humidity of air over liquid water, in whole millionths of a
    /// percent, within [`limits::HUMIDITY`].
    ///
    /// It is not a moisture content, and the compiler holds them apart:
    ///
    /// ```compile_fail
    /// use duckboard::engine::units::{MoistureContent, RelativeHumidity};
    /// let wood: MoistureContent = RelativeHumidity::percent(80);
    /// ```
    RelativeHumidity, limits::HUMIDITY
}
