//! Air and surfaces in words.

use super::cards::{Card, Line, reasons};
use crate::engine::air::mould::days_until_seen;
use crate::engine::air::{Air, AirLocation, SurfaceReading, dew_point, in_air};
use crate::engine::describe::place_of;
use crate::engine::figure::Need;
use crate::engine::job::{Job, Seen};
use crate::engine::results::latest_air;
use crate::engine::take::Units;

/// How the surfaces stand in the air that was read last.
pub(super) fn air(job: &Job, units: Units) -> Card {
    let title = "Does anything sweat?";
    let Some((id, air)) = latest_air(job, AirLocation::Crawl) else { return Card::missing(title, &[Need::CrawlAir]) };
    let visit = job.now.air().get(&id).and_then(|air| air.stamp.visit);
    let of_visit = || job.now.surfaces().values().filter(move |surface| surface.stamp.visit == visit);
    let dew = units.temperature(dew_point(air).value);
    let mut lines: Vec<_> = of_visit().map(|surface| Line::plain(margin(job, surface, air, units))).collect();
    let sweating = of_visit().filter(|surface| in_air(surface.value.temperature.value, air).value.is_close()).count();
    let headline = match (lines.len(), sweating) {
        (0, _) => format!("Whatever is colder than {dew}"),
        (_, 0) => "Nothing that was read".to_owned(),
        (_, some) => format!("{some} of {} surfaces, or nearly", lines.len()),
    };
    let coldest = of_visit().map(|surface| surface.value.temperature.value).min().unwrap_or(air.temperature);
    let mould = days_until_seen(coldest, air);
    lines.push(Line::plain(match mould.value {
        Some(days) => format!("Mold may be seen on planed wood after about {days:.0} days of this."),
        None => "Mold would not come to be seen on planed wood if it stays so.".to_owned(),
    }));
    lines.extend(reasons(&mould));
    lines.extend(reasons(&in_air(coldest, air)));
    Card::new(title, headline, lines)
}

fn margin(job: &Job, surface: Seen<'_, SurfaceReading>, air: Air, units: Units) -> String {
    let temperature = surface.value.temperature.value;
    let margin = in_air(temperature, air).value.margin.to_fahrenheit();
    let at = place_of(job, surface.value.place, units);
    let stands = if margin > 0.0 { "above" } else { "below" };
    format!("{}{at}: {:.1} °F {stands} the dew point.", units.temperature(temperature), margin.abs())
}
