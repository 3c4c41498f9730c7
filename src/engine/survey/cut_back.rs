//! Where the old floor is really cut: an opening is taken out to joists, so that old and
//! new floor both bear, and as wide as the new sheets are ripped.

use super::{Floor, Framing};
use crate::engine::entry::EntryId;
use crate::engine::geometry::{Outline, Point, Rect};
use crate::engine::job::Job;
use crate::engine::units::{Length, Typed};
use serde::{Deserialize, Serialize};

/// How far the floor around an opening is cut back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct CutBack {
    /// The opening.
    pub opening: EntryId,
    /// How wide it is cut along the joists, from the edge that it was placed by: the rip
    /// that the new sheets are to have. None for as wide as it was placed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Typed<Length>>,
    /// How far beyond that the finished floor comes up, all around. None where nobody has
    /// said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub finish: Option<Typed<Length>>,
}

/// The lines of an opening. Derived, never kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CutLines {
    /// The opening.
    pub opening: EntryId,
    /// What is to come out, as it was placed.
    pub placed: Rect,
    /// What does come out: its ends on joist centers where there are any.
    pub cut: Rect,
    /// Has each end a joist center under it?
    pub bears: bool,
    /// Would the stated rip reach beyond the walls? It is left out then.
    pub is_too_wide: bool,
    /// Where the finished floor is cut, if that has a line of its own.
    pub finish: Option<Rect>,
}

impl CutBack {
    /// What was last said of an opening.
    pub fn of(job: &Job, opening: EntryId) -> Option<(EntryId, &Self)> {
        let said = job.now.cut_backs().iter().rev().find(|(_, cut_back)| cut_back.value.opening == opening);
        said.map(|(id, cut_back)| (*id, cut_back.value))
    }
}

impl CutLines {
    /// The lines of every opening on joists that are laid out.
    pub fn of(job: &Job, floor: &Floor, outline: Option<&Outline>) -> Vec<Self> {
        let Some(joists) = &floor.joists else { return Vec::new() };
        let lines = floor.openings.iter().map(|(opening, placed)| {
            let said = CutBack::of(job, *opening).map(|(_, said)| said);
            let width = said.and_then(|said| said.width.as_ref()).map(|width| width.value);
            let ripped = width.and_then(|width| floor.ripped(job, *opening, width));
            let fits = |rect: &Rect| outline.is_none_or(|outline| outline.holds_rect(*rect));
            let is_too_wide = ripped.is_some_and(|ripped| !fits(&ripped) && fits(placed));
            let cut = to_joists(ripped.filter(|_| !is_too_wide).unwrap_or(*placed), joists, outline);
            let finish = said.and_then(|said| said.finish.as_ref());
            let finish = finish.map(|finish| within(cut.grown(finish.value), outline));
            Self { opening: *opening, placed: *placed, cut, bears: bears(cut, joists), is_too_wide, finish }
        });
        lines.collect()
    }
}

/// The rectangle with its ends moved out to the next joist centers, as far as the room
/// goes.
fn to_joists(placed: Rect, joists: &Framing, outline: Option<&Outline>) -> Rect {
    let run = joists.run();
    let (least, most) = (run.across(placed.least()), run.across(placed.most()));
    let from = joists.centers().filter(|center| *center <= least).max().unwrap_or(least);
    let to = joists.centers().filter(|center| *center >= most).min().unwrap_or(most);
    let grown = Rect::between(run.with_across(placed.least(), from), run.with_across(placed.most(), to));
    let fits = |rect: &Rect| outline.is_some_and(|outline| outline.holds_rect(*rect));
    grown.filter(|grown| fits(grown) || !fits(&placed)).unwrap_or(placed)
}

fn bears(cut: Rect, joists: &Framing) -> bool {
    let run = joists.run();
    let on_joist = |at: Length| joists.centers().any(|center| center == at);
    [cut.least(), cut.most()].into_iter().all(|corner| on_joist(run.across(corner)))
}

/// The part of it that lies between the outermost walls.
fn within(rect: Rect, outline: Option<&Outline>) -> Rect {
    let Some(outline) = outline else { return rect };
    let room = Rect::around(outline.corners());
    let (least, most) = (rect.least(), rect.most());
    let least = Point::new(least.x.max(room.least().x), least.y.max(room.least().y));
    let most = Point::new(most.x.min(room.most().x), most.y.min(room.most().y));
    Rect::between(least, most).unwrap_or(rect)
}
