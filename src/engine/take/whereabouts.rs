//! The lengths that say where a place is: they move the draft's spot and log nothing.

use super::settings::Units;
use crate::engine::place::{Face, Place, Position};
use crate::engine::units::tape::{self, Problem, Sign};
use crate::engine::units::{Length, Typed};
use serde::{Deserialize, Serialize};

/// A length that says where a place is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Whereabouts {
    /// How far along its joist.
    Along,
    /// How far right of the first corner.
    Right,
    /// How far down the plan from the first corner.
    Down,
    /// How far up.
    Height,
}

impl Whereabouts {
    /// What can be said of such a place.
    pub fn of(spot: &Place) -> &'static [Self] {
        match &spot.position {
            // An end lies at no distance along.
            Position::OnJoist { .. } if spot.face.is_some_and(Face::is_end) => &[Self::Height],
            Position::OnJoist { .. } => &[Self::Along, Self::Height],
            Position::OnPlan { .. } => &[Self::Right, Self::Down, Self::Height],
            Position::Named => &[Self::Height],
        }
    }

    /// What is measured.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Along => "Distance along",
            Self::Right => "Right of corner 1",
            Self::Down => "Down from corner 1",
            Self::Height => "Height",
        }
    }

    /// What stands there now.
    pub fn read(self, spot: &Place) -> Option<&Typed<Length>> {
        match (self, &spot.position) {
            (Self::Along, Position::OnJoist { along, .. }) => along.as_ref(),
            (Self::Right, Position::OnPlan { right, .. }) => Some(right),
            (Self::Down, Position::OnPlan { down, .. }) => Some(down),
            (Self::Height, _) => spot.height.as_ref(),
            (Self::Along | Self::Right | Self::Down, _) => None,
        }
    }

    /// The spot with this length as typed. Nothing typed takes away what need not be
    /// measured, and leaves the rest.
    ///
    /// # Errors
    /// [`Problem`] when the text is no length.
    pub fn write(self, spot: &Place, text: &str, units: Units) -> Result<Place, Problem> {
        let sign = if matches!(self, Self::Right | Self::Down) { Sign::Allowed } else { Sign::Refused };
        let empty = text.trim().is_empty();
        let typed = if empty { None } else { Some(tape::parse(text, units.bare_length(), sign)?) };
        Ok(self.put(spot.clone(), typed))
    }

    /// Can a place be said without it?
    pub const fn can_be_unknown(self) -> bool {
        matches!(self, Self::Along | Self::Height)
    }

    /// What is asked after this one.
    pub const fn next(self) -> Option<Self> {
        match self {
            Self::Right => Some(Self::Down),
            Self::Along | Self::Down | Self::Height => None,
        }
    }

    fn put(self, mut spot: Place, length: Option<Typed<Length>>) -> Place {
        match (self, &mut spot.position) {
            (Self::Along, Position::OnJoist { along, .. }) => *along = length,
            (Self::Right, Position::OnPlan { right: kept, .. }) | (Self::Down, Position::OnPlan { down: kept, .. }) => {
                *kept = length.unwrap_or_else(|| kept.clone());
            }
            (Self::Height, _) => spot.height = length,
            (Self::Along | Self::Right | Self::Down, _) => {}
        }
        spot
    }
}
