//! What logs of before format 1.5 say of a joist's spots: one of each kind, as particulars.

use super::measured::{Logged, is_put_right, logged};
use super::member::Awl;
use super::since::Since;
use super::spots::{Goes, Hole, Notch, NotchAt, Soft, SoftAt, Spots, Stretch};
use crate::engine::job::Seen;
use crate::engine::particular::{Item, Part, Particular, Particulars, Value, list};
use crate::engine::units::Length;

impl Spots {
    /// What logs of before format 1.5 say: one spot of each kind.
    pub(super) fn said_before(&mut self, said: Particulars<'_>, part: &Part) {
        let length = |item| said.length(part, item);
        let along = |long| Stretch { long, ..Stretch::default() };
        let since = |items: &[&Item]| Since::all(items.iter().map(|item| Since::said(said, part, item)));
        if let Some((depth, logged)) = soft_depth(said, part) {
            let at = said.words(part, &list::SOFT_FACE).and_then(SoftAt::said);
            let stretch = along(length(&list::SOFT_LENGTH));
            let since = logged.0.and(since(&[&list::SOFT_LENGTH, &list::SOFT_FACE]));
            self.soft.push(Soft { goes: Goes::of(depth), at, stretch, since, visit: logged.1 });
            // It was asked of the joist as a whole.
            self.awl = self.awl.or(Some(if depth.is_positive() { Awl::GoesIn } else { Awl::Stops }));
        }
        if let Some(depth) = length(&list::NOTCH).filter(|depth| depth.is_positive()) {
            let at = said.words(part, &list::NOTCH_AT).and_then(NotchAt::said);
            let stretch = along(length(&list::NOTCH_LENGTH));
            let since = since(&[&list::NOTCH, &list::NOTCH_AT, &list::NOTCH_LENGTH]);
            let depth = Some(depth);
            self.notches.push(Notch { depth, at, edge: None, stretch, since, is_several: false });
        }
        if let Some(across) = length(&list::HOLE).filter(|across| across.is_positive()) {
            let to_edge = length(&list::HOLE_TO_EDGE);
            let since = since(&[&list::HOLE, &list::HOLE_TO_EDGE]);
            let (across, high) = (Some(across), Some(across));
            self.holes.push(Hole { across, high, to_edge, stretch: Stretch::default(), since });
        }
    }
}

/// What an old log says of how deep an awl goes in, and when. Wood does not heal: a depth stands
/// until another was said in the same visit.
fn soft_depth(said: Particulars<'_>, part: &Part) -> Option<(Length, Logged)> {
    let all: Vec<_> = said.each(part, &list::SOFT_DEPTH).collect();
    let stands = all.iter().filter(|it| !all.iter().any(|other| is_put_right(it, other)));
    let depth = |it: &Seen<'_, Particular>| match &it.value.is {
        Value::Length(typed) => typed.value,
        Value::Amount(_) | Value::Words(_) => Length::ZERO,
    };
    let deepest = stands.max_by_key(|it| depth(it))?;
    Some((depth(deepest), logged(deepest)))
}
