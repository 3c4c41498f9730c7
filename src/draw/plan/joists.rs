//! Joist lines, clipped to the outline, and their numbers in a row along one wall.

use super::{Joist, Joists, PlanInput, Sketch};
use crate::draw::frame::Extent;
use crate::draw::lettering::{Lettering, Measured};
use crate::draw::px::PxBox;
use crate::draw::{Item, Reads, Role, Spot};
use crate::engine::geometry::{Axis, Chord, Point};
use crate::engine::units::Length;

/// How long a joist is drawn when nothing tells where it begins and ends.
const SKETCHED: Length = Length::feet(8);
/// Between the numbers and the wall.
const AIR: f64 = 4.0;
/// And when something stands in the way.
const AIRS: [f64; 4] = [AIR, 8.0, 12.0, 16.0];
/// When not all numbers fit, every one of these in turn is tried.
const EVERY: [u32; 7] = [1, 2, 5, 10, 20, 50, 100];

/// The ends of joists of which no walls are known: they span what else there is to
/// see, or else a length of their own.
pub(super) fn ends(joists: &Joists, seen: Option<Extent>) -> impl Iterator<Item = Point> {
    let known = seen.map(|seen| span(joists.run, seen)).filter(|(from, to)| from < to);
    let (from, to) = known.unwrap_or((Length::ZERO, SKETCHED));
    let run = joists.run;
    joists.joists.iter().flat_map(move |joist| [from, to].map(|along| place(run, joist.at, along)))
}

/// Takes the row of numbers off the area for the room.
pub(super) fn leave_room_for_numbers(input: &PlanInput, lettering: Lettering, area: &mut PxBox) {
    match input.joists.as_ref().filter(|joists| !joists.joists.is_empty()) {
        Some(joists) if joists.run == Axis::Y => area.top += lettering.size + lettering.scaled(AIR),
        Some(joists) => area.left += widest(joists, lettering) + lettering.scaled(AIR),
        None => {}
    }
}

/// The joists' centre lines.
pub(super) fn lines(sketch: &Sketch) -> Vec<Item> {
    let Some(joists) = &sketch.input.joists else {
        return Vec::new();
    };
    let line = |joist: Joist, Chord { from, to }| Item::Line {
        from: sketch.frame.spot(place(joists.run, joist.at, from)),
        to: sketch.frame.spot(place(joists.run, joist.at, to)),
        role: Role::Joist,
    };
    let chords = |joist: Joist| chords(sketch, joists, joist).into_iter().map(move |chord| line(joist, chord));
    joists.joists.iter().flat_map(|joist| chords(*joist)).collect()
}

/// The joists' numbers, as many as fit side by side, in one row above the room or
/// one column left of it.
pub(super) fn numbers(sketch: &mut Sketch) -> Vec<Item> {
    let Some(joists) = &sketch.input.joists else {
        return Vec::new();
    };
    let drawn = joists.joists.iter().filter(|joist| !chords(sketch, joists, **joist).is_empty());
    let numbers: Vec<_> = drawn.map(|joist| (joist, joist.number.to_string())).collect();
    let row = |air: f64| {
        EVERY.into_iter().find_map(|every| {
            let kept = numbers.iter().filter(|(joist, _)| joist.number % every == 0);
            let row: Vec<_> = kept.map(|(joist, text)| spot_of(sketch, joists, **joist, text, air)).collect();
            fits(&row).then_some(row)
        })
    };
    // A reading at the very end of a joist pushes the row further out.
    let is_clear = |row: &Vec<(Spot, Measured)>| {
        row.iter().all(|(at, text)| sketch.paper.is_off_marks(text.around(*at, Reads::Across)))
    };
    let row = AIRS.into_iter().filter_map(row).find(is_clear).or_else(|| row(AIR));
    let mut items = Vec::new();
    for (at, text) in row.unwrap_or_default() {
        let area = text.around(at, Reads::Across);
        sketch.paper.take_text(area);
        // A length among the numbers would read as one of them.
        sketch.paper.take_mark(whole_row(joists.run, area, sketch.bounds));
        items.push(sketch.lettering.write(text.text, at, Reads::Across, Role::JoistNumber));
    }
    items
}

/// The row or column that a number stands in, all along the room.
fn whole_row(run: Axis, number: PxBox, room: PxBox) -> PxBox {
    match run {
        Axis::Y => PxBox { left: room.left, right: room.right, ..number },
        Axis::X => PxBox { top: room.top, bottom: room.bottom, ..number },
    }
}

/// Where a joist's number stands.
fn spot_of<'t>(sketch: &Sketch, joists: &Joists, joist: Joist, text: &'t str, air: f64) -> (Spot, Measured<'t>) {
    let measured = sketch.lettering.measure(text);
    let centre = sketch.frame.spot(place(joists.run, joist.at, Length::ZERO));
    let air = sketch.lettering.scaled(air);
    let at = match joists.run {
        Axis::Y => Spot { x: centre.x, y: sketch.bounds.top - air - measured.height / 2.0 },
        Axis::X => Spot { x: sketch.bounds.left - air - measured.width / 2.0, y: centre.y },
    };
    (at, measured)
}

/// Is there air between any two numbers of a row?
fn fits(row: &[(Spot, Measured)]) -> bool {
    let boxes: Vec<_> = row.iter().map(|(at, text)| text.around(*at, Reads::Across).grown(1.0)).collect();
    let others = |place: usize| boxes.iter().skip(place + 1);
    !boxes.iter().enumerate().any(|(place, a)| others(place).any(|b| a.overlaps(*b)))
}

/// Where a joist is drawn.
fn chords(sketch: &Sketch, joists: &Joists, joist: Joist) -> Vec<Chord> {
    if let Some(outline) = sketch.input.walls.outline() {
        return outline.chords(joists.run, joist.at);
    }
    let corner = |spot| sketch.frame.point(spot);
    let PxBox { left, top, right, bottom } = sketch.bounds;
    let (a, b) = (corner(Spot { x: left, y: top }), corner(Spot { x: right, y: bottom }));
    let (from, to) = span(joists.run, Extent { least: a.min(b), most: a.max(b) });
    vec![Chord { from, to }]
}

fn span(run: Axis, extent: Extent) -> (Length, Length) {
    (extent.least.along(run), extent.most.along(run))
}

fn place(run: Axis, at: Length, along: Length) -> Point {
    match run {
        Axis::X => Point::new(along, at),
        Axis::Y => Point::new(at, along),
    }
}

fn widest(joists: &Joists, lettering: Lettering) -> f64 {
    let widths = joists.joists.iter().map(|joist| lettering.measure(&joist.number.to_string()).width);
    widths.fold(0.0, f64::max)
}
