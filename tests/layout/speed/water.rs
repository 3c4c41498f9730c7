//! An invented job of many readings: how long its map, its next reading and its ranking
//! take.

use duckboard::engine::entry::{DeviceId, Label, Logger, Role, Stamp, Text, Time};
use duckboard::engine::extent::{Extent, Group};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::{Book, Log, Observation, Pen, Record};
use duckboard::engine::moisture::{Answer, Material, Reading, Shown, Wood};
use duckboard::engine::origin::{Check, origin};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::survey::{AlongFrom, Joists, Room, Ruler, Run, Side};
use duckboard::engine::units::{Length, MoistureContent, Typed};

const JOISTS: u16 = 20;

/// Map, next reading and ranking of so many readings, and what they came to: the same on
/// every machine.
pub fn water(readings: u16) -> Result<String, String> {
    let book = job(readings);
    let extent = Extent::of(book.job(), Group::Framing);
    let extent = extent.value().ok_or("no map")?;
    let wet = extent.wet.map_err(|untold| format!("no area: {untold:?}"))?.area.to_square_feet();
    let next = extent.next.ok_or("no next reading")?;
    let ranking = origin(book.job());
    let first = ranking.value().and_then(|ranking| ranking.causes.first()).ok_or("no ranking")?;
    Ok(format!("water: {readings} readings, {wet:.1} sq ft, next joist {}, {}", next.joist.get(), first.cause.name()))
}

fn job(readings: u16) -> Book {
    let by = Logger { initials: Text::fitted("QZ"), role: Role::CrewLead };
    let mut pen = Pen::new(&Log::default(), DeviceId::new(1), Stamp { at: Time::default(), by, visit: None });
    let mut entries = Vec::new();
    let mut log = |observation: Observation| {
        let entry = pen.record(observation);
        let id = entry.id;
        entries.push(entry);
        id
    };
    let room = log(Room { name: Label::fitted("Room") }.into());
    let mut after = None;
    for feet in [27, 20, 27, 20] {
        let side = Side { room, after, length: length(feet * 12), turn: Turn::Right, by: Ruler::Tape };
        after = Some(log(side.into()));
    }
    let (first, spacing) = (length(16), length(16));
    log(Joists { room, run: Run::AcrossFirstSide, first, spacing, count: JOISTS, along: AlongFrom::FirstCorner }.into());
    for number in 0..readings {
        let along = i32::from(number / JOISTS) * 23 + 6;
        let position = Position::OnJoist {
            joist: JoistNumber::new(number % JOISTS + 1).unwrap_or(JoistNumber::FIRST),
            along: Some(length(along)),
        };
        let place = log(Place { element: Element::Joist, position, face: None, height: None, chalk: None }.into());
        // Wettest about joist 6, 8 ft along, and uneven.
        let away = i32::from((number % JOISTS).abs_diff(5)) * 16 + (along - 96).abs();
        let tenths = 300 - away + i32::from(number * 7 % 23);
        let percent = MoistureContent::from_percent_f64(f64::from(tenths.max(90)) / 10.0);
        let wood = Wood { material: Material::Solid, species: None };
        let shown = Shown::Percent(Typed::new("", percent));
        log(Reading::new(place, shown, wood).into());
    }
    for of in ["bare_soil", "damp_soil", "dew_beads"] {
        log(Check { of: Label::fitted(of), answer: Answer::Yes }.into());
    }
    Book::of(entries.into_iter().filter_map(|entry| Record::of(entry).ok()))
}

fn length(inches: i32) -> Typed<Length> {
    Typed::new("", Length::inches(inches))
}
