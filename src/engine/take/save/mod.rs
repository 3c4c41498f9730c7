//! From a draft to entries: what the save key does.

mod by_awl;
mod by_tape;

use super::draft::{AirTask, Draft, Instrument, LookTask, TapeTask};
use super::settings::Units;
use super::travel::{next_spot, place_at, standing, step};
use super::whereabouts::Whereabouts;
use super::wood::AtSpot;
use crate::engine::air::{AirReading, SurfaceReading};
use crate::engine::condition::{Condition, Finding};
use crate::engine::entry::{EntryId, Label};
use crate::engine::framing::Depth;
use crate::engine::job::{Entry, Job, Observation, Pen, Seen};
use crate::engine::moisture::{Bounds, Outside, Reading, Shown, said};
use crate::engine::survey::Level;
use crate::engine::units::decimal::{self, Decimals};
use crate::engine::units::tape::{self, Sign};
use crate::engine::units::{Length, MoistureContent, Temperature, Typed};
use crate::engine::warmth::WOOD;
use std::fmt::Display;

/// Nobody reads air colder or warmer than that in a house, under it or beside it (judgement).
const COLDEST_AIR: Temperature = Temperature::fahrenheit(-40);
const WARMEST_AIR: Temperature = Temperature::fahrenheit(130);

/// What a save came to: entries to keep, the draft to go on with, and what to say back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Saved {
    /// New entries; none when the answer is only held until its question is whole.
    pub entries: Vec<Entry>,
    /// The draft to go on with.
    pub next: Draft,
    /// What was taken.
    pub read_back: ReadBack,
}

/// The value just taken, said back.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ReadBack {
    /// Whose value it is.
    pub of: String,
    /// The value, large.
    pub value: String,
    /// The value as it is spoken.
    pub spoken: String,
}

/// Why a value was not taken: the field, the value, what would do. It stays typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// The sentence.
    pub message: String,
    /// Where the number lies that is not believed: it is taken with [`save_anyway`].
    pub outside: Option<Outside>,
}

/// What to make of a number that is not believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anyway {
    /// It stands, in doubt.
    Kept,
    /// The meter showed only that it was off its scale.
    OffScale,
}

/// The meter in the hand: the job's entry for it, and what it can show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct InHand {
    /// The entry that describes it.
    pub entry: EntryId,
    /// Between which numbers its readings are believed.
    pub bounds: Bounds,
}

impl InHand {
    /// A meter that the job knows.
    pub fn of(job: &Job, entry: EntryId) -> Self {
        Self { entry, bounds: Bounds::of(job.now.meters().get(&entry).map(|meter| meter.value)) }
    }
}

impl ReadBack {
    /// A value that is spoken as it is shown.
    pub fn words(of: impl Into<String>, value: impl Into<String>) -> Self {
        let value = value.into();
        Self { of: of.into(), spoken: value.clone(), value }
    }
}

impl Refused {
    fn new(field: &str, problem: impl Display) -> Self {
        Self { message: format!("{field}: {problem}"), outside: None }
    }
}

/// What a save works with.
struct Desk<'a> {
    draft: &'a Draft,
    job: &'a Job,
    pen: &'a mut Pen,
    units: Units,
    meter: Option<InHand>,
}

/// Takes the typed value.
///
/// # Errors
/// [`Refused`] when the text does not say a value that would do.
pub fn save(draft: &Draft, job: &Job, pen: &mut Pen, units: Units, meter: Option<InHand>) -> Result<Saved, Refused> {
    let desk = Desk { draft, job, pen, units, meter };
    if let Some(what) = draft.asked_where() {
        return desk.whereabouts(what);
    }
    match draft.instrument {
        Instrument::Tape => match draft.tape {
            TapeTask::Side => desk.side(),
            TapeTask::Tie => desk.tie(),
            TapeTask::Offset => desk.offset(),
            TapeTask::Corner => desk.corner(),
            TapeTask::Opening => desk.opening(),
            TapeTask::CutBack => desk.cut_back(),
            TapeTask::Joists => desk.joists(),
            TapeTask::JoistCenter => desk.joist_center(),
            TapeTask::Layer => desk.layer(),
            TapeTask::OnHand => desk.on_hand(),
            TapeTask::CrawlHeight => desk.crawl_height(),
            TapeTask::Other => desk.other_length(),
        },
        Instrument::Meter => desk.percent(None),
        Instrument::Air => desk.air(),
        Instrument::Level => desk.level(),
        Instrument::Look => match draft.look {
            LookTask::Spot(kind) => desk.spot(kind, None),
            LookTask::Findings => Err(Refused::new(draft.instrument.label(), "nothing is typed here")),
        },
        Instrument::Photo => Err(Refused::new(draft.instrument.label(), "nothing is typed here")),
    }
}

/// Takes a number that is not believed, as somebody answered when asked.
///
/// # Errors
/// [`Refused`] when the text does not say a moisture content.
pub fn save_anyway(
    draft: &Draft,
    job: &Job,
    pen: &mut Pen,
    units: Units,
    meter: Option<InHand>,
    anyway: Anyway,
) -> Result<Saved, Refused> {
    Desk { draft, job, pen, units, meter }.percent(Some(anyway))
}

/// Takes "over the meter's maximum" or "under its minimum" as the value.
///
/// # Errors
/// [`Refused`] where nothing can be read at the spot.
pub fn save_off_scale(
    draft: &Draft,
    job: &Job,
    pen: &mut Pen,
    units: Units,
    meter: Option<InHand>,
    outside: Outside,
) -> Result<Saved, Refused> {
    Desk { draft, job, pen, units, meter }.off_scale(outside, None)
}

/// Takes "nobody can get there" as the depth of a soft spot or a cut.
///
/// # Errors
/// [`Refused`] when something else is asked for now.
pub fn save_cannot_reach(draft: &Draft, job: &Job, pen: &mut Pen, units: Units) -> Result<Saved, Refused> {
    let desk = Desk { draft, job, pen, units, meter: None };
    match draft.look {
        LookTask::Spot(kind) => desk.spot(kind, Some(Depth::CannotReach)),
        LookTask::Findings => Err(Refused::new(draft.instrument.label(), "no depth is asked for now")),
    }
}

/// Takes a finding at the spot. The place stays: one place can show several things.
///
/// # Errors
/// [`Refused`] where nothing can be seen at the spot.
pub fn look(draft: &Draft, job: &Job, pen: &mut Pen, units: Units, finding: Finding) -> Result<Saved, Refused> {
    standing(job, &draft.spot, units).map_err(|message| Refused { message, outside: None })?;
    let (place, new_place) = place_at(job, pen, &draft.spot);
    let condition = pen.record(Condition { place: Some(place), finding, note: None });
    Ok(Saved {
        entries: new_place.into_iter().chain([condition]).collect(),
        next: draft.put_down(),
        read_back: ReadBack::words(draft.spot.name(), finding.label()),
    })
}

impl Desk<'_> {
    fn length(&self, field: &str, sign: Sign) -> Result<Typed<Length>, Refused> {
        self.length_of(&self.draft.text, field, sign)
    }

    fn length_of(&self, text: &str, field: &str, sign: Sign) -> Result<Typed<Length>, Refused> {
        tape::parse(text, self.units.bare_length(), sign).map_err(|problem| Refused::new(field, problem))
    }

    /// A length that is the size of something.
    fn size(&self, field: &str) -> Result<Typed<Length>, Refused> {
        self.size_of(&self.draft.text, field)
    }

    fn size_of(&self, text: &str, field: &str) -> Result<Typed<Length>, Refused> {
        let length = self.length_of(text, field, Sign::Refused)?;
        if length.value.is_positive() {
            Ok(length)
        } else {
            Err(Refused::new(field, format!("\"{}\" is no length: more than 0 is accepted", text.trim())))
        }
    }

    /// Refuses a value for what stands against it, if anything does.
    fn holds(&self, field: &str, text: &str, why: Option<String>) -> Result<(), Refused> {
        why.map_or(Ok(()), |why| Err(Refused::new(field, format!("\"{}\": {why}", text.trim()))))
    }

    fn temperature(&self, text: &str, field: &str) -> Result<Typed<Temperature>, Refused> {
        decimal::parse_temperature(text, self.units.scale).map_err(|problem| Refused::new(field, problem))
    }

    fn read_length(&self, of: impl Into<String>, length: Length) -> ReadBack {
        ReadBack { of: of.into(), value: self.units.read(length), spoken: self.units.spoken(length) }
    }

    fn read_temperature(&self, of: impl Into<String>, temperature: Temperature) -> ReadBack {
        ReadBack::words(of, self.units.temperature(temperature))
    }

    /// The answer is kept in the draft until its question is whole.
    fn hold(&self, typed: String, read_back: ReadBack) -> Saved {
        Saved { entries: Vec::new(), next: self.draft.holding(typed), read_back }
    }

    /// Moves the spot, and goes back to what was asked before.
    fn whereabouts(self, what: Whereabouts) -> Result<Saved, Refused> {
        let Draft { spot, text, .. } = self.draft;
        let spot = what.write(spot, text, self.units).map_err(|problem| Refused::new(what.label(), problem))?;
        // Of a point both lengths are needed to say whether it lies in the room.
        if what.next().is_none() {
            standing(self.job, &spot, self.units)
                .map_err(|why| Refused::new(what.label(), format!("{}: {why}", text.trim())))?;
        }
        let read_back = match what.read(&spot) {
            Some(length) => self.read_length(what.label(), length.value),
            None => ReadBack::words(what.label(), "not measured"),
        };
        Ok(Saved { entries: Vec::new(), next: self.draft.located(spot, what.next()), read_back })
    }

    /// A number is taken if it is believed; else it is asked about first.
    fn percent(self, anyway: Option<Anyway>) -> Result<Saved, Refused> {
        let field = format!("Moisture at {}", self.draft.spot.name());
        let shown =
            decimal::parse_moisture_content(&self.draft.text).map_err(|problem| Refused::new(&field, problem))?;
        let bounds = self.meter.map_or_else(|| Bounds::of(None), |meter| meter.bounds);
        let value = said::tenths(shown.value).replace(".0 %", " %");
        match (bounds.outside(shown.value), anyway) {
            (None, _) => self.reading(Shown::Percent(shown), &value, |reading| reading),
            (Some(outside), Some(Anyway::OffScale)) => self.off_scale(outside, Some(shown)),
            (Some(_), Some(Anyway::Kept)) => {
                let value = format!("{value}, doubted");
                self.reading(Shown::Percent(shown), &value, |reading| Reading { doubted: true, ..reading })
            }
            (Some(outside), None) => {
                let message = format!("{field}: {value} is {}. Is it right?", bounds.words(outside));
                Err(Refused { message, outside: Some(outside) })
            }
        }
    }

    fn off_scale(self, outside: Outside, typed_first: Option<Typed<MoistureContent>>) -> Result<Saved, Refused> {
        let (shown, words) = match outside {
            Outside::Under => (Shown::UnderMinimum, "under minimum"),
            Outside::Over => (Shown::OverMaximum, "over maximum"),
        };
        self.reading(shown, words, |reading| Reading { typed_first, ..reading })
    }

    fn reading(self, shown: Shown, value: &str, with: impl FnOnce(Reading) -> Reading) -> Result<Saved, Refused> {
        self.standing()?;
        let AtSpot { wood, reference } = AtSpot::of(self.draft, self.job);
        let (place, new_place) = place_at(self.job, self.pen, &self.draft.spot);
        let visit = self.pen.visit();
        let wood_temperature = self.wood_temperature();
        let entry = self.pen.record(with(Reading {
            meter: self.meter.map(|meter| meter.entry),
            wood_temperature,
            reference,
            ..Reading::new(place, shown, wood)
        }));
        let back_to = self.draft.back_to.clone().filter(|_| reference);
        let spot = back_to.unwrap_or_else(|| next_spot(self.job, visit, self.draft, place));
        let wood_at = Some(self.draft.spot.clone());
        let spoken = value.replace('%', "percent");
        Ok(Saved {
            entries: new_place.into_iter().chain([entry]).collect(),
            next: Draft { spot, wood, reference, wood_at, back_to: None, ..self.draft.put_down() },
            read_back: ReadBack { of: self.draft.spot.name(), value: value.to_owned(), spoken },
        })
    }

    /// Can anything be logged at the spot?
    fn standing(&self) -> Result<(), Refused> {
        standing(self.job, &self.draft.spot, self.units).map_err(|message| Refused { message, outside: None })
    }

    fn air(self) -> Result<Saved, Refused> {
        let name = self.draft.air.label();
        let Some(location) = self.draft.air.location() else { return self.surface() };
        let Some(held) = self.draft.held.first() else {
            let field = format!("{name}, temperature");
            let temperature = self.temperature(&self.draft.text, &field)?;
            let is_air = COLDEST_AIR <= temperature.value && temperature.value <= WARMEST_AIR;
            let accepted = || {
                let [coldest, warmest] = [COLDEST_AIR, WARMEST_AIR].map(|air| self.units.temperature(air));
                format!("{coldest} to {warmest} is accepted")
            };
            self.holds(&field, &self.draft.text, (!is_air).then(accepted))?;
            let read_back = self.read_temperature(name, temperature.value);
            return Ok(self.hold(temperature.typed, read_back));
        };
        let temperature = self.temperature(held, &format!("{name}, temperature"))?;
        let humidity = decimal::parse_relative_humidity(&self.draft.text)
            .map_err(|problem| Refused::new(&format!("{name}, humidity"), problem))?;
        let value = decimal::format_relative_humidity(humidity.value, Decimals::Tenths).replace(".0 %", " %");
        let read_back = ReadBack { of: name.to_owned(), spoken: value.replace('%', "percent"), value };
        let entries = vec![self.pen.record(AirReading { location, temperature, humidity })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    /// The wood's temperature, as the log has it of this visit: it says nothing of another day's
    /// wood, nothing once it was taken back, and nothing of a member of another kind.
    fn wood_temperature(&self) -> Option<Typed<Temperature>> {
        let measured = self.draft.wood_temperature.as_ref()?;
        let element = self.draft.spot.element;
        let is_on_one =
            |place: EntryId| self.job.now.places().get(&place).is_some_and(|it| it.value.element == element);
        let is_it = |surface: &Seen<'_, SurfaceReading>| {
            surface.value.place.is_none_or(is_on_one)
                && surface.value.what.as_str() == WOOD
                && surface.value.temperature == *measured
                && surface.in_visit().is_same(self.pen.in_visit())
        };
        self.job.now.surfaces().values().any(|surface| is_it(&surface)).then(|| measured.clone())
    }

    /// A temperature at the spot. The wood's goes with the readings that follow.
    fn surface(self) -> Result<Saved, Refused> {
        let name = self.draft.air.label();
        let temperature = self.temperature(&self.draft.text, name)?;
        self.standing()?;
        let read_back = self.read_temperature(self.draft.spot.name(), temperature.value);
        let (place, new_place) = place_at(self.job, self.pen, &self.draft.spot);
        let of_wood = self.draft.air == AirTask::Wood;
        let surface =
            SurfaceReading { place: Some(place), what: Label::fitted(name), temperature: temperature.clone() };
        let entries = new_place.into_iter().chain([self.pen.record(Observation::SurfaceReading(surface))]).collect();
        let mut next = self.draft.put_down();
        if of_wood {
            next = Draft { wood_temperature: Some(temperature), instrument: Instrument::Meter, ..next };
        }
        Ok(Saved { entries, next, read_back })
    }

    fn level(self) -> Result<Saved, Refused> {
        let drop = self.length(&format!("Level at {}", self.draft.spot.name()), Sign::Allowed)?;
        self.standing()?;
        let read_back = self.read_length(self.draft.spot.name(), drop.value);
        let (place, new_place) = place_at(self.job, self.pen, &self.draft.spot);
        let entry = self.pen.record(Level { place, drop });
        let spot = step(self.job, &self.draft.spot, self.draft.travel);
        let entries = new_place.into_iter().chain([entry]).collect();
        Ok(Saved { entries, next: Draft { spot, ..self.draft.put_down() }, read_back })
    }
}
