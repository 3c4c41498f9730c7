//! From what a meter showed to what it says of the wood: the corrections that the
//! meter has not made itself, and which number decides.

use super::beyond::{doubted, off_the_scale};
use super::bounds::{Bounds, Outside};
use super::high;
use super::kept::{Kept, Unsaid, is_relative, unsaid};
use super::low::{MayReadLow, at_coldest, is_beyond_chart};
use super::steps::{self, Working};
use super::{Meter, Shown, Wood};
use crate::engine::air::shown;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, Temperature};

/// The driest reading of pins that means anything, 7 % ([`Source::KilnManual`]).
pub const LEAST_USABLE: MoistureContent = MoistureContent::percent(7);

/// The wettest reading of pins that is a number, 28 %: there the chart's curves end, and
/// resistance stops following moisture ([`Source::KilnManual`], [`Source::ElectricLimit`]).
/// Above it the wood is at or above fiber saturation, however far.
pub const MOST_USABLE: MoistureContent = MoistureContent::percent(28);

/// No reading is surer than this, in points of moisture content, corrected or not
/// ([`Source::MeterAccuracy`]).
pub const METER_ERROR: f64 = 2.0;

/// Where a reading stands: at a number, or off one of the ends of its meter's scale, which
/// is no number. In this order, wetter is greater.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stands {
    /// Under the meter's minimum: at most this.
    Under(MoistureContent),
    /// At this.
    At(MoistureContent),
    /// Over the meter's maximum: at least this, and nobody knows how much more.
    Over(MoistureContent),
}

impl Stands {
    /// The number that may be drawn and averaged; none off the scale.
    pub const fn number(self) -> Option<MoistureContent> {
        match self {
            Self::At(moisture) => Some(moisture),
            Self::Under(_) | Self::Over(_) => None,
        }
    }

    /// The number that it stands at, under or over: for comparing, never for showing.
    pub const fn bound(self) -> MoistureContent {
        match self {
            Self::Under(bound) | Self::At(bound) | Self::Over(bound) => bound,
        }
    }

    /// Is it over the meter's maximum?
    pub const fn is_over(self) -> bool {
        matches!(self, Self::Over(_))
    }

    /// Does it count as wetter than `limit`? What is over the maximum always does.
    pub fn is_above(self, limit: MoistureContent) -> bool {
        self.is_over() || self.bound() > limit
    }
}

/// A reading with the corrections that the meter has not made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Corrected {
    /// What the meter showed; none when it showed only that it is off its scale.
    pub shown: Option<MoistureContent>,
    /// The reading after the steps that were applied; none when none was, whether
    /// because the meter corrects it or because nothing can: the steps tell.
    pub by_tables: Option<MoistureContent>,
    /// The wetter of shown and by tables. Decisions go by this, and every page shows it
    /// under this name.
    pub corrected: Stands,
    /// Was a number typed that is not believed? It settles nothing: read it again.
    pub doubted: bool,
    /// How far the wood may be wetter than this, because its species, or how warm it was, is
    /// not known well enough.
    pub may_read_low: Option<MayReadLow>,
    /// What nobody said of it, without which it is no number of this wood.
    pub unsaid: Option<Unsaid>,
    /// Was the wood colder than the chart goes, or the meter set for a temperature off it? It
    /// may read lower still.
    pub beyond_chart: bool,
    /// Is it good only for comparing with readings of the same meter on the same
    /// material, and with no limit?
    pub relative: bool,
    /// How far the wood may be drier than this, because it is treated.
    pub may_read_high: Option<MoistureContent>,
    /// What became of the correction for temperature.
    pub temperature: Step,
    /// What became of the correction for species.
    pub species: Step,
}

impl Corrected {
    /// A reading as its meter showed it, nothing done to it.
    pub const fn as_shown(stands: Stands) -> Self {
        Self {
            shown: stands.number(),
            by_tables: None,
            corrected: stands,
            doubted: false,
            may_read_low: None,
            unsaid: None,
            beyond_chart: false,
            relative: false,
            may_read_high: None,
            temperature: Step::Left,
            species: Step::Left,
        }
    }

    /// Is the wood at or above fiber saturation: past [`MOST_USABLE`], and not merely
    /// relative?
    pub fn above_fibre_saturation(&self) -> bool {
        let past = match self.corrected {
            Stands::Under(_) => false,
            Stands::At(moisture) => moisture > MOST_USABLE,
            Stands::Over(least) => least >= MOST_USABLE,
        };
        past && !self.relative
    }

    /// Can a limit be held to it? Not to what is only relative or not believed, to a number of
    /// which nobody said the meter or the wood, nor to what lies beyond the chart. Too wet it
    /// may be all the same.
    pub const fn is_firm(&self) -> bool {
        !self.relative && !self.doubted && self.unsaid.is_none() && !self.beyond_chart
    }

    /// What would let a limit be held to it, of what can be said or read of it still: "say which
    /// meter it is from". Nothing where it is firm, and where only another reading helps.
    pub fn asks(&self) -> Option<&'static str> {
        match (self.unsaid, self.beyond_chart) {
            _ if self.relative || self.doubted => None,
            (Some(unsaid), _) => Some(unsaid.asks()),
            (None, true) => Some("read it again where the wood is warmer, with the meter set for it"),
            (None, false) => self.may_read_low.map(MayReadLow::asks),
        }
    }

    /// The wettest that the wood may be by what is known of its species and its warmth.
    pub fn at_worst(&self) -> MoistureContent {
        let low = self.may_read_low.map_or(0.0, |low| low.points.to_percent());
        MoistureContent::from_percent_f64(self.corrected.bound().to_percent() + low)
    }

    /// The driest that the wood may be by what its treatment may add.
    pub fn at_best(&self) -> MoistureContent {
        let high = self.may_read_high.map_or(0.0, MoistureContent::to_percent);
        MoistureContent::from_percent_f64((self.corrected.bound().to_percent() - high).max(0.0))
    }

    /// Is it wetter than `limit` even at its driest?
    pub fn is_surely_above(&self, limit: MoistureContent) -> bool {
        self.corrected.is_above(limit) && (self.may_read_high.is_none() || self.at_best() > limit)
    }

    /// Is it wetter than that one by more than a meter can be off?
    pub fn contradicts(&self, other: &Self) -> bool {
        let (one, other) = (self.corrected, other.corrected);
        let is_over = one.is_over() && !other.is_over();
        is_over || one.bound().to_percent() > other.bound().to_percent() + METER_ERROR
    }

    /// The same where the wood may have dried by so many points before that one was taken. From what
    /// is past a meter's scale it dried as from [`MOST_USABLE`]: how much more water there was no
    /// meter tells.
    pub fn contradicts_after(&self, other: &Self, dried: MoistureContent) -> bool {
        let one = self.corrected.bound().min(MOST_USABLE).to_percent();
        one > other.corrected.bound().to_percent() + METER_ERROR + dried.to_percent()
    }

    /// Is there a percentage in which temperature and species are both accounted for?
    pub fn is_fully_corrected(&self) -> bool {
        let done = |step| step != Step::Left;
        self.corrected.number().is_some() && self.is_firm() && done(self.temperature) && done(self.species)
    }
}

/// What became of one correction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// It was made here, even if it changed nothing.
    Applied,
    /// The meter makes it itself.
    ByMeter,
    /// It was not made; the figure's doubts say why.
    Left,
}

impl WoodTemperature {
    /// What there is to go by.
    pub const fn known(&self) -> Option<Temperature> {
        match self {
            Self::Measured(temperature) | Self::Assumed { temperature, .. } => Some(*temperature),
            Self::NotRead => None,
        }
    }
}

/// How warm the wood was, and how that is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WoodTemperature {
    /// A probe on the wood.
    Measured(Temperature),
    /// Taken from something else.
    Assumed {
        /// The temperature taken.
        temperature: Temperature,
        /// From what, for the sentence "taken from …".
        from: String,
    },
    /// Nobody knows.
    NotRead,
}

/// Corrects a reading for what the meter has not: temperature first, then species.
///
/// Only pins in lumber can be corrected, treated lumber as if it were not; all else stands as
/// shown, with the reason. Each step stands alone: one that the meter makes, or for which something is
/// not known, is left, and the figure says so. Readings outside 7-28 % are kept and
/// flagged. No result is claimed to be better than ±2 %.
///
/// Source: [`Source::TemperatureChart`], [`Source::ResistanceDouglasFir`],
/// [`Source::ResistanceSpecies`], [`Source::MeterAccuracy`].
pub fn correct(shown: &Shown, meter: Option<&Meter>, wood: Wood, temperature: &WoodTemperature) -> Known<Corrected> {
    let kept = Kept::reasons(meter, wood);
    let bounds = Bounds::of(meter);
    let mut known = match shown {
        Shown::OverMaximum => off_the_scale(Outside::Over, meter, wood, temperature, &kept),
        Shown::UnderMinimum => off_the_scale(Outside::Under, meter, wood, temperature, &kept),
        Shown::Percent(reading) => match bounds.outside(reading.value) {
            None => percentage(reading.value, meter, wood, temperature, &kept),
            Some(outside) => doubted(reading.value, &bounds, outside, inputs(meter, wood), &kept),
        },
    };
    known.value.may_read_high = high::may_read_high(wood.material);
    high::say(&mut known);
    known
}

fn percentage(
    reading: MoistureContent,
    meter: Option<&Meter>,
    wood: Wood,
    temperature: &WoodTemperature,
    kept: &[Kept],
) -> Known<Corrected> {
    let worst = at_coldest(reading, meter, temperature);
    let mut work = Working::begin(reading, worst, inputs(meter, wood).with("shown", shown::moisture(reading)));
    work.doubts.extend(kept.iter().map(|reason| reason.words()));
    if let (Some(meter), []) = (meter, kept) {
        steps::temperature(&mut work, meter, temperature);
        steps::species(&mut work, meter, wood.species);
    }
    let by_tables = work.is_changed().then_some(work.value);
    let relative = is_relative(kept);
    let scale = meter.and_then(|meter| meter.scale);
    let corrected = by_tables.map_or(reading, |by_tables| by_tables.max(reading));
    let low = MayReadLow::with_cold(MayReadLow::after(work.species, scale, wood.species), above(corrected, work.worst));
    let value = Corrected {
        shown: Some(reading),
        by_tables,
        relative,
        may_read_low: low.filter(|_| !relative),
        unsaid: unsaid(kept),
        beyond_chart: !relative && is_beyond_chart(meter, temperature),
        temperature: work.temperature,
        species: work.species,
        ..Corrected::as_shown(Stands::At(corrected))
    };
    work.doubts.extend(doubts(&value));
    work.finish(value)
}

/// How far `worst` lies above, in points.
pub(super) fn above(corrected: MoistureContent, worst: MoistureContent) -> MoistureContent {
    MoistureContent::from_percent_f64((worst.to_percent() - corrected.to_percent()).max(0.0))
}

/// What every percentage must bear in mind, whatever was done to it.
fn doubts(value: &Corrected) -> Vec<String> {
    let mut doubts = Vec::new();
    if value.relative {
        return doubts;
    }
    doubts.extend(value.may_read_low.into_iter().flat_map(MayReadLow::words));
    if value.shown.is_some_and(|shown| shown < LEAST_USABLE || shown > MOST_USABLE) {
        doubts.push(Source::KilnManual.noted("Shown outside 7 to 28 %, where pins can be trusted"));
    }
    if value.above_fibre_saturation() {
        // Two sources, two marks: the 28 % is only quoted, the reason was read.
        doubts.push(Source::KilnManual.noted("Above 28 %: at or above fiber saturation, not a number to count on"));
        doubts.push(Source::ElectricLimit.noted("Electric readings follow moisture only below about 30 %"));
    }
    if value.by_tables.is_some() {
        let text = "Lumber kiln-dried hot, at 180 °F and over, comes out too wet: 0.6 to 4.5 % in two northern woods";
        doubts.push(Source::HighTemperatureDrying.noted(text));
    }
    doubts.push(Source::MeterAccuracy.noted("No better than ±2 %, corrected or not"));
    doubts
}

pub(super) fn inputs(meter: Option<&Meter>, wood: Wood) -> Why {
    let species = wood.species.map_or("not said", |species| species.label());
    let meter = meter.map_or("not said".to_owned(), |meter| format!("{}, {}", meter.label, meter.sensing.label()));
    Why::default().with("meter", meter).with("taken on", wood.material.label()).with("species", species)
}
