//! What was found that calls for a caution, and whether somebody read it about that. Water
//! that was gone stands again, a wire hangs bare at another joist: what was read in October
//! was not read about this.

use super::Trigger;
use super::trigger::{awl_goes_in, bad_spots};
use crate::engine::condition::Finding;
use crate::engine::framing::DamageKind;
use crate::engine::framing::supports::SOUND;
use crate::engine::job::{Acknowledgement, InVisit, Job, Kind, Seen, When};
use crate::engine::moisture::Answer;
use crate::engine::particular::list;

/// When something was found, and in which visit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Find {
    when: When,
    visit: InVisit,
}

impl Find {
    fn of<T: Kind>(thing: Seen<'_, T>) -> Self {
        Self { when: thing.when(), visit: thing.in_visit() }
    }
}

/// Was a caution read about all of this? About what was found before; and about more of the
/// same in the visit in which it was read, or it would be asked at every joist.
pub(super) fn is_about_all(read: &Seen<'_, Acknowledgement>, finds: &[Find]) -> bool {
    let is_known = |find: &Find| read.when().is_after(find.when);
    let is_of_visit = |find: &Find| find.visit.is_same(read.in_visit());
    let more = finds.iter().any(|find| is_of_visit(find) && is_known(find));
    finds.iter().all(|find| is_known(find) || more && is_of_visit(find))
}

impl Trigger {
    /// All that was found which calls for this. What is so all along, or is only planned, is
    /// no find: once read is read.
    pub(super) fn finds(self, job: &Job) -> Vec<Find> {
        match self {
            Self::Found(findings) => found(job, findings).collect(),
            Self::Answered(questions) => {
                let yes = job.now.checks().values().filter(|check| check.value.answer == Answer::Yes);
                let asked = |name: &str| questions.iter().any(|(asked, _)| *asked == name);
                yes.filter(|check| asked(check.value.of.as_str())).map(Find::of).collect()
            }
            Self::Damaged(kinds) => spots(job, kinds).collect(),
            Self::WeakFraming | Self::BadFraming => framing(job),
            Self::Any(triggers) => triggers.iter().flat_map(|trigger| trigger.finds(job)).collect(),
            _ => Vec::new(),
        }
    }
}

fn found<'a>(job: &'a Job, findings: &'a [Finding]) -> impl Iterator<Item = Find> + 'a {
    let conditions = job.now.conditions().values();
    conditions.filter(|condition| findings.contains(&condition.value.finding)).map(Find::of)
}

fn spots<'a>(job: &'a Job, kinds: &'a [DamageKind]) -> impl Iterator<Item = Find> + 'a {
    bad_spots(job).filter(|spot| kinds.contains(&spot.value.kind)).map(Find::of)
}

fn framing(job: &Job) -> Vec<Find> {
    let bad = found(job, &[Finding::Soft, Finding::Rotten, Finding::Cracked, Finding::Strands]);
    let spots = spots(job, &[DamageKind::Soft, DamageKind::Notch, DamageKind::Hole]);
    let states = job.now.particulars().values().filter(|it| it.value.what.as_str() == list::STATE.what);
    let unsound = states.filter(|it| it.value.is.typed() != SOUND);
    bad.chain(spots).chain(awl_goes_in(job).map(Find::of)).chain(unsound.map(Find::of)).collect()
}
