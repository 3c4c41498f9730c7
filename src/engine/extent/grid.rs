//! The floor in square cells, each with what is known of it.

use super::Spot;
use super::draws::OfPlace;
use super::field::{Field, feet};
use super::reach::is_reached;
use crate::engine::geometry::{Outline, Point, Rect};
use crate::engine::units::{Area, Length, MoistureContent};

/// About so many cells, whatever the floor's size.
const CELLS: f64 = 600.0;

/// No cell is smaller.
const LEAST_STEP: Length = Length::inches(3);

/// A cell and what is known of the wood in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cell {
    /// Its middle.
    pub at: Point,
    /// The best guess.
    pub moisture: MoistureContent,
    /// How likely the wood is over the limit, from 0 to 1.
    pub chance: f64,
    /// How much of what readings could tell of it they do tell, from 0 to 1; nothing where
    /// none reaches.
    pub support: f64,
    /// Does a reading reach it?
    pub is_reached: bool,
}

/// The floor's cells, row by row from its top left; nothing where there is no floor.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    /// How wide and how high a cell is.
    pub step: Length,
    /// How many lie side by side.
    pub columns: usize,
    /// All.
    pub cells: Vec<Option<Cell>>,
}

impl Grid {
    /// The cells of a floor, and on how many of them it is wet on each floor that was drawn.
    pub(super) fn over(outline: &Outline, field: &Field, spots: &[Spot], limit: MoistureContent) -> (Self, Vec<f64>) {
        let bounds = outline.bounds();
        let side = libm::sqrt(bounds.width().to_feet() * bounds.height().to_feet() / CELLS);
        let step = Length::from_inches(side * 12.0).to_nearest(Length::INCH).max(LEAST_STEP);
        let count = |extent: Length| (extent.to_nm() / step.to_nm()).max(0) as usize + 1;
        let (columns, rows) = (count(bounds.width()), count(bounds.height()));
        let middle = |at: usize| step.half() + step * at as i64;
        let middles = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
        let least = bounds.least();
        let middles = middles.map(|(column, row)| Point::new(least.x + middle(column), least.y + middle(row)));
        let places: Vec<_> = middles.map(|at| outline.contains(at).then_some(at)).collect();
        let floor: Vec<_> = places.iter().flatten().map(|at| feet(*at)).collect();
        let told = field.told(&floor, limit);
        let mut known = told.places.iter();
        let cells = places.into_iter().map(|place| place.and_then(|at| Some(cell(at, spots, known.next()?))));
        (Self { step, columns, cells: cells.collect() }, told.wet)
    }

    /// The cells that are floor.
    pub fn floor(&self) -> impl Iterator<Item = &Cell> {
        self.cells.iter().flatten()
    }

    /// So many cells as an area.
    pub(super) fn area(&self, outline: &Outline, cells: f64) -> Area {
        let one = outline.area().to_square_feet() * 144.0 / (self.floor().count().max(1) as f64);
        Area::from_square_inches(cells * one)
    }

    /// How many cells of the floor no reading reaches.
    pub(super) fn unread(&self) -> usize {
        self.floor().filter(|cell| !cell.is_reached).count()
    }

    /// A cell by column and row, if there is floor.
    pub fn cell(&self, column: usize, row: usize) -> Option<&Cell> {
        if column < self.columns { self.cells.get(row * self.columns + column)?.as_ref() } else { None }
    }

    /// How many rows there are.
    pub fn rows(&self) -> usize {
        self.cells.len() / self.columns.max(1)
    }

    /// The least rectangle around all floor that is so.
    pub fn bounds_where(&self, is_so: impl Fn(&Cell) -> bool) -> Option<Rect> {
        let half = self.step.half();
        let corners = |cell: &Cell| {
            let Point { x, y } = cell.at;
            [Point::new(x - half, y - half), Point::new(x + half, y + half)]
        };
        let points: Vec<_> = self.floor().filter(|cell| is_so(cell)).flat_map(corners).collect();
        (!points.is_empty()).then(|| Rect::around(&points))
    }
}

fn cell(at: Point, spots: &[Spot], known: &OfPlace) -> Cell {
    let (moisture, is_reached) = (MoistureContent::from_percent_f64(known.mean), is_reached(spots, at));
    let support = if is_reached { known.support } else { 0.0 };
    Cell { at, moisture, chance: known.chance, support, is_reached }
}
