//! What lies within one bay of what comes out.

use crate::engine::geometry::Rect;
use crate::engine::job::Job;
use crate::engine::survey::{Floor, Framing};
use crate::engine::units::Length;

/// What of the framing lies within one bay of what comes out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Near {
    /// Nobody said what comes out.
    NothingComesOut,
    /// Nobody laid out the joists.
    NoJoists,
    /// These joists.
    Joists {
        /// Their numbers, in order.
        joists: Vec<u16>,
        /// Does what comes out reach within one bay of a wall, where rim joist and sill are?
        walls: bool,
        /// Does the whole floor come out?
        whole: bool,
    },
}

impl Near {
    /// Of a job.
    pub fn of(job: &Job) -> Self {
        let Some(floor) = Floor::of(job) else { return Self::NothingComesOut };
        let whole = floor.whole.is_some();
        if !whole && floor.openings.is_empty() {
            return Self::NothingComesOut;
        }
        let Some(framing) = &floor.joists else { return Self::NoJoists };
        if whole {
            return Self::Joists { joists: (1..=framing.count()).collect(), walls: true, whole };
        }
        let rects: Vec<_> = floor.openings.iter().map(|(_, rect)| *rect).collect();
        Self::Joists {
            joists: joists_near(framing, &rects),
            walls: reaches_a_wall(&floor, &rects, framing.widest_spacing()),
            whole,
        }
    }

    /// The joists.
    pub fn joists(&self) -> &[u16] {
        match self {
            Self::Joists { joists, .. } => joists,
            Self::NothingComesOut | Self::NoJoists => &[],
        }
    }
}

/// The joists under the openings and the next one on each side, however far that is.
fn joists_near(framing: &Framing, rects: &[Rect]) -> Vec<u16> {
    let run = framing.run();
    let mut near = Vec::new();
    for rect in rects {
        let (least, most) = (run.across(rect.least()), run.across(rect.most()));
        let under: Vec<_> =
            (1..=framing.count()).filter(|number| (least..=most).contains(&framing.center(*number))).collect();
        let before = (1..=framing.count()).filter(|number| framing.center(*number) < least).max();
        let after = (1..=framing.count()).find(|number| framing.center(*number) > most);
        near.extend(before.into_iter().chain(under).chain(after));
    }
    near.sort_unstable();
    near.dedup();
    near
}

/// Does an opening come within a bay of a wall? Where the walls do not close, it may.
fn reaches_a_wall(floor: &Floor, rects: &[Rect], bay: Length) -> bool {
    let Ok(outline) = &floor.outline else { return true };
    // One that ends just a bay from a wall counts as within it.
    let reach = bay + Length::sixty_fourths(1);
    !rects.iter().all(|rect| outline.holds_rect(rect.grown(reach)))
}
