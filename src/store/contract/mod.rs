//! The port's promises as checks: one suite for every store.
//!
//! `memory` runs it natively, the page `tests/browser/store_contract.rs` runs it on
//! the browser's database. A check answers instead of panicking, since a panic ends
//! a page; it knows the port and nothing of the store behind it.
//!
//! That each promise is really checked is tested in `sins`: stores that break one
//! promise each must be found out.

mod blobs;
mod lines;
mod notes;
#[cfg(test)]
mod sins;

use super::{JobKey, Store, StoreError};
use std::fmt;
use std::pin::Pin;

/// Storage that can be opened more than once.
pub trait Storage {
    /// The store that opens it.
    type Store: Store;

    /// Opens the storage anew: what one opening has saved, the next one finds. At
    /// first there is nothing in it.
    fn open(&self) -> Self::Store;
}

/// A promise that was not kept, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken(String);

/// How a check ends.
pub type Outcome = Result<(), Broken>;

/// One check, to be run on storage of its own that is still empty.
pub type Check<S> = for<'a> fn(&'a S) -> Pin<Box<dyn Future<Output = Outcome> + 'a>>;

/// All checks, each with the law that it states.
pub fn checks<S: Storage>() -> Vec<(&'static str, Check<S>)> {
    macro_rules! checks {
        ($($file:ident::$law:ident,)*) => {
            vec![$(named::<S>(stringify!($law), |storage| Box::pin($file::$law(storage)))),*]
        };
    }
    checks![
        lines::new_storage_is_empty,
        lines::a_line_comes_back_byte_for_byte,
        lines::the_same_line_again_is_nothing_new,
        lines::one_id_with_other_json_is_kept_beside_the_first,
        lines::lines_come_in_their_own_order,
        lines::jobs_are_kept_apart,
        lines::an_empty_batch_saves_nothing,
        lines::a_large_batch_is_kept_whole,
        lines::lines_are_there_after_reopening,
        lines::two_openings_see_each_other,
        notes::a_note_says_what_it_was_last_told,
        notes::a_note_comes_back_byte_for_byte,
        notes::a_removed_note_is_gone,
        notes::the_last_change_in_a_batch_holds,
        notes::notes_are_listed_by_scope_and_sorted,
        notes::notes_alone_make_no_job,
        notes::a_note_and_its_entry_change_together,
        notes::notes_are_there_after_reopening,
        blobs::a_photo_comes_back_byte_for_byte,
        blobs::a_photo_and_its_thumbnail_are_kept_apart,
        blobs::a_second_photo_takes_the_first_ones_place,
        blobs::removing_takes_photo_and_thumbnail,
        blobs::blob_keys_are_sorted,
        blobs::photos_are_there_after_reopening,
    ]
}

/// Lets the compiler see each closure as the function pointer that it is.
fn named<S: Storage>(law: &'static str, check: Check<S>) -> (&'static str, Check<S>) {
    (law, check)
}

/// Fails, naming what was looked at, unless both are equal.
fn same<T: PartialEq + fmt::Debug>(what: &str, got: &T, wanted: &T) -> Outcome {
    if got == wanted { Ok(()) } else { Err(Broken(format!("{what}: {got:?} instead of {wanted:?}"))) }
}

/// A job key for checks.
fn job(number: u128) -> JobKey {
    JobKey::from_bits(number)
}

/// Texts that careless storage changes.
const ODD_TEXTS: [&str; 11] = [
    "",
    " ",
    "{}\n",
    "{\"b\": 1,  \"a\": 1.0}\r\n",
    "not JSON at all",
    "nul \0 within",
    "\u{feff}a byte order mark",
    "\u{e9} and e\u{301}",
    "\u{2028}\u{2029}\u{fffd}",
    "\u{10ffff} \u{1f9f1}",
    "12' 3 1/2\" \\u0041",
];

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Broken {}

impl From<StoreError> for Broken {
    fn from(error: StoreError) -> Self {
        Self(format!("the store failed: {error}"))
    }
}
