//! Rows of cells from end to end of a run, counted before they are listed.

use super::scheme::Run;

/// The numbers of a row's cells, from left to right.
pub type Row = Vec<u16>;

/// All rows, those of the fewest cells first, if there are no more than `most`; else
/// `few` of those with the fewest cells or one more, evenly spread. Says whether these
/// are all.
pub fn rows(run: &Run, most: usize, few: usize) -> (Vec<Row>, bool) {
    let counts = Counts::of(run);
    let by_length: Vec<(usize, u64)> =
        (0..=run.bays()).map(|cells| (cells, counts.of_length(cells, 0))).filter(|(_, rows)| *rows > 0).collect();
    let all = by_length.iter().fold(0_u64, |all, (_, rows)| all.saturating_add(*rows));
    if all <= most as u64 {
        let each = by_length.iter().flat_map(|(cells, rows)| (0..*rows).map(move |rank| (*cells, rank)));
        return (each.map(|(cells, rank)| counts.row(run, cells, rank)).collect(), true);
    }
    let mut listed = Vec::new();
    for (cells, rows) in by_length.iter().take(2) {
        // Half for the fewest cells; what they leave is for one more.
        let room = if listed.is_empty() { few.div_ceil(2) } else { few - listed.len() };
        let picks = (*rows).min(room as u64);
        let rank = |pick: u64| (u128::from(pick) * u128::from(*rows) / u128::from(picks)) as u64;
        listed.extend((0..picks).map(|pick| counts.row(run, *cells, rank(pick))));
    }
    (listed, false)
}

/// How many rows lead from each support to the end, by how many cells they have.
struct Counts {
    supports: usize,
    /// For each number of cells in turn, for each support.
    rows: Vec<u64>,
}

impl Counts {
    fn of(run: &Run) -> Self {
        let supports = run.supports.len();
        let mut counts = Self { supports, rows: vec![0; supports * supports] };
        counts.add(0, run.bays(), 1);
        for cells in 1..supports {
            for cell in &run.cells {
                counts.add(cells, cell.from, counts.of_length(cells - 1, cell.to));
            }
        }
        counts
    }

    fn of_length(&self, cells: usize, from: usize) -> u64 {
        self.rows.get(cells * self.supports + from).copied().unwrap_or_default()
    }

    fn add(&mut self, cells: usize, from: usize, more: u64) {
        if let Some(rows) = self.rows.get_mut(cells * self.supports + from) {
            *rows = rows.saturating_add(more);
        }
    }

    /// The row of some rank among those of so many cells.
    fn row(&self, run: &Run, cells: usize, mut rank: u64) -> Row {
        let (mut row, mut at) = (Row::new(), 0);
        for left in (0..cells).rev() {
            // Cells are in order of where they begin.
            let first = run.cells.partition_point(|cell| cell.from < at);
            let begin_here = run.cells.iter().enumerate().skip(first).take_while(|(_, cell)| cell.from == at);
            for (number, cell) in begin_here {
                let rows = self.of_length(left, cell.to);
                if rank < rows {
                    row.push(number as u16);
                    at = cell.to;
                    break;
                }
                rank -= rows;
            }
        }
        row
    }
}
