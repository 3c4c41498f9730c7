//! A member's section as measured, what is left of it, and what may be cut out of it.

use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::Length;

/// Holes keep this far from edges, other holes and notches ([`Source::JoistCuts`]).
const FROM_EDGES: Length = Length::inches(2);

/// Breadth and depth, as measured: an old house's lumber is often larger than its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Section {
    /// Across.
    pub breadth: Length,
    /// From the lower edge to the upper.
    pub depth: Length,
}

/// What may be cut out of a joist. Source: [`Source::JoistCuts`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CutLimits {
    /// A notch's depth in the outer thirds of the span; none in the middle third.
    pub notch: Length,
    /// A notch's depth at an end.
    pub notch_at_end: Length,
    /// A notch's length.
    pub notch_length: Length,
    /// A hole's diameter.
    pub hole: Length,
    /// A hole's diameter that also keeps its distance from both edges.
    pub hole_between_edges: Length,
    /// What that distance is.
    pub from_edges: Length,
}

/// How long a notch may be in a joist so deep, and how far past its bearing one at an end may
/// reach ([`Source::JoistCuts`], [`Source::EndNotches`]).
pub fn longest_notch(depth: Length) -> Length {
    Length::from_inches(depth.to_inches() / 3.0)
}

impl Section {
    /// Inches cubed: how it resists bending.
    pub fn modulus(self) -> f64 {
        let depth = self.depth.to_inches();
        self.breadth.to_inches() * depth * depth / 6.0
    }

    /// Inches to the fourth: how it resists sagging.
    pub fn inertia(self) -> f64 {
        let depth = self.depth.to_inches();
        self.breadth.to_inches() * depth * depth * depth / 12.0
    }

    /// Square inches.
    pub fn area(self) -> f64 {
        self.breadth.to_inches() * self.depth.to_inches()
    }

    /// What is left when so much is lost of an upper or lower edge: what a probe finds
    /// soft counts as nothing ([`Source::SoftCountsNothing`]). None when nothing is left.
    pub fn without_edge(self, lost: Length) -> Option<Self> {
        let depth = self.depth - lost;
        depth.is_positive().then_some(Self { depth, ..self })
    }

    /// The same for a face.
    pub fn without_face(self, lost: Length) -> Option<Self> {
        let breadth = self.breadth - lost;
        breadth.is_positive().then_some(Self { breadth, ..self })
    }

    /// The section if a tape was off by so much both ways. None when nothing is left.
    pub fn less(self, error: Length) -> Option<Self> {
        self.without_edge(error)?.without_face(error)
    }

    /// What may be cut out of it. Source: [`Source::JoistCuts`].
    pub fn cut_limits(self) -> Known<CutLimits> {
        let part = |of: f64| Length::from_inches(self.depth.to_inches() / of);
        let between = (self.depth - FROM_EDGES * 2).max(Length::ZERO);
        let value = CutLimits {
            notch: part(6.0),
            notch_at_end: part(4.0),
            notch_length: longest_notch(self.depth),
            hole: part(3.0),
            hole_between_edges: part(3.0).min(between),
            from_edges: FROM_EDGES,
        };
        let rule = "A sixth of the depth in the outer thirds, a fourth at ends, none in the middle third.";
        let why = Why::rule(rule, &[Source::JoistCuts]);
        let doubts = vec![Source::SoftCountsNothing.noted("Measure the depth of sound wood alone")];
        Known { value, assumed: Vec::new(), doubts, why }
    }
}
