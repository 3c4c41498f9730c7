//! Woods and lumber groups, as far as a meter must know them.

use serde::{Deserialize, Serialize};

/// The wood of a member, or the wood that a meter's scale is for: a species, or the
/// group that a grade stamp names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Species {
    /// Douglas-fir, coast type; most pin meters are made for it.
    DouglasFir,
    /// The stamp's southern pine: longleaf, shortleaf, loblolly and more.
    SouthernPine,
    /// The stamp's hem-fir: western hemlock and true firs.
    HemFir,
    /// The stamp's spruce-pine-fir.
    SprucePineFir,
    /// The stamp's Douglas fir-larch: Douglas-fir and western larch.
    DouglasFirLarch,
    /// Western larch.
    WesternLarch,
    /// California red fir.
    CaliforniaRedFir,
    /// Western hemlock.
    WesternHemlock,
    /// White fir.
    WhiteFir,
    /// Longleaf pine.
    LongleafPine,
    /// Shortleaf pine.
    ShortleafPine,
    /// Ponderosa pine.
    PonderosaPine,
    /// Sitka spruce.
    SitkaSpruce,
    /// Redwood.
    Redwood,
    /// Western redcedar: no row of the table is at hand, so it is never corrected.
    WesternRedcedar,
    /// Looked at and not recognised; a species left out was not looked at. Sums treat
    /// both alike.
    Unknown,
}

impl Species {
    /// Every choice, the likeliest in a floor first.
    pub const ALL: [Self; 16] = [
        Self::DouglasFir,
        Self::DouglasFirLarch,
        Self::SouthernPine,
        Self::HemFir,
        Self::SprucePineFir,
        Self::WesternHemlock,
        Self::WhiteFir,
        Self::CaliforniaRedFir,
        Self::WesternLarch,
        Self::LongleafPine,
        Self::ShortleafPine,
        Self::PonderosaPine,
        Self::SitkaSpruce,
        Self::Redwood,
        Self::WesternRedcedar,
        Self::Unknown,
    ];

    /// The wood in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::DouglasFir => "Douglas-fir",
            Self::SouthernPine => "southern pine",
            Self::HemFir => "hem-fir",
            Self::SprucePineFir => "spruce-pine-fir",
            Self::DouglasFirLarch => "Douglas fir-larch",
            Self::WesternLarch => "western larch",
            Self::CaliforniaRedFir => "California red fir",
            Self::WesternHemlock => "western hemlock",
            Self::WhiteFir => "white fir",
            Self::LongleafPine => "longleaf pine",
            Self::ShortleafPine => "shortleaf pine",
            Self::PonderosaPine => "ponderosa pine",
            Self::SitkaSpruce => "Sitka spruce",
            Self::Redwood => "redwood",
            Self::WesternRedcedar => "western redcedar",
            Self::Unknown => "unknown",
        }
    }

    /// Is it a group of woods that one stamp covers?
    pub const fn is_group(self) -> bool {
        matches!(self, Self::SouthernPine | Self::HemFir | Self::SprucePineFir | Self::DouglasFirLarch)
    }

    /// The wood, if it was recognised.
    pub(super) fn recognised(self) -> Option<Self> {
        (self != Self::Unknown).then_some(self)
    }
}
