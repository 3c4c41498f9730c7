//! What laying takes beside sheets, in words.

use crate::engine::describe::counted;
use crate::engine::orders::{Line, is_of};
use crate::engine::sheets::take_off::{Adhesive, Blocking, Fasteners, LONGEST_SOLD, adhesive, blocking, fasteners};
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

/// Everything that is needed, as a page shows it. Lumber is bought as the order list says.
pub fn needed(take_off: &TakeOff, ordered: &[Line], units: Units) -> Vec<Needed> {
    vec![
        of_blocks(&take_off.blocking, &take_off.block_lumber, ordered, units),
        of_fasteners(&take_off.fasteners),
        of_glue(&take_off.adhesive, units),
    ]
}

/// Where everything on a page comes from, with the marks.
pub fn sources() -> Vec<String> {
    let all: BTreeSet<_> = stock::SOURCES.iter().chain(&take_off::SOURCES).collect();
    all.into_iter().map(|source| source.citation().to_string()).collect()
}

fn of_blocks(blocking: &Blocking, lumber: &str, ordered: &[Line], units: Units) -> Needed {
    let mut lines = Vec::new();
    if blocking.blocks.is_empty() {
        lines.push("Every edge lies on a joist.".to_owned());
    } else {
        lines.push(format!("{}.", sizes(blocking, units)));
        lines.extend(bought(lumber, ordered));
        lines.extend(too_long(blocking, units));
    }
    lines.push(blocking::RULE.to_owned());
    Needed { title: "Blocking", headline: counted(blocking.blocks.len(), "block"), lines }
}

/// "18 of 1' 2 1/2", 1 of 10 1/2"".
fn sizes(blocking: &Blocking, units: Units) -> String {
    let mut lengths: Vec<_> = blocking.blocks.iter().map(|block| block.length).collect();
    lengths.sort_unstable_by(|a, b| b.cmp(a));
    let each = lengths.chunk_by(|a, b| a == b).filter_map(|same| Some((same.len(), *same.first()?)));
    each.map(|(count, length)| format!("{count} of {}", units.length(length))).collect::<Vec<_>>().join(", ")
}

/// What the order list says of a kind of lumber.
fn bought(lumber: &str, ordered: &[Line]) -> Vec<String> {
    let of_kind: Vec<_> = ordered.iter().filter(|line| is_of(&line.needed, lumber)).collect();
    let line = |line: &&Line| {
        let reasons = line.needed.from.join("; ");
        format!("To order for the whole job: {} of {} ({reasons}).", line.quantity(), line.needed.name)
    };
    of_kind.iter().map(line).collect()
}

/// Which blocks no lumber is long enough for.
fn too_long(blocking: &Blocking, units: Units) -> Option<String> {
    let long = blocking.blocks.iter().filter(|block| block.length > LONGEST_SOLD);
    let longest = long.clone().map(|block| block.length).max()?;
    Some(format!(
        "{} up to {} long: no lumber is sold so long. A joist or a header has to part them.",
        counted(long.count(), "block"),
        units.length(longest)
    ))
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
