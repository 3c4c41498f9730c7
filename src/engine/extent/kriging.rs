//! Ordinary kriging: the best guess between readings that weighs them alone, and how far
//! it may be off.
//!
//! The mean is unknown and estimated along. Covariances are factored once (Cholesky);
//! each place asked about then costs one forward substitution.

use super::variogram::{Sample, Variogram, distance};

/// Readings, ready to be asked about other places.
#[derive(Debug, Clone)]
pub struct Kriging {
    /// How readings go together.
    pub variogram: Variogram,
    samples: Vec<Sample>,
    /// The lower factor of the covariances, row by row.
    factor: Vec<Vec<f64>>,
    /// What is left of a one in each row when the factor is divided out.
    ones: Vec<f64>,
    /// The sum of their squares.
    weight: f64,
    mean: f64,
    /// What each reading adds, by what it has in common with a place.
    pulls: Vec<f64>,
}

/// A place asked about.
#[derive(Debug, Clone)]
pub struct Asked {
    at: [f64; 2],
    /// The best guess, percent.
    pub value: f64,
    /// How far the wood may be off that, as a variance.
    pub variance: f64,
    shared: Vec<f64>,
    /// How far readings fail to fix the mean here.
    gap: f64,
}

impl Kriging {
    /// Readings that go together so. None without readings.
    pub fn new(samples: Vec<Sample>, variogram: Variogram) -> Option<Self> {
        let factor = factor(&samples, &variogram)?;
        let ones = forward(&factor, &vec![1.0; samples.len()]);
        let weight: f64 = ones.iter().map(|one| one * one).sum();
        let values: Vec<_> = samples.iter().map(|sample| sample.value).collect();
        let mean = dot(&ones, &forward(&factor, &values)) / weight;
        let beyond: Vec<_> = values.iter().map(|value| value - mean).collect();
        let pulls = backward(&factor, &forward(&factor, &beyond));
        Some(Self { variogram, samples, factor, ones, weight, mean, pulls })
    }

    /// The readings.
    pub fn samples(&self) -> &[Sample] {
        &self.samples
    }

    /// What is known of the wood at a place.
    pub fn ask(&self, at: [f64; 2]) -> Asked {
        let common: Vec<_> = self.samples.iter().map(|sample| self.variogram.shared(distance(sample.at, at))).collect();
        let shared = forward(&self.factor, &common);
        let gap = 1.0 - dot(&self.ones, &shared);
        let value = self.mean + dot(&common, &self.pulls);
        let variance = self.variogram.sill - dot(&shared, &shared) + gap * gap / self.weight;
        Asked { at, value, variance: variance.max(0.0), shared, gap }
    }

    /// What two places still have in common once all readings are known.
    pub fn left_in_common(&self, a: &Asked, b: &Asked) -> f64 {
        self.variogram.shared(distance(a.at, b.at)) - dot(&a.shared, &b.shared) + a.gap * b.gap / self.weight
    }
}

/// The lower Cholesky factor of the readings' covariances. The nugget, which is never
/// nothing, keeps it from failing.
fn factor(samples: &[Sample], variogram: &Variogram) -> Option<Vec<Vec<f64>>> {
    let mut factor: Vec<Vec<f64>> = Vec::with_capacity(samples.len());
    for (at, sample) in samples.iter().enumerate() {
        let mut row: Vec<f64> = Vec::with_capacity(at + 1);
        for (other, before) in samples.iter().zip(&factor) {
            let common = variogram.shared(distance(sample.at, other.at)) - dot(&row, before);
            row.push(common / before.last()?);
        }
        let left = variogram.sill + variogram.nugget - dot(&row, &row);
        row.push(libm::sqrt(left.max(f64::MIN_POSITIVE)));
        factor.push(row);
    }
    (!factor.is_empty()).then_some(factor)
}

/// Solves with the lower factor.
fn forward(factor: &[Vec<f64>], right: &[f64]) -> Vec<f64> {
    let mut solved: Vec<f64> = Vec::with_capacity(right.len());
    for (row, right) in factor.iter().zip(right) {
        let left = right - dot(row, &solved);
        solved.push(left / row.last().copied().unwrap_or(1.0));
    }
    solved
}

/// Solves with its transpose.
fn backward(factor: &[Vec<f64>], right: &[f64]) -> Vec<f64> {
    let mut solved = right.to_vec();
    for (at, row) in factor.iter().enumerate().rev() {
        let Some((diagonal, before)) = row.split_last() else { continue };
        let Some(value) = solved.get_mut(at) else { continue };
        *value /= diagonal;
        let value = *value;
        solved.iter_mut().zip(before).for_each(|(other, entry)| *other -= entry * value);
    }
    solved
}

/// As far as both go.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
