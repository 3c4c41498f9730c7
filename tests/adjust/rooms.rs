//! Rooms to measure, invented, and the noise of measuring them.

use duckboard::engine::geometry::Turn::{self, Left, Right};
use duckboard::engine::survey::adjust::{Accuracy, House, Network, Observation};
use duckboard::engine::units::{Angle, Length};

/// How square houses are built: a quarter turn within 0.2 degrees, one standard deviation;
/// about 1/3 in in 8 ft. From memory.
#[allow(dead_code, reason = "the harness tries others")]
pub const SQUARE: f64 = 0.2;

/// Numbers that look drawn by lot and are the same every time.
pub struct Dice(u64);

impl Dice {
    pub const fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15).wrapping_add(1))
    }

    /// From 0 to 1.
    pub fn uniform(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, count: usize) -> usize {
        ((self.uniform() * count as f64) as usize).min(count - 1)
    }

    /// A standard normal variable: twelve uniform ones less six.
    pub fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.uniform()).sum::<f64>() - 6.0
    }
}

/// A room as it is: which way its walls turn, and its corners in inches.
pub struct Room {
    pub turns: Vec<Turn>,
    pub corners: Vec<(f64, f64)>,
}

/// Which rooms are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shapes {
    /// Rectangles, Ls, Ts and Us.
    All,
    /// Rectangles alone.
    Rectangles,
}

impl Shapes {
    #[allow(dead_code, reason = "the harness prints it")]
    pub const fn label(self) -> &'static str {
        match self {
            Self::All => "Rectangles, Ls, Ts and Us of 8 to 25 ft",
            Self::Rectangles => "Rectangles of 6 to 20 ft",
        }
    }
}

/// A rectangle, an L, a T or a U of 8 to 25 ft, its corners nearly square.
#[allow(dead_code, reason = "the harness draws others")]
pub fn room(dice: &mut Dice) -> Room {
    room_within(Shapes::All, SQUARE, dice)
}

/// The same in a house whose corners are within so many degrees, one standard deviation.
pub fn room_within(shapes: Shapes, degrees: f64, dice: &mut Dice) -> Room {
    let turns: Vec<Turn> = match dice.below(4) * usize::from(shapes == Shapes::All) {
        0 => vec![Right, Right, Right, Right],
        1 => vec![Right, Right, Left, Right, Right, Right],
        2 => vec![Right, Right, Left, Right, Right, Left, Right, Right],
        _ => vec![Right, Right, Right, Left, Left, Right, Right, Right],
    };
    loop {
        let square = nominal(&turns, dice);
        if let Some(corners) = out_of_square(&square, &turns, degrees, dice) {
            return Room { turns, corners };
        }
    }
}

/// Side lengths that close, for corners that are square.
fn nominal(turns: &[Turn], dice: &mut Dice) -> Vec<f64> {
    let mut part = || 36.0 + dice.uniform() * 84.0;
    let (a, b, c, d, e) = (part(), part(), part(), part(), part());
    match (turns.len(), turns[2]) {
        (4, _) => vec![a + b, c + d, a + b, c + d],
        (6, _) => vec![a + b, c, b, d, a, c + d],
        // A bar on top and a stem below.
        (_, Left) => vec![a + b + c, d, c, e, b, e, a, d],
        // Two legs with a gap between.
        _ => vec![a + b + c, d + e, c, e, b, e, a, d + e],
    }
}

/// The same walk with every turn off by chance; the last two sides close it.
fn out_of_square(lengths: &[f64], turns: &[Turn], degrees: f64, dice: &mut Dice) -> Option<Vec<(f64, f64)>> {
    let count = turns.len();
    let off: Vec<f64> = (0..count).map(|_| dice.normal() * degrees).collect();
    // All turns together make one whole turn.
    let mean = off.iter().sum::<f64>() / count as f64;
    let mut heading = 0.0_f64;
    let mut headings = Vec::new();
    for (turn, off) in turns.iter().zip(&off) {
        headings.push(heading);
        heading += (if *turn == Right { 90.0 } else { -90.0 } + off - mean).to_radians();
    }
    let mut corners = vec![(0.0, 0.0)];
    for (length, heading) in lengths.iter().zip(&headings).take(count - 2) {
        let (x, y) = corners[corners.len() - 1];
        corners.push((x + length * libm::cos(*heading), y + length * libm::sin(*heading)));
    }
    let (x, y) = corners[corners.len() - 1];
    let (one, other) = (headings[count - 2], headings[count - 1]);
    // How far along the last but one side, so that the last one leads home.
    let across = libm::cos(one) * libm::sin(other) - libm::sin(one) * libm::cos(other);
    let along = (-x * libm::sin(other) + y * libm::cos(other)) / across;
    corners.push((x + along * libm::cos(one), y + along * libm::sin(one)));
    (along > 12.0).then_some(corners)
}

impl Room {
    /// What its corners look like.
    pub fn quarters(&self) -> Vec<Angle> {
        self.turns.iter().map(|turn| turn.quarter()).collect()
    }

    /// Its area in square inches: the shoelace formula.
    #[allow(dead_code, reason = "the harness compares it")]
    pub fn area(&self) -> f64 {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().zip(next).map(|(a, b)| a.0 * b.1 - a.1 * b.0).sum::<f64>().abs() / 2.0
    }

    pub fn distance(&self, from: usize, to: usize) -> f64 {
        let (a, b) = (self.corners[from], self.corners[to]);
        libm::hypot(b.0 - a.0, b.1 - a.1)
    }

    /// Every side and so many diagonals by tape, as far as there are so many; every corner as
    /// built.
    pub fn measured(&self, diagonals: usize, dice: &mut Dice) -> Network {
        let count = self.turns.len();
        let diagonals = diagonals.min(count * (count - 3) / 2);
        let mut pairs: Vec<_> = (0..count).map(|side| (side, (side + 1) % count)).collect();
        while pairs.len() < count + diagonals {
            let (from, to) = (dice.below(count), dice.below(count));
            let apart = from.abs_diff(to);
            if apart > 1 && apart < count - 1 && !pairs.contains(&(from, to)) && !pairs.contains(&(to, from)) {
                pairs.push((from, to));
            }
        }
        let mut observations: Vec<_> = pairs.into_iter().map(|(from, to)| self.taped(from, to, dice)).collect();
        let built = |(side, turn): (usize, &Turn)| Observation::Built { at: (side + 1) % count, is: turn.quarter() };
        observations.extend(self.turns.iter().enumerate().map(built));
        Network { turns: self.quarters(), observations, house: House::Unsaid }
    }

    fn taped(&self, from: usize, to: usize, dice: &mut Dice) -> Observation {
        let true_length = inches(self.distance(from, to));
        let sigma = Accuracy::TAPE.of(true_length);
        let read = true_length + inches(dice.normal() * sigma.to_inches());
        Observation::Distance { from, to, is: read, sigma }
    }
}

pub fn inches(inches: f64) -> Length {
    Length::nm((inches * Length::INCH.to_nm() as f64).round() as i64)
}
