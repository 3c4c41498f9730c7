//! How much less alike two readings are, the farther they lie apart.

/// A meter's error as a variance, in percent points squared: ±2 % is taken for two
/// standard deviations of it (`Source::MeterAccuracy`). No nugget may be smaller.
pub const METER_NOISE: f64 = 1.0;

/// How many classes of distance are looked at.
const CLASSES: usize = 10;

/// How many ranges are tried.
const RANGES: i32 = 24;

/// An exponential variogram: half the mean squared difference of two readings `h` apart
/// is `nugget + sill (1 - exp(-3 h / range))`. Distances in feet, the rest in percent
/// points squared.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Variogram {
    /// What two readings of one spot differ by.
    pub nugget: f64,
    /// What is added far apart.
    pub sill: f64,
    /// The distance from which nearly all of that is there.
    pub range: f64,
}

/// A reading for a sum: feet along the plan's axes, percent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Where, in feet.
    pub at: [f64; 2],
    /// What, in percent.
    pub value: f64,
}

/// Pairs about so far apart.
#[derive(Debug, Clone, Copy, Default)]
struct Class {
    pairs: f64,
    apart: f64,
    halved_square: f64,
}

impl Variogram {
    /// What two places so far apart have in common, beside the nugget.
    pub fn shared(&self, apart: f64) -> f64 {
        self.sill * libm::exp(-3.0 * apart / self.range)
    }

    /// The variogram that suits readings best: least squares over classes of distance,
    /// each weighing as many pairs as it has.
    pub fn fitted(samples: &[Sample]) -> Self {
        let farthest = pairs(samples).map(|(apart, _)| apart).fold(0.0, f64::max);
        let classes = classes(samples, farthest / 2.0);
        let ranges = (0..RANGES).map(|step| farthest.max(1.0) * libm::exp2(f64::from(step - RANGES + 4) / 4.0));
        let rated = ranges.map(|range| rated(range, &classes));
        let best = rated.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(variogram, _)| variogram);
        best.unwrap_or(Self { nugget: METER_NOISE, sill: 0.0, range: 1.0 })
    }
}

/// How far apart two places are, in feet.
pub fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    let [x, y] = [a[0] - b[0], a[1] - b[1]];
    libm::hypot(x, y)
}

/// How far apart each two readings are, and half the square of what they differ by.
fn pairs(samples: &[Sample]) -> impl Iterator<Item = (f64, f64)> {
    let all = samples.iter().enumerate().flat_map(|(n, a)| samples.iter().skip(n + 1).map(move |b| (a, b)));
    all.map(|(a, b)| (distance(a.at, b.at), (a.value - b.value) * (a.value - b.value) / 2.0))
}

fn classes(samples: &[Sample], farthest: f64) -> Vec<Class> {
    let mut classes = [Class::default(); CLASSES];
    for (apart, halved_square) in pairs(samples).filter(|(apart, _)| *apart <= farthest) {
        let at = (apart / farthest.max(1e-9) * CLASSES as f64) as usize;
        if let Some(class) = classes.get_mut(at.min(CLASSES - 1)) {
            class.pairs += 1.0;
            class.apart += apart;
            class.halved_square += halved_square;
        }
    }
    let full = classes.into_iter().filter(|class| class.pairs > 0.0);
    let mean = |class: Class| Class {
        apart: class.apart / class.pairs,
        halved_square: class.halved_square / class.pairs,
        ..class
    };
    full.map(mean).collect()
}

/// The best nugget and sill for a range, and how badly they fit.
fn rated(range: f64, classes: &[Class]) -> (Variogram, f64) {
    let rise = |class: &Class| 1.0 - libm::exp(-3.0 * class.apart / range);
    let sum = |of: &dyn Fn(&Class) -> f64| classes.iter().map(|class| class.pairs * of(class)).sum::<f64>();
    let (one, x, y) = (sum(&|_| 1.0), sum(&rise), sum(&|class| class.halved_square));
    let (xx, xy) = (sum(&|class| rise(class) * rise(class)), sum(&|class| rise(class) * class.halved_square));
    let determinant = one * xx - x * x;
    let free = if determinant > 1e-9 { (one * xy - x * y) / determinant } else { 0.0 };
    let nugget_with = |sill: f64| if one > 0.0 { (y - sill * x) / one } else { METER_NOISE };
    // Where the best would leave its bounds, the best on them.
    let (nugget, sill) = match nugget_with(free) {
        nugget if nugget >= METER_NOISE && free >= 0.0 => (nugget, free),
        _ => {
            let sill = if xx > 0.0 { ((xy - METER_NOISE * x) / xx).max(0.0) } else { 0.0 };
            let nugget = if sill > 0.0 { METER_NOISE } else { nugget_with(0.0).max(METER_NOISE) };
            (nugget, sill)
        }
    };
    let off = |class: &Class| nugget + sill * rise(class) - class.halved_square;
    (Variogram { nugget, sill, range }, sum(&|class| off(class) * off(class)))
}
