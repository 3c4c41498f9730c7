//! Notches: those that lie close count as one, and where one lies says how deep it may be.

use crate::engine::framing::joist::Joist;
use crate::engine::framing::section::longest_notch;
use crate::engine::framing::since::Since;
use crate::engine::framing::spots::{Notch, NotchAt, SoftAt, Stretch};
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// Notches of a joist, those nearer to each other than a notch may be long as one: as long
/// as from the first to the last, and as deep as what they take together. Otherwise a long
/// notch would be allowed in slices ([`Source::NotchesTogether`]).
pub(super) fn notches(joist: &Joist) -> Vec<Notch> {
    let is_placed = |notch: &Notch| notch.stretch.ends().is_some() && !notch.is_in_side();
    let (mut placed, apart_from_these): (Vec<_>, Vec<_>) = joist.spots.notches.iter().copied().partition(is_placed);
    placed.sort_by_key(|notch| notch.stretch.from);
    let apart = joist.depth.map_or(Length::ZERO, longest_notch);
    let mut groups: Vec<Vec<Notch>> = Vec::new();
    let mut end = None;
    for notch in placed {
        let is_close = end.zip(notch.stretch.from).is_some_and(|(end, from): (Length, Length)| from - end < apart);
        match groups.last_mut().filter(|_| is_close) {
            Some(group) => group.push(notch),
            None => groups.push(vec![notch]),
        }
        end = if is_close { end.max(notch.stretch.to) } else { notch.stretch.to };
    }
    groups.iter().filter_map(|group| as_one(group)).chain(apart_from_these).collect()
}

fn as_one(group: &[Notch]) -> Option<Notch> {
    let first = group.first()?;
    let to = group.iter().filter_map(|notch| notch.stretch.to).max();
    Some(Notch {
        depth: depth_together(group),
        stretch: Stretch { to, ..first.stretch },
        since: Since::all(group.iter().map(|notch| notch.since)),
        is_several: group.len() > 1,
        ..*first
    })
}

/// What notches take of the depth together: the deepest of each edge. Where nobody said at
/// which edge one is, the two deepest may lie across from each other. None if one was not
/// measured.
fn depth_together(group: &[Notch]) -> Option<Length> {
    let mut depths = group.iter().map(|notch| notch.depth).collect::<Option<Vec<_>>>()?;
    let at =
        |edge: SoftAt| group.iter().filter(move |notch| notch.edge == Some(edge)).filter_map(|notch| notch.depth).max();
    let [upper, lower] = [SoftAt::UpperEdge, SoftAt::LowerEdge].map(|edge| at(edge).unwrap_or(Length::ZERO));
    if group.iter().all(|notch| notch.edge.is_some_and(SoftAt::is_edge)) {
        return Some(upper + lower);
    }
    depths.sort_unstable();
    Some(depths.into_iter().rev().take(2).fold(Length::ZERO, |all, depth| all + depth))
}

impl Joist {
    /// Is it notched at an end? That takes nothing of the section that spans.
    pub fn is_notched_at_end(&self) -> bool {
        let joist = self.as_it_lies();
        notches(&joist).iter().any(|notch| !notch.is_in_side() && notch.part(&joist) == Some(NotchAt::End))
    }
}

/// What notches take of the breadth: the deepest of each side, as if they lay across from each
/// other.
pub(super) fn notched_of_breadth(joist: &Joist) -> Length {
    let deepest = |side: SoftAt| {
        let at_side = joist.spots.notches.iter().filter(|notch| notch.edge == Some(side));
        at_side.filter_map(|notch| notch.depth).max().unwrap_or(Length::ZERO)
    };
    deepest(SoftAt::NearSide) + deepest(SoftAt::FarSide)
}

impl Notch {
    /// Is it cut into a side, so that it takes of the breadth and of no edge?
    pub(super) fn is_in_side(&self) -> bool {
        self.edge.is_some_and(SoftAt::is_side)
    }

    /// In which part of the span it is; none if nobody said. One that touches the middle
    /// third is in it. Only one that reaches the bearing is at an end, and only as far as a
    /// notch may be long: what goes on from there weakens the span like any other.
    pub(super) fn part(&self, joist: &Joist) -> Option<NotchAt> {
        let is_short = |past: Length| joist.depth.is_some_and(|depth| past <= longest_notch(depth));
        let Some(((from, to), clear)) = self.stretch.ends().zip(joist.clear) else {
            return match (self.at, self.stretch.long()) {
                (Some(NotchAt::End), Some(long)) if !is_short(long) => Some(NotchAt::Outer),
                (at, _) => at,
            };
        };
        Some(match () {
            () if from * 3 < clear * 2 && to * 3 > clear => NotchAt::Middle,
            () if self.stretch.is_beyond(clear) => NotchAt::Beyond,
            () if !from.is_positive() && is_short(to) => NotchAt::End,
            () if to >= clear && is_short(clear - from) => NotchAt::End,
            () => NotchAt::Outer,
        })
    }

    /// Does it begin at a bearing, however far it goes?
    pub(super) fn is_from_bearing(&self, joist: &Joist) -> bool {
        let reaches = |((from, to), clear): ((Length, Length), Length)| !from.is_positive() || to >= clear;
        self.stretch.ends().zip(joist.clear).map_or(self.at == Some(NotchAt::End), reaches)
    }
}
