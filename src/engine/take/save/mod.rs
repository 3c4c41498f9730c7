//! From a draft to entries: what the save key does.

mod by_tape;

use super::draft::{AirTask, Draft, Instrument, TapeTask};
use super::settings::Units;
use super::travel::{next_spot, place_at, standing, step};
use super::whereabouts::Whereabouts;
use crate::engine::air::{AirReading, SurfaceReading};
use crate::engine::condition::{Condition, Finding};
use crate::engine::entry::{EntryId, Label};
use crate::engine::job::{Entry, Job, Observation, Pen};
use crate::engine::moisture::{Reading, Shown};
use crate::engine::survey::Level;
use crate::engine::units::decimal::{self, Decimals};
use crate::engine::units::tape::{self, Sign};
use crate::engine::units::{Length, Temperature, Typed};
use std::fmt::Display;

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
        Self { message: format!("{field}: {problem}") }
    }
}

/// What a save works with.
struct Desk<'a> {
    draft: &'a Draft,
    job: &'a Job,
    pen: &'a mut Pen,
    units: Units,
    meter: Option<EntryId>,
}

/// Takes the typed value. `meter` is the job's entry for the meter in the hand.
///
/// # Errors
/// [`Refused`] when the text does not say a value that would do.
pub fn save(draft: &Draft, job: &Job, pen: &mut Pen, units: Units, meter: Option<EntryId>) -> Result<Saved, Refused> {
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
        Instrument::Meter => desk.percent(),
        Instrument::Air => desk.air(),
        Instrument::Level => desk.level(),
        Instrument::Look | Instrument::Photo => Err(Refused::new(draft.instrument.label(), "nothing is typed here")),
    }
}

/// Takes "over the meter's maximum" as the value.
///
/// # Errors
/// [`Refused`] where nothing can be read at the spot.
pub fn save_over_maximum(
    draft: &Draft,
    job: &Job,
    pen: &mut Pen,
    units: Units,
    meter: Option<EntryId>,
) -> Result<Saved, Refused> {
    Desk { draft, job, pen, units, meter }.reading(Shown::OverMaximum, "over maximum")
}

/// Takes a finding at the spot. The place stays: one place can show several things.
///
/// # Errors
/// [`Refused`] where nothing can be seen at the spot.
pub fn look(draft: &Draft, job: &Job, pen: &mut Pen, units: Units, finding: Finding) -> Result<Saved, Refused> {
    standing(job, &draft.spot, units).map_err(|message| Refused { message })?;
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

    fn percent(self) -> Result<Saved, Refused> {
        let field = format!("Moisture at {}", self.draft.spot.name());
        let shown =
            decimal::parse_moisture_content(&self.draft.text).map_err(|problem| Refused::new(&field, problem))?;
        let value = decimal::format_moisture_content(shown.value, Decimals::Tenths);
        let value = value.replace(".0 %", " %");
        self.reading(Shown::Percent(shown), &value)
    }

    fn reading(self, shown: Shown, value: &str) -> Result<Saved, Refused> {
        self.standing()?;
        let (place, new_place) = place_at(self.job, self.pen, &self.draft.spot);
        let visit = self.pen.visit();
        let of_this_visit = self.draft.wood_temperature_visit == visit;
        let entry = self.pen.record(Reading {
            place,
            meter: self.meter,
            shown,
            wood: self.draft.wood,
            wood_temperature: self.draft.wood_temperature.clone().filter(|_| of_this_visit),
        });
        let spot = next_spot(self.job, visit, self.draft, place);
        let spoken = value.replace('%', "percent");
        Ok(Saved {
            entries: new_place.into_iter().chain([entry]).collect(),
            next: Draft { spot, ..self.draft.put_down() },
            read_back: ReadBack { of: self.draft.spot.name(), value: value.to_owned(), spoken },
        })
    }

    /// Can anything be logged at the spot?
    fn standing(&self) -> Result<(), Refused> {
        standing(self.job, &self.draft.spot, self.units).map_err(|message| Refused { message })
    }

    fn air(self) -> Result<Saved, Refused> {
        let name = self.draft.air.label();
        let Some(location) = self.draft.air.location() else { return self.surface() };
        let Some(held) = self.draft.held.first() else {
            let temperature = self.temperature(&self.draft.text, &format!("{name}, temperature"))?;
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
            next = Draft {
                wood_temperature: Some(temperature),
                wood_temperature_visit: self.pen.visit(),
                instrument: Instrument::Meter,
                ..next
            };
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
