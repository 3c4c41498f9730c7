//! How far a joist may span: the least of bending, sag and shear.
//!
//! Allowable stress design for a simple span under an even load, normal duration, upper
//! edge held by the floor, three joists or more sharing the load. Sag is that of the live
//! load, no more than a 360th of the span. Source: [`Source::SpanMethod`].

use super::design::DesignValues;
use super::section::Section;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// Three joists or more share a load, up to 24 in apart.
const REPETITIVE: f64 = 1.15;
const REPETITIVE_TO: Length = Length::inches(24);
/// The part of its span that a floor may sag under live load.
const SAG: f64 = 360.0;
/// Bending that wet wood loses a part of only above this, pounds per square inch.
const WET_BENDING_FROM: f64 = 1150.0;

/// What lies on a floor, pounds per square foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loads {
    /// People and furniture.
    pub live: f64,
    /// The floor itself.
    pub dead: f64,
}

impl Loads {
    /// A part of it.
    #[must_use]
    pub fn times(self, part: f64) -> Self {
        Self { live: self.live * part, dead: self.dead * part }
    }
}

/// What the wood goes through.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Service {
    /// Over 19 % for long ([`Source::WetService`]).
    pub is_wet: bool,
    /// Treated through incisions.
    pub is_incised: bool,
}

/// What ends a span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Governs {
    /// It would break.
    Bending,
    /// It would sag too far.
    Deflection,
    /// It would split along.
    Shear,
}

/// How far a joist may span by each, and by all.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spans {
    /// By bending.
    pub bending: Length,
    /// By sag.
    pub deflection: Length,
    /// By shear.
    pub shear: Length,
}

impl Spans {
    /// The least.
    pub fn allowed(&self) -> Length {
        self.bending.min(self.deflection).min(self.shear)
    }

    /// What that is by.
    pub fn governs(&self) -> Governs {
        match self.allowed() {
            least if least == self.bending => Governs::Bending,
            least if least == self.deflection => Governs::Deflection,
            _ => Governs::Shear,
        }
    }
}

impl Governs {
    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Bending => "bending",
            Self::Deflection => "deflection",
            Self::Shear => "shear",
        }
    }
}

/// How far joists of a section may span, so far apart. Source: [`Source::SpanMethod`],
/// [`Source::DesignValues`], [`Source::WetService`].
pub fn span(section: Section, values: DesignValues, spacing: Length, loads: Loads, service: Service) -> Known<Spans> {
    let DesignValues { bending, shear, stiffness, source: _ } = serving(values, service);
    // Pounds an inch of joist.
    let an_inch = |load: f64| load * spacing.to_inches() / 144.0;
    let (all, live) = (an_inch(loads.live + loads.dead), an_inch(loads.live));
    let repetitive = if spacing <= REPETITIVE_TO { REPETITIVE } else { 1.0 };
    let by_bending = libm::sqrt(8.0 * bending * repetitive * section.modulus() / all);
    let by_sag = libm::cbrt(384.0 * stiffness * section.inertia() / (5.0 * SAG * live));
    let by_shear = 2.0 * (shear * section.area() / (1.5 * all) + section.depth.to_inches());
    let value = Spans {
        bending: Length::from_inches(by_bending),
        deflection: Length::from_inches(by_sag),
        shear: Length::from_inches(by_shear),
    };
    let why = Why::rule(
        "The least span by bending, by live-load sag of a 360th, and by shear.",
        &[Source::SpanMethod, values.source, Source::WetService],
    )
    .with("spacing", format!("{:.1} in", spacing.to_inches()))
    .with("loads", format!("{} live, {} dead, psf", loads.live, loads.dead));
    let doubts = vec!["Today's values for today's grades: old or decayed wood, notches and bearings are judged apart. No engineer's design.".to_owned()];
    Known { value, assumed: Vec::new(), doubts, why }
}

/// The values in such service.
pub(super) fn serving(values: DesignValues, service: Service) -> DesignValues {
    let DesignValues { mut bending, mut shear, mut stiffness, source } = values;
    if service.is_wet {
        bending *= if bending > WET_BENDING_FROM { 0.85 } else { 1.0 };
        shear *= 0.97;
        stiffness *= 0.90;
    }
    if service.is_incised {
        bending *= 0.80;
        shear *= 0.80;
        stiffness *= 0.95;
    }
    DesignValues { bending, shear, stiffness, source }
}
