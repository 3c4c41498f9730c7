//! An invented house: a room of 12 × 10 ft over nine joists 16 in apart.
#![allow(dead_code, reason = "each test file uses its own part of the house")]

pub use crate::desk::length as inches;
use crate::desk::{Desk, percent};
use duckboard::engine::entry::EntryId;
use duckboard::engine::framing::{Damage, DamageKind, Depth, Judged, schedule};
use duckboard::engine::geometry::Turn;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::particular::{Item, Part, Particulars, list, stated};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::{Level, Run};
use duckboard::engine::take::Units;
use duckboard::engine::units::tape::BareUnit;
use duckboard::engine::units::{Length, Typed};

pub fn joist(number: u16) -> Part {
    Part::Joist(JoistNumber::new(number).unwrap())
}

/// What is to become of a joist.
pub fn one(desk: &Desk, number: usize) -> Judged {
    schedule(desk.job(), Units::default()).value().unwrap()[number - 1].clone()
}

/// Does a reason say this?
pub fn says(judged: &Judged, words: &str) -> bool {
    judged.reasons.iter().any(|reason| reason.words.contains(words))
}

/// Joist 4 of a sound house after something was done to it.
pub fn joist_4_after(change: impl FnOnce(&mut Desk)) -> Judged {
    let mut desk = sound_house();
    change(&mut desk);
    one(&desk, 4)
}

/// The desk of somebody who measured the room and laid out its joists.
pub fn house() -> Desk {
    house_over(9)
}

/// The same over so many joists.
pub fn house_over(joists: u16) -> Desk {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&["12'", "10'", "12'", "10'"].map(|length| (length, Turn::Right)));
    desk.opening(sides[0], ["32", "24", "4'", "4'"]);
    desk.joists(room, Run::AcrossFirstSide, "8", "16", joists);
    desk
}

/// The same, all joists measured, probed sound, read dry and stamped.
pub fn sound_house() -> Desk {
    let mut desk = house();
    make_sound(&mut desk, 9);
    for number in 1..=9 {
        desk.reads_moisture(number, 12, Material::Solid);
    }
    desk
}

/// Says of joists all that a joist can stay by, but how wet they are.
pub fn make_sound(desk: &mut Desk, joists: u16) {
    use duckboard::engine::particular::list::*;
    let all = [
        (MEMBER, "sawn lumber"),
        (BREADTH, "1 1/2"),
        (DEPTH, "7 1/4"),
        (CLEAR_SPAN, "10'"),
        (BEARING, "3 1/2"),
        (BEARS_ON, "wood or metal"),
        (ENDS_HELD, "rim joist"),
        (OVER_GIRDER, "does not reach one"),
        (CUTS, "all logged"),
    ];
    for (item, typed) in all {
        desk.says(Part::Joists, &item, typed);
    }
    for number in 1..=joists {
        desk.says(joist(number), &AWL, "stops everywhere");
    }
    desk.says(Part::House, &SPECIES, "Douglas fir-larch");
    desk.says(Part::House, &GRADE, "#2");
    desk.says(Part::House, &INCISED, "no");
    desk.says(Part::House, &SISTER_BREADTH, "1 1/2");
    desk.says(Part::House, &SISTER_DEPTH, "7 1/4");
    desk.says(Part::House, &SISTER_SPECIES, "Douglas fir-larch");
    desk.says(Part::House, &SISTER_GRADE, "#2");
    desk.says(Part::House, &SISTER_INCISED, "no");
}

impl Desk {
    /// Says a particular, as a form would.
    pub fn says(&mut self, of: Part, item: &Item, typed: &str) -> EntryId {
        self.log(stated(of, item, typed, BareUnit::Inches).unwrap())
    }

    /// Says that something was done about a joist. A new one is measured where it bears, and
    /// bears as the old one did; it is looked at for cuts, and each is logged.
    pub fn does(&mut self, of: Part, done: &str) {
        let bears = {
            let said = Particulars::of(self.job());
            let bearing = said.get(&of, &list::BEARING).or_else(|| said.get(&Part::Joists, &list::BEARING));
            bearing.map(|bearing| bearing.typed().to_owned())
        };
        self.says(of.clone(), &list::DONE, done);
        if done == "replaced" {
            bears.into_iter().for_each(|bears| {
                self.says(of.clone(), &list::BEARING, &bears);
            });
            self.says(of, &list::CUTS, "all logged");
        }
    }

    /// Reads a joist, in percent as shown.
    pub fn reads_moisture(&mut self, number: u16, percent: u16, material: Material) -> EntryId {
        self.reads_typed(number, &percent.to_string(), material)
    }

    /// The same, as typed.
    pub fn reads_typed(&mut self, number: u16, typed: &str, material: Material) -> EntryId {
        let position = Position::OnJoist { joist: JoistNumber::new(number).unwrap(), along: None };
        let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
        let place = self.log(place);
        let shown = Shown::Percent(percent(typed));
        let wood = Wood { material, species: Some(Species::DouglasFir) };
        let meter = Some(self.pins());
        self.log(Reading { meter, ..Reading::new(place, shown, wood) })
    }

    /// Logs a spot of a joist: from where to where, on which face, how deep.
    pub fn spot(
        &mut self,
        number: u16,
        kind: DamageKind,
        stretch: Option<(&str, &str)>,
        face: Option<Face>,
        depth: &str,
    ) -> EntryId {
        let (from, to) = stretch.map(|(from, to)| (inches(from), inches(to))).unzip();
        let depth = if depth == "cannot reach" { Some(Depth::CannotReach) } else { Some(Depth::Is(inches(depth))) };
        let depth = depth.filter(|_| kind != DamageKind::Hole);
        self.log(Damage { from, to, face, depth, ..Damage::new(joist(number), kind) })
    }

    /// Logs a round hole in a joist: from where to where, and how far from the nearest edge.
    pub fn hole(&mut self, number: u16, (from, to): (&str, &str), to_edge: &str) -> EntryId {
        let long = inches(to).value - inches(from).value;
        self.slot(number, (from, to), Some(Typed::new("as long", long)), Some(to_edge))
    }

    /// The same of a hole that is as high as that.
    pub fn slot(
        &mut self,
        number: u16,
        (from, to): (&str, &str),
        high: Option<Typed<Length>>,
        to_edge: Option<&str>,
    ) -> EntryId {
        let [from, to] = [from, to].map(|length| Some(inches(length)));
        let (depth, to_edge) = (high.map(Depth::Is), to_edge.map(inches));
        self.log(Damage { from, to, depth, to_edge, ..Damage::new(joist(number), DamageKind::Hole) })
    }

    /// Reads the level on a joist, so far along it.
    pub fn reads_level(&mut self, number: u16, along: &str, drop: &str) -> EntryId {
        self.reads_level_at(number, Some(along), Face::UpperEdge, drop)
    }

    /// The same at a face, or an end, of it.
    pub fn reads_level_at(&mut self, number: u16, along: Option<&str>, face: Face, drop: &str) -> EntryId {
        let position = Position::OnJoist { joist: JoistNumber::new(number).unwrap(), along: along.map(inches) };
        let place = Place { element: Element::Joist, position, face: Some(face), height: None, chalk: None };
        let place = self.log(place);
        self.log(Level { place, drop: inches(drop) });
        place
    }
}
