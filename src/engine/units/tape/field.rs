//! What a length field takes: its bare unit, and whether it has a sign.

use serde::{Deserialize, Serialize};

/// A unit that a length can be typed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    Foot,
    Inch,
    Millimetre,
    Centimetre,
    Metre,
}

impl Unit {
    /// Nanometres in one.
    pub(super) const fn nanometres(self) -> i128 {
        match self {
            Self::Foot => 304_800_000,
            Self::Inch => 25_400_000,
            Self::Millimetre => 1_000_000,
            Self::Centimetre => 10_000_000,
            Self::Metre => 1_000_000_000,
        }
    }

    /// As it is written after a space.
    pub(super) const fn symbol(self) -> &'static str {
        match self {
            Self::Foot => "ft",
            Self::Inch => "in",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
        }
    }

    pub(super) const fn is_metric(self) -> bool {
        matches!(self, Self::Millimetre | Self::Centimetre | Self::Metre)
    }

    /// The unit that `word`, in small letters, names.
    pub(super) fn of_word(word: &str) -> Option<Self> {
        match word {
            "ft" | "foot" | "feet" => Some(Self::Foot),
            "in" | "inch" | "inches" => Some(Self::Inch),
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Some(Self::Millimetre),
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Some(Self::Centimetre),
            "m" | "metre" | "metres" | "meter" | "meters" => Some(Self::Metre),
            _ => None,
        }
    }
}

/// The unit of a number that was typed without one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum BareUnit {
    /// Inches; two numbers are feet and inches.
    #[default]
    Inches,
    /// Millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Metres.
    Metres,
}

impl BareUnit {
    /// Every choice.
    pub const ALL: [Self; 4] = [Self::Inches, Self::Millimetres, Self::Centimetres, Self::Metres];

    /// The unit in words, for a choice.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Inches => "Inches",
            Self::Millimetres => "Millimetres",
            Self::Centimetres => "Centimetres",
            Self::Metres => "Metres",
        }
    }

    /// The unit as it is added to a number: `in`, `mm`, `cm`, `m`.
    pub const fn symbol(self) -> &'static str {
        self.unit().symbol()
    }

    pub(super) const fn unit(self) -> Unit {
        match self {
            Self::Inches => Unit::Inch,
            Self::Millimetres => Unit::Millimetre,
            Self::Centimetres => Unit::Centimetre,
            Self::Metres => Unit::Metre,
        }
    }

    /// What a message offers when it knows no better.
    pub(super) const fn examples(self) -> &'static str {
        match self {
            Self::Inches => "a length like 12' 3 1/2\", 147.5 in or 3745 mm",
            Self::Millimetres => "a length like 3745, 3.745 m or 12' 3 1/2\"",
            Self::Centimetres => "a length like 374.5, 3.745 m or 12' 3 1/2\"",
            Self::Metres => "a length like 3.745, 3745 mm or 12' 3 1/2\"",
        }
    }
}

/// May a field's length have a sign?
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sign {
    /// No: it is the size of something.
    Refused,
    /// Yes: it is an offset or a level, and `-1/8` and `+1/8` are two things.
    Allowed,
}
