//! Words that two phones say differently, and nobody can tell which came last.

use crate::engine::job::{Job, Kind, Seen};
use crate::engine::particular::{Item, Part, Particulars, list};

/// What all joists are judged by.
const OF_ALL: [&Item; 7] =
    [&list::SPECIES, &list::GRADE, &list::EDITION, &list::INCISED, &list::LIVE_LOAD, &list::DEAD_LOAD, &list::COVERING];
/// What sisters and new joists are judged by.
pub(super) const OF_SISTERS: [&Item; 5] =
    [&list::SISTER_BREADTH, &list::SISTER_DEPTH, &list::SISTER_SPECIES, &list::SISTER_GRADE, &list::SISTER_INCISED];

/// Particulars of a joist, or of all, of which the last word is not surely the last.
pub(super) fn said_apart(said: Particulars<'_>, joist: &Part) -> Vec<&'static str> {
    let items = list::OF_JOIST.iter().filter(|item| item.what != list::DONE.what);
    let is_apart = |item: &&Item| is_said_apart(said, joist, item) || is_said_apart(said, &Part::Joists, item);
    items.filter(is_apart).map(|item| item.what).collect()
}

/// The same of what all joists are judged by.
pub(super) fn of_all_said_apart(job: &Job) -> Vec<&'static str> {
    let said = Particulars::of(job);
    let items = OF_ALL.iter().filter(|item| is_said_apart(said, &Part::House, item)).map(|item| item.what);
    items.chain(centers_apart(job).then_some("joist centers")).collect()
}

/// The same of what sisters are judged by.
pub(super) fn of_sisters_said_apart(said: Particulars<'_>) -> Vec<&'static str> {
    OF_SISTERS.iter().filter(|item| is_said_apart(said, &Part::House, item)).map(|item| item.what).collect()
}

fn is_said_apart(said: Particulars<'_>, part: &Part, item: &Item) -> bool {
    is_apart(said.each(part, item), |one, other| one.is.says_the_same(&other.is))
}

fn centers_apart(job: &Job) -> bool {
    let all = || job.now.joist_centers().values();
    all().any(|it| {
        let of_it = all().filter(|other| (other.value.of, other.value.joist) == (it.value.of, it.value.joist));
        is_apart(of_it, |one, other| one.center.value == other.center.value)
    })
}

/// Is one of them said otherwise, and not surely before the last?
fn is_apart<'a, T: Kind + 'a>(
    all: impl DoubleEndedIterator<Item = Seen<'a, T>>,
    is_same: impl Fn(&T, &T) -> bool,
) -> bool {
    let mut words = all.rev();
    let last = words.next();
    last.is_some_and(|last| words.any(|it| !is_same(it.value, last.value) && !last.when().is_after(it.when())))
}
