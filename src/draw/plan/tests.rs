use super::*;
use crate::draw::px::Stroke;
use crate::draw::{Role, Spot};
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

/// The stated fallback: a room with up to twenty-four sides and jogs of 4 in, on a
/// phone, may leave this many of a thousand lengths to be read beside the drawing
/// (measured: fewer than one). None may ever cover another.
const UNPLACED_PER_THOUSAND: usize = 2;

#[test]
fn no_text_covers_another_in_five_hundred_random_rooms_and_few_find_no_place() {
    let mut runner = TestRunner::deterministic();
    let (mut sides, mut unplaced) = (0, 0);
    for number in 0..500 {
        let corners = rooms::any_room().new_tree(&mut runner).unwrap().current();
        let outline = Outline::new(corners).unwrap();
        let drawing = plan(&room(outline.clone()), PHONE, View { from_below: number % 2 == 0 });
        assert_eq!(check_texts(&drawing), Ok(()), "room {number}: {:?}", outline.corners());
        let placed = count(&drawing, Role::DimensionText);
        assert_eq!(placed + drawing.unplaced.len(), outline.corners().len(), "each is placed or owned up to");
        sides += outline.corners().len();
        unplaced += drawing.unplaced.len();
    }
    assert!(unplaced * 1_000 <= sides * UNPLACED_PER_THOUSAND, "{unplaced} of {sides} found no place");
}

#[test]
fn everything_known_of_the_laundry_is_drawn() {
    let drawing = plan(&laundry(), PHONE, ABOVE);
    let counts = [
        (Role::Floor, 1),
        (Role::Wall, 1),
        (Role::Joist, 9),
        (Role::JoistNumber, 9),
        (Role::Dimension, 6),
        (Role::Tick, 12),
        (Role::DimensionText, 6),
        (Role::Opening, 1),
        (Role::OpeningLabel, 1),
        (Role::Reading, 8),
        (Role::Unread, 1),
        (Role::Cursor, 1),
        (Role::North, 2),
        (Role::NorthText, 1),
        (Role::WallOpen, 0),
        (Role::Gap, 0),
    ];
    for (role, expected) in counts {
        assert_eq!(count(&drawing, role), expected, "{role:?}");
    }
    assert_eq!(drawing.unplaced, [""; 0]);
}

#[test]
fn what_stands_in_the_floor_is_named_and_both_floors_have_their_lines() {
    let mut input = laundry();
    let at = |x, y| Point::new(Length::inches(x), Length::inches(y));
    let rect = |from, to| Rect::between(from, to).unwrap();
    input.standing = vec![Opening { rect: rect(at(100, 10), at(124, 30)), label: "Post".to_owned() }];
    input.cut_backs = vec![rect(at(19, 40), at(83, 102))];
    input.finish_lines = vec![rect(at(16, 37), at(86, 105))];
    let drawing = plan(&input, DESK, ABOVE);
    for role in [Role::Standing, Role::StandingLabel, Role::CutBack, Role::FinishLine] {
        assert_eq!(count(&drawing, role), 1, "{role:?}");
    }
}

#[test]
fn every_reading_has_its_number_on_its_disc_from_above_and_from_below() {
    for view in [ABOVE, BELOW] {
        let drawing = plan(&laundry(), PHONE, view);
        let numbers: Vec<_> = drawing.of(Role::OnLight).chain(drawing.of(Role::OnDark)).collect();
        assert_eq!(numbers.len(), 8);
        for disc in drawing.of(Role::Reading) {
            let Item::Disc { at: disc, fill: Some(_), .. } = disc else { panic!("{disc:?} has no colour") };
            assert!(numbers.iter().any(|number| matches!(number, Item::Text { at, .. } if at == disc)));
        }
    }
}

#[test]
fn only_readings_bring_a_colour() {
    for item in plan(&laundry(), DESK, ABOVE).items {
        if let Item::Disc { fill, role, .. } = item {
            assert_eq!(fill.is_some(), role == Role::Reading, "{role:?}");
        }
    }
}

#[test]
fn wetter_readings_lie_over_drier_ones_and_marked_ones_over_all() {
    let mut input = laundry();
    input.readings[0].mark = ReadingMark::Flagged;
    let drawing = plan(&input, PHONE, ABOVE);
    let numbers: Vec<_> = drawing
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Text { text, role: Role::OnLight | Role::OnDark, .. } => Some(text.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(numbers, ["13", "15", "16", "19", "23", "24", "27", "14"]);
    assert_eq!(count(&drawing, Role::ReadingFlag), 1);
}

#[test]
fn from_below_all_places_are_mirrored_about_one_line() {
    let spots = |view| -> Vec<Spot> {
        let drawing = plan(&laundry(), PHONE, view);
        let discs = drawing.items.iter().filter_map(|item| match item {
            Item::Disc { at, .. } | Item::Target { at, .. } => Some(*at),
            _ => None,
        });
        discs.collect()
    };
    let (above, below) = (spots(ABOVE), spots(BELOW));
    assert_eq!(above.len(), below.len());
    let line = above[0].x + below[0].x;
    for (a, b) in above.iter().zip(&below) {
        assert!((a.y - b.y).abs() < 1e-9 && (a.x + b.x - line).abs() < 1e-9, "{a:?} {b:?}");
    }
}

#[test]
fn from_below_the_north_arrow_turns_with_the_plan() {
    let letter_is_right_of_arrow = |view| {
        let drawing = plan(&laundry(), PHONE, view);
        let letter = drawing.of(Role::NorthText).next().cloned();
        let stem = drawing.of(Role::North).next().cloned();
        let (Some(Item::Text { at, .. }), Some(Item::Line { from, .. })) = (letter, stem) else { panic!("no arrow") };
        at.x > from.x
    };
    assert!(letter_is_right_of_arrow(ABOVE), "north is East on this plan");
    assert!(!letter_is_right_of_arrow(BELOW));
}

#[test]
fn a_joist_across_a_notch_is_drawn_in_parts() {
    let u = rooms::outline(&[(0, 0), (60, 0), (60, 70), (100, 70), (100, 0), (160, 0), (160, 130), (0, 130)]);
    let mut input = room(u);
    let joist = Joist { at: Length::inches(30), number: 1 };
    input.joists = Some(Joists { run: Axis::X, joists: vec![joist] });
    let drawing = plan(&input, PHONE, ABOVE);
    assert_eq!(count(&drawing, Role::Joist), 2);
    assert_eq!(count(&drawing, Role::JoistNumber), 1);
}

#[test]
fn a_joist_beside_the_room_is_neither_drawn_nor_numbered() {
    let mut input = laundry();
    let beyond = Joist { at: Length::inches(500), number: 33 };
    input.joists.as_mut().unwrap().joists.push(beyond);
    let drawing = plan(&input, PHONE, ABOVE);
    assert_eq!((count(&drawing, Role::Joist), count(&drawing, Role::JoistNumber)), (9, 9));
}

#[test]
fn where_joists_crowd_every_fifth_keeps_its_number() {
    let mut input = room(rooms::outline(&[(0, 0), (600, 0), (600, 300), (0, 300)]));
    input.walls = match input.walls {
        Walls::Closed { outline, .. } => Walls::Closed { outline, sides: Vec::new() },
        open => open,
    };
    let drawing = plan(&input, PHONE, ABOVE);
    assert_eq!(count(&drawing, Role::Joist), 37);
    assert_eq!(count(&drawing, Role::JoistNumber), 7, "5, 10, … 35");
    assert_eq!(check_texts(&drawing), Ok(()));
}

#[test]
fn a_half_walked_room_shows_where_it_began_and_where_it_has_got_to() {
    let corners = rooms::corners(&[(0, 0), (140, 0), (140, 74), (92, 74)]);
    let sides = ["11' 8\"", "6' 2\"", "4' 0\""].map(String::from).to_vec();
    let input = PlanInput { walls: Walls::Open { corners, sides }, ..PlanInput::default() };
    let drawing = plan(&input, PHONE, ABOVE);
    for role in [Role::WallOpen, Role::WallStart, Role::WallEnd] {
        assert_eq!(count(&drawing, role), 1, "{role:?}");
    }
    assert_eq!((count(&drawing, Role::Wall), count(&drawing, Role::Floor)), (0, 0));
    assert_eq!(count(&drawing, Role::DimensionText), 3);
    assert_eq!(check_texts(&drawing), Ok(()));
}

#[test]
fn the_strings_of_a_half_walked_room_lie_on_the_side_it_turns_away_from() {
    for (view, backwards) in [(ABOVE, false), (BELOW, false), (ABOVE, true), (BELOW, true)] {
        let y = if backwards { -74 } else { 74 };
        let corners = rooms::corners(&[(0, 0), (140, 0), (140, y)]);
        let sides = vec!["11' 8\"".to_owned()];
        let input = PlanInput { walls: Walls::Open { corners, sides }, ..PlanInput::default() };
        let drawing = plan(&input, PHONE, view);
        let frame = drawing.frame.unwrap();
        let (wall, inside) = (frame.spot(at(0, 0)).y, frame.spot(at(0, y)).y);
        let Some(Item::Line { from, .. }) = drawing.of(Role::Dimension).next() else { panic!("no string") };
        assert!((from.y - wall).signum() != (inside - wall).signum(), "{view:?} {backwards}");
    }
}

#[test]
fn a_side_without_length_still_has_its_text() {
    let corners = rooms::corners(&[(0, 0), (140, 0), (140, 0)]);
    let sides = vec!["11' 8\"".to_owned(), "0\"".to_owned()];
    let walls = Walls::Open { corners, sides };
    let drawing = plan(&PlanInput { walls, ..PlanInput::default() }, PHONE, ABOVE);
    assert_eq!(count(&drawing, Role::DimensionText) + drawing.unplaced.len(), 2);
}

#[test]
fn a_gap_is_ringed_and_named() {
    let corners = rooms::corners(&[(0, 0), (140, 0), (140, 118), (0, 118), (0, 2)]);
    let gap = Gap { from: at(0, 0), to: at(0, 2), text: "gap 2\"".into() };
    let walls = Walls::Open { corners, sides: Vec::new() };
    let drawing = plan(&PlanInput { walls, gap: Some(gap), ..PlanInput::default() }, PHONE, ABOVE);
    assert_eq!((count(&drawing, Role::Gap), count(&drawing, Role::GapText)), (2, 1));
    assert_eq!(check_texts(&drawing), Ok(()));
}

#[test]
fn a_plan_of_nothing_shows_the_note_alone() {
    let input = PlanInput { note: Some("no sides yet".into()), ..PlanInput::default() };
    let drawing = plan(&input, PHONE, ABOVE);
    assert_eq!((drawing.items.len(), count(&drawing, Role::Note)), (1, 1));
    assert!(drawing.frame.is_none());
    assert!(plan(&PlanInput::default(), PHONE, ABOVE).items.is_empty());
}

#[test]
fn without_walls_joists_are_drawn_along_the_readings() {
    let joists = (0..4).map(|n| Joist { at: Length::inches(16 * n), number: n as u32 + 1 }).collect();
    let mut input = PlanInput { joists: Some(Joists { run: Axis::Y, joists }), ..PlanInput::default() };
    let alone = plan(&input, PHONE, ABOVE);
    assert_eq!((count(&alone, Role::Joist), count(&alone, Role::JoistNumber)), (4, 4));
    input.readings = vec![reading(at(0, 10), 14), reading(at(48, 90), 18)];
    let drawing = plan(&input, PHONE, ABOVE);
    let frame = drawing.frame.unwrap();
    for joist in drawing.of(Role::Joist) {
        let Item::Line { from, to, .. } = joist else { panic!("{joist:?}") };
        let ends = (frame.point(*from).y.to_inches(), frame.point(*to).y.to_inches());
        assert!((ends.0 - 10.0).abs() < 0.01 && (ends.1 - 90.0).abs() < 0.01, "{ends:?}");
    }
}

#[test]
fn no_letter_is_smaller_than_thirteen_pixels() {
    for canvas in [PHONE, DESK, Canvas { width_px: 320, height_px: 120 }] {
        for item in plan(&laundry(), canvas, ABOVE).items {
            if let Item::Text { size, text, .. } = item {
                assert!(size >= 13.0, "{text}: {size}");
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_canvas_gets_a_drawing_of_finite_numbers(width_px in 0_u32..2_000, height_px in 0_u32..2_000, from_below: bool) {
        let drawing = plan(&laundry(), Canvas { width_px, height_px }, View { from_below });
        let svg = crate::draw::svg::write(&drawing);
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        prop_assert_eq!(count(&drawing, Role::Reading), 8);
    }

    #[test]
    fn wherever_readings_lie_no_other_text_covers_their_numbers(
        places in prop::collection::vec((0_i32..140, 0_i32..74), 0..20), from_below: bool,
    ) {
        let mut input = laundry();
        input.readings = places.iter().map(|&(x, y)| reading(at(x, y), 18)).collect();
        let drawing = plan(&input, PHONE, View { from_below });
        let boxes = text_boxes(&drawing);
        let (numbers, others): (Vec<_>, Vec<_>) = boxes.into_iter().partition(|(text, _)| text == "18");
        // Joists' numbers keep off discs as far as their row can move; dimensions and names always do.
        let others = others.iter().filter(|(text, _)| text.parse::<u32>().is_err());
        for (text, area) in others {
            prop_assert!(!numbers.iter().any(|(_, number)| number.overlaps(*area)), "{text} covers a reading");
        }
    }
}
