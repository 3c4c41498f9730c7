//! What carries the joists, and what is framed into them: others design it, so that nothing of it
//! is counted. What it asks for is named.

use crate::engine::framing::supports::{HELD_TAIL, header_asks, unsound};
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::take::Units;

/// Sill, rim joist and girders that are not sound, headers that ask for more than they have, and
/// long tail joists.
pub(super) fn not_counted(job: &Job, units: Units) -> Vec<String> {
    let waits = |words: &str| format!("{words}. It waits for an engineer: what that takes is not counted here.");
    let unsound = unsound(job).into_iter().map(|unsound| waits(&unsound.words));
    let framed = header(job, units).into_iter().chain(tail_joists(job, units));
    unsound.chain(framed.map(|words| format!("{words}. What that takes is not counted here."))).collect()
}

/// The longest header that may have been said last, by the worst that was said of it.
fn header(job: &Job, units: Units) -> Option<String> {
    let said = Particulars::of(job);
    let longest = |item| said.lengths(&Part::House, item).into_iter().max();
    let span = longest(&list::HEADER_SPAN)?;
    let trimmers = said.all_words(&Part::House, &list::TRIMMERS);
    let is_doubled = !trimmers.is_empty() && trimmers.iter().all(|words| *words == "doubled");
    let asks = header_asks(span, longest(&list::HEADER_TO_BEARING), is_doubled.then_some("doubled"));
    // The first is to double them, which was done.
    let asks: Vec<_> = asks.into_iter().map(|(words, _)| words).skip(usize::from(is_doubled)).collect();
    (!asks.is_empty()).then(|| format!("Header of {}: {}", units.length(span), asks.join("; ")))
}

fn tail_joists(job: &Job, units: Units) -> Option<String> {
    let longest = Particulars::of(job).lengths(&Part::House, &list::TAIL_JOIST).into_iter().max()?;
    (longest > HELD_TAIL).then(|| format!("Tail joists of {}: hangers or a ledger", units.length(longest)))
}
