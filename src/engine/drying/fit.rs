//! Wood approaches the moisture of its air as a hot thing cools: by a part of what is
//! left each day. Two readings of a place give that part, more give the best one.

#[cfg(doc)]
use crate::engine::sources::Source;
use crate::engine::units::MoistureContent;

/// Readings from here on hold free water, which leaves otherwise ([`Source::FreeWater`]).
pub(super) const FREE_WATER: MoistureContent = MoistureContent::percent(28);

/// Wood on its way to the moisture of its air. Source: [`Source::FirstOrderDrying`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drying {
    /// Where it ends.
    end: f64,
    /// How far above that it was at the first reading that counts, in percent points.
    above: f64,
    /// Days from the first reading to that one.
    began: f64,
    /// The part of what is left that goes in a day.
    a_day: f64,
}

/// Why readings are no drying.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Still {
    /// Since it was last at 28 % or more, it was not read on two days.
    TooFew,
    /// At last it was past the meter's scale.
    PastScale,
    /// What it read last is a number that nobody believes.
    Doubted,
    /// It reads under its limit, by a number that no limit can be held to.
    Loose,
    /// A reading at or below what the air holds wood at: the air, or the meter, is wrong.
    BelowItsEnd,
    /// It does not dry, or so slowly that no day can be named.
    NotDrying,
}

/// How the readings of a place dry towards `end`; each with its day, counted from any, the
/// oldest first.
///
/// # Errors
/// [`Still`] when no pace can be had of them.
pub fn fit(end: MoistureContent, readings: &[(f64, MoistureContent)]) -> Result<Drying, Still> {
    let start = readings.first().map_or(0.0, |(day, _)| *day);
    let counted = since_free_water(readings);
    let end = end.to_percent();
    let above = |moisture: MoistureContent| moisture.to_percent() - end;
    let Some((first_day, first)) = counted.first() else { return Err(Still::TooFew) };
    if counted.iter().any(|(_, moisture)| above(*moisture) <= 0.0) {
        return Err(Still::BelowItsEnd);
    }
    let points: Vec<_> = counted.iter().map(|(day, moisture)| (day - first_day, libm::log(above(*moisture)))).collect();
    let slope = slope(&points).ok_or(Still::TooFew)?;
    if slope >= 0.0 {
        return Err(Still::NotDrying);
    }
    Ok(Drying { end, above: above(*first), began: first_day - start, a_day: -slope })
}

/// The readings after the last one that holds free water: what was before is another story.
pub(super) fn since_free_water(readings: &[(f64, MoistureContent)]) -> &[(f64, MoistureContent)] {
    readings.rsplit(|(_, moisture)| *moisture >= FREE_WATER).next().unwrap_or_default()
}

/// The slope of the line that lies nearest to all points; none if they lie upright.
fn slope(points: &[(f64, f64)]) -> Option<f64> {
    let count = points.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
    let (x, y) = (mean(|point| point.0), mean(|point| point.1));
    let spread: f64 = points.iter().map(|point| (point.0 - x) * (point.0 - x)).sum();
    let along: f64 = points.iter().map(|point| (point.0 - x) * (point.1 - y)).sum();
    (points.len() > 1 && spread > 0.0).then(|| along / spread)
}

impl Drying {
    /// The part of what is left that goes in a day.
    pub fn a_day(&self) -> f64 {
        self.a_day
    }

    /// Days from the first reading to a moisture content; none if the air holds the wood
    /// above it. A day in the past is negative.
    pub fn days_to(&self, target: MoistureContent) -> Option<f64> {
        let left = target.to_percent() - self.end;
        (left > 0.0).then(|| self.began + libm::log(self.above / left) / self.a_day)
    }
}
