//! Small symmetric matrices: as much as a room needs.
#![allow(clippy::indexing_slicing, reason = "rows and columns run below the size that the table was made with")]

/// A square matrix, row by row.
#[derive(Debug, Clone, PartialEq)]
pub struct Square {
    size: usize,
    entries: Vec<f64>,
}

impl Square {
    pub fn zero(size: usize) -> Self {
        Self { size, entries: vec![0.0; size * size] }
    }

    pub fn at(&self, row: usize, column: usize) -> f64 {
        self.entries[row * self.size + column]
    }

    /// Adds `weight` times the product of a sparse row with itself.
    pub fn add_product(&mut self, row: &[(usize, f64)], weight: f64) {
        for (i, a) in row {
            for (j, b) in row {
                self.entries[i * self.size + j] += weight * a * b;
            }
        }
    }

    /// `a` times this times `b`, both sparse.
    pub fn between(&self, a: &[(usize, f64)], b: &[(usize, f64)]) -> f64 {
        a.iter()
            .flat_map(|(i, x)| b.iter().map(move |(j, y)| (i, j, x * y)))
            .map(|(i, j, xy)| xy * self.at(*i, *j))
            .sum()
    }

    /// The lower triangle whose product with itself turned over this is, if it is positive
    /// definite. Else the first unknown that nothing fixes: its pivot vanishes beside its
    /// entry.
    pub fn cholesky(&self) -> Result<Lower, usize> {
        /// A pivot this small beside its entry is rounding, not a measurement.
        const VANISHED: f64 = 1e-10;
        let mut lower = Self::zero(self.size);
        for row in 0..self.size {
            for column in 0..=row {
                let known: f64 = (0..column).map(|k| lower.at(row, k) * lower.at(column, k)).sum();
                let rest = self.at(row, column) - known;
                let entry = if row == column {
                    if rest.is_nan() || rest <= VANISHED * self.at(row, row).abs() {
                        return Err(row);
                    }
                    libm::sqrt(rest)
                } else {
                    rest / lower.at(column, column)
                };
                lower.entries[row * self.size + column] = entry;
            }
        }
        Ok(Lower(lower))
    }
}

/// A symmetric, positive definite matrix by its lower triangle.
#[derive(Debug, Clone, PartialEq)]
pub struct Lower(Square);

impl Lower {
    /// What the matrix takes to `right`.
    pub fn solve(&self, right: &[f64]) -> Vec<f64> {
        let Self(lower) = self;
        let size = lower.size;
        let mut x = vec![0.0; size];
        for row in 0..size {
            let known: f64 = (0..row).map(|k| lower.at(row, k) * x[k]).sum();
            x[row] = (right.get(row).copied().unwrap_or_default() - known) / lower.at(row, row);
        }
        for row in (0..size).rev() {
            let known: f64 = (row + 1..size).map(|k| lower.at(k, row) * x[k]).sum();
            x[row] = (x[row] - known) / lower.at(row, row);
        }
        x
    }

    /// The matrix undone.
    pub fn inverse(&self) -> Square {
        let size = self.0.size;
        let mut inverse = Square::zero(size);
        let mut unit = vec![0.0; size];
        for column in 0..size {
            unit[column] = 1.0;
            for (row, value) in self.solve(&unit).into_iter().enumerate() {
                inverse.entries[row * size + column] = value;
            }
            unit[column] = 0.0;
        }
        inverse
    }

    /// The natural logarithm of the matrix's determinant.
    pub fn log_determinant(&self) -> f64 {
        (0..self.0.size).map(|row| 2.0 * libm::log(self.0.at(row, row))).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_inverse_undoes_the_matrix() {
        let mut matrix = Square::zero(3);
        for row in [vec![(0, 2.0), (1, 1.0)], vec![(1, 3.0), (2, -1.0)], vec![(0, 1.0), (2, 2.0)]] {
            matrix.add_product(&row, 1.5);
        }
        let inverse = matrix.cholesky().unwrap().inverse();
        for column in 0..3 {
            let unit: Vec<f64> = (0..3).map(|row| f64::from(u8::from(row == column))).collect();
            let undone: Vec<f64> = (0..3).map(|row| inverse.at(row, column)).collect();
            let back = (0..3).map(|row| (0..3).map(|k| matrix.at(row, k) * undone[k]).sum::<f64>());
            assert!(back.zip(&unit).all(|(a, b)| (a - b).abs() < 1e-12), "column {column}");
        }
    }

    #[test]
    fn the_determinant_is_that_of_the_rows() {
        let mut matrix = Square::zero(2);
        matrix.add_product(&[(0, 3.0), (1, 1.0)], 1.0);
        matrix.add_product(&[(1, 2.0)], 1.0);
        // (3 * 2)^2, by hand.
        assert!((matrix.cholesky().unwrap().log_determinant() - libm::log(36.0)).abs() < 1e-12);
    }

    #[test]
    fn what_nothing_fixes_is_named() {
        let mut matrix = Square::zero(2);
        matrix.add_product(&[(0, 1.0), (1, 1.0)], 1.0);
        assert_eq!(matrix.cholesky(), Err(1));
        assert_eq!(Square::zero(2).cholesky(), Err(0));
    }
}
