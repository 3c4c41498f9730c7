//! Files that leave something out on purpose, and say so.

use super::extras::Extras;
use super::model::{JobFile, LeftOut, Made};
use super::threads::threads_with;
use super::version::Version;
use crate::engine::entry::JobId;
use crate::engine::job::{Act, Book, Entry, Fact, Observation};

/// The file without photos. What was said of them, and their digests, stay.
#[must_use]
pub fn without_photos(mut file: JobFile) -> JobFile {
    file.photos.clear();
    file.left_out.insert(LeftOut::Photos);
    file
}

/// The file without the client's details: without every thread that ever named the
/// job's title or where it is, corrections and withdrawals included.
///
/// What this build cannot read goes too, entries and fields alike: it might say the
/// same in a later version's words. Notes and photos stay, and are for people to judge.
#[must_use]
pub fn without_client(mut file: JobFile) -> JobFile {
    let told = threads_with(&file.records, names_the_client);
    file.records.retain(|record| record.entry().is_some() && !told.contains(&record.id()));
    file.extra = Extras::default();
    file.job.extra = Extras::default();
    for photo in &mut file.photos {
        photo.extra = Extras::default();
    }
    // Nothing newer is left in it.
    file.version = Version::CURRENT;
    file.left_out.insert(LeftOut::Client);
    file
}

/// A file that brings a second phone to the same job: what it is, its visits, places,
/// rooms and meters, but no reading and no photo. In all else it is a job file.
#[must_use]
pub fn invitation(book: &Book, job: JobId, revision: u32, made: Made) -> JobFile {
    let mut file = JobFile::of(book, job, revision, made);
    let needed = threads_with(&file.records, a_second_phone_needs_it);
    file.records.retain(|record| record.entry().is_some() && needed.contains(&record.id()));
    file.version = Version::CURRENT;
    file.left_out.extend([LeftOut::Readings, LeftOut::Photos]);
    file
}

fn names_the_client(entry: &Entry) -> bool {
    matches!(said(&entry.act), Some(Observation::Fact(Fact::Title(_) | Fact::Site(_))))
}

/// Every kind is named, so that the compiler asks about a new one.
fn a_second_phone_needs_it(entry: &Entry) -> bool {
    said(&entry.act).is_some_and(|observation| match observation {
        Observation::Fact(_)
        | Observation::Visit(_)
        | Observation::Place(_)
        | Observation::Room(_)
        | Observation::Side(_)
        | Observation::Tie(_)
        | Observation::Offset(_)
        | Observation::Corner(_)
        | Observation::Opening(_)
        | Observation::CutBack(_)
        | Observation::WholeFloor(_)
        | Observation::Obstacle(_)
        | Observation::Joists(_)
        | Observation::JoistCenter(_)
        | Observation::Particular(_)
        | Observation::Meter(_) => true,
        Observation::Measure(_)
        | Observation::Layer(_)
        | Observation::OnHand(_)
        | Observation::Level(_)
        | Observation::Reading(_)
        | Observation::AirReading(_)
        | Observation::SurfaceReading(_)
        | Observation::Condition(_)
        | Observation::Check(_)
        | Observation::Damage(_)
        | Observation::Photo(_)
        | Observation::Acknowledgement(_)
        | Observation::HandOver(_) => false,
    })
}

const fn said(act: &Act) -> Option<&Observation> {
    match act {
        Act::Record(observation) | Act::Correct { to: observation, .. } => Some(observation),
        Act::Withdraw { .. } => None,
    }
}
