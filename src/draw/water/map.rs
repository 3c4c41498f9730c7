//! The map: what lies between the readings, as sure as it is, and every reading itself.

use crate::draw::frame::Extent as Span;
use crate::draw::lettering::Lettering;
use crate::draw::px::PxBox;
use crate::draw::ramp::{Ink, colour};
use crate::draw::{Canvas, Drawing, Frame, Item, Reads, Role, Spot};
use crate::engine::extent::{Cell, Extent, Grid, Spot as Read, Untold};
use crate::engine::geometry::Point;
use crate::engine::take::Units;
use crate::engine::units::{Length, MoistureContent};

/// Rows of letters left free around the floor.
const MARGIN: f64 = 1.6;

/// A line is drawn where what lies between readings is at least this well supported.
const SUPPORTED: f64 = 0.25;

/// Where decay can begin, drawn beside the limit.
const SOAKED: MoistureContent = MoistureContent::percent(28);

/// How many steps there are between a cell that nothing supports and a sure one.
const STRENGTHS: f64 = 5.0;

/// The floor as far as it is known, its limits as lines, every reading with its number,
/// and the next one.
pub fn map(extent: &Extent, units: Units, canvas: Canvas) -> Drawing {
    let lettering = Lettering::on(canvas);
    let sheet = PxBox { left: 0.0, top: 0.0, right: f64::from(canvas.width_px), bottom: f64::from(canvas.height_px) };
    let bounds = extent.outline.bounds();
    let span = Span { least: bounds.least(), most: bounds.most() };
    let frame = Frame::fit(span, sheet.grown(-MARGIN * lettering.size), false);
    let mut items = cells(&extent.grid, &frame);
    items.extend(joists(extent, &frame, lettering));
    for limit in [extent.limit, SOAKED] {
        items.extend(contour(&extent.grid, limit, &frame));
    }
    let wall = extent.outline.corners().iter().map(|corner| frame.spot(*corner)).collect();
    items.push(Item::Path { spots: wall, closed: true, role: Role::Wall });
    if let Some(opening) = extent.wet.ok().and_then(|wet| wet.opening) {
        let spots = opening.corners().map(|corner| frame.spot(corner)).to_vec();
        items.push(Item::Path { spots, closed: true, role: Role::CutLine });
    }
    items.extend(extent.spots.iter().flat_map(|spot| reading(frame.spot(spot.at), spot, lettering)));
    if let Some(next) = extent.next {
        let (radius, arm) = (lettering.scaled(9.0), lettering.scaled(15.0));
        items.push(Item::Target { at: frame.spot(next.at), radius, arm, role: Role::Cursor });
    }
    let title =
        format!("{}, {} readings: {}", extent.group.label(), extent.spots.len(), extent_in_words(extent, units));
    Drawing { canvas, title, items, frame: Some(frame), unplaced: Vec::new() }
}

fn extent_in_words(extent: &Extent, units: Units) -> String {
    let limit = extent.limit.to_percent();
    match extent.wet {
        Ok(wet) => format!("about {} over {limit:.0} %, the next reading marked by a ring", units.area(wet.area)),
        Err(Untold::Unread(unread)) => {
            format!("{} of the floor unread, the next reading marked by a ring", units.area(unread))
        }
        Err(Untold::TooFew) => "too few for an area, the next reading marked by a ring".to_owned(),
    }
}

/// Cells of one colour and strength that lie side by side are one.
fn cells(grid: &Grid, frame: &Frame) -> Vec<Item> {
    let look = |cell: &Cell| {
        let strength = libm::ceil(cell.support * STRENGTHS) / STRENGTHS;
        (colour(cell.moisture), (strength * 85.0) as u8)
    };
    let mut items = Vec::new();
    for row in 0..grid.rows() {
        let of_row: Vec<_> = (0..grid.columns).map(|column| grid.cell(column, row)).collect();
        for alike in of_row.chunk_by(|a, b| a.map(look) == b.map(look)) {
            let (Some(Some(first)), Some(Some(last))) = (alike.first(), alike.last()) else { continue };
            let half = grid.step.half();
            let corner = |at: Point, by: Length| frame.spot(Point::new(at.x + by, at.y + by));
            let (fill, percent) = look(first);
            items.push(Item::Area {
                from: corner(first.at, -half),
                to: corner(last.at, half),
                fill,
                percent,
                role: Role::MapCell,
            });
        }
    }
    items
}

fn joists(extent: &Extent, frame: &Frame, lettering: Lettering) -> Vec<Item> {
    let Some(joists) = &extent.floor.joists else { return Vec::new() };
    let (run, bounds) = (joists.run(), extent.outline.bounds());
    let ends = (run.along(bounds.least()), run.along(bounds.most()));
    let inside = |center: &Length| run.across(bounds.least()) <= *center && *center <= run.across(bounds.most());
    let numbered = (1_u16..).zip(joists.centers()).filter(|(_, center)| inside(center));
    numbered
        .flat_map(|(number, center)| {
            let [from, to] = [ends.0, ends.1].map(|end| frame.spot(run.point(center, end)));
            let back = lettering.size * 0.8;
            let at = match run.axis() {
                crate::engine::geometry::Axis::Y => Spot { x: from.x, y: from.y - back },
                crate::engine::geometry::Axis::X => Spot { x: from.x - back, y: from.y },
            };
            let name = lettering.write(&number.to_string(), at, Reads::Across, Role::JoistNumber);
            [Item::Line { from, to, role: Role::JoistBelow }, name]
        })
        .collect()
}

fn reading(at: Spot, read: &Read, lettering: Lettering) -> Vec<Item> {
    let fill = colour(read.corrected.corrected.bound());
    let ink = match fill.ink() {
        Ink::Black => Role::OnLight,
        Ink::White => Role::OnDark,
    };
    let disc = Item::Disc { at, radius: lettering.scaled(11.0), fill: Some(fill), role: Role::Reading };
    vec![disc, lettering.write(&read.corrected.mark(), at, Reads::Across, ink)]
}

/// Where the best guess passes a value: from cell to cell, along straight lines.
fn contour(grid: &Grid, value: MoistureContent, frame: &Frame) -> Vec<Item> {
    let at = |column: usize, row: usize| grid.cell(column, row).filter(|cell| cell.support >= SUPPORTED);
    let mut items = Vec::new();
    for row in 1..grid.rows() {
        for column in 1..grid.columns {
            let corners = [(column - 1, row - 1), (column, row - 1), (column, row), (column - 1, row)];
            let [Some(a), Some(b), Some(c), Some(d)] = corners.map(|(column, row)| at(column, row)) else { continue };
            let crossings: Vec<_> = [(a, b), (b, c), (c, d), (d, a)]
                .into_iter()
                .filter_map(|(from, to)| crossing(from, to, value))
                .collect();
            for pair in crossings.chunks_exact(2) {
                if let [from, to] = pair {
                    items.push(Item::Line { from: frame.spot(*from), to: frame.spot(*to), role: Role::Contour });
                }
            }
        }
    }
    items
}

/// Where between two cells' middles the value is passed, if it is.
fn crossing(from: &Cell, to: &Cell, value: MoistureContent) -> Option<Point> {
    let (low, high) = (from.moisture.to_percent(), to.moisture.to_percent());
    let value = value.to_percent();
    if (low < value) == (high < value) {
        return None;
    }
    let part = (value - low) / (high - low);
    Some(Point::new(from.at.x + (to.at.x - from.at.x).scaled(part), from.at.y + (to.at.y - from.at.y).scaled(part)))
}
