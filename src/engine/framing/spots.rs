//! What is wrong with a joist, spot by spot: one picture of it, whoever said it.
//!
//! An awl's depth, a notch and a hole are entries of their own ([`Damage`]). Logs of before
//! format 1.5 say one of each as particulars. A finding that was logged at a place on the
//! joist is a soft spot whose depth nobody measured, until an awl's depth covers it.

use super::damage::{Damage, DamageKind, Depth};
use super::member::{Awl, CutsSaid};
use crate::engine::condition::Finding;
use crate::engine::entry::EntryId;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::Face;
use crate::engine::units::{Length, Typed};

/// A finding is covered by an awl's depth that begins or ends no farther from it
/// (judgement: the width of a hand and more).
pub const BESIDE: Length = Length::inches(6);

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
    /// What was said of its cuts as a whole.
    pub cuts: Option<CutsSaid>,
    /// The last entry that says something bad of it.
    pub last_bad: Option<EntryId>,
}

/// A stretch along a joist, as far as it was said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Stretch {
    /// Where it begins.
    pub from: Option<Length>,
    /// Where it ends.
    pub to: Option<Length>,
    /// How long it is, where only that was said.
    pub long: Option<Length>,
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
    /// Where along the joist.
    pub stretch: Stretch,
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
}

/// A hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hole {
    /// How high or wide, whichever is more; none if nobody measured.
    pub across: Option<Length>,
    /// To the nearest edge; none if nobody measured.
    pub to_edge: Option<Length>,
    /// Where along the joist.
    pub stretch: Stretch,
}

impl Stretch {
    fn of(damage: &Damage) -> Self {
        let value = |typed: &Option<Typed<Length>>| typed.as_ref().map(|typed| typed.value);
        let (from, to) = (value(&damage.from), value(&damage.to));
        match from.zip(to) {
            // Measured the other way round it is the same stretch.
            Some((from, to)) => Self { from: Some(from.min(to)), to: Some(from.max(to)), long: None },
            None => Self { from, to, long: None },
        }
    }

    const fn at(along: Option<Length>) -> Self {
        Self { from: along, to: along, long: None }
    }

    /// How long it is.
    pub fn long(&self) -> Option<Length> {
        self.long.or_else(|| Some(self.to? - self.from?))
    }

    /// Both ends, if both were said.
    pub fn ends(&self) -> Option<(Length, Length)> {
        self.from.zip(self.to)
    }

    /// Could the two lie at one spot? What was not placed could.
    pub fn meets(&self, other: &Self) -> bool {
        let (Some((from, to)), Some((begins, ends))) = (self.ends(), other.ends()) else { return true };
        begins - BESIDE <= to && from <= ends + BESIDE
    }

    /// Does it come within [`BESIDE`] of that? A stretch that was not placed may.
    fn covers(&self, along: Option<Length>) -> bool {
        let (Some(along), Some((from, to))) = (along, self.ends()) else { return true };
        (from - BESIDE..=to + BESIDE).contains(&along)
    }
}

impl SoftAt {
    /// By the words of a particular.
    fn said(words: &str) -> Option<Self> {
        match words {
            "upper edge" => Some(Self::UpperEdge),
            "lower edge" => Some(Self::LowerEdge),
            "near side" => Some(Self::NearSide),
            "far side" => Some(Self::FarSide),
            "end" => Some(Self::End),
            _ => None,
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
    fn said(words: &str) -> Option<Self> {
        match words {
            "end" => Some(Self::End),
            "outer third" => Some(Self::Outer),
            "middle third" => Some(Self::Middle),
            _ => None,
        }
    }
}

impl Notch {
    /// In which part of the span it is; none if nobody said. One that touches the middle
    /// third is in it, and only one that reaches the bearing is at an end.
    pub fn part(&self, clear: Option<Length>) -> Option<NotchAt> {
        let Some(((from, to), clear)) = self.stretch.ends().zip(clear) else { return self.at };
        Some(match () {
            () if from * 3 < clear * 2 && to * 3 > clear => NotchAt::Middle,
            () if !from.is_positive() || to >= clear => NotchAt::End,
            () => NotchAt::Outer,
        })
    }
}

impl Spots {
    /// What the job says of a member; `found` is what was found at places on it, each with
    /// the entry and how far along.
    pub fn of(job: &Job, part: &Part, found: &[(EntryId, Finding, Option<Length>)]) -> Self {
        let said = Particulars::of(job);
        let mut spots = Self {
            awl: said.words(part, &list::AWL).and_then(Awl::said),
            cuts: said.words_of_joist(part, &list::CUTS).and_then(CutsSaid::said),
            ..Self::default()
        };
        spots.said_before(said, part);
        for (id, damage) in job.now.damages().iter().filter(|(_, damage)| damage.value.of == *part) {
            spots.add(damage.value);
            if damage.value.is_bad() {
                spots.is_bad(damage.head.max(*id));
            }
        }
        spots.found(found);
        for item in [&list::AWL, &list::CUTS] {
            let last = said
                .last(part, item)
                .filter(|(_, value)| matches!(value.typed(), "goes in" | "cannot reach" | "cannot see"));
            last.into_iter().for_each(|(id, _)| spots.is_bad(id));
        }
        spots
    }

    fn is_bad(&mut self, id: EntryId) {
        self.last_bad = self.last_bad.max(Some(id));
    }

    fn add(&mut self, damage: &Damage) {
        let stretch = Stretch::of(damage);
        match damage.kind {
            DamageKind::Soft => {
                let goes = match &damage.depth {
                    None => Goes::NotSaid,
                    Some(Depth::CannotReach) => Goes::CannotReach,
                    Some(Depth::Is(typed)) => goes(typed.value),
                };
                self.soft.push(Soft { goes, at: damage.face.map(SoftAt::from), stretch });
            }
            DamageKind::Notch => self.notches.push(Notch { depth: damage.depth(), at: None, stretch }),
            DamageKind::Hole => {
                let (high, wide) = (damage.depth(), stretch.long());
                let to_edge = damage.to_edge.as_ref().map(|typed| typed.value);
                self.holes.push(Hole { across: high.max(wide), to_edge, stretch });
            }
        }
    }

    /// What logs of before format 1.5 say: one spot of each kind.
    fn said_before(&mut self, said: Particulars<'_>, part: &Part) {
        let length = |item| said.length(part, item);
        let along = |long| Stretch { long, ..Stretch::default() };
        let mut bad =
            |item| said.last(part, item).into_iter().for_each(|(id, _)| self.last_bad = self.last_bad.max(Some(id)));
        if let Some(depth) = length(&list::SOFT_DEPTH) {
            if depth.is_positive() {
                [&list::SOFT_DEPTH, &list::SOFT_LENGTH, &list::SOFT_FACE].into_iter().for_each(&mut bad);
            }
            let at = said.words(part, &list::SOFT_FACE).and_then(SoftAt::said);
            self.soft.push(Soft { goes: goes(depth), at, stretch: along(length(&list::SOFT_LENGTH)) });
            // It was asked of the joist as a whole.
            self.awl = self.awl.or(Some(if depth.is_positive() { Awl::GoesIn } else { Awl::Stops }));
        }
        if let Some(depth) = length(&list::NOTCH).filter(|depth| depth.is_positive()) {
            [&list::NOTCH, &list::NOTCH_AT, &list::NOTCH_LENGTH].into_iter().for_each(&mut bad);
            let at = said.words(part, &list::NOTCH_AT).and_then(NotchAt::said);
            self.notches.push(Notch { depth: Some(depth), at, stretch: along(length(&list::NOTCH_LENGTH)) });
        }
        if let Some(across) = length(&list::HOLE).filter(|across| across.is_positive()) {
            [&list::HOLE, &list::HOLE_TO_EDGE].into_iter().for_each(&mut bad);
            let to_edge = length(&list::HOLE_TO_EDGE);
            self.holes.push(Hole { across: Some(across), to_edge, stretch: Stretch::default() });
        }
    }

    /// Findings become soft spots of unknown depth, unless an awl's depth covers them. One
    /// that is covered only where the awl stopped stays: the two contradict each other.
    fn found(&mut self, found: &[(EntryId, Finding, Option<Length>)]) {
        for (id, finding, along) in found {
            let goes = match finding {
                Finding::Soft => Goes::NotSaid,
                Finding::Rotten => Goes::Rotten,
                Finding::Sound => Goes::Nowhere,
                Finding::Cracked | Finding::Insects | Finding::Strands => {
                    self.is_bad(*id);
                    continue;
                }
                _ => continue,
            };
            if goes != Goes::Nowhere {
                self.is_bad(*id);
            }
            let measures = |soft: &Soft| match soft.goes {
                Goes::In(_) => true,
                Goes::CannotReach => goes == Goes::NotSaid,
                Goes::Nowhere | Goes::NotSaid | Goes::Rotten => false,
            };
            let is_measured = |soft: &Soft| measures(soft) && soft.stretch.covers(*along);
            if goes == Goes::Nowhere || !self.soft.iter().any(is_measured) {
                self.soft.push(Soft { goes, at: None, stretch: Stretch::at(*along) });
            }
        }
    }

    /// Notches and holes.
    pub const fn cut_count(&self) -> usize {
        self.notches.len() + self.holes.len()
    }
}

fn goes(depth: Length) -> Goes {
    if depth.is_positive() { Goes::In(depth) } else { Goes::Nowhere }
}
