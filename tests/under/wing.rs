//! A joist of a wing begins later than the first corner: spans are from where it begins.

use crate::desk::Desk;
use crate::house::{inches, joist, make_sound, one, says};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::framing::{DamageKind, Fate, Judged};
use duckboard::engine::geometry::Turn;
use duckboard::engine::moisture::Material;
use duckboard::engine::particular::list::*;
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::survey::{AlongFrom, Joists, Run};

const LOWER: Option<Face> = Some(Face::LowerEdge);
const SIDES: [(&str, Turn); 6] = [
    ("6'", Turn::Right),
    ("4'", Turn::Left),
    ("6'", Turn::Right),
    ("10'", Turn::Right),
    ("12'", Turn::Right),
    ("14'", Turn::Right),
];

/// Joists 1 to 4 run from the first corner's wall; 5 and up begin 4 ft off, clear 10 ft.
fn wing(along: AlongFrom, sides: usize, change: impl FnOnce(&mut Desk)) -> Desk {
    let mut desk = Desk::new();
    let (room, _) = desk.room(&SIDES[..sides]);
    let (first, spacing) = (inches("8"), inches("16"));
    desk.log(Joists { room, run: Run::AcrossFirstSide, first, spacing, count: 9, along });
    make_sound(&mut desk, 9);
    for number in 1..=9 {
        desk.reads_moisture(number, 12, Material::Solid);
    }
    // To the far wall it is 14 ft there.
    for number in 1..=4 {
        desk.says(joist(number), &OVER_GIRDER, "butts, tied");
    }
    change(&mut desk);
    desk
}

fn notch(along: AlongFrom, number: u16, stretch: (&str, &str)) -> Fate {
    let desk = wing(along, 6, |desk| {
        desk.spot(number, DamageKind::Notch, Some(stretch), LOWER, "1/4");
    });
    one(&desk, number.into()).fate
}

fn rotten(along: AlongFrom, sides: usize, position: Position) -> Judged {
    let desk = wing(along, sides, |desk| {
        let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
        desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
    });
    one(&desk, 7)
}

fn bears(judged: &Judged) -> bool {
    assert!(says(judged, "found rotten"), "{:?}", judged.reasons);
    says(judged, "where it bears") && !says(judged, "it may be where it bears")
}

/// The middle third of 10 ft lies between 40 and 80 in, from where the joist begins.
#[test]
fn distances_are_held_to_a_span_from_where_the_joist_begins() {
    let of = |along, number, stretches: [(&str, &str); 4]| stretches.map(|stretch| notch(along, number, stretch));
    let turns = [Fate::Stays, Fate::Sister, Fate::Sister, Fate::Stays];
    let from_the_face = [("38", "40"), ("38 1/16", "40 1/16"), ("79 15/16", "81"), ("80", "82")];
    let from_the_corner = [("86", "88"), ("86 1/16", "88 1/16"), ("127 15/16", "129"), ("128", "130")];
    assert_eq!(of(AlongFrom::Wall, 7, from_the_face), turns);
    assert_eq!(of(AlongFrom::FirstCorner, 7, from_the_corner), turns, "as jobs before format 1.5 say it");
    for along in [AlongFrom::Wall, AlongFrom::FirstCorner] {
        assert_eq!(of(along, 2, from_the_face), turns, "it begins at the corner");
    }
}

#[test]
fn rot_where_a_joist_of_a_wing_bears_is_there_however_it_was_placed() {
    let on_joist = |along, at| {
        bears(&rotten(along, 6, Position::OnJoist { joist: JoistNumber::new(7).unwrap(), along: Some(inches(at)) }))
    };
    assert_eq!(["0", "6", "6 1/16"].map(|at| on_joist(AlongFrom::Wall, at)), [true, true, false]);
    assert_eq!(["47", "54", "54 1/16"].map(|at| on_joist(AlongFrom::FirstCorner, at)), [true, true, false]);
    for along in [AlongFrom::Wall, AlongFrom::FirstCorner] {
        let on_plan = |down| bears(&rotten(along, 6, Position::OnPlan { right: inches("104"), down: inches(down) }));
        let at = ["47", "54", "54 1/16", "161 15/16", "162"].map(on_plan);
        assert_eq!(at, [true, true, false, false, true], "{along:?}");
    }
}

/// A spot and a finding are held against each other from one and the same place.
#[test]
fn a_spot_along_a_joist_of_a_wing_measures_what_the_plan_places_there() {
    let stands = |along, stretch| {
        let desk = wing(along, 6, |desk| {
            desk.visit("look");
            let position = Position::OnPlan { right: inches("104"), down: inches("100") };
            let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
            desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
            desk.spot(7, DamageKind::Soft, Some(stretch), LOWER, "1/4");
        });
        says(&one(&desk, 7), "found rotten")
    };
    assert!(!stands(AlongFrom::Wall, ("50", "54")) && stands(AlongFrom::Wall, ("98", "102")));
    assert!(stands(AlongFrom::FirstCorner, ("50", "54")) && !stands(AlongFrom::FirstCorner, ("98", "102")));
}

#[test]
fn where_a_joist_begins_is_unknown_until_its_room_is_closed() {
    let notched = |along, sides| {
        let desk = wing(along, sides, |desk| {
            desk.spot(7, DamageKind::Notch, Some(("12", "14")), LOWER, "1/4");
        });
        one(&desk, 7)
    };
    let open = notched(AlongFrom::FirstCorner, 3);
    assert!(open.fate == Fate::Open && says(&open, "close the room"), "{:?}", open.reasons);
    assert_eq!(notched(AlongFrom::Wall, 3).fate, Fate::Stays, "it is from the wall that it meets");
    assert!(!says(&notched(AlongFrom::FirstCorner, 6), "close the room"));
    for along in [AlongFrom::Wall, AlongFrom::FirstCorner] {
        let rotten = rotten(along, 3, Position::OnPlan { right: inches("104"), down: inches("100") });
        assert!(rotten.fate == Fate::Replace && says(&rotten, "it may be where it bears"), "{:?}", rotten.reasons);
    }
}

/// What was settled by numbers stays settled where joists lie as they did.
#[test]
fn a_joist_of_a_wing_is_settled_like_any_other() {
    let desk = wing(AlongFrom::FirstCorner, 6, |desk| {
        desk.spot(7, DamageKind::Soft, Some(("6'", "7'")), LOWER, "1/2");
        desk.says(joist(7), &DONE, "sistered");
    });
    assert!(one(&desk, 7).is_settled(), "{:?}", one(&desk, 7).reasons);
}
