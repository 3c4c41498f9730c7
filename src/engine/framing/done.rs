//! What was said to be done about a member, and when a sister or a new one was put in.

use super::member::Done;
use super::since::Since;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};

/// The name of the check that says that the sisters of joists that go through lie along their
/// span past the girder, where one is asked for there. It never changes.
pub const SISTERS_BEYOND: &str = "sisters_beyond";

/// Everything that was said to be done about a member and was not taken back by "not yet":
/// of several things done each counts.
pub fn done(said: Particulars<'_>, part: &Part) -> Vec<(Done, Since)> {
    let mut done = Vec::new();
    for thing in said.each(part, &list::DONE) {
        let since = Since::of(&thing);
        match Done::said(thing.value.is.typed()) {
            Some(what) => done.push((what, since)),
            None => done.clear(),
        }
    }
    let taken_back = said.each(part, &list::DONE).filter(|thing| Done::said(thing.value.is.typed()).is_none());
    let taken_back = Since::all(taken_back.map(|thing| Since::of(&thing)));
    done.retain(|(_, since)| since.is_after(taken_back));
    done
}

/// When the new joist was put in, and the sister beside what lies there now: what was beside the old
/// one went with it.
pub(super) fn put_in(done: &[(Done, Since)]) -> Vec<Since> {
    let last = done.iter().rposition(|(done, _)| *done == Done::Replaced);
    let of_it = last.map_or(done, |last| {
        let before = done.iter().take(last).rposition(|(done, _)| *done == Done::Sistered);
        done.get(before.map_or(0, |sister| sister + 1)..).unwrap_or_default()
    });
    let first = |what| of_it.iter().find(|(done, _)| *done == what).map(|(_, since)| *since);
    [Done::Replaced, Done::Sistered].into_iter().filter_map(first).collect()
}

/// The check answers for a joist that was sistered before it was answered. Of several answers only
/// a yes after every other counts.
pub(super) fn sistered_beyond(job: &Job, done: &[(Done, Since)]) -> Option<(Done, Since)> {
    let said = Since::yes_to(job, SISTERS_BEYOND)?;
    let sistered = done.iter().filter(|(done, _)| *done == Done::Sistered);
    sistered.map(|(_, since)| *since).any(|sistered| said.is_after(sistered)).then_some((Done::SisteredBeyond, said))
}
