//! The same observation with its value typed again.

use super::settings::Units;
use crate::engine::entry::Note;
use crate::engine::job::{Fact, Job, Observation};
use crate::engine::moisture::{Reading, Shown};
use crate::engine::survey::inside;
use crate::engine::units::decimal::{parse_moisture_content, parse_temperature};
use crate::engine::units::tape::{self, Sign};
use crate::engine::units::{Length, Typed};

/// `seen` with the value that `text` says instead of its own.
///
/// # Errors
/// A sentence that names the field, the value and what would do; also for things that
/// have no single typed value, which are taken back and logged anew.
pub fn retyped(job: &Job, seen: &Observation, text: &str, units: Units) -> Result<Observation, String> {
    let again = typed_again(seen, text, units)?;
    let of_fact = if let Observation::Fact(fact) = &again { fact.refused() } else { None };
    match of_fact.or_else(|| inside::refuses(job, &again, units)) {
        // What stood there before may stand there still.
        Some(why) if again != *seen => Err(format!("Length: \"{}\": {why}", text.trim())),
        _ => Ok(again),
    }
}

fn typed_again(seen: &Observation, text: &str, units: Units) -> Result<Observation, String> {
    let length = |sign| -> Result<Typed<Length>, String> {
        tape::parse(text, units.bare_length(), sign).map_err(|problem| format!("Length: {problem}"))
    };
    let mut seen = seen.clone();
    match &mut seen {
        Observation::Side(side) => side.length = positive(length(Sign::Refused)?)?,
        Observation::Tie(tie) => tie.length = positive(length(Sign::Refused)?)?,
        Observation::Joists(joists) => joists.spacing = positive(length(Sign::Refused)?)?,
        Observation::JoistCenter(center) => center.center = length(Sign::Allowed)?,
        Observation::Layer(layer) => layer.thickness = positive(length(Sign::Refused)?)?,
        Observation::OnHand(piece) => piece.length = positive(length(Sign::Refused)?)?,
        Observation::Measure(measure) => measure.length = length(Sign::Allowed)?,
        Observation::Level(level) => level.drop = length(Sign::Allowed)?,
        Observation::Fact(Fact::CrawlHeight(height)) => *height = length(Sign::Refused)?,
        Observation::Reading(reading) => {
            let shown = parse_moisture_content(text).map_err(|problem| format!("Moisture: {problem}"))?;
            *reading = Reading { shown: Shown::Percent(shown), doubted: false, typed_first: None, ..reading.clone() };
        }
        Observation::SurfaceReading(surface) => {
            surface.temperature =
                parse_temperature(text, units.scale).map_err(|problem| format!("Temperature: {problem}"))?;
        }
        Observation::Photo(photo) => {
            photo.caption = Note::new(text).map_err(|problem| format!("Caption: {problem}"))?;
        }
        Observation::Condition(condition) => {
            let note = Note::new(text).map_err(|problem| format!("Note: {problem}"))?;
            condition.note = (!note.is_empty()).then_some(note);
        }
        other => return Err(format!("This {} is not typed again: take it back and log it anew.", other.label())),
    }
    Ok(seen)
}

/// What a correction of `seen` starts from, and what it is called; none for things that
/// are taken back and logged anew.
pub fn retypable(seen: &Observation) -> Option<(&'static str, String)> {
    match seen {
        Observation::Side(side) => Some(("Length, rightly", side.length.typed.clone())),
        Observation::Tie(tie) => Some(("Length, rightly", tie.length.typed.clone())),
        Observation::Joists(joists) => Some(("Spacing, rightly", joists.spacing.typed.clone())),
        Observation::JoistCenter(center) => Some(("Center, rightly", center.center.typed.clone())),
        Observation::Layer(layer) => Some(("Thickness, rightly", layer.thickness.typed.clone())),
        Observation::OnHand(piece) => Some(("Length, rightly", piece.length.typed.clone())),
        Observation::Measure(measure) => Some(("Length, rightly", measure.length.typed.clone())),
        Observation::Level(level) => Some(("Level, rightly", level.drop.typed.clone())),
        Observation::Fact(Fact::CrawlHeight(height)) => Some(("Crawl height, rightly", height.typed.clone())),
        Observation::Reading(reading) => match &reading.shown {
            Shown::Percent(shown) => Some(("Moisture, rightly", shown.typed.clone())),
            Shown::OverMaximum | Shown::UnderMinimum => Some(("Moisture, rightly", String::new())),
        },
        Observation::SurfaceReading(surface) => Some(("Temperature, rightly", surface.temperature.typed.clone())),
        Observation::Photo(photo) => Some(("Caption", photo.caption.to_string())),
        Observation::Condition(condition) => {
            Some(("Note", condition.note.as_ref().map(ToString::to_string).unwrap_or_default()))
        }
        _ => None,
    }
}

fn positive(length: Typed<Length>) -> Result<Typed<Length>, String> {
    if length.value.is_positive() {
        Ok(length)
    } else {
        Err(format!("Length: \"{}\" is no length: more than 0 is accepted", length.typed))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::DeviceId;
    use crate::engine::job::{Book, Record};
    use crate::engine::sample;

    /// Everything that can be typed again is the same when the same is typed.
    #[test]
    fn typing_the_same_again_changes_nothing() {
        let records = sample::entries(DeviceId::new(1)).into_iter().map(|entry| Record::of(entry).unwrap());
        let book = Book::of(records);
        let mut typed_again = 0;
        for record in book.log().records() {
            let Some(seen) = book.job().now.get(record.id()).map(|thing| &thing.value) else { continue };
            let Some((_, text)) = retypable(seen) else { continue };
            assert_eq!(retyped(book.job(), seen, &text, Units::default()).as_ref(), Ok(seen));
            typed_again += 1;
        }
        assert!(typed_again > 40, "{typed_again}");
    }
}
