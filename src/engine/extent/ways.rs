//! Ways that the wood may be wet: how it wanders about its mean, and what wet bodies lie
//! in it, each way as likely as the readings make it.
//!
//! A few readings cannot fix one variogram, and a map from one says less than half of what
//! may be. So every plausible one is kept and counts by how well the readings suit it.

use super::bodies::{Body, HEIGHT, HEIGHT_SPREAD, NONE};
use super::kriging::{Kriging, Through, dot};
use super::random::Random;
use super::variogram::{Sample, Variogram};

/// Ways are weighed by no more readings than this, those that lie farthest from one
/// another; all readings count in what is drawn.
const MOST_WEIGHED: usize = 40;

/// All that was thought of, and how likely each is.
pub(super) struct Ways {
    bodies: Vec<(Body, f64)>,
    /// Each body at the places that are weighed.
    shapes: Vec<Vec<f64>>,
    variograms: Vec<Weighed>,
    /// Each with its share of 1, variogram by variogram.
    first: Vec<First>,
}

/// A variogram with the readings that are weighed.
struct Weighed {
    kriging: Kriging,
    /// How well the readings would tell each body's height.
    tells: Vec<f64>,
}

/// A variogram with one body or none.
struct First {
    variogram: usize,
    body: Option<Stands>,
    share: f64,
}

/// A body, and what the readings say of how high it stands.
#[derive(Debug, Clone, Copy)]
struct Stands {
    body: usize,
    height: f64,
    spread: f64,
}

/// One way, taken from all by chance.
pub(super) struct Way {
    /// How the wood goes together.
    pub variogram: Variogram,
    /// What stands in it, and how high.
    pub bodies: Vec<(Body, f64)>,
}

impl Ways {
    /// What is plausible, weighed by the readings. None without readings.
    pub fn weighed(samples: &[Sample], bodies: Vec<(Body, f64)>) -> Option<Self> {
        let samples = spread_out(samples);
        let shapes: Vec<Vec<f64>> =
            bodies.iter().map(|(body, _)| samples.iter().map(|sample| body.at(sample.at)).collect()).collect();
        let (mut variograms, mut first) = (Vec::new(), Vec::new());
        for (at, (variogram, plausible)) in Variogram::plausible().enumerate() {
            let kriging = Kriging::new(samples.clone(), variogram)?;
            let tells = shapes.iter().map(|shape| kriging.tells(shape)).collect();
            let weighed = Weighed { kriging, tells };
            let suits = weighed.kriging.suits() + libm::log(plausible);
            first.push(First { variogram: at, body: None, share: suits + libm::log(NONE) });
            for (body, odds) in weighed.stands(&shapes, &bodies, weighed.kriging.read()) {
                first.push(First { variogram: at, body: Some(body), share: suits + odds });
            }
            variograms.push(weighed);
        }
        let best = first.iter().map(|one| one.share).fold(f64::NEG_INFINITY, f64::max);
        first.iter_mut().for_each(|one| one.share = libm::exp(one.share - best));
        let sum: f64 = first.iter().map(|one| one.share).sum();
        first.iter_mut().for_each(|one| one.share /= sum);
        Some(Self { bodies, shapes, variograms, first })
    }

    /// How the wood goes together most likely, whatever stands in it.
    pub fn likeliest(&self) -> Option<Variogram> {
        let mut shares = vec![0.0; self.variograms.len()];
        for one in &self.first {
            if let Some(share) = shares.get_mut(one.variogram) {
                *share += one.share;
            }
        }
        let best = shares.iter().zip(&self.variograms).max_by(|a, b| a.0.total_cmp(b.0));
        best.map(|(_, weighed)| weighed.kriging.variogram)
    }

    /// So many ways, each as often as it is likely.
    pub fn taken(&self, count: usize, random: &mut Random) -> Vec<Way> {
        let mut ways = Vec::with_capacity(count);
        let mut passed = 0.0;
        for first in &self.first {
            passed += first.share * count as f64;
            // Evenly through all shares: the half keeps clear of both ends.
            while (ways.len() as f64) + 0.5 < passed && ways.len() < count {
                ways.extend(self.way(first, random));
            }
        }
        ways
    }

    fn way(&self, first: &First, random: &mut Random) -> Option<Way> {
        let weighed = self.variograms.get(first.variogram)?;
        let mut bodies = Vec::new();
        let mut left: Vec<_> = weighed.kriging.samples().iter().map(|sample| sample.value).collect();
        if let Some(stands) = first.body {
            let (body, height, shape) = self.raised(stands, random)?;
            left.iter_mut().zip(shape).for_each(|(value, part)| *value -= height * part);
            bodies.push((body, height));
        }
        // With that taken off, perhaps one more.
        let second = weighed.stands(&self.shapes, &self.bodies, &weighed.kriging.through(&left));
        if let Some(stands) = chosen(second, random) {
            let (body, height, _) = self.raised(stands, random)?;
            bodies.push((body, height));
        }
        Some(Way { variogram: weighed.kriging.variogram, bodies })
    }

    /// A body as high as it may be; never lower than the wood about it.
    fn raised(&self, stands: Stands, random: &mut Random) -> Option<(Body, f64, &[f64])> {
        let (body, _) = self.bodies.get(stands.body)?;
        let height = (stands.height + stands.spread * random.normal()).max(0.0);
        Some((*body, height, self.shapes.get(stands.body)?))
    }
}

impl Weighed {
    /// What readings say of each body, with the logarithm of how likely it is.
    fn stands(&self, shapes: &[Vec<f64>], bodies: &[(Body, f64)], read: &Through) -> Vec<(Stands, f64)> {
        let each = shapes.iter().zip(&self.tells).zip(bodies).enumerate();
        let stands = each.map(|(body, ((shape, tells), (_, likely)))| {
            let square = HEIGHT_SPREAD * HEIGHT_SPREAD;
            let sure = tells + 1.0 / square;
            let pulled = dot(shape, &read.pulls);
            let beyond = (pulled - HEIGHT * tells) / sure;
            let odds = HEIGHT * pulled - 0.5 * HEIGHT * HEIGHT * tells + 0.5 * beyond * beyond * sure
                - 0.5 * libm::log(sure * square)
                + libm::log(*likely);
            (Stands { body, height: HEIGHT + beyond, spread: 1.0 / libm::sqrt(sure) }, odds)
        });
        stands.collect()
    }
}

/// One of them by chance, or none.
fn chosen(odds: Vec<(Stands, f64)>, random: &mut Random) -> Option<Stands> {
    let best = odds.iter().map(|(_, odds)| *odds).fold(libm::log(NONE), f64::max);
    let none = libm::exp(libm::log(NONE) - best);
    let parts: Vec<_> = odds.into_iter().map(|(stands, odds)| (stands, libm::exp(odds - best))).collect();
    let all: f64 = none + parts.iter().map(|(_, part)| part).sum::<f64>();
    let mut left = random.part() * all - none;
    if left < 0.0 {
        return None;
    }
    let taken = parts.iter().find(|(_, part)| {
        left -= part;
        left < 0.0
    });
    taken.or(parts.last()).map(|(stands, _)| *stands)
}

/// Those that lie farthest from one another: each next one is the farthest from all that
/// were taken.
fn spread_out(samples: &[Sample]) -> Vec<Sample> {
    if samples.len() <= MOST_WEIGHED {
        return samples.to_vec();
    }
    let mut left: Vec<_> = samples.iter().map(|sample| (*sample, f64::INFINITY)).collect();
    let mut taken: Vec<Sample> = Vec::with_capacity(MOST_WEIGHED);
    while taken.len() < MOST_WEIGHED {
        let farthest = left.iter().enumerate().max_by(|a, b| a.1.1.total_cmp(&b.1.1)).map(|(at, _)| at);
        let Some(at) = farthest else { break };
        let (next, _) = left.swap_remove(at);
        left.iter_mut().for_each(|(sample, away)| *away = away.min(super::variogram::distance(sample.at, next.at)));
        taken.push(next);
    }
    taken
}
