//! How often the truth lies between "at least" and "at most", and what a reading more does.

use super::before;
use super::fields::{Floor, Kind, Shows, Taken};
use duckboard::engine::extent::{Extent, Random};
use duckboard::engine::geometry::Point;
use duckboard::engine::units::Area;
use std::fmt;

/// Fields of a row.
pub const FIELDS: u64 = 200;

/// Fields of a row whose readings follow the map, one after the other.
pub const FOLLOWED: u64 = 60;

/// Rounding of what is shown is not held against a range, square feet.
const ROUNDED: f64 = 0.05;

/// What came of one kind of field with so many readings.
#[derive(Default)]
pub struct Row {
    pub given: usize,
    pub inside: usize,
    pub wetter: usize,
    pub drier: usize,
    widths: Vec<f64>,
    off: Vec<f64>,
    inside_before: usize,
    widths_before: Vec<f64>,
    off_before: Vec<f64>,
    floors: Vec<f64>,
    /// How many readings there were in the end.
    readings: Vec<f64>,
}

/// Nobody reads more often than this at the map's word.
const MOST_AT_ITS_WORD: usize = 40;

/// A random row of its own for each field.
fn random_of(set: u64, kind: Kind, field: u64) -> Random {
    Random::starting_at(set * 1_000_003 + field * 7919 + kind as u64 * 104_729)
}

/// The field, its truth in square feet, and so many readings of it.
fn field(set: u64, kind: Kind, field: u64, taken: Taken, count: usize) -> (Floor, f64, Vec<Shows>, Random) {
    let mut random = random_of(set, kind, field);
    let floor = Floor::new(kind, &mut random);
    let truth = floor.wet(&mut random);
    let read = floor.read(taken, count, &mut random);
    (floor, truth, read, random)
}

impl Row {
    pub fn of(set: u64, kind: Kind, count: usize, fields: u64) -> Self {
        let mut row = Self::default();
        for number in 0..fields {
            let (floor, truth, read, _) = field(set, kind, number, Taken::Evenly, count);
            let [about, least, most] = before::range(&read, floor.size);
            row.inside_before += usize::from((least - ROUNDED..=most + ROUNDED).contains(&truth));
            row.widths_before.push(most - least);
            row.off_before.push(about - truth);
            row.add(&floor, truth, &floor.extent(&read));
        }
        row
    }

    /// Readings taken so, and then, at the map's word, where it says to read until it gives a
    /// range.
    pub fn taken(set: u64, kind: Kind, taken: Taken, count: usize, at_its_word: bool, fields: u64) -> Self {
        let mut row = Self::default();
        for number in 0..fields {
            let (floor, truth, mut read, mut random) = field(set, kind, number, taken, count);
            let mut extent = floor.extent(&read);
            while at_its_word && extent.wet.is_err() && read.len() < count + MOST_AT_ITS_WORD {
                let Some(next) = extent.next else { break };
                read.push(floor.shown(feet(next.at), &mut random));
                extent = floor.extent(&read);
            }
            row.add(&floor, truth, &extent);
        }
        row
    }

    fn add(&mut self, floor: &Floor, truth: f64, extent: &Extent) {
        let Ok(wet) = extent.wet else { return };
        let [about, least, most] = [wet.area, wet.at_least, wet.at_most].map(Area::to_square_feet);
        self.given += 1;
        self.readings.push(extent.spots.len() as f64);
        self.floors.push(floor.size[0] * floor.size[1]);
        self.inside += usize::from((least - ROUNDED..=most + ROUNDED).contains(&truth));
        self.wetter += usize::from(truth > most + ROUNDED);
        self.drier += usize::from(truth < least - ROUNDED);
        self.widths.push(most - least);
        self.off.push(about - truth);
    }

    /// Are ranges given often enough of 200 evenly read floors?
    pub fn is_given(&self, count: usize) -> bool {
        let least = [(8, 80), (12, 150), (20, 190)].into_iter().find(|(of, _)| *of == count);
        least.is_none_or(|(_, least)| self.given >= least)
    }

    /// The median width of a range, square feet.
    pub fn width(&self) -> f64 {
        median(&self.widths)
    }

    /// The median floor, square feet.
    pub fn floor(&self) -> f64 {
        median(&self.floors)
    }

    /// Do at least nine of ten ranges hold the truth?
    pub fn is_honest(&self) -> bool {
        self.inside * 10 >= self.given * 9
    }
}

impl fmt::Display for Row {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { given, inside, wetter, drier, inside_before, .. } = self;
        if *given == 0 {
            return write!(f, "given   0");
        }
        let (width, whole, off, readings) =
            (self.width(), self.floor(), root_mean_square(&self.off), median(&self.readings));
        write!(
            f,
            "given {given:3}  inside {inside:3}  wetter {wetter:2}  drier {drier:2}  width {width:5.1} \
             of {whole:.0}  off {off:4.1}  readings {readings:2}"
        )?;
        if self.off_before.is_empty() {
            return Ok(());
        }
        let (width, off) = (median(&self.widths_before), root_mean_square(&self.off_before));
        write!(f, " | before: inside {inside_before:3}  width {width:5.1}  off {off:4.1}")
    }
}

pub fn median(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.get(sorted.len() / 2).copied().unwrap_or(f64::NAN)
}

fn root_mean_square(values: &[f64]) -> f64 {
    libm::sqrt(values.iter().map(|value| value * value).sum::<f64>() / values.len() as f64)
}

/// What a reading more is worth, on the mean: how far "about" is off the truth in square
/// feet, and how far the chance of a spot of the floor is off its being wet or not, as a
/// mean square of percent points.
#[derive(Default)]
pub struct Next {
    given: usize,
    before: [f64; 2],
    next: [f64; 2],
    any: [f64; 2],
}

/// Places taken at random beside each next reading.
const ANY: usize = 2;

impl Next {
    pub fn of(set: u64, kind: Kind, count: usize, fields: u64) -> Self {
        let mut sums = Self::default();
        for number in 0..fields {
            let (floor, truth, read, mut random) = field(set, kind, number, Taken::Evenly, count);
            let extent = floor.extent(&read);
            if extent.wet.is_err() {
                continue;
            }
            sums.given += 1;
            let spots = random.clone();
            let add = |sums: &mut [f64; 2], extent: &Extent, runs: usize| {
                let part = 1.0 / runs as f64;
                sums[0] += (extent.wet.unwrap().area.to_square_feet() - truth).abs() * part;
                sums[1] += unsure(&floor, extent, &mut spots.clone()) * part;
            };
            add(&mut sums.before, &extent, 1);
            let with = |place: [f64; 2], random: &mut Random| {
                let mut more = read.clone();
                more.push(floor.shown(place, random));
                floor.extent(&more)
            };
            let next = feet(extent.next.unwrap().at);
            add(&mut sums.next, &with(next, &mut random), 1);
            for _ in 0..ANY {
                let place = floor.any_place(&read, &mut random);
                add(&mut sums.any, &with(place, &mut random), ANY);
            }
        }
        for sum in [&mut sums.before, &mut sums.next, &mut sums.any].into_iter().flatten() {
            *sum /= sums.given.max(1) as f64;
        }
        sums
    }
}

fn feet(at: Point) -> [f64; 2] {
    [at.x.to_feet(), at.y.to_feet()]
}

/// How far the chances of all spots are off what they are.
fn unsure(floor: &Floor, extent: &Extent, random: &mut Random) -> f64 {
    let off = extent.grid.floor().map(|cell| {
        let off = 100.0 * (cell.chance - f64::from(u8::from(floor.is_wet(feet(cell.at), random))));
        off * off
    });
    off.sum::<f64>() / extent.grid.floor().count() as f64
}

impl fmt::Display for Next {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { given, before, next, any } = self;
        write!(f, "given {given:3}  area off {:5.2}  next {:5.2}  anywhere {:5.2} | ", before[0], next[0], any[0])?;
        write!(f, "spots off {:4.0}  next {:4.0}  anywhere {:4.0}", before[1], next[1], any[1])
    }
}
