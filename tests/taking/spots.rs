//! Soft spots, notches and holes, taken in the dark: from, to, how deep.

use crate::desk::{Desk, label, length, spot};
use duckboard::engine::framing::{Damage, DamageKind, Depth};
use duckboard::engine::particular::{Part, Particular, Value};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::take::{Instrument, Keys, LookTask, Question, Refused, save_cannot_reach};
use duckboard::engine::units::Length;

fn looking(kind: DamageKind) -> Desk {
    let mut desk = Desk::new();
    desk.draft.instrument = Instrument::Look;
    desk.draft.look = LookTask::Spot(kind);
    desk.draft.spot = spot(4, "5' 1\"");
    desk
}

fn last(desk: &Desk) -> Damage {
    desk.job().now.damages().values().next_back().unwrap().value.clone()
}

fn stretch(damage: &Damage) -> [Length; 2] {
    [&damage.from, &damage.to].map(|typed| typed.as_ref().unwrap().value)
}

fn question(desk: &Desk) -> Question {
    Question::of(&desk.draft, desk.job(), desk.units)
}

#[test]
fn an_awl_takes_from_where_to_where_and_how_deep() {
    let mut desk = looking(DamageKind::Soft);
    assert_eq!(question(&desk).asks, "Joist 4, lower edge: awl, from");
    desk.types("3' 6").unwrap();
    assert_eq!(question(&desk).asks, "Joist 4, lower edge: awl, to");
    desk.types("5'").unwrap();
    assert_eq!((question(&desk).keys, question(&desk).detail.as_str()), (Keys::Depth, "0 if it stops"));
    assert_eq!(desk.job().now.damages().len(), 0, "nothing is logged by halves");
    assert_eq!(desk.types("3/4").unwrap().value, "3/4\"");
    let damage = last(&desk);
    assert_eq!(stretch(&damage), [Length::inches(42), Length::inches(60)]);
    assert_eq!((damage.of, damage.face), (Part::Joist(JoistNumber::new(4).unwrap()), Some(Face::LowerEdge)));
    assert!(matches!(damage.depth, Some(Depth::Is(typed)) if typed.value == Length::sixty_fourths(48)));
    assert_eq!(question(&desk).asks, "Joist 4, lower edge: awl, from", "ready for the next spot");
}

#[test]
fn save_alone_is_one_push_where_the_aim_is() {
    let mut desk = looking(DamageKind::Soft);
    for typed in ["", "", "0"] {
        desk.types(typed).unwrap();
    }
    let damage = last(&desk);
    assert_eq!(stretch(&damage), [Length::inches(61); 2]);
    assert!(!damage.is_bad());
}

#[test]
fn what_nobody_can_get_at_is_a_depth_of_its_own() {
    let mut desk = looking(DamageKind::Soft);
    desk.types("").unwrap();
    desk.types("").unwrap();
    let saved = save_cannot_reach(&desk.draft, desk.book.job(), &mut desk.pen, desk.units).unwrap();
    assert_eq!(desk.takes(saved).value, "cannot reach");
    assert!(last(&desk).depth == Some(Depth::CannotReach) && last(&desk).is_bad());
}

#[test]
fn a_hole_takes_both_its_ends_how_high_it_is_and_the_nearest_edge() {
    let mut desk = looking(DamageKind::Hole);
    for typed in ["30", "31 1/2"] {
        desk.types(typed).unwrap();
    }
    assert_eq!(question(&desk).asks, "Joist 4, lower edge: hole, how high");
    assert_eq!(question(&desk).detail, "30 in to 31 1/2 in; round: as long");
    desk.types("2").unwrap();
    assert_eq!(question(&desk).asks, "Joist 4, lower edge: hole, to the nearest edge");
    assert_eq!(question(&desk).detail, "2 in high");
    desk.types("2 1/4").unwrap();
    let damage = last(&desk);
    assert_eq!(damage.to_edge.as_ref().unwrap().value, Length::sixty_fourths(144));
    assert_eq!((damage.depth(), damage.face), (Some(Length::inches(2)), None));
}

#[test]
fn what_nobody_can_reach_of_a_hole_stays_unsaid() {
    let cannot = |typed: &[&str]| {
        let mut desk = looking(DamageKind::Hole);
        typed.iter().for_each(|typed| drop(desk.types(typed).unwrap()));
        let saved = save_cannot_reach(&desk.draft, desk.book.job(), &mut desk.pen, desk.units).unwrap();
        desk.takes(saved);
        last(&desk)
    };
    let height = cannot(&["30", "31 1/2"]);
    assert_eq!((height.depth, height.to_edge), (Some(Depth::CannotReach), None));
    let edge = cannot(&["30", "31 1/2", "1"]);
    assert_eq!((edge.depth(), edge.to_edge), (Some(Length::INCH), None));
}

/// Refused with the field, the value and what would be accepted.
#[track_caller]
fn refused(desk: &mut Desk, typed: &str) -> String {
    let Err(Refused { message, .. }) = desk.types(typed) else { panic!("{typed} was taken") };
    message
}

#[test]
fn what_is_cut_out_has_a_size() {
    for kind in [DamageKind::Notch, DamageKind::Hole] {
        let mut desk = looking(kind);
        desk.types("3'").unwrap();
        let none = refused(&mut desk, "3'");
        assert!(none.contains("\"3'\": it begins at 3' 0\": more than that is accepted"), "{none}");
        desk.types("3' 1/16").unwrap();
        let none = refused(&mut desk, "0");
        assert!(none.contains("\"0\" is no length: more than 0 is accepted"), "{none}");
        desk.types("1/16").unwrap();
    }
}

/// A joist 7 1/4 in deep, a hole 2 in high: 2 5/8 are left at both edges at most.
#[test]
fn a_hole_lies_within_the_depth_of_its_joist() {
    let hole = |depth_of: Option<Part>| {
        let mut desk = looking(DamageKind::Hole);
        depth_of.into_iter().for_each(|of| {
            desk.log(Particular { of, what: label("depth"), is: Value::Length(length("7 1/4")) });
        });
        ["30", "31"].into_iter().for_each(|typed| drop(desk.types(typed).unwrap()));
        desk
    };
    let four = Part::Joist(JoistNumber::new(4).unwrap());
    for of in [four, Part::Joists] {
        let mut desk = hole(Some(of));
        let message = refused(&mut desk, "7 5/16");
        assert!(message.contains("\"7 5/16\": up to 7 1/4\" is accepted"), "{message}");
        desk.types("2").unwrap();
        let message = refused(&mut desk, "2 11/16");
        assert!(message.contains("\"2 11/16\"") && message.contains("the hole is 2\" high"), "{message}");
        assert!(message.contains("no more than 1 7/8\" is left of 7 1/4\""), "{message}");
        desk.types("2 5/8").unwrap();
    }
    for of in [None, Some(Part::Joist(JoistNumber::new(5).unwrap()))] {
        let mut desk = hole(of);
        ["9", "5"].into_iter().for_each(|typed| drop(desk.types(typed).unwrap()));
    }
}

#[test]
fn what_makes_no_sense_is_refused_with_what_would_do() {
    let mut desk = looking(DamageKind::Soft);
    desk.types("3'").unwrap();
    assert!(refused(&mut desk, "2' 11\"").contains("it begins at 3' 0\": that or more is accepted"));
    let mut desk = looking(DamageKind::Notch);
    desk.types("3'").unwrap();
    assert!(refused(&mut desk, "2' 11\"").contains("it begins at 3' 0\": more than that is accepted"));
    assert!(refused(&mut desk, "").contains("notch to"), "a notch has a length");
    desk.types("3' 2\"").unwrap();
    assert!(refused(&mut desk, "deep").contains("notch depth"));
    let mut desk = looking(DamageKind::Soft);
    desk.draft.spot = Place { element: Element::SubfloorBelow, ..spot(4, "3'") };
    assert!(refused(&mut desk, "3'").contains("a joist by its number"));
    desk.draft.spot = Place { position: Position::Named, ..spot(4, "") };
    assert!(refused(&mut desk, "3'").contains("a joist by its number"));
}

#[test]
fn rim_joist_and_sill_have_spots_of_their_own() {
    let mut desk = looking(DamageKind::Soft);
    for (element, part) in [(Element::Sill, Part::Sill), (Element::RimJoist, Part::RimJoist)] {
        desk.draft.spot = Place { element, ..spot(4, "") };
        for typed in ["3'", "4'", "1/2"] {
            desk.types(typed).unwrap();
        }
        assert_eq!(last(&desk).of, part);
    }
}
