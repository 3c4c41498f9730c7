//! Vents of a crawl space, and the air of one without.

use crate::engine::air::dehumidifier::pints_a_day;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{Area, Length};

/// Cubic feet a minute for so many square feet ([`Source::UnventedAir`]).
const SQUARE_FEET_A_CFM: f64 = 50.0;

/// How many vents a crawl space takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Vents {
    /// Net free area in all.
    pub net_free: Area,
    /// Vents by that area.
    pub by_area: u32,
    /// Vents with one near each corner.
    pub with_corners: u32,
}

/// An unvented crawl space's air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unvented {
    /// Cubic feet a minute, of exhaust or of supply.
    pub cfm: f64,
    /// How often an hour that changes its air.
    pub changes_an_hour: f64,
    /// Pints a day of a dehumidifier instead.
    pub pints_a_day: f64,
}

/// Vents of so much net free area each, by their label, one square foot of it for
/// `one_in` square feet of floor: 150, or 1500 over a ground cover. With `corners` one
/// stands within 3 ft of each. Source: [`Source::VentArea`].
pub fn vents(floor: Area, one_in: u32, each: Area, corners: u32) -> Known<Vents> {
    let net_free = floor.to_square_feet() / f64::from(one_in.max(1));
    let by_area = libm::ceil(net_free / each.to_square_feet().max(1e-9) - 1e-9).max(0.0) as u32;
    let value =
        Vents { net_free: Area::from_square_inches(net_free * 144.0), by_area, with_corners: by_area.max(corners) };
    let why = Why::rule(
        "Net free area of floor over 150, or over 1500 on a cover; one vent near each corner.",
        &[Source::VentArea],
    )
    .with("floor", format!("{:.0} sq ft", floor.to_square_feet()))
    .with("ratio", format!("1/{one_in}"));
    Known { value, assumed: Vec::new(), doubts: vec![LOCAL.to_owned()], why }
}

/// The air of an unvented crawl space so high. Source: [`Source::UnventedAir`],
/// [`Source::DehumidifierSize`].
pub fn unvented(floor: Area, height: Length) -> Known<Unvented> {
    let cfm = floor.to_square_feet() / SQUARE_FEET_A_CFM;
    let volume = floor.to_square_feet() * height.to_feet();
    let changes_an_hour = if volume > 0.0 { cfm * 60.0 / volume } else { 0.0 };
    let value = Unvented { cfm, changes_an_hour, pints_a_day: pints_a_day(floor).value };
    let why = Why::rule(
        "1 cfm of exhaust, or of conditioned supply, for 50 sq ft; or a dehumidifier.",
        &[Source::UnventedAir, Source::DehumidifierSize],
    );
    Known { value, assumed: Vec::new(), doubts: vec![LOCAL.to_owned()], why }
}

/// What holds for every rule here.
const LOCAL: &str = "States differ: your local code decides.";
