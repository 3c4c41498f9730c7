//! An opening proposed for what is wet: within the walls, clear of what is open already.

use super::{Floor, Opening};
use crate::engine::geometry::{Outline, Point, Rect};
use crate::engine::units::tape::{InchStep, LengthStyle, format};
use crate::engine::units::{Length, Typed};
use crate::order;

/// Openings are proposed to the sixteenth, as tapes are marked.
const SIXTEENTH: Length = Length::sixty_fourths(4);

/// Nothing smaller is worth an opening (a judgement, no source).
const LEAST: Length = Length::inches(6);

/// The largest opening within a rectangle that does not leave the room and shares nothing
/// with an opening that is logged; its ends on joist centers where the rectangle's are.
/// None where nothing of it is left.
pub fn propose(floor: &Floor, outline: &Outline, wet: Rect) -> Option<Rect> {
    let lines = |of: fn(Point) -> Length| {
        let corners = outline.corners().iter().copied();
        let openings = floor.openings.iter().flat_map(|(_, rect)| [rect.least(), rect.most()]);
        let (least, most) = (of(wet.least()), of(wet.most()));
        let within = corners.chain(openings).map(of).filter(|at| (least..=most).contains(at));
        let mut all: Vec<_> = within.chain([least, most]).collect();
        all.extend(centers(floor, of).filter(|at| (least..=most).contains(at)));
        order::sort(&mut all);
        all.dedup();
        all
    };
    let (across, down) = (lines(|point| point.x), lines(|point| point.y));
    let pairs = |lines: &[Length]| -> Vec<(Length, Length)> {
        let each = lines.iter().enumerate();
        // A wall that is not quite square to the page is kept clear of by a sixteenth.
        let inward = |from: Length, to: Length| (from.up_to(SIXTEENTH), to.down_to(SIXTEENTH));
        let all = each.flat_map(|(at, from)| lines.iter().skip(at + 1).map(move |to| (*from, *to)));
        all.flat_map(|(from, to)| {
            let (from, to) = inward(from, to);
            [
                (from, to),
                (from + SIXTEENTH * 8, to),
                (from, to - SIXTEENTH * 8),
                (from + SIXTEENTH * 8, to - SIXTEENTH * 8),
            ]
        })
        .filter(|(from, to)| *to - *from >= LEAST)
        .collect()
    };
    let (across, down) = (pairs(&across), pairs(&down));
    let mut best: Option<Rect> = None;
    for (left, right) in &across {
        for (top, bottom) in &down {
            let Some(rect) = Rect::between(Point::new(*left, *top), Point::new(*right, *bottom)) else { continue };
            let is_larger = best.is_none_or(|best| rect.area() > best.area());
            let is_clear = || floor.openings.iter().all(|(_, open)| !open.overlaps(rect));
            if is_larger && is_clear() && outline.holds_rect(rect) {
                best = Some(rect);
            }
        }
    }
    best
}

/// The joists' centers, if they are lines of this coordinate.
fn centers(floor: &Floor, of: fn(Point) -> Length) -> impl Iterator<Item = Length> {
    // A point one across the joists: which coordinate is that?
    let joists =
        floor.joists.as_ref().filter(|joists| of(joists.run().point(Length::INCH, Length::ZERO)) == Length::INCH);
    joists.into_iter().flat_map(super::Framing::centers)
}

/// The rectangle as an opening from the first corner. None if it cannot be said so exactly.
pub fn as_opening(floor: &Floor, rect: Rect) -> Option<Opening> {
    let from = *floor.sides.first()?;
    // Sixteenths are exact in inches alone, whatever lengths are shown in.
    let style = LengthStyle::inches(InchStep::SixtyFourth);
    let typed = |length: Length| Typed::new(format(length, style).unmarked().to_owned(), length);
    // The first side runs along the page from the first corner.
    let (along, length) = (rect.least().x, rect.width());
    let out = if floor.is_inward_right() { rect.least().y } else { -rect.most().y };
    let sized = Opening {
        from,
        along: typed(along.max(Length::ZERO)),
        out: typed(out.max(Length::ZERO)),
        length: typed(length),
        width: typed(rect.height()),
    };
    (floor.place(&sized) == Some(rect)).then_some(sized)
}
