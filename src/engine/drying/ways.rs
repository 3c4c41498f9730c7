//! The ways that a place may go on from its last reading: by what was read, and by all that the
//! wood may have been where readings may be low.

use super::fit::{FREE_WATER, Still};
use super::forecast::days_read;
use super::paces::{Paces, paces};
use crate::engine::entry::Time;
use crate::engine::moisture::Corrected;
use crate::engine::units::MoistureContent;

/// In so many steps a reading that may be low is raised to what it may be at worst: the last day
/// need not be that of the wettest.
const STEPS: u16 = 8;

/// Just short of free water, percent: a reading that is raised stays a part of the same story.
const SHORT_OF_FREE_WATER: f64 = 27.99;

/// How a place may go on.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ways {
    /// By what was read, and by the steepest fall that may be behind it.
    early: Vec<Paces>,
    /// By what was read, and by flatter falls that may be behind it; none if one of them is no
    /// drying.
    late: Option<Vec<Paces>>,
}

/// A number that was read, and how far the wood may be above it, percent points.
struct Number {
    day: f64,
    percent: MoistureContent,
    by_species: f64,
    by_cold: f64,
}

impl Ways {
    /// By a place's readings, the oldest first, in air that holds wood at `end`. Readings of one
    /// meter, of wood that was said to be the same, are low by the species alike; by how cold the
    /// wood was each is low by itself.
    ///
    /// # Errors
    /// [`Still`] when no pace can be had of what was read.
    pub(super) fn of(end: MoistureContent, readings: &[(Time, Corrected)], is_alike: bool) -> Result<Self, Still> {
        let numbers = numbers(readings)?;
        let Some((last, before)) = numbers.split_last() else { return Err(Still::PastScale) };
        let alike = |number: &Number| if is_alike { number.by_species.min(last.by_species) } else { 0.0 };
        let raised = |before_by: &dyn Fn(&Number) -> f64, last_by: f64| {
            let mut all: Vec<_> =
                before.iter().map(|number| (number.day, number.raised_short(before_by(number)))).collect();
            all.push((last.day, last.raised(last_by)));
            paces(end, &all)
        };
        let read = raised(&|_| 0.0, 0.0)?;
        if !numbers.iter().any(|number| number.low() > 0.0) {
            return Ok(Self { early: vec![read.clone()], late: Some(vec![read]) });
        }
        let steepest = raised(&|number| number.low() - alike(number), 0.0);
        let early = [Ok(read.clone()), steepest].into_iter().flatten().collect();
        let flatter = (1..=STEPS).map(|step| f64::from(step) / f64::from(STEPS));
        let flatter = flatter.map(|part| raised(&|number| part * alike(number), part * last.low()).ok());
        let late = std::iter::once(Some(read)).chain(flatter).collect();
        Ok(Self { early, late })
    }

    /// Days from the last reading to a moisture content, at the earliest.
    pub(super) fn days_at_least(&self, target: MoistureContent) -> f64 {
        self.early.iter().map(|paces| paces.days_to(target).0).fold(f64::INFINITY, f64::min)
    }

    /// The same at the latest, if anybody can say.
    pub(super) fn days_at_most(&self, target: MoistureContent) -> Option<f64> {
        let days: Option<Vec<_>> = self.late.as_ref()?.iter().map(|paces| paces.days_to(target).1).collect();
        days?.into_iter().reduce(f64::max)
    }

    /// The same wood from its last reading on in other air.
    pub(super) fn in_other_air(&self, fitted: MoistureContent, other: MoistureContent) -> Self {
        let moved = |all: &Vec<Paces>| all.iter().map(|paces| paces.in_other_air(fitted, other)).collect();
        Self { early: moved(&self.early), late: self.late.as_ref().map(moved) }
    }
}

impl Number {
    fn low(&self) -> f64 {
        self.by_species + self.by_cold
    }

    fn raised(&self, by: f64) -> MoistureContent {
        if by > 0.0 { MoistureContent::from_percent_f64(self.percent.to_percent() + by) } else { self.percent }
    }

    /// Raised, and no further than the free water that it was read to be without.
    fn raised_short(&self, by: f64) -> MoistureContent {
        let raised = self.raised(by);
        let is_crossed = self.percent < FREE_WATER && raised >= FREE_WATER;
        if is_crossed { MoistureContent::from_percent_f64(SHORT_OF_FREE_WATER) } else { raised }
    }
}

/// The numbers since the last reading that is none: off the meter's scale there is nothing to fit,
/// and what was before it is another story.
fn numbers(readings: &[(Time, Corrected)]) -> Result<Vec<Number>, Still> {
    if readings.iter().any(|(_, reading)| reading.doubted) {
        return Err(Still::Doubted);
    }
    let is_no_number = |reading: &Corrected| reading.corrected.number().is_none();
    let numbers = readings.rsplit(|(_, reading)| is_no_number(reading)).next().unwrap_or_default();
    let Some((first, _)) = numbers.first() else { return Err(Still::PastScale) };
    if days_read(numbers) < 2 {
        return Err(Still::TooFew);
    }
    let number = |(at, reading): &(Time, Corrected)| {
        let [points, cold] =
            reading.may_read_low.map_or([0.0; 2], |low| [low.points, low.cold].map(MoistureContent::to_percent));
        Number {
            day: days_between(*first, *at),
            percent: reading.corrected.bound(),
            by_species: (points - cold).max(0.0),
            by_cold: cold,
        }
    };
    Ok(numbers.iter().map(number).collect())
}

fn days_between(from: Time, to: Time) -> f64 {
    (to - from).num_minutes() as f64 / (24.0 * 60.0)
}
