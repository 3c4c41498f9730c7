//! In which order to cut a sheet, so that the saw goes the shortest way.

use super::fit::{Fit, Fits, choices, partings};
use std::collections::HashMap;
use std::rc::Rc;

/// What becomes of a rectangle of sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cutting {
    /// Nothing is taken from it.
    Offcut,
    /// It is a piece of this kind, by the rank of its size among the layout's.
    Piece(u16),
    /// A cut along `y`: what lies before it, and what behind.
    Crosscut {
        /// How far from the rectangle's left edge the saw goes in.
        at: i32,
        /// To the left, and to the right.
        parts: [Rc<Cutting>; 2],
    },
    /// A cut along `x`.
    Rip {
        /// How far from the rectangle's lower edge.
        at: i32,
        /// Below, and above.
        parts: [Rc<Cutting>; 2],
    },
}

type Known = HashMap<(Vec<u16>, i32, i32), (i64, Rc<Cutting>)>;

/// The shortest way to cut `kinds`, in order, out of a rectangle, and how long it is.
/// Pieces are kept to the lower left, as far as the cuts allow. None if they are not known
/// to come out of it: that says nothing about whether they do.
pub fn shortest(fit: &mut Fit, kerf: i32, kinds: &[u16], blank: (i32, i32)) -> Option<(i64, Rc<Cutting>)> {
    fit.allow(fit.limits.work_a_sheet);
    if fit.fits(kinds, blank) != Fits::Yes {
        return None;
    }
    Some(Saw { fit, kerf, known: Known::new() }.cut(kinds, blank)).filter(|(way, _)| *way < NEVER)
}

/// Sizes here are grown by a kerf, as [`Fit`] has them; a cut at `at` takes the kerf
/// that ends there.
struct Saw<'a> {
    fit: &'a mut Fit,
    kerf: i32,
    known: Known,
}

/// No way to cut.
const NEVER: i64 = i64::MAX / 4;

impl Saw<'_> {
    fn cut(&mut self, kinds: &[u16], (length, width): (i32, i32)) -> (i64, Rc<Cutting>) {
        if kinds.is_empty() {
            return (0, Rc::new(Cutting::Offcut));
        }
        if let [kind] = kinds
            && self.fit.size(*kind) == (length, width)
        {
            return (0, Rc::new(Cutting::Piece(*kind)));
        }
        let key = (kinds.to_vec(), length, width);
        if let Some(known) = self.known.get(&key) {
            return known.clone();
        }
        let mut best = (NEVER, Rc::new(Cutting::Offcut));
        self.part(kinds, &[], (length, width), &mut best);
        if choices(kinds) > self.fit.limits.choices {
            self.as_known(kinds, (length, width), &mut best);
        } else {
            for (one, other) in partings(kinds) {
                self.part(&one, &other, (length, width), &mut best);
                self.part(&other, &one, (length, width), &mut best);
            }
        }
        self.known.insert(key, best.clone());
        best
    }

    /// Parts kinds as they are known to come out of a length.
    fn as_known(&mut self, kinds: &[u16], (length, width): (i32, i32), best: &mut (i64, Rc<Cutting>)) {
        let Some((one, cut)) = self.fit.parting(kinds, width) else { return };
        let other = without(kinds, &one);
        match cut {
            None => self.crosscut(&one, &other, (length, width), best),
            Some(cut) => self.rip(&one, &other, cut, (length, width), best),
        }
    }

    /// Tries both cuts that give `first` as little as it needs and `second` the rest.
    fn part(&mut self, first: &[u16], second: &[u16], (length, width): (i32, i32), best: &mut (i64, Rc<Cutting>)) {
        self.crosscut(first, second, (length, width), best);
        let at = self.least_width(first, length, width);
        self.rip(first, second, at, (length, width), best);
    }

    fn crosscut(&mut self, first: &[u16], second: &[u16], (length, width): (i32, i32), best: &mut (i64, Rc<Cutting>)) {
        let at = self.fit.least_length(first, width).at_most;
        if at < length && self.fit.fits(second, (length - at, width)) == Fits::Yes {
            let (one, other) = (self.cut(first, (at, width)), self.cut(second, (length - at, width)));
            let way = one.0.saturating_add(other.0).saturating_add(i64::from(width - self.kerf));
            if way < best.0 {
                *best = (way, Rc::new(Cutting::Crosscut { at: at - self.kerf, parts: [one.1, other.1] }));
            }
        }
    }

    /// Gives `first` the lower strip up to `at`.
    fn rip(
        &mut self,
        first: &[u16],
        second: &[u16],
        at: i32,
        (length, width): (i32, i32),
        best: &mut (i64, Rc<Cutting>),
    ) {
        let fits = |fit: &mut Fit| {
            fit.fits(first, (length, at)) == Fits::Yes && fit.fits(second, (length, width - at)) == Fits::Yes
        };
        if at < width && fits(self.fit) {
            let (one, other) = (self.cut(first, (length, at)), self.cut(second, (length, width - at)));
            let way = one.0.saturating_add(other.0).saturating_add(i64::from(length - self.kerf));
            if way < best.0 {
                *best = (way, Rc::new(Cutting::Rip { at: at - self.kerf, parts: [one.1, other.1] }));
            }
        }
    }

    /// How wide a strip of some length has to be for these kinds.
    fn least_width(&mut self, kinds: &[u16], length: i32, most: i32) -> i32 {
        let widths = self.fit.cuts(kinds, most);
        widths.into_iter().find(|width| self.fit.fits(kinds, (length, *width)) == Fits::Yes).unwrap_or(most)
    }
}

/// What is left of kinds, in order, when some are taken, each once.
pub fn without(left: &[u16], taken: &[u16]) -> Vec<u16> {
    let mut taken = taken.to_vec();
    let stays = |kind: &&u16| match taken.iter().position(|other| other == *kind) {
        Some(at) => {
            taken.swap_remove(at);
            false
        }
        None => true,
    };
    left.iter().filter(stays).copied().collect()
}
