//! The ground's cover and its air, and what takes the roof's water.

use super::needs::{A_TENTH, Needed, Section, Unit, told};
use crate::engine::cautions;
use crate::engine::closing::asks_for_cover;
use crate::engine::describe::counted;
use crate::engine::figure::{Figure, Known};
use crate::engine::ground::Unvented;
use crate::engine::ground::checks::unvented_checks;
use crate::engine::ground::plan::{
    AirWay, Covered, cover_for, is_covered_now, too_few_vents, unvented_for, vents_for, wants_cover,
};
use crate::engine::ground::rain::{UNNAMED, rain};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::{Amount, Length};

/// The cover with its tape and seal, and vents or what stands in for them.
pub(super) fn ground(job: &Job, units: Units, open: &mut Vec<String>) -> Vec<Needed> {
    let mut needed = Vec::new();
    if wants_cover(job) && is_covered_now(job) != Some(true) {
        match cover_for(job, units) {
            Figure::Missing(needs) => open.push(told("Ground cover", &needs)),
            Figure::Known(known) => {
                let (cover, assumed) = (known.value, &known.assumed);
                let from =
                    format!("{} of {}, lapped", counted(cover.strips as usize, "strip"), units.length(cover.strip));
                needed.push(
                    Needed::new(Section::Ground, "Ground cover", Amount::whole(cover.rolls), Unit::Each("roll"))
                        .because(from, &known.why.sources)
                        .assuming(assumed),
                );
                needed.push(tape(job, cover.tape).assuming(assumed));
                needed.push(
                    feet(Section::Ground, "Seal along walls and piers", cover.seal)
                        .because("once around", &known.why.sources)
                        .assuming(assumed),
                );
            }
        }
    }
    if !wants_cover(job)
        && Covered::of(job) == Covered::NotSaid
        && asks_for_cover(job)
        && is_covered_now(job) != Some(true)
    {
        open.push(
            "Ground cover: before the floor is closed the soil has to be covered, or seen not to be bare. Say that it is to \
             be, and its cover is listed."
                .to_owned(),
        );
    }
    needed.extend(air(job, units, open));
    needed
}

fn feet(section: Section, name: &str, length: Length) -> Needed {
    Needed::new(section, name, Amount::nearest(length.to_feet()), Unit::Feet)
}

/// By the roll, once somebody says what a roll holds.
fn tape(job: &Job, length: Length) -> Needed {
    let from = format!("{:.0} ft of laps", length.to_feet());
    let roll = Particulars::of(job).lengths(&Part::House, &list::TAPE_ROLL).into_iter().min();
    let needed = match roll {
        None => feet(Section::Ground, "Seam tape", length),
        Some(roll) => {
            let rolls = length.to_feet() / roll.to_feet().max(1.0);
            let name = format!("Seam tape, rolls of {:.0} ft", roll.to_feet());
            Needed::new(Section::Ground, name, Amount::nearest(rolls), Unit::Each("roll"))
        }
    };
    needed.because(from, &[Source::GroundCover]).with_waste(A_TENTH)
}

fn air(job: &Job, units: Units, open: &mut Vec<String>) -> Option<Needed> {
    let chosen = AirWay::each_chosen(job);
    if chosen.len() > 1 {
        open.push("Air under the house: two phones chose differently. Choose again how it gets there.".to_owned());
        return None;
    }
    let is_chosen = !chosen.is_empty();
    let way = AirWay::of(job);
    if way != AirWay::Vents && !is_chosen {
        open.push("Air under the house: choose how it gets there.".to_owned());
        return None;
    }
    match way {
        AirWay::Vents => match vents_for(job) {
            // Nobody asked for vents where neither they were chosen nor a label read.
            Figure::Missing(needs) => {
                open.extend(is_chosen.then(|| told("Vents", &needs)));
                None
            }
            Figure::Known(known) => {
                let from = format!("{:.0} sq in of net free area", known.value.net_free.to_square_feet() * 144.0);
                let count = usize::try_from(known.value.with_corners).unwrap_or(0);
                let needed = Needed::counted(Section::Ground, "Foundation vents", count, "vent")
                    .because(from, &known.why.sources)
                    .assuming(&known.assumed);
                Some(too_few_vents(job).into_iter().fold(needed, |needed, why| needed.because(why, &[])))
            }
        },
        _ => match unvented_for(job) {
            Figure::Missing(needs) => {
                open.push(told("Air under the house", &needs));
                None
            }
            Figure::Known(known) => {
                let needed = machine(way, &known);
                open.extend(not_kept(job, units).map(|asked| format!("{}: {asked}", needed.name)));
                Some(needed)
            }
        },
    }
}

/// What moves or dries the air of a space without vents.
fn machine(way: AirWay, known: &Known<Unvented>) -> Needed {
    let air = known.value;
    let (cfm, pints) = (libm::ceil(air.cfm), libm::ceil(air.pints_a_day));
    let changes = format!("{:.2} air changes an hour", air.changes_an_hour);
    let (name, from) = match way {
        AirWay::Dehumidifier => (format!("Dehumidifier, {pints:.0} pints a day"), "by the ground's area".to_owned()),
        AirWay::Supply => (format!("Supply duct, {cfm:.0} cfm"), changes),
        AirWay::Exhaust | AirWay::Vents => (format!("Exhaust fan, {cfm:.0} cfm"), changes),
    };
    let needed =
        Needed::counted(Section::Ground, name, 1, "piece").because(from, &known.why.sources).assuming(&known.assumed);
    if way != AirWay::Exhaust {
        return needed;
    }
    let cautions = cautions::OF_EXHAUST.iter().filter_map(|name| cautions::named(name));
    cautions.fold(needed, |needed, caution| needed.because(caution.words, caution.sources))
}

/// What a space without vents has to have, and is not said to.
fn not_kept(job: &Job, units: Units) -> impl Iterator<Item = String> {
    let asked = unvented_checks(job, units).into_iter().filter(|check| check.holds != Some(true));
    asked.map(|check| format!("{}, {}.", check.what.to_lowercase(), check.says))
}

/// Gutter, downspouts and what leads the water off.
pub(super) fn roof(job: &Job, units: Units, open: &mut Vec<String>) -> Vec<Needed> {
    let known = match rain(job, units) {
        Figure::Missing(_) => return Vec::new(),
        Figure::Known(known) => known,
    };
    let rain = &known.value;
    let count = usize::try_from(rain.runoff.downspouts).unwrap_or(0);
    let section = format!("{:.1} sq in of downspout in all", rain.runoff.downspout_section);
    let mut needed = Vec::new();
    if let Some(gutter) = rain.gutter.filter(|_| !rain.takes) {
        open.push(format!(
            "Gutter, {gutter}: it does not take the water. Say a larger one, or one more downspout run, before it is ordered."
        ));
    }
    if rain.takes && rain.gutter == Some(UNNAMED) {
        open.push("Gutter: only its own table was stated. Say which it is before it is ordered.".to_owned());
    }
    let named = rain.gutter.filter(|gutter| rain.takes && *gutter != UNNAMED);
    if let (Some(gutter), Some(eave)) = (named, rain.eave) {
        let from = format!("{:.0} sq ft at an inch an hour", rain.runoff.at_an_inch.to_square_feet());
        needed.push(
            feet(Section::Roof, &format!("Gutter, {gutter}"), eave)
                .because(from, &[Source::GutterCapacity])
                .assuming(&known.assumed)
                .with_waste(A_TENTH),
        );
    }
    let downspouts = Needed::counted(Section::Roof, "Downspouts", count, "downspout");
    needed.push(downspouts.because(section, &[Source::Downspouts]).assuming(&known.assumed));
    let extensions = Needed::counted(Section::Roof, "Downspout extensions", count, "piece");
    let from = "one at each downspout, to 5 ft or more from the wall";
    needed.push(extensions.because(from, &[Source::Discharge]).assuming(&known.assumed));
    needed
}
