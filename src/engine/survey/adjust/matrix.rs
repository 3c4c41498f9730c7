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

    /// The inverse of a symmetric, positive definite matrix, by Cholesky's method. Else
    /// the first unknown that nothing fixes: its pivot vanishes beside its entry.
    pub fn inverse(&self) -> Result<Self, usize> {
        let lower = self.cholesky()?;
        let size = self.size;
        let mut inverse = Self::zero(size);
        for column in 0..size {
            let mut x = vec![0.0; size];
            for row in 0..size {
                let known: f64 = (0..row).map(|k| lower.at(row, k) * x[k]).sum();
                x[row] = (f64::from(u8::from(row == column)) - known) / lower.at(row, row);
            }
            for row in (0..size).rev() {
                let known: f64 = (row + 1..size).map(|k| lower.at(k, row) * x[k]).sum();
                x[row] = (x[row] - known) / lower.at(row, row);
            }
            for (row, value) in x.into_iter().enumerate() {
                inverse.entries[row * size + column] = value;
            }
        }
        Ok(inverse)
    }

    pub fn times(&self, vector: &[f64]) -> Vec<f64> {
        self.entries
            .chunks_exact(self.size.max(1))
            .map(|row| row.iter().zip(vector).map(|(a, b)| a * b).sum())
            .collect()
    }

    fn cholesky(&self) -> Result<Self, usize> {
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
        Ok(lower)
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
        let inverse = matrix.inverse().unwrap();
        for column in 0..3 {
            let unit: Vec<f64> = (0..3).map(|row| f64::from(u8::from(row == column))).collect();
            let back = matrix.times(&inverse.times(&unit));
            assert!(back.iter().zip(&unit).all(|(a, b)| (a - b).abs() < 1e-12), "{back:?}");
        }
    }

    #[test]
    fn what_nothing_fixes_is_named() {
        let mut matrix = Square::zero(2);
        matrix.add_product(&[(0, 1.0), (1, 1.0)], 1.0);
        assert_eq!(matrix.inverse(), Err(1));
        assert_eq!(Square::zero(2).inverse(), Err(0));
    }
}
