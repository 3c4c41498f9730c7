//! How large letters are, and how much room a text takes.

use super::px::{PxBox, Way};
use super::{Anchor, Canvas, Item, Reads, Role, Spot};

/// No letter is smaller than this, in pixels: the least that a carpenter reads by
/// headlamp at arm's length (the design's rule for drawings).
const SMALLEST: f64 = 13.0;
/// Nor larger than this: a wider canvas shows more room, not larger numbers.
const LARGEST: f64 = 17.0;
/// Letters grow with the canvas; this many of them, side by side, fill it.
const LETTERS_ACROSS: f64 = 40.0;

/// The size of all letters on a drawing, and every measure that goes with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lettering {
    pub(super) size: f64,
}

/// A text with the room that it takes when it reads across.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Measured<'a> {
    pub(super) text: &'a str,
    pub(super) width: f64,
    pub(super) height: f64,
}

impl Lettering {
    pub(super) fn on(canvas: Canvas) -> Self {
        Self { size: (f64::from(canvas.width_px) / LETTERS_ACROSS).clamp(SMALLEST, LARGEST) }
    }

    /// A measure given in pixels for the smallest letters, on this drawing.
    pub(super) fn scaled(self, px: f64) -> f64 {
        px * self.size / SMALLEST
    }

    pub(super) fn measure(self, text: &str) -> Measured<'_> {
        let ems: f64 = text.chars().map(advance).sum();
        Measured { text, width: ems * self.size, height: self.size }
    }

    /// The same, in heavy letters.
    pub(super) fn measure_heavy(self, text: &str) -> Measured<'_> {
        let plain = self.measure(text);
        Measured { width: plain.width * HEAVIER, ..plain }
    }

    /// `text` with its middle at `at`.
    pub(super) fn write(self, text: &str, at: Spot, reads: Reads, role: Role) -> Item {
        Item::Text { at, anchor: Anchor::Middle, reads, size: self.size, text: text.to_owned(), role }
    }
}

impl Measured<'_> {
    /// Its box around `middle`.
    pub(super) fn around(self, middle: Spot, reads: Reads) -> PxBox {
        match reads {
            Reads::Across => PxBox::around(middle, self.width, self.height),
            Reads::Up => PxBox::around(middle, self.height, self.width),
        }
    }

    /// Half of its extent across or down the canvas, whichever `way` mostly runs.
    pub(super) fn half_along(self, way: Way, reads: Reads) -> f64 {
        let area = self.around(Spot::default(), reads);
        if way.is_across() { area.right } else { area.bottom }
    }
}

/// How much wider heavy letters run than plain ones, at most.
const HEAVIER: f64 = 1.12;

/// How far a letter moves the pen, in ems. Which font a phone draws with is not
/// known here, so these are the widths of a wide one (DejaVu Sans, measured in its
/// tables and rounded up): what fits with them fits with any usual font.
fn advance(letter: char) -> f64 {
    match letter {
        '\'' | 'i' | 'j' | 'l' | '′' => 0.28,
        ' ' | '.' | ',' | '/' | ':' | 'f' | 'I' => 0.36,
        '-' | '(' | ')' | 't' | 'r' => 0.42,
        '"' | '″' => 0.47,
        'c' | 'k' | 's' | 'v' | 'x' | 'y' | 'z' => 0.6,
        '0'..='9' | 'a'..='l' | 'n'..='v' => 0.64,
        'm' | '%' | 'M' | 'W' => 1.0,
        'w' | '+' | '≥' | 'A'..='Z' => 0.84,
        _ => 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(width_px: u32) -> Lettering {
        Lettering::on(Canvas { width_px, height_px: 300 })
    }

    #[test]
    fn letters_are_never_under_thirteen_pixels_and_grow_a_little_with_the_canvas() {
        assert_eq!(on(390).size, 13.0);
        assert_eq!(on(0).size, 13.0);
        assert_eq!(on(600).size, 15.0);
        assert_eq!(on(4_000).size, 17.0);
    }

    #[test]
    fn a_text_that_reads_up_takes_the_same_room_turned() {
        let text = on(390).measure("7' 8 1/4\"");
        let (across, up) = (text.around(Spot::default(), Reads::Across), text.around(Spot::default(), Reads::Up));
        assert_eq!((across.width(), across.height()), (up.height(), up.width()));
        assert!(across.width() > 50.0 && across.width() < 60.0, "{}", across.width());
    }
}
