//! Quantities: one type a file, each a whole number of a unit so small that
//! everything people type is exact.
//!
//! No bare `f64` crosses a module border as a quantity. Constructors name their
//! unit, and so do exits (`to_…`), which are for formulas and for drawing.
//! Ranges live in [`limits`], once.

pub mod amount;
pub mod angle;
pub mod area;
pub mod decimal;
pub mod humidity;
pub mod length;
pub mod limits;
pub mod moisture_content;
mod percent;
pub mod tape;
pub mod temperature;
pub mod typed;

pub use amount::Amount;
pub use angle::Angle;
pub use area::Area;
pub use humidity::RelativeHumidity;
pub use length::Length;
pub use limits::{Limits, OutOfRange};
pub use moisture_content::MoistureContent;
pub use temperature::{Temperature, TemperatureDifference};
pub use typed::Typed;
