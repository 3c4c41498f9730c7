//! How far wet wood goes: readings drawn out between the places where they were taken,
//! with how sure that is, and the next reading that would tell most.
//!
//! What does not mix is kept apart ([`Group`]). From six readings on the ground between
//! them is kriged ([`kriging`], with a fitted [`variogram`]); fewer are weighed by
//! distance, and it says so. Begin with [`Extent::of`].

mod field;
mod grid;
pub mod kriging;
mod next;
pub mod variogram;

pub use field::FEWEST_KRIGED;
pub use grid::{Cell, Grid};
pub use next::NextReading;

use super::closing::Limits;
use super::entry::EntryId;
use super::figure::{Figure, Known, Need, Why};
use super::geometry::{Outline, Point, Rect};
use super::job::Job;
use super::moisture::Corrected;
use super::place::Element;
use super::results::corrected;
use super::sources::Source;
use super::survey::{Floor, Shape, propose};
use super::units::{Area, Length, MoistureContent};
use field::Field;
use litemap::LiteMap;

/// Wood that is read together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// Joists, sills, girders.
    Framing,
    /// The subfloor from below.
    Underside,
    /// The subfloor from above.
    Top,
}

/// A place and its latest reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spot {
    /// The reading's entry.
    pub reading: EntryId,
    /// Where.
    pub at: Point,
    /// The corrected number, or the one that it lies beyond.
    pub moisture: MoistureContent,
    /// The reading, as every page says it.
    pub corrected: Corrected,
}

/// How far it is wet, in one group.
#[derive(Debug, Clone)]
pub struct Extent {
    /// Of which wood.
    pub group: Group,
    /// The readings.
    pub spots: Vec<Spot>,
    /// Over what counts as wet here.
    pub limit: MoistureContent,
    /// The floor in cells.
    pub grid: Grid,
    /// The floor.
    pub floor: Floor,
    /// Its outline, or a rectangle around the readings.
    pub outline: Outline,
    /// How much is wet, if that can be said.
    pub wet: Option<Wet>,
    /// The reading to take next.
    pub next: Option<NextReading>,
}

/// How much is wet, by the chance that each cell is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wet {
    /// What is rather wet than not.
    pub area: Area,
    /// What is hardly in doubt: five to one.
    pub at_least: Area,
    /// What may be wet: one to five.
    pub at_most: Area,
    /// The opening that takes all out that is rather wet than not, its ends on joist
    /// centers, as far as the room goes and nothing is open already; none where nothing is.
    pub opening: Option<Rect>,
}

impl Group {
    /// All.
    pub const ALL: [Self; 3] = [Self::Framing, Self::Underside, Self::Top];

    /// The group of an element; the finished floor is in none.
    pub const fn of(element: Element) -> Option<Self> {
        match element {
            Element::Joist | Element::RimJoist | Element::Sill | Element::Girder => Some(Self::Framing),
            Element::SubfloorBelow => Some(Self::Underside),
            Element::SubfloorAbove => Some(Self::Top),
            Element::FinishedFloor => None,
        }
    }

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Framing => "Framing",
            Self::Underside => "Subfloor, from below",
            Self::Top => "Subfloor, from above",
        }
    }
}

impl Extent {
    /// How far it is wet in a group. Readings that are only relative stand in no order
    /// with the rest and are left out, and that is said.
    ///
    /// Source: [`Source::Kriging`], [`Source::MeterAccuracy`].
    pub fn of(job: &Job, group: Group) -> Figure<Self> {
        let shape = Shape::of(job);
        let outline = shape.as_ref().map(|shape| shape.outline.clone());
        let Some(floor) = shape.map(|shape| shape.floor).or_else(|| Floor::of(job)) else {
            return Figure::Missing(vec![Need::Joists, Need::Reading]);
        };
        let (spots, left_out) = spots(job, &floor, group);
        let outline = outline.or_else(|| floor.outline.clone().ok()).or_else(|| around(&spots));
        let Some(outline) = outline.filter(|_| !spots.is_empty()) else {
            let joists = floor.joists.is_none().then_some(Need::Joists);
            return Figure::Missing(joists.into_iter().chain([Need::Reading]).collect());
        };
        let limits = Limits::of(job);
        let limit = if group == Group::Framing { limits.framing.at } else { limits.subfloor.at };
        let field = Field::of(&spots);
        let grid = Grid::over(&outline, &field);
        let next = NextReading::of(&floor, &outline, &field, &grid, limit);
        let wet = field.is_kriged().then(|| Wet::of(&grid, &floor, &outline, limit));
        let doubts = doubts(&field, left_out, spots.len());
        let why = why(&field).using(spots.iter().map(|spot| spot.reading));
        let value = Self { group, spots, limit, grid, floor, outline, wet, next };
        Figure::Known(Known { value, assumed: Vec::new(), doubts, why })
    }
}

/// The latest reading of each place that is on the plan, and how many were only relative.
fn spots(job: &Job, floor: &Floor, group: Group) -> (Vec<Spot>, usize) {
    let (mut latest, mut relative) = (LiteMap::<EntryId, Spot>::new(), 0);
    for (id, reading) in job.now.readings().iter() {
        let place = job.now.places().get(&reading.value.place);
        let Some(place) = place.filter(|place| Group::of(place.value.element) == Some(group)) else { continue };
        let Some(at) = floor.locate(place.value) else { continue };
        let known = corrected(job, reading).value;
        if known.relative {
            relative += 1;
        } else {
            latest.insert(
                reading.value.place,
                Spot { reading: *id, at, moisture: known.corrected.bound(), corrected: known },
            );
        }
    }
    (latest.iter().map(|(_, spot)| *spot).collect(), relative)
}

fn around(spots: &[Spot]) -> Option<Outline> {
    let points: Vec<_> = spots.iter().map(|spot| spot.at).collect();
    Outline::new(Rect::around(&points).grown(Length::feet(2)).corners().to_vec()).ok()
}

fn doubts(field: &Field, left_out: usize, count: usize) -> Vec<String> {
    let mut doubts = Vec::new();
    if !field.is_kriged() {
        doubts.push(format!(
            "Weighed by distance alone: {count} of the {FEWEST_KRIGED} readings that a map of how sure it is takes."
        ));
    }
    if left_out > 0 {
        doubts.push(format!("Readings that are only relative are left out: {left_out}."));
    }
    doubts
}

fn why(field: &Field) -> Why {
    match field.variogram() {
        None => Why::rule("Readings weighed by the square of their distance.", &[Source::ByDistance]),
        Some(variogram) => Why::rule(
            "Ordinary kriging: readings weighed as they go together.",
            &[Source::Kriging, Source::MeterAccuracy],
        )
        .with("go together up to", format!("{:.0} ft", variogram.range))
        .with("differ far apart by", format!("{:.1} %", libm::sqrt(2.0 * (variogram.sill + variogram.nugget)))),
    }
}

impl Wet {
    fn of(grid: &Grid, floor: &Floor, outline: &Outline, limit: MoistureContent) -> Self {
        let area = |chance: f64| grid.area_where(|cell| cell.chance_over(limit) >= chance);
        let wet = grid.bounds_where(|cell| cell.chance_over(limit) >= 0.5);
        let opening = wet.and_then(|wet| propose(floor, outline, to_joists(floor, wet)));
        Self { area: area(0.5), at_least: area(5.0 / 6.0), at_most: area(1.0 / 6.0), opening }
    }
}

/// A rectangle, its ends across the joists moved out to the next centers.
fn to_joists(floor: &Floor, rect: Rect) -> Rect {
    let Some(joists) = &floor.joists else { return rect };
    let run = joists.run();
    let (least, most) = (rect.least(), rect.most());
    let before = joists.centers().filter(|center| *center <= run.across(least)).max();
    let behind = joists.centers().filter(|center| *center >= run.across(most)).min();
    let put = |point: Point, center: Option<Length>| center.map_or(point, |center| run.with_across(point, center));
    Rect::between(put(least, before), put(most, behind)).unwrap_or(rect)
}
