use super::*;
use crate::draw::px::Stroke;
use crate::draw::{Reads, Role, Spot};
use crate::engine::geometry::{Axis, Heading, Outline, Point, Rect, rooms};
use crate::engine::units::{Length, MoistureContent};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

const PHONE: Canvas = Canvas { width_px: 374, height_px: 250 };
const DESK: Canvas = Canvas { width_px: 760, height_px: 520 };
const ABOVE: View = View { from_below: false };
const BELOW: View = View { from_below: true };

fn at(x: i32, y: i32) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

/// A closed room with its sides in feet and inches, joists 16 in apart.
fn room(outline: Outline) -> PlanInput {
    let inches = |length: Length| libm::round(length.to_inches()) as i64;
    let text = |inches| format!("{}' {}\"", inches / 12, inches % 12);
    let sides = outline.sides().map(|side| text(inches(side.length()))).collect();
    let bounds = outline.bounds();
    let count = inches(bounds.width()) as i32 / 16;
    let joist = |n| Joist { at: bounds.least().x + Length::inches(4 + 16 * n), number: n as u32 + 1 };
    PlanInput {
        title: "A room".into(),
        walls: Walls::Closed { outline, sides },
        joists: Some(Joists { run: Axis::Y, joists: (0..count).map(joist).collect() }),
        ..PlanInput::default()
    }
}

fn reading(at: Point, percent: u16) -> Reading {
    Reading { at, text: percent.to_string(), moisture: MoistureContent::percent(percent), mark: ReadingMark::Plain }
}

/// An L of 11' 8" by 9' 10" with an opening, nine joists and readings on them.
fn laundry() -> PlanInput {
    let ell = rooms::outline(&[(0, 0), (140, 0), (140, 74), (92, 74), (92, 118), (0, 118)]);
    let mut input = room(ell);
    if let Some(joists) = &mut input.joists {
        joists.joists.push(Joist { at: Length::inches(132), number: 9 });
    }
    let places =
        [(2, 20, 14), (2, 60, 15), (2, 100, 16), (3, 64, 19), (4, 64, 24), (5, 64, 23), (4, 98, 27), (8, 40, 13)];
    input.readings = places.map(|(joist, y, percent)| reading(at(16 * joist - 12, y), percent)).to_vec();
    input.openings = vec![Opening { rect: Rect::between(at(36, 40), at(84, 100)).unwrap(), label: "out".into() }];
    input.unread = vec![at(132, 40)];
    input.cursor = Some(at(84, 98));
    input.north = Some(Heading::East);
    input
}

/// The boxes of all texts, as the layout reckons them.
fn text_boxes(drawing: &Drawing) -> Vec<(String, PxBox)> {
    let lettering = Lettering::on(drawing.canvas);
    let texts = drawing.items.iter().filter_map(|item| match item {
        Item::Text { at, reads, text, role, .. } => {
            let heavy = matches!(role, Role::OnLight | Role::OnDark);
            let text = if heavy { lettering.measure_heavy(text) } else { lettering.measure(text) };
            Some((text.text.to_owned(), text.around(*at, *reads)))
        }
        _ => None,
    });
    texts.collect()
}

/// No text covers another, leaves the canvas or lies on a wall.
fn check_texts(drawing: &Drawing) -> Result<(), String> {
    let boxes = text_boxes(drawing);
    let (right, bottom) = (f64::from(drawing.canvas.width_px), f64::from(drawing.canvas.height_px));
    let sheet = PxBox { left: 0.0, top: 0.0, right, bottom };
    let walls: Vec<_> = drawing.of(Role::Wall).flat_map(path_sides).collect();
    for (place, (text, area)) in boxes.iter().enumerate() {
        if !area.is_within(sheet) {
            return Err(format!("{text} leaves the canvas"));
        }
        if let Some((other, _)) = boxes.iter().skip(place + 1).find(|(_, other)| other.overlaps(*area)) {
            return Err(format!("{text} covers {other}"));
        }
        if walls.iter().any(|wall| area.is_hit_by(*wall)) {
            return Err(format!("{text} lies on a wall"));
        }
    }
    Ok(())
}

fn path_sides(item: &Item) -> Vec<Stroke> {
    let Item::Path { spots, .. } = item else {
        return Vec::new();
    };
    spots.iter().zip(spots.iter().cycle().skip(1)).map(|(from, to)| Stroke::new(*from, *to)).collect()
}

fn count(drawing: &Drawing, role: Role) -> usize {
    drawing.of(role).count()
}

#[test]
fn the_usual_rooms_have_a_dimension_on_every_side_and_no_text_on_another() {
    for (name, outline) in rooms::named() {
        for (canvas, view) in [(PHONE, ABOVE), (PHONE, BELOW), (DESK, ABOVE), (DESK, BELOW)] {
            let sides = outline.corners().len();
            let drawing = plan(&room(outline.clone()), canvas, view);
            assert_eq!(check_texts(&drawing), Ok(()), "{name}");
            assert_eq!(drawing.unplaced, [""; 0], "{name}");
            assert_eq!(count(&drawing, Role::DimensionText), sides, "{name}");
        }
    }
}

#[test]
fn zz_stats() {
    for canvas in [PHONE, DESK, Canvas { width_px: 374, height_px: 560 }] {
        let mut runner = TestRunner::deterministic();
        let (mut sides, mut un, mut led, mut rooms_with) = (0, 0, 0, 0);
        for _ in 0..500 {
            let corners = rooms::any_room().new_tree(&mut runner).unwrap().current();
            sides += corners.len();
            let d = plan(&room(Outline::new(corners).unwrap()), canvas, ABOVE);
            check_texts(&d).unwrap();
            un += d.unplaced.len();
            led += count(&d, Role::Leader);
            rooms_with += usize::from(!d.unplaced.is_empty());
        }
        eprintln!("{canvas:?} sides {sides} unplaced {un} in {rooms_with} rooms, led {led}");
    }
}
