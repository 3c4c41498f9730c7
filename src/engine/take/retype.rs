//! The same observation with its value typed again.

use super::settings::Units;
use crate::engine::job::{Fact, Observation};
use crate::engine::moisture::Shown;
use crate::engine::units::decimal::{parse_moisture_content, parse_temperature};
use crate::engine::units::tape::{self, Sign};
use crate::engine::units::{Length, Typed};

/// `seen` with the value that `text` says instead of its own.
///
/// # Errors
/// A sentence that names the field, the value and what would do; also for things that
/// have no single typed value, which are taken back and logged anew.
pub fn retyped(seen: &Observation, text: &str, units: Units) -> Result<Observation, String> {
    let length = |sign| -> Result<Typed<Length>, String> {
        tape::parse(text, units.bare_length(), sign).map_err(|problem| format!("Length: {problem}"))
    };
    let mut seen = seen.clone();
    match &mut seen {
        Observation::Side(side) => side.length = positive(length(Sign::Refused)?)?,
        Observation::Joists(joists) => joists.spacing = positive(length(Sign::Refused)?)?,
        Observation::Measure(measure) => measure.length = length(Sign::Allowed)?,
        Observation::Level(level) => level.drop = length(Sign::Allowed)?,
        Observation::Fact(Fact::CrawlHeight(height)) => *height = positive(length(Sign::Refused)?)?,
        Observation::Reading(reading) => {
            let shown = parse_moisture_content(text).map_err(|problem| format!("Moisture: {problem}"))?;
            reading.shown = Shown::Percent(shown);
        }
        Observation::SurfaceReading(surface) => {
            surface.temperature =
                parse_temperature(text, units.scale).map_err(|problem| format!("Temperature: {problem}"))?;
        }
        other => return Err(format!("A {} is not typed again: take it back and log it anew.", other.label())),
    }
    Ok(seen)
}

fn positive(length: Typed<Length>) -> Result<Typed<Length>, String> {
    if length.value.is_positive() {
        Ok(length)
    } else {
        Err(format!("Length: \"{}\" is no length: more than 0 is accepted", length.typed))
    }
}
