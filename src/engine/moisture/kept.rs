//! Readings that no table corrects: they stand as shown, and each says why.

use super::{Material, Meter, Sensing, Wood};
use crate::engine::sources::Source;

/// Why a reading stands as shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kept {
    /// It was not said which meter it is from.
    NoMeter,
    /// The meter senses density too.
    Pinless,
    /// Glue and wax do not read like wood.
    Glued,
    /// It was not said what it was taken on.
    UnknownMaterial,
}

/// What nobody said of a reading, without which its number is no moisture content that a limit
/// can be held to: it may be a pinless meter's, or taken on panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unsaid {
    /// Which meter it is from.
    Meter,
    /// What it was taken on.
    Material,
}

impl Unsaid {
    /// What is not said, behind the reading's number.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Meter => "meter not said",
            Self::Material => "wood not said",
        }
    }

    /// What there is to say.
    pub const fn asks(self) -> &'static str {
        match self {
            Self::Meter => "say which meter it is from",
            Self::Material => "say what it was taken on",
        }
    }
}

impl Kept {
    /// Every reason that a reading has.
    pub(super) fn reasons(meter: Option<&Meter>, wood: Wood) -> Vec<Self> {
        let meter = match meter.map(|meter| meter.sensing) {
            None => Some(Self::NoMeter),
            Some(Sensing::Pinless) => Some(Self::Pinless),
            Some(Sensing::Pin) => None,
        };
        let material = match wood.material {
            Material::Solid | Material::Treated => None,
            Material::Plywood | Material::Osb | Material::OtherGlued => Some(Self::Glued),
            Material::Unknown => Some(Self::UnknownMaterial),
        };
        meter.into_iter().chain(material).collect()
    }

    /// Is the reading good only for comparing with others of the same meter on the same
    /// material? What is not known is not made out to be so.
    pub(super) const fn is_relative(self) -> bool {
        matches!(self, Self::Pinless | Self::Glued)
    }

    /// What nobody said, if that is the reason.
    pub(super) const fn unsaid(self) -> Option<Unsaid> {
        match self {
            Self::NoMeter => Some(Unsaid::Meter),
            Self::UnknownMaterial => Some(Unsaid::Material),
            Self::Pinless | Self::Glued => None,
        }
    }

    /// The reason in words.
    pub(super) fn words(self) -> String {
        match self {
            Self::NoMeter => "Not corrected: say which meter it is from".to_owned(),
            Self::Pinless => Source::Pinless
                .noted("Not corrected: a pinless meter senses density too. Compare its readings, and decide by pins"),
            Self::Glued => Source::GluedWood
                .noted("Not corrected: glue and wax shift readings. Compare with a dry piece of the same panel"),
            Self::UnknownMaterial => "Not corrected: say what the reading was taken on".to_owned(),
        }
    }
}

/// Is a reading with these reasons good only for comparing?
pub(super) fn is_relative(kept: &[Kept]) -> bool {
    kept.iter().any(|reason| reason.is_relative())
}

/// What nobody said, of these reasons.
pub(super) fn unsaid(kept: &[Kept]) -> Option<Unsaid> {
    kept.iter().find_map(|reason| reason.unsaid())
}
