//! Headers, girders, sills and what else carries joists.

use crate::desk::{Desk, label};
use crate::house::{inches, sound_house};
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::framing::headers::{HEADER_DONE, HeaderEnd, asks_for_header_done, header_asks, headers};
use duckboard::engine::framing::supports::unsound;
use duckboard::engine::framing::{Damage, DamageKind, Depth};
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::Check;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part};
use duckboard::engine::place::{Element, Face, JoistNumber, Place, Position};
use duckboard::engine::take::Units;

/// A header of up to 4 ft hangs on single joists only within 3 ft of their bearing (IRC
/// R802.9 (2024), the like rule for roofs, as quoted \[P2\]); beyond 4 and 6 ft: WCD 1
/// (2001), p. 8 \[P\].
#[test]
fn headers_ask_for_more_the_longer_they_are_and_the_farther_out() {
    let asks = |span: &str, to_bearing: Option<&str>, trimmers| {
        let asks = header_asks(inches(span).value, to_bearing.map(|far| inches(far).value), trimmers);
        asks.into_iter().map(|ask| ask.words).collect::<Vec<_>>()
    };
    assert!(asks("46", None, None)[0].contains("measure from it to the nearer bearing"));
    assert!(asks("46", Some("3'"), None).is_empty());
    assert!(asks("46", Some("3' 1/16"), None)[0].contains("double the joists at its ends"));
    assert!(asks("46", Some("5'"), Some("doubled")).is_empty());
    assert!(asks("4'", Some("1'"), None).is_empty());
    assert!(asks("4' 1/16", Some("1'"), Some("doubled"))[0].contains("over 4 ft"));
    assert!(asks("4' 1/16", Some("1'"), None)[0].contains("joists at its ends are doubled"));
    let doubled = |span| asks(span, None, Some("doubled")).len();
    assert_eq!(["4'", "4' 1/16", "6'", "6' 1/16"].map(doubled), [0, 1, 1, 2]);
    assert_eq!([asks("6'", None, None).len(), asks("6' 1/16", None, None).len()], [2, 3]);
}

/// Plies end over supports (Wisconsin SPS 321.22, notes to its table \[P\]).
#[test]
fn a_girder_whose_plies_end_between_piers_is_not_sound() {
    let girder = |state, end| {
        let mut desk = sound_house();
        desk.says(Part::Girder(1), &STATE, state);
        desk.says(Part::Girder(1), &PLIES_END, end);
        unsound(desk.job()).len()
    };
    assert_eq!([girder("sound", "over piers"), girder("sound", "it is one piece")], [0, 0]);
    assert_eq!([girder("sound", "between piers"), girder("sound", "cannot see")], [1, 1]);
    assert_eq!([girder("decayed", "over piers"), girder("cannot reach", "between piers")], [1, 2]);
}

#[test]
fn what_carries_joists_is_sound_again_once_it_was_seen_to_after_it_was_found() {
    let mut desk = sound_house();
    desk.says(Part::Sill, &STATE, "decayed");
    assert_eq!(unsound(desk.job()).len(), 1);
    desk.says(Part::Sill, &DONE, "sistered");
    assert_eq!(unsound(desk.job()).len(), 1, "that is no way to mend a sill");
    desk.says(Part::Sill, &DONE, "replaced");
    assert!(unsound(desk.job()).is_empty());
    let position = Position::OnJoist { joist: JoistNumber::new(2).unwrap(), along: None };
    let place = desk.log(Place { element: Element::Sill, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(place), finding: Finding::Soft, note: None });
    assert_eq!(unsound(desk.job()).len(), 1, "found after that");
}

/// Wood does not heal: of what carries joists as of joists.
#[test]
fn a_support_that_was_decayed_is_not_sound_because_a_later_visit_says_so() {
    let open = |states: [&'static str; 2], another: bool| {
        let mut desk = sound_house();
        desk.visit("look");
        desk.says(Part::Girder(1), &STATE, states[0]);
        if another {
            desk.visit("look again");
        }
        desk.says(Part::Girder(1), &STATE, states[1]);
        let open = unsound(desk.job()).len();
        desk.says(Part::Girder(1), &DONE, "replaced");
        (open, unsound(desk.job()).len())
    };
    for bad in ["decayed", "cracked", "leaning", "settled", "loose"] {
        assert_eq!([open([bad, "sound"], true), open([bad, "sound"], false)], [(1, 0), (0, 0)], "{bad}");
    }
    assert_eq!(open(["decayed", "decayed"], true), (1, 0), "once is enough");
    assert_eq!(open(["decayed", "cannot reach"], false), (2, 0));
    assert_eq!([open(["cannot reach", "sound"], true), open(["sound", "cannot reach"], true)], [(0, 0), (1, 0)]);
}

#[test]
fn the_card_of_what_carries_the_joists_says_what_was_and_was_not_looked_at() {
    let card = |said: &[(Part, &Item, &str)]| {
        let mut desk = sound_house();
        for (part, item, words) in said {
            desk.visit("look");
            desk.says(part.clone(), item, words);
        }
        let canvas = Canvas { width_px: 340, height_px: 280 };
        let cards = under(desk.job(), Units::default(), canvas);
        let card = cards.into_iter().find(|card| card.title == "What carries the joists?").unwrap();
        let lines: Vec<_> = card.lines.into_iter().map(|line| line.text).collect();
        (card.headline, lines.join("\n"))
    };
    let girder = |number, state| (Part::Girder(number), &STATE, state);
    let beside = [(Part::RimJoist, &STATE, "sound"), (Part::Sill, &STATE, "sound")];
    assert_eq!(card(&[]).0, "Nothing said yet");
    let (headline, lines) = card(&[(Part::Girder(2), &DEPTH, "9 1/4"), girder(1, "sound")]);
    assert_eq!(headline, "Not all were looked at");
    for words in ["Girder 1: looked at, and sound", "Girder 2: nobody said", "Sill: nobody said", "Rim joist: nobody"] {
        assert!(lines.contains(words), "{words}: {lines}");
    }
    let all = |more: &[(Part, &'static Item, &'static str)]| card(&[&beside[..], more].concat());
    assert_eq!(all(&[]).0, "Not all were looked at", "no girder was spoken of");
    assert_eq!(all(&[(Part::House, &GIRDER_NEAR, "no")]).0, "Nothing speaks against them");
    let one_piece = |number| (Part::Girder(number), &PLIES_END, "it is one piece");
    let unsaid = all(&[girder(1, "sound")]);
    assert!(unsaid.0 == "Not all were looked at" && unsaid.1.contains("say where its plies end"), "{unsaid:?}");
    assert_eq!(all(&[girder(1, "sound"), one_piece(1)]).0, "Nothing speaks against them");
    let none_near = [girder(1, "sound"), (Part::House, &GIRDER_NEAR, "no")];
    assert_eq!(all(&none_near).0, "Nothing speaks against them", "none near is asked for its plies");
    let healed = all(&[girder(3, "decayed"), girder(3, "sound")]);
    assert!(healed.0 == "Have an engineer look" && healed.1.contains("Girder 3: decayed"), "{healed:?}");
    assert!(!healed.1.contains("Girder 3: looked at"), "{healed:?}");
    let replaced = all(&[girder(3, "decayed"), (Part::Girder(3), &DONE, "replaced"), one_piece(3)]);
    assert!(replaced.0 == "Nothing speaks against them" && replaced.1.contains("decayed, and since then replaced"));
    let unseen = all(&[(Part::Girder(1), &DONE, "sistered")]);
    assert!(unseen.0 == "Not all were looked at" && unseen.1.contains("looked at since"), "{unseen:?}");
}

/// What is asked to be seen ends by the check alone, and nothing else does.
#[test]
fn a_check_ends_what_is_asked_of_a_header_to_be_so_and_not_what_is_to_be_measured() {
    let header = |answered_before: bool, answered_after: bool| {
        let mut desk = sound_house();
        let answer = |desk: &mut Desk| {
            desk.log(Check { of: label(HEADER_DONE), answer: Answer::Yes });
        };
        if answered_before {
            answer(&mut desk);
        }
        desk.says(Part::House, &HEADER_SPAN, "4' 1");
        if answered_after {
            answer(&mut desk);
        }
        let asks = headers(desk.job(), Units::default());
        (asks.iter().map(|ask| ask.ended_by).collect::<Vec<_>>(), asks_for_header_done(desk.job()))
    };
    let both = vec![HeaderEnd::Doubling, HeaderEnd::Check];
    assert_eq!(header(false, false), (both.clone(), true));
    assert_eq!(header(true, false), (both, true), "said before it was as long as it is");
    assert_eq!(header(false, true), (vec![HeaderEnd::Doubling], true));
    assert!(!asks_for_header_done(sound_house().job()));
}

#[test]
fn an_awl_in_one_girder_tells_nothing_of_another() {
    let left = |girder: u16| {
        let mut desk = sound_house();
        let (from, to) = (Some(inches("30")), Some(inches("60")));
        let spot = |of, depth| {
            let damage = Damage::new(of, DamageKind::Soft);
            Damage { from: from.clone(), to: to.clone(), face: Some(Face::LowerEdge), depth: Some(depth), ..damage }
        };
        desk.log(spot(Part::Girder(1), Depth::CannotReach));
        desk.log(spot(Part::Girder(girder), Depth::Is(inches("0"))));
        unsound(desk.job()).len()
    };
    assert_eq!([left(1), left(2)], [0, 1]);
}
