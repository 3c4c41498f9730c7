//! What laying takes beside sheets, in words.

use super::counted;
use crate::engine::sheets::TakeOff;
use crate::engine::sheets::take_off::{Adhesive, Blocking, Bought, Fasteners, SOURCES, Stick};
use crate::engine::take::Units;

/// One thing that is needed.
#[derive(Debug, Clone, PartialEq, Eq)]
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
    vec![blocking(&take_off.blocking, units), fasteners(&take_off.fasteners), adhesive(&take_off.adhesive, units)]
}

/// Where the rules come from, with their marks.
pub fn sources() -> Vec<String> {
    let cited = SOURCES.iter().map(|source| source.citation());
    cited.map(|citation| format!("{} ({})", citation.title, citation.mark.label())).collect()
}

fn blocking(blocking: &Blocking, units: Units) -> Needed {
    let lines = match &blocking.bought {
        _ if blocking.blocks.is_empty() => vec!["Every edge lies on a joist.".to_owned()],
        Some(bought) => bought.sticks.iter().map(|stick| cut_from(stick, units)).chain([feet(bought)]).collect(),
        None => vec!["Some block is longer than lumber is sold: it needs a joist or a header.".to_owned()],
    };
    let under = "Under every edge that neither a joist nor a tongue carries, and along walls where no plate or ledger \
                 does; treated, 2 in by name.";
    let lines = lines.into_iter().chain([under.to_owned()]).collect();
    Needed { title: "Blocking", headline: counted(blocking.blocks.len(), "block"), lines }
}

/// "2 of 16 ft: 12 × 1' 2 1/2", 1 × 10 1/2" each".
fn cut_from(stick: &Stick, units: Units) -> String {
    let cuts: Vec<_> =
        stick.cuts.iter().map(|(length, count)| format!("{count} × {}", units.length(*length))).collect();
    let each = if stick.count > 1 { " from each" } else { "" };
    format!("{} of {} ft: {}{each}", stick.count, stick.feet, cuts.join(", "))
}

fn feet(bought: &Bought) -> String {
    let least = if bought.is_least { "; fewer do not do" } else { "" };
    format!("{} ft in all{least}.", bought.feet())
}

fn fasteners(fasteners: &Fasteners) -> Needed {
    let lines = [
        format!("{}.", capital(fasteners.size)),
        "Every 6 in at ends and on blocks, 12 in on joists between, 3/8 in from edges; add a tenth for waste."
            .to_owned(),
    ];
    Needed { title: "Fasteners", headline: fasteners.count.to_string(), lines: lines.into() }
}

fn adhesive(adhesive: &Adhesive, units: Units) -> Needed {
    let bead = units.length(adhesive.bead);
    let lines = [
        format!("{bead} of 1/4 in bead on joists and blocks, two beads where two sheets end."),
        "Spread for one or two sheets at a time, and nail before it sets.".to_owned(),
    ];
    let tubes = counted(adhesive.tubes as usize, "tube");
    Needed { title: "Adhesive", headline: format!("{tubes} of 28 fl oz"), lines: lines.into() }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
