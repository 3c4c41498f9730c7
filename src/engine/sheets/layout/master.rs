//! A small linear programme, grown column by column: the fewest sheets, in fractions,
//! that yield the pieces of some mix of layouts.
//!
//! One row a kind: what the cuttings yield less what the layouts need is at least
//! nought. One row more: the layouts' shares make one. And one for each part of a sheet
//! that is on hand: it is cut once and costs nothing. The prices of the kinds (the
//! rows' duals) are what this is for; floating point will do for them, since every
//! bound that they lead to is summed up again in whole numbers.

/// What counts as nothing.
const TINY: f64 = 1e-9;

/// Small demands of their own for each row: without them nearly every step would
/// change nothing, and the search for better prices could go round in circles.
const NUDGE: f64 = 1e-5;

/// A column: its cost, and its entries.
#[derive(Debug, Clone, PartialEq)]
struct Column {
    cost: f64,
    entries: Vec<(usize, f64)>,
}

/// The programme and its present basis.
#[derive(Debug, Clone)]
pub struct Master {
    rows: usize,
    kinds: usize,
    columns: Vec<Column>,
    /// The column that each row's basic variable belongs to.
    basis: Vec<usize>,
    /// The basis inverted, row by row.
    inverse: Vec<f64>,
    /// The basic variables' values.
    values: Vec<f64>,
    /// How many entries were worked on so far: a measure of the work done.
    pub work: u64,
}

#[allow(clippy::indexing_slicing, reason = "rows and columns are numbered here, and the tables sized by them")]
impl Master {
    /// Begins with one layout, every piece of it on a sheet of its own.
    pub fn new(kinds: usize, layout: &[(u16, u16)], on_hand: usize) -> Self {
        let rows = kinds + 1 + on_hand;
        let mut columns: Vec<_> = (0..kinds).map(|kind| Column { cost: 1.0, entries: vec![(kind, 1.0)] }).collect();
        columns.push(layout_column(kinds, layout));
        // What is on hand may stay as it is.
        columns.extend((kinds + 1..rows).map(|row| Column { cost: 0.0, entries: vec![(row, 1.0)] }));
        columns.extend((0..kinds).map(|kind| Column { cost: 0.0, entries: vec![(kind, -1.0)] }));
        let mut inverse = vec![0.0; rows * rows];
        for row in 0..rows {
            inverse[row * rows + row] = 1.0;
        }
        let mut values: Vec<_> = (0..kinds).map(nudge).collect();
        values.resize(rows, 1.0);
        for (kind, count) in layout {
            let (kind, count) = (usize::from(*kind), f64::from(*count));
            inverse[kind * rows + kinds] = count;
            values[kind] += count;
        }
        Self { rows, kinds, columns, basis: (0..rows).collect(), inverse, values, work: 0 }
    }

    /// How many columns it has.
    pub fn columns(&self) -> usize {
        self.columns.len()
    }

    /// About how much memory it takes.
    pub fn bytes(&self) -> usize {
        let entries = self.columns.iter().map(|column| 40 + column.entries.len() * 16).sum::<usize>();
        entries + self.rows * self.rows * 8 + self.rows * 24
    }

    /// Adds what a part on hand can yield or, by the number beyond those, a sheet; false
    /// if it is there already.
    pub fn add_cutting(&mut self, blank: usize, yields: &[(u16, u16)]) -> bool {
        let mut entries: Vec<_> = yields.iter().map(|(kind, count)| (usize::from(*kind), f64::from(*count))).collect();
        let share = self.kinds + 1 + blank;
        let is_on_hand = share < self.rows;
        entries.extend(is_on_hand.then_some((share, 1.0)));
        self.add(Column { cost: if is_on_hand { 0.0 } else { 1.0 }, entries })
    }

    /// Adds what a layout needs; false if it is there already.
    pub fn add_layout(&mut self, needs: &[(u16, u16)]) -> bool {
        self.add(layout_column(self.kinds, needs))
    }

    fn add(&mut self, column: Column) -> bool {
        let is_new = !self.columns.contains(&column);
        if is_new {
            self.columns.push(column);
        }
        is_new
    }

    /// The rows' prices at the present basis: the kinds', what a layout is worth, and the
    /// shares of what is on hand.
    pub fn prices(&self) -> Vec<f64> {
        let mut prices = vec![0.0; self.rows];
        for (row, column) in self.basis.iter().enumerate() {
            let cost = self.columns[*column].cost;
            if cost != 0.0 {
                let inverse = &self.inverse[row * self.rows..(row + 1) * self.rows];
                prices.iter_mut().zip(inverse).for_each(|(price, entry)| *price += cost * entry);
            }
        }
        prices
    }

    /// How many sheets, in fractions, the present mix of cuttings and layouts takes. More
    /// columns can only lower it.
    pub fn value(&self) -> f64 {
        self.basis.iter().zip(&self.values).map(|(column, value)| self.columns[*column].cost * value).sum()
    }

    /// Steps until no column would lower the number of sheets, or `most` steps; says
    /// whether it got there.
    pub fn solve(&mut self, most: usize) -> bool {
        for _ in 0..most {
            let prices = self.prices();
            let worth =
                |column: &Column| column.cost - column.entries.iter().map(|(row, by)| prices[*row] * by).sum::<f64>();
            let worths = self.columns.iter().map(worth).enumerate();
            let best = worths.min_by(|a, b| a.1.total_cmp(&b.1)).filter(|(_, worth)| *worth < -1e-7);
            let Some((entering, _)) = best else { return true };
            if !self.enter(entering) {
                return true;
            }
        }
        false
    }

    fn enter(&mut self, entering: usize) -> bool {
        let rows = self.rows;
        self.work += (rows * rows + 8 * self.columns.len()) as u64;
        let mut direction = vec![0.0; rows];
        for (at, by) in &self.columns[entering].entries {
            for (row, entry) in direction.iter_mut().enumerate() {
                *entry += self.inverse[row * rows + at] * by;
            }
        }
        let steps =
            (0..rows).filter(|row| direction[*row] > TINY).map(|row| (row, self.values[row].max(0.0) / direction[row]));
        let Some((leaving, step)) = steps.min_by(|a, b| a.1.total_cmp(&b.1)) else { return false };
        let pivot = direction[leaving];
        let (before, rest) = self.inverse.split_at_mut(leaving * rows);
        let (pivot_row, after) = rest.split_at_mut(rows);
        pivot_row.iter_mut().for_each(|entry| *entry /= pivot);
        let others = before
            .chunks_exact_mut(rows)
            .zip(&direction)
            .chain(after.chunks_exact_mut(rows).zip(&direction[leaving + 1..]));
        for (row, by) in others.filter(|(_, by)| by.abs() > TINY) {
            row.iter_mut().zip(&*pivot_row).for_each(|(entry, pivot)| *entry -= by * pivot);
        }
        for (row, value) in self.values.iter_mut().enumerate() {
            *value -= step * direction[row];
        }
        self.values[leaving] = step;
        self.basis[leaving] = entering;
        true
    }
}

fn layout_column(kinds: usize, needs: &[(u16, u16)]) -> Column {
    let mut entries: Vec<_> = needs.iter().map(|(kind, count)| (usize::from(*kind), -f64::from(*count))).collect();
    entries.push((kinds, 1.0));
    Column { cost: 0.0, entries }
}

/// Different for every row, the same every time.
fn nudge(row: usize) -> f64 {
    NUDGE * (1.0 + (row * 7919 % 1009) as f64 / 1009.0)
}
