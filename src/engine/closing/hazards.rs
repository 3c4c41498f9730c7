//! What a caution says must be dealt with first.

use super::decision::{Condition, InTheWay};
use super::trust::Answers;
use crate::engine::condition::Finding;
use crate::engine::framing::joist::INSECTS_GONE;
use crate::engine::job::{Job, When};

/// A finding that holds closing up until it is said to be dealt with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hazard {
    /// What was found.
    pub finding: Finding,
    /// The name of the check that says that it is dealt with. It never changes: jobs hold it.
    pub check: &'static str,
    /// What is asked.
    pub asks: &'static str,
    /// What ends it.
    ends: &'static str,
}

const HAZARDS: [Hazard; 7] = [
    Hazard {
        finding: Finding::StandingWater,
        check: "gone.standing_water",
        asks: "Is the standing water gone, and what brought it?",
        ends: "lead it away, find what brought it, and answer the check",
    },
    Hazard {
        finding: Finding::BareWire,
        check: "gone.bare_wire",
        asks: "Has an electrician made the bare wire safe?",
        ends: "have a licensed electrician make it safe, and answer the check",
    },
    Hazard {
        finding: Finding::Sewage,
        check: "gone.sewage",
        asks: "Is the sewage stopped and cleaned up?",
        ends: "have a plumber stop it and a specialist clear it, and answer the check",
    },
    Hazard {
        finding: Finding::Strands,
        check: "gone.strands",
        asks: "Was the fungus with strands named, its water cut off, and all that it has cut out?",
        ends: "have it named, break off its strands and its water, cut out what it has, and answer the check",
    },
    Hazard {
        finding: Finding::Insects,
        check: INSECTS_GONE,
        asks: "Were the insects named, treated if they are at work, and the wood that they were in probed?",
        ends: "have them named and, if they are at work, treated by a licensed applicator; probe the wood; answer the check",
    },
    Hazard {
        finding: Finding::Mould,
        check: "gone.mold",
        asks: "Is the mold cleaned up?",
        ends: "clean it up, or have a specialist do it, and answer the check",
    },
    Hazard {
        finding: Finding::Dripping,
        check: "gone.dripping",
        asks: "Has the dripping stopped?",
        ends: "find where it comes from, stop it, and answer the check",
    },
];

/// Does a check of this name say that a hazard is dealt with?
pub(super) fn is_of_a_hazard(name: &str) -> bool {
    HAZARDS.iter().any(|hazard| hazard.check == name)
}

/// The hazards that were found.
pub fn hazards(job: &Job) -> Vec<Hazard> {
    HAZARDS.into_iter().filter(|hazard| !found(job, hazard).is_empty()).collect()
}

/// Each time that it was found.
fn found(job: &Job, hazard: &Hazard) -> Vec<When> {
    let found = job.now.conditions().values().filter(|it| it.value.finding == hazard.finding);
    found.map(|it| it.when()).collect()
}

/// All that was found was said to be dealt with, after it was found.
pub(super) fn none_left(job: &Job) -> Condition {
    let is_open = |hazard: &Hazard| !Answers::to(job, hazard.check).is_yes_since(&found(job, hazard));
    let open = hazards(job).into_iter().filter(is_open);
    let lines = open.map(|hazard| {
        InTheWay::known(format!("{} was found", hazard.finding.label().to_ascii_lowercase()), hazard.ends)
    });
    Condition::of("nothing dangerous or alive is left in there", lines.collect(), "nothing was found, or it is seen to")
}
