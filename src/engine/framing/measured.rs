//! Which logged spot measures what was found: one that holds its place, logged in the same
//! visit or later.

use super::damage::{Damage, DamageKind, Depth};
use super::done::done;
use super::member::Done;
use super::since::Since;
use super::spots::{Found, Goes, Stretch};
use crate::engine::condition::Finding;
use crate::engine::job::{InVisit, Kind, Seen};
use crate::engine::particular::{Item, Part, Particular, Particulars, list};
use crate::engine::place::Face;

/// Since when something is known, and in which visit it was said.
pub(super) type Logged = (Since, Option<InVisit>);

/// The visit in which something was said as it stands. What was corrected was said anew, and
/// nothing tells in which visit: as if in none.
pub(super) fn visit<T: Kind>(said: &Seen<'_, T>) -> Option<InVisit> {
    Some(said.in_visit()).filter(|visit| visit.is_any() && said.stamp.at == said.said)
}

/// Was this put right by that, said later in the same visit?
pub(super) fn is_put_right(this: &Seen<'_, Particular>, by: &Seen<'_, Particular>) -> bool {
    this.in_visit().is_same(by.in_visit()) && by.when().is_after(this.when())
}

/// Was this measured of a joist that a new one has taken the place of since? It says nothing of
/// that one, and has to be said again.
pub fn is_of_the_old_one(said: Particulars<'_>, part: &Part, item: &Item) -> bool {
    let is_of_each = [list::BREADTH, list::DEPTH, list::BEARING, list::LAP_OF_JOISTS].contains(item);
    let all = done(said, part);
    let replaced = all.iter().rev().find(|(done, _)| *done == Done::Replaced);
    is_of_each && replaced.is_some_and(|(_, new)| !Since::said(said, part, item).is_after(*new))
}

/// When a particular was said.
pub(super) fn logged(said: &Seen<'_, Particular>) -> Logged {
    (Since::of(said), visit(said))
}

/// Does what was said then answer that? Only what is of the same visit or surely later does.
pub(super) fn answers(then: Logged, that: Logged) -> bool {
    then.0.is_after(that.0) || then.1.zip(that.1).is_some_and(|(then, that)| then.is_same(that))
}

/// Was something done to the member between the two? Then the first was of what it was before.
pub(super) fn is_of_before(done: &[Since], first: Since, then: Since) -> bool {
    done.iter().any(|done| done.is_after(first) && !done.is_after(then))
}

/// Does this spot say how deep that finding goes?
pub(super) fn measures((spot, stretch): (&Damage, Stretch), logged: Logged, found: &Found) -> bool {
    let goes = match spot.depth.as_ref() {
        Some(Depth::Is(typed)) => Goes::of(typed.value),
        Some(Depth::CannotReach) => Goes::CannotReach,
        None => Goes::NotSaid,
    };
    let does = match found.finding {
        // That nobody can get at it says nothing of how far rot goes.
        Finding::Soft => matches!(goes, Goes::In(_) | Goes::CannotReach),
        Finding::Rotten => matches!(goes, Goes::In(_)),
        _ => false,
    };
    does && spot.kind == DamageKind::Soft
        && answers(logged, (found.since, found.visit))
        && holds(spot.face, stretch, found)
}

/// Does a spot hold the place of a finding: its stretch that point, on that face? An end has no
/// distance along, and is held only by a spot at that end. Where nobody said how far along it was
/// found, a spot that says so tells, as where an awl is only said to have gone in.
fn holds(face: Option<Face>, stretch: Stretch, found: &Found) -> bool {
    let reaches = || stretch.ends().is_some_and(|(from, to)| found.along.is_none_or(|at| from <= at && at <= to));
    match (face, found.face) {
        (one, Some(other @ (Face::NearEnd | Face::FarEnd))) => one == Some(other),
        (one, Some(Face::End)) => one.is_some_and(Face::is_end) && reaches(),
        (Some(one), Some(other)) => one == other && reaches(),
        (None, _) | (_, None) => reaches(),
    }
}
