//! Wood planed off a joist's top is a notch, and is held to what a notch is held to.

use crate::engine::framing::joist::Joist;
use crate::engine::framing::member::{Awl, CutsSaid, MemberType};
use crate::engine::framing::section::longest_notch;
use crate::engine::framing::since::Since;
use crate::engine::framing::spots::{Goes, Notch, NotchAt, SoftAt, Stretch};
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// May so much be planed off a joist's top?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Planing {
    /// As a notch may be cut there, and no longer than that along it.
    Allowed(Length),
    /// The place lies in the middle third of the span, or may.
    MiddleThird,
    /// No more than this may be cut there.
    TooDeep(Length),
    /// It is soft or cut already.
    NotWhole,
    /// It is not sawn: only its maker or a designer allows a cut.
    NotSawn,
    /// Something has to be said of it first: this.
    NotKnown(&'static str),
}

impl Joist {
    /// May so much be planed off its top, so far from where it begins? Nothing is kinder to a
    /// planed place than to a notch as long as one may be, with the place in its middle.
    /// Source: [`Source::JoistCuts`].
    pub fn planing(&self, along: Option<Length>, off: Length) -> Planing {
        match self.member {
            None => return Planing::NotKnown("say what it is made as"),
            Some(MemberType::Sawn) => {}
            Some(_) => return Planing::NotSawn,
        }
        if !self.said_apart.is_empty() {
            return Planing::NotKnown("two phones say different things of it: say them again");
        }
        let joist = self.as_it_lies();
        let is_soft = joist.spots.soft.iter().any(|soft| soft.goes != Goes::Nowhere);
        if is_soft || joist.spots.awl == Some(Awl::GoesIn) || joist.spots.cut_count() > 0 {
            return Planing::NotWhole;
        }
        if joist.spots.awl != Some(Awl::Stops) {
            return Planing::NotKnown("push an awl in at both ends and in the middle");
        }
        let (Some(section), Some(_)) = (joist.section(), joist.clear) else {
            return Planing::NotKnown("measure its breadth, its depth and its clear span");
        };
        if !matches!(joist.spots.cuts, Some(CutsSaid::None | CutsSaid::AllLogged)) {
            return Planing::NotKnown("look at it for cuts, and say that all are logged");
        }
        let Some(along) = along else { return Planing::NotKnown("close the room, so that its end is known") };
        let limits = section.cut_limits().value;
        let half = longest_notch(section.depth).half();
        let cut = Notch {
            depth: Some(off),
            at: None,
            edge: Some(SoftAt::UpperEdge),
            stretch: Stretch { from: Some(along - half), to: Some(along + half), long: None },
            since: Since::ALWAYS,
            is_several: false,
        };
        let most = match cut.part(&joist) {
            Some(NotchAt::End) => limits.notch_at_end,
            Some(NotchAt::Outer) => limits.notch,
            Some(NotchAt::Middle) => return Planing::MiddleThird,
            Some(NotchAt::Beyond) | None => {
                return Planing::NotKnown("the place lies beyond its first span, where no rule here says how deep");
            }
        };
        if off > most { Planing::TooDeep(most) } else { Planing::Allowed(limits.notch_length) }
    }
}
