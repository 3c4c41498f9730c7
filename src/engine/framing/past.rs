//! What lies past the spans of a joist that were measured: other joists, and what carries
//! them. Nothing here judges it.

use super::joist::{Joist, joists};
use super::member::{BearsOn, OverGirder};
use super::since::Since;
use crate::engine::geometry::Rect;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::survey::{CutLines, Floor, Framing};
use crate::engine::units::Length;

/// The name of the check that says that what lies there was looked at by somebody. It never
/// changes.
pub const PAST_SPANS: &str = "past_spans";

/// So much of a floor lies on what carries a joist, at each support: on a sill and the wall
/// over it, or on a girder (judgement). More only where more bears.
pub const ON_A_SUPPORT: Length = Length::inches(6);

/// What comes out reaches past the spans that were measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Past {
    /// Where the measured span ends, along the joist; of one that goes through, its next span.
    pub ends_at: Length,
    /// Since that is so.
    pub since: Since,
    /// Was it said later that what lies there was looked at?
    pub is_seen_to: bool,
}

/// Is it asked of any joist?
pub fn asks_for_past_spans(job: &Job) -> bool {
    joists(job).iter().any(|joist| joist.past.is_some())
}

impl Past {
    /// Of a joist, if what comes out, or a bay around it, reaches past what was measured of it
    /// on floor that goes on.
    pub(super) fn of(job: &Job, floor: &Floor, framing: &Framing, joist: &Joist) -> Option<Self> {
        let (run, center) = (framing.run(), framing.center(joist.number.get()));
        let stretches = floor.stretches(joist.number)?;
        let begins = stretches.first()?.from;
        let measured = joist.measured_along()?;
        let ends = begins + measured;
        let lies_past = stretches.iter().filter(|it| it.to > ends + joist.on_its_supports());
        // What ends just a bay from it counts as within it.
        let bay = framing.widest_spacing() + Length::sixty_fourths(1);
        let reaches = |out: &Rect, to: Length| {
            let out = out.grown(bay);
            let is_here = (run.across(out.least())..=run.across(out.most())).contains(&center);
            is_here && run.along(out.most()) >= ends && run.along(out.least()) <= to
        };
        let outline = floor.outline.as_ref().ok();
        let out: Vec<_> = CutLines::of(job, floor, outline).iter().map(|lines| lines.cut).collect();
        let is_reached = |to| floor.whole.is_some() || out.iter().any(|out| reaches(out, to));
        lies_past.map(|it| it.to).any(is_reached).then(|| {
            let since = placed(job).and(spanned(job, joist));
            Self {
                ends_at: measured,
                since,
                is_seen_to: Since::yes_to(job, PAST_SPANS).is_some_and(|said| said.is_after(since)),
            }
        })
    }
}

impl Joist {
    /// How much of it was measured: its clear span, and the next one where it goes through.
    fn measured_along(&self) -> Option<Length> {
        Some(self.clear? + self.next_clear.filter(|_| self.goes_through()).unwrap_or(Length::ZERO))
    }

    /// How much of a floor may lie on what carries it: at both ends, and on the girder that it
    /// goes through over.
    fn on_its_supports(&self) -> Length {
        let girder = if self.goes_through() { ON_A_SUPPORT } else { Length::ZERO };
        self.on_a_support() * 2 + girder
    }

    fn on_a_support(&self) -> Length {
        let bearing = self.bearing.filter(|_| self.bearing_asked().is_some());
        ON_A_SUPPORT.max(bearing.unwrap_or(Length::ZERO))
    }

    /// Does its clear span end before the far wall, though it is said to reach no girder, and to
    /// hang in no hanger there?
    pub(super) fn hangs_in_the_air(&self) -> bool {
        let ends = self.over_girder == Some(OverGirder::Before) && self.bears_on != Some(BearsOn::Hanger);
        let is_short = |(clear, long): (Length, Length)| clear + self.on_a_support() * 2 < long;
        ends && self.clear.zip(self.lies_along).is_some_and(is_short)
    }
}

/// Since what comes out is placed as it is.
fn placed(job: &Job) -> Since {
    let openings = job.now.openings().values().map(|it| Since::of(&it));
    let cut_backs = job.now.cut_backs().values().map(|it| Since::of(&it));
    let whole = job.now.whole_floors().values().map(|it| Since::of(&it));
    Since::all(openings.chain(cut_backs).chain(whole))
}

/// Since its spans end where they do.
fn spanned(job: &Job, joist: &Joist) -> Since {
    let bears = Since::said_of_joist(Particulars::of(job), &Part::Joist(joist.number), &list::BEARS_ON);
    Since::all([joist.since.span, joist.since.over_girder, joist.since.walls, Since::laid_out(job), bears])
}
