//! What stands at a place and cannot move: openings, readings, places without one,
//! the common mark, the cursor.

use super::{Reading, ReadingMark, Sketch};
use crate::draw::px::PxBox;
use crate::draw::ramp::{self, Ink};
use crate::draw::{Item, Reads, Role, Spot};
use crate::engine::geometry::Rect;
use crate::order;

/// The least radius of a reading's disc.
const DISC: f64 = 11.0;
/// Between a number and the edge of its disc.
const RIM: f64 = 0.7;
/// Between a disc and the ring around it.
const RING: f64 = 2.0;
const UNREAD: f64 = 4.0;
const CURSOR: f64 = 12.0;
const CURSOR_ARM: f64 = 18.0;
const COMMON_MARK: f64 = 7.0;
/// Half the height of a digit, in ems.
const HALF_DIGIT: f64 = 0.365;

/// The edges of what comes out and of what stands in the floor, and the lines of both
/// floors.
pub(super) fn openings(sketch: &Sketch) -> Vec<Item> {
    let input = sketch.input;
    let around = |rect: Rect, role| {
        let spots = rect.corners().map(|corner| sketch.frame.spot(corner)).to_vec();
        Item::Path { spots, closed: true, role }
    };
    let openings = input.openings.iter().map(|opening| around(opening.rect, Role::Opening));
    let standing = input.standing.iter().map(|standing| around(standing.rect, Role::Standing));
    let finish = input.finish_lines.iter().map(|line| around(*line, Role::FinishLine));
    let cut_backs = input.cut_backs.iter().map(|line| around(*line, Role::CutBack));
    openings.chain(standing).chain(finish).chain(cut_backs).collect()
}

/// All marks, and the room they take.
pub(super) fn draw(sketch: &mut Sketch) -> Vec<Item> {
    let mut items = unread(sketch);
    items.extend(readings(sketch));
    items.extend(common_mark(sketch));
    items.extend(cursor(sketch));
    items
}

fn unread(sketch: &mut Sketch) -> Vec<Item> {
    let radius = sketch.lettering.scaled(UNREAD);
    let places = sketch.input.unread.iter();
    places.map(|place| ring(&mut sketch.paper, sketch.frame.spot(*place), radius, Role::Unread)).collect()
}

/// The readings, wetter ones over drier ones and marked ones over all, so that
/// where discs crowd it is the number that matters most that stays whole.
fn readings(sketch: &mut Sketch) -> Vec<Item> {
    let mut readings: Vec<_> = sketch.input.readings.iter().collect();
    let weight = |reading: &Reading| (reading.mark != ReadingMark::Plain, reading.moisture);
    order::sort_by(&mut readings, |a, b| weight(a).cmp(&weight(b)));
    readings.into_iter().flat_map(|reading| one_reading(sketch, reading)).collect()
}

fn one_reading(sketch: &mut Sketch, reading: &Reading) -> Vec<Item> {
    let (at, lettering) = (sketch.frame.spot(reading.at), sketch.lettering);
    let number = lettering.measure_heavy(&reading.text);
    let reach = libm::hypot(number.width / 2.0, HALF_DIGIT * lettering.size) + RIM;
    let radius = reach.max(lettering.scaled(DISC));
    let fill = ramp::colour(reading.moisture);
    let ink = match fill.ink() {
        Ink::Black => Role::OnLight,
        Ink::White => Role::OnDark,
    };
    let rim = match reading.mark {
        ReadingMark::Plain => None,
        ReadingMark::Flagged => Some(Role::ReadingFlag),
        ReadingMark::OffScale => Some(Role::ReadingOver),
    };
    let ringed = radius + lettering.scaled(RING);
    let rim = rim.map(|role| ring(&mut sketch.paper, at, ringed, role));
    sketch.paper.take_mark(PxBox::around(at, 2.0 * radius, 2.0 * radius));
    let disc = Item::Disc { at, radius, fill: Some(fill), role: Role::Reading };
    rim.into_iter().chain([disc, lettering.write(&reading.text, at, Reads::Across, ink)]).collect()
}

fn common_mark(sketch: &mut Sketch) -> Option<Item> {
    let mark = sketch.input.common_mark.as_ref()?;
    let (at, arm) = (sketch.frame.spot(mark.at), sketch.lettering.scaled(COMMON_MARK));
    sketch.paper.take_mark(PxBox::around(at, 2.0 * arm, 2.0 * arm));
    Some(Item::Cross { at, arm, role: Role::CommonMark })
}

fn cursor(sketch: &mut Sketch) -> Option<Item> {
    let at = sketch.frame.spot(sketch.input.cursor?);
    let (radius, arm) = (sketch.lettering.scaled(CURSOR), sketch.lettering.scaled(CURSOR_ARM));
    sketch.paper.take_mark(PxBox::around(at, 2.0 * arm, 2.0 * arm));
    Some(Item::Target { at, radius, arm, role: Role::Cursor })
}

fn ring(paper: &mut crate::draw::paper::Paper, at: Spot, radius: f64, role: Role) -> Item {
    paper.take_mark(PxBox::around(at, 2.0 * radius, 2.0 * radius));
    Item::Disc { at, radius, fill: None, role }
}
