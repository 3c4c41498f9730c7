//! Readings that are no number: off the meter's scale, or not believed.

use super::bounds::{Bounds, Outside};
use super::correction::{LEAST_USABLE, MOST_USABLE, above, inputs};
use super::kept::{Kept, is_relative, unsaid};
use super::low::{MayReadLow, at_coldest, is_beyond_chart};
use super::{Corrected, Meter, Stands, Wood, WoodTemperature};
use crate::engine::air::shown;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::MoistureContent;

/// A number outside of what is believed is no number: it is beyond the bound, in doubt.
///
/// Source: [`Source::LikelyReadings`].
pub(super) fn doubted(
    reading: MoistureContent,
    bounds: &Bounds,
    outside: Outside,
    inputs: Why,
    kept: &[Kept],
) -> Known<Corrected> {
    let value = Corrected {
        shown: Some(reading),
        doubted: true,
        relative: is_relative(kept),
        unsaid: unsaid(kept),
        ..Corrected::as_shown(bounds.stands(outside))
    };
    let text = format!("{} is {}: doubted, so read it again", shown::moisture(reading), bounds.words(outside));
    let mut doubts = vec![Source::LikelyReadings.noted(&text)];
    doubts.extend(kept.iter().map(|reason| reason.words()));
    let mut why = inputs.with("shown", shown::moisture(reading));
    why.rule = "A number that is not believed counts as beyond the bound that it passes.".to_owned();
    Known { value, assumed: Vec::new(), doubts, why }
}

/// A reading off the scale says "at least" or "at most": the meter's own end, or for want of
/// that the end of the usable range, assumed aloud.
///
/// Source: [`Source::KilnManual`].
pub(super) fn off_the_scale(
    outside: Outside,
    meter: Option<&Meter>,
    wood: Wood,
    temperature: &WoodTemperature,
    kept: &[Kept],
) -> Known<Corrected> {
    let (end, usable, name, words) = match outside {
        Outside::Under => {
            (meter.and_then(|meter| meter.minimum.as_ref()), LEAST_USABLE, "minimum", "under the minimum")
        }
        Outside::Over => (meter.and_then(|meter| meter.maximum.as_ref()), MOST_USABLE, "maximum", "over the maximum"),
    };
    let bound = end.map_or(usable, |typed| typed.value);
    let said = shown::moisture(bound);
    let (stands, doubt) = match outside {
        Outside::Under => {
            (Stands::Under(bound), format!("Under the meter's scale: at most {said}, if its pins touch the wood"))
        }
        Outside::Over => {
            (Stands::Over(bound), format!("Past the meter's scale: at least {said}, and nobody knows how much more"))
        }
    };
    let relative = is_relative(kept);
    // Of a bound no step is made: what it leaves out may be above it.
    let is_at_most = outside == Outside::Under && !relative;
    let may_read_low = is_at_most.then(|| {
        let worst = at_coldest(bound, meter, temperature);
        MayReadLow::with_cold(MayReadLow::unmade(meter, wood.species), above(bound, worst))
    });
    let value = Corrected {
        relative,
        unsaid: unsaid(kept),
        may_read_low: may_read_low.flatten(),
        beyond_chart: is_at_most && is_beyond_chart(meter, temperature),
        ..Corrected::as_shown(stands)
    };
    let assumed = match end {
        Some(_) => Vec::new(),
        None => vec![format!("The meter's {name} is not known: taken as {said}")],
    };
    let mut doubts = vec![doubt];
    doubts.extend(kept.iter().map(|reason| reason.words()));
    doubts.extend(value.may_read_low.into_iter().flat_map(MayReadLow::words));
    let mut why = inputs(meter, wood).with("shown", words);
    why.rule = "A reading off the scale is at or beyond the meter's own end of it.".to_owned();
    Known { value, assumed, doubts, why }
}
