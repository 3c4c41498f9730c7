//! What the job asks of its roof's water: gutter, downspouts, and where it lands.

use super::checks::{Check, least};
use super::roof::{Runoff, runoff};
use super::worse::Worse;
use crate::engine::figure::{Figure, Known, Need};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::{Area, Length};

/// How far water is led ([`Source::Discharge`]).
const LED: Length = Length::feet(5);
/// How ground falls in its first 10 ft ([`Source::Grading`]).
const FALLS: Length = Length::inches(6);

/// Gutters by name, and the roof that each drains at an inch an hour, square feet: by nominal
/// size ([`Source::GutterCapacity`], [`Source::GutterShape`]).
const GUTTERS: [(&str, f64); 4] =
    [("5 in K-style", 2500.0), ("6 in K-style", 3840.0), ("5 in half-round", 2500.0), ("6 in half-round", 3840.0)];

/// A gutter of which only its own table was stated.
pub const UNNAMED: &str = "by its own table";

/// The roof's water, and what takes it away.
#[derive(Debug, Clone, PartialEq)]
pub struct Rain {
    /// What comes off.
    pub runoff: Runoff,
    /// The gutter that was chosen, or else the smallest that takes it; none does if none is
    /// large enough.
    pub gutter: Option<&'static str>,
    /// Does that take it? By its own table, if one was given.
    pub takes: bool,
    /// How long it is, if that was measured.
    pub eave: Option<Length>,
}

/// The water of the job's roof. Source: [`Source::Downspouts`], [`Source::PitchFactor`],
/// [`Source::GutterCapacity`], [`Source::GutterShape`].
pub fn rain(job: &Job, units: Units) -> Figure<Rain> {
    let particulars = Particulars::of(job);
    let mut said = Worse::of(particulars);
    let (plan, rain) = (said.most(&list::ROOF_AREA), said.most(&list::RAIN));
    let downspout = said.least(&list::DOWNSPOUT);
    let (Some(plan), Some(inches), Some(each)) = (plan, rain, downspout) else {
        return Figure::without([
            (plan.is_none(), Need::RoofArea),
            (rain.is_none(), Need::Rain),
            (downspout.is_none(), Need::Downspout),
        ]);
    };
    let mut assumed = Vec::new();
    let steepest = said.words(&list::PITCH).into_iter().filter_map(pitch_factor).max_by(f64::total_cmp);
    let factor = steepest.unwrap_or_else(|| {
        assumed.push("a roof of 12/12 or more, since nobody said its pitch".to_owned());
        STEEPEST
    });
    let plan = Area::from_square_inches(plan.get() * 144.0);
    let Known { value: runoff, mut doubts, mut why, .. } = runoff(plan, factor, inches.get(), each.get());
    why.sources.extend([Source::PitchFactor, Source::GutterCapacity, Source::GutterShape]);
    why = why.with("roof", units.area(plan)).with("pitch factor", factor.to_string());
    let own = own_table(particulars, &mut said);
    let (gutter, takes) = gutter(&said.words(&list::GUTTER), own, runoff.at_an_inch.to_square_feet());
    if own.is_none() && gutter.is_some_and(|name| name.contains("K-style")) {
        doubts.push("Taken as a half-round gutter of its size: where it takes more, state its own table.".to_owned());
    }
    let eave = said.longest(&list::EAVE);
    assumed.extend(said.assumed());
    Figure::Known(Known { value: Rain { runoff, gutter, takes, eave }, assumed, doubts, why })
}

/// Where water lands and how the ground falls, whatever else is known. Source:
/// [`Source::Discharge`], [`Source::Grading`].
pub fn led_away(job: &Job, units: Units) -> Vec<Check> {
    let said = Particulars::of(job);
    let of = |item| least(said, item);
    vec![
        Check {
            what: "Water lands",
            source: Source::Discharge,
            ..at_least(of(&list::DISCHARGE), LED, "from the wall", units)
        },
        Check {
            what: "Ground falls in its first 10 ft",
            source: Source::Grading,
            ..at_least(of(&list::FALL), FALLS, "away from it", units)
        },
    ]
}

/// The factor of the steepest pitch that can be said ([`Source::PitchFactor`]).
const STEEPEST: f64 = 1.3;

fn pitch_factor(pitch: &str) -> Option<f64> {
    match pitch {
        "flat to 3/12" => Some(1.0),
        "4 to 5/12" => Some(1.05),
        "6 to 8/12" => Some(1.1),
        "9 to 11/12" => Some(1.2),
        "12/12 or more" => Some(STEEPEST),
        _ => None,
    }
}

/// What the gutter takes by its own table, with whether another gutter was named after that: then
/// the table may be of the one before.
fn own_table(particulars: Particulars<'_>, said: &mut Worse<'_>) -> Option<Own> {
    let takes = said.least(&list::GUTTER_TAKES)?.get();
    let when = |item| particulars.last_words(&Part::House, item).into_iter().map(|it| it.when());
    let is_of_another = when(&list::GUTTER).any(|named| when(&list::GUTTER_TAKES).any(|said| named.is_after(said)));
    Some(Own { takes, is_of_another })
}

#[derive(Clone, Copy)]
struct Own {
    takes: f64,
    is_of_another: bool,
}

/// The gutter, and whether it takes so many square feet at an inch an hour. A name is never joined
/// to what another gutter takes; of two that were named the one that takes less counts.
fn gutter(named: &[&str], own: Option<Own>, square_feet: f64) -> (Option<&'static str>, bool) {
    let listed = GUTTERS.into_iter().filter(|(name, _)| named.contains(name));
    let chosen = listed.min_by(|one, other| one.1.total_cmp(&other.1));
    match (chosen, own) {
        (Some((name, takes)), None) => (Some(name), takes >= square_feet),
        (Some((name, takes)), Some(own)) => {
            let takes = if own.is_of_another { own.takes.min(takes) } else { own.takes };
            (Some(name), takes >= square_feet)
        }
        (None, Some(own)) => (Some(UNNAMED), own.takes >= square_feet),
        (None, None) => {
            let fits = GUTTERS.into_iter().take(2).find(|(_, takes)| *takes >= square_feet);
            (fits.map(|(name, _)| name), fits.is_some())
        }
    }
}

fn at_least(measured: Option<Length>, least: Length, which: &str, units: Units) -> Check {
    let asked = format!("{} or more asked for", units.length(least));
    let (holds, says) = match measured {
        None => (None, format!("not measured; {asked}")),
        Some(measured) => (Some(measured >= least), format!("{} {which}, {asked}", units.length(measured))),
    };
    Check { what: "", holds, says, source: Source::Discharge }
}
