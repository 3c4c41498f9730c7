//! An invented house: a room of 12 × 10 ft over nine joists 16 in apart.

use crate::desk::Desk;
pub use crate::desk::length as inches;
use duckboard::engine::entry::EntryId;
use duckboard::engine::geometry::Turn;
use duckboard::engine::particular::{Item, Part, stated};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::{Level, Run};
use duckboard::engine::units::tape::BareUnit;

pub fn joist(number: u16) -> Part {
    Part::Joist(JoistNumber::new(number).unwrap())
}

/// The desk of somebody who measured the room and laid out its joists.
pub fn house() -> Desk {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&["12'", "10'", "12'", "10'"].map(|length| (length, Turn::Right)));
    desk.opening(sides[0], ["32", "24", "4'", "4'"]);
    desk.joists(room, Run::AcrossFirstSide, "8", "16", 9);
    desk
}

/// The same, all joists measured, probed sound, and stamped.
pub fn sound_house() -> Desk {
    use duckboard::engine::particular::list::*;
    let mut desk = house();
    let all = [(BREADTH, "1 1/2"), (DEPTH, "7 1/4"), (CLEAR_SPAN, "10'"), (BEARING, "3 1/2")];
    for (item, typed) in all {
        desk.says(Part::Joists, &item, typed);
    }
    for number in 1..=9 {
        desk.says(joist(number), &SOFT_DEPTH, "0");
    }
    desk.says(Part::House, &SPECIES, "Douglas fir-larch");
    desk.says(Part::House, &GRADE, "#2");
    desk
}

impl Desk {
    /// Says a particular, as a form would.
    pub fn says(&mut self, of: Part, item: &Item, typed: &str) -> EntryId {
        self.log(stated(of, item, typed, BareUnit::Inches).unwrap())
    }

    /// Reads the level on a joist, so far along it.
    pub fn reads_level(&mut self, number: u16, along: &str, drop: &str) {
        let position = Position::OnJoist { joist: JoistNumber::new(number).unwrap(), along: Some(inches(along)) };
        let place = Place { element: Element::Joist, position, face: Some(Face::UpperEdge), height: None, chalk: None };
        let place = self.log(place);
        self.log(Level { place, drop: inches(drop) });
    }
}
