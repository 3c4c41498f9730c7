//! What speaks against a joist, thing by thing: what nobody said, moisture and insects,
//! decay, cuts, what carries it, and how far it spans.

mod capacity;
mod cuts;
mod decay;
mod notches;
mod planing;
mod probed;
mod support;
mod unknown;

pub(super) use capacity::does_alone;
pub use planing::Planing;
pub use probed::is_probed_before;

use super::joist::Joist;
use super::member::MemberType;
use super::schedule::{Fate, Range, Reason};
use super::shared::Shared;
use super::since::Since;
use crate::engine::sources::Source;
use crate::engine::take::Units;

/// Everything that speaks against a joist, and how far what is left of it may span.
pub(super) fn reasons(joist: &Joist, shared: &Shared, units: Units) -> (Vec<Reason>, Option<Range>) {
    let mut reasons = unknown::reasons(joist, units);
    reasons.extend(decay::of_findings(joist));
    let both = joist.old_and_new();
    reasons.extend(both.iter().flat_map(|one| decay::reasons(one, units)));
    reasons.extend(support::reasons(joist, units));
    let may_span = match joist.member {
        Some(MemberType::Sawn) => {
            reasons.extend(both.iter().flat_map(|one| cuts::reasons(one, units)));
            let (range, too_far) = capacity::reasons(&joist.as_it_lies(), shared, units);
            reasons.extend(too_far);
            range
        }
        Some(other) => {
            reasons.extend(both.iter().filter_map(|one| cuts::of_engineered(one, other)));
            reasons.extend(capacity::of_engineered(joist, shared, units));
            None
        }
        None => None,
    };
    reasons.extend(capacity::not_weighed(shared));
    reasons.extend(said_apart(&shared.said_apart, ("all joists", "")));
    if joist.new_since.is_some() {
        reasons.extend(said_apart(&shared.sisters_said_apart, ("sisters and new joists", "")));
    }
    (reasons, may_span)
}

/// What two phones say differently: nothing is judged by the one that happens to count on.
pub(super) fn said_apart(what: &[&str], (of, whose): (&str, &str)) -> Option<Reason> {
    let words = format!(
        "two phones say different things of {of}, and nobody can tell which came last: say again {whose}{}",
        what.join(", ")
    );
    (!what.is_empty()).then(|| reason(Fate::Open, Source::EngineerLooks, Since::ALWAYS, words))
}

/// A reason by what it comes to, since when, and in words; ended by what that fate asks for.
pub(super) fn reason(fate: Fate, source: Source, since: Since, words: impl Into<String>) -> Reason {
    Reason { fate, words: words.into(), source, ended_by: fate.ended_by(), since, is_settled: false }
}
