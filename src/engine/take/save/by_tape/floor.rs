//! The floor: what comes out of it, what it is made of, what is there to lay.

use super::super::{Desk, ReadBack, Refused, Saved};
use crate::engine::sheets::OnHand;
use crate::engine::survey::{CutBack, Layer, Obstacle, Opening, inside};
use crate::engine::take::draft::{Draft, Footprint, TapeTask};
use crate::engine::take::question::opening_to_cut_back;
use crate::engine::units::tape::Sign;
use crate::engine::units::{Length, Typed};

impl Desk<'_> {
    pub(in super::super) fn opening(self) -> Result<Saved, Refused> {
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
        let floor = inside::floor(self.job);
        let why = floor.as_ref().and_then(|floor| inside::refuses_opening(floor, &opening, self.units));
        self.holds(&width_field, &self.draft.text, why)?;
        let entries = vec![match self.draft.footprint {
            Footprint::Opening => self.pen.record(opening),
            Footprint::Of(what) => self.pen.record(Obstacle { what, takes: opening }),
        }];
        let next = Draft { tape: TapeTask::Joists, footprint: Footprint::Opening, ..self.draft.put_down() };
        Ok(Saved { entries, next, read_back })
    }

    /// Either length may be left unsaid.
    pub(in super::super) fn cut_back(self) -> Result<Saved, Refused> {
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

    /// Along its strong axis first, then across.
    pub(in super::super) fn on_hand(self) -> Result<Saved, Refused> {
        let [length_field, width_field] = ["along its strong axis", "across"].map(|way| format!("Piece on hand {way}"));
        let Some(length) = self.draft.held.first() else {
            let length = self.size(&length_field)?;
            let read_back = self.read_length(length_field, length.value);
            return Ok(self.hold(length.typed, read_back));
        };
        let (length, width) = (self.size_of(length, &length_field)?, self.size(&width_field)?);
        let read_back = self.read_length(width_field, width.value);
        let entries = vec![self.pen.record(OnHand { length, width })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    pub(in super::super) fn layer(self) -> Result<Saved, Refused> {
        let what = self.draft.layer;
        let thickness = self.size(&format!("Thickness, {}", what.label()))?;
        let read_back = self.read_length(what.label(), thickness.value);
        let entries = vec![self.pen.record(Layer { what, thickness })];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }
}
