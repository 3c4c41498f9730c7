//! What is likelier: that every reading is good and the house as square as its own room
//! says, or that one reading is wrong.
//!
//! How far corners are off a right angle is not known beforehand, so every squareness is
//! weighed by what is believed of houses and by how well the measurements go with it
//! (variance component estimation with a prior). For each, the outline is found with all
//! readings, and again without each of those that could be wrong. A wrong reading may be
//! off by anything from an inch to yards; a good one only by its instrument's error. A
//! house out of square explains small disagreements everywhere; a wrong reading explains
//! a large one at one place. A wrong reading is weighed beside each squareness, so that no estimate
//! of that takes it in unseen; how often it is missed all the same, the curve says.
//!
//! Source: Bayes' rule; the likelihood with the corners integrated out as in restricted
//! maximum likelihood (from memory). How often it is right: `tests/adjust/curve`.

use super::equations::Spot;
use super::network::{Network, Observation};
use super::rest::{Rest, Unfixed, start};
use super::squareness::Possible;
use crate::engine::units::Angle;
use crate::order;

/// How often one of a room's readings is wrong, before anything is known of them: in one room
/// of seventeen, whatever was measured there (a judgement, no source); each of them as likely
/// as another.
const WRONG: f64 = 0.06;

/// A room is accused when it is less likely than this that every reading is good. So clean
/// rooms are accused in fewer than 1 of 20, at any squareness up to a degree
/// (`tests/adjust/outline-curve.txt`).
const CLEAN_ENOUGH: f64 = 0.8;

/// So likely to be clean by the first look, a room is not looked at closely.
const SURELY_CLEAN: f64 = 0.98;

/// The first look errs by this, in natural logarithms, and by this part of what it finds.
const FAR_LESS_LIKELY: f64 = 15.0;
const ERRS_BY: f64 = 0.25;

/// So many readings, the likeliest to be wrong at the first look, are left out in turn.
const MOST_LEFT_OUT: usize = 12;

/// So many are, where no outline fits all.
const MOST_TRIED: usize = 40;

/// What a wrong reading is off by, one standard deviation, each as likely: inches.
const LENGTHS_OFF: [f64; 5] = [1.0, 3.0, 10.0, 30.0, 100.0];
/// The same of a measured angle: degrees.
const ANGLES_OFF: [f64; 4] = [1.0, 3.0, 10.0, 30.0];

/// What the measurements say.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed {
    /// How likely it is that every reading is good.
    pub clean: f64,
    /// How far corners are off a right angle, one standard deviation, if every reading is
    /// good.
    pub square: Angle,
    /// The readings that could be wrong, the likeliest first.
    pub doubted: Vec<Doubted>,
    /// Where the corners are, nearly.
    pub corners: Vec<Spot>,
}

/// A reading that could be wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Doubted {
    /// Its number among the observations.
    pub observation: usize,
    /// How likely it is the wrong one.
    pub chance: f64,
    /// How far corners are off a right angle if it is.
    pub square: Angle,
}

impl Weighed {
    /// Is a reading likely to be wrong?
    pub fn is_accused(&self) -> bool {
        self.clean < CLEAN_ENOUGH
    }
}

/// One squareness: how likely all is with every reading good, and the outline then.
struct Case {
    possible: Possible,
    network: Network,
    rest: Rest,
    log_likelihood: f64,
    /// How likely each reading is to be wrong, before anything is known.
    log_wrong: f64,
}

/// Weighs a network, its outline sought from these corners.
pub fn weigh(network: &Network, from: &[Spot], possible: &[Possible]) -> Result<Weighed, Unfixed> {
    let cases = cases(network, from, possible)?;
    let readings: Vec<_> = (0..network.observations.len())
        .filter(|n| network.observations.get(*n).is_some_and(Observation::is_reading))
        .collect();
    let clean: Vec<_> = cases.iter().map(|case| case.possible.log_weight + case.log_likelihood).collect();
    // At the first look the outline stays where it is with all readings.
    let mut looked: Vec<_> =
        readings.iter().map(|n| (*n, case_by_case(&cases, |case| at_a_glance(case, *n)))).collect();
    if share(&clean, &looked) <= SURELY_CLEAN {
        look_closely(&cases, &clean, &mut looked);
    }
    let all = log_add(log_sum(&clean), looked.iter().map(|(_, likely)| log_sum(likely)));
    let mut doubted: Vec<_> = looked
        .iter()
        .map(|(n, likely)| Doubted {
            observation: *n,
            chance: libm::exp(log_sum(likely) - all),
            square: middle(&cases, likely),
        })
        .filter(|doubted| doubted.chance > 0.0)
        .collect();
    order::sort_by(&mut doubted, |a, b| b.chance.total_cmp(&a.chance).then(a.observation.cmp(&b.observation)));
    Ok(Weighed {
        clean: share(&clean, &looked),
        square: middle(&cases, &clean),
        corners: likeliest(&cases, &clean),
        doubted,
    })
}

/// The reading without which everything fits best, where no outline fits all readings at all.
pub fn odd_one_out(network: &Network, possible: &[Possible]) -> Option<Doubted> {
    let readings = (0..network.observations.len())
        .filter(|n| network.observations.get(*n).is_some_and(Observation::is_reading))
        .take(MOST_TRIED);
    let fits = readings.flat_map(|n| {
        possible.iter().filter_map(move |possible| {
            let without = network.without(n).as_square_as(possible.sigma);
            let rest = Rest::of(&without, &start(&without)).ok()?;
            Some((possible.log_weight + rest.log_likelihood(), n, possible.sigma))
        })
    });
    let (_, observation, square) = fits.max_by(|a, b| a.0.total_cmp(&b.0))?;
    Some(Doubted { observation, chance: 1.0, square })
}

/// Every squareness at which an outline comes to rest.
fn cases(network: &Network, from: &[Spot], possible: &[Possible]) -> Result<Vec<Case>, Unfixed> {
    let mut cases: Vec<Case> = Vec::new();
    let readings = network.observations.iter().filter(|observation| observation.is_reading()).count();
    let log_wrong = libm::log(WRONG / readings.max(1) as f64);
    let mut trouble = Unfixed::Restless;
    for possible in possible {
        let network = network.as_square_as(possible.sigma);
        let from = cases.last().map_or(from, |case| &case.rest.corners);
        match Rest::of(&network, from) {
            Ok(rest) => {
                let log_likelihood = rest.log_likelihood();
                cases.push(Case { possible: *possible, network, rest, log_likelihood, log_wrong });
            }
            Err(unfixed) => trouble = unfixed,
        }
    }
    if cases.is_empty() { Err(trouble) } else { Ok(cases) }
}

fn case_by_case(cases: &[Case], of: impl Fn(&Case) -> Option<f64>) -> Vec<f64> {
    cases.iter().map(|case| weight(case, of(case)).unwrap_or(f64::NEG_INFINITY)).collect()
}

fn weight(case: &Case, log: Option<f64>) -> Option<f64> {
    Some(case.possible.log_weight + case.log_wrong + log?)
}

/// Leaves the likeliest out in turn: the outline is found anew without each. What the first look
/// finds far less likely than the best stays as it was seen then; the first look errs by
/// some part of what a large blunder makes everything less likely.
fn look_closely(cases: &[Case], clean: &[f64], looked: &mut Vec<(usize, Vec<f64>)>) {
    order::sort_by(looked, |a, b| log_sum(&b.1).total_cmp(&log_sum(&a.1)));
    let most = |likely: &[f64]| likely.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let best = looked.first().map_or(f64::NEG_INFINITY, |(_, likely)| most(likely));
    let far = best - FAR_LESS_LIKELY - ERRS_BY * (best - most(clean)).max(0.0);
    for (n, likely) in looked.iter_mut().take(MOST_LEFT_OUT) {
        for (case, log) in cases.iter().zip(likely.iter_mut()).filter(|(_, log)| **log >= far) {
            *log = weight(case, left_out(case, *n)).unwrap_or(*log);
        }
    }
}

/// How likely everything is if this reading is wrong, the outline left where it is.
fn at_a_glance(case: &Case, n: usize) -> Option<f64> {
    let (observation, equation, slopes) =
        (case.network.observations.get(n)?, case.rest.system.equations.get(n)?, case.rest.system.rows.get(n)?);
    let variance = equation.sigma * equation.sigma;
    let redundancy = 1.0 - case.rest.variance(slopes) / variance;
    // What nothing else checks, nothing can accuse.
    if redundancy <= super::solve::UNCHECKED {
        return None;
    }
    let (off, own) = (equation.misfit / redundancy, variance / redundancy);
    Some(case.log_likelihood + log_wrong(observation, off, own) - log_normal(off, own))
}

/// The same with the outline found without it.
fn left_out(case: &Case, n: usize) -> Option<f64> {
    let observation = case.network.observations.get(n)?;
    let rest = Rest::of(&case.network.without(n), &case.rest.corners).ok()?;
    let (off, own) = rest.predicts(observation)?;
    Some(rest.log_likelihood() + log_wrong(observation, off, own))
}

/// How likely a wrong reading is to be so far off, when a good one would be off by chance
/// with variance `own`.
fn log_wrong(observation: &Observation, off: f64, own: f64) -> f64 {
    let at = |by: f64| log_normal(off, own + by * by);
    let all: Vec<_> = match observation {
        Observation::Angle { .. } => ANGLES_OFF.iter().map(|degrees| at(degrees.to_radians())).collect(),
        _ => LENGTHS_OFF.iter().map(|inches| at(*inches)).collect(),
    };
    log_sum(&all) - libm::log(all.len() as f64)
}

fn log_normal(off: f64, variance: f64) -> f64 {
    -0.5 * (off * off / variance + libm::log(std::f64::consts::TAU * variance))
}

/// How likely it is that all readings are good.
fn share(clean: &[f64], looked: &[(usize, Vec<f64>)]) -> f64 {
    let clean = log_sum(clean);
    libm::exp(clean - log_add(clean, looked.iter().map(|(_, likely)| log_sum(likely))))
}

/// The outline of the likeliest squareness.
fn likeliest(cases: &[Case], likely: &[f64]) -> Vec<Spot> {
    let best = cases.iter().zip(likely).max_by(|a, b| a.1.total_cmp(b.1));
    best.map(|(case, _)| case.rest.corners.clone()).unwrap_or_default()
}

/// The squareness in the middle of what is likely: the geometric mean.
fn middle(cases: &[Case], likely: &[f64]) -> Angle {
    let all = log_sum(likely);
    let logs = cases.iter().zip(likely).map(|(case, log)| {
        let share = libm::exp(log - all);
        share * libm::log(case.possible.sigma.to_radians())
    });
    Angle::from_radians(libm::exp(logs.filter(|log| log.is_finite()).sum()))
}

/// The logarithm of the sum of what these are the logarithms of.
fn log_sum(logs: &[f64]) -> f64 {
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if most.is_finite() { most + libm::log(logs.iter().map(|log| libm::exp(log - most)).sum()) } else { most }
}

fn log_add(one: f64, more: impl Iterator<Item = f64>) -> f64 {
    log_sum(&std::iter::once(one).chain(more).collect::<Vec<_>>())
}
