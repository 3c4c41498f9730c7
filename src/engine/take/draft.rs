//! What is half done: kept in the store at every key, so that it outlives the page.

use super::whereabouts::Whereabouts;
use crate::engine::air::AirLocation;
use crate::engine::entry::{EntryId, Label};
use crate::engine::framing::DamageKind;
use crate::engine::geometry::Turn;
use crate::engine::moisture::{Material, Wood};
use crate::engine::place::{Element, Face, JoistNumber, Place, Position};
use crate::engine::survey::{LayerKind, ObstacleKind, Ruler, Run, Trust};
use crate::engine::units::{Temperature, Typed};
use serde::{Deserialize, Serialize};

/// What somebody is in the middle of. Not part of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Draft {
    /// What is in the hand.
    pub instrument: Instrument,
    /// The number typed so far.
    pub text: String,
    /// Earlier answers to a question of several, as typed.
    pub held: Vec<String>,
    /// The length that says where the spot is and is asked for now, before anything else.
    pub locating: Option<Whereabouts>,
    /// What was typed before that was asked; it comes back after.
    pub aside: String,
    /// What the tape measures.
    pub tape: TapeTask,
    /// The side that the next one is put in after; the last one unless somebody says so.
    pub after: Option<EntryId>,
    /// Which way the wall turns at the end of the next side.
    pub turn: Turn,
    /// The corner that an opening is placed from, a length starts at or an angle is
    /// at, counted from 0.
    pub corner: usize,
    /// The corner that a line beside a corner starts at, counted from 0.
    pub line_from: usize,
    /// The corner that such a line or a length from corner to corner ends at, counted
    /// from 0.
    pub to_corner: usize,
    /// How far what is said of a corner is to be believed.
    pub trust: Trust,
    /// What the sides are measured with.
    pub ruler: Ruler,
    /// What the rectangle that is placed is.
    pub footprint: Footprint,
    /// The opening that is cut back; the last one unless somebody says so.
    pub opening: Option<EntryId>,
    /// Which way the joists run.
    pub run: Run,
    /// The joist whose center is measured.
    pub joist: JoistNumber,
    /// What the layer of the old floor is that is measured.
    pub layer: LayerKind,
    /// The name of a length that has no other.
    pub other: Label,
    /// Where the next reading, condition or photo goes.
    pub spot: Place,
    /// How many joists the place moves on after a save.
    pub travel: i16,
    /// What the air instrument reads.
    pub air: AirTask,
    /// What is looked for.
    pub look: LookTask,
    /// The wood that was said or read last.
    pub wood: Wood,
    /// The spot where that was.
    pub wood_at: Option<Place>,
    /// Is the wood there dry panel that others are held against?
    pub reference: bool,
    /// The spot to come back to after that was read.
    pub back_to: Option<Place>,
    /// The wood's temperature, as measured last.
    pub wood_temperature: Option<Typed<Temperature>>,
    /// The camera was opened for this place, and nothing has come back yet.
    pub photo_wanted: bool,
}

/// What is in the hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Instrument {
    /// A tape or a laser.
    #[default]
    Tape,
    /// A moisture meter.
    Meter,
    /// A thermo-hygrometer or an infrared thermometer.
    Air,
    /// A laser level.
    Level,
    /// Eyes and an awl.
    Look,
    /// The camera.
    Photo,
}

/// What the tape measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TapeTask {
    /// The room, side by side.
    #[default]
    Side,
    /// From corner to corner: a diagonal, or a side again.
    Tie,
    /// A corner beside a line: along it, then out from it.
    Offset,
    /// How square a corner is.
    Corner,
    /// An opening: along, out, length, width.
    Opening,
    /// How far the floor around an opening is cut back: along the joists, then the
    /// finished floor.
    CutBack,
    /// The joists: first center, spacing, how many.
    Joists,
    /// The joists one by one, each center from the first corner.
    JoistCenter,
    /// The old floor, a layer at a time from the top down.
    Layer,
    /// A part of a sheet that is there already: along its strong axis, then across.
    OnHand,
    /// From the ground to the joists.
    CrawlHeight,
    /// Any other length.
    Other,
}

/// What a rectangle that is placed from a corner is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Footprint {
    /// A part of the floor that comes out.
    #[default]
    Opening,
    /// Something that stands in it.
    Of(ObstacleKind),
}

impl Footprint {
    /// Every one, in the order that a choice shows them.
    pub const ALL: [Self; 4] = {
        let [a, b, c] = ObstacleKind::ALL;
        [Self::Opening, Self::Of(a), Self::Of(b), Self::Of(c)]
    };

    /// The word.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Opening => "Opening",
            Self::Of(obstacle) => obstacle.label(),
        }
    }
}

/// What the air instrument reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AirTask {
    /// The air under the house.
    #[default]
    Crawl,
    /// The air in the room.
    Room,
    /// The air outdoors.
    Outdoors,
    /// The surface at the place.
    Surface,
    /// The wood at the place: meter readings are corrected with it.
    Wood,
}

/// What is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LookTask {
    /// Findings, a tap each.
    #[default]
    Findings,
    /// A soft spot, a notch or a hole: from where, to where, how deep.
    Spot(DamageKind),
}

impl Default for Draft {
    fn default() -> Self {
        Self {
            instrument: Instrument::default(),
            text: String::new(),
            held: Vec::new(),
            locating: None,
            aside: String::new(),
            tape: TapeTask::default(),
            after: None,
            turn: Turn::Right,
            corner: 0,
            line_from: 0,
            to_corner: 2,
            trust: Trust::Checked,
            ruler: Ruler::Tape,
            footprint: Footprint::Opening,
            opening: None,
            run: Run::AcrossFirstSide,
            joist: JoistNumber::FIRST,
            layer: LayerKind::Finish,
            other: Label::default(),
            spot: Place {
                element: Element::Joist,
                position: Position::OnJoist { joist: JoistNumber::FIRST, along: None },
                face: Some(Face::LowerEdge),
                height: None,
                chalk: None,
            },
            travel: 1,
            air: AirTask::default(),
            look: LookTask::default(),
            wood: Wood { material: Material::Solid, species: None },
            wood_at: None,
            reference: false,
            back_to: None,
            wood_temperature: None,
            photo_wanted: false,
        }
    }
}

impl Instrument {
    /// Every instrument, in the order that they lie in.
    pub const ALL: [Self; 6] = [Self::Tape, Self::Meter, Self::Air, Self::Level, Self::Look, Self::Photo];

    /// Its name.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Tape => "Tape",
            Self::Meter => "Meter",
            Self::Air => "Air",
            Self::Level => "Level",
            Self::Look => "Look",
            Self::Photo => "Photo",
        }
    }
}

impl TapeTask {
    /// Every task, in the order that a choice shows them.
    pub const ALL: [Self; 12] = [
        Self::Side,
        Self::Tie,
        Self::Offset,
        Self::Corner,
        Self::Opening,
        Self::CutBack,
        Self::Joists,
        Self::JoistCenter,
        Self::Layer,
        Self::OnHand,
        Self::CrawlHeight,
        Self::Other,
    ];

    /// What it measures.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Side => "Room side",
            Self::Tie => "Corner to corner",
            Self::Offset => "Off a line",
            Self::Corner => "Square corner?",
            Self::Opening => "Opening",
            Self::CutBack => "Cut back",
            Self::Joists => "Joists",
            Self::JoistCenter => "Joist by joist",
            Self::Layer => "Floor layers",
            Self::OnHand => "Piece on hand",
            Self::CrawlHeight => "Crawl height",
            Self::Other => "Other length",
        }
    }
}

impl AirTask {
    /// Every task, in the order that a choice shows them.
    pub const ALL: [Self; 5] = [Self::Crawl, Self::Room, Self::Outdoors, Self::Surface, Self::Wood];

    /// What it reads.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Crawl => "Crawl air",
            Self::Room => "Room air",
            Self::Outdoors => "Outdoor air",
            Self::Surface => "Surface",
            Self::Wood => "Wood temperature",
        }
    }

    /// Where the air is that it reads; none for a surface or the wood.
    pub const fn location(self) -> Option<AirLocation> {
        match self {
            Self::Crawl => Some(AirLocation::Crawl),
            Self::Room => Some(AirLocation::Room),
            Self::Outdoors => Some(AirLocation::Outdoors),
            Self::Surface | Self::Wood => None,
        }
    }
}

impl LookTask {
    /// Every task, in the order that a choice shows them.
    pub const ALL: [Self; 4] = {
        let [awl, notch, hole] = DamageKind::ALL;
        [Self::Findings, Self::Spot(awl), Self::Spot(notch), Self::Spot(hole)]
    };

    /// What it logs.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Findings => "What it is like",
            Self::Spot(kind) => kind.label(),
        }
    }
}

impl Draft {
    /// The draft with another instrument in the hand: what was typed for the last one
    /// is put down. A level is held on a joist's top, and a meter to what can be reached of it.
    #[must_use]
    pub fn with(&self, instrument: Instrument) -> Self {
        let mut next = Self { instrument, ..self.put_down() };
        let edges = [Face::LowerEdge, Face::UpperEdge];
        let [from, to] = match (self.instrument, instrument) {
            (_, Instrument::Level) => edges,
            (Instrument::Level, _) => [Face::UpperEdge, Face::LowerEdge],
            _ => return next,
        };
        if next.spot.element == Element::Joist && next.spot.face == Some(from) {
            next.spot.face = Some(to);
        }
        next
    }

    /// The draft with another tape task.
    #[must_use]
    pub fn measuring(&self, tape: TapeTask) -> Self {
        Self { tape, ..self.put_down() }
    }

    /// The draft with another air task.
    #[must_use]
    pub fn reading_air(&self, air: AirTask) -> Self {
        Self { air, ..self.put_down() }
    }

    /// The draft looking for something else.
    #[must_use]
    pub fn looking(&self, look: LookTask) -> Self {
        Self { look, ..self.put_down() }
    }

    /// The length that is asked for before anything else, if the spot can have it.
    pub fn asked_where(&self) -> Option<Whereabouts> {
        self.locating.filter(|what| Whereabouts::of(&self.spot).contains(what))
    }

    /// The draft asking where the spot is; what was typed is put aside meanwhile.
    #[must_use]
    pub fn asking_where(&self, what: Whereabouts) -> Self {
        let aside = if self.asked_where().is_some() { &self.aside } else { &self.text };
        Self { locating: Some(what), aside: aside.clone(), text: String::new(), ..self.clone() }
    }

    /// The draft at another spot, with the next length that says where it is asked for,
    /// or back at what was asked before.
    pub(super) fn located(&self, spot: Place, next: Option<Whereabouts>) -> Self {
        let at = Self { spot, ..self.clone() };
        match next {
            Some(what) => at.asking_where(what),
            None => Self { locating: None, text: self.aside.clone(), aside: String::new(), ..at },
        }
    }

    /// The draft with nothing half done: ready for the next question.
    pub(super) fn put_down(&self) -> Self {
        Self { text: String::new(), held: Vec::new(), locating: None, aside: String::new(), ..self.clone() }
    }

    /// Ready for the next answer of the same question.
    pub(super) fn holding(&self, typed: String) -> Self {
        let mut held = self.held.clone();
        held.push(typed);
        Self { held, text: String::new(), ..self.clone() }
    }
}
