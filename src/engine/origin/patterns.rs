//! What readings and air answer by themselves, as README.md defines it. All distances and
//! differences there are judgement.

use super::scene::{Read, Scene};
use crate::engine::air::{HumidityRatio, Pressure, dew_point};
use crate::engine::condition::Finding;
use crate::engine::geometry::{Point, Rect};
use crate::engine::moisture::Answer;
use crate::engine::place::Element;
use crate::engine::units::{Length, RelativeHumidity, TemperatureDifference};

/// Fewer readings than this have no shape.
const FEWEST: usize = 4;
const PEAK_OVER_MIDDLE: f64 = 6.0;
const PEAK_OVER_FAR: f64 = 4.0;
const EVEN_WITHIN: f64 = 4.0;
const EVEN_FROM: f64 = 16.0;
const WETTER_BY: f64 = 3.0;
const NEAR: Length = Length::feet(4);
const FAR: Length = Length::feet(6);
const BY_A_WALL: Length = Length::feet(3);
const HUMID: RelativeHumidity = RelativeHumidity::percent(80);
const NOT_HUMID: RelativeHumidity = RelativeHumidity::percent(65);
const WELL_ABOVE: TemperatureDifference = TemperatureDifference::fahrenheit(5);
/// Half of the finest step that a reading is kept in: what is as much is not called less.
const FINEST: f64 = 5e-7;

/// What a pattern says of a scene; nothing when the scene does not say.
type Pattern = fn(&Scene) -> Option<bool>;

/// Every pattern with its name.
pub(super) const ALL: [(&str, Pattern); 13] = [
    ("peaked", peaked),
    ("broad", broad),
    ("along_wall", along_wall),
    ("near_plumbing", |scene| near(scene, Finding::is_plumbing)),
    ("near_appliance", |scene| near(scene, is_appliance)),
    ("near_opening", |scene| near(scene, Finding::is_rain_opening)),
    ("near_cold", |scene| near(scene, Finding::is_cold_run)),
    ("top_wetter", top_wetter),
    ("low_wetter", low_wetter),
    ("humid_crawl", humid_crawl),
    ("humid_outdoors", humid_outdoors),
    ("sweats", |scene| sweats(scene, scene.crawl)),
    ("sweats_vented", |scene| sweats(scene, scene.outdoors)),
];

/// As an answer, where there is one.
pub(super) fn answer(is_so: Option<bool>) -> Answer {
    is_so.map_or(Answer::Unknown, |is_so| if is_so { Answer::Yes } else { Answer::No })
}

/// The readings of the kind of wood that was read most: joists and their like, or the
/// subfloor from below.
fn main_readings(scene: &Scene) -> Vec<&Read> {
    let of = |is_framing: bool| {
        let kind = move |read: &&Read| match read.element {
            Element::SubfloorBelow => !is_framing,
            Element::Joist | Element::RimJoist | Element::Sill | Element::Girder => is_framing,
            Element::SubfloorAbove | Element::FinishedFloor => false,
        };
        scene.readings.iter().filter(kind).collect::<Vec<_>>()
    };
    let (framing, below) = (of(true), of(false));
    if below.len() > framing.len() { below } else { framing }
}

fn percent(read: &Read) -> f64 {
    read.moisture.to_percent()
}

fn wettest(scene: &Scene) -> Option<Read> {
    scene
        .readings
        .iter()
        .filter(|read| read.element != Element::FinishedFloor)
        .max_by_key(|read| read.moisture)
        .copied()
}

fn reaches(value: f64, limit: f64) -> bool {
    value - limit > -FINEST
}

/// In order of moisture; none of too few.
fn in_order(scene: &Scene) -> Option<Vec<f64>> {
    let mut values: Vec<_> = main_readings(scene).into_iter().map(percent).collect();
    values.sort_by(f64::total_cmp);
    (values.len() >= FEWEST).then_some(values)
}

/// The value a part of the way from the driest to the wettest.
fn part(values: &[f64], part: f64) -> f64 {
    let at = part * values.len().saturating_sub(1) as f64;
    values.get(libm::round(at) as usize).copied().unwrap_or_default()
}

fn peaked(scene: &Scene) -> Option<bool> {
    let values = in_order(scene)?;
    let peak = main_readings(scene).into_iter().max_by_key(|read| read.moisture)?;
    let far = main_readings(scene).into_iter().filter(|read| (read.at - peak.at).length() > NEAR);
    let far_is_drier = far.map(percent).all(|value| reaches(percent(peak) - value, PEAK_OVER_FAR));
    Some(reaches(percent(peak) - part(&values, 0.5), PEAK_OVER_MIDDLE) && far_is_drier)
}

fn broad(scene: &Scene) -> Option<bool> {
    let values = in_order(scene)?;
    let spread = part(&values, 0.75) - part(&values, 0.25);
    Some(reaches(EVEN_WITHIN, spread) && reaches(part(&values, 0.5), EVEN_FROM) && !peaked(scene)?)
}

fn along_wall(scene: &Scene) -> Option<bool> {
    let room = scene.room?;
    let (by_wall, inside): (Vec<_>, Vec<_>) =
        main_readings(scene).into_iter().partition(|read| from_wall(room, read.at) <= BY_A_WALL);
    is_wetter(&by_wall, &inside, 2)
}

/// How far inside a room a point lies.
fn from_wall(room: Rect, at: Point) -> Length {
    let (least, most) = (room.least(), room.most());
    (at.x - least.x).min(most.x - at.x).min(at.y - least.y).min(most.y - at.y)
}

/// Are the ones wetter than the others on average? None of fewer than so many of each.
fn is_wetter(ones: &[&Read], others: &[&Read], fewest: usize) -> Option<bool> {
    let mean = |reads: &[&Read]| reads.iter().map(|read| percent(read)).sum::<f64>() / reads.len() as f64;
    (ones.len() >= fewest && others.len() >= fewest).then(|| reaches(mean(ones) - mean(others), WETTER_BY))
}

fn near(scene: &Scene, is_one: fn(Finding) -> bool) -> Option<bool> {
    let wettest = wettest(scene)?;
    let fixtures = scene.fixtures.iter().filter(|(what, _)| is_one(*what));
    let nearest = fixtures.map(|(_, at)| (*at - wettest.at).length()).min()?;
    if nearest <= NEAR {
        return Some(true);
    }
    (nearest > FAR).then_some(false)
}

/// Does it hold or heat water by itself?
const fn is_appliance(finding: Finding) -> bool {
    matches!(finding, Finding::WasherAbove | Finding::HeaterAbove)
}

fn of_elements<'a>(scene: &'a Scene, elements: &[Element]) -> Vec<&'a Read> {
    scene.readings.iter().filter(|read| elements.contains(&read.element)).collect()
}

fn top_wetter(scene: &Scene) -> Option<bool> {
    let (top, below) = (of_elements(scene, &[Element::SubfloorAbove]), of_elements(scene, &[Element::SubfloorBelow]));
    if is_wetter(&top, &below, 1)? {
        return Some(true);
    }
    is_wetter(&below, &top, 1)?.then_some(false)
}

fn low_wetter(scene: &Scene) -> Option<bool> {
    let low = of_elements(scene, &[Element::Sill, Element::RimJoist]);
    is_wetter(&low, &of_elements(scene, &[Element::Joist]), 1)
}

fn humid_crawl(scene: &Scene) -> Option<bool> {
    let humidity = scene.crawl?.humidity;
    if humidity >= HUMID {
        return Some(true);
    }
    (humidity < NOT_HUMID).then_some(false)
}

fn humid_outdoors(scene: &Scene) -> Option<bool> {
    let vapor = |air| HumidityRatio::of(air, Pressure::SEA_LEVEL);
    Some(vapor(scene.outdoors?) > vapor(scene.crawl?))
}

fn sweats(scene: &Scene, air: Option<crate::engine::air::Air>) -> Option<bool> {
    let margin = scene.coldest? - dew_point(air?).value;
    if margin <= TemperatureDifference::fahrenheit(0) {
        return Some(true);
    }
    (margin >= WELL_ABOVE).then_some(false)
}
