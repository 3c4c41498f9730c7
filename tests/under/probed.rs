//! Where an awl has to be pushed into a joist, and what nobody could reach of what carries it.

use crate::desk::Desk;
use crate::house::{inches, joist_4_after as after, says, sound_house};
use duckboard::engine::framing::supports::unsound;
use duckboard::engine::framing::{Damage, DamageKind, Depth, Judged};
use duckboard::engine::particular::Part;
use duckboard::engine::particular::list::*;
use duckboard::engine::place::Face;

const LOWER: Option<Face> = Some(Face::LowerEdge);

/// Joist 4, clear over 9 ft, with no word of its awl: an awl stops at these stretches.
fn probed(next: Option<&str>, stretches: &[(&str, &str)]) -> Judged {
    after(|desk| {
        let job = desk.job();
        let is_word = |it: &duckboard::engine::particular::Particular| {
            it.what.as_str() == AWL.what && it.of == crate::house::joist(4)
        };
        let words: Vec<_> =
            job.now.particulars().iter().filter(|(_, it)| is_word(it.value)).map(|(id, _)| *id).collect();
        words.into_iter().for_each(|id| drop_(desk.withdraw(id)));
        desk.says(crate::house::joist(4), &CLEAR_SPAN, "9'");
        if let Some(next) = next {
            desk.says(crate::house::joist(4), &OVER_GIRDER, "goes through");
            desk.says(crate::house::joist(4), &NEXT_SPAN, next);
        }
        for stretch in stretches {
            desk.spot(4, DamageKind::Soft, Some(*stretch), LOWER, "0");
        }
    })
}

fn drop_<T>(_: T) {}

#[test]
fn a_joist_is_probed_at_both_ends_and_in_the_middle_of_its_span() {
    let asks = |stretches: &[(&str, &str)], words: &str| says(&probed(None, stretches), words);
    assert!(asks(&[], "probe both ends and the middle"));
    let whole = [("0", "12"), ("36", "40"), ("96", "108")];
    assert!(!says(&probed(None, &whole), "probe "), "{:?}", probed(None, &whole).reasons);
    assert!(asks(&[("12 1/16", "40"), ("96", "108")], "probe the end at the wall that distances are from too"));
    assert!(asks(&[("0", "12"), ("96", "108")], "probe the middle too"));
    assert!(asks(&[("0", "12"), ("36", "95 15/16")], "probe the other end too"));
    assert!(asks(&[("0", "40"), ("96", "108 1/16")], "probe the other end too"), "it is elsewhere");
}

/// The second span begins at 9 ft and ends at 18; its middle third is from 12 to 15 ft, and the
/// girder may be a foot broad.
#[test]
fn a_joist_that_goes_through_is_probed_along_both_of_its_spans() {
    let first = [("0", "12"), ("36", "40"), ("96", "108")];
    let asks = |more: &[(&str, &str)], words: &str| {
        let all: Vec<_> = first.iter().chain(more).copied().collect();
        says(&probed(Some("9'"), &all), words)
    };
    assert!(asks(&[], "probe the middle of its span past the girder and its end past that too"));
    assert!(!asks(&[("144", "150"), ("204", "216")], "probe "));
    assert!(asks(&[("140", "143 15/16"), ("204", "216")], "probe the middle of its span past the girder too"));
    assert!(!asks(&[("192", "216")], "probe the middle") && asks(&[("192 1/16", "216")], "probe the middle"));
    assert!(asks(&[("144", "203 15/16")], "probe its end past that too") && !asks(&[("144", "204")], "probe "));
    assert!(says(&probed(Some("9'"), &[]), "probe both ends and the middle, and say"));
}

/// Nobody found it soft: what is asked for is an awl, and no engineer.
#[test]
fn a_spot_of_a_sill_that_no_awl_can_reach_is_probed_once_the_floor_is_open() {
    let sill = |later: Option<&str>| {
        let mut desk: Desk = sound_house();
        let spot = |depth| Damage {
            from: Some(inches("30")),
            to: Some(inches("40")),
            face: LOWER,
            depth: Some(depth),
            ..Damage::new(Part::Sill, DamageKind::Soft)
        };
        desk.log(spot(Depth::CannotReach));
        if let Some(depth) = later {
            desk.log(spot(Depth::Is(inches(depth))));
        }
        unsound(desk.job()).into_iter().map(|it| (it.words, it.is_unreached)).collect::<Vec<_>>()
    };
    assert_eq!(sill(None), [("Sill: a spot that no awl can reach".to_owned(), true)]);
    assert_eq!(sill(Some("0")), []);
    assert_eq!(sill(Some("1/4")), [("Sill: soft".to_owned(), false)]);
}
