//! Under the house: what becomes of the joists, how level they are, the ground, the air and
//! the roof's water. A page of cards, each with the form that feeds it.

mod boards;
mod framing;
mod ground;
mod levels;

use super::Canvas;
use super::card::Card;
use crate::engine::job::Job;
use crate::engine::take::Units;

/// Everything on the page, in its order.
pub fn under(job: &Job, units: Units, canvas: Canvas) -> Vec<Card> {
    let mut cards = framing::cards(job, units);
    cards.extend(boards::card(job, units));
    let group = Some("Levels");
    cards.push(Card { group, ..levels::card(job, units, canvas) });
    cards.extend(ground::cards(job, units));
    cards
}
