//! Soft spots, notches and holes: from where, to where, how deep.

use super::{Desk, ReadBack, Refused, Saved, standing};
use crate::engine::framing::{Damage, DamageKind, Depth};
use crate::engine::particular::Part;
use crate::engine::place::{Element, Place, Position};
use crate::engine::units::tape::Sign;
use crate::engine::units::{Length, Typed};

/// How deep a spot is, or how far a hole is from the nearest edge.
struct LastLength {
    depth: Option<Depth>,
    to_edge: Option<Typed<Length>>,
    read_back: ReadBack,
}

impl Desk<'_> {
    /// `instead` stands for a depth that cannot be typed.
    pub(super) fn spot(self, kind: DamageKind, instead: Option<Depth>) -> Result<Saved, Refused> {
        self.standing()?;
        let name = self.draft.spot.name();
        let of = self.member(kind)?;
        let field = |what: &str| format!("{name}, {} {what}", kind.label().to_ascii_lowercase());
        let [from_field, to_field] = [field("from"), field("to")];
        let Some(from) = self.draft.held.first() else {
            let from = self.begins(&from_field)?;
            let read_back = self.read_length(from_field, from.value);
            return Ok(self.hold(from.typed, read_back));
        };
        let from = self.length_of(from, &from_field, Sign::Refused)?;
        let Some(to) = self.draft.held.get(1) else {
            let to = self.ends(kind, &from, &to_field)?;
            let read_back = self.read_length(to_field, to.value);
            return Ok(self.hold(to.typed, read_back));
        };
        let to = self.length_of(to, &to_field, Sign::Refused)?;
        let LastLength { depth, to_edge, read_back } = self.last_length(kind, instead, &name)?;
        let face = self.draft.spot.face.filter(|_| kind != DamageKind::Hole);
        let damage = Damage { of, kind, from: Some(from), to: Some(to), face, depth, to_edge };
        let entries = vec![self.pen.record(damage)];
        Ok(Saved { entries, next: self.draft.put_down(), read_back })
    }

    /// The member that the spot is on.
    fn member(&self, kind: DamageKind) -> Result<Part, Refused> {
        match (self.draft.spot.element, &self.draft.spot.position) {
            (Element::Joist, Position::OnJoist { joist, .. }) => Ok(Part::Joist(*joist)),
            (Element::RimJoist, _) => Ok(Part::RimJoist),
            (Element::Sill, _) => Ok(Part::Sill),
            (Element::Girder, _) => Ok(Part::Girder(1)),
            _ => Err(Refused::new(
                kind.label(),
                "a joist by its number, a rim joist, a sill or a girder is accepted: tap the question to choose one",
            )),
        }
    }

    /// Where it begins; where the spot is, if nothing was typed.
    fn begins(&self, field: &str) -> Result<Typed<Length>, Refused> {
        let here = self.draft.spot.position.along().filter(|_| self.draft.text.trim().is_empty());
        here.map_or_else(|| self.on_the_member(self.length(field, Sign::Refused)?, field), Ok)
    }

    /// A distance along a joist lies within that joist.
    fn on_the_member(&self, along: Typed<Length>, field: &str) -> Result<Typed<Length>, Refused> {
        let position = match &self.draft.spot.position {
            Position::OnJoist { joist, .. } => Position::OnJoist { joist: *joist, along: Some(along.clone()) },
            other @ (Position::OnPlan { .. } | Position::Named) => other.clone(),
        };
        let there = Place { position, ..self.draft.spot.clone() };
        standing(self.job, &there, self.units).map_err(|why| Refused::new(field, why))?;
        Ok(along)
    }

    /// Where it ends; an awl that was pushed in once ends where it began.
    fn ends(&self, kind: DamageKind, from: &Typed<Length>, field: &str) -> Result<Typed<Length>, Refused> {
        if kind == DamageKind::Soft && self.draft.text.trim().is_empty() {
            return Ok(from.clone());
        }
        let to = self.on_the_member(self.length(field, Sign::Refused)?, field)?;
        if to.value >= from.value {
            return Ok(to);
        }
        let words =
            format!("\"{}\" lies before {}: that or more is accepted", to.typed.trim(), self.units.length(from.value));
        Err(Refused::new(field, words))
    }

    /// How deep it is, or how far a hole is from the nearest edge.
    fn last_length(&self, kind: DamageKind, instead: Option<Depth>, name: &str) -> Result<LastLength, Refused> {
        if let Some(depth) = instead {
            // Nobody measured from the hole to the edge: that stays unsaid.
            let depth = (kind != DamageKind::Hole).then_some(depth);
            return Ok(LastLength { depth, to_edge: None, read_back: ReadBack::words(name, "cannot reach") });
        }
        let what = if kind == DamageKind::Hole { "to the edge" } else { "depth" };
        let length = self.length(&format!("{name}, {} {what}", kind.label().to_ascii_lowercase()), Sign::Refused)?;
        let read_back = self.read_length(name, length.value);
        Ok(match kind {
            DamageKind::Hole => LastLength { depth: None, to_edge: Some(length), read_back },
            DamageKind::Soft | DamageKind::Notch => {
                LastLength { depth: Some(Depth::Is(length)), to_edge: None, read_back }
            }
        })
    }
}
