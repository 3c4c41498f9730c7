//! What lies below, and lengths that have no other place.

use super::super::{Desk, ReadBack, Refused, Saved};
use crate::engine::entry::Label;
use crate::engine::job::{Fact, Observation};
use crate::engine::survey::{AlongFrom, Floor, JoistCenter, Joists, Measure, inside};
use crate::engine::take::draft::{Draft, Instrument};
use crate::engine::units::tape::Sign;

impl Desk<'_> {
    pub(in super::super) fn joists(self) -> Result<Saved, Refused> {
        let Some(room) = Floor::of(self.job).map(|floor| floor.room) else {
            return Err(Refused::new("Joists", "there is no room yet: measure its sides first"));
        };
        match self.draft.held.as_slice() {
            [] => {
                let first = self.length("Joist 1 from corner 1", Sign::Allowed)?;
                let floor = inside::floor(self.job);
                let why =
                    floor.and_then(|floor| inside::refuses_first(&floor, self.draft.run, first.value, self.units));
                self.holds("Joist 1 from corner 1", &self.draft.text, why)?;
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
                    along: AlongFrom::Wall,
                };
                let why = inside::refuses(self.job, &Observation::Joists(joists.clone()), self.units);
                self.holds("Joist count", &self.draft.text, why)?;
                let value = count.to_string();
                let read_back = ReadBack { of: "Joists".to_owned(), spoken: format!("{value} joists"), value };
                let entries = vec![self.pen.record(joists)];
                Ok(Saved { entries, next: Draft { instrument: Instrument::Meter, ..self.draft.put_down() }, read_back })
            }
        }
    }

    /// One joist after the other, as the tape lies.
    pub(in super::super) fn joist_center(self) -> Result<Saved, Refused> {
        let name = format!("Joist {} from corner 1", self.draft.joist.get());
        let Some(joists) = Floor::of(self.job).and_then(|floor| floor.joists) else {
            return Err(Refused::new(&name, "the joists are not laid out yet: measure first center and spacing first"));
        };
        let (joist, count) = (self.draft.joist, joists.count());
        if joist.get() > count {
            return Err(Refused::new(&name, format!("there are {count} joists: 1 to {count} is accepted")));
        }
        let center = self.length(&name, Sign::Allowed)?;
        let floor = inside::floor(self.job);
        let why = floor.and_then(|floor| inside::refuses_center(&floor, center.value, self.units));
        self.holds(&name, &self.draft.text, why)?;
        let read_back = self.read_length(name, center.value);
        let entries = vec![self.pen.record(JoistCenter { of: joists.id, joist, center })];
        let joist = if joist.get() < count { joist.step(1) } else { joist };
        Ok(Saved { entries, next: Draft { joist, ..self.draft.put_down() }, read_back })
    }

    pub(in super::super) fn crawl_height(self) -> Result<Saved, Refused> {
        let height = self.length("Crawl height", Sign::Refused)?;
        let read_back = self.read_length("Crawl height", height.value);
        let fact = Fact::CrawlHeight(height);
        self.holds("Crawl height", &self.draft.text, fact.refused())?;
        let entries = vec![self.pen.record(fact)];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    pub(in super::super) fn other_length(self) -> Result<Saved, Refused> {
        let name = if self.draft.other.is_empty() { Label::fitted("Length") } else { self.draft.other.clone() };
        let length = self.length(name.as_str(), Sign::Allowed)?;
        let read_back = self.read_length(name.as_str(), length.value);
        let entries = vec![self.pen.record(Measure { what: name, length, place: None })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }
}
