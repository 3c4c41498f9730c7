//! What the order list names and does not count.

use crate::house::{inches, joist, sound_house};
use crate::orders::{list, names};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};

#[test]
fn what_ends_ask_for_and_no_line_counts_is_named() {
    let open = |item: &Item, is: &str| {
        let mut desk = sound_house();
        desk.says(joist(4), item, is);
        list(&desk).open.iter().filter(|open| open.contains("What that takes is not counted here")).count()
    };
    assert_eq!([open(&ENDS_HELD, "nothing"), open(&OVER_GIRDER, "butts, not tied")], [1, 1]);
    assert_eq!([open(&BEARING, "1"), open(&ENDS_HELD, "blocking")], [0, 0], "a hanger is counted");
}

/// Nothing there is designed or counted here, and closing asks for it all the same.
#[test]
fn what_carries_the_joists_and_is_not_sound_is_named_until_it_was_seen_to() {
    let open = |of: &Part, item: &Item, is: &str, done: Option<&str>| {
        let mut desk = sound_house();
        desk.says(of.clone(), item, is);
        if let Some(done) = done {
            desk.says(of.clone(), &DONE, done);
        }
        let waits = |open: &&String| open.ends_with("It waits for an engineer: what that takes is not counted here.");
        list(&desk)
            .open
            .iter()
            .filter(waits)
            .map(|open| open.split(". ").next().unwrap().to_owned())
            .collect::<Vec<_>>()
    };
    let parts = [Part::Sill, Part::RimJoist, Part::Girder(1), Part::Pier(2), Part::Ledger(1)];
    for (part, name) in parts.iter().zip(["Sill", "Rim joist", "Girder 1", "Pier 2", "Ledger 1"]) {
        for bad in ["decayed", "cracked", "leaning", "settled", "loose", "cannot reach"] {
            assert_eq!(open(part, &STATE, bad, None), [format!("{name}: {bad}")]);
            assert!(open(part, &STATE, bad, Some("replaced")).is_empty(), "{name}");
        }
        assert!(open(part, &STATE, "sound", None).is_empty(), "{name}");
    }
    assert_eq!(open(&Part::Girder(1), &PLIES_END, "between piers", None), ["Girder 1: plies end between piers"]);
    let mut desk = sound_house();
    let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: None };
    let place = desk.log(Place { element: Element::Sill, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(place), finding: Finding::Rotten, note: None });
    assert!(list(&desk).open.iter().any(|open| open.contains("rotten. It waits")), "{:?}", list(&desk).open);
}

/// Over 4 and 6 ft: WCD 1 (2001), p. 8 \[P\]; farther than 3 ft from its bearing: IRC R802.9 (2024),
/// as quoted \[P2\]; tail joists over 12 ft: WCD 1 (2001), p. 8 \[P\].
#[test]
fn what_headers_and_tail_joists_ask_for_is_named_and_counted_nowhere() {
    let open = |said: &[(Item, &str)]| {
        let mut desk = sound_house();
        for (item, typed) in said {
            desk.says(Part::House, item, typed);
        }
        let framed = |open: &&String| open.starts_with("Header") || open.starts_with("Tail");
        let open = list(&desk).open;
        open.iter().filter(framed).for_each(|open| assert!(open.ends_with("is not counted here."), "{open}"));
        open.into_iter().filter(|open| framed(&open)).collect::<Vec<_>>().join(" ")
    };
    let header = |span, trimmers| open(&[(HEADER_SPAN, span), (HEADER_TO_BEARING, "3'"), (TRIMMERS, trimmers)]);
    for trimmers in ["single", "doubled"] {
        assert_eq!(header("4'", trimmers), "");
    }
    let joists = "the joists at its ends are doubled";
    let long = header("4' 1/16", "single");
    assert!(long.contains("over 4 ft it is doubled") && long.contains(joists), "{long}");
    // That the joists are says nothing of the header.
    let doubled = ["4' 1/16", "6'"].map(|span| header(span, "doubled"));
    assert!(
        doubled.iter().all(|open| open.contains("over 4 ft it is doubled") && !open.contains(joists)),
        "{doubled:?}"
    );
    let hung = ["6'", "6' 1/16"].map(|span| header(span, "doubled").contains("over 6 ft it is hung"));
    assert_eq!(hung, [false, true]);
    let far = |far| open(&[(HEADER_SPAN, "4'"), (HEADER_TO_BEARING, far)]);
    assert!(far("3'").is_empty() && far("3' 1/16").contains("double the joists at its ends"));
    assert!(open(&[(HEADER_SPAN, "4'")]).contains("measure from it to the nearer bearing"));
    let tail = |long| open(&[(TAIL_JOIST, long)]);
    assert!(tail("12'").is_empty() && tail("12' 1/16").contains("hangers or a ledger"));
}

#[test]
fn the_hanger_of_a_joist_that_waits_for_an_engineer_is_named_as_not_counted() {
    let open = |found: Option<Finding>| {
        let mut desk = sound_house();
        desk.says(joist(4), &BEARING, "1");
        if let Some(finding) = found {
            let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: Some(inches("3'")) };
            let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
            desk.log(Condition { place: Some(place), finding, note: None });
        }
        let named = list(&desk).open.into_iter().filter(|open| open.starts_with("Joist 4: "));
        let named: Vec<_> = named.filter(|open| open.contains("What that takes is not counted here")).collect();
        (named.len(), names(&desk).contains(&"Joist hangers".to_owned()))
    };
    assert_eq!(open(None), (0, true), "counted");
    assert_eq!(open(Some(Finding::Cracked)), (1, false), "an engineer looks first");
}
