//! Joist tops brought to a plane: what each station takes, up or down, and how flat they
//! are as they stand.

use super::Floor;
use super::levels::largest_gap_along;
use crate::engine::describe::place_name;
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::job::{InVisit, Job};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::{Element, Face, JoistNumber, Position};
use crate::engine::sources::Source;
use crate::engine::take::Units;
use crate::engine::units::Length;
use litemap::LiteMap;

/// A station of the level.
#[derive(Debug, Clone, PartialEq)]
pub struct Station {
    /// The place that was read.
    pub place: EntryId,
    /// Its name.
    pub name: String,
    /// Its joist, if its place says so.
    pub joist: Option<JoistNumber>,
    /// Across the joists and along them, if its place says so.
    pub at: Option<(Length, Length)>,
    /// Down from the beam.
    pub drop: Length,
    /// What brings it to the plane: a shim above nought, wood to plane off below.
    pub to_plane: Length,
}

/// What joists are brought to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Plane {
    /// Level, at the highest joist: nothing is planed.
    HighJoist,
    /// Level, so far below the beam.
    Mark(Length),
    /// The plane that fits them best: it need not be level.
    BestFit,
}

/// Joist tops and what they take.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelPlan {
    /// What they are brought to.
    pub plane: Plane,
    /// Every station, by joist.
    pub stations: Vec<Station>,
    /// From the highest station to the lowest.
    pub out_of_level: Length,
    /// How much the best plane falls in a foot.
    pub slope: Length,
    /// How flat they are, by every tolerance that was asked for.
    pub flatness: Vec<Tolerance>,
}

/// A named tolerance, and how the joists stand to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tolerance {
    /// The covering that asks for it.
    pub covering: &'static str,
    /// How long the straightedge is.
    pub reach: Length,
    /// The largest gap that is allowed.
    pub limit: Length,
    /// The largest gap that was found; none where stations stand too far apart to tell.
    pub gap: Option<Length>,
    /// Where it is from.
    pub source: Source,
}

impl Tolerance {
    /// Is it kept, if that can be told? At the limit counts as kept.
    pub fn holds(&self) -> Option<bool> {
        self.gap.map(|gap| gap <= self.limit + Length::nm(1))
    }
}

impl LevelPlan {
    /// All shims together.
    pub fn shims(&self) -> Length {
        self.stations.iter().map(|station| station.to_plane.max(Length::ZERO)).fold(Length::ZERO, |sum, it| sum + it)
    }

    /// The thickest shim.
    pub fn thickest(&self) -> Length {
        self.stations.iter().map(|station| station.to_plane).max().unwrap_or(Length::ZERO).max(Length::ZERO)
    }

    /// The most that is planed off.
    pub fn deepest(&self) -> Length {
        self.stations.iter().map(|station| -station.to_plane).max().unwrap_or(Length::ZERO).max(Length::ZERO)
    }
}

/// What each covering asks for: reach in inches, limit in sixty-fourths
/// ([`Source::Flatness`], [`Source::FlatnessGlued`], [`Source::FlatnessTile`]).
const TOLERANCES: [(&str, i32, i32, Source); 8] = [
    ("wood, long fasteners", 120, 16, Source::Flatness),
    ("wood, long fasteners", 72, 12, Source::Flatness),
    ("wood, glued or short fasteners", 120, 12, Source::FlatnessGlued),
    ("wood, glued or short fasteners", 72, 8, Source::FlatnessGlued),
    ("tile under 15 in", 120, 16, Source::FlatnessTile),
    ("tile under 15 in", 12, 4, Source::FlatnessTile),
    ("tile 15 in and over", 120, 8, Source::FlatnessTile),
    ("tile 15 in and over", 24, 4, Source::FlatnessTile),
];

/// No floor's joists are brought up or down farther: a level was read or typed wrongly, or from
/// another beam (judgement).
pub const FARTHEST: Length = Length::inches(12);

/// What every joist top takes to come to the chosen plane. Source: [`Source::Shims`],
/// [`Source::Flatness`].
pub fn level_plan(job: &Job, units: Units) -> Figure<LevelPlan> {
    let floor = Floor::of(job);
    let mut doubts = vec![LASER.to_owned(), PLANING.to_owned()];
    let mut stations = stations(job, floor.as_ref(), units, &mut doubts);
    if stations.len() < 2 {
        return Figure::Missing(vec![Need::Levels]);
    }
    let said = Particulars::of(job);
    let mut assumed = Vec::new();
    let plane = plane(said, &mut assumed);
    if plane == Plane::BestFit {
        let lost: Vec<_> = stations.iter().filter(|it| it.at.is_none()).map(|it| it.name.clone()).collect();
        stations.retain(|it| it.at.is_some());
        if stations.len() < 2 {
            return Figure::Missing(vec![Need::Joists]);
        }
        if !lost.is_empty() {
            doubts.push(format!("Left out, since nobody knows where: {}.", lost.join("; ")));
        }
    }
    let best = Fit::of(&stations);
    let highest = stations.iter().map(|station| station.drop).min().unwrap_or(Length::ZERO);
    let lowest = stations.iter().map(|station| station.drop).max().unwrap_or(Length::ZERO);
    for station in &mut stations {
        let target = match plane {
            Plane::HighJoist => highest,
            Plane::Mark(mark) => mark,
            Plane::BestFit => best.at(station),
        };
        station.to_plane = station.drop - target;
    }
    if stations.iter().any(|station| station.to_plane.abs() > FARTHEST) {
        return Figure::Missing(vec![Need::LevelsAgain]);
    }
    let flatness = flatness(&stations, said.words(&Part::House, &list::COVERING));
    let used: Vec<_> = stations.iter().map(|station| station.place).collect();
    let value = LevelPlan { plane, stations, out_of_level: lowest - highest, slope: best.slope(), flatness };
    let sources = [Source::Shims, Source::Flatness, Source::FlatnessGlued, Source::FlatnessTile];
    let rule = "Each reading less the plane's: what is above nought is a shim, what is below is planed off.";
    let why = Why::rule(rule, &sources).using(used);
    Figure::Known(Known { value, assumed, doubts, why })
}

/// The plane that was chosen. A mark alone says that it is meant.
fn plane(said: Particulars<'_>, assumed: &mut Vec<String>) -> Plane {
    let mark = said.length(&Part::House, &list::DATUM);
    match (said.words(&Part::House, &list::PLANE), mark) {
        (Some("best fit"), _) => Plane::BestFit,
        (Some("high joist"), _) => Plane::HighJoist,
        (_, Some(mark)) => Plane::Mark(mark),
        (Some(_), None) => {
            assumed.push("the high joist, since no mark below the beam was given".to_owned());
            Plane::HighJoist
        }
        (None, None) => {
            assumed.push("joists come up to the high joist".to_owned());
            Plane::HighJoist
        }
    }
}

/// How far a laser can be trusted (common practice, no source).
const LASER: &str = "A laser's plane is off by about 1/8 in at 30 ft (common practice, no source): set it once, and sight back to the start.";
const PLANING: &str = "Planing takes a joist's depth: its span and cuts go by what is left.";

/// The latest reading of each joist top, by joist and then along it: of the last visit alone,
/// since the beam stood elsewhere before.
fn stations(job: &Job, floor: Option<&Floor>, units: Units, doubts: &mut Vec<String>) -> Vec<Station> {
    let is_top = |place: &EntryId| {
        let place = job.now.places().get(place);
        place.is_some_and(|it| it.value.element == Element::Joist && it.value.face != Some(Face::LowerEdge))
    };
    let tops = || job.now.levels().values().filter(|level| is_top(&level.value.place));
    let last = tops().next_back().map(|level| level.in_visit());
    let is_of_last = |visit: InVisit| last.is_some_and(|last| last.is_same(visit));
    if tops().any(|level| !is_of_last(level.in_visit())) {
        doubts.push("Readings of earlier visits are left out: the beam stood elsewhere.".to_owned());
    }
    if tops().count() < job.now.levels().len() {
        doubts.push("Readings that are on no joist's top are left out.".to_owned());
    }
    let mut latest: LiteMap<EntryId, Length> = LiteMap::new();
    for level in tops().filter(|level| is_of_last(level.in_visit())) {
        latest.insert(level.value.place, level.value.drop.value);
    }
    let station = |(place, drop): (EntryId, Length)| {
        let seen = job.now.places().get(&place)?.value;
        let (joist, along) = match &seen.position {
            Position::OnJoist { joist, along } => {
                (Some(*joist), along.as_ref().map_or(Length::ZERO, |along| along.value))
            }
            Position::OnPlan { .. } | Position::Named => (None, Length::ZERO),
        };
        // Where the joist starts at another wall, its distances do too.
        let at = floor.zip(joist).and_then(|(floor, joist)| {
            Some((floor.joists.as_ref()?.center(joist.get()), floor.starts(joist).0 + along))
        });
        Some(Station { place, name: place_name(seen, units), joist, at, drop, to_plane: Length::ZERO })
    };
    let mut stations: Vec<_> = latest.into_iter().filter_map(station).collect();
    stations.sort_by_key(|station| (station.at, station.place));
    stations
}

/// The largest gaps under a straightedge, across the joists and along them.
fn flatness(stations: &[Station], covering: Option<&str>) -> Vec<Tolerance> {
    let across = lines(stations, |(across, along)| (along, across));
    let along = lines(stations, |(across, along)| (across, along));
    let lines: Vec<_> = across.into_iter().chain(along).filter(|line| line.len() > 2).collect();
    if lines.is_empty() {
        return Vec::new();
    }
    let asked = TOLERANCES.iter().filter(|(name, ..)| covering.is_none_or(|covering| covering == *name));
    asked
        .map(|(covering, reach, limit, source)| {
            let reach = Length::inches(*reach);
            let gap = lines.iter().filter_map(|line| largest_gap_along(line, reach)).max();
            Tolerance { covering, reach, limit: Length::sixty_fourths(*limit), gap, source: *source }
        })
        .collect()
}

/// Stations in line with each other: `split` gives what they share and where they are on
/// that line. A drop is a height upside down, which is as flat.
fn lines(stations: &[Station], split: impl Fn((Length, Length)) -> (Length, Length)) -> Vec<Vec<(Length, Length)>> {
    let mut points: Vec<_> = stations.iter().filter_map(|it| Some((split(it.at?), it.drop))).collect();
    points.sort_unstable();
    points
        .chunk_by(|a, b| a.0.0 == b.0.0)
        .map(|line| line.iter().map(|((_, at), drop)| (*at, *drop)).collect())
        .collect()
}

/// The plane, or on one line the line, from which readings are off the least in squares.
/// All in inches.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Fit {
    middle: (f64, f64, f64),
    across: f64,
    along: f64,
}

impl Fit {
    fn of(stations: &[Station]) -> Self {
        let points: Vec<_> = stations.iter().filter_map(point).collect();
        let count = points.len().max(1) as f64;
        let sum = |of: fn(&(f64, f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
        let middle = (sum(|it| it.0), sum(|it| it.1), sum(|it| it.2));
        let (mut xx, mut xy, mut yy, mut xz, mut yz) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (x, y, z) in &points {
            let (x, y, z) = (x - middle.0, y - middle.1, z - middle.2);
            xx += x * x;
            xy += x * y;
            yy += y * y;
            xz += x * z;
            yz += y * z;
        }
        let determinant = xx * yy - xy * xy;
        let (across, along) = match () {
            () if determinant > 1e-6 * (xx + yy) * (xx + yy) => {
                ((xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant)
            }
            () if xx >= yy && xx > 0.0 => (xz / xx, 0.0),
            () if yy > 0.0 => (0.0, yz / yy),
            () => (0.0, 0.0),
        };
        Self { middle, across, along }
    }

    fn at(&self, station: &Station) -> Length {
        let (mid_x, mid_y, mid_z) = self.middle;
        let (x, y, _) = point(station).unwrap_or(self.middle);
        Length::from_inches(mid_z + self.across * (x - mid_x) + self.along * (y - mid_y))
    }

    /// The fall in a foot.
    fn slope(&self) -> Length {
        Length::from_inches(12.0 * libm::hypot(self.across, self.along))
    }
}

/// Where a station is and what it reads, if its place says where.
fn point(station: &Station) -> Option<(f64, f64, f64)> {
    let (across, along) = station.at?;
    Some((across.to_inches(), along.to_inches(), station.drop.to_inches()))
}
