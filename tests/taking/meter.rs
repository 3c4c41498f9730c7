//! The meter: numbers that are not believed are asked about once, and the wood belongs to
//! its place.

use super::desk::{Desk, spot};
use super::{at_meter, last_reading};
use duckboard::engine::entry::{EntryId, Label};
use duckboard::engine::moisture::{
    Answer, Bounds, Material, Meter, Outside, Reading, Sensing, Shown, Species, Stands, Wood,
};
use duckboard::engine::place::{Element, Face, Place, Position};
use duckboard::engine::results::{corrected, panel_references, readings};
use duckboard::engine::take::{self, Anyway, AtSpot, InHand, Question};
use duckboard::engine::units::decimal::parse_moisture_content;

/// Invented: pins that show 6 to 40 %.
fn pins() -> Meter {
    Meter {
        label: Label::new("pins").unwrap(),
        sensing: Sensing::Pin,
        scale: Some(Species::DouglasFir),
        reference: None,
        corrects_temperature: Answer::No,
        corrects_species: Answer::No,
        minimum: Some(parse_moisture_content("6").unwrap()),
        maximum: Some(parse_moisture_content("40").unwrap()),
    }
}

fn with_pins() -> Desk {
    let mut desk = at_meter(4, "5'");
    desk.meter = Some(desk.log(pins()));
    desk
}

fn anyway(desk: &mut Desk, text: &str, answer: Anyway) -> String {
    desk.draft.text = text.to_owned();
    let meter = desk.meter.map(|meter| InHand::of(desk.book.job(), meter));
    let saved = take::save_anyway(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, meter, answer).unwrap();
    desk.takes(saved).value
}

#[test]
fn a_number_is_taken_up_to_its_bound_and_asked_about_beyond() {
    for (text, outside) in [
        ("5.99", Some(Outside::Under)),
        ("6", None),
        ("6.01", None),
        ("39.99", None),
        ("40", None),
        ("40.01", Some(Outside::Over)),
    ] {
        let mut desk = with_pins();
        match (desk.types(text), outside) {
            (Ok(_), None) => assert!(!last_reading(&desk).doubted, "{text}"),
            (Err(refused), Some(outside)) => {
                assert_eq!(refused.outside, Some(outside), "{text}");
                assert!(refused.message.contains("that this meter shows"), "{}", refused.message);
                assert_eq!(desk.job().now.readings().len(), 0, "nothing is logged before the answer");
            }
            (taken, _) => panic!("{text}: {taken:?}"),
        }
    }
    // Without a meter, what wood under a roof is likely to have.
    for (text, is_taken) in [("3.99", false), ("4", true), ("60", true), ("60.01", false)] {
        assert_eq!(at_meter(4, "5'").types(text).is_ok(), is_taken, "{text}");
    }
    // What is no moisture content at all is no question.
    assert_eq!(at_meter(4, "5'").types("wet").unwrap_err().outside, None);
}

#[test]
fn a_number_kept_in_doubt_keeps_what_was_typed_and_is_drawn_as_none() {
    let mut desk = with_pins();
    assert_eq!(anyway(&mut desk, "180", Anyway::Kept), "180 %, doubted");
    let reading = last_reading(&desk);
    assert_eq!((reading.doubted, reading.typed_first.as_ref()), (true, None));
    assert_eq!(reading.shown, Shown::Percent(parse_moisture_content("180").unwrap()));
    let (_, _, known) = readings(desk.job()).pop().unwrap();
    assert_eq!((known.value.corrected.number(), known.value.doubted), (None, true));
    assert_eq!(super::desk::joist_of(&desk.draft.spot), 5, "and the place moves on");
}

#[test]
fn a_number_that_was_off_the_scale_is_logged_as_that_with_what_was_typed() {
    for (text, shown) in [("180", Shown::OverMaximum), ("2", Shown::UnderMinimum)] {
        let mut desk = with_pins();
        anyway(&mut desk, text, Anyway::OffScale);
        let reading = last_reading(&desk);
        assert_eq!((&reading.shown, reading.doubted), (&shown, false));
        assert_eq!(reading.typed_first, Some(parse_moisture_content(text).unwrap()));
    }
}

#[test]
fn an_answer_to_a_number_that_is_believed_after_all_changes_nothing() {
    let mut desk = with_pins();
    assert_eq!(anyway(&mut desk, "18", Anyway::Kept), "18 %");
    let reading = last_reading(&desk);
    assert_eq!((reading.doubted, reading.typed_first), (false, None));
}

#[test]
fn under_the_minimum_is_a_reading_and_moves_on() {
    let mut desk = with_pins();
    let meter = desk.meter.map(|meter| InHand::of(desk.book.job(), meter));
    let saved = take::save_off_scale(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, meter, Outside::Under);
    assert_eq!(desk.takes(saved.unwrap()).value, "under minimum");
    assert_eq!(last_reading(&desk).shown, Shown::UnderMinimum);
    let (id, reading, _) = readings(desk.job()).pop().unwrap();
    let least = parse_moisture_content("6").unwrap().value;
    assert_eq!(corrected(desk.job(), id, reading).value.corrected, Stands::Under(least));
}

#[test]
fn a_meter_that_the_job_does_not_know_yet_bounds_its_first_reading() {
    let mut desk = at_meter(4, "5'");
    let entry = desk.next_id();
    desk.draft.text = "180".to_owned();
    let meter = InHand { entry, bounds: Bounds::of(Some(&pins())) };
    let refused = take::save(&desk.draft, desk.book.job(), &mut desk.pen, desk.units, Some(meter)).unwrap_err();
    assert!(refused.message.contains("40.0 % that this meter shows"), "{}", refused.message);
}

#[test]
fn a_number_typed_again_is_a_number_and_no_doubt_of_before_stays() {
    let mut desk = with_pins();
    anyway(&mut desk, "180", Anyway::Kept);
    let typed = take::retyped(desk.job(), &last_reading(&desk).into(), "18", desk.units).unwrap();
    let duckboard::engine::job::Observation::Reading(again) = typed else { panic!("{typed:?}") };
    assert_eq!((again.doubted, again.typed_first), (false, None));
}

#[test]
fn a_reading_of_before_says_nothing_new_and_opens_unchanged() {
    let place = EntryId { count: 7, device: duckboard::engine::entry::DeviceId::new(1) };
    let json = format!(r#"{{"place":"{place}","shown":"over_maximum","wood":{{"material":"solid"}}}}"#);
    let reading: Reading = serde_json::from_str(&json).unwrap();
    assert_eq!(serde_json::to_string(&reading).unwrap(), json);
    assert_eq!((reading.doubted, reading.reference, reading.typed_first), (false, false, None));
    let meter = r#"{"label":"pins","sensing":"pin","corrects_temperature":"no","corrects_species":"no"}"#;
    let read: Meter = serde_json::from_str(meter).unwrap();
    assert_eq!((read.minimum.as_ref(), serde_json::to_string(&read).unwrap().as_str()), (None, meter));
}

fn plywood() -> Wood {
    Wood { material: Material::Plywood, species: None }
}

fn hem_fir() -> Wood {
    Wood { material: Material::Solid, species: Some(Species::HemFir) }
}

fn below(joist: u16) -> Place {
    Place { element: Element::SubfloorBelow, face: None, ..spot(joist, "5'") }
}

fn detail(desk: &Desk) -> String {
    Question::of(&desk.draft, desk.job(), desk.units).detail
}

#[test]
fn a_place_read_again_keeps_its_wood_and_its_face_and_take_shows_them() {
    let mut desk = Desk::new();
    desk.draft = desk.draft.with(take::Instrument::Meter);
    desk.visit("first");
    for (place, wood) in [(spot(4, "5'"), hem_fir()), (below(4), plywood())] {
        desk.draft.spot = place;
        desk.draft = desk.draft.reading_wood(wood);
        desk.types("18").unwrap();
    }
    desk.visit("second");
    desk.draft.spot = spot(4, "5'");
    assert_eq!(detail(&desk), "5' 0\" along · hem-fir");
    desk.types("15").unwrap();
    assert_eq!(last_reading(&desk).wood, hem_fir());
    assert!(desk.draft.spot.same_spot(&below(4)), "the next place that was read");
    assert_eq!(detail(&desk), "5' 0\" along · plywood");
    desk.types("9").unwrap();
    assert_eq!(last_reading(&desk).wood, plywood());
    assert_eq!(desk.job().now.places().len(), 2, "and no place was made twice");
    let faces: Vec<_> = desk.job().now.places().values().map(|place| place.value.face).collect();
    assert_eq!(faces, [Some(Face::LowerEdge), None]);
}

#[test]
fn a_new_place_begins_with_the_wood_of_its_part_of_the_floor() {
    let mut desk = at_meter(4, "5'");
    desk.draft = desk.draft.reading_wood(hem_fir());
    desk.types("18").unwrap();
    assert_eq!(AtSpot::of(&desk.draft, desk.job()).wood, hem_fir(), "joist 5 is as joist 4");
    desk.draft.spot = below(5);
    assert_eq!(AtSpot::of(&desk.draft, desk.job()).wood.material, Material::Unknown, "a panel is no joist");
    assert!(detail(&desk).ends_with("wood not said"), "{}", detail(&desk));
    desk.draft = desk.draft.reading_wood(plywood());
    desk.types("9").unwrap();
    desk.draft.spot = Place { element: Element::SubfloorAbove, ..below(7) };
    assert_eq!(AtSpot::of(&desk.draft, desk.job()).wood, plywood(), "the same panel from above");
    for element in [Element::Joist, Element::RimJoist, Element::Sill, Element::Girder] {
        desk.draft.spot = Place { element, ..spot(9, "3'") };
        assert_eq!(AtSpot::of(&desk.draft, desk.job()).wood, hem_fir(), "{element:?}");
    }
    desk.draft.spot = Place { element: Element::FinishedFloor, ..below(7) };
    assert_eq!(AtSpot::of(&desk.draft, desk.job()).wood.material, Material::Unknown);
}

#[test]
fn what_is_said_of_a_spot_now_is_stronger_than_what_was_read_there() {
    let mut desk = at_meter(4, "5'");
    desk.types("18").unwrap();
    desk.draft.spot = spot(4, "5'");
    desk.draft = desk.draft.reading_wood(hem_fir());
    desk.types("18").unwrap();
    assert_eq!(last_reading(&desk).wood, hem_fir());
    desk.draft.spot = spot(4, "60 in");
    assert_eq!(AtSpot::of(&desk.draft, desk.job()).wood, hem_fir());
}

#[test]
fn a_dry_panel_elsewhere_is_read_once_and_the_spot_comes_back() {
    let mut desk = at_meter(4, "5'");
    let visit = desk.visit("first");
    desk.draft.spot = below(4);
    desk.draft = desk.draft.reading_wood(plywood());
    desk.types("12").unwrap();
    let on = desk.draft.spot.clone();
    let references = |desk: &Desk, kind| panel_references(desk.job(), Some(visit), kind);
    assert_eq!(references(&desk, Material::Plywood), []);

    desk.draft = desk.draft.reading_reference(Material::Plywood);
    assert_eq!(desk.draft.spot.position, Position::Named);
    assert!(detail(&desk).contains("dry plywood elsewhere"), "{}", detail(&desk));
    desk.types("8").unwrap();
    assert!(last_reading(&desk).reference);
    assert_eq!(desk.draft.spot, on);
    let at: Vec<_> = references(&desk, Material::Plywood).iter().map(|reference| reference.at).collect();
    assert_eq!(at, [Stands::At(parse_moisture_content("8").unwrap().value)]);
    assert_eq!(references(&desk, Material::Osb), [], "of its own kind only");

    desk.types("11").unwrap();
    assert!(!last_reading(&desk).reference, "what follows is no reference");
}

#[test]
fn a_reference_is_of_its_visit_and_never_in_doubt() {
    let mut desk = at_meter(4, "5'");
    let first = desk.visit("first");
    let reads = |desk: &mut Desk, text: &str| {
        desk.draft = desk.draft.reading_reference(Material::Osb);
        desk.types(text).unwrap();
    };
    reads(&mut desk, "8");
    reads(&mut desk, "9");
    let at = |desk: &Desk, visit| {
        let all = panel_references(desk.job(), Some(visit), Material::Osb);
        all.iter().map(|it| it.at).collect::<Vec<_>>()
    };
    let percent = |text: &str| Stands::At(parse_moisture_content(text).unwrap().value);
    assert_eq!(at(&desk, first), [percent("8"), percent("9")]);
    let second = desk.visit("second");
    assert_eq!(at(&desk, second), [], "the dry panel of another day");
    desk.draft = desk.draft.reading_reference(Material::Osb);
    anyway(&mut desk, "180", Anyway::Kept);
    assert_eq!(at(&desk, second), [], "in doubt");
    // The place was a reference before, so it is one again.
    desk.draft.spot = desk.draft.reading_reference(Material::Osb).spot;
    desk.draft.wood_at = None;
    assert!(AtSpot::of(&desk.draft, desk.job()).reference);
    desk.types("7").unwrap();
    assert_eq!(at(&desk, second), [percent("7")]);
    assert_eq!(desk.job().now.places().len(), 1);
}
