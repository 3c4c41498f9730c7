//! The floor in square cells, each with what is known of it.

use super::field::{Field, feet};
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
    /// How much of what readings could tell of it they do tell, from 0 to 1.
    pub support: f64,
    /// How far the wood may be off the guess, as a variance of percent points.
    variance: f64,
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

impl Cell {
    /// How likely the wood here is over a limit, from 0 to 1.
    pub fn chance_over(&self, limit: MoistureContent) -> f64 {
        let beyond = self.moisture.to_percent() - limit.to_percent();
        let deviation = libm::sqrt(self.variance.max(1e-12));
        0.5 * libm::erfc(-beyond / (deviation * core::f64::consts::SQRT_2))
    }
}

impl Grid {
    pub(super) fn over(outline: &Outline, field: &Field) -> Self {
        let bounds = outline.bounds();
        let side = libm::sqrt(bounds.width().to_feet() * bounds.height().to_feet() / CELLS);
        let step = Length::from_inches(side * 12.0).to_nearest(Length::INCH).max(LEAST_STEP);
        let count = |extent: Length| (extent.to_nm() / step.to_nm()).max(0) as usize + 1;
        let (columns, rows) = (count(bounds.width()), count(bounds.height()));
        let middle = |at: usize| step.half() + step * at as i64;
        let cells = (0..rows).flat_map(|row| (0..columns).map(move |column| (row, column))).map(|(row, column)| {
            let at = Point::new(bounds.least().x + middle(column), bounds.least().y + middle(row));
            outline.contains(at).then(|| cell(field, at))
        });
        Self { step, columns, cells: cells.collect() }
    }

    /// The cells that are floor.
    pub fn floor(&self) -> impl Iterator<Item = &Cell> {
        self.cells.iter().flatten()
    }

    /// A cell by column and row, if there is floor.
    pub fn cell(&self, column: usize, row: usize) -> Option<&Cell> {
        if column < self.columns { self.cells.get(row * self.columns + column)?.as_ref() } else { None }
    }

    /// How many rows there are.
    pub fn rows(&self) -> usize {
        self.cells.len() / self.columns.max(1)
    }

    /// How much floor is so.
    pub fn area_where(&self, is_so: impl Fn(&Cell) -> bool) -> Area {
        let one = self.step * self.step;
        self.floor().filter(|cell| is_so(cell)).fold(Area::ZERO, |sum, _| sum + one)
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

fn cell(field: &Field, at: Point) -> Cell {
    let guess = field.guess(feet(at));
    let moisture = MoistureContent::from_percent_f64(guess.value);
    Cell { at, moisture, support: guess.support, variance: guess.variance }
}
