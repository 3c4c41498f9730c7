//! What carries the ends of a joist and keeps them upright.

use super::reason;
use crate::engine::framing::joist::Joist;
use crate::engine::framing::member::{BearsOn, Done, EndsHeld, OverGirder};
use crate::engine::framing::schedule::{ENGINEER, Fate, Reason};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// How far joists lap over what carries them both ([`Source::JoistLaps`]).
pub const LEAST_LAP: Length = Length::inches(3);

pub(super) fn reasons(joist: &Joist, units: Units) -> Vec<Reason> {
    [bearing(joist, units), upright(joist), over_the_girder(joist, units)].into_iter().flatten().collect()
}

/// What nobody said of a support is ended by saying it, or by an engineer who saw it.
const fn ended_by(fate: Fate) -> &'static [Done] {
    if matches!(fate, Fate::Open) { &ENGINEER } else { fate.ended_by() }
}

fn bearing(joist: &Joist, units: Units) -> Option<Reason> {
    let source = if joist.bears_on == Some(BearsOn::Masonry) { Source::SillBearing } else { Source::Bearing };
    let judged = |fate, words: String| Some(reason(fate, source, joist.since.bearing, words).ended_by(ended_by(fate)));
    match (joist.bears_on, joist.bearing, joist.bearing_asked()) {
        (None, ..) => judged(Fate::Open, "say what it bears on: wood, metal, masonry, a hanger or a ribbon".to_owned()),
        (Some(BearsOn::Hanger | BearsOn::Ribbon), ..) | (_, None, _) | (_, _, None) => None,
        (Some(_), Some(bearing), Some(asked)) if bearing < asked => {
            let [bearing, asked] = [bearing, asked].map(|length| units.length(length));
            judged(Fate::Mend, format!("bears on {bearing} of {asked}: a hanger, a ledger, or a sister to the support"))
        }
        (Some(_), Some(_), Some(_)) => None,
    }
}

fn upright(joist: &Joist) -> Option<Reason> {
    match joist.ends {
        Some(EndsHeld::Held) => None,
        Some(EndsHeld::Loose) => Some(reason(
            Fate::Mend,
            Source::LateralRestraint,
            joist.since.ends,
            "nothing keeps its ends from turning over: put blocking in",
        )),
        None => {
            let words = "say what keeps its ends from turning over: rim joist, blocking or hanger";
            Some(reason(Fate::Open, Source::LateralRestraint, joist.since.ends, words).ended_by(&ENGINEER))
        }
    }
}

fn over_the_girder(joist: &Joist, units: Units) -> Option<Reason> {
    let since = joist.since.over_girder;
    let judged = |fate, words: String| Some(reason(fate, Source::JoistLaps, since, words).ended_by(ended_by(fate)));
    match (joist.over_girder, joist.lap) {
        (None, _) => judged(Fate::Open, "say how it goes on over the girder".to_owned()),
        (Some(OverGirder::Through | OverGirder::Before | OverGirder::Tied), _) => None,
        (Some(OverGirder::Loose), _) => {
            judged(Fate::Mend, "butts the next over the girder with nothing across: tie or lap them".to_owned())
        }
        (Some(OverGirder::Laps), None) => {
            judged(Fate::Open, "measure how far it laps the next over the girder".to_owned())
        }
        (Some(OverGirder::Laps), Some(lap)) if lap < LEAST_LAP => {
            let [lap, least] = [lap, LEAST_LAP].map(|length| units.length(length));
            judged(Fate::Mend, format!("laps the next by {lap}, where {least} is asked for: tie them"))
        }
        (Some(OverGirder::Laps), Some(_)) => None,
    }
}
