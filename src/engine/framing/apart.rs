//! Words that two phones say differently, and nobody can tell which came last.

use crate::engine::particular::{Part, Particulars, list};

/// Particulars of a joist, or of all, of which the last word is not surely the last.
pub(super) fn said_apart(said: Particulars<'_>, joist: &Part) -> Vec<&'static str> {
    let is_apart = |of: &Part, item: &list::Item| {
        let mut words = said.each(of, item).rev();
        let last = words.next();
        last.is_some_and(|last| words.any(|it| it.value.is != last.value.is && !last.when().is_after(it.when())))
    };
    let items = list::OF_JOIST.iter().filter(|item| item.what != list::DONE.what);
    items.filter(|item| is_apart(joist, item) || is_apart(&Part::Joists, item)).map(|item| item.what).collect()
}
