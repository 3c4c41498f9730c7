//! How large a dehumidifier an unvented crawl space takes.

use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Area;

/// Pints a day for a thousand square feet ([`Source::DehumidifierSize`]).
const PINTS_A_DAY: f64 = 70.0;

/// Pints of water a day that the code asks of a dehumidifier under so much floor.
/// Source: [`Source::DehumidifierSize`].
pub fn pints_a_day(floor: Area) -> Known<f64> {
    let pints = PINTS_A_DAY * floor.to_square_feet() / 1000.0;
    let why = Why::rule("70 pints a day for 1,000 sq ft of crawl space.", &[Source::DehumidifierSize])
        .with("floor", format!("{:.0} sq ft", floor.to_square_feet()));
    let doubts = vec![
        "Ratings of before June 2019 were taken warmer and read higher; a cold crawl space takes more off again."
            .to_owned(),
        "States differ: your local code decides. Cover bare ground first: it gives off more than this.".to_owned(),
    ];
    Known { value: pints, assumed: Vec::new(), doubts, why }
}
