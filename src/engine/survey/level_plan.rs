//! Joist tops brought to a plane: what each station takes, up or down, and how flat they
//! are as they stand.

use super::Floor;
use super::flat::{Tolerance, flatness};
use super::level_again::{AGREE, is_confirmed, is_far_off};
use crate::engine::describe::{counted, place_name};
use crate::engine::entry::EntryId;
use crate::engine::figure::{Figure, Known, Need, Why};
use crate::engine::framing::joist::{joists, number_of};
use crate::engine::framing::{Joist, Planing};
use crate::engine::geometry::Point;
use crate::engine::job::{InVisit, Job, When, last_words};
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::{Element, Face, JoistNumber, Place, Position};
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
    /// How far it lies below the plane; less than nothing where it stands above.
    pub to_plane: Length,
    /// What is done about that.
    pub takes: Takes,
    /// Is it read again before anything hangs on it?
    again: bool,
}

#[cfg(test)]
impl Station {
    /// One so far below the plane.
    pub(crate) fn that_takes(to_plane: Length) -> Self {
        let place = EntryId { count: 1, device: crate::engine::entry::DeviceId::new(1) };
        let takes = if to_plane.is_positive() { Takes::Shim(to_plane) } else { Takes::Nothing };
        Self { place, name: String::new(), joist: None, at: None, drop: Length::ZERO, to_plane, takes, again: false }
    }
}

/// What a joist's top takes to come to the plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Takes {
    /// Nothing: it lies there.
    Nothing,
    /// A shim so thick.
    Shim(Length),
    /// So much off, as a notch, and no longer than `no_longer` along it.
    Planing {
        /// Wood.
        off: Length,
        /// Along the joist.
        no_longer: Length,
    },
    /// It stands so far above, and nothing is taken off: the others come up to it, or an engineer
    /// looks.
    StaysAbove(Length, Planing),
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

impl LevelPlan {
    /// All shims together.
    pub fn shims(&self) -> Length {
        self.each_shim().fold(Length::ZERO, |sum, it| sum + it)
    }

    /// The thickest shim.
    pub fn thickest(&self) -> Length {
        self.each_shim().max().unwrap_or(Length::ZERO)
    }

    /// Every shim.
    pub fn each_shim(&self) -> impl Iterator<Item = Length> {
        self.stations.iter().filter_map(|it| if let Takes::Shim(thick) = it.takes { Some(thick) } else { None })
    }

    /// The most that is planed off.
    pub fn deepest(&self) -> Length {
        let off =
            self.stations.iter().map(|it| if let Takes::Planing { off, .. } = it.takes { off } else { Length::ZERO });
        off.max().unwrap_or(Length::ZERO)
    }

    /// Stations that stand above the plane and that nothing is taken off: it is not reached.
    pub fn above(&self) -> impl Iterator<Item = &Station> {
        self.stations.iter().filter(|station| matches!(station.takes, Takes::StaysAbove(..)))
    }
}

/// No floor's joists are brought up or down farther: a level was read or typed wrongly, or from
/// another beam (judgement).
pub const FARTHEST: Length = Length::inches(12);

/// What every joist top takes to come to the chosen plane. Source: [`Source::Shims`],
/// [`Source::Flatness`].
pub fn level_plan(job: &Job, units: Units) -> Figure<LevelPlan> {
    let floor = Floor::of(job);
    let mut doubts = vec![LASER.to_owned()];
    let mut stations = stations(job, floor.as_ref(), units, &mut doubts);
    if stations.len() < 2 {
        return Figure::Missing(vec![Need::Levels]);
    }
    if stations.iter().any(|station| station.again) {
        return Figure::Missing(vec![Need::LevelsAgain]);
    }
    let said = Particulars::of(job);
    let mut assumed = Vec::new();
    let Some(plane) = plane(said, &mut assumed) else { return Figure::Missing(vec![Need::PlaneAgain]) };
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
    take(job, floor.as_ref(), &mut stations);
    if stations.iter().any(|station| matches!(station.takes, Takes::Planing { .. })) {
        doubts.push(PLANING.to_owned());
    }
    let nowhere = stations.iter().filter(|it| it.at.is_none()).count();
    if nowhere > 0 {
        doubts.push(format!(
            "{} in no line, since nobody knows where: say how far along they are.",
            counted(nowhere, "station")
        ));
    }
    let flatness = flatness(floor.as_ref(), &stations, &best, &said.all_words(&Part::House, &list::COVERING));
    let used: Vec<_> = stations.iter().map(|station| station.place).collect();
    let value = LevelPlan { plane, stations, out_of_level: lowest - highest, slope: best.slope(), flatness };
    let sources = [Source::Shims, Source::JoistCuts, Source::Flatness, Source::FlatnessGlued, Source::FlatnessTile];
    let rule = "Each reading less the plane's: above nought it is a shim; below, wood comes off only where a notch may be as deep.";
    let why = Why::rule(rule, &sources).using(used);
    Figure::Known(Known { value, assumed, doubts, why })
}

/// The plane that was chosen; none where two phones say different things. A mark alone says that
/// it is meant.
fn plane(said: Particulars<'_>, assumed: &mut Vec<String>) -> Option<Plane> {
    let mark = one_of(said.lengths(&Part::House, &list::DATUM))?;
    Some(match (one_of(said.all_words(&Part::House, &list::PLANE))?, mark) {
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
    })
}

/// What was said, if anything was: none where it was said in two ways.
#[expect(clippy::option_option, reason = "nothing said, and said in two ways, are not the same")]
fn one_of<T: PartialEq>(said: Vec<T>) -> Option<Option<T>> {
    let mut said = said.into_iter();
    let first = said.next();
    said.all(|other| Some(&other) == first.as_ref()).then_some(first)
}

/// How far a laser can be trusted (common practice, no source).
const LASER: &str = "A laser's plane is off by about 1/8 in at 30 ft (common practice, no source): set it once, and sight back to the start.";
const PLANING: &str =
    "What is planed off is a notch: log it under its joist, from where to where and how deep, and its cuts go by it.";

/// What a top is shown and cut to.
pub const SIXTEENTH: Length = Length::sixty_fourths(4);

/// The stations that are read again before anything is said of levels, by name.
pub fn levels_again(job: &Job, units: Units) -> Vec<String> {
    let stations = stations(job, Floor::of(job).as_ref(), units, &mut Vec::new());
    stations.into_iter().filter(|station| station.again).map(|station| station.name).collect()
}

/// What each station takes. What is told to be planed off, rounded up, is what a notch there may
/// be deep.
fn take(job: &Job, floor: Option<&Floor>, stations: &mut [Station]) {
    let is_any_above = stations.iter().any(|station| (-station.to_plane).is_positive());
    let joists = if is_any_above { joists(job) } else { Vec::new() };
    for station in stations {
        let off = -station.to_plane;
        station.takes = match () {
            () if station.to_plane.is_positive() => Takes::Shim(station.to_plane),
            () if !off.is_positive() => Takes::Nothing,
            () => match planing(floor, &joists, station, off.up_to(SIXTEENTH)) {
                Planing::Allowed(no_longer) => Takes::Planing { off, no_longer },
                not => Takes::StaysAbove(off, not),
            },
        };
    }
}

fn planing(floor: Option<&Floor>, joists: &[Joist], station: &Station, off: Length) -> Planing {
    let joist = joists.iter().find(|joist| Some(joist.number) == station.joist);
    let Some(joist) = joist else { return Planing::NotKnown("say which joist it is, and lay the joists out") };
    let begins = floor.and_then(|floor| floor.end(joist.number, Face::NearEnd));
    joist.planing(station.at.zip(begins).map(|((_, along), (begins, _))| along - begins), off)
}

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
    let mut read: LiteMap<EntryId, Vec<(When, Length)>> = LiteMap::new();
    for level in tops().filter(|level| is_of_last(level.in_visit())) {
        read.entry(level.value.place).or_default().push((level.when(), level.value.drop.value));
    }
    let station = |(place, read): (EntryId, Vec<(When, Length)>)| {
        let seen = job.now.places().get(&place)?.value;
        let drops: Vec<_> = read.iter().map(|(_, drop)| *drop).collect();
        // Of two phones that read it both count: they agree, or it is read again.
        let last = last_words(read);
        let are_apart = *last.iter().max()? - *last.iter().min()? > AGREE;
        let (joist, at) = floor.map_or((number_said(seen), None), |floor| on_floor(floor, seen));
        let station = Station {
            place,
            name: place_name(seen, units),
            joist,
            at,
            drop: *drops.last()?,
            to_plane: Length::ZERO,
            takes: Takes::Nothing,
            again: are_apart,
        };
        Some((station, is_confirmed(&drops)))
    };
    let (mut stations, is_confirmed): (Vec<_>, Vec<_>) = read.into_iter().filter_map(station).unzip();
    let far_off: Vec<_> = stations.iter().map(|station| is_far_off(station, &stations)).collect();
    for ((station, is_far_off), is_confirmed) in stations.iter_mut().zip(far_off).zip(is_confirmed) {
        station.again |= is_far_off && !is_confirmed;
    }
    stations.sort_by_key(|station| (station.at, station.place));
    stations
}

fn number_said(place: &Place) -> Option<JoistNumber> {
    if let Position::OnJoist { joist, .. } = &place.position { Some(*joist) } else { None }
}

/// The joist that a top is of, and how far across the joists and along them it lies: an end lies
/// where its joist ends. None of what nobody knows.
fn on_floor(floor: &Floor, place: &Place) -> (Option<JoistNumber>, Option<(Length, Length)>) {
    let Some(joists) = &floor.joists else { return (number_said(place), None) };
    let number = number_of(place, joists);
    let along = || match &place.position {
        // Where the joist starts at another wall, its distances do too.
        Position::OnJoist { joist, along: Some(along) } => Some(floor.starts(*joist).0 + along.value),
        Position::OnJoist { joist, along: None } => Some(floor.end(*joist, place.face?)?.0),
        Position::OnPlan { right, down } => Some(joists.run().along(Point::new(right.value, down.value))),
        Position::Named => None,
    };
    (number, number.and_then(|number| Some((joists.center(number.get()), along()?))))
}

/// The plane, or on one line the line, from which readings are off the least in squares.
/// All in inches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fit {
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

    pub(super) fn at(&self, station: &Station) -> Length {
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
