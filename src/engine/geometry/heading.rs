//! The four ways along rectilinear walls, and the turns between them.
//!
//! East, South, West and North are the page's right, bottom, left and top. Where
//! true north lies is another matter, and no concern of geometry.

use super::Vector;
use crate::engine::units::{Angle, Length};
use serde::{Deserialize, Serialize};

/// A quarter turn at a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// Counter-clockwise on the page.
    Left,
    /// Clockwise on the page.
    Right,
}

/// One of the two directions that rectilinear walls run in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// Across the page.
    X,
    /// Up and down the page.
    Y,
}

/// The way somebody faces who walks along a wall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Heading {
    /// To the right on the page: `x` grows.
    East,
    /// Down the page: `y` grows.
    South,
    /// To the left: `x` shrinks.
    West,
    /// Up: `y` shrinks.
    North,
}

impl Turn {
    /// A quarter turn that way, clockwise positive.
    pub const fn quarter(self) -> Angle {
        match self {
            Self::Left => Angle::degrees(-90),
            Self::Right => Angle::QUARTER,
        }
    }

    /// A turn that way.
    pub fn by(self, angle: Angle) -> Angle {
        match self {
            Self::Left => -angle,
            Self::Right => angle,
        }
    }

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The same turn in a mirror.
    pub const fn mirrored(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

impl Axis {
    /// The one square to it.
    pub const fn other(self) -> Self {
        match self {
            Self::X => Self::Y,
            Self::Y => Self::X,
        }
    }
}

impl Heading {
    /// The way on the page.
    pub const fn on_page(self) -> &'static str {
        match self {
            Self::North => "up",
            Self::East => "right",
            Self::South => "down",
            Self::West => "left",
        }
    }

    /// All four, clockwise from East.
    pub const ALL: [Self; 4] = [Self::East, Self::South, Self::West, Self::North];

    /// The one nearest to a direction, clockwise from East; of two as near the later.
    pub const fn nearest(bearing: Angle) -> Self {
        match bearing.nearest_quarter() {
            0 => Self::East,
            1 => Self::South,
            2 => Self::West,
            _ => Self::North,
        }
    }

    /// After a quarter turn to the left.
    pub const fn left(self) -> Self {
        match self {
            Self::East => Self::North,
            Self::North => Self::West,
            Self::West => Self::South,
            Self::South => Self::East,
        }
    }

    /// After a quarter turn to the right.
    pub const fn right(self) -> Self {
        match self {
            Self::East => Self::South,
            Self::South => Self::West,
            Self::West => Self::North,
            Self::North => Self::East,
        }
    }

    /// After `turn`.
    pub const fn turned(self, turn: Turn) -> Self {
        match turn {
            Turn::Left => self.left(),
            Turn::Right => self.right(),
        }
    }

    /// The axis it runs along.
    pub const fn axis(self) -> Axis {
        match self {
            Self::East | Self::West => Axis::X,
            Self::South | Self::North => Axis::Y,
        }
    }

    /// Does the coordinate along its axis grow on the way?
    pub const fn is_forward(self) -> bool {
        matches!(self, Self::East | Self::South)
    }

    /// The displacement of going `length` this way.
    pub fn go(self, length: Length) -> Vector {
        let along = if self.is_forward() { length } else { -length };
        match self.axis() {
            Axis::X => Vector { dx: along, dy: Length::ZERO },
            Axis::Y => Vector { dx: Length::ZERO, dy: along },
        }
    }

    /// The same heading seen from below: East and West change places.
    pub const fn mirrored(self) -> Self {
        match self {
            Self::East => Self::West,
            Self::West => Self::East,
            Self::South | Self::North => self,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn left_undoes_right_and_four_of_either_come_back() {
        for heading in Heading::ALL {
            assert_eq!(heading.left().right(), heading);
            assert_eq!(heading.left().left().left().left(), heading);
            assert_eq!(heading.right().axis(), heading.axis().other());
        }
    }

    #[test]
    fn a_mirror_swaps_left_and_right() {
        for heading in Heading::ALL {
            for turn in [Turn::Left, Turn::Right] {
                assert_eq!(heading.turned(turn).mirrored(), heading.mirrored().turned(turn.mirrored()));
            }
        }
    }

    #[test]
    fn right_of_east_goes_down_the_page() {
        let down = Heading::East.turned(Turn::Right).go(Length::FOOT);
        assert_eq!(down, Vector { dx: Length::ZERO, dy: Length::FOOT });
    }
}
