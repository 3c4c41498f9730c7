//! The water of a roof, which is to land anywhere but at the wall.

use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Area;

/// US gallons in a square foot under an inch of rain: 144 cubic inches of 231.
const GALLONS: f64 = 144.0 / 231.0;

/// Roof under an inch of rain an hour that a square inch of downspout drains, square feet
/// ([`Source::Downspouts`]).
const DRAINED: f64 = 1200.0;

/// What comes off a roof.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Runoff {
    /// Gallons for each inch of rain that falls, by the plan area.
    pub gallons_an_inch: f64,
    /// The area that the rain is taken for, with the pitch.
    pub effective: Area,
    /// Gallons a minute in the hardest rain.
    pub peak: f64,
    /// The area that would bring as much at an inch an hour: gutters are sized by it.
    pub at_an_inch: Area,
    /// Downspouts' section in all, square inches.
    pub downspout_section: f64,
    /// How many of the size that was asked for.
    pub downspouts: u32,
}

/// The runoff of a roof's plan area, with a factor for its pitch, at so many inches of
/// rain an hour, into downspouts of so many square inches each. Source: [`Source::Downspouts`].
pub fn runoff(plan: Area, pitch_factor: f64, inches_an_hour: f64, downspout_square_inches: f64) -> Known<Runoff> {
    let feet = plan.to_square_feet();
    let effective = feet * pitch_factor;
    let at_an_inch = effective * inches_an_hour;
    let section = at_an_inch / DRAINED;
    let area = |feet: f64| Area::from_square_inches(feet * 144.0);
    let value = Runoff {
        gallons_an_inch: feet * GALLONS,
        effective: area(effective),
        peak: at_an_inch * GALLONS / 60.0,
        at_an_inch: area(at_an_inch),
        downspout_section: section,
        downspouts: libm::ceil(section / downspout_square_inches.max(1e-9) - 1e-9).max(1.0) as u32,
    };
    let why = Why::rule(
        "Plan area times pitch times intensity; a square inch of downspout for 1,200 sq ft at an inch an hour.",
        &[Source::Downspouts],
    )
    .with("intensity", format!("{inches_an_hour} in an hour"));
    let doubts = vec![
        "Gutter tables differ: take the capacity from the gutter's own table.".to_owned(),
        "Lead it 5 ft or more from the foundation: your local code decides.".to_owned(),
    ];
    Known { value, assumed: Vec::new(), doubts, why }
}
