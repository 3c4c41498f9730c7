//! What the job asks of its ground and air: the cover, the vents or what stands in for
//! them, and whether wood, access and openings keep to the rules.

use super::cover::{Cover, Roll, cover};
use super::vents::{Unvented, Vents, unvented, vents};
use crate::engine::figure::{Figure, Known, Need};
use crate::engine::geometry::Rect;
use crate::engine::job::{Job, Venting};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::sources::Source;
use crate::engine::survey::Shape;
use crate::engine::take::Units;
use crate::engine::units::{Area, Length};

/// Corners of a house ([`Source::VentArea`]): one vent near each.
const CORNERS: u32 = 4;
/// Around a pier of masonry blocks 16 in square (common practice, no source).
const AROUND_A_PIER: Length = Length::inches(64);

/// How the space under the house gets its air.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AirWay {
    /// Openings to the outside.
    Vents,
    /// A fan that takes air out.
    Exhaust,
    /// Air out of the house.
    Supply,
    /// A dehumidifier.
    Dehumidifier,
}

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

/// The ground under the house.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ground {
    /// The longer way.
    pub length: Length,
    /// The shorter way.
    pub width: Length,
    /// What was assumed of it.
    pub assumed: Option<String>,
}

impl Ground {
    /// As it was stated, or else as large as the box around the room above it.
    pub fn of(job: &Job) -> Option<Self> {
        let said = Particulars::of(job);
        let stated = [&list::GROUND_LENGTH, &list::GROUND_WIDTH].map(|item| said.length(&Part::House, item));
        if let [Some(one), Some(other)] = stated {
            return Some(Self { length: one.max(other), width: one.min(other), assumed: None });
        }
        // Of the one way alone nothing can be said: the other is asked for.
        if stated.iter().any(Option::is_some) {
            return None;
        }
        let outline = Shape::of(job)?.outline;
        let bounds = Rect::around(outline.corners());
        let (one, other) = (bounds.width(), bounds.height());
        let assumed = Some("the ground is as large as the box around this room".to_owned());
        Some(Self { length: one.max(other), width: one.min(other), assumed })
    }

    /// How large it is.
    pub fn area(&self) -> Area {
        Area::from_square_inches(self.length.to_inches() * self.width.to_inches())
    }
}

impl AirWay {
    /// The one that was chosen; until then vents, or exhaust where there are none.
    pub fn of(job: &Job) -> Self {
        match Particulars::of(job).words(&Part::House, &list::AIR_WAY) {
            Some("exhaust fan") => Self::Exhaust,
            Some("supply from the house") => Self::Supply,
            Some("dehumidifier") => Self::Dehumidifier,
            None if job.venting() == Some(&Venting::Unvented) => Self::Exhaust,
            _ => Self::Vents,
        }
    }
}

/// Is the ground to be covered? As stated; an unvented space has to be.
pub fn is_covered(job: &Job) -> bool {
    let stated = Particulars::of(job).words(&Part::House, &list::COVERED);
    stated.map_or(AirWay::of(job) != AirWay::Vents, |word| word == "yes")
}

/// What a cover of the ground takes. Source: [`Source::GroundCover`], [`Source::RadonLap`].
pub fn cover_for(job: &Job, units: Units) -> Figure<Cover> {
    let Some(ground) = Ground::of(job) else { return Figure::Missing(vec![Need::Ground]) };
    let said = Particulars::of(job);
    let mut assumed: Vec<_> = ground.assumed.clone().into_iter().collect();
    let mut or_usual = |item: &list::Item, usual: Length| {
        said.length(&Part::House, item).unwrap_or_else(|| {
            assumed.push(format!("{}: {}", item.what, units.length(usual)));
            usual
        })
    };
    let (width, length) =
        (or_usual(&list::ROLL_WIDTH, Length::feet(10)), or_usual(&list::ROLL_LENGTH, Length::feet(100)));
    let up = or_usual(&list::TURN_UP, Length::inches(6));
    let is_radon = said.words(&Part::House, &list::LAP) == Some("12 in, radon rule");
    let lap = Length::inches(if is_radon { 12 } else { 6 });
    let piers = said.amount(&Part::House, &list::PIERS).map_or(0, |piers| i64::from(piers) / 1000);
    let Some(mut known) = cover(ground.length, ground.width, Roll { width, length, lap, up }) else {
        return Figure::Missing(vec![Need::Roll]);
    };
    known.value.seal = known.value.seal + AROUND_A_PIER * piers;
    if is_radon {
        known.why.sources.push(Source::RadonLap);
    }
    if piers > 0 {
        assumed.push("piers are 16 in square (common practice, no source)".to_owned());
    }
    known.why = known.why.with("ground", format!("{} × {}", units.length(ground.length), units.length(ground.width)));
    known.assumed = assumed;
    Figure::Known(known)
}

/// How many vents. Source: [`Source::VentArea`], [`Source::VentAreaStates`].
pub fn vents_for(job: &Job) -> Figure<Vents> {
    let said = Particulars::of(job);
    let (ground, each) = (Ground::of(job), said.amount(&Part::House, &list::VENT_AREA));
    let (Some(ground), Some(each)) = (&ground, each) else {
        return Figure::without([(ground.is_none(), Need::Ground), (each.is_none(), Need::VentLabel)]);
    };
    let mut assumed: Vec<_> = ground.assumed.clone().into_iter().collect();
    let ratio = said.words(&Part::House, &list::VENT_RATIO);
    let one_in = match ratio {
        Some("1/300") => 300,
        Some("1/1500 over a cover") => 1500,
        Some(_) => 150,
        None => {
            assumed.push("vents of 1/150 of the floor".to_owned());
            150
        }
    };
    let corners = match said.words(&Part::House, &list::VENT_CORNERS) {
        Some("no") => 0,
        _ => CORNERS,
    };
    let mut known = vents(ground.area(), one_in, Area::from_square_inches(each.get()), corners);
    if one_in == 300 {
        known.why.sources.push(Source::VentAreaStates);
    }
    if one_in == 1500 && !is_covered(job) {
        known.doubts.push("1/1500 holds over a cover alone, and the ground is not said to be covered.".to_owned());
    }
    known.doubts.push(Source::VentScreens.noted("Across from each other, so that air goes through, and screened"));
    known.assumed = assumed;
    Figure::Known(known)
}

/// The air of a space without vents. Source: [`Source::UnventedAir`],
/// [`Source::DehumidifierSize`].
pub fn unvented_for(job: &Job) -> Figure<Unvented> {
    let (ground, height) = (Ground::of(job), job.crawl_height().map(|height| height.value));
    let (Some(ground), Some(height)) = (&ground, height) else {
        return Figure::without([(ground.is_none(), Need::Ground), (height.is_none(), Need::CrawlHeight)]);
    };
    let Known { value, mut doubts, why, .. } = unvented(ground.area(), height);
    doubts.push(
        "The ground covered from wall to wall, joints taped, edges sealed 6 in up; the walls insulated.".to_owned(),
    );
    if !is_covered(job) {
        doubts.push("It is not said to be covered, and without vents it has to be.".to_owned());
    }
    doubts.push(Source::OutdoorFans.noted("No more than the code's flow of outdoor air"));
    if AirWay::of(job) == AirWay::Dehumidifier {
        doubts.push("Not every edition and state lists a dehumidifier: ask before one is bought.".to_owned());
    }
    Figure::Known(Known { value, assumed: ground.assumed.clone().into_iter().collect(), doubts, why })
}

/// Wood to soil, and the way in, held to the rules. Source: [`Source::WoodToSoil`],
/// [`Source::AccessSize`].
pub fn checks(job: &Job, units: Units) -> Vec<Check> {
    let said = Particulars::of(job);
    let of = |item| said.length(&Part::House, item);
    let joists = job.crawl_height().map(|height| height.value);
    let soil = [
        ("Joists to soil", joists, 18),
        ("Girders to soil", of(&list::GIRDER_CLEARANCE), 12),
        ("Posts to soil", of(&list::POST_CLEARANCE), 8),
        ("Sills to outside ground", of(&list::SILL_CLEARANCE), 8),
    ];
    let soil = soil.map(|(what, measured, least)| clear(what, measured, Length::inches(least), units));
    soil.into_iter().chain([access(said, units)]).collect()
}

fn clear(what: &'static str, measured: Option<Length>, least: Length, units: Units) -> Check {
    let asked = units.length(least);
    let (holds, says) = match measured {
        None => (None, format!("not measured; at least {asked}, or wood that is treated or durable")),
        Some(measured) if measured >= least => (Some(true), format!("{}, {asked} asked for", units.length(measured))),
        Some(measured) => (
            Some(false),
            format!("{}, {asked} asked for: treated or naturally durable wood there", units.length(measured)),
        ),
    };
    Check { what, holds, says, source: Source::WoodToSoil }
}

fn access(said: Particulars<'_>, units: Units) -> Check {
    let of = |item| said.length(&Part::House, item);
    let sides = of(&list::ACCESS_WIDTH).zip(of(&list::ACCESS_LENGTH));
    let is_wall = said.words(&Part::House, &list::ACCESS) == Some("wall");
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
