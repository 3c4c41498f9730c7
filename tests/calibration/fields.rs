//! Invented floors whose wood is known everywhere, and readings of them.

use super::desk::{Desk, length};
use duckboard::engine::entry::EntryId;
use duckboard::engine::extent::{Extent, Group, Random};
use duckboard::engine::figure::Figure;
use duckboard::engine::geometry::Turn;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::Run;
use duckboard::engine::units::{MoistureContent, Typed};
use std::f64::consts::TAU;

/// The limit of framing.
const LIMIT: f64 = 19.0;

/// Joists are so many feet apart.
const JOIST: f64 = 4.0 / 3.0;

/// What is wet is counted so many feet apart.
const COUNTED: f64 = 0.5;

/// A meter's error, percent points.
const METER: f64 = 1.0;

/// How a floor is wet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// It wanders about a mean, as an exponential variogram has it.
    Exponential,
    /// Dry, with one to three plumes under leaks.
    Plumes,
    /// Dry, and wet along one wall.
    Wall,
}

/// Where readings were taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taken {
    /// Evenly all over the floor.
    Evenly,
    /// On the joists round the wettest place that was found, as a carpenter probes.
    RoundTheWettest,
    /// Evenly over the half by the hatch, and none beyond.
    NearHalf,
}

impl Taken {
    /// As people read who are told nothing.
    pub const AS_PEOPLE_READ: [Self; 2] = [Self::RoundTheWettest, Self::NearHalf];

    pub const fn label(self) -> &'static str {
        match self {
            Self::Evenly => "evenly",
            Self::RoundTheWettest => "round the wettest",
            Self::NearHalf => "in the near half",
        }
    }
}

/// A floor of invented wood, in feet and percent.
pub struct Floor {
    pub size: [f64; 2],
    base: f64,
    waves: Waves,
    /// What wood a hand's breadth apart differs by.
    fleck: f64,
    plumes: Vec<Plume>,
    wall: Option<Wall>,
}

struct Plume {
    at: [f64; 2],
    height: f64,
    radii: [f64; 2],
    is_sharp: bool,
}

struct Wall {
    side: usize,
    height: f64,
    reach: f64,
    uneven: Waves,
}

/// A place and what a meter shows there.
pub type Shows = ([f64; 2], f64);

/// A random surface with exponential covariance: many plane waves, as often of each length
/// as its spectrum has them.
struct Waves {
    waves: Vec<[f64; 3]>,
    scale: f64,
}

const WAVES: usize = 300;

impl Waves {
    fn new(random: &mut Random, deviation: f64, range: f64) -> Self {
        let waves = (0..WAVES).map(|_| {
            let part = random.part();
            let number = 3.0 / range * libm::sqrt(1.0 / (part * part) - 1.0);
            let (towards, phase) = (TAU * random.part(), TAU * random.part());
            [number * libm::cos(towards), number * libm::sin(towards), phase]
        });
        Self { waves: waves.collect(), scale: deviation * libm::sqrt(2.0 / WAVES as f64) }
    }

    fn at(&self, [x, y]: [f64; 2]) -> f64 {
        self.scale * self.waves.iter().map(|[a, b, c]| libm::cos(a * x + b * y + c)).sum::<f64>()
    }
}

fn between(random: &mut Random, least: f64, most: f64) -> f64 {
    least + (most - least) * random.part()
}

impl Kind {
    pub const ALL: [Self; 3] = [Self::Exponential, Self::Plumes, Self::Wall];

    pub const fn label(self) -> &'static str {
        match self {
            Self::Exponential => "exponential field",
            Self::Plumes => "leak plumes",
            Self::Wall => "wet along a wall",
        }
    }
}

impl Floor {
    pub fn new(kind: Kind, random: &mut Random) -> Self {
        let size = [(12.0, 20.0), (10.0, 16.0)].map(|(least, most)| libm::round(between(random, least, most)));
        let dry = |random: &mut Random| {
            let base = between(random, 10.0, 14.0);
            Self { size, base, waves: Waves::new(random, 1.0, 8.0), fleck: 0.7, plumes: Vec::new(), wall: None }
        };
        match kind {
            Kind::Exponential => {
                let base = between(random, 14.0, 19.0);
                let (deviation, range) = (between(random, 2.5, 5.0), between(random, 5.0, 15.0));
                let fleck = between(random, 0.0, 1.5);
                let waves = Waves::new(random, deviation, range);
                Self { size, base, waves, fleck, plumes: Vec::new(), wall: None }
            }
            Kind::Plumes => {
                let dry = dry(random);
                let count = 1 + (random.part() * 3.0) as usize;
                let plume = |_| {
                    let (radius, longer) = (between(random, 1.5, 4.5), between(random, 1.0, 1.6));
                    let at = size.map(|size| between(random, 0.0, size));
                    let (height, is_sharp) = (between(random, 8.0, 18.0), random.part() < 0.5);
                    Plume { at, height, radii: [radius, radius * longer], is_sharp }
                };
                Self { plumes: (0..count).map(plume).collect(), ..dry }
            }
            Kind::Wall => {
                let dry = dry(random);
                let side = (random.part() * 4.0) as usize;
                let (height, reach) = (between(random, 8.0, 18.0), between(random, 1.0, 4.0));
                let uneven = Waves::new(random, 0.25, 10.0);
                Self { wall: Some(Wall { side, height, reach, uneven }), ..dry }
            }
        }
    }

    /// What the wood holds at a place.
    fn wood(&self, at: [f64; 2], random: &mut Random) -> f64 {
        let mut value = self.base + self.waves.at(at) + self.fleck * random.normal();
        for Plume { at: middle, height, radii, is_sharp } in &self.plumes {
            let away = libm::hypot((at[0] - middle[0]) / radii[0], (at[1] - middle[1]) / radii[1]);
            value += height * libm::exp(if *is_sharp { -1.5 * away } else { -away * away });
        }
        if let Some(Wall { side, height, reach, uneven }) = &self.wall {
            let away = [at[1], self.size[0] - at[0], self.size[1] - at[1], at[0]][*side];
            value += height * (1.0 + uneven.at(at)).max(0.0) * libm::exp(-away / reach);
        }
        value.max(6.0)
    }

    pub fn is_wet(&self, at: [f64; 2], random: &mut Random) -> bool {
        self.wood(at, random) > LIMIT
    }

    /// What a meter shows there.
    pub fn shown(&self, at: [f64; 2], random: &mut Random) -> Shows {
        (at, libm::round((self.wood(at, random) + METER * random.normal()) * 10.0) / 10.0)
    }

    /// How many square feet of it are wet.
    pub fn wet(&self, random: &mut Random) -> f64 {
        let [columns, rows] = self.size.map(|size| libm::round(size / COUNTED) as usize);
        let middle = |at: usize| (at as f64 + 0.5) * COUNTED;
        let places = (0..rows).flat_map(|row| (0..columns).map(move |column| [middle(column), middle(row)]));
        places.filter(|place| self.is_wet(*place, random)).count() as f64 * COUNTED * COUNTED
    }

    /// So many readings, taken so.
    pub fn read(&self, taken: Taken, count: usize, random: &mut Random) -> Vec<Shows> {
        match taken {
            Taken::Evenly => self.spread(self.size, count, random),
            Taken::NearHalf => self.spread([self.size[0], self.size[1] / 2.0], count, random),
            Taken::RoundTheWettest => self.round_the_wettest(count, random),
        }
    }

    /// The wettest place of all that are read in passing, and those nearest to it.
    fn round_the_wettest(&self, count: usize, random: &mut Random) -> Vec<Shows> {
        let mut places = self.places();
        let shown = places.iter().map(|place| self.shown(*place, random));
        let (wettest, _) = shown.max_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
        let away = |place: &[f64; 2]| libm::hypot(place[0] - wettest[0], place[1] - wettest[1]);
        places.sort_by(|a, b| away(a).total_cmp(&away(b)));
        places.into_iter().take(count).map(|place| self.shown(place, random)).collect()
    }

    /// All places on joists at a whole foot, a foot at least from their ends.
    fn places(&self) -> Vec<[f64; 2]> {
        let joists = libm::ceil(self.size[0] / JOIST - 1.0) as i32;
        let on = |joist: i32| (1..self.size[1] as i32).map(move |along| [f64::from(joist) * JOIST, f64::from(along)]);
        (1..=joists).flat_map(on).collect()
    }

    /// Evenly spread readings of so large a part of the floor, from its first corner: in rows
    /// and columns, on the nearest joists, within half a foot of even along them.
    fn spread(&self, size: [f64; 2], count: usize, random: &mut Random) -> Vec<Shows> {
        let (columns, rows) = match count {
            6 => (3, 2),
            8 => (4, 2),
            9 => (3, 3),
            12 => (4, 3),
            20 => (5, 4),
            other => panic!("no rows and columns for {other}"),
        };
        let mut read = Vec::new();
        for (row, column) in (0..rows).flat_map(|row| (0..columns).map(move |column| (row, column))) {
            let part = |at: i32, of: i32| (f64::from(at) + 0.5) / f64::from(of);
            let across = libm::round(part(column, columns) * size[0] / JOIST) * JOIST;
            let along = part(row, rows) * size[1] + between(random, -0.5, 0.5);
            read.push(self.shown([across, libm::round(along * 12.0) / 12.0], random));
        }
        read
    }

    /// Any place on a joist, at a whole foot, a foot at least from its ends and from what
    /// was read.
    pub fn any_place(&self, read: &[Shows], random: &mut Random) -> [f64; 2] {
        let joists = libm::floor(self.size[0] / JOIST);
        loop {
            let joist = 1.0 + libm::floor(random.part() * (joists - 1.0));
            let along = 1.0 + libm::floor(random.part() * (self.size[1] - 1.0));
            let at = [joist * JOIST, along];
            if read.iter().all(|(other, _)| libm::hypot(at[0] - other[0], at[1] - other[1]) >= 1.0) {
                return at;
            }
        }
    }

    /// What the engine says of these readings, typed into a job as a carpenter would.
    pub fn extent(&self, read: &[Shows]) -> Extent {
        let desk = self.logged(read);
        match Extent::of(desk.job(), Group::Framing) {
            Figure::Known(known) => known.value,
            Figure::Missing(needs) => panic!("{needs:?}"),
        }
    }

    fn logged(&self, read: &[Shows]) -> Desk {
        let mut desk = Desk::new();
        let [width, height] = self.size.map(|size| format!("{size}'"));
        let turn = Turn::Right;
        let (room, _) = desk.room(&[(&width, turn), (&height, turn), (&width, turn), (&height, turn)]);
        let joists = libm::ceil(self.size[0] / JOIST - 1.0) as u16;
        desk.joists(room, Run::AcrossFirstSide, "16", "16", joists);
        for (at, percent) in read {
            let place = place(&mut desk, *at);
            let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
            let shown = Shown::Percent(Typed::new("", MoistureContent::from_percent_f64(*percent)));
            let meter = Some(desk.pins());
            desk.log(Reading { meter, ..Reading::new(place, shown, wood) });
        }
        desk
    }
}

fn place(desk: &mut Desk, at: [f64; 2]) -> EntryId {
    let joist = JoistNumber::new(libm::round(at[0] / JOIST) as u16).unwrap();
    let along = Some(length(&format!("{}", libm::round(at[1] * 12.0))));
    let position = Position::OnJoist { joist, along };
    desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None })
}
