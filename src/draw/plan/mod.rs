//! A room in plan, as a carpenter draws it: walls, joists, what comes out, the
//! readings with their numbers, and dimension strings outside the walls.
//!
//! The strings are what takes thought. Each side of the room offers many places for
//! its own (`dimensions`), the paper says which are free, and the cheapest one is
//! taken; if that leaves somebody without a place, the room is drawn smaller and
//! everything is placed again.

mod dimensions;
mod input;
mod joists;
mod marks;
mod notes;
mod walls;

pub use input::{CommonMark, Gap, Joist, Joists, Opening, PlanInput, Reading, ReadingMark, View, Walls};

use super::frame::Extent;
use super::lettering::Lettering;
use super::paper::Paper;
use super::px::PxBox;
use super::{Canvas, Drawing, Frame, Item};

/// Space around the room, in rows of strings, from the most room to the least.
const MARGINS: [f64; 3] = [1.4, 2.4, 3.4];
/// How much worse a drawing counts for every further row it leaves.
const ROW_COST: f64 = 2.0;
/// How much worse a drawing counts for every text that found no place.
const UNPLACED_COST: f64 = 100.0;

/// One attempt at a drawing.
struct Sketch<'a> {
    input: &'a PlanInput,
    frame: Frame,
    /// The canvas without the legend's row.
    sheet: PxBox,
    lettering: Lettering,
    /// The room's walls, or what there is of them, on the canvas.
    bounds: PxBox,
    paper: Paper,
    items: Vec<Item>,
    unplaced: Vec<String>,
    /// How far it is from what one would wish.
    cost: f64,
}

/// Draws a plan for a canvas.
pub fn plan(input: &PlanInput, canvas: Canvas, view: View) -> Drawing {
    let Some(extent) = extent(input) else {
        return empty(input, canvas);
    };
    let mut best: Option<Sketch> = None;
    for (row, margin) in (0_u8..).zip(MARGINS) {
        let at_least = f64::from(row) * ROW_COST;
        if best.as_ref().is_some_and(|best| best.cost <= at_least) {
            break;
        }
        let mut sketch = Sketch::begin(input, extent, canvas, view, margin);
        sketch.draw();
        sketch.cost += at_least;
        if best.as_ref().is_none_or(|best| sketch.cost < best.cost) {
            best = Some(sketch);
        }
    }
    best.map_or_else(|| empty(input, canvas), |sketch| sketch.finish(canvas))
}

/// What must be seen: all points, and the joists even if nothing else is known.
fn extent(input: &PlanInput) -> Option<Extent> {
    let seen = Extent::of(input.points());
    // Joists do not widen a room that is there: they are clipped to it.
    let alone = input.joists.iter().filter(|_| input.walls.outline().is_none());
    let ends = alone.flat_map(|joists| joists::ends(joists, seen));
    Extent::of(ends.chain(seen.iter().flat_map(|seen| [seen.least, seen.most])))
}

fn empty(input: &PlanInput, canvas: Canvas) -> Drawing {
    let items = notes::empty(input, canvas).into_iter().collect();
    Drawing { canvas, title: input.title.clone(), items, frame: None, unplaced: Vec::new() }
}

impl<'a> Sketch<'a> {
    fn begin(input: &'a PlanInput, extent: Extent, canvas: Canvas, view: View, margin: f64) -> Self {
        let lettering = Lettering::on(canvas);
        let (width, height) = (f64::from(canvas.width_px), f64::from(canvas.height_px));
        // The legend has a row of its own at the foot.
        let foot = if input.legend.is_some() { notes::LEGEND * lettering.size } else { 0.0 };
        let sheet = PxBox { left: 0.0, top: 0.0, right: width, bottom: height - foot };
        let mut area = sheet.grown(-margin * dimensions::row(lettering));
        joists::leave_room_for_numbers(input, lettering, &mut area);
        let frame = Frame::fit(extent, area, view.from_below);
        let walls = walls::on_canvas(&input.walls, &frame);
        let (a, b) = (frame.spot(extent.least), frame.spot(extent.most));
        let bounds = super::px::Stroke::new(a, b).bounds();
        let paper = Paper::new(sheet.grown(-2.0), walls.strokes, walls.room);
        Self { input, frame, sheet, lettering, bounds, paper, items: Vec::new(), unplaced: Vec::new(), cost: 0.0 }
    }

    /// Places first what cannot move, then the texts that can; draws from the
    /// bottom up.
    fn draw(&mut self) {
        let marks = marks::draw(self);
        let gap = notes::gap_ring(self);
        let numbers = joists::numbers(self);
        let dimensions = dimensions::draw(self);
        let notes = notes::draw(self);
        let layers = [
            walls::floor(self),
            joists::lines(self),
            marks::openings(self),
            dimensions,
            walls::lines(self),
            numbers,
            gap,
            notes,
            marks,
            notes::legend(self).into_iter().collect(),
        ];
        self.items.extend(layers.into_iter().flatten());
        self.cost += self.unplaced.len() as f64 * UNPLACED_COST;
    }

    fn finish(self, canvas: Canvas) -> Drawing {
        Drawing {
            canvas,
            title: self.input.title.clone(),
            items: self.items,
            frame: Some(self.frame),
            unplaced: self.unplaced,
        }
    }
}

#[cfg(test)]
mod tests;
