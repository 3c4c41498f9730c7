//! How the range was made before floors were drawn: one variogram fitted to classes of
//! distance, all of its nugget taken for the meter's, and cells counted whose chance of
//! being wet was over five in six, and over one in six. Kept to be compared with.

use super::fields::Shows;
use duckboard::engine::extent::kriging::Kriging;
use duckboard::engine::extent::variogram::{METER_NOISE, Sample, Variogram, distance};

const CLASSES: usize = 10;
const RANGES: i32 = 24;
const LIMIT: f64 = 19.0;
const CELLS: f64 = 600.0;

/// About, at least and at most, square feet.
pub fn range(read: &[Shows], size: [f64; 2]) -> [f64; 3] {
    let samples: Vec<_> = read.iter().map(|(at, value)| Sample { at: *at, value: *value, unsure: 0.0 }).collect();
    let variogram = fitted(&samples);
    let kriging = Kriging::new(samples, variogram).unwrap();
    let step = libm::round(libm::sqrt(size[0] * size[1] / CELLS) * 12.0) / 12.0;
    let [columns, rows] = size.map(|size| libm::floor(size / step - 0.5) as usize + 1);
    let mut areas = [0.0; 3];
    for (row, column) in (0..rows).flat_map(|row| (0..columns).map(move |column| (row, column))) {
        let asked = kriging.ask([(column as f64 + 0.5) * step, (row as f64 + 0.5) * step]);
        let deviation = libm::sqrt(asked.variance.max(1e-12));
        let chance = 0.5 * libm::erfc(-(asked.value - LIMIT) / (deviation * std::f64::consts::SQRT_2));
        for (area, least) in areas.iter_mut().zip([0.5, 5.0 / 6.0, 1.0 / 6.0]) {
            *area += if chance >= least { step * step } else { 0.0 };
        }
    }
    areas
}

/// Pairs about so far apart: how many, how far, half the square of what they differ by.
fn classes(samples: &[Sample], farthest: f64) -> Vec<[f64; 3]> {
    let mut classes = [[0.0; 3]; CLASSES];
    for (apart, halved_square) in pairs(samples).filter(|(apart, _)| *apart <= farthest) {
        let class = &mut classes[((apart / farthest * CLASSES as f64) as usize).min(CLASSES - 1)];
        *class = [class[0] + 1.0, class[1] + apart, class[2] + halved_square];
    }
    let full = classes.into_iter().filter(|class| class[0] > 0.0);
    full.map(|[pairs, apart, square]| [pairs, apart / pairs, square / pairs]).collect()
}

fn pairs(samples: &[Sample]) -> impl Iterator<Item = (f64, f64)> {
    let all = samples.iter().enumerate().flat_map(|(n, a)| samples.iter().skip(n + 1).map(move |b| (a, b)));
    all.map(|(a, b)| (distance(a.at, b.at), (a.value - b.value) * (a.value - b.value) / 2.0))
}

fn fitted(samples: &[Sample]) -> Variogram {
    let farthest = pairs(samples).map(|(apart, _)| apart).fold(0.0, f64::max);
    let classes = classes(samples, farthest / 2.0);
    let ranges = (0..RANGES).map(|step| farthest.max(1.0) * libm::exp2(f64::from(step - RANGES + 4) / 4.0));
    let rated = ranges.map(|range| rated(range, &classes));
    rated.min_by(|a, b| a.1.total_cmp(&b.1)).unwrap().0
}

fn rated(range: f64, classes: &[[f64; 3]]) -> (Variogram, f64) {
    let rise = |class: &[f64; 3]| 1.0 - libm::exp(-3.0 * class[1] / range);
    let sum = |of: &dyn Fn(&[f64; 3]) -> f64| classes.iter().map(|class| class[0] * of(class)).sum::<f64>();
    let (one, x, y) = (sum(&|_| 1.0), sum(&rise), sum(&|class| class[2]));
    let (xx, xy) = (sum(&|class| rise(class) * rise(class)), sum(&|class| rise(class) * class[2]));
    let determinant = one * xx - x * x;
    let free = if determinant > 1e-9 { (one * xy - x * y) / determinant } else { 0.0 };
    let nugget_with = |sill: f64| if one > 0.0 { (y - sill * x) / one } else { METER_NOISE };
    let (nugget, sill) = match nugget_with(free) {
        nugget if nugget >= METER_NOISE && free >= 0.0 => (nugget, free),
        _ => {
            let sill = if xx > 0.0 { ((xy - METER_NOISE * x) / xx).max(0.0) } else { 0.0 };
            (if sill > 0.0 { METER_NOISE } else { nugget_with(0.0).max(METER_NOISE) }, sill)
        }
    };
    let off = |class: &[f64; 3]| nugget + sill * rise(class) - class[2];
    (Variogram { nugget, sill, range }, sum(&|class| off(class) * off(class)))
}
