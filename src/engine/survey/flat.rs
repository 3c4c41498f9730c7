//! How flat joist tops lie, as far as they were read: under a straightedge from any station to
//! any other, and never of a floor that was not read whole.

use super::Floor;
use super::level_plan::{Fit, Station};
use crate::engine::place::JoistNumber;
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// A rounding of a reading.
const ROUNDING: Length = Length::nm(1);
/// So far beside a straightedge a joist's top lies as it does under it (judgement).
pub const IN_LINE: Length = Length::inches(6);
/// Stations so far from each other along their joists are of one row (judgement): of three in a
/// row none is then farther than [`IN_LINE`] beside the line of the others.
pub const IN_A_ROW: Length = Length::inches(3);
/// No farther apart along a joist than this are stations of a joist that was read whole, nor
/// than half of the straightedge (judgement).
pub const APART: Length = Length::inches(24);

/// Of more stations than this not every three are tried: a phone would take too long (judgement).
pub const MOST_STATIONS: usize = 300;

/// A named tolerance, and how the joists stand to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Tolerance {
    /// The covering that asks for it.
    pub covering: &'static str,
    /// How long the straightedge is.
    pub reach: Length,
    /// The largest gap that is allowed.
    pub limit: Length,
    /// Laid over three joists or more.
    pub across: Held,
    /// Laid along a joist.
    pub along: Held,
    /// Was every joist read from end to end, in rows?
    pub is_all_read: bool,
    /// Where it is from.
    pub source: Source,
}

/// What came of holding a straightedge to stations in one direction.
#[derive(Debug, Clone, PartialEq)]
pub enum Held {
    /// It could not be: no three stations lie in line under it, or there are more than can be tried.
    CouldNotBe,
    /// It was.
    So(Edge),
}

/// A straightedge that was held to stations.
#[derive(Debug, Clone, PartialEq)]
pub struct Edge {
    /// The largest gap.
    pub gap: Length,
    /// How far the longest reached.
    pub long: Length,
    /// The joists that it was held to, in order.
    pub joists: Vec<JoistNumber>,
}

/// How joists stand to a tolerance.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Flat {
    /// A gap is too large.
    No(Length),
    /// Every joist was read from end to end and none is: this is the largest.
    Yes(Length),
    /// None is as far as it was read: of the rest nothing is told.
    AsFarAsRead,
    /// It could not be held.
    NotHeld,
}

impl Tolerance {
    /// The verdict. At the limit counts as kept.
    pub fn verdict(&self) -> Flat {
        let gaps = [&self.across, &self.along].map(Held::gap);
        let Some(gap) = gaps.into_iter().flatten().max() else { return Flat::NotHeld };
        match () {
            () if gap > self.limit + ROUNDING => Flat::No(gap),
            () if self.is_all_read && gaps.iter().all(Option::is_some) => Flat::Yes(gap),
            () => Flat::AsFarAsRead,
        }
    }
}

impl Held {
    /// The largest gap, if it could be held.
    pub const fn gap(&self) -> Option<Length> {
        match self {
            Self::So(edge) => Some(edge.gap),
            Self::CouldNotBe => None,
        }
    }

    fn and(&mut self, three: &[&Point; 3], (gap, long): (Length, Length)) {
        let numbers = three.map(|point| point.joist);
        match self {
            Self::CouldNotBe => *self = Self::So(Edge { gap, long, joists: Vec::new() }),
            Self::So(edge) => {
                edge.gap = edge.gap.max(gap);
                edge.long = edge.long.max(long);
            }
        }
        if let Self::So(edge) = self {
            for number in numbers {
                if let Err(at) = edge.joists.binary_search(&number) {
                    edge.joists.insert(at, number);
                }
            }
        }
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

/// A station whose joist and place are known: where it is in inches, and how far its top is off
/// the plane that fits all of them best. A plane is flat, so that taking it away changes no gap in
/// line; beside the line it leaves what the floor's fall does not explain.
struct Point {
    joist: JoistNumber,
    across: f64,
    along: f64,
    off: f64,
}

/// How the stations stand to what these coverings ask for, or where none was said, every covering.
pub(super) fn flatness(floor: Option<&Floor>, stations: &[Station], fit: &Fit, coverings: &[&str]) -> Vec<Tolerance> {
    let asked = TOLERANCES.iter().filter(|(name, ..)| coverings.is_empty() || coverings.contains(name));
    let mut all: Vec<_> = asked
        .map(|(covering, reach, limit, source)| {
            let reach = Length::inches(*reach);
            Tolerance {
                covering,
                reach,
                limit: Length::sixty_fourths(*limit),
                across: Held::CouldNotBe,
                along: Held::CouldNotBe,
                is_all_read: floor.is_some_and(|floor| is_all_read(floor, stations, APART.min(reach.half()))),
                source: *source,
            }
        })
        .collect();
    let points: Vec<_> = stations.iter().filter_map(|station| point(station, fit)).collect();
    if stations.len() > MOST_STATIONS {
        return all;
    }
    let pairs = points.iter().enumerate().flat_map(|(at, from)| points.iter().skip(at + 1).map(move |to| (from, to)));
    for (from, to) in pairs {
        let long = Length::from_inches(libm::hypot(to.across - from.across, to.along - from.along));
        if all.iter().any(|tolerance| long <= tolerance.reach + ROUNDING) {
            hold(&mut all, &points, (from, to), long);
        }
    }
    all
}

/// Holds a straightedge from one station to another.
fn hold(all: &mut [Tolerance], points: &[Point], (from, to): (&Point, &Point), long: Length) {
    let [first, last] = [from.joist.min(to.joist), from.joist.max(to.joist)];
    for under in points {
        let is_along = first == last && under.joist == first;
        let is_across = first < under.joist && under.joist < last;
        let Some(gap) = gap(from, to, under).filter(|_| is_along || is_across) else { continue };
        for tolerance in all.iter_mut().filter(|tolerance| long <= tolerance.reach + ROUNDING) {
            let held = if is_along { &mut tolerance.along } else { &mut tolerance.across };
            held.and(&[from, under, to], (gap, long));
        }
    }
}

/// How far a station is from a straightedge between two others, if it lies under it.
fn gap(from: &Point, to: &Point, under: &Point) -> Option<Length> {
    let (dx, dy) = (to.across - from.across, to.along - from.along);
    let (px, py) = (under.across - from.across, under.along - from.along);
    let square = dx * dx + dy * dy;
    let part = if square > 0.0 { (px * dx + py * dy) / square } else { 0.0 };
    let beside = Length::from_inches((px * dy - py * dx).abs() / libm::sqrt(square).max(1e-9));
    let is_under = part > 0.0 && part < 1.0 && beside <= IN_LINE + ROUNDING;
    is_under.then(|| Length::from_inches((under.off - from.off - part * (to.off - from.off)).abs()))
}

fn point(station: &Station, fit: &Fit) -> Option<Point> {
    let (across, along) = station.at?;
    let off = station.drop.to_inches() - fit.at(station).to_inches();
    Some(Point { joist: station.joist?, across: across.to_inches(), along: along.to_inches(), off })
}

/// Do the joists that were laid out reach from wall to wall: is each wall along them no farther from
/// the first or the last than they are spaced?
fn do_fill_the_room(floor: &Floor) -> bool {
    let (Some(joists), Some(outline)) = (&floor.joists, floor.placed_outline()) else { return false };
    let bounds = outline.bounds();
    let [least, most] = [bounds.least(), bounds.most()].map(|corner| joists.run().across(corner));
    let (first, last) = (joists.centers().min(), joists.centers().max());
    let spacing = joists.widest_spacing() + ROUNDING;
    first.is_some_and(|first| first - least <= spacing) && last.is_some_and(|last| most - last <= spacing)
}

/// Was every joist read from end to end, with stations no farther apart, do they stand in rows
/// across all joists, and is that the whole floor?
fn is_all_read(floor: &Floor, stations: &[Station], apart: Length) -> bool {
    let Some(joists) = &floor.joists else { return false };
    let numbers = || (1..=joists.count()).filter_map(JoistNumber::new);
    let of = |number: JoistNumber| {
        let on = stations.iter().filter(move |station| station.joist == Some(number));
        on.filter_map(|station| station.at.map(|(_, along)| along))
    };
    let all: Option<Vec<_>> = numbers().map(|number| Some((number, floor.stretches(number)?))).collect();
    let Some(all) = all.filter(|_| do_fill_the_room(floor)) else { return false };
    let is_read = all.iter().all(|(number, stretches)| {
        let mut on: Vec<_> = of(*number).collect();
        on.sort_unstable();
        stretches.iter().all(|stretch| {
            let mut last = stretch.from;
            for at in on.iter().chain([&stretch.to]).filter(|at| (stretch.from..=stretch.to).contains(*at)) {
                if *at - last > apart + ROUNDING {
                    return false;
                }
                last = *at;
            }
            true
        })
    });
    let is_in_a_row = |along: Length| {
        all.iter().all(|(number, stretches)| {
            let is_floor = stretches.iter().any(|it| it.from + IN_A_ROW <= along && along + IN_A_ROW <= it.to);
            !is_floor || of(*number).any(|other| (other - along).abs() <= IN_A_ROW + ROUNDING)
        })
    };
    is_read && stations.iter().filter_map(|station| Some(station.at?.1)).all(is_in_a_row)
}
