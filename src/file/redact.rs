//! Files that leave something out on purpose, and say so.

use super::extras::Extras;
use super::model::{JobFile, LeftOut, Made};
use super::threads::threads_with;
use super::version::Version;
use crate::engine::entry::{EntryId, JobId};
use crate::engine::job::{Act, Book, Entry, Fact, Observation, Record};

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
/// same in a later version's words. That an entry went is told, and holds closing: what it
/// said may matter. Notes and photos stay, and are for people to judge.
#[must_use]
pub fn without_client(mut file: JobFile) -> JobFile {
    let told = threads_with(&file.records, names_the_client);
    leave_out(&mut file, |id| told.contains(id));
    for record in &mut file.records {
        if !record.is_absent() && !record.is_read_wholly() {
            *record = Record::absent(record.id());
            file.left_out.insert(LeftOut::NotRead);
        }
    }
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

/// A file that brings a second phone to the same job: all that anything is decided by, so that
/// nothing looks better there than here. Who read which caution is left out: whoever holds the
/// second phone reads them too. So are the photos.
#[must_use]
pub fn invitation(book: &Book, job: JobId, revision: u32, made: Made) -> JobFile {
    let mut file = JobFile::of(book, job, revision, made);
    let read = threads_with(&file.records, is_caution_read);
    let other = threads_with(&file.records, |entry| said(&entry.act).is_some() && !is_caution_read(entry));
    leave_out(&mut file, |id| read.contains(id) && !other.contains(id));
    file.left_out.extend([LeftOut::CautionsRead, LeftOut::Photos]);
    file
}

/// Leaves these entries out and says that they were: nothing is decided by them, and their ids
/// are given.
fn leave_out(file: &mut JobFile, is_one: impl Fn(&EntryId) -> bool) {
    for record in file.records.iter_mut().filter(|record| is_one(&record.id())) {
        *record = Record::left_out(record.id());
    }
    file.records.dedup_by(|one, other| one.is_absent() && one.id() == other.id());
}

fn is_caution_read(entry: &Entry) -> bool {
    matches!(said(&entry.act), Some(Observation::Acknowledgement(_)))
}

fn names_the_client(entry: &Entry) -> bool {
    matches!(said(&entry.act), Some(Observation::Fact(Fact::Title(_) | Fact::Site(_))))
}

const fn said(act: &Act) -> Option<&Observation> {
    match act {
        Act::Record(observation) | Act::Correct { to: observation, .. } => Some(observation),
        Act::Withdraw { .. } => None,
    }
}
