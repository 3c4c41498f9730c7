//! Names and signs that find a place of their own: what an opening is called, how
//! large the gap is, where north lies.

use super::{PlanInput, Sketch};
use crate::draw::lettering::{Lettering, Measured};
use crate::draw::paper::Region;
use crate::draw::px::{PxBox, Stroke, Way};
use crate::draw::{Canvas, Item, Reads, Role, Spot};
use crate::engine::geometry::Heading;

/// Between a name and the edge of what it names.
const AIR: f64 = 4.0;
/// The least radius of the ring round a gap.
const GAP_RING: f64 = 9.0;
/// The length of the north arrow, and half the width of its head.
const ARROW: f64 = 24.0;
const HEAD: f64 = 5.0;

/// How high the legend's row is, in letters.
pub(super) const LEGEND: f64 = 1.4;

/// What the numbers on the plan are, in the row below it.
pub(super) fn legend(sketch: &Sketch) -> Option<Item> {
    let (sheet, lettering) = (sketch.sheet, sketch.lettering);
    let at = Spot { x: sheet.left.midpoint(sheet.right), y: sheet.bottom + LEGEND * lettering.size / 2.0 };
    Some(lettering.write(sketch.input.legend?, at, Reads::Across, Role::Note))
}

/// The word in the middle of an empty plan.
pub(super) fn empty(input: &PlanInput, canvas: Canvas) -> Option<Item> {
    let middle = Spot { x: f64::from(canvas.width_px) / 2.0, y: f64::from(canvas.height_px) / 2.0 };
    let note = input.note.as_ref().filter(|note| !note.is_empty())?;
    Some(Lettering::on(canvas).write(note, middle, Reads::Across, Role::Note))
}

pub(super) fn draw(sketch: &mut Sketch) -> Vec<Item> {
    let mut items = gap_text(sketch);
    items.extend(opening_labels(sketch));
    items.extend(common_mark_label(sketch));
    items.extend(north(sketch));
    items
}

/// The gap in a ring, since an inch of it is hardly seen.
pub(super) fn gap_ring(sketch: &mut Sketch) -> Vec<Item> {
    let Some((stroke, radius)) = ringed_gap(sketch) else {
        return Vec::new();
    };
    let at = stroke.middle();
    sketch.paper.take_mark(PxBox::around(at, 2.0 * radius, 2.0 * radius));
    let line = Item::Line { from: stroke.from, to: stroke.to, role: Role::Gap };
    vec![line, Item::Disc { at, radius, fill: None, role: Role::Gap }]
}

fn ringed_gap(sketch: &Sketch) -> Option<(Stroke, f64)> {
    let gap = sketch.input.gap.as_ref()?;
    let stroke = Stroke::new(sketch.frame.spot(gap.from), sketch.frame.spot(gap.to));
    let radius = stroke.length() / 2.0 + sketch.lettering.scaled(AIR);
    Some((stroke, radius.max(sketch.lettering.scaled(GAP_RING))))
}

/// How much the gap is, at the end of a leader from the edge of its ring.
fn gap_text(sketch: &mut Sketch) -> Vec<Item> {
    let (Some(gap), Some((stroke, radius))) = (&sketch.input.gap, ringed_gap(sketch)) else {
        return Vec::new();
    };
    let (at, text) = (stroke.middle(), sketch.lettering.measure(&gap.text));
    let Some(led) = sketch.paper.led_from(at, Region::Outdoors, text.width, text.height) else {
        sketch.unplaced.push(gap.text.clone());
        return Vec::new();
    };
    sketch.paper.take_text(led.area);
    let from = led.leader.way().map_or(at, |way| at.gone(way, radius));
    let leader = Item::Line { from, to: led.leader.to, role: Role::Leader };
    vec![leader, sketch.lettering.write(&gap.text, led.area.middle(), Reads::Across, Role::GapText)]
}

fn opening_labels(sketch: &mut Sketch) -> Vec<Item> {
    let openings = sketch.input.openings.iter().map(|opening| (opening, Role::OpeningLabel));
    let standing = sketch.input.standing.iter().map(|standing| (standing, Role::StandingLabel));
    let labelled = openings.chain(standing).filter(|(named, _)| !named.label.is_empty());
    labelled
        .flat_map(|(named, role)| {
            let (a, b) = (sketch.frame.spot(named.rect.least()), sketch.frame.spot(named.rect.most()));
            let text = sketch.lettering.measure(&named.label);
            in_or_by(sketch, Stroke::new(a, b).bounds(), text, role)
        })
        .collect()
}

fn common_mark_label(sketch: &mut Sketch) -> Option<Item> {
    let mark = sketch.input.common_mark.as_ref().filter(|mark| !mark.label.is_empty())?;
    let text = sketch.lettering.measure(&mark.label);
    let around =
        PxBox::around(sketch.frame.spot(mark.at), sketch.lettering.scaled(14.0), sketch.lettering.scaled(14.0));
    in_or_by(sketch, around, text, Role::CommonMarkLabel)
}

/// A text in a box if it fits there, else hard by it.
fn in_or_by(sketch: &mut Sketch, area: PxBox, text: Measured, role: Role) -> Option<Item> {
    let air = sketch.lettering.scaled(AIR);
    let (middle, down, across) = (area.middle(), text.height / 2.0 + air, text.width / 2.0 + air);
    let at = |x, y| Spot { x, y };
    let levels = [area.top + down, area.bottom - down, middle.y];
    let inside = levels.into_iter().flat_map(|y| [middle.x, area.left + across, area.right - across].map(|x| at(x, y)));
    let by = [
        at(middle.x, area.top - down),
        at(middle.x, area.bottom + down),
        at(area.right + across, middle.y),
        at(area.left - across, middle.y),
    ];
    let fits_inside = text.width + 2.0 * air <= area.width() && text.height + 2.0 * air <= area.height();
    let places = inside.filter(|_| fits_inside).chain(by);
    let boxes = places.map(|at| text.around(at, Reads::Across));
    let Some(place) = boxes.into_iter().find(|place| sketch.paper.has_room_for(*place)) else {
        sketch.unplaced.push(text.text.to_owned());
        return None;
    };
    sketch.paper.take_text(place);
    Some(sketch.lettering.write(text.text, place.middle(), Reads::Across, role))
}

/// The arrow in the first free corner. It never falls among the unplaced: a plan
/// without it is still right.
fn north(sketch: &mut Sketch) -> Vec<Item> {
    let Some(north) = sketch.input.north else {
        return Vec::new();
    };
    let seen = if sketch.frame.is_from_below() { north.mirrored() } else { north };
    let side = sketch.lettering.scaled(ARROW) + sketch.lettering.size + AIR;
    let Some(area) = sketch.paper.free_corner(side, side) else {
        return Vec::new();
    };
    sketch.paper.take_text(area);
    arrow(sketch.lettering, area.middle(), way(seen))
}

fn arrow(lettering: Lettering, middle: Spot, way: Way) -> Vec<Item> {
    let (half, head) = (lettering.scaled(ARROW) / 2.0, lettering.scaled(HEAD));
    let middle = middle.gone(way, -lettering.size / 2.0);
    let (tail, tip) = (middle.gone(way, -half), middle.gone(way, half));
    let neck = tip.gone(way, -2.0 * head);
    let spots = vec![neck.gone(way.left(), head), tip, neck.gone(way.left(), -head)];
    vec![
        Item::Line { from: tail, to: neck, role: Role::North },
        Item::Path { spots, closed: true, role: Role::North },
        lettering.write("N", tip.gone(way, AIR + lettering.size / 2.0), Reads::Across, Role::NorthText),
    ]
}

const fn way(heading: Heading) -> Way {
    match heading {
        Heading::East => Way { x: 1.0, y: 0.0 },
        Heading::South => Way { x: 0.0, y: 1.0 },
        Heading::West => Way { x: -1.0, y: 0.0 },
        Heading::North => Way { x: 0.0, y: -1.0 },
    }
}
