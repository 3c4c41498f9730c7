//! A desk to log at: a book, a pen and a draft, as one phone has them.
#![allow(dead_code, reason = "each test file uses its own part of the desk")]

use chrono::DateTime;
use duckboard::engine::entry::{DeviceId, EntryId, Label, Logger, Role, Stamp, Text, Time};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Added, Book, Entry, Job, Log, Observation, Pen, Record, Visit};
use duckboard::engine::moisture::{Answer as MeterAnswer, Meter, Sensing, Species};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::{AlongFrom, Joists, Opening, Room, Ruler, Run, Side, Tie};
use duckboard::engine::take::{self, Draft, ReadBack, Refused, Saved, Units};
use duckboard::engine::units::decimal::parse_moisture_content;
use duckboard::engine::units::tape::{self, BareUnit, Sign};
use duckboard::engine::units::{Length, MoistureContent, Typed};

#[derive(Debug)]
pub struct Desk {
    pub book: Book,
    pub pen: Pen,
    pub draft: Draft,
    pub units: Units,
    pub meter: Option<EntryId>,
}

impl Desk {
    pub fn new() -> Self {
        Self::of(Book::default())
    }

    pub fn of(book: Book) -> Self {
        let pen = Pen::new(book.log(), DeviceId::new(1), stamp());
        Self { book, pen, draft: Draft::default(), units: Units::default(), meter: None }
    }

    pub fn job(&self) -> &Job {
        self.book.job()
    }

    pub fn log(&mut self, observation: impl Into<Observation>) -> EntryId {
        let entry = self.pen.record(observation);
        self.keep(entry)
    }

    /// Pins on the Douglas-fir scale that need no correction in Douglas fir.
    pub fn pins(&mut self) -> EntryId {
        if let Some((id, _)) = self.job().now.meters().first() {
            return *id;
        }
        self.log(Meter {
            label: label("pins"),
            sensing: Sensing::Pin,
            scale: Some(Species::DouglasFir),
            reference: None,
            corrects_temperature: MeterAnswer::Yes,
            corrects_species: MeterAnswer::No,
            minimum: None,
            maximum: None,
        })
    }

    pub fn withdraw(&mut self, of: EntryId) -> EntryId {
        let entry = self.pen.take_back(of, self.book.job());
        self.keep(entry)
    }

    pub fn correct(&mut self, of: EntryId, to: impl Into<Observation>) -> EntryId {
        let entry = self.pen.correct(vec![of], to);
        self.keep(entry)
    }

    pub fn visit(&mut self, purpose: &str) -> EntryId {
        let visit = self.log(Visit { purpose: Label::new(purpose).unwrap() });
        self.pen.begin_visit(visit);
        visit
    }

    /// Goes on at this time, in the visit that nobody ended.
    pub fn goes_on(&mut self, at: &str) {
        let (at, visit) = (DateTime::parse_from_rfc3339(at).unwrap(), self.pen.visit());
        self.pen.stamp_from(Stamp { at, visit, ..stamp() });
    }

    /// Types a value and saves it.
    pub fn types(&mut self, text: &str) -> Result<ReadBack, Refused> {
        self.draft.text = text.to_owned();
        let meter = self.meter.map(|meter| take::InHand::of(self.book.job(), meter));
        let saved = take::save(&self.draft, self.book.job(), &mut self.pen, self.units, meter)?;
        Ok(self.takes(saved))
    }

    /// Keeps what a save came to.
    pub fn takes(&mut self, saved: Saved) -> ReadBack {
        for entry in saved.entries {
            self.keep(entry);
        }
        self.draft = saved.next;
        saved.read_back
    }

    /// The id that the next entry will have.
    pub fn next_id(&self) -> EntryId {
        self.pen.clone().withdraw(EntryId { count: 0, device: DeviceId::new(0) }).id
    }

    fn keep(&mut self, entry: Entry) -> EntryId {
        let id = entry.id;
        assert_eq!(self.book.add(Record::of(entry).unwrap()), Added::New);
        assert!(self.job().faults.is_empty(), "{:?}", self.job().faults);
        id
    }

    /// A room of sides, as typed, and the turns at their ends: the room, then its sides.
    pub fn room(&mut self, sides: &[(&str, Turn)]) -> (EntryId, Vec<EntryId>) {
        let room = self.log(Room { name: Label::new("Room").unwrap() });
        let mut walked = Vec::new();
        for (text, turn) in sides {
            let side = side(room, walked.last().copied(), text, *turn);
            walked.push(self.log(side));
        }
        (room, walked)
    }

    /// A length between the corners that two sides start at.
    pub fn tie(&mut self, from: EntryId, to: EntryId, text: &str) -> EntryId {
        self.log(Tie { from, to, length: length(text), by: Ruler::Tape })
    }

    /// An opening by its side and four lengths: along, out, length, width.
    pub fn opening(&mut self, from: EntryId, lengths: [&str; 4]) -> EntryId {
        let [along, out, length, width] = lengths.map(length);
        self.log(Opening { from, along, out, length, width })
    }

    pub fn joists(&mut self, room: EntryId, run: Run, first: &str, spacing: &str, count: u16) -> EntryId {
        self.log(Joists {
            room,
            run,
            first: length(first),
            spacing: length(spacing),
            count,
            along: AlongFrom::FirstCorner,
        })
    }
}

pub fn stamp() -> Stamp {
    Stamp {
        at: DateTime::parse_from_rfc3339("2026-11-25T08:15:00-06:00").unwrap(),
        by: Logger { initials: Text::new("QZ").unwrap(), role: Role::CrewLead },
        visit: None,
    }
}

/// A stamp of another time and visit.
pub fn stamp_of(at: Time, visit: Option<EntryId>) -> Stamp {
    Stamp { at, visit, ..stamp() }
}

/// A pen of another phone that has seen nothing yet.
pub fn other_phone() -> Pen {
    Pen::new(&Log::default(), DeviceId::new(2), stamp())
}

pub fn side(room: EntryId, after: Option<EntryId>, text: &str, turn: Turn) -> Side {
    Side { room, after, length: length(text), turn, by: Ruler::Tape }
}

pub fn length(text: &str) -> Typed<Length> {
    tape::parse(text, BareUnit::Inches, Sign::Allowed).unwrap()
}

/// A joist's lower edge, a distance along it.
pub fn percent(text: &str) -> Typed<MoistureContent> {
    parse_moisture_content(text).unwrap()
}

pub fn spot(joist: u16, along: &str) -> Place {
    let along = (!along.is_empty()).then(|| length(along));
    Place {
        element: Element::Joist,
        position: Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along },
        face: Some(Face::LowerEdge),
        height: None,
        chalk: None,
    }
}

/// The joist of a place on one.
pub fn joist_of(place: &Place) -> u16 {
    match &place.position {
        Position::OnJoist { joist, .. } => joist.get(),
        other => panic!("{other:?} is on no joist"),
    }
}

pub fn label(text: &str) -> Label {
    Label::new(text).unwrap()
}
