//! From a draft to entries: what the save key does.

use super::draft::{AirTask, Draft, Instrument, TapeTask};
use super::settings::Units;
use super::travel::{next_spot, place_at};
use crate::engine::air::{AirReading, SurfaceReading};
use crate::engine::condition::{Condition, Finding};
use crate::engine::entry::{EntryId, Label};
use crate::engine::geometry::Turn;
use crate::engine::job::{Entry, Fact, Job, Observation, Pen};
use crate::engine::moisture::{Reading, Shown};
use crate::engine::survey::{Floor, Joists, Level, Measure, Opening, Room, Side};
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
    match draft.instrument {
        Instrument::Tape => match draft.tape {
            TapeTask::Side => desk.side(),
            TapeTask::Opening => desk.opening(),
            TapeTask::Joists => desk.joists(),
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
pub fn save_over_maximum(draft: &Draft, job: &Job, pen: &mut Pen, units: Units, meter: Option<EntryId>) -> Saved {
    Desk { draft, job, pen, units, meter }.reading(Shown::OverMaximum, "over maximum")
}

/// Takes a finding at the spot. The place stays: one place can show several things.
pub fn look(draft: &Draft, job: &Job, pen: &mut Pen, finding: Finding) -> Saved {
    let (place, new_place) = place_at(job, pen, &draft.spot);
    let condition = pen.record(Condition { place: Some(place), finding, note: None });
    Saved {
        entries: new_place.into_iter().chain([condition]).collect(),
        next: draft.emptied(),
        read_back: ReadBack {
            of: draft.spot.name(),
            value: finding.label().to_owned(),
            spoken: finding.label().to_owned(),
        },
    }
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

    fn temperature(&self, text: &str, field: &str) -> Result<Typed<Temperature>, Refused> {
        decimal::parse_temperature(text, self.units.scale).map_err(|problem| Refused::new(field, problem))
    }

    fn read_length(&self, of: impl Into<String>, length: Length) -> ReadBack {
        ReadBack { of: of.into(), value: self.units.length(length), spoken: tape::speak(length, self.units.length) }
    }

    fn read_temperature(&self, of: impl Into<String>, temperature: Temperature) -> ReadBack {
        let value = self.units.temperature(temperature);
        ReadBack { of: of.into(), spoken: value.clone(), value }
    }

    /// The answer is kept in the draft until its question is whole.
    fn hold(&self, typed: String, read_back: ReadBack) -> Saved {
        Saved { entries: Vec::new(), next: self.draft.holding(typed), read_back }
    }

    fn side(self) -> Result<Saved, Refused> {
        let floor = Floor::of(self.job);
        let number = floor.as_ref().map_or(0, |floor| floor.sides.len()) + 1;
        let length = self.size(&format!("Side {number}"))?;
        let read_back = self.read_length(format!("Side {number}"), length.value);
        let turn = self.draft.turn;
        let mut entries = Vec::new();
        let room = floor.as_ref().map_or_else(
            || {
                let room = self.pen.record(Room { name: Label::fitted("Room") });
                let id = room.id;
                entries.push(room);
                id
            },
            |floor| floor.room,
        );
        let after = floor.as_ref().and_then(|floor| floor.sides.last().copied());
        let side = Side { room, after, length, turn };
        let closes = floor.is_some_and(|floor| comes_round(&floor, &side));
        entries.push(self.pen.record(side));
        let next = Draft {
            tape: if closes { TapeTask::Opening } else { TapeTask::Side },
            turn: Turn::Right,
            ..self.draft.emptied()
        };
        Ok(Saved { entries, next, read_back })
    }

    fn opening(self) -> Result<Saved, Refused> {
        const FIELDS: [&str; 4] =
            ["Opening along the side", "Opening out from the wall", "Opening size along", "Opening size into the room"];
        let at = self.draft.held.len().min(3);
        let field = FIELDS.get(at).copied().unwrap_or_default();
        // Asked before the first answer: going off to measure the room puts answers down.
        let corner = Floor::of(self.job).and_then(|floor| floor.sides.get(self.draft.corner).copied());
        let Some(from) = corner else {
            let what = format!("corner {} is not measured yet: measure the room first", self.draft.corner + 1);
            return Err(Refused::new(field, what));
        };
        let value = if at < 2 { self.length(field, Sign::Refused)? } else { self.size(field)? };
        let read_back = self.read_length(field, value.value);
        let [along, out, length, ..] = self.draft.held.as_slice() else {
            return Ok(self.hold(value.typed, read_back));
        };
        let opening = Opening {
            from,
            along: self.length_of(along, "Opening along the side", Sign::Refused)?,
            out: self.length_of(out, "Opening out from the wall", Sign::Refused)?,
            length: self.size_of(length, "Opening size along")?,
            width: value,
        };
        let entries = vec![self.pen.record(opening)];
        Ok(Saved { entries, next: Draft { tape: TapeTask::Joists, ..self.draft.emptied() }, read_back })
    }

    fn joists(self) -> Result<Saved, Refused> {
        let Some(room) = Floor::of(self.job).map(|floor| floor.room) else {
            return Err(Refused::new("Joists", "there is no room yet: measure its sides first"));
        };
        match self.draft.held.as_slice() {
            [] => {
                let first = self.length("Joist 1 from corner 1", Sign::Allowed)?;
                let read_back = self.read_length("Joist 1 center", first.value);
                Ok(self.hold(first.typed, read_back))
            }
            [_] => {
                let spacing = self.size("Joist spacing")?;
                let read_back = self.read_length("Joist spacing", spacing.value);
                Ok(self.hold(spacing.typed, read_back))
            }
            [first, spacing, ..] => {
                let text = self.draft.text.trim();
                let count = text.parse().ok().filter(|count| (1..=200).contains(count));
                let Some(count) = count else {
                    return Err(Refused::new("Joist count", format!("\"{text}\" is no count: 1 to 200 is accepted")));
                };
                let joists = Joists {
                    room,
                    run: self.draft.run,
                    first: self.length_of(first, "Joist 1 from corner 1", Sign::Allowed)?,
                    spacing: self.size_of(spacing, "Joist spacing")?,
                    count,
                };
                let value = count.to_string();
                let read_back = ReadBack { of: "Joists".to_owned(), spoken: format!("{value} joists"), value };
                let entries = vec![self.pen.record(joists)];
                Ok(Saved { entries, next: Draft { instrument: Instrument::Meter, ..self.draft.emptied() }, read_back })
            }
        }
    }

    fn crawl_height(self) -> Result<Saved, Refused> {
        let height = self.size("Crawl height")?;
        let read_back = self.read_length("Crawl height", height.value);
        let entries = vec![self.pen.record(Fact::CrawlHeight(height))];
        Ok(Saved { entries, next: self.draft.emptied(), read_back })
    }

    fn other_length(self) -> Result<Saved, Refused> {
        let name = if self.draft.other.is_empty() { Label::fitted("Length") } else { self.draft.other.clone() };
        let length = self.length(name.as_str(), Sign::Allowed)?;
        let read_back = self.read_length(name.as_str(), length.value);
        let entries = vec![self.pen.record(Measure { what: name, length, place: None })];
        Ok(Saved { entries, next: self.draft.emptied(), read_back })
    }

    fn percent(self) -> Result<Saved, Refused> {
        let field = format!("Moisture at {}", self.draft.spot.name());
        let shown =
            decimal::parse_moisture_content(&self.draft.text).map_err(|problem| Refused::new(&field, problem))?;
        let value = decimal::format_moisture_content(shown.value, Decimals::Tenths);
        let value = value.replace(".0 %", " %");
        Ok(self.reading(Shown::Percent(shown), &value))
    }

    fn reading(self, shown: Shown, value: &str) -> Saved {
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
        Saved {
            entries: new_place.into_iter().chain([entry]).collect(),
            next: Draft { spot, ..self.draft.emptied() },
            read_back: ReadBack { of: self.draft.spot.name(), value: value.to_owned(), spoken },
        }
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
        Ok(Saved { entries, next: self.draft.emptied(), read_back })
    }

    /// A temperature at the spot. The wood's goes with the readings that follow.
    fn surface(self) -> Result<Saved, Refused> {
        let name = self.draft.air.label();
        let temperature = self.temperature(&self.draft.text, name)?;
        let read_back = self.read_temperature(self.draft.spot.name(), temperature.value);
        let (place, new_place) = place_at(self.job, self.pen, &self.draft.spot);
        let of_wood = self.draft.air == AirTask::Wood;
        let surface =
            SurfaceReading { place: Some(place), what: Label::fitted(name), temperature: temperature.clone() };
        let entries = new_place.into_iter().chain([self.pen.record(Observation::SurfaceReading(surface))]).collect();
        let mut next = self.draft.emptied();
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
        let read_back = self.read_length(self.draft.spot.name(), drop.value);
        let (place, new_place) = place_at(self.job, self.pen, &self.draft.spot);
        let entry = self.pen.record(Level { place, drop });
        let spot = super::travel::step(&self.draft.spot, self.draft.travel);
        let entries = new_place.into_iter().chain([entry]).collect();
        Ok(Saved { entries, next: Draft { spot, ..self.draft.emptied() }, read_back })
    }
}

/// Would the walk have come round with one more side?
fn comes_round(floor: &Floor, side: &Side) -> bool {
    use crate::engine::geometry::{Step, Walk};
    let last = Step { length: side.length.value, turn: side.turn };
    Walk::new(floor.walk.steps().iter().copied().chain([last])).has_come_round()
}
