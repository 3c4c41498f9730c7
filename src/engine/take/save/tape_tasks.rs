//! What a tape or a laser gives.

use super::{Desk, ReadBack, Refused, Saved};
use crate::engine::entry::{EntryId, Label};
use crate::engine::geometry::{Point, Step, Turn, Walk};
use crate::engine::job::{Entry, Fact};
use crate::engine::survey::{
    Corner, CutBack, Floor, JoistCenter, Joists, Layer, Measure, Obstacle, Offset, Opening, Room, Side, Tie,
};
use crate::engine::take::draft::{Draft, Footprint, Instrument, TapeTask};
use crate::engine::take::question::opening_to_cut_back;
use crate::engine::units::decimal::parse_angle;
use crate::engine::units::tape::Sign;
use crate::engine::units::{Length, Typed};

impl Desk<'_> {
    pub(super) fn side(mut self) -> Result<Saved, Refused> {
        let floor = Floor::of(self.job);
        let before = floor.as_ref().map_or(0, |floor| floor.sides_before(self.draft.after));
        let name = format!("Side {}", before + 1);
        let length = self.size(&name)?;
        let read_back = self.read_length(name, length.value);
        let (room, new_room) = self.room(floor.as_ref());
        let after = floor.as_ref().and_then(|floor| floor.sides.get(before.checked_sub(1)?).copied());
        let side = Side { room, after, length, turn: self.draft.turn, by: self.draft.ruler };
        let closes = floor.is_some_and(|floor| comes_round(&floor, before, &side));
        let entries = new_room.into_iter().chain([self.pen.record(side)]).collect();
        let tape = if closes { TapeTask::Opening } else { TapeTask::Side };
        Ok(Saved { entries, next: Draft { tape, turn: Turn::Right, after: None, ..self.draft.put_down() }, read_back })
    }

    pub(super) fn tie(self) -> Result<Saved, Refused> {
        let name = format!("Corner {} to corner {}", self.draft.corner + 1, self.draft.to_corner + 1);
        let (from, to) = (self.side_from(self.draft.corner, &name)?, self.side_from(self.draft.to_corner, &name)?);
        if from == to {
            return Err(Refused::new(&name, "two different corners are needed"));
        }
        let length = self.size(&name)?;
        let read_back = self.read_length(name, length.value);
        let entries = vec![self.pen.record(Tie { from, to, length, by: self.draft.ruler })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    /// Which side of the line the corner lies on is seen from the walk.
    pub(super) fn offset(self) -> Result<Saved, Refused> {
        let name = format!("Corner {}", self.draft.corner + 1);
        let (along_field, out_field) = (format!("{name} along the line"), format!("{name} out from the line"));
        let numbers = [self.draft.corner, self.draft.line_from, self.draft.to_corner];
        let [of, from, to] = numbers.map(|number| self.side_from(number, &name));
        let (of, from, to) = (of?, from?, to?);
        if of == from || of == to || from == to {
            return Err(Refused::new(&name, "three different corners are needed"));
        }
        let Some(along) = self.draft.held.first() else {
            let along = self.length(&along_field, Sign::Allowed)?;
            let read_back = self.read_length(&along_field, along.value);
            return Ok(self.hold(along.typed, read_back));
        };
        let along = self.length_of(along, &along_field, Sign::Allowed)?;
        let out = self.length(&out_field, Sign::Refused)?;
        let read_back = self.read_length(&out_field, out.value);
        let side = self.side_of_the_line(numbers);
        let entries = vec![self.pen.record(Offset { of, from, to, along, out, side, by: self.draft.ruler })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    /// The side of the line from the second corner to the third that the first one lies on.
    fn side_of_the_line(&self, corners: [usize; 3]) -> Turn {
        let walked = Floor::of(self.job).map(|floor| floor.walk.corners()).unwrap_or_default();
        let [of, from, to] = corners.map(|corner| walked.get(corner).copied().unwrap_or(Point::ORIGIN));
        let (line, corner) = (to - from, of - from);
        if line.dx * corner.dy >= line.dy * corner.dx { Turn::Right } else { Turn::Left }
    }

    /// A corner is square unless an angle is typed.
    pub(super) fn corner(self) -> Result<Saved, Refused> {
        let name = format!("Corner {}", self.draft.corner + 1);
        let at = self.side_from(self.draft.corner, &name)?;
        let typed = self.draft.text.trim();
        let angle = if typed.is_empty() { None } else { Some(parse_angle(typed)) };
        let angle = angle.transpose().map_err(|problem| Refused::new(&name, problem))?;
        let says = angle.as_ref().map_or("square", |angle| angle.typed.as_str());
        let read_back = ReadBack::words(name, format!("{says}, {}", self.draft.trust.label()));
        let entries = vec![self.pen.record(Corner { at, angle, trust: self.draft.trust })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    /// The side that starts at a corner.
    fn side_from(&self, corner: usize, field: &str) -> Result<EntryId, Refused> {
        let found = Floor::of(self.job).and_then(|floor| floor.sides.get(corner).copied());
        found.ok_or_else(|| {
            Refused::new(field, format!("corner {} is not measured yet: measure the room first", corner + 1))
        })
    }

    /// The room that is measured, or a new one with the entry that says it.
    fn room(&mut self, floor: Option<&Floor>) -> (EntryId, Option<Entry>) {
        match floor {
            Some(floor) => (floor.room, None),
            None => {
                let room = self.pen.record(Room { name: Label::fitted("Room") });
                (room.id, Some(room))
            }
        }
    }

    pub(super) fn opening(self) -> Result<Saved, Refused> {
        let name = self.draft.footprint.label();
        let fields = ["along the side", "out from the wall", "size along", "size into the room"];
        let [along_field, out_field, length_field, width_field] = fields.map(|field| format!("{name} {field}"));
        let field =
            [&along_field, &out_field, &length_field].get(self.draft.held.len()).map_or(&*width_field, |field| field);
        // Asked before the first answer: going off to measure the room puts answers down.
        let from = self.side_from(self.draft.corner, field)?;
        let value = if self.draft.held.len() < 2 { self.length(field, Sign::Refused)? } else { self.size(field)? };
        let read_back = self.read_length(field, value.value);
        let [along, out, length, ..] = self.draft.held.as_slice() else {
            return Ok(self.hold(value.typed, read_back));
        };
        let opening = Opening {
            from,
            along: self.length_of(along, &along_field, Sign::Refused)?,
            out: self.length_of(out, &out_field, Sign::Refused)?,
            length: self.size_of(length, &length_field)?,
            width: value,
        };
        let entries = vec![match self.draft.footprint {
            Footprint::Opening => self.pen.record(opening),
            Footprint::Of(what) => self.pen.record(Obstacle { what, takes: opening }),
        }];
        let next = Draft { tape: TapeTask::Joists, footprint: Footprint::Opening, ..self.draft.put_down() };
        Ok(Saved { entries, next, read_back })
    }

    /// Either length may be left unsaid.
    pub(super) fn cut_back(self) -> Result<Saved, Refused> {
        let Some((opening, name)) = opening_to_cut_back(self.draft, self.job) else {
            return Err(Refused::new("Cut back", "there is no opening yet: place one first"));
        };
        let (width_field, finish_field) = (format!("{name} along the joists"), format!("{name} finished floor"));
        let length = |text: &str, field: &str| {
            let unsaid = text.trim().is_empty();
            if unsaid { Ok(None) } else { self.size_of(text, field).map(Some) }
        };
        let read_back = |field: &str, length: Option<&Typed<Length>>, unsaid: &str| match length {
            Some(length) => self.read_length(field, length.value),
            None => ReadBack::words(field, unsaid),
        };
        let Some(width) = self.draft.held.first() else {
            let width = length(&self.draft.text, &width_field)?;
            let read_back = read_back(&width_field, width.as_ref(), "as placed");
            return Ok(self.hold(width.map(|width| width.typed).unwrap_or_default(), read_back));
        };
        let (width, finish) = (length(width, &width_field)?, length(&self.draft.text, &finish_field)?);
        let read_back = read_back(&finish_field, finish.as_ref(), "not said");
        let entries = vec![self.pen.record(CutBack { opening, width, finish })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    pub(super) fn joists(self) -> Result<Saved, Refused> {
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
                Ok(Saved { entries, next: Draft { instrument: Instrument::Meter, ..self.draft.put_down() }, read_back })
            }
        }
    }

    /// One joist after the other, as the tape lies.
    pub(super) fn joist_center(self) -> Result<Saved, Refused> {
        let name = format!("Joist {} from corner 1", self.draft.joist.get());
        let Some(joists) = Floor::of(self.job).and_then(|floor| floor.joists) else {
            return Err(Refused::new(&name, "the joists are not laid out yet: measure first center and spacing first"));
        };
        let (joist, count) = (self.draft.joist, joists.count());
        if joist.get() > count {
            return Err(Refused::new(&name, format!("there are {count} joists: 1 to {count} is accepted")));
        }
        let center = self.length(&name, Sign::Allowed)?;
        let read_back = self.read_length(name, center.value);
        let entries = vec![self.pen.record(JoistCenter { of: joists.id, joist, center })];
        let joist = if joist.get() < count { joist.step(1) } else { joist };
        Ok(Saved { entries, next: Draft { joist, ..self.draft.put_down() }, read_back })
    }

    pub(super) fn layer(self) -> Result<Saved, Refused> {
        let what = self.draft.layer;
        let thickness = self.size(&format!("Thickness, {}", what.label()))?;
        let read_back = self.read_length(what.label(), thickness.value);
        let entries = vec![self.pen.record(Layer { what, thickness })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    pub(super) fn crawl_height(self) -> Result<Saved, Refused> {
        let height = self.size("Crawl height")?;
        let read_back = self.read_length("Crawl height", height.value);
        let entries = vec![self.pen.record(Fact::CrawlHeight(height))];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    pub(super) fn other_length(self) -> Result<Saved, Refused> {
        let name = if self.draft.other.is_empty() { Label::fitted("Length") } else { self.draft.other.clone() };
        let length = self.length(name.as_str(), Sign::Allowed)?;
        let read_back = self.read_length(name.as_str(), length.value);
        let entries = vec![self.pen.record(Measure { what: name, length, place: None })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }
}

/// Would the walk have come round with one more side there?
fn comes_round(floor: &Floor, before: usize, side: &Side) -> bool {
    let mut steps = floor.walk.steps().to_vec();
    steps.insert(before.min(steps.len()), Step::square(side.length.value, side.turn));
    Walk::new(steps).has_come_round()
}
