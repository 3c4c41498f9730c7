//! What is wrong with a joist, spot by spot: one picture of it, whoever said it.
//!
//! An awl's depth, a notch and a hole are entries of their own ([`Damage`]). Logs of before
//! format 1.5 say one of each as particulars. A finding that was logged at a place on the
//! joist is a soft spot whose depth nobody measured, until a spot measures it.

use super::again::{Spot, standing};
use super::damage::{Damage, DamageKind, Depth};
use super::measured::{Logged, answers, is_of_before, is_put_right, logged, measures, visit};
use super::member::{Awl, CutsSaid, Done};
use super::places::Begins;
use super::since::Since;
use crate::engine::condition::Finding;
use crate::engine::job::{InVisit, Job, Seen};
use crate::engine::particular::{Part, Particular, Particulars, list};
use crate::engine::place::Face;
use crate::engine::units::Length;

pub use super::stretch::{BESIDE, Stretch};

/// What is wrong with a joist, spot by spot.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Spots {
    /// Where an awl was pushed in, or soft wood was found.
    pub soft: Vec<Soft>,
    /// What is cut out of its edges.
    pub notches: Vec<Notch>,
    /// What is bored through it.
    pub holes: Vec<Hole>,
    /// What was said of the awl at both ends and in the middle.
    pub awl: Option<Awl>,
    /// Since when that is so.
    pub awl_since: Since,
    /// Did it go in, and nobody logged a spot in that visit or later?
    pub awl_asks_where: bool,
    /// What was said of its cuts as a whole.
    pub cuts: Option<CutsSaid>,
    /// Do its distances mean nothing, because nobody can tell where it begins?
    pub is_unplaced: bool,
}

/// What was found at a place on a member.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Found {
    /// What.
    pub finding: Finding,
    /// At which face of it, if that was said.
    pub face: Option<Face>,
    /// How far along, if that was said.
    pub along: Option<Length>,
    /// Since when it is known.
    pub since: Since,
    /// In which visit that was said.
    pub visit: Option<InVisit>,
}

/// A spot that an awl or an eye found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Soft {
    /// How deep.
    pub goes: Goes,
    /// At which side of the joist; none if nobody said.
    pub at: Option<SoftAt>,
    /// Where along it.
    pub stretch: Stretch,
    /// Since when it is known.
    pub since: Since,
    /// In which visit that was said.
    pub visit: Option<InVisit>,
}

/// How deep an awl goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Goes {
    /// It stops at once.
    Nowhere,
    /// So deep.
    In(Length),
    /// Found soft, and nobody said how deep.
    NotSaid,
    /// Found rotten, and nobody said how deep.
    Rotten,
    /// Nobody can get there.
    CannotReach,
}

/// At which side of a joist it is soft.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SoftAt {
    /// The upper edge: it loses depth.
    UpperEdge,
    /// The lower edge: it loses depth.
    LowerEdge,
    /// The side toward joist 1: it loses breadth.
    NearSide,
    /// The other side: it loses breadth.
    FarSide,
    /// An end: it loses bearing.
    End,
}

/// A notch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Notch {
    /// How deep; none if nobody measured.
    pub depth: Option<Length>,
    /// In which part of the span, where only that was said.
    pub at: Option<NotchAt>,
    /// In which edge; none if nobody said.
    pub edge: Option<SoftAt>,
    /// Where along the joist.
    pub stretch: Stretch,
    /// Since when it is known.
    pub since: Since,
    /// Is it several that lie close to each other?
    pub is_several: bool,
}

/// Where a notch is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotchAt {
    /// At an end, over the bearing.
    End,
    /// In an outer third of the span.
    Outer,
    /// In the middle third.
    Middle,
    /// Past the span that was measured.
    Beyond,
}

/// A hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hole {
    /// How high or wide, whichever is more; none if nobody measured.
    pub across: Option<Length>,
    /// How high; none if nobody measured that by itself.
    pub high: Option<Length>,
    /// To the nearest edge; none if nobody measured.
    pub to_edge: Option<Length>,
    /// Where along the joist.
    pub stretch: Stretch,
    /// Since when it is known.
    pub since: Since,
}

impl SoftAt {
    /// By the words of a particular.
    pub(super) fn said(words: &str) -> Option<Self> {
        match words {
            "upper edge" => Some(Self::UpperEdge),
            "lower edge" => Some(Self::LowerEdge),
            "near side" => Some(Self::NearSide),
            "far side" => Some(Self::FarSide),
            "end" => Some(Self::End),
            _ => None,
        }
    }

    /// The words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::UpperEdge => "upper edge",
            Self::LowerEdge => "lower edge",
            Self::NearSide => "near side",
            Self::FarSide => "far side",
            Self::End => "end",
        }
    }

    /// Does it take of the depth?
    pub const fn is_edge(self) -> bool {
        matches!(self, Self::UpperEdge | Self::LowerEdge)
    }

    /// Does it take of the breadth?
    pub const fn is_side(self) -> bool {
        matches!(self, Self::NearSide | Self::FarSide)
    }
}

impl From<Face> for SoftAt {
    fn from(face: Face) -> Self {
        match face {
            Face::LowerEdge => Self::LowerEdge,
            Face::UpperEdge => Self::UpperEdge,
            Face::NearSide => Self::NearSide,
            Face::FarSide => Self::FarSide,
            Face::End | Face::NearEnd | Face::FarEnd => Self::End,
        }
    }
}

impl NotchAt {
    pub(super) fn said(words: &str) -> Option<Self> {
        match words {
            "end" => Some(Self::End),
            "outer third" => Some(Self::Outer),
            "middle third" => Some(Self::Middle),
            _ => None,
        }
    }
}

impl Spots {
    /// What the job says of a member, and what was found at places on it.
    pub(super) fn of<'job>(job: &'job Job, part: &Part, found: &[Found], begins: Begins) -> Self {
        let said = Particulars::of(job);
        let mut spots = Self::default();
        let went_in = spots.probed(said, part);
        spots.said_before(said, part);
        let is_here = |of: &Part| of == part || *of == Part::Joists;
        let mut open: Vec<_> = found.iter().collect();
        let done: Vec<_> = said
            .each(part, &list::DONE)
            .filter_map(|it| Some((Done::said(it.value.is.typed())?, Since::of(&it))))
            .collect();
        let replaced: Vec<_> =
            done.iter().filter(|(done, _)| *done == Done::Replaced).map(|(_, since)| *since).collect();
        let done: Vec<_> = done.into_iter().map(|(_, since)| since).collect();
        let logged: Vec<_> = job.now.damages().values().filter(|damage| is_here(&damage.value.of)).collect();
        let placed = |it: &Seen<'_, Damage>| !(it.value.from.is_none() && it.value.to.is_none());
        spots.is_unplaced = begins.said.is_none() && logged.iter().any(placed);
        let spot = |it: &Seen<'job, Damage>| Spot {
            damage: it.value,
            stretch: Stretch::of(it.value, begins),
            since: Since::of(it),
        };
        let all: Vec<_> = logged.iter().map(spot).collect();
        for ((damage, spot), stands) in logged.iter().zip(&all).zip(standing(&all, &replaced)) {
            if !stands {
                continue;
            }
            let (mut since, stretch) = (spot.since, spot.stretch);
            let logged = (since, visit(damage));
            // A spot of all joists is no measure of one. What was done before a finding
            // settles nothing of it, whenever its spot was logged.
            open.retain(|found| {
                let is_measured = damage.value.of == *part
                    && measures((damage.value, stretch), logged, found)
                    && !is_of_before(&done, logged.0, found.since);
                since = if is_measured { since.and(found.since) } else { since };
                !is_measured
            });
            spots.add((damage.value, stretch), (since, logged.1));
        }
        spots.found(&open);
        spots.follow_up(&went_in, &done);
        spots
    }

    /// Since the last thing that is wrong with it is known.
    pub fn since(&self) -> Since {
        self.soft_since().and(self.cuts_since())
    }

    /// Since the last of its soft spots is known.
    pub fn soft_since(&self) -> Since {
        Since::all(self.soft.iter().filter(|soft| soft.goes != Goes::Nowhere).map(|soft| soft.since))
    }

    /// Since the last of its notches and holes is known.
    pub fn cuts_since(&self) -> Since {
        Since::all(self.notches.iter().map(|notch| notch.since).chain(self.holes.iter().map(|hole| hole.since)))
    }

    /// Those that are surely of the member before another took its place, and those that are not.
    pub(super) fn before_and_after(&self, replaced: Since) -> [Self; 2] {
        let of = |is_before: bool| {
            let is = |since: Since| replaced.is_after(since) == is_before;
            Self {
                soft: self.soft.iter().filter(|it| is(it.since)).copied().collect(),
                notches: self.notches.iter().filter(|it| is(it.since)).copied().collect(),
                holes: self.holes.iter().filter(|it| is(it.since)).copied().collect(),
                ..self.clone()
            }
        };
        [of(true), of(false)]
    }

    fn add(&mut self, (damage, stretch): (&Damage, Stretch), (since, visit): Logged) {
        let at = damage.face.map(SoftAt::from);
        match damage.kind {
            DamageKind::Soft => {
                let goes = match &damage.depth {
                    None => Goes::NotSaid,
                    Some(Depth::CannotReach) => Goes::CannotReach,
                    Some(Depth::Is(typed)) => Goes::of(typed.value),
                };
                self.soft.push(Soft { goes, at, stretch, since, visit });
            }
            DamageKind::Notch => {
                self.notches.push(Notch {
                    depth: damage.depth(),
                    at: None,
                    edge: at,
                    stretch,
                    since,
                    is_several: false,
                });
            }
            DamageKind::Hole => {
                let high = damage.depth();
                let to_edge = damage.to_edge.as_ref().map(|typed| typed.value);
                self.holes.push(Hole { across: high.max(stretch.long()), high, to_edge, stretch, since });
            }
        }
    }

    /// Findings that no spot measures are soft spots of unknown depth.
    fn found(&mut self, found: &[&Found]) {
        for Found { finding, face, along, since, visit } in found {
            let goes = match finding {
                Finding::Soft => Goes::NotSaid,
                Finding::Rotten => Goes::Rotten,
                Finding::Sound => Goes::Nowhere,
                _ => continue,
            };
            let at = face.map(SoftAt::from);
            self.soft.push(Soft { goes, at, stretch: Stretch::at(*along), since: *since, visit: *visit });
        }
    }

    /// What was said of the awl. That it went in stands until that was put right in the same
    /// visit: wood does not heal. Of all joists at once only what is bad counts, since nobody
    /// pushed an awl into each; and it counts until this one was probed later. Each time that
    /// it went in is handed back.
    fn probed(&mut self, said: Particulars<'_>, part: &Part) -> Vec<Logged> {
        let is = |it: &Seen<'_, Particular>| Awl::said(it.value.is.typed());
        let [own, all] = [part, &Part::Joists].map(|of| said.each(of, &list::AWL).collect::<Vec<_>>());
        let mut went_in = Vec::new();
        let is_older = |all: &Seen<'_, Particular>| own.last().is_some_and(|own| own.when().is_after(all.when()));
        let still = all.iter().filter(|it| !is_older(it));
        for it in own.iter().chain(still).filter(|it| is(it) == Some(Awl::GoesIn)) {
            let mut stopped =
                own.iter().chain(&all).filter(|by| by.value.of == it.value.of && is(by) == Some(Awl::Stops));
            if !stopped.any(|by| is_put_right(it, by)) {
                went_in.push(logged(it));
            }
        }
        let bad = all.last().filter(|all| is(all) != Some(Awl::Stops) && !is_older(all));
        let last = bad.or_else(|| own.last());
        if went_in.is_empty() {
            self.awl = last.and_then(is);
            self.awl_since = last.or_else(|| all.last()).map_or(Since::ALWAYS, Since::of);
        } else {
            self.awl = Some(Awl::GoesIn);
            self.awl_since = Since::all(went_in.iter().map(|it| it.0));
        }
        went_in
    }

    /// Where an awl went in is told by the spots of that visit or later. What was done before
    /// it did settles none of them.
    fn follow_up(&mut self, went_in: &[Logged], done: &[Since]) {
        for it in went_in {
            let mut is_told = false;
            for soft in self.soft.iter_mut().filter(|soft| soft.goes != Goes::Nowhere) {
                if answers((soft.since, soft.visit), *it) && !is_of_before(done, soft.since, it.0) {
                    is_told = true;
                    soft.since = soft.since.and(it.0);
                }
            }
            self.awl_asks_where |= !is_told;
        }
    }

    /// Notches and holes.
    pub const fn cut_count(&self) -> usize {
        self.notches.len() + self.holes.len()
    }
}

impl Goes {
    pub(super) fn of(depth: Length) -> Self {
        if depth.is_positive() { Self::In(depth) } else { Self::Nowhere }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::particular::{Item, Takes};

    /// Every word that a log of before format 1.5 may hold means something here.
    #[test]
    fn every_word_of_an_old_log_is_understood() {
        let words = |item: Item| match item.takes {
            Takes::OneOf(words) => words.to_vec(),
            _ => Vec::new(),
        };
        assert!(words(list::SOFT_FACE).iter().all(|it| SoftAt::said(it).is_some_and(|at| at.label() == *it)));
        assert!(words(list::NOTCH_AT).iter().all(|it| NotchAt::said(it).is_some()));
        let of_depth = |at: &&&str| SoftAt::said(at).is_some_and(SoftAt::is_edge);
        assert_eq!(words(list::SOFT_FACE).iter().filter(of_depth).count(), 2);
    }
}
