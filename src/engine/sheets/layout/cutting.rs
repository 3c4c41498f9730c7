//! In which order to cut a sheet, so that the saw goes the shortest way.

use super::fit::{Fit, partings};
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
/// Pieces are kept to the lower left, as far as the cuts allow. None if they do not come
/// out of it.
pub fn shortest(fit: &mut Fit, kerf: i32, kinds: &[u16], blank: (i32, i32)) -> Option<(i64, Rc<Cutting>)> {
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
        for (one, other) in partings(kinds) {
            self.part(&one, &other, (length, width), &mut best);
            self.part(&other, &one, (length, width), &mut best);
        }
        self.known.insert(key, best.clone());
        best
    }

    /// Tries both cuts that give `first` as little as it needs and `second` the rest.
    fn part(&mut self, first: &[u16], second: &[u16], (length, width): (i32, i32), best: &mut (i64, Rc<Cutting>)) {
        let at = self.fit.least_length(first, width);
        if at < length && self.fit.fits(second, (length - at, width)) {
            let (one, other) = (self.cut(first, (at, width)), self.cut(second, (length - at, width)));
            let way = one.0.saturating_add(other.0).saturating_add(i64::from(width - self.kerf));
            if way < best.0 {
                *best = (way, Rc::new(Cutting::Crosscut { at: at - self.kerf, parts: [one.1, other.1] }));
            }
        }
        let at = self.least_width(first, length, width);
        if at < width && self.fit.fits(second, (length, width - at)) {
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
        widths.into_iter().find(|width| self.fit.least_length(kinds, *width) <= length).unwrap_or(most)
    }
}
