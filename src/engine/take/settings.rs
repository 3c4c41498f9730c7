//! How one phone likes its units: a preference, not part of the job.

use crate::engine::units::decimal::{Decimals, Scale, format_temperature};
use crate::engine::units::tape::{self, BareUnit, LengthStyle};
use crate::engine::units::{Area, Length, Temperature};
use serde::{Deserialize, Serialize};

/// The units that a bare number is taken in, and that values are shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Units {
    /// Lengths.
    pub length: LengthStyle,
    /// Temperatures.
    pub scale: Scale,
}

impl Units {
    /// The unit of a length typed without one.
    pub const fn bare_length(self) -> BareUnit {
        self.length.unit.bare_unit()
    }

    /// A length as it is shown, marked when rounded.
    pub fn length(self, length: Length) -> String {
        tape::format(length, self.length).text
    }

    /// A length that somebody read, as fine as they read it.
    pub fn read(self, length: Length) -> String {
        tape::format(length, self.length.as_fine_as(length)).text
    }

    /// The same as it is spoken.
    pub fn spoken(self, length: Length) -> String {
        tape::speak(length, self.length.as_fine_as(length))
    }

    /// A temperature as it is shown, to a tenth.
    pub fn temperature(self, temperature: Temperature) -> String {
        format_temperature(temperature, self.scale, Decimals::Tenths)
    }

    /// An area as it is shown.
    pub fn area(self, area: Area) -> String {
        match self.bare_length() {
            BareUnit::Inches => format!("{:.1} sq ft", area.to_square_feet()),
            _ => format!("{:.2} m²", area.to_square_metres()),
        }
    }
}
