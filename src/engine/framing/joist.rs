//! Everything that the job says of one joist.

use super::apart::said_apart;
use super::design::Stamp;
use super::done::{done, put_in, sistered_beyond};
use super::member::{BearsOn, CutsSaid, Done, EndsHeld, MemberType, OverGirder, SpanAllowed};
use super::past::Past;
use super::places::{Begins, Read, found, read_joists};
use super::section::Section;
use super::shared::{Shared, sister};
use super::since::Since;
use super::span::Service;
use super::spots::{Found, Spots};
use crate::engine::condition::Finding;
use crate::engine::job::Job;
use crate::engine::particular::{Part, Particulars, list};
use crate::engine::place::JoistNumber;
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::survey::{Floor, Framing};
use crate::engine::units::Length;

/// Bearing on wood or metal, and on masonry ([`Source::Bearing`]).
const ON_WOOD: Length = Length::sixty_fourths(96);
const ON_MASONRY: Length = Length::inches(3);

pub use super::places::{INSECTS_GONE, Reads, found_nowhere, is_grave, is_nowhere, number_of};

/// A joist as measured and probed.
#[derive(Debug, Clone, PartialEq)]
pub struct Joist {
    /// Its number.
    pub number: JoistNumber,
    /// What it is made as; none if nobody said.
    pub member: Option<MemberType>,
    /// What the joist before it was made as; none if nobody said, or there was none.
    pub old_member: Option<MemberType>,
    /// Who allows its span, if it is not sawn.
    pub span_allowed: Option<SpanAllowed>,
    /// Across; none if nobody measured.
    pub breadth: Option<Length>,
    /// From the lower edge to the upper.
    pub depth: Option<Length>,
    /// Between the faces of its supports; of the first span, where it goes through.
    pub clear: Option<Length>,
    /// The same of the next span, where it goes through over the girder.
    pub next_clear: Option<Length>,
    /// How much of it bears at its shorter end.
    pub bearing: Option<Length>,
    /// What its ends rest on; none if nobody said.
    pub bears_on: Option<BearsOn>,
    /// What keeps its ends from turning over.
    pub ends: Option<EndsHeld>,
    /// How it goes on over the girder.
    pub over_girder: Option<OverGirder>,
    /// How far it laps the next one there.
    pub lap: Option<Length>,
    /// What is wrong with it, spot by spot.
    pub spots: Spots,
    /// What was found on it and in its bays.
    pub found: Vec<Finding>,
    /// The longest way between walls that it lies along; none where the room is not closed.
    pub lies_along: Option<Length>,
    /// How wide a strip of floor lies on it, half of the bay at a wall with it; none if nobody
    /// measured.
    pub carries: Option<Length>,
    /// What comes out reaches past what was measured of it, if it does.
    pub past: Option<Past>,
    /// How wet it reads.
    pub reads: Reads,
    /// Of what two phones say different things, and nobody can tell which came last.
    pub said_apart: Vec<&'static str>,
    /// Since it is a new joist in the place of another: its size and bearing are those of the
    /// new one, or not known.
    pub new_since: Option<Since>,
    /// What was done about it, each with when that was said, in log order; nothing that
    /// was taken back by "not yet".
    pub done: Vec<(Done, Since)>,
    /// Since a new joist is in, and since a sister is in beside what lies there, each as it was said
    /// first: said again it is the same one, and "not yet" takes it back.
    pub put_in: Vec<Since>,
    /// Are its breadth and its depth those that sisters are said to have, since nobody measured the
    /// new joist?
    pub sized_as_sisters: [bool; 2],
    /// When each thing was said of it that counts.
    pub since: LastSaid,
}

/// Along which of its spans: one that goes through over the girder has two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// The first.
    First,
    /// The one past the girder.
    Next,
}

/// When each thing was last said that a joist is judged by. What was done about it counts only
/// if it was said later.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct LastSaid {
    /// What it is made as, and who allows its span.
    pub member: Since,
    /// What it is made as.
    pub made_as: Since,
    /// Who allows its span.
    pub span_allowed: Since,
    /// Its breadth and depth; of a joist that was replaced those of the old one.
    pub section: Since,
    /// Those of the new one.
    pub new_section: Since,
    /// Its clear spans.
    pub span: Since,
    /// The walls that it lies between.
    pub walls: Since,
    /// What it bears on, and how much of it.
    pub bearing: Since,
    /// What holds its ends upright.
    pub ends: Since,
    /// How it goes on over the girder.
    pub over_girder: Since,
    /// What was said of its cuts.
    pub cuts: Since,
    /// Its latest readings.
    pub reads: Since,
    /// What was found that speaks against it.
    pub found: Since,
}

impl Joist {
    /// Its section, if both ways were measured.
    pub fn section(&self) -> Option<Section> {
        Some(Section { breadth: self.breadth?, depth: self.depth? })
    }

    /// How much of it has to bear; none where a hanger or a ribbon carries it.
    pub const fn bearing_asked(&self) -> Option<Length> {
        match self.bears_on {
            Some(BearsOn::Masonry) => Some(ON_MASONRY),
            Some(BearsOn::WoodOrMetal) | None => Some(ON_WOOD),
            Some(BearsOn::Hanger | BearsOn::Ribbon) => None,
        }
    }

    /// Does it go on in one piece over the girder?
    pub fn goes_through(&self) -> bool {
        self.over_girder == Some(OverGirder::Through)
    }

    /// The longest of its clear spans that were measured.
    pub fn longest_clear(&self) -> Option<Length> {
        let next = self.next_clear.filter(|_| self.goes_through());
        Some(self.clear?.max(next.unwrap_or(Length::ZERO)))
    }

    /// A clear span of it, if that was measured: past the girder only where it goes through.
    pub fn clear_along(&self, along: Along) -> Option<Length> {
        match along {
            Along::First => self.clear,
            Along::Next => self.next_clear.filter(|_| self.goes_through()),
        }
    }

    /// The span that is designed for: between faces, and half of what each bearing has to
    /// be ([`Source::SpanMethod`]). Of two it is the longer, as if it ended over the girder.
    pub fn span(&self) -> Option<Length> {
        Some(self.designed(self.longest_clear()?))
    }

    /// Each of its spans, the longer first, as it is designed for.
    pub fn spans(&self) -> Vec<(Along, Length)> {
        let all = [Along::First, Along::Next].into_iter();
        let mut all: Vec<_> = all.filter_map(|along| Some((along, self.designed(self.clear_along(along)?)))).collect();
        all.sort_by_key(|(_, span)| std::cmp::Reverse(*span));
        all
    }

    fn designed(&self, clear: Length) -> Length {
        clear + self.bearing_asked().unwrap_or(ON_WOOD)
    }

    /// Does it bear on too little?
    pub fn is_short_of_bearing(&self) -> bool {
        self.bearing.zip(self.bearing_asked()).is_some_and(|(bearing, asked)| bearing < asked)
    }

    /// The strip of floor that it is held to carry: as the widest spacing has it, or more by a
    /// wall.
    pub fn strip(&self, shared: &Shared) -> Length {
        self.carries.map_or(shared.spacing, |carries| carries.max(shared.spacing))
    }

    /// Was this found?
    pub fn has(&self, finding: Finding) -> bool {
        self.found.contains(&finding)
    }

    /// What it is stamped.
    pub const fn stamp(&self, shared: &Shared) -> Stamp {
        if self.new_since.is_some() { shared.sister_stamp } else { shared.stamp }
    }

    /// With the spots alone of the joist that lies there now: those of one that was replaced are
    /// of that.
    pub(super) fn as_it_lies(&self) -> Self {
        self.old_and_new().pop().unwrap_or_else(|| self.clone())
    }

    /// With the spots of the joist that was replaced, if one was, and with those of the one that
    /// lies there now.
    pub(super) fn old_and_new(&self) -> Vec<Self> {
        match self.new_since {
            None => vec![self.clone()],
            Some(new) => {
                let [old, lies] = self.spots.before_and_after(new);
                vec![Self { spots: old, member: self.old_member, ..self.clone() }, Self { spots: lies, ..self.clone() }]
            }
        }
    }

    /// Since a new one lies there and is as it is: what is not known of it, its own "replaced" does
    /// not end.
    pub fn laid_since(&self) -> Since {
        self.new_since.map_or(Since::ALWAYS, |new| new.and(self.since.new_section))
    }

    /// Is it treated through incisions, if anybody said it?
    pub const fn is_incised(&self, shared: &Shared) -> Option<bool> {
        if self.new_since.is_some() { shared.sister_is_incised } else { shared.is_incised }
    }

    /// What it goes through. What may be over the limit counts as over it.
    pub fn service(&self, shared: &Shared) -> Service {
        Service { is_wet: self.reads >= Reads::Close, is_incised: self.is_incised(shared) == Some(true) }
    }

    /// As if it were cut of such a section, where nobody measured its own.
    pub(super) fn cut_of(&self, sister: Option<Section>) -> Self {
        let [breadth, depth] = self.sized_as_sisters;
        Self {
            breadth: if breadth { sister.map(|sister| sister.breadth) } else { self.breadth },
            depth: if depth { sister.map(|sister| sister.depth) } else { self.depth },
            ..self.clone()
        }
    }

    fn of(job: &Job, (floor, framing): (&Floor, &Framing), number: JoistNumber, read: &[Read]) -> Self {
        let joist = Self::as_said(job, (floor, framing), number, read);
        Self { past: Past::of(job, floor, framing, &joist), ..joist }
    }

    fn as_said(job: &Job, (floor, framing): (&Floor, &Framing), number: JoistNumber, read: &[Read]) -> Self {
        let said = Particulars::of(job);
        let part = Part::Joist(number);
        let length = |item| said.length_of_joist(&part, item);
        let words = |item| said.words_of_joist(&part, item);
        let mut done = done(said, &part);
        done.extend(sistered_beyond(job, &done));
        let replaced = done.iter().rev().find(|(done, _)| *done == Done::Replaced).map(|(_, since)| *since);
        // What was measured of the old joist says nothing of the new one. That is cut of what
        // sisters are cut of, unless somebody measured it.
        let section = Since::all([&list::BREADTH, &list::DEPTH].map(|item| Since::stood_of_joist(said, &part, item)));
        let [section, new_section] =
            if replaced.is_some() { [Since::ALWAYS, section] } else { [section, Since::ALWAYS] };
        let is_of_it = |item| replaced.is_none_or(|new| Since::said(said, &part, item).is_after(new));
        let of_new = sister(said);
        let of_it = |item, new: Option<Length>| if is_of_it(item) { length(item) } else { new };
        // Nor does what was said of its cuts, its lap, its ends and its way over the girder, but
        // for what is no kinder: the girder is as far from it, and the rim joist is still there.
        let anew = |item| words_anew(said, &part, item, replaced);
        let or_still = |item, still: fn(&str) -> bool| anew(item).or_else(|| words(item).filter(|words| still(words)));
        let since_new = replaced.unwrap_or(Since::ALWAYS);
        let begins = Begins::of(floor, number);
        let found = found(job, framing, number, begins);
        let spots = Spots::of(job, &part, &found, begins);
        let spots = Spots { cuts: anew(&list::CUTS).and_then(CutsSaid::said), ..spots };
        let read: Vec<_> = read.iter().filter(|read| read.joist == number).collect();
        let last = LastSaid::of(said, &part, &found);
        let mut findings: Vec<_> = found.iter().map(|found| found.finding).collect();
        findings.sort_unstable();
        findings.dedup();
        Self {
            number,
            member: words(&list::MEMBER).and_then(MemberType::said),
            old_member: replaced.and_then(|new| old_member(said, &part, new)),
            span_allowed: words(&list::SPAN_ALLOWED).and_then(SpanAllowed::said),
            breadth: of_it(&list::BREADTH, of_new.map(|new| new.breadth)),
            depth: of_it(&list::DEPTH, of_new.map(|new| new.depth)),
            clear: length(&list::CLEAR_SPAN),
            next_clear: length(&list::NEXT_SPAN),
            bearing: of_it(&list::BEARING, None),
            bears_on: words(&list::BEARS_ON).and_then(BearsOn::said),
            ends: or_still(&list::ENDS_HELD, |words| matches!(words, "rim joist" | "nothing")).and_then(EndsHeld::said),
            over_girder: or_still(&list::OVER_GIRDER, |words| {
                matches!(words, "does not reach one" | "butts, not tied")
            })
            .and_then(OverGirder::said),
            lap: of_it(&list::LAP_OF_JOISTS, None),
            spots,
            found: findings,
            lies_along: floor.stretches(number).and_then(|all| all.iter().map(|it| it.to - it.from).max()),
            carries: floor.carried_by(number),
            past: None,
            reads: read.iter().map(|read| read.reads).max().unwrap_or(Reads::Unread),
            said_apart: said_apart(said, &part),
            new_since: replaced,
            put_in: put_in(&done),
            sized_as_sisters: [&list::BREADTH, &list::DEPTH].map(|item| !is_of_it(item)),
            done,
            since: LastSaid {
                section,
                new_section,
                reads: Since::all(read.iter().map(|read| read.since)),
                walls: Since::all(floor.sides.iter().filter_map(|side| Some(Since::of(&job.now.sides().get(side)?)))),
                ends: last.ends.and(since_new),
                over_girder: last.over_girder.and(since_new),
                cuts: last.cuts.and(since_new),
                ..last
            },
        }
    }
}

/// What was said of a joist, or of all; of a new one only what was said since it is there.
fn words_anew<'a>(said: Particulars<'a>, joist: &Part, item: &list::Item, new: Option<Since>) -> Option<&'a str> {
    let is_of_it = |of: &&Part| new.is_none_or(|new| Since::said(said, of, item).is_after(new));
    [joist, &Part::Joists].into_iter().filter(is_of_it).find_map(|of| said.words(of, item))
}

/// What a joist was said to be made as before another one took its place.
fn old_member(said: Particulars<'_>, joist: &Part, new: Since) -> Option<MemberType> {
    let before = |of| said.each(of, &list::MEMBER).rfind(|it| !Since::of(it).is_after(new));
    let said = before(joist).or_else(|| before(&Part::Joists))?;
    MemberType::said(said.value.is.typed())
}

impl LastSaid {
    fn of(said: Particulars<'_>, part: &Part, found: &[Found]) -> Self {
        let of = |items: &[&list::Item]| Since::all(items.iter().map(|item| Since::stood_of_joist(said, part, item)));
        let bad =
            found.iter().filter(|it| is_grave(it.finding) || matches!(it.finding, Finding::Insects | Finding::Strands));
        Self {
            member: of(&[&list::MEMBER, &list::SPAN_ALLOWED]),
            made_as: of(&[&list::MEMBER]),
            // Said again it is looked up again.
            span_allowed: Since::said_of_joist(said, part, &list::SPAN_ALLOWED),
            section: Since::ALWAYS,
            new_section: Since::ALWAYS,
            span: of(&[&list::CLEAR_SPAN, &list::NEXT_SPAN]),
            bearing: of(&[&list::BEARING, &list::BEARS_ON]),
            ends: of(&[&list::ENDS_HELD]),
            over_girder: of(&[&list::OVER_GIRDER, &list::LAP_OF_JOISTS]),
            cuts: of(&[&list::CUTS]),
            reads: Since::ALWAYS,
            walls: Since::ALWAYS,
            found: Since::all(bad.map(|it| it.since)),
        }
    }
}

/// Every joist that is laid out.
pub fn joists(job: &Job) -> Vec<Joist> {
    let Some(floor) = Floor::of(job) else { return Vec::new() };
    let Some(framing) = floor.joists.as_ref() else { return Vec::new() };
    let read = read_joists(job, framing);
    let numbers = (1..=framing.count()).filter_map(JoistNumber::new);
    numbers.map(|number| Joist::of(job, (&floor, framing), number, &read)).collect()
}
