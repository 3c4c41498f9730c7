//! The paces that readings allow: some likely and others not, and the meter's own error
//! makes all of that wide. When a place is dry is then a range of days.

use super::fit::{Still, fit, since_free_water};
#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::MoistureContent;

/// What one reading is off beside the next of the same meter, as a standard deviation in
/// percent points: half of the meter's ±2 % ([`Source::MeterAccuracy`]).
const OFF: f64 = 1.0;

/// What a meter is off in all its readings alike (judgement).
const BIAS: f64 = 1.5;

/// How far off the air's own reading leaves the wood's end (judgement: about 2 points of
/// humidity), and the three ends that stand for that with their parts.
const END_OFF: f64 = 0.5;
const ENDS: [(f64, f64); 3] = [(-1.732, 1.0 / 6.0), (0.0, 2.0 / 3.0), (1.732, 1.0 / 6.0)];

/// How far above its end wet wood is when it is read first, percent points, and the
/// standard deviation of that (judgement).
const ABOVE: f64 = 8.0;
const ABOVE_SPREAD: f64 = 8.0;

/// In how many days all but a third of what is above the end goes, on the middle, and how
/// many times more or less that may well be ([`Source::DryingPace`]).
const DAYS: f64 = 20.0;
const TIMES: f64 = 2.2;

/// So many paces are tried, up to so many of those steps to either side.
const PACES: i32 = 24;
const STEPS: f64 = 2.5;

/// So many heights for each, up to so many standard deviations to either side.
const HEIGHTS: i32 = 6;
const DEVIATIONS: f64 = 3.0;

/// What part of all that may be is earlier than a range's first day, or later than its
/// last.
const FEW: f64 = 0.06;

/// Wood on its way to the moisture of its air, at every pace that is likely. Source:
/// [`Source::FirstOrderDrying`], [`Source::DryingPace`], [`Source::MeterAccuracy`].
#[derive(Debug, Clone, PartialEq)]
pub struct Paces {
    ways: Vec<Way>,
}

/// One way that it may go on.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Way {
    likely: f64,
    /// The part of what is left that goes in a day.
    a_day: f64,
    /// How far above its end it was at the last reading, percent points.
    above: f64,
    end: f64,
}

/// The paces at which readings may dry towards `end`, as [`fit`] takes them.
///
/// # Errors
/// [`Still`] when no pace can be had of them.
pub fn paces(end: MoistureContent, readings: &[(f64, MoistureContent)]) -> Result<Paces, Still> {
    fit(end, readings)?;
    let counted = since_free_water(readings);
    let (Some((first, _)), Some((last, _))) = (counted.first(), counted.last()) else { return Err(Still::TooFew) };
    let days = last - first;
    let points: Vec<_> = counted.iter().map(|(day, moisture)| (day - first, moisture.to_percent())).collect();
    let mut ways = Vec::new();
    for (off, part) in ENDS {
        let end = end.to_percent() + off * END_OFF;
        for step in -PACES..=PACES {
            let steps = f64::from(step) / f64::from(PACES) * STEPS;
            let a_day = libm::pow(TIMES, steps) / DAYS;
            let Height { likely, above, spread } = height(&points, end, a_day);
            for at in -HEIGHTS..=HEIGHTS {
                let deviations = f64::from(at) / f64::from(HEIGHTS) * DEVIATIONS;
                let above = above + deviations * spread;
                if above > 0.0 {
                    let likely = likely + libm::log(part) - 0.5 * (steps * steps + deviations * deviations);
                    ways.push(Way { likely, a_day, above: above * libm::exp(-a_day * days), end });
                }
            }
        }
    }
    let best = ways.iter().map(|way| way.likely).fold(f64::NEG_INFINITY, f64::max);
    ways.iter_mut().for_each(|way| way.likely = libm::exp(way.likely - best));
    Ok(Paces { ways })
}

/// How far above its end wood was at the first reading.
struct Height {
    /// How well the readings suit the pace, as a logarithm.
    likely: f64,
    above: f64,
    spread: f64,
}

/// The height at a pace, and how well the readings suit both, whatever the meter is off in
/// all of them alike: least squares of two unknowns, each held by what is plausible of it.
fn height(points: &[(f64, f64)], end: f64, a_day: f64) -> Height {
    let sure = 1.0 / (OFF * OFF);
    let (held, held_bias) = (1.0 / (ABOVE_SPREAD * ABOVE_SPREAD), 1.0 / (BIAS * BIAS));
    let (mut own, mut both, mut bias) = (held, 0.0, held_bias);
    let (mut pull, mut pull_bias) = (held * ABOVE, 0.0);
    for (day, percent) in points {
        let (part, over) = (libm::exp(-a_day * day), percent - end);
        own += sure * part * part;
        both += sure * part;
        bias += sure;
        pull += sure * part * over;
        pull_bias += sure * over;
    }
    let determinant = own * bias - both * both;
    let above = (bias * pull - both * pull_bias) / determinant;
    let off = (own * pull_bias - both * pull) / determinant;
    let missed: f64 = points
        .iter()
        .map(|(day, percent)| {
            let left = percent - end - above * libm::exp(-a_day * day) - off;
            sure * left * left
        })
        .sum();
    let strained = held * (above - ABOVE) * (above - ABOVE) + held_bias * off * off;
    let likely = -0.5 * (missed + strained + libm::log(determinant));
    Height { likely, above, spread: libm::sqrt(bias / determinant) }
}

impl Paces {
    /// Days from the last reading until the wood is at a moisture content: the first day
    /// that may be, and the last, if there is one. It may be there already; no day is
    /// before the last reading.
    pub fn days_to(&self, target: MoistureContent) -> (f64, Option<f64>) {
        let target = target.to_percent();
        let mut days: Vec<_> = self.ways.iter().map(|way| (way.days_to(target), way.likely)).collect();
        days.sort_by(|a, b| a.0.total_cmp(&b.0));
        let all: f64 = days.iter().map(|(_, likely)| likely).sum();
        let at = |part: f64| {
            let mut left = part * all;
            let day = days.iter().find(|(_, likely)| {
                left -= likely;
                left <= 0.0
            });
            day.or(days.last()).map_or(f64::INFINITY, |(day, _)| *day)
        };
        let last = at(1.0 - FEW);
        (at(FEW), last.is_finite().then_some(last))
    }

    /// The same wood at the same pace, from its last reading on in air that holds wood at
    /// `other` and not at the end that it was fitted to.
    #[must_use]
    pub fn in_other_air(&self, fitted: MoistureContent, other: MoistureContent) -> Self {
        let by = other.to_percent() - fitted.to_percent();
        let ways = self.ways.iter().map(|way| Way { above: way.above - by, end: way.end + by, ..*way });
        Self { ways: ways.collect() }
    }
}

impl Way {
    /// Days from the last reading; without end if it never gets there.
    fn days_to(&self, target: f64) -> f64 {
        let left = target - self.end;
        match () {
            () if self.above <= left => 0.0,
            () if left <= 0.0 => f64::INFINITY,
            () => libm::log(self.above / left) / self.a_day,
        }
    }
}
