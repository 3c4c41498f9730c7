//! How much is wet: the range, the opening for it, and what that leaves.

use super::{Cell, Grid, Spot};
use crate::engine::geometry::{Outline, Point, Rect};
use crate::engine::survey::{Floor, propose};
use crate::engine::units::{Area, Length, MoistureContent};

/// Why it is not told how much is wet. No opening is proposed then either.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Untold {
    /// There are fewer readings than [`super::FEWEST_DRAWN`].
    TooFew,
    /// No reading reaches so much of the floor, which is too much: there it may be dry, and it may
    /// all be wet.
    Unread(Area),
}

/// How much is wet, where readings reach the floor, or all but a little of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wet {
    /// What is to be expected: every cell by the chance that it is wet.
    pub area: Area,
    /// What all but a few of the floors that the readings allow have at least, within
    /// [`super::CLOSE`] of readings over the limit.
    pub at_least: Area,
    /// What all but a few of them have at most, each reading taken for as wet as the wood may
    /// be; never less than what readings stand for that may be over the limit. What is unread
    /// counts as wet.
    pub at_most: Area,
    /// No reading reaches so much of the floor.
    pub unread: Area,
    /// The largest opening around what is rather wet than not, its ends on joist centers, as
    /// far as the room goes and nothing is open already; none where nothing is.
    pub opening: Option<Rect>,
    /// How much is rather wet than not and lies neither in that nor in an opening that is
    /// logged.
    pub left: Area,
}

/// What part of the floors that the readings allow may have less than "at least" or more
/// than "at most" (judgement: so that the truth lies between in nine of ten floors of any
/// kind, those included that no way foresees).
const FEW: f64 = 0.03;

/// Of so many parts of the floor one may be unread, and it is told how much is wet all the same
/// (judgement: a corner that counts as wet makes the range a little wider, and no less true; with
/// more, the range would say little but that).
const ONE_PART_OF: usize = 20;

/// From this chance on a spot of the floor is rather wet than not.
const RATHER: f64 = 0.5;

/// How many cells are wet on each floor that was drawn.
pub(super) struct Counts<'a> {
    /// Of those close to readings over the limit.
    pub close: &'a [f64],
    /// Of all.
    pub as_read: &'a [f64],
    /// Of all, each reading taken for as wet as the wood may be.
    pub at_worst: &'a [f64],
}

/// Is so much of the floor unread that it is not told how much is wet? Both in cells.
pub(super) const fn is_too_much(unread: usize, floor: usize) -> bool {
    unread * ONE_PART_OF > floor
}

/// What all but a few have at least, and at most.
fn ends(wet: &[f64]) -> [f64; 2] {
    let mut wet = wet.to_vec();
    wet.sort_by(f64::total_cmp);
    let (last, few) = (wet.len().saturating_sub(1), (wet.len() as f64 * FEW) as usize);
    [few, last.saturating_sub(few)].map(|at| wet.get(at).copied().unwrap_or_default())
}

impl Wet {
    pub(super) fn of(
        grid: &Grid,
        counts: &Counts<'_>,
        spots: &[Spot],
        floor: &Floor,
        outline: &Outline,
        limit: MoistureContent,
    ) -> Self {
        let [[least, _], [_, most], [_, most_at_worst]] = [counts.close, counts.as_read, counts.at_worst].map(ends);
        let expected: f64 = grid.floor().map(|cell| cell.chance).sum();
        let stands_for = grid.floor().filter(|cell| nearest(spots, cell.at).any(|spot| spot.may_be_over(limit)));
        let at_least = least.min(expected);
        let unread = grid.unread() as f64;
        let at_most = most.max(most_at_worst).max(expected).max(stands_for.count() as f64) + unread;
        let at_most = at_most.min(grid.floor().count() as f64);
        let [area, at_least, at_most, unread] =
            [expected, at_least, at_most, unread].map(|cells| grid.area(outline, cells));
        // Where the whole floor comes out there is nothing to open and nothing left.
        let is_wet = |cell: &Cell| cell.chance >= RATHER && floor.whole.is_none();
        let wet = grid.bounds_where(is_wet);
        let opening = wet.and_then(|wet| propose(floor, outline, to_joists(floor, wet)));
        let opened: Vec<_> = floor.openings.iter().map(|(_, rect)| *rect).chain(opening).collect();
        let is_left = |cell: &&Cell| is_wet(cell) && !opened.iter().any(|rect| rect.contains(cell.at));
        let left = grid.area(outline, grid.floor().filter(is_left).count() as f64);
        Self { area, at_least, at_most, unread, opening, left }
    }
}

/// The readings nearest to a place: of several at one place all.
fn nearest(spots: &[Spot], at: Point) -> impl Iterator<Item = &Spot> {
    let away = move |spot: &Spot| (spot.at - at).length();
    let least = spots.iter().map(away).min();
    spots.iter().filter(move |spot| Some(away(spot)) == least)
}

/// A rectangle, its ends across the joists moved out to the next centers.
fn to_joists(floor: &Floor, rect: Rect) -> Rect {
    let Some(joists) = &floor.joists else { return rect };
    let run = joists.run();
    let (least, most) = (rect.least(), rect.most());
    let before = joists.centers().filter(|center| *center <= run.across(least)).max();
    let behind = joists.centers().filter(|center| *center >= run.across(most)).min();
    let put = |point: Point, center: Option<Length>| center.map_or(point, |center| run.with_across(point, center));
    Rect::between(put(least, before), put(most, behind)).unwrap_or(rect)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_twentieth_of_the_floor_may_be_unread_and_no_more() {
        assert_eq!([29, 30, 31].map(|unread| is_too_much(unread, 600)), [false, false, true]);
        assert_eq!([0, 1].map(|unread| is_too_much(unread, 19)), [false, true]);
    }
}
