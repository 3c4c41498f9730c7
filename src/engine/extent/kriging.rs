//! Ordinary kriging: the best guess between readings that weighs them alone, and how far
//! it may be off.
//!
//! The mean is unknown and estimated along. Covariances are factored once (Cholesky);
//! whatever is read or drawn at the readings' places then costs one substitution forward
//! and one back.

use super::variogram::{Sample, Variogram, distance};

/// Places that were read, ready to be drawn through and asked about.
#[derive(Debug, Clone)]
pub struct Kriging {
    /// How readings go together.
    pub variogram: Variogram,
    samples: Vec<Sample>,
    factor: Factor,
    /// What is left of a one in each row when the factor is divided out.
    ones: Vec<f64>,
    /// The sum of their squares.
    weight: f64,
    read: Through,
}

/// The surface through values at the places that were read.
#[derive(Debug, Clone)]
pub struct Through {
    /// What it comes back to far from all of them.
    pub mean: f64,
    /// What each adds, by what it has in common with a place.
    pub pulls: Vec<f64>,
}

/// What is known of a place, percent and its square.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The best guess.
    pub value: f64,
    /// How far the wood may be off that, as a variance.
    pub variance: f64,
}

impl Kriging {
    /// Readings that go together so. None without readings.
    pub fn new(samples: Vec<Sample>, variogram: Variogram) -> Option<Self> {
        let factor = Factor::of(samples.len(), |a, b| {
            let (one, other) = (samples.get(a)?, samples.get(b)?);
            let own = if a == b { variogram.nugget + one.unsure } else { 0.0 };
            Some(variogram.shared(distance(one.at, other.at)) + own)
        })?;
        let ones = factor.forward(&vec![1.0; samples.len()]);
        let weight = dot(&ones, &ones);
        let values: Vec<_> = samples.iter().map(|sample| sample.value).collect();
        let read = Through { mean: 0.0, pulls: Vec::new() };
        let kriging = Self { variogram, samples, factor, ones, weight, read };
        let read = kriging.through(&values);
        Some(Self { read, ..kriging })
    }

    /// The readings.
    pub fn samples(&self) -> &[Sample] {
        &self.samples
    }

    /// What was read.
    pub fn read(&self) -> &Through {
        &self.read
    }

    /// The surface through these values in place of what was read.
    pub fn through(&self, values: &[f64]) -> Through {
        let divided = self.factor.forward(values);
        let mean = dot(&self.ones, &divided) / self.weight;
        let beyond: Vec<_> = divided.iter().zip(&self.ones).map(|(value, one)| value - mean * one).collect();
        Through { mean, pulls: self.factor.backward(&beyond) }
    }

    /// What is known of the wood at a place.
    pub fn ask(&self, at: [f64; 2]) -> Asked {
        let common: Vec<_> = self.samples.iter().map(|sample| self.variogram.shared(distance(sample.at, at))).collect();
        let shared = self.factor.forward(&common);
        let gap = 1.0 - dot(&self.ones, &shared);
        let value = self.read.mean + dot(&common, &self.read.pulls);
        let variance = self.variogram.sill - dot(&shared, &shared) + gap * gap / self.weight;
        Asked { value, variance: variance.max(0.0) }
    }

    /// How well what was read suits this variogram, as a logarithm: the likelihood with
    /// the mean left open.
    pub fn suits(&self) -> f64 {
        let spread: f64 = self.samples.iter().zip(&self.read.pulls).map(|(sample, pull)| sample.value * pull).sum();
        -0.5 * (self.factor.log_determinant() + libm::log(self.weight) + spread)
    }

    /// How well the readings would tell how high something of this shape stands: one over
    /// the variance of that. The shape is given at their places.
    pub fn tells(&self, shape: &[f64]) -> f64 {
        let divided = self.factor.forward(shape);
        let level = dot(&divided, &self.ones);
        dot(&divided, &divided) - level * level / self.weight
    }
}

/// The lower Cholesky factor of a table of covariances, row by row.
#[derive(Debug, Clone)]
pub(super) struct Factor {
    rows: Vec<Vec<f64>>,
}

impl Factor {
    /// Of the table of so many rows that `of` gives; none where it gives none, or where
    /// there is none. What is added on the diagonal keeps it from failing.
    pub fn of(count: usize, of: impl Fn(usize, usize) -> Option<f64>) -> Option<Self> {
        let mut rows: Vec<Vec<f64>> = Vec::with_capacity(count);
        for at in 0..count {
            let mut row: Vec<f64> = Vec::with_capacity(at + 1);
            for (other, before) in rows.iter().enumerate() {
                let left = of(at, other)? - dot(&row, before);
                row.push(left / before.last()?);
            }
            let left = of(at, at)? - dot(&row, &row);
            row.push(libm::sqrt(left.max(f64::MIN_POSITIVE)));
            rows.push(row);
        }
        (!rows.is_empty()).then_some(Self { rows })
    }

    /// The factor times these numbers.
    pub fn times<'a>(&'a self, right: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
        self.rows.iter().map(|row| dot(row, right))
    }

    fn log_determinant(&self) -> f64 {
        2.0 * self.rows.iter().filter_map(|row| row.last()).map(|own| libm::log(*own)).sum::<f64>()
    }

    /// Solves with the factor.
    fn forward(&self, right: &[f64]) -> Vec<f64> {
        let mut solved: Vec<f64> = Vec::with_capacity(right.len());
        for (row, right) in self.rows.iter().zip(right) {
            let left = right - dot(row, &solved);
            solved.push(left / row.last().copied().unwrap_or(1.0));
        }
        solved
    }

    /// Solves with its transpose.
    fn backward(&self, right: &[f64]) -> Vec<f64> {
        let mut solved = right.to_vec();
        for (at, row) in self.rows.iter().enumerate().rev() {
            let Some((diagonal, before)) = row.split_last() else { continue };
            let Some(value) = solved.get_mut(at) else { continue };
            *value /= diagonal;
            let value = *value;
            solved.iter_mut().zip(before).for_each(|(other, entry)| *other -= entry * value);
        }
        solved
    }
}

/// As far as both go. Four sums side by side, always the same four: a processor does them
/// at once, and every machine rounds alike.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let both = a.len().min(b.len());
    let (a, b) = (a.get(..both).unwrap_or_default(), b.get(..both).unwrap_or_default());
    let ((fours_a, rest_a), (fours_b, rest_b)) = (a.as_chunks::<4>(), b.as_chunks::<4>());
    let mut sums = [0.0; 4];
    for (a, b) in fours_a.iter().zip(fours_b) {
        sums = [sums[0] + a[0] * b[0], sums[1] + a[1] * b[1], sums[2] + a[2] * b[2], sums[3] + a[3] * b[3]];
    }
    let rest: f64 = rest_a.iter().zip(rest_b).map(|(a, b)| a * b).sum();
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}
