//! A cover of sheet over the soil: strips, rolls, tape.

use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// A roll as bought, and how it is laid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Roll {
    /// How wide.
    pub width: Length,
    /// How long.
    pub length: Length,
    /// How far strips lap: 6 in, or 12 in where a radon rule holds.
    pub lap: Length,
    /// How far it goes up walls and piers.
    pub up: Length,
}

/// What a cover takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cover {
    /// Strips side by side.
    pub strips: u32,
    /// How long each is.
    pub strip: Length,
    /// All of them together.
    pub in_all: Length,
    /// Whole strips out of a roll; none where a roll is shorter than a strip.
    pub strips_a_roll: u32,
    /// Rolls, each strip in one piece.
    pub rolls: u32,
    /// Tape over the laps.
    pub tape: Length,
    /// Seal along the walls.
    pub seal: Length,
}

/// A rectangle of soil covered by strips along its length; none where a roll is no wider
/// than a lap, or shorter than a strip. Source: [`Source::GroundCover`].
pub fn cover(along: Length, across: Length, roll: Roll) -> Option<Known<Cover>> {
    let gains = roll.width - roll.lap;
    let strip = along + roll.up * 2;
    let strips_a_roll = u32::try_from(roll.length.to_nm() / strip.to_nm().max(1)).ok().filter(|strips| *strips > 0)?;
    if !gains.is_positive() {
        return None;
    }
    let beyond = (across + roll.up * 2 - roll.width).max(Length::ZERO);
    let more = (beyond.to_nm() + gains.to_nm() - 1) / gains.to_nm();
    let strips = u32::try_from(more).ok()?.checked_add(1)?;
    let value = Cover {
        strips,
        strip,
        in_all: strip * i64::from(strips),
        strips_a_roll,
        rolls: strips.div_ceil(strips_a_roll),
        tape: strip * i64::from(strips - 1),
        seal: (along + across) * 2,
    };
    let why =
        Why::rule("Strips lap 6 in and go 6 in up the walls, joints taped, edges sealed.", &[Source::GroundCover]);
    let doubts = vec![
        Source::CoverLaps.noted("Radon rules and some others ask for laps of 12 in, and your local code decides"),
        Source::CoverState.noted("No thinner than 6 mil"),
    ];
    Some(Known { value, assumed: Vec::new(), doubts, why })
}
