//! The two steps of a correction, in their order, on a reading under way.

use super::resistance::{TABLE_ENDS, from_scale, has_row};
use super::{Answer, Meter, Species, Step, WoodTemperature, chart};
use crate::engine::air::shown;
use crate::engine::figure::{Known, Why};
use crate::engine::sources::Source;
use crate::engine::units::{MoistureContent, Temperature};

/// A reading on its way through the steps.
pub(super) struct Working {
    /// The reading so far.
    pub value: MoistureContent,
    /// The same at the coldest that the wood may be.
    pub worst: MoistureContent,
    /// What became of the first step.
    pub temperature: Step,
    /// What became of the second.
    pub species: Step,
    /// What was assumed on the way.
    pub assumed: Vec<String>,
    /// What was left undone, and what limits what was done.
    pub doubts: Vec<String>,
    /// Inputs, sources, and the rule so far.
    pub why: Why,
}

impl Working {
    /// The reading as shown, nothing done to it yet.
    pub fn begin(shown: MoistureContent, worst: MoistureContent, inputs: Why) -> Self {
        let (assumed, doubts) = (Vec::new(), Vec::new());
        Self { value: shown, worst, temperature: Step::Left, species: Step::Left, assumed, doubts, why: inputs }
    }

    /// Was any step made here?
    pub fn is_changed(&self) -> bool {
        self.temperature == Step::Applied || self.species == Step::Applied
    }

    /// `value` with all that was noted on the way, and the rule rounded off.
    pub fn finish<T>(self, value: T) -> Known<T> {
        let rule = if self.is_changed() {
            format!("{} The wetter of that and of what was shown is the corrected reading.", self.why.rule)
        } else {
            "As shown: nothing was corrected here.".to_owned()
        };
        Known { value, assumed: self.assumed, doubts: self.doubts, why: Why { rule, ..self.why } }
    }

    fn apply(&mut self, value: MoistureContent, name: &str, rule: &str, sources: &[Source]) {
        self.value = value;
        self.why.inputs.push((name.to_owned(), shown::moisture(value)));
        self.why.sources.extend(sources);
        if !self.why.rule.is_empty() {
            self.why.rule.push(' ');
        }
        self.why.rule.push_str(rule);
    }
}

/// First step: to the temperature at which the meter reads true.
/// Source: [`Source::TemperatureChart`], [`Source::ChartReference`].
pub(super) fn temperature(work: &mut Working, meter: &Meter, wood: &WoodTemperature) {
    match meter.corrects_temperature {
        Answer::Yes => work.temperature = Step::ByMeter,
        Answer::Unknown => leave_temperature(work, "say whether the meter does it"),
        Answer::No => match wood {
            WoodTemperature::Measured(wood) => apply_chart(work, meter, *wood),
            WoodTemperature::Assumed { temperature, from } => {
                work.assumed.push(format!("Wood at {}, taken from {from}", shown::temperature(*temperature)));
                apply_chart(work, meter, *temperature);
            }
            WoodTemperature::NotRead => leave_temperature(work, "read the wood's"),
        },
    }
}

fn leave_temperature(work: &mut Working, because: &str) {
    let text = format!("Not corrected for temperature: {because}. Up to 1 % for each 20 °F, and cold wood reads low");
    work.doubts.push(Source::KilnManual.noted(&text));
}

fn apply_chart(work: &mut Working, meter: &Meter, wood: Temperature) {
    work.why.inputs.push(("wood temperature".to_owned(), shown::temperature(wood)));
    let reference = meter.reference.as_ref().map(|typed| typed.value);
    if reference.is_none() {
        work.assumed.push("The meter reads true at 70 °F: its own temperature is not known".to_owned());
    }
    let reference = reference.unwrap_or(chart::SET_FOR);
    if [wood, reference].iter().any(|at| !(chart::COLDEST..=chart::WARMEST).contains(at)) {
        let text = "Wood or meter outside 32 to 122 °F, beyond the chart: corrected as at its end, and in colder wood it \
                    reads lower still";
        work.doubts.push(Source::TemperatureChart.noted(text));
    }
    let mut sources = vec![Source::TemperatureChart];
    if reference != chart::SET_FOR {
        sources.push(Source::ChartReference);
    }
    let value = chart::at_reference(work.value, wood, reference);
    work.temperature = Step::Applied;
    work.apply(
        value,
        "at the meter's temperature",
        "For temperature, the chart's cell is added to the reading.",
        &sources,
    );
}

/// Second step: from the wood of the meter's scale to the wood that was measured.
/// Source: [`Source::ResistanceDouglasFir`], [`Source::ResistanceSpecies`], [`Source::SpeciesGroups`].
pub(super) fn species(work: &mut Working, meter: &Meter, wood: Option<Species>) {
    match meter.corrects_species {
        Answer::Yes => work.species = Step::ByMeter,
        Answer::Unknown => leave_species(work, "say whether the meter does it"),
        Answer::No => match (meter.scale.and_then(Species::recognised), wood.and_then(Species::recognised)) {
            (None, _) => leave_species(work, "say which wood the meter's scale is for"),
            (_, None) => leave_species(work, "say which wood it is"),
            (Some(scale), Some(wood)) => rescale(work, scale, wood),
        },
    }
}

fn rescale(work: &mut Working, scale: Species, wood: Species) {
    work.why.inputs.push(("meter's scale".to_owned(), scale.label().to_owned()));
    let Some(value) = from_scale(work.value, scale, wood) else {
        let without = [scale, wood].into_iter().find(|species| !has_row(*species));
        return match without {
            Some(species) => leave_species(work, &format!("there are no figures for {}", species.label())),
            None => leave_species(work, "the reading is beyond the table of one of the woods"),
        };
    };
    // Past the table's wet end the worst lies as far above as it did before, and no less wet
    // than that end.
    let above = work.worst.to_percent() - work.value.to_percent();
    let past = MoistureContent::from_percent_f64(value.to_percent() + above).max(TABLE_ENDS);
    work.worst = from_scale(work.worst, scale, wood).unwrap_or(past);
    work.species = Step::Applied;
    if scale == wood {
        return work.apply(value, "as this wood", "The meter's scale is for this wood.", &[]);
    }
    let rule =
        "For species, the scale's wood gives the resistance, and this wood's row the moisture at that resistance.";
    work.apply(value, "as this wood", rule, &sources_of(scale, wood));
}

fn sources_of(scale: Species, wood: Species) -> Vec<Source> {
    let mut sources = vec![Source::ResistanceSpecies];
    if [scale, wood].contains(&Species::DouglasFir) {
        sources.push(Source::ResistanceDouglasFir);
    }
    if scale.is_group() || wood.is_group() {
        sources.push(Source::SpeciesGroups);
    }
    sources
}

fn leave_species(work: &mut Working, because: &str) {
    let text = format!("Not corrected for species, which is 1 or 2 % as a rule: {because}");
    work.doubts.push(Source::KilnManual.noted(&text));
}
