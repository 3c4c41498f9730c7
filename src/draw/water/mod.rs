//! Water: how far it goes, where it comes from, when it is gone, and whether the floor
//! may be closed. A page of cards, and the map.

mod air;
mod asks;
mod cards;
mod map;
mod readings;

pub use air::ventilating_card;
pub use map::map;

use super::Canvas;
use super::card::Card;
use crate::engine::job::Job;
use crate::engine::take::Units;

/// Everything on the page, in its order.
pub fn water(job: &Job, units: Units, canvas: Canvas) -> Vec<Card> {
    let mut cards = vec![cards::decision(job, units), cards::ranking(job)];
    cards.extend(asks::next_check(job));
    cards.push(readings::judged(job, units));
    cards.extend(cards::maps(job, units, canvas));
    cards.push(cards::forecast(job, units));
    cards.push(ventilating_card(job, units));
    cards.push(air::surfaces(job, units));
    cards.push(asks::checklist(job));
    cards
}
