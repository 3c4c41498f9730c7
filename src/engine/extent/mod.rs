//! How far wet wood goes: readings drawn out between the places where they were taken,
//! with how sure that is, and the next reading that would tell most.
//!
//! What does not mix is kept apart ([`Group`]). How much is wet is told where readings reach the
//! floor ([`reach`]), all but a little that counts as wet; otherwise what part of it nobody read
//! is told ([`Untold`]). Fewer than six readings on the ground are weighed by distance, and it
//! says so. From six on, floors are drawn that the readings allow ([`draws`]), in every plausible
//! way that the wood may be wet ([`ways`]): how it wanders ([`variogram`], [`kriging`]) and what
//! wet bodies lie in it ([`bodies`]). How much is wet is counted on each, and the range is what
//! nearly all of them agree on. Begin with [`Extent::of`].

mod bodies;
mod draws;
mod field;
mod grid;
pub mod kriging;
mod lattice;
mod next;
mod random;
mod reach;
pub mod variogram;
mod ways;
mod wet;

pub use field::FEWEST_DRAWN;
pub use grid::{Cell, Grid};
pub use next::{FROM_END, NextReading};
pub use random::Random;
pub use reach::{CLOSE, REACH};
pub use wet::{Untold, Wet};

use super::closing::Limits;
use super::entry::EntryId;
use super::figure::{Figure, Known, Need, Why};
use super::geometry::{Outline, Point, Rect};
use super::job::Job;
use super::moisture::Corrected;
use super::moisture::high::WITH_SALTS;
use super::place::Element;
use super::results::{readings, standing, wettest_of_each};
use super::sources::Source;
use super::survey::{Floor, Shape};
use super::units::{Length, MoistureContent};
use field::{Field, Taken, feet};
use reach::is_close;
use variogram::Variogram;
use wet::{Counts, is_too_much};

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

/// A place and the reading that stands there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spot {
    /// The reading's entry.
    pub reading: EntryId,
    /// Where.
    pub at: Point,
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
    /// How much is wet, or why that is not told.
    pub wet: Result<Wet, Untold>,
    /// The reading to take next.
    pub next: Option<NextReading>,
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
    /// with the rest, what nobody believes is no reading, and what is nowhere on the plan is
    /// on no map: they are left out, and that is said.
    ///
    /// Source: [`Source::Kriging`], [`Source::MeterAccuracy`].
    pub fn of(job: &Job, group: Group) -> Figure<Self> {
        let shape = Shape::of(job);
        let outline = shape.as_ref().map(|shape| shape.outline.clone());
        let Some(floor) = shape.map(|shape| shape.floor).or_else(|| Floor::of(job)) else {
            return Figure::Missing(vec![Need::Joists, Need::Reading]);
        };
        let limits = Limits::of(job);
        let limit = if group == Group::Framing { limits.framing.at } else { limits.subfloor.at };
        let Read { spots, may_be_wet, left_out } = read(job, &floor, group, limit);
        let measured = outline.or_else(|| floor.outline.clone().ok());
        let unmeasured = measured.is_none().then(|| {
            format!("The room is not measured: this is the floor {AROUND_FEET} ft around the readings, and no more")
        });
        let is_treated = spots.iter().any(|spot| spot.corrected.may_read_high.is_some());
        let assumed = unmeasured.into_iter().chain(is_treated.then(|| WITH_SALTS.to_owned())).collect();
        let Some(outline) = measured.or_else(|| around(&spots)).filter(|_| !spots.is_empty()) else {
            let joists = floor.joists.is_none().then_some(Need::Joists);
            let reading = if left_out.unplaced > 0 { Need::ReadingPlace } else { Need::Reading };
            return Figure::Missing(joists.into_iter().chain([reading]).collect());
        };
        let field = Field::of(&spots, Taken::AsRead, &outline);
        let (grid, wet_on_each) = Grid::over(&outline, &field, &spots, limit);
        // Where nothing reads low, the worst is what was read.
        let worst: Vec<_> = spots.iter().chain(&may_be_wet).copied().collect();
        let is_worse = !may_be_wet.is_empty() || spots.iter().any(|spot| spot.corrected.may_read_low.is_some());
        let at_worst =
            is_worse.then(|| Grid::over(&outline, &Field::of(&worst, Taken::AtWorst, &outline), &spots, limit).1);
        let at_worst = at_worst.as_ref().unwrap_or(&wet_on_each);
        let drawn = field.drawn();
        let unread = grid.unread();
        let told = drawn.filter(|_| !is_too_much(unread, grid.floor().count()));
        let next = NextReading::of(&floor, &outline, &spots, &grid, told.map(|draws| (draws, wet_on_each.as_slice())));
        let wet = match (drawn, told) {
            (None, _) => Err(Untold::TooFew),
            (Some(_), None) => Err(Untold::Unread(grid.area(&outline, unread as f64))),
            (Some(_), Some(draws)) => {
                let close = grid.floor().filter(|cell| is_close(&spots, cell.at, limit));
                let wet_close = draws.told(&close.map(|cell| feet(cell.at)).collect::<Vec<_>>(), limit).wet;
                let counts = Counts { close: &wet_close, as_read: &wet_on_each, at_worst };
                Ok(Wet::of(&grid, &counts, &worst, &floor, &outline, limit))
            }
        };
        let doubts = doubts(&field, &left_out, &spots, &may_be_wet, limit);
        let why = why(&field).using(spots.iter().map(|spot| spot.reading));
        let value = Self { group, spots, limit, grid, floor, outline, wet, next };
        Figure::Known(Known { value, assumed, doubts, why })
    }
}

/// How far the floor is taken to go beyond readings in a room that is not measured.
const AROUND_FEET: i32 = 2;

/// The readings of a group: of each place that is on the plan the one that stands, of those
/// that are believed.
struct Read {
    spots: Vec<Spot>,
    /// Those that are only relative and over the limit: nobody can say that it is dry there.
    may_be_wet: Vec<Spot>,
    left_out: LeftOut,
}

/// How many readings are left out.
#[derive(Default)]
struct LeftOut {
    /// What stands of a place, and only relative.
    relative: usize,
    /// What stands of a place that is nowhere on the plan.
    unplaced: usize,
    /// Not believed.
    doubted: usize,
}

fn read(job: &Job, floor: &Floor, group: Group, limit: MoistureContent) -> Read {
    let is_of_group = |place: EntryId| {
        let place = job.now.places().get(&place);
        place.is_some_and(|place| Group::of(place.value.element) == Some(group))
    };
    let locate = |place: EntryId| job.now.places().get(&place).and_then(|place| floor.locate(place.value));
    let mut all = readings(job);
    all.retain(|(_, reading, _)| is_of_group(reading.value.place));
    let count = all.len();
    all.retain(|(.., known)| !known.value.doubted);
    let mut left_out = LeftOut { doubted: count - all.len(), ..LeftOut::default() };
    let mut spots = Vec::new();
    for (place, (reading, _, known)) in wettest_of_each(job, &all).iter() {
        let known = known.value;
        match locate(*place) {
            _ if known.relative => left_out.relative += 1,
            None => left_out.unplaced += 1,
            Some(at) => spots.push(Spot::of(*reading, at, known)),
        }
    }
    // A number that stands at the same place takes none of these back.
    let may_be_wet = standing(job, &all).filter_map(|(reading, seen, known)| {
        let known = known.value;
        let may_be = known.relative && known.corrected.is_above(limit);
        may_be.then(|| locate(seen.value.place)).flatten().map(|at| Spot::of(*reading, at, known))
    });
    let may_be_wet = may_be_wet.collect();
    Read { spots, may_be_wet, left_out }
}

fn around(spots: &[Spot]) -> Option<Outline> {
    let points: Vec<_> = spots.iter().map(|spot| spot.at).collect();
    Outline::new(Rect::around(&points).grown(Length::feet(AROUND_FEET)).corners().to_vec()).ok()
}

fn doubts(
    field: &Field,
    left_out: &LeftOut,
    spots: &[Spot],
    may_be_wet: &[Spot],
    limit: MoistureContent,
) -> Vec<String> {
    let LeftOut { relative, unplaced, doubted } = *left_out;
    let mut doubts = Vec::new();
    if field.drawn().is_none() {
        doubts.push(format!(
            "Weighed by distance alone: {} of the {FEWEST_DRAWN} readings that a map of how sure it is takes.",
            spots.len()
        ));
    }
    if doubted > 0 {
        doubts.push(format!("Readings that nobody believes are left out: {doubted}. Read them again."));
    }
    // What is over the limit as it was read is wet, however low it may read.
    let under = spots.iter().filter(|spot| !spot.corrected.corrected.is_above(limit));
    let low: Vec<_> = under.filter_map(|spot| spot.corrected.may_read_low).collect();
    if let Some(lowest) = low.iter().max_by_key(|low| low.points) {
        let (count, points) = (low.len(), lowest.points.to_percent());
        doubts.push(format!(
            "Readings that may read low, by up to {points:.1} points: {count}. \"At most\" takes them as wet as that: {}.",
            lowest.asks()
        ));
    }
    let loose = spots.iter().filter(|spot| !spot.corrected.is_firm()).count();
    if loose > 0 {
        doubts.push(format!(
            "Readings that are no firm number and count here as if they were: {loose}. Say the meter and the wood, and read wood that is warmer than 32 °F."
        ));
    }
    if relative > 0 {
        doubts.push(format!("Readings that are only relative are left out: {relative}."));
    }
    if !may_be_wet.is_empty() {
        doubts.push(format!(
            "Of the relative readings those over the limit: {}. \"At most\" takes them as wet as they read.",
            may_be_wet.len()
        ));
    }
    let treated = spots.iter().filter(|spot| spot.corrected.may_read_high.is_some()).count();
    if treated > 0 {
        let text = format!("Readings of treated wood, which may be 1 to 2 % drier: {treated}");
        doubts.push(Source::TreatedWood.noted(&text));
    }
    if unplaced > 0 {
        doubts.push(format!("Readings that are nowhere on the plan are left out: {unplaced}. Say how far along."));
    }
    doubts
}

fn why(field: &Field) -> Why {
    let Some(draws) = field.drawn() else {
        return Why::rule("Readings weighed by the square of their distance.", &[Source::ByDistance]);
    };
    let Variogram { nugget, sill, range } = draws.likeliest;
    Why::rule(
        "Floors drawn in every plausible way that the readings allow, by kriging; wet is counted on each.",
        &[Source::Kriging, Source::WaysToBeWet, Source::MeterAccuracy],
    )
    .with("floors", draws.count().to_string())
    .with("likeliest: go together up to", format!("{range:.0} ft"))
    .with("differ far apart by", format!("{:.1} %", libm::sqrt(2.0 * (sill + nugget))))
}

impl Spot {
    fn of(reading: EntryId, at: Point, corrected: Corrected) -> Self {
        Self { reading, at, corrected }
    }

    /// Is it over the limit, or may it be, by what it may read low?
    fn may_be_over(&self, limit: MoistureContent) -> bool {
        self.corrected.corrected.is_above(limit) || self.corrected.at_worst() > limit
    }
}
