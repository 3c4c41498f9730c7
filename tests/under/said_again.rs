//! What is said again the same, and joists that are laid out again.

use crate::desk::label;
use crate::house::{joist, joist_4_after as after};
use duckboard::engine::closing::SAME_JOISTS;
use duckboard::engine::framing::{DamageKind, Judged};
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::Check;
use duckboard::engine::particular::Item;
use duckboard::engine::particular::list::*;
use duckboard::engine::place::Face;
use duckboard::engine::survey::Joists;

/// Whoever looks again and finds the same changes nothing.
#[test]
fn what_is_said_again_the_same_brings_nothing_back() {
    let sistered = |item: &'static Item, again: &'static str| {
        after(|desk| {
            desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
            desk.says(joist(4), &CLEAR_SPAN, "10'");
            desk.says(joist(4), &DONE, "sistered");
            desk.says(joist(4), item, again);
        })
    };
    let is_settled = |item, again| sistered(item, again).is_settled();
    assert!(is_settled(&CLEAR_SPAN, "10'") && is_settled(&CLEAR_SPAN, "120"));
    assert!(!is_settled(&CLEAR_SPAN, "120 1/16"));
}

/// The check says that they are; without it they may be others.
#[test]
fn joists_that_are_laid_out_anew_keep_what_was_done_while_every_number_means_the_same_joist() {
    let laid_out_anew = |same: bool| {
        after(|desk| {
            desk.spot(4, DamageKind::Soft, Some(("2'", "3'")), Some(Face::LowerEdge), "1/2");
            desk.says(joist(4), &DONE, "sistered");
            let (id, joists) = desk.job().now.joists().first().map(|(id, it)| (*id, it.value.clone())).unwrap();
            desk.correct(id, Joists { count: joists.count + 1, ..joists });
            if same {
                desk.log(Check { of: label(SAME_JOISTS), answer: Answer::Yes });
            }
        })
    };
    let [unsaid, same] = [false, true].map(laid_out_anew);
    let is_soft_settled =
        |judged: &Judged| judged.reasons.iter().all(|it| it.is_settled || !it.words.starts_with("soft"));
    assert!(!is_soft_settled(&unsaid) && is_soft_settled(&same), "{:?}", same.reasons);
}
