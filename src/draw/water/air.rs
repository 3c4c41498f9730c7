//! Air and surfaces in words.

use crate::draw::card::{Card, Line, reasons};
use crate::engine::air::mould::FIRST_SEEN;
use crate::engine::air::{Air, dew_point, equilibrium_moisture, in_air};
use crate::engine::describe::{capital, place_of};
use crate::engine::drying::air::Surface;
use crate::engine::drying::mould::{Grown, grown_over_visits, mould, mould_found, wet_found};
use crate::engine::drying::{Dries, Mould, VisitAir, ventilating};
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Known, Need};
use crate::engine::job::Job;
use crate::engine::take::Units;
use crate::engine::units::decimal::Scale;

const READ_WOOD: &str = "Read how warm the coldest wood is: Air, Wood temperature.";

/// How the surfaces stand in the air of this visit that condenses first.
pub(super) fn surfaces(job: &Job, units: Units) -> Card {
    let title = "Does anything sweat?";
    let read = VisitAir::of(job);
    let (Some((_, air)), Figure::Known(mould)) = (read.crawl.fullest(), mould(job)) else {
        return Card::missing(title, &[Need::CrawlAir]);
    };
    let dew = units.temperature(dew_point(air).value);
    let mut lines: Vec<_> = read.surfaces.iter().map(|it| Line::plain(margin(job, it, air, units))).collect();
    let sweating = read.surfaces.iter().filter(|surface| in_air(surface.warmth, air).value.is_close());
    let wet = wet_found(job);
    let headline = match (lines.len(), sweating.count()) {
        _ if !wet.is_empty() => "Something was found wet".to_owned(),
        (0, _) => format!("Whatever is colder than {dew}"),
        (_, 0) => "Nothing that was read".to_owned(),
        (all, some) => format!("{some} of {all} surfaces, or nearly"),
    };
    lines.extend(
        wet.into_iter().map(|place| Line::plain(format!("Droplets or a wet film{}.", found_at(job, place, units)))),
    );
    lines.extend(mould_lines(job, &mould, units));
    lines.extend(reasons(&mould));
    match read.coldest() {
        Some(coldest) => lines.extend(reasons(&in_air(coldest.warmth, air))),
        None => lines.extend(reasons(&dew_point(air))),
    }
    Card::new(title, headline, lines)
}

/// Mold that was found, or when it may be.
fn mould_lines(job: &Job, known: &Known<Mould>, units: Units) -> Vec<Line> {
    let found = mould_found(job);
    if !found.is_empty() {
        let each = found.into_iter().map(|place| found_at(job, place, units));
        return each.map(|at| Line::plain(format!("Mold{at}: it comes here, whatever the sums say."))).collect();
    }
    let Mould { days, at, is_wood_read } = known.value;
    let at = units.temperature(at);
    let mut lines = vec![Line::plain(match days {
        Some(days) => format!("Mold may be seen on planed wood at {at} after about {days:.0} days of this."),
        None if is_wood_read => {
            "Mold would not come to be seen on planed wood as warm as what was read, if it stays so.".to_owned()
        }
        None => format!(
            "Whether mold comes is not known: nobody read how cold the wood is. At {at} it would not come to be seen, on \
             colder wood it may."
        ),
    })];
    if !is_wood_read {
        lines.push(Line::next(READ_WOOD));
    }
    lines.extend(grown_over_visits(job).map(|grown| Line::plain(grown_words(grown))));
    lines
}

fn grown_words(grown: Grown) -> String {
    const UNKNOWN: &str = "How much mold grew from one visit to the next is not known: the crawl air of a visit was read once, \
                           and is drier than it is likely to be.";
    let held =
        "Had crawl air stayed from one visit to the next as read, and wood been as warm as it, the mold index would be";
    match grown {
        Grown::To(index) if index >= FIRST_SEEN => format!("{held} {index:.1} of 6: it may be seen."),
        Grown::To(index) => format!("{held} {index:.1} of 6: too little to be seen."),
        Grown::Unknown => UNKNOWN.to_owned(),
    }
}

fn found_at(job: &Job, place: Option<EntryId>, units: Units) -> String {
    format!(" was found{}", place_of(job, place, units))
}

fn margin(job: &Job, surface: &Surface, air: Air, units: Units) -> String {
    let margin = in_air(surface.warmth, air).value.margin;
    let margin = if units.scale == Scale::Fahrenheit { margin.to_fahrenheit() } else { margin.to_celsius() };
    let stands = if margin > 0.0 { "above" } else { "below" };
    let degrees = units.scale.symbol();
    format!("{}: {:.1} {degrees} {stands} the dew point.", named(job, surface, units), margin.abs())
}

/// "58.0 °F at joist 3".
fn named(job: &Job, surface: &Surface, units: Units) -> String {
    let logged = job.now.surfaces().get(&surface.id).map(|it| it.value.place);
    let read = || Some(job.now.readings().get(&surface.id)?.value.place);
    let place = logged.unwrap_or_else(read);
    format!("{}{}", units.temperature(surface.warmth), place_of(job, place, units))
}

/// Would outdoor air as it was read dry the wood to its limit?
pub fn ventilating_card(job: &Job, units: Units) -> Card {
    let title = ventilating::ASKS;
    let known = match ventilating(job) {
        Figure::Missing(needs) => return Card::missing(title, &needs),
        Figure::Known(known) => known,
    };
    let read = VisitAir::of(job);
    let now = read.crawl.dampest().map(|(_, air)| equilibrium_moisture(air.temperature, air.humidity));
    let mut lines: Vec<_> = now
        .map(|now| {
            let there = known.value.at_wood.map_or_else(String::new, |there| {
                format!(", at {:.1} % in outdoor air at the wood", there.equilibrium.to_percent())
            });
            Line::plain(format!("Wood ends at {:.1} % in crawl air as read{there}.", now.to_percent()))
        })
        .into_iter()
        .collect();
    lines.push(Line::plain(format!(
        "Outdoor air holds {:.0} grains of vapor a pound, crawl air {:.0}.",
        known.value.venting.outside.to_grains_per_pound(),
        known.value.venting.crawl.to_grains_per_pound()
    )));
    if let Some(wet) = known.value.wets {
        lines.push(Line::plain(format!("{} would get wet in outdoor air.", capital(&named(job, &wet, units)))));
    }
    if known.value.says == Dries::NotKnown {
        lines.push(Line::next(READ_WOOD));
    }
    lines.extend(known.value.is_open_below().map(Line::next));
    lines.extend(reasons(&known));
    Card::new(title, known.value.says.label(), lines)
}
