//! The room: its sides, what lies across, its corners.

use super::super::{Desk, ReadBack, Refused, Saved};
use crate::engine::entry::{EntryId, Label};
use crate::engine::geometry::{Point, Step, Turn, Walk};
use crate::engine::job::Entry;
use crate::engine::survey::{Corner, Floor, Offset, Room, Side, Tie};
use crate::engine::take::draft::{Draft, TapeTask};
use crate::engine::units::decimal::parse_angle;
use crate::engine::units::tape::Sign;

impl Desk<'_> {
    pub(in super::super) fn side(mut self) -> Result<Saved, Refused> {
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

    pub(in super::super) fn tie(self) -> Result<Saved, Refused> {
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
    pub(in super::super) fn offset(self) -> Result<Saved, Refused> {
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
    pub(in super::super) fn corner(self) -> Result<Saved, Refused> {
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
    pub(super) fn side_from(&self, corner: usize, field: &str) -> Result<EntryId, Refused> {
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
}

/// Would the walk have come round with one more side there?
fn comes_round(floor: &Floor, before: usize, side: &Side) -> bool {
    let mut steps = floor.walk.steps().to_vec();
    steps.insert(before.min(steps.len()), Step::square(side.length.value, side.turn));
    Walk::new(steps).has_come_round()
}
