//! What a page of cuts says to whoever holds the saw.

use crate::engine::condition::{Condition, Finding};
use crate::engine::describe::place_of;
use crate::engine::job::Job;
use crate::engine::survey::build_up::{build_up, by_caliper};
use crate::engine::take::Units;
use crate::engine::units::tape::format;

/// What is minded at the saw: how deep the blade goes, and what was seen under the floor.
///
/// Source: [`Source::BlindCuts`](crate::engine::sources::Source::BlindCuts).
pub fn at_the_saw(job: &Job, units: Units) -> Vec<String> {
    let deep = match build_up(job).value() {
        Some(old) => {
            format!("{} deep, as the old floor was measured", format(old.least, by_caliper(units.length)))
        }
        None => "as deep as the old floor was measured".to_owned(),
    };
    let mut lines = vec![
        "New sheets on horses: blade 1/8 to 1/4 in deeper than the sheet.".to_owned(),
        format!(
            "Old floor in place: blade {deep} and no more: elsewhere a layer may be missing; power off, and look beneath first."
        ),
    ];
    lines.extend(seen_beneath(job, units));
    lines.push("Local code and the licensed trades decide; this is a plan, not a design.".to_owned());
    lines
}

/// Wires and pipes that were logged, each with its place.
fn seen_beneath(job: &Job, units: Units) -> Option<String> {
    let runs = job.now.conditions().values().filter(|condition| {
        let finding = condition.value.finding;
        matches!(finding, Finding::Wire | Finding::Pipe)
    });
    let seen: Vec<_> = runs
        .map(|condition| {
            let Condition { place, finding, .. } = &condition.value;
            format!("{}{}", finding.label(), place_of(job, *place, units))
        })
        .collect();
    (!seen.is_empty()).then(|| format!("Seen beneath, and there may be more: {}.", seen.join("; ")))
}
