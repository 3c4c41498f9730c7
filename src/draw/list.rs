//! The display list itself.

use super::ramp::Colour;
use super::{Frame, Role};

/// The surface to draw on, in CSS pixels. A drawing is laid out for one canvas, so
/// that its letters and discs have the size they need there; show it at that size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Canvas {
    /// From left to right.
    pub width_px: u32,
    /// From top to bottom.
    pub height_px: u32,
}

/// A place on the canvas, in pixels from its top left, `x` to the right and `y` down.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spot {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

/// What lies at a text's spot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Anchor {
    /// The text's start.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// Which way a text reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Reads {
    /// From left to right.
    Across,
    /// From the bottom up, as on a drawing turned to be read from its right.
    Up,
}

/// One thing drawn. Later items lie over earlier ones.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// A straight line.
    Line {
        /// Where it starts.
        from: Spot,
        /// Where it ends.
        to: Spot,
        /// What it is.
        role: Role,
    },
    /// A line through several spots; closed, it has an inside to fill.
    Path {
        /// The spots in turn.
        spots: Vec<Spot>,
        /// Does it run back to its first spot?
        closed: bool,
        /// What it is.
        role: Role,
    },
    /// A line of text, never mirrored and never upside down.
    Text {
        /// The spot that `anchor` names, at half the height of a capital.
        at: Spot,
        /// What lies at the spot.
        anchor: Anchor,
        /// Which way it reads.
        reads: Reads,
        /// Font size in pixels.
        size: f64,
        /// The words.
        text: String,
        /// What it is.
        role: Role,
    },
    /// A round mark.
    Disc {
        /// Its middle.
        at: Spot,
        /// Its radius in pixels.
        radius: f64,
        /// The colour that stands for a reading's value; nothing for all else.
        fill: Option<Colour>,
        /// What it is.
        role: Role,
    },
    /// A filled rectangle: what is known between readings.
    Area {
        /// Its top left.
        from: Spot,
        /// Its bottom right.
        to: Spot,
        /// The colour that stands for its value.
        fill: Colour,
        /// How strong it is, since it is as sure as that: 0 to 100.
        percent: u8,
        /// What it is.
        role: Role,
    },
    /// A ring with cross hairs through it.
    Target {
        /// Its middle.
        at: Spot,
        /// The ring's radius in pixels.
        radius: f64,
        /// How far the hairs reach from the middle.
        arm: f64,
        /// What it is.
        role: Role,
    },
    /// Two crossed strokes.
    Cross {
        /// Where they cross.
        at: Spot,
        /// How far they reach from there along each axis.
        arm: f64,
        /// What it is.
        role: Role,
    },
}

/// A drawing, ready to be written out.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// What it is laid out for.
    pub canvas: Canvas,
    /// What it shows, in words, for those who cannot see it.
    pub title: String,
    /// What is drawn, from the bottom up.
    pub items: Vec<Item>,
    /// Where the job lies on the canvas; nothing when there was nothing to place.
    pub frame: Option<Frame>,
    /// Texts that found no place where they would not have covered another. Show
    /// them beside the drawing.
    pub unplaced: Vec<String>,
}

impl Item {
    /// What it is.
    pub const fn role(&self) -> Role {
        match self {
            Self::Line { role, .. }
            | Self::Path { role, .. }
            | Self::Area { role, .. }
            | Self::Text { role, .. }
            | Self::Disc { role, .. }
            | Self::Target { role, .. }
            | Self::Cross { role, .. } => *role,
        }
    }
}

impl Drawing {
    /// The items that are `role`.
    pub fn of(&self, role: Role) -> impl Iterator<Item = &Item> {
        self.items.iter().filter(move |item| item.role() == role)
    }
}
