//! Rooms measured, clean or with one reading spoiled, and what is said of them.

use crate::rooms::{Dice, Room, Shapes, inches, room_within};
use duckboard::engine::survey::adjust::{House, MOST_NAMED, Network, Observation, Suspect, Unfixed, adjust};
use std::ops::Range;

/// How far corners are off, one standard deviation, in degrees.
pub const SQUARENESS: [f64; 4] = [0.2, 0.35, 0.5, 1.0];

/// A kind of room, and how it is measured.
#[derive(Debug, Clone, Copy)]
pub struct Kind {
    /// Which outlines.
    pub shapes: Shapes,
    /// How far corners are off, one standard deviation, in degrees.
    pub degrees: f64,
    /// How many diagonals are measured.
    pub diagonals: Diagonals,
    /// What is said of the house.
    pub house: House,
}

/// How many diagonals are measured.
#[derive(Debug, Clone, Copy)]
pub enum Diagonals {
    /// So many, drawn by lot.
    These(usize),
    /// Half as many as corners.
    Half,
}

/// Every number of diagonals that is tried.
#[allow(dead_code, reason = "the harness tries all; the test only some")]
pub const DIAGONALS: [Diagonals; 5] =
    [Diagonals::These(0), Diagonals::These(1), Diagonals::These(2), Diagonals::Half, Diagonals::These(4)];

impl Diagonals {
    #[allow(dead_code, reason = "the harness prints it")]
    pub fn label(self) -> String {
        match self {
            Self::These(count) => count.to_string(),
            Self::Half => "half".to_owned(),
        }
    }

    fn of(self, room: &Room) -> usize {
        match self {
            Self::These(count) => count,
            Self::Half => room.turns.len() / 2,
        }
    }
}

/// What came of rooms with a spoiled reading.
#[derive(Debug, Clone, Copy, Default)]
pub struct Count {
    /// The spoiled one was named, alone or among others.
    pub named: usize,
    /// It was named alone.
    pub alone: usize,
    /// Others were named and it was not.
    pub others: usize,
}

/// How many clean rooms are accused.
pub fn clean(kind: Kind, seeds: Range<u64>) -> usize {
    seeds.filter(|seed| !suspects(&measured(kind, *seed).1).is_empty()).count()
}

/// How often a reading that is off by `size` inches is named.
pub fn spoiled(kind: Kind, size: f64, seeds: Range<u64>) -> Count {
    let mut count = Count::default();
    for seed in seeds {
        let (_, mut network, mut dice) = measured(kind, seed);
        let wrong = spoil(&mut network, size, &mut dice);
        let named = suspects(&network);
        assert!(named.len() <= MOST_NAMED, "{named:?}");
        let is_named = named.iter().any(|suspect| suspect.observation == wrong);
        count.named += usize::from(is_named);
        count.alone += usize::from(is_named && named.len() == 1);
        count.others += usize::from(!is_named && !named.is_empty());
    }
    count
}

/// The median error of the area in percent: with a reading that is off, and without the one
/// that is named first.
pub fn area_off(degrees: f64, size: f64, seeds: Range<u64>) -> (f64, f64) {
    let kind = Kind { shapes: Shapes::All, degrees, diagonals: Diagonals::These(2), house: House::Unsaid };
    let (mut with, mut without) = (Vec::new(), Vec::new());
    for seed in seeds {
        let (room, mut network, mut dice) = measured(kind, seed);
        spoil(&mut network, size, &mut dice);
        let (Ok(adjusted), Some(first)) = (adjust(&network), suspects(&network).first().copied()) else { continue };
        let off = |square_feet: f64| (square_feet * 144.0 / room.area() - 1.0).abs() * 100.0;
        with.push(off(adjusted.area.0.to_square_feet()));
        without.push(off(first.area_without.0.to_square_feet()));
    }
    (median(with), median(without))
}

fn median(mut all: Vec<f64>) -> f64 {
    all.sort_by(f64::total_cmp);
    all[all.len() / 2]
}

fn measured(kind: Kind, seed: u64) -> (Room, Network, Dice) {
    let mut dice = Dice::new(seed);
    let room = room_within(kind.shapes, kind.degrees, &mut dice);
    let network = Network { house: kind.house, ..room.measured(kind.diagonals.of(&room), &mut dice) };
    (room, network, dice)
}

/// Makes one distance wrong by so many inches, either way, and says which.
fn spoil(network: &mut Network, size: f64, dice: &mut Dice) -> usize {
    let is_distance = |n: &usize| matches!(network.observations[*n], Observation::Distance { .. });
    let distances: Vec<usize> = (0..network.observations.len()).filter(is_distance).collect();
    let wrong = distances[dice.below(distances.len())];
    let off = inches(if dice.uniform() < 0.5 { -size } else { size });
    if let Observation::Distance { is, .. } = &mut network.observations[wrong] {
        *is = *is + off;
    }
    wrong
}

/// The readings that are named.
fn suspects(network: &Network) -> Vec<Suspect> {
    match adjust(network) {
        Ok(adjusted) => adjusted.verdict.map(|verdict| verdict.suspects).unwrap_or_default(),
        Err(Unfixed::Contradicted(odd)) => vec![*odd],
        Err(other) => panic!("{other}"),
    }
}
