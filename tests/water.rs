//! The water page: every card answers or says what to do, with its reasons and marks.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

mod desk;

use desk::{Desk, length, percent};
use duckboard::draw::card::{Ask, Card, Tone};
use duckboard::draw::water::water;
use duckboard::draw::{Canvas, Item, Role, svg};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::DeviceId;
use duckboard::engine::job::{Book, Job, Observation, Record};
use duckboard::engine::moisture::{Material, Reading, Shown, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::sample;
use duckboard::engine::take::Units;

const CANVAS: Canvas = Canvas { width_px: 358, height_px: 300 };

fn sample_book() -> Book {
    Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()))
}

fn page(job: &Job) -> Vec<Card> {
    water(job, Units::default(), CANVAS)
}

fn card(job: &Job, title: &str) -> Card {
    let cards = page(job);
    let titles: Vec<_> = cards.iter().map(|card| card.title.clone()).collect();
    cards.into_iter().find(|card| card.title.starts_with(title)).unwrap_or_else(|| panic!("{titles:?}"))
}

fn said(card: &Card) -> String {
    card.lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>().join("\n")
}

/// Every mark's words, as a figure shows them.
const MARKS: [&str; 5] =
    ["published", "published, seen as quoted", "computed here", "from memory", "common practice, no source"];

#[test]
fn every_answer_has_its_reasons_with_a_mark() {
    let book = sample_book();
    for card in page(book.job()).iter().filter(|card| !["Checklist", "Next check"].contains(&&*card.title)) {
        let small: Vec<_> = card.lines.iter().filter(|line| line.tone == Tone::Small).collect();
        let has_mark = |text: &str| MARKS.iter().any(|mark| text.contains(&format!("{mark})")));
        assert!(small.iter().any(|line| has_mark(&line.text)), "{}: {small:?}", card.title);
    }
}

#[test]
fn a_job_that_knows_nothing_says_what_to_do_on_every_card() {
    let desk = Desk::new();
    for card in page(desk.job()) {
        assert!(!card.headline.is_empty() || !card.asks.is_empty(), "{card:?}");
        assert_ne!(card.headline, "Close", "nothing is closed unread");
        let next = card.lines.iter().filter(|line| line.tone == Tone::Next);
        next.for_each(|line| assert!(!line.text.starts_with("Next"), "the page says that by itself: {}", line.text));
    }
    let asks = card(desk.job(), "Checklist").asks;
    assert!(asks.len() > 15 && !asks.iter().any(Ask::is_answered));
}

#[test]
fn the_map_is_drawn_with_its_readings_its_limit_and_the_next_reading() {
    let book = sample_book();
    let card = card(book.job(), "How far does it go? Framing");
    let drawing = card.drawing.unwrap();
    let count = |role: Role| drawing.items.iter().filter(|item| item.role() == role).count();
    assert_eq!((count(Role::Reading), count(Role::Cursor)), (15, 1));
    assert!(count(Role::MapCell) > 50 && count(Role::Contour) > 5);
    let strengths = drawing
        .items
        .iter()
        .filter_map(|item| if let Item::Area { percent, .. } = item { Some(*percent) } else { None });
    let (least, most) = strengths.fold((100, 0), |(least, most), it| (least.min(it), most.max(it)));
    assert!(least < most && most <= 85, "it fades where nothing supports it: {least} to {most}");
    assert!(roxmltree::Document::parse(&svg::write(&drawing)).is_ok());
    let said = said_next(book.job());
    assert!(said.contains("from the north wall"), "in a carpenter's words");
    assert!(said.contains("Read joist") && !said.contains("Next"), "what to do, and the page says next: {said}");
}

fn said_next(job: &Job) -> String {
    said(&card(job, "How far does it go? Framing"))
}

#[test]
fn the_opening_that_is_offered_takes_all_wet_out_once_it_is_accepted() {
    let book = sample_book();
    let act = card(book.job(), "How far does it go? Framing").act.unwrap();
    let Observation::Opening(opening) = &act.logs else { panic!("{act:?}") };
    assert!(opening.length.value.is_positive() && opening.width.value.is_positive());
    let records = book.log().records().cloned();
    let mut desk = Desk::of(Book::of(records));
    desk.log(act.logs.clone());
    assert_eq!(desk.job().now.openings().len(), 2);
}

#[test]
fn decayed_wood_is_for_the_probe_whatever_the_meter_says() {
    let mut desk = Desk::new();
    let position = Position::OnJoist { joist: JoistNumber::new(2).unwrap(), along: Some(length("3'")) };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    let shown = Shown::Percent(percent("13"));
    let wood = Wood { material: Material::Solid, species: None };
    desk.log(Reading { place, meter: None, shown, wood, wood_temperature: None });
    assert!(!said(&card(desk.job(), "What do the readings say?")).contains("probe"));
    desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
    assert!(said(&card(desk.job(), "What do the readings say?")).contains("probe it"));
}

#[test]
fn ventilating_is_judged_by_vapor_and_by_where_wood_would_end() {
    let book = sample_book();
    // 49 °F and 64 % outdoors against 57 °F and 70 %: drier, and wood ends near 9 %.
    let card = card(book.job(), "Would it dry by ventilating alone?");
    assert!(card.headline.starts_with("It can"), "{}", card.headline);
    assert!(said(&card).contains("grains of vapor"), "{}", said(&card));
}
