//! Places: where readings, photos and conditions hang, so that a later visit
//! re-reads the same ones.
//!
//! A place needs no outline: a joist number and a distance along it will do.

use super::entry::Label;
use super::units::{Length, Typed};
use serde::{Deserialize, Serialize};

/// A spot on the framing or the floor that can be found again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Place {
    /// What is touched there.
    pub element: Element,
    /// Where along it.
    pub position: Position,
    /// Which side of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Face>,
    /// How far above its lower edge, or above the ground for a wall or sill.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Typed<Length>>,
    /// What is chalked beside it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chalk: Option<Label>,
}

/// A spot, for places to be sorted by.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct SpotKey {
    element: Element,
    face: Option<Face>,
    joist: Option<JoistNumber>,
    along: Option<Length>,
    down: Option<Length>,
    height: Option<Length>,
    chalk: Option<String>,
}

/// A part of the floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Element {
    /// A floor joist.
    Joist,
    /// The joist that closes the joist ends.
    RimJoist,
    /// The plate on the foundation.
    Sill,
    /// The beam under the joists.
    Girder,
    /// The subfloor, read from the crawl space.
    SubfloorBelow,
    /// The subfloor, read from the room.
    SubfloorAbove,
    /// The finished floor.
    FinishedFloor,
}

/// Where a place is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Position {
    /// At a joist, a distance along it from the wall that the job names.
    OnJoist {
        /// The joist's number, or the bay's lower neighbour.
        #[cfg_attr(not(target_arch = "wasm32"), schemars(range(min = 1, max = 999)))]
        joist: JoistNumber,
        /// How far along, if it was measured.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        along: Option<Typed<Length>>,
    },
    /// A point on the plan, from the first corner: right and down as seen from above.
    OnPlan {
        /// Right of the first corner.
        right: Typed<Length>,
        /// Down the page from the first corner.
        down: Typed<Length>,
    },
    /// Somewhere that only its chalk label tells.
    Named,
}

/// The ways to say where a place is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Locating {
    /// By a joist's number.
    Joist,
    /// By a point on the plan.
    Plan,
    /// By what is chalked there, alone.
    Chalk,
}

/// A joist's number, counted from one in the order that the job's joists are laid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(try_from = "u16", into = "u16")]
pub struct JoistNumber(u16);

/// A side of an element.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Face {
    /// Its lower edge.
    LowerEdge,
    /// Its upper edge.
    UpperEdge,
    /// The side towards the lower joist numbers.
    NearSide,
    /// The side towards the higher joist numbers.
    FarSide,
    /// Its end, at the bearing, and nobody said which: as in jobs before format 1.5.
    End,
    /// The end that distances along it start at.
    NearEnd,
    /// The other end.
    FarEnd,
}

impl Element {
    /// Every element, in the order that a choice shows them.
    pub const ALL: [Self; 7] = [
        Self::Joist,
        Self::RimJoist,
        Self::Sill,
        Self::Girder,
        Self::SubfloorBelow,
        Self::SubfloorAbove,
        Self::FinishedFloor,
    ];

    /// The trade's word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Joist => "Joist",
            Self::RimJoist => "Rim joist",
            Self::Sill => "Sill",
            Self::Girder => "Girder",
            Self::SubfloorBelow => "Subfloor, from below",
            Self::SubfloorAbove => "Subfloor, from above",
            Self::FinishedFloor => "Finished floor",
        }
    }

    /// Is it framing lumber, rather than a floor layer?
    pub const fn is_framing(self) -> bool {
        matches!(self, Self::Joist | Self::RimJoist | Self::Sill | Self::Girder)
    }
}

impl Face {
    /// Every face that can be said, in the order that a choice shows them. An end has to be
    /// one of the two.
    pub const ALL: [Self; 6] =
        [Self::LowerEdge, Self::UpperEdge, Self::NearSide, Self::FarSide, Self::NearEnd, Self::FarEnd];

    /// Is it an end, so that it lies at no distance along?
    pub const fn is_end(self) -> bool {
        matches!(self, Self::End | Self::NearEnd | Self::FarEnd)
    }

    /// The face in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::LowerEdge => "lower edge",
            Self::UpperEdge => "upper edge",
            Self::NearSide => "near side",
            Self::FarSide => "far side",
            Self::End => "end",
            Self::NearEnd => "near end",
            Self::FarEnd => "far end",
        }
    }
}

impl Locating {
    /// Every way, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::Joist, Self::Plan, Self::Chalk];

    /// The way in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Joist => "at a joist",
            Self::Plan => "on the plan",
            Self::Chalk => "by its mark",
        }
    }
}

impl Position {
    /// How it says where it is.
    pub const fn locating(&self) -> Locating {
        match self {
            Self::OnJoist { .. } => Locating::Joist,
            Self::OnPlan { .. } => Locating::Plan,
            Self::Named => Locating::Chalk,
        }
    }

    /// How far along its joist, if it is on one and that was measured.
    pub fn along(&self) -> Option<Typed<Length>> {
        match self {
            Self::OnJoist { along, .. } => along.clone(),
            Self::OnPlan { .. } | Self::Named => None,
        }
    }
}

impl JoistNumber {
    /// The first joist.
    pub const FIRST: Self = Self(1);
    /// The greatest number that a joist can have.
    pub const LAST: Self = Self(999);

    /// A joist's number, from 1 to 999.
    pub const fn new(number: u16) -> Option<Self> {
        if number >= Self::FIRST.0 && number <= Self::LAST.0 { Some(Self(number)) } else { None }
    }

    /// The number.
    pub const fn get(self) -> u16 {
        self.0
    }

    /// The joist `steps` further on, held between the first and the last.
    #[must_use]
    pub fn step(self, steps: i16) -> Self {
        Self(self.0.saturating_add_signed(steps).clamp(Self::FIRST.0, Self::LAST.0))
    }
}

impl TryFrom<u16> for JoistNumber {
    type Error = String;
    fn try_from(number: u16) -> Result<Self, String> {
        Self::new(number).ok_or_else(|| format!("joist {number} does not exist: 1 to {} are accepted", Self::LAST.0))
    }
}

impl From<JoistNumber> for u16 {
    fn from(joist: JoistNumber) -> Self {
        joist.0
    }
}

impl Place {
    /// The place without its distance and chalk, as a question says it: "Joist 6, lower edge".
    pub fn name(&self) -> String {
        let mut name = self.element.label().to_owned();
        if let Position::OnJoist { joist, .. } = &self.position {
            let at = if self.element == Element::Joist { "" } else { " at joist" };
            name = format!("{name}{at} {}", joist.get());
        }
        if let Some(face) = self.face {
            name = format!("{name}, {}", face.label());
        }
        if let (Position::Named, Some(chalk)) = (&self.position, &self.chalk) {
            name = format!("{name}, \"{chalk}\"");
        }
        name
    }

    /// Is this the same spot, however its length was typed?
    pub fn same_spot(&self, other: &Self) -> bool {
        self.spot_key() == other.spot_key()
    }

    /// What two places at one spot have in common.
    pub fn spot_key(&self) -> SpotKey {
        let length = |typed: &Typed<Length>| typed.value;
        let (joist, along, down) = match &self.position {
            Position::OnJoist { joist, along } => (Some(*joist), along.as_ref().map(length), None),
            Position::OnPlan { right, down } => (None, Some(right.value), Some(down.value)),
            Position::Named => (None, None, None),
        };
        let height = self.height.as_ref().map(length);
        let chalk = self.chalk.as_ref().map(|chalk| chalk.as_str().to_owned());
        SpotKey { element: self.element, face: self.face, joist, along, down, height, chalk }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn joist(number: u16, along: Option<Typed<Length>>) -> Place {
        Place {
            element: Element::Joist,
            position: Position::OnJoist { joist: JoistNumber::new(number).unwrap(), along },
            face: Some(Face::LowerEdge),
            height: None,
            chalk: None,
        }
    }

    #[test]
    fn a_place_is_named_as_a_carpenter_says_it() {
        assert_eq!(joist(6, None).name(), "Joist 6, lower edge");
        let sill = Place { element: Element::Sill, ..joist(6, None) };
        assert_eq!(sill.name(), "Sill at joist 6, lower edge");
    }

    #[test]
    fn the_same_spot_may_have_been_typed_otherwise() {
        let one = joist(6, Some(Typed::new("8' 2\"", Length::inches(98))));
        let other = joist(6, Some(Typed::new("98 in", Length::inches(98))));
        assert!(one.same_spot(&other));
        assert!(!one.same_spot(&joist(7, Some(Typed::new("98 in", Length::inches(98))))));
    }

    #[test]
    fn spots_that_only_chalk_tells_apart_are_two() {
        let named = |chalk| Place { position: Position::Named, chalk: Some(Label::fitted(chalk)), ..joist(6, None) };
        assert!(named("A").same_spot(&named("A")));
        assert!(!named("A").same_spot(&named("B")));
    }

    #[test]
    fn joist_numbers_stop_at_their_ends() {
        assert_eq!(JoistNumber::FIRST.step(-1), JoistNumber::FIRST);
        assert_eq!(JoistNumber::LAST.step(5), JoistNumber::LAST);
        assert!(serde_json::from_str::<JoistNumber>("0").is_err());
    }
}
