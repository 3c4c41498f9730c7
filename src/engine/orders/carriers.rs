//! What carries the joists, and what is framed into them: others design it, so that nothing of it
//! is counted. What it asks for is named.

use crate::engine::framing::headers::headers;
use crate::engine::framing::supports::unsound;
use crate::engine::job::Job;
use crate::engine::take::Units;

/// Sill, rim joist and girders that are not sound, headers that ask for more than they are said to
/// have, and long tail joists.
pub(super) fn not_counted(job: &Job, units: Units) -> Vec<String> {
    let waits = |words: &str| format!("{words}. It waits for an engineer: what that takes is not counted here.");
    let unsound = unsound(job).into_iter().map(|unsound| waits(&unsound.words));
    let framed = headers(job, units).into_iter();
    unsound.chain(framed.map(|ask| format!("{}. What that takes is not counted here.", ask.words))).collect()
}
