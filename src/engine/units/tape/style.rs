//! How lengths are to be shown: a preference of the person at the phone.

use super::BareUnit;
use crate::engine::units::Length;
use serde::{Deserialize, Serialize};

/// The units that lengths are shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ShownUnit {
    /// `12' 3 1/2"`.
    #[default]
    FeetInches,
    /// `147 1/2"`.
    Inches,
    /// `3745 mm`.
    Millimetres,
    /// `374.5 cm`.
    Centimetres,
    /// `3.745 m`.
    Metres,
}

impl ShownUnit {
    /// Every choice.
    pub const ALL: [Self; 5] = [Self::FeetInches, Self::Inches, Self::Millimetres, Self::Centimetres, Self::Metres];

    /// The choice in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::FeetInches => "Feet and inches",
            Self::Inches => "Inches",
            Self::Millimetres => "Millimetres",
            Self::Centimetres => "Centimetres",
            Self::Metres => "Metres",
        }
    }

    /// The unit in which somebody who reads lengths like this types bare numbers.
    pub const fn bare_unit(self) -> BareUnit {
        match self {
            Self::FeetInches | Self::Inches => BareUnit::Inches,
            Self::Millimetres => BareUnit::Millimetres,
            Self::Centimetres => BareUnit::Centimetres,
            Self::Metres => BareUnit::Metres,
        }
    }

    /// Do its lengths end in fractions of an inch?
    pub const fn has_fractions(self) -> bool {
        matches!(self, Self::FeetInches | Self::Inches)
    }
}

/// The finest fraction of an inch that is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub enum InchStep {
    /// Halves.
    #[serde(rename = "1/2")]
    Half,
    /// Quarters.
    #[serde(rename = "1/4")]
    Quarter,
    /// Eighths.
    #[serde(rename = "1/8")]
    Eighth,
    /// Sixteenths, as most tapes are marked.
    #[default]
    #[serde(rename = "1/16")]
    Sixteenth,
    /// Thirty-seconds.
    #[serde(rename = "1/32")]
    ThirtySecond,
    /// Sixty-fourths.
    #[serde(rename = "1/64")]
    SixtyFourth,
}

impl InchStep {
    /// Every choice, coarsest first.
    pub const ALL: [Self; 6] =
        [Self::Half, Self::Quarter, Self::Eighth, Self::Sixteenth, Self::ThirtySecond, Self::SixtyFourth];

    /// The choice in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Half => "1/2\"",
            Self::Quarter => "1/4\"",
            Self::Eighth => "1/8\"",
            Self::Sixteenth => "1/16\"",
            Self::ThirtySecond => "1/32\"",
            Self::SixtyFourth => "1/64\"",
        }
    }

    /// How many steps make an inch.
    pub const fn per_inch(self) -> i32 {
        match self {
            Self::Half => 2,
            Self::Quarter => 4,
            Self::Eighth => 8,
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::SixtyFourth => 64,
        }
    }
}

/// How lengths are shown. The step is kept while metric is shown, and has no effect
/// on it: metric lengths are shown to the millimetre.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct LengthStyle {
    /// The units.
    pub unit: ShownUnit,
    /// The finest fraction of an inch.
    pub step: InchStep,
}

impl LengthStyle {
    /// Feet, inches and fractions to `step`.
    pub const fn feet_inches(step: InchStep) -> Self {
        Self { unit: ShownUnit::FeetInches, step }
    }

    /// Inches and fractions to `step`.
    pub const fn inches(step: InchStep) -> Self {
        Self { unit: ShownUnit::Inches, step }
    }

    /// Every choice that shows something different.
    pub fn choices() -> impl Iterator<Item = Self> {
        let all = ShownUnit::ALL.into_iter().flat_map(|unit| InchStep::ALL.map(|step| Self { unit, step }));
        all.filter(|style| style.unit.has_fractions() || style.step == InchStep::default())
    }

    /// The style in words: `Feet and inches to 1/16"`.
    pub fn label(self) -> String {
        let step = if self.unit.has_fractions() { self.step.label() } else { "1 mm" };
        format!("{} to {step}", self.unit.label())
    }

    /// The style with the coarsest step, no coarser than its own, that shows this length as it
    /// is: what somebody read to a thirty-second is not said back rounded. Its own step for a
    /// length that no sixty-fourth shows.
    #[must_use]
    pub fn as_fine_as(self, length: Length) -> Self {
        let finer = InchStep::ALL.into_iter().filter(|step| *step >= self.step).map(|step| Self { step, ..self });
        let shows = |style: &Self| length.to_nm() % style.step_length().to_nm() == 0;
        finer.filter(|style| style.unit.has_fractions()).find(shows).unwrap_or(self)
    }

    /// The least difference it shows.
    pub const fn step_length(self) -> Length {
        if self.unit.has_fractions() { Length::sixty_fourths(64 / self.step.per_inch()) } else { Length::MILLIMETRE }
    }
}
