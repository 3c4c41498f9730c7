//! Floors that the readings allow, drawn by chance: each one way that the wood may be wet,
//! and each agrees with what was read as far as a meter does.
//!
//! How much is wet is then counted on each, and where floors differ nothing is known.
//! Conditional simulation by kriging: wood is drawn that goes together in its way, and
//! then moved by the surface through what it is off at the readings.

use super::bodies::Body;
use super::kriging::{Factor, Kriging, dot};
use super::lattice::Lattice;
use super::random::Random;
use super::variogram::{METER_NOISE, Sample, Variogram, distance};
use super::ways::{Way, Ways};
use crate::engine::geometry::Outline;
use crate::engine::units::MoistureContent;
use litemap::LiteMap;

/// So many floors are drawn.
const FLOORS: usize = 300;

/// The same row of random numbers for every job: the same readings give the same map.
const START: u64 = 1;

/// Keeps wood that is asked for twice at one place from failing the factor.
const APART: f64 = 1e-6;

/// Wood is never as even as this within a hand's breadth.
const LEAST_FLECK: f64 = 0.1;

/// Beyond so many standard deviations there is no doubt left.
const NO_DOUBT: f64 = 5.0;

/// Floors that the readings allow.
pub(super) struct Draws {
    lattice: Lattice,
    floors: Vec<Drawn>,
    /// How the wood goes together most likely.
    pub likeliest: Variogram,
    /// How much of what readings could tell of each node they do tell.
    support: Vec<f64>,
}

/// One of them: the wood at each node of the lattice.
struct Drawn {
    nodes: Vec<f64>,
    fleck: f64,
}

/// What all of them say of some places.
pub(super) struct Told {
    /// Of each place.
    pub places: Vec<OfPlace>,
    /// How many of the places are wet on each floor.
    pub wet: Vec<f64>,
}

/// What they say of one.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct OfPlace {
    /// The mean, percent.
    pub mean: f64,
    /// On what part of them it is over the limit.
    pub chance: f64,
    /// How much of what readings could tell of it they do tell.
    pub support: f64,
}

impl Draws {
    /// Floors that these readings allow. None without readings.
    pub fn of(samples: &[Sample], outline: &Outline) -> Option<Self> {
        let ways = Ways::weighed(samples, Body::on(outline))?;
        let lattice = Lattice::over(outline.bounds());
        let mut random = Random::starting_at(START);
        let taken = ways.taken(FLOORS, &mut random);
        let likeliest = ways.likeliest()?;
        let kriging = Kriging::new(samples.to_vec(), likeliest)?;
        let support = lattice.nodes.iter().map(|node| 1.0 - kriging.ask(*node).variance / likeliest.sill);
        let support = support.map(|part| part.clamp(0.0, 1.0)).collect();
        let mut brush = Brush { samples, lattice: &lattice, ranges: LiteMap::new(), krigings: Vec::new() };
        let floors: Option<Vec<_>> = taken.iter().map(|way| brush.floor(way, &mut random)).collect();
        let floors = floors?;
        Some(Self { lattice, floors, likeliest, support })
    }

    /// How many floors.
    pub fn count(&self) -> usize {
        self.floors.len()
    }

    /// What all floors say of some places.
    pub fn told(&self, places: &[[f64; 2]], limit: MoistureContent) -> Told {
        let limit = limit.to_percent();
        let between: Vec<_> = places.iter().map(|place| self.lattice.around(*place)).collect();
        let mut of = vec![OfPlace::default(); places.len()];
        let part = 1.0 / self.floors.len().max(1) as f64;
        let mut wet: Vec<f64> = Vec::with_capacity(self.floors.len());
        for floor in &self.floors {
            let mut count = 0.0;
            for (of, around) in of.iter_mut().zip(&between) {
                let value = around.of(&floor.nodes);
                let chance = chance_over((value - limit) / floor.fleck);
                of.mean += value * part;
                of.chance += chance * part;
                count += chance;
            }
            wet.push(count);
        }
        of.iter_mut().zip(&between).for_each(|(of, around)| of.support = around.of(&self.support));
        Told { places: of, wet }
    }

    /// How much a reading at a place would tell of how much is wet, as [`Told`] has it: how
    /// far the two go along with each other from floor to floor.
    pub fn telling(&self, place: [f64; 2], wet: &[f64]) -> f64 {
        let around = self.lattice.around(place);
        let read: Vec<_> = self.floors.iter().map(|floor| around.of(&floor.nodes)).collect();
        let noise: f64 = self.floors.iter().map(|floor| floor.fleck * floor.fleck + METER_NOISE).sum();
        let (read, wet) = (about_mean(&read), about_mean(wet));
        let common = dot(&read, &wet);
        common * common / (dot(&read, &read) + noise).max(1e-12)
    }
}

/// How likely something so many standard deviations over a limit is over it.
pub(super) fn chance_over(deviations: f64) -> f64 {
    match deviations {
        _ if deviations > NO_DOUBT => 1.0,
        _ if deviations < -NO_DOUBT => 0.0,
        _ => 0.5 * libm::erfc(-deviations / core::f64::consts::SQRT_2),
    }
}

fn about_mean(values: &[f64]) -> Vec<f64> {
    let mean = values.iter().sum::<f64>() / values.len().max(1) as f64;
    values.iter().map(|value| value - mean).collect()
}

/// Draws floors, and keeps what several of them need.
struct Brush<'a> {
    samples: &'a [Sample],
    lattice: &'a Lattice,
    ranges: LiteMap<u64, OfRange>,
    krigings: Vec<(Variogram, Kriging)>,
}

/// What all floors of one range have in common.
struct OfRange {
    /// Of wood at the readings and then at the nodes.
    factor: Factor,
    /// How much each node has in common with each reading.
    alike: Vec<Vec<f64>>,
    /// The part of what wanders that lies between nodes and shows on none.
    between: f64,
}

impl Brush<'_> {
    fn floor(&mut self, way: &Way, random: &mut Random) -> Option<Drawn> {
        self.prepare(&way.variogram)?;
        let Way { variogram, bodies } = way;
        let range = self.ranges.get(&variogram.range.to_bits())?;
        let (_, kriging) = self.krigings.iter().find(|(of, _)| of == variogram)?;
        let rough: Vec<_> = (0..self.samples.len() + self.lattice.nodes.len()).map(|_| random.normal()).collect();
        let wander = libm::sqrt(variogram.sill);
        let drawn: Vec<_> = range.factor.times(&rough).map(|value| value * wander).collect();
        let (at_samples, at_nodes) = drawn.split_at_checked(self.samples.len())?;
        let standing = |at: [f64; 2]| bodies.iter().map(|(body, height)| height * body.at(at)).sum::<f64>();
        let off = self.samples.iter().zip(at_samples).map(|(sample, drawn)| {
            let read = drawn + standing(sample.at) + libm::sqrt(variogram.nugget + sample.unsure) * random.normal();
            sample.value - read
        });
        let through = kriging.through(&off.collect::<Vec<_>>());
        let moved = |(node, drawn): (&[f64; 2], &f64), alike: &Vec<f64>| {
            drawn + standing(*node) + through.mean + variogram.sill * dot(alike, &through.pulls)
        };
        let nodes = self.lattice.nodes.iter().zip(at_nodes).zip(&range.alike).map(|(node, alike)| moved(node, alike));
        let fleck = variogram.fleck().max(LEAST_FLECK);
        let fleck = libm::sqrt(fleck * fleck + variogram.sill * range.between);
        Some(Drawn { nodes: nodes.collect(), fleck })
    }

    fn prepare(&mut self, variogram: &Variogram) -> Option<()> {
        if !self.krigings.iter().any(|(of, _)| of == variogram) {
            self.krigings.push((*variogram, Kriging::new(self.samples.to_vec(), *variogram)?));
        }
        let range = variogram.range.to_bits();
        if self.ranges.get(&range).is_none() {
            let places: Vec<_> =
                self.samples.iter().map(|sample| sample.at).chain(self.lattice.nodes.iter().copied()).collect();
            let factor = Factor::of(places.len(), |a, b| {
                let apart = distance(*places.get(a)?, *places.get(b)?);
                Some(variogram.alike(apart) + if a == b { APART } else { 0.0 })
            })?;
            let of_node = |node: &[f64; 2]| {
                self.samples.iter().map(|sample| variogram.alike(distance(sample.at, *node))).collect::<Vec<_>>()
            };
            let alike = self.lattice.nodes.iter().map(of_node).collect();
            let between = self.lattice.between(|apart| variogram.alike(apart));
            self.ranges.insert(range, OfRange { factor, alike, between });
        }
        Some(())
    }
}
