//! What laying takes beside sheets, in words.

use crate::engine::describe::counted;
use crate::engine::sheets::take_off::{Adhesive, Blocking, Bought, Fasteners, Stick, adhesive, blocking, fasteners};
use crate::engine::sheets::{TakeOff, stock, take_off};
use crate::engine::take::Units;
use serde::Serialize;
use std::collections::BTreeSet;

/// One thing that is needed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Needed {
    /// What.
    pub title: &'static str,
    /// How much.
    pub headline: String,
    /// Of what, where, and by what rule.
    pub lines: Vec<String>,
}

/// Everything that is needed, as a page shows it.
pub fn needed(take_off: &TakeOff, units: Units) -> Vec<Needed> {
    vec![
        of_blocks(&take_off.blocking, &take_off.block_lumber, units),
        of_fasteners(&take_off.fasteners),
        of_glue(&take_off.adhesive, units),
    ]
}

/// Where everything on a page comes from, with the marks.
pub fn sources() -> Vec<String> {
    let all: BTreeSet<_> = stock::SOURCES.iter().chain(&take_off::SOURCES).collect();
    all.into_iter().map(|source| source.citation().to_string()).collect()
}

fn of_blocks(blocking: &Blocking, lumber: &str, units: Units) -> Needed {
    let mut lines = match &blocking.bought {
        _ if blocking.blocks.is_empty() => vec!["Every edge lies on a joist.".to_owned()],
        Some(bought) => {
            let sticks = bought.sticks.iter().map(|stick| cut_from(stick, units));
            std::iter::once(format!("Of {lumber}:")).chain(sticks).chain([feet(bought)]).collect()
        }
        None => vec!["Some block is longer than lumber is sold: it needs a joist or a header.".to_owned()],
    };
    lines.push(blocking::RULE.to_owned());
    Needed { title: "Blocking", headline: counted(blocking.blocks.len(), "block"), lines }
}

/// "2 of 16 ft: 12 × 1' 2 1/2", 1 × 10 1/2" from each".
fn cut_from(stick: &Stick, units: Units) -> String {
    let each = if stick.count > 1 { " from each" } else { "" };
    format!("{} of {} ft: {}{each}", stick.count, stick.feet, stick.cuts_in_words(units))
}

fn feet(bought: &Bought) -> String {
    let least = if bought.is_least { "; fewer do not do" } else { "" };
    format!("{} ft in all{least}.", bought.feet())
}

fn of_fasteners(needed: &Fasteners) -> Needed {
    let lines = vec![format!("Nails: {}.", needed.size), fasteners::RULE.to_owned()];
    Needed { title: "Fasteners", headline: needed.count.to_string(), lines }
}

fn of_glue(needed: &Adhesive, units: Units) -> Needed {
    let lines = vec![format!("{} of bead in all.", units.length(needed.bead)), adhesive::RULE.to_owned()];
    let tubes = counted(needed.tubes as usize, "tube");
    Needed { title: "Adhesive", headline: format!("{tubes} of {} fl oz", adhesive::TUBE_FLUID_OUNCES), lines }
}
