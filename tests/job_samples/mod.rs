//! Job files for tests, all invented: the sample job, a second phone that was invited
//! to it, and photos that are nothing but a picture's first bytes and noise.
#![allow(dead_code, reason = "no one test uses all of them")]

use chrono::DateTime;
use duckboard::engine::air::SurfaceReading;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{DeviceId, EntryId, JobId, Label, Logger, Note, Role, Stamp, Text, Time};
use duckboard::engine::figure::Figure;
use duckboard::engine::framing::{Damage, DamageKind, Depth};
use duckboard::engine::geometry::{Heading, Turn};
use duckboard::engine::job::{Acknowledgement, Book, Fact, HandOver, Observation, Pen, Record, SheetEdge, SpanRating};
use duckboard::engine::particular::Part;
use duckboard::engine::photo::Photo;
use duckboard::engine::place::{Face, JoistNumber};
use duckboard::engine::sample;
use duckboard::engine::sheets::OnHand;
use duckboard::engine::survey::{
    Corner, CutBack, JoistCenter, Layer, LayerKind, Measure, Obstacle, ObstacleKind, Offset, Opening, Ruler, Tie,
    Trust, WholeFloor, room_area,
};
use duckboard::engine::units::{Angle, Length, Temperature, Typed};
use duckboard::file::{FilePhoto, JobFile, Made, Snapshot, SnapshotFigure, write};

pub const JOB: JobId = JobId::new(0x0b);
pub const FIRST_PHONE: DeviceId = DeviceId::new(7);
pub const SECOND_PHONE: DeviceId = DeviceId::new(8);

pub fn time(text: &str) -> Time {
    DateTime::parse_from_rfc3339(text).unwrap()
}

pub fn made() -> Made {
    Made::here(time("2026-10-27T16:40:00-05:00"))
}

/// The first phone's book: the sample job, a correction, a withdrawal and a photo's entry.
pub fn first_book() -> Book {
    let mut book = Book::of(sample::entries(FIRST_PHONE).into_iter().map(|entry| Record::of(entry).unwrap()));
    let mut pen = pen(&book, FIRST_PHONE, "QZ", Role::CrewLead);
    let place = *book.job().now.places().first().unwrap().0;
    let site = fact(&book, |fact| matches!(fact, Fact::Site(_)));
    let condition = *book.job().now.conditions().first().unwrap().0;
    let photo = first_photo();
    for entry in [
        pen.correct(vec![site], Fact::Site(Label::new("An invented lane, third house").unwrap())),
        pen.withdraw(condition),
        pen.record(Photo {
            place: Some(place),
            sha256: photo.sha256,
            media_type: photo.media_type,
            size: photo.size,
            width: 640,
            height: 480,
            caption: Note::new("=Joist 2 | from the *west*").unwrap(),
        }),
        pen.record(Measure {
            what: Label::new("-Drain, out").unwrap(),
            length: Typed::new("3 1/2\"", Length::sixty_fourths(224)),
            place: None,
        }),
        pen.record(Tie {
            from: *book.job().now.sides().first().unwrap().0,
            to: *book.job().now.sides().last().unwrap().0,
            length: Typed::new("9' 10\"", Length::inches(118)),
            by: Ruler::Laser,
        }),
        pen.record(Offset {
            of: nth_side(&book, 2),
            from: nth_side(&book, 0),
            to: nth_side(&book, 1),
            along: Typed::new("11' 8 3/8\"", Length::sixty_fourths(140 * 64 + 24)),
            out: inches(73),
            side: Turn::Right,
            by: Ruler::Paces,
        }),
        pen.record(Corner {
            at: *book.job().now.sides().first().unwrap().0,
            angle: Some(Typed::new("90.5°", Angle::micro_degrees(90_500_000))),
            trust: Trust::Checked,
        }),
        pen.record(Obstacle {
            what: ObstacleKind::Duct,
            takes: Opening {
                from: *book.job().now.sides().first().unwrap().0,
                along: inches(100),
                out: inches(90),
                length: inches(12),
                width: inches(4),
            },
        }),
        pen.record(CutBack {
            opening: *book.job().now.openings().first().unwrap().0,
            width: Some(inches(72)),
            finish: Some(inches(3)),
        }),
        pen.record(Layer { what: LayerKind::Finish, thickness: Typed::new("3/16\"", Length::sixty_fourths(12)) }),
        pen.record(Layer { what: LayerKind::Boards, thickness: Typed::new("3/4\"", Length::sixty_fourths(48)) }),
        pen.record(OnHand { length: inches(48), width: inches(30) }),
        pen.record(JoistCenter {
            of: *book.job().now.joists().first().unwrap().0,
            joist: JoistNumber::new(3).unwrap(),
            center: Typed::new("35 3/4\"", Length::sixty_fourths(35 * 64 + 48)),
        }),
        pen.record(Damage {
            from: Some(inches(40)),
            to: Some(inches(46)),
            face: Some(Face::LowerEdge),
            depth: Some(Depth::CannotReach),
            ..Damage::new(Part::Joist(JoistNumber::new(3).unwrap()), DamageKind::Soft)
        }),
        pen.record(Damage {
            from: Some(inches(60)),
            to: Some(inches(61)),
            to_edge: Some(inches(3)),
            ..Damage::new(Part::Joist(JoistNumber::new(3).unwrap()), DamageKind::Hole)
        }),
        pen.record(Condition { place: None, finding: Finding::Strands, note: None }),
        pen.record(Fact::North(Heading::West)),
        pen.record(Fact::SheetThickness(Typed::new("23/32\"", Length::sixty_fourths(46)))),
        pen.record(Fact::SheetEdge(SheetEdge::Square)),
        pen.record(Fact::SpanRating(SpanRating::new(24).unwrap())),
        pen.record(Fact::SheetGap(Typed::new("1/8\"", Length::sixty_fourths(8)))),
        pen.record(Fact::EdgeGap(Typed::new("1/16\"", Length::sixty_fourths(4)))),
        pen.record(Fact::Kerf(Typed::new("1/8\"", Length::sixty_fourths(8)))),
        pen.record(Fact::JoistThickness(Typed::new("1 1/2\"", Length::sixty_fourths(96)))),
        pen.record(Fact::BlockLumber(Label::fitted("2 × 8 No. 2, treated"))),
        pen.record(Fact::TapeWithin(Typed::new("1/16\"", Length::sixty_fourths(4)))),
        pen.record(Fact::LaserWithin(Typed::new("1/16\"", Length::sixty_fourths(4)))),
        pen.record(Fact::PacesWithin(inches(8))),
        pen.record(SurfaceReading {
            place: Some(place),
            what: Label::new("cold pipe").unwrap(),
            temperature: Typed::new("48 °F", Temperature::fahrenheit(48)),
        }),
        pen.record(Acknowledgement { caution: Label::new("wires").unwrap() }),
        pen.record(HandOver { revision: 2, with_photos: true, with_client: true, entries: Some(40) }),
    ] {
        book.add(Record::of(entry).unwrap());
    }
    withdraw_a_whole_floor(&mut book);
    book
}

/// It was said that all comes out, and taken back.
fn withdraw_a_whole_floor(book: &mut Book) {
    let room = *book.job().now.rooms().first().unwrap().0;
    let mut pen = pen(book, FIRST_PHONE, "QZ", Role::CrewLead);
    let whole = pen.record(WholeFloor { room });
    let taken_back = pen.withdraw(whole.id);
    for entry in [whole, taken_back] {
        book.add(Record::of(entry).unwrap());
    }
}

fn nth_side(book: &Book, nth: usize) -> EntryId {
    *book.job().now.sides().keys().nth(nth).unwrap()
}

fn inches(inches: i32) -> Typed<Length> {
    Typed::new(format!("{inches}\""), Length::inches(inches))
}

/// The second phone's book: the first one's entries, and what it saw itself.
pub fn second_book(given: &[Record]) -> Book {
    let mut book = Book::of(given.iter().cloned());
    let mut pen = pen(&book, SECOND_PHONE, "VK", Role::Carpenter);
    let note = Some(Note::new("stain by the washer").unwrap());
    book.add(Record::of(pen.record(Condition { place: None, finding: Finding::Stained, note })).unwrap());
    book
}

pub fn pen(book: &Book, device: DeviceId, initials: &str, role: Role) -> Pen {
    let by = Logger { initials: Text::new(initials).unwrap(), role };
    Pen::new(book.log(), device, Stamp { at: time("2026-10-27T10:00:00-05:00"), by, visit: None })
}

/// The first fact that is picked.
pub fn fact(book: &Book, pick: impl Fn(&Fact) -> bool) -> EntryId {
    *book.job().now.facts().iter().find(|(_, thing)| pick(thing.value)).unwrap().0
}

pub fn first_photo() -> FilePhoto {
    photo(b"\xff\xd8\xff\xe0 an invented picture of joist 2")
}

pub fn photo(bytes: &[u8]) -> FilePhoto {
    FilePhoto::of(bytes, time("2026-10-05T08:31:00-05:00")).unwrap()
}

pub fn first_file() -> JobFile {
    JobFile::of(&first_book(), JOB, 3, made()).with_photos([first_photo(), photo(b"\x89PNG\x0d\x0a\x1a\x0a invented")])
}

pub fn text(file: &JobFile) -> String {
    write::parts(file, &Snapshot::of(&figures())).collect()
}

pub fn figures() -> Vec<SnapshotFigure> {
    let book = first_book();
    let area = room_area(book.job());
    vec![
        SnapshotFigure::of("Room area", &area, |area| format!("{:.1} sq ft", area.to_square_feet())),
        SnapshotFigure::of("Nothing", &Figure::<u8>::Missing(vec![]), ToString::to_string),
    ]
}

/// A title of the second phone's making, under whatever id.
pub fn titled(id: EntryId, title: &str) -> Record {
    let book = Book::default();
    let mut entry =
        pen(&book, id.device, "VK", Role::Carpenter).record(Observation::from(Fact::Title(Label::new(title).unwrap())));
    entry.id = id;
    Record::of(entry).unwrap()
}
