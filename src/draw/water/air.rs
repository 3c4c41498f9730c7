//! Air and surfaces in words.

use crate::draw::card::{Card, Line, reasons};
use crate::engine::air::mould::{FIRST_SEEN, days_until_seen, index_after};
use crate::engine::air::{Air, AirLocation, SurfaceReading, dew_point, equilibrium_moisture, in_air, venting};
use crate::engine::closing::Limits;
use crate::engine::describe::place_of;
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Need};
use crate::engine::ground::plan::is_covered_now;
use crate::engine::job::{Job, Seen};
use crate::engine::results::latest_air;
use crate::engine::take::Units;
use crate::engine::units::Temperature;
use crate::engine::units::decimal::Scale;

/// Mold is not followed over longer gaps between readings than this.
const LONGEST_GAP_HOURS: i64 = 24 * 120;

/// How the surfaces stand in the air that was read last.
pub(super) fn surfaces(job: &Job, units: Units) -> Card {
    let title = "Does anything sweat?";
    let Some((id, air)) = latest_air(job, AirLocation::Crawl) else { return Card::missing(title, &[Need::CrawlAir]) };
    let of_visit = of_visit(job, id);
    let dew = units.temperature(dew_point(air).value);
    let mut lines: Vec<_> = of_visit.iter().map(|surface| Line::plain(margin(job, *surface, air, units))).collect();
    let sweating = of_visit.iter().filter(|surface| in_air(surface.value.temperature.value, air).value.is_close());
    let headline = match (lines.len(), sweating.count()) {
        (0, _) => format!("Whatever is colder than {dew}"),
        (_, 0) => "Nothing that was read".to_owned(),
        (all, some) => format!("{some} of {all} surfaces, or nearly"),
    };
    let coldest = coldest(&of_visit).unwrap_or(air.temperature);
    let mould = days_until_seen(coldest, air);
    lines.push(Line::plain(match mould.value {
        Some(days) => format!("Mold may be seen on planed wood after about {days:.0} days of this."),
        None => "Mold would not come to be seen on planed wood if it stays so.".to_owned(),
    }));
    lines.extend(over_the_visits(job).map(Line::plain));
    lines.extend(reasons(&mould));
    lines.extend(reasons(&in_air(coldest, air)));
    Card::new(title, headline, lines)
}

/// The surfaces that were read in the same visit as some air.
fn of_visit(job: &Job, air: EntryId) -> Vec<Seen<'_, SurfaceReading>> {
    let visit = job.now.air().get(&air).map(|air| air.in_visit());
    let is_then = |surface: &Seen<'_, _>| visit.is_some_and(|visit| visit.is_same(surface.in_visit()));
    job.now.surfaces().values().filter(is_then).collect()
}

fn coldest(surfaces: &[Seen<'_, SurfaceReading>]) -> Option<Temperature> {
    surfaces.iter().map(|surface| surface.value.temperature.value).min()
}

fn margin(job: &Job, surface: Seen<'_, SurfaceReading>, air: Air, units: Units) -> String {
    let temperature = surface.value.temperature.value;
    let margin = in_air(temperature, air).value.margin;
    let margin = if units.scale == Scale::Fahrenheit { margin.to_fahrenheit() } else { margin.to_celsius() };
    let at = place_of(job, surface.value.place, units);
    let stands = if margin > 0.0 { "above" } else { "below" };
    let (surface, degrees) = (units.temperature(temperature), units.scale.symbol());
    format!("{surface}{at}: {:.1} {degrees} {stands} the dew point.", margin.abs())
}

/// How far mold may have come from the first crawl air to the last.
fn over_the_visits(job: &Job) -> Option<String> {
    let crawl = job.now.air().values().filter(|air| air.value.location == AirLocation::Crawl);
    let mut crawl: Vec<_> = crawl.map(|air| (air.stamp.at, air.value.air())).collect();
    crawl.sort_by_key(|(at, _)| *at);
    let gaps = crawl.iter().zip(crawl.iter().skip(1));
    let gaps: Vec<_> = gaps.map(|((from, air), (to, _))| ((*to - *from).num_hours(), *air)).collect();
    if gaps.is_empty() || gaps.iter().any(|(hours, _)| *hours > LONGEST_GAP_HOURS) {
        return None;
    }
    let held: Vec<_> = gaps.iter().map(|(hours, air)| (u32::try_from(*hours).unwrap_or(0), *air)).collect();
    let index = index_after(&held).get();
    let seen = if index >= FIRST_SEEN { "it may be seen" } else { "too little to be seen" };
    Some(format!(
        "Had crawl air stayed from one reading to the next as read, the mold index would be {index:.1} of 6: {seen}."
    ))
}

/// Would outdoor air as it was read dry the wood to its limit?
pub(super) fn ventilating(job: &Job) -> Card {
    let title = "Would it dry by ventilating alone?";
    let (outside, crawl) = (latest_air(job, AirLocation::Outdoors), latest_air(job, AirLocation::Crawl));
    let surfaces = crawl.map(|(id, _)| of_visit(job, id)).unwrap_or_default();
    let wood = coldest(&surfaces).or(crawl.map(|(_, air)| air.temperature));
    let known = match venting(outside.map(|(_, air)| air), crawl.map(|(_, air)| air), wood, None) {
        Figure::Missing(needs) => return Card::missing(title, &needs),
        Figure::Known(known) => known,
    };
    let (Some(there), Some((_, crawl))) = (known.value.at_surface, crawl) else {
        return Card::missing(title, &[Need::CrawlAir]);
    };
    let limit = Limits::of(job).framing.at;
    let no = match () {
        () if there.condenses => Some("No: outdoor air would wet the wood"),
        () if !known.value.removes_vapour() => Some("No: outdoor air brings vapor in"),
        () if there.equilibrium > limit => Some("No: wood would stay over its limit in it"),
        () => None,
    };
    let now = equilibrium_moisture(crawl.temperature, crawl.humidity).to_percent();
    let grains = |ratio: crate::engine::air::HumidityRatio| ratio.to_grains_per_pound();
    let lines = vec![
        Line::plain(format!(
            "Wood ends at {now:.1} % in crawl air as read, at {:.1} % in outdoor air at the wood.",
            there.equilibrium.to_percent()
        )),
        Line::plain(format!(
            "Outdoor air holds {:.0} grains of vapor a pound, crawl air {:.0}.",
            grains(known.value.outside),
            grains(known.value.crawl)
        )),
    ];
    let is_wetted = no.is_none() && is_covered_now(job) != Some(true);
    let lines = lines.into_iter().chain(is_wetted.then(|| Line::next(WETTED))).chain(reasons(&known)).collect();
    Card::new(title, no.unwrap_or("It can, while the air outdoors is like this"), lines)
}

const WETTED: &str = "This counts the vapor in the air alone. Bare soil and standing water give more all the time: lead \
     water away and cover the soil first.";
