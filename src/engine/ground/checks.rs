//! What is held to rules: wood to soil, girder ends, the way in, and what a space without
//! vents has to have. What nobody measured or said is open, and never kept.

use super::plan::{AirWay, Covered, is_covered_now};
use crate::engine::job::Job;
use crate::engine::particular::{Item, Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;

/// Something that is held to a rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Check {
    /// What is held to it.
    pub what: &'static str,
    /// Is it kept? None if it was not measured.
    pub holds: Option<bool>,
    /// What was measured and what is asked for, in words.
    pub says: String,
    /// The rule.
    pub source: Source,
}

/// A post stands so far above soil, and more than that ([`Source::Posts`]).
const POST: Length = Length::inches(8);
/// Air around the end of a girder in masonry ([`Source::GirderEnds`]).
const AIR_AT_ENDS: Length = Length::sixty_fourths(32);
/// How far the cover of a space without vents goes up its walls ([`Source::GroundCover`]).
const UP_THE_WALLS: Length = Length::inches(6);
/// What wood may be instead.
const OR_TREATED: &str = "treated or naturally durable wood";

/// Wood to soil, girder ends, and the way in, held to the rules. Source:
/// [`Source::WoodToSoil`], [`Source::Posts`], [`Source::GirderEnds`], [`Source::AccessSize`].
pub fn checks(job: &Job, units: Units) -> Vec<Check> {
    let said = Particulars::of(job);
    let of = |item| least(said, item);
    let joists = job.least_crawl_height().map(|height| height.value);
    vec![
        clear("Joists to soil", joists, Length::inches(18), units),
        clear("Girders to soil", of(&list::GIRDER_CLEARANCE), Length::inches(12), units),
        posts(job, of(&list::POST_CLEARANCE), units),
        clear("Sills to outside ground", of(&list::SILL_CLEARANCE), Length::inches(8), units),
        girder_ends(said, units),
        access(said, units),
    ]
}

/// What a space without vents has to have: the ground covered, the outer walls insulated, and
/// with a fan or a supply the path that the air takes to or from the rooms. A fan that pulls
/// air out asks besides for the draft of whatever burns fuel. Nothing where there are vents.
/// Source: [`Source::UnventedAir`], [`Source::GroundCover`], [`Source::Backdraft`].
pub fn unvented_checks(job: &Job, units: Units) -> Vec<Check> {
    let way = AirWay::of(job);
    if way == AirWay::Vents {
        return Vec::new();
    }
    let said = Particulars::of(job);
    let mut checks = vec![covered(job, units)];
    match way {
        AirWay::Exhaust => checks.push(yes_or_no(said, &list::AIR_PATH, "Air path down from the rooms", PATH)),
        AirWay::Supply => checks.push(yes_or_no(said, &list::AIR_PATH, "Air path back to the rooms", PATH)),
        AirWay::Dehumidifier | AirWay::Vents => {}
    }
    checks.push(yes_or_no(said, &list::WALLS_INSULATED, "Outer walls insulated", "insulation as the energy code asks"));
    if way == AirWay::Exhaust {
        checks.push(draft(said));
    }
    checks
}

/// The least that may have been said last.
pub(super) fn least(said: Particulars<'_>, item: &Item) -> Option<Length> {
    said.lengths(&Part::House, item).into_iter().min()
}

const PATH: &str = "a duct or a transfer grille";

fn covered(job: &Job, units: Units) -> Check {
    let laid = "wall to wall, joints lapped 6 in and taped, edges sealed 6 in up the walls";
    let up = least(Particulars::of(job), &list::TURN_UP).filter(|up| *up < UP_THE_WALLS);
    let to_be = Covered::of(job);
    let (holds, says) = match (is_covered_now(job), to_be, up) {
        (Some(false), ..) => (Some(false), format!("soil lies bare, and without vents it has to be covered: {laid}")),
        (Some(true), _, Some(up)) | (None, Covered::Yes, Some(up)) => {
            (Some(false), format!("goes {} up the walls; it has to lie {laid}", units.length(up)))
        }
        (Some(true), ..) => (Some(true), format!("said to lie there, laps and edges sealed; asked for is {laid}")),
        (None, Covered::Yes, None) => {
            (None, format!("{}, and nobody said yet that it is; asked for is {laid}", to_be.label()))
        }
        (None, Covered::No, _) => (Some(false), format!("{}, and without vents it has to be: {laid}", to_be.label())),
        (None, Covered::NotSaid, _) => (None, format!("{}, and without vents it has to be: {laid}", to_be.label())),
    };
    Check { what: "Cover over the ground", holds, says, source: Source::GroundCover }
}

fn yes_or_no(said: Particulars<'_>, item: &Item, what: &'static str, how: &str) -> Check {
    let words = said.all_words(&Part::House, item);
    let holds = (!words.is_empty()).then(|| words.iter().all(|word| *word == "yes"));
    let says = match holds {
        Some(true) => format!("said to be there; {how}"),
        Some(false) => format!("said not to be there; {how} is asked for"),
        None => format!("not said; {how} is asked for"),
    };
    Check { what, holds, says, source: Source::UnventedAir }
}

/// Does the fan pull flue gas back down?
fn draft(said: Particulars<'_>) -> Check {
    let test = "test the draft at the worst pull before the fan is left running";
    let words = said.all_words(&Part::House, &list::FUEL_BURNED);
    let (holds, says) = if words.is_empty() {
        (None, format!("not said whether anything burns fuel; if it does, {test}"))
    } else if words.contains(&"yes") {
        (Some(false), test.to_owned())
    } else if words.contains(&"yes, draft tested") {
        (Some(true), "tested with the fan at its worst pull".to_owned())
    } else {
        (Some(true), "nothing burns fuel in the house or below it".to_owned())
    };
    Check { what: "Draft of water heater, furnace, stove", holds, says, source: Source::Backdraft }
}

fn clear(what: &'static str, measured: Option<Length>, least: Length, units: Units) -> Check {
    let asked = units.length(least);
    let (holds, says) = match measured {
        None => (None, format!("not measured; at least {asked}, or {OR_TREATED}")),
        Some(measured) if measured >= least => (Some(true), format!("{}, {asked} asked for", units.length(measured))),
        Some(measured) => (Some(false), format!("{}, {asked} asked for: {OR_TREATED} there", units.length(measured))),
    };
    Check { what, holds, says, source: Source::WoodToSoil }
}

/// A post that is not treated stands more than 8 in above the earth, and the earth is covered.
fn posts(job: &Job, measured: Option<Length>, units: Units) -> Check {
    let asked = format!("more than {} above covered earth", units.length(POST));
    let (holds, says) = match measured {
        None => (None, format!("not measured; {asked}, or {OR_TREATED}")),
        Some(measured) if measured <= POST => {
            (Some(false), format!("{}, {asked} asked for: {OR_TREATED} there", units.length(measured)))
        }
        Some(measured) => {
            let so_high = format!("{}, {asked} asked for", units.length(measured));
            match (is_covered_now(job), Covered::of(job)) {
                (Some(true), _) => (Some(true), format!("{so_high}; it is said to be covered")),
                (Some(false), _) => (Some(false), format!("{so_high}, and it lies bare: or {OR_TREATED}")),
                (None, Covered::No) => {
                    (Some(false), format!("{so_high}, and it is {}: or {OR_TREATED}", Covered::No.label()))
                }
                (None, to_be) => {
                    let so_far = if to_be == Covered::Yes { "to be covered, and not yet" } else { "not" };
                    (None, format!("{so_high}, and it is {so_far} said to be covered: or {OR_TREATED}"))
                }
            }
        }
    };
    Check { what: "Posts to soil", holds, says, source: Source::Posts }
}

fn girder_ends(said: Particulars<'_>, units: Units) -> Check {
    let asked = format!("{} of air on tops, sides and ends, or {OR_TREATED}", units.length(AIR_AT_ENDS));
    let words = said.all_words(&Part::House, &list::GIRDER_ENDS);
    let in_masonry = (!words.is_empty()).then(|| words.contains(&"in masonry"));
    let (holds, says) = match (in_masonry, least(said, &list::GIRDER_END_AIR)) {
        (Some(false), _) => (Some(true), "none stands in masonry or concrete".to_owned()),
        (_, Some(air)) => (Some(air >= AIR_AT_ENDS), format!("{} of air at least; {asked}", units.length(air))),
        (Some(true), None) => (None, format!("not measured; {asked}")),
        (None, None) => (None, format!("not said whether any stands in masonry or concrete; there {asked}")),
    };
    Check { what: "Girder ends in outer walls", holds, says, source: Source::GirderEnds }
}

fn access(said: Particulars<'_>, units: Units) -> Check {
    let sides = least(said, &list::ACCESS_WIDTH).zip(least(said, &list::ACCESS_LENGTH));
    let words = said.all_words(&Part::House, &list::ACCESS);
    let is_wall = !words.is_empty() && words.iter().all(|word| *word == "wall");
    let (short, long) = if is_wall { (16, 24) } else { (18, 24) };
    let (short, long) = (Length::inches(short), Length::inches(long));
    let through = if is_wall { "a wall" } else { "a floor" };
    let asked = format!("{} × {} through {through}", units.length(short), units.length(long));
    let (holds, says) = match sides {
        None => (None, format!("not measured; {asked}")),
        Some((one, other)) => {
            let holds = one.min(other) >= short && one.max(other) >= long;
            (Some(holds), format!("{} × {}, {asked} asked for", units.length(one), units.length(other)))
        }
    };
    Check { what: "Access", holds, says, source: Source::AccessSize }
}
