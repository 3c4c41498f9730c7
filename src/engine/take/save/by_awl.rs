//! Soft spots, notches and holes: from where, to where, how deep.

use super::{Desk, ReadBack, Refused, Saved, standing};
use crate::engine::framing::{Damage, DamageKind, Depth};
use crate::engine::particular::{Part, Value};
use crate::engine::place::{Element, Place, Position};
use crate::engine::units::tape::Sign;
use crate::engine::units::{Length, Typed};

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
        let face = self.draft.spot.face.filter(|_| kind != DamageKind::Hole);
        let damage = Damage { of, kind, from: Some(from), to: Some(to), face, depth: None, to_edge: None };
        if kind == DamageKind::Hole {
            let fields = [field("height"), field("to the edge")];
            return self.hole(damage, instead, name, fields);
        }
        let (depth, read_back) = match instead {
            Some(depth) => (depth, ReadBack::words(name, "cannot reach")),
            None => {
                let field = field("depth");
                let depth =
                    if kind == DamageKind::Notch { self.size(&field) } else { self.length(&field, Sign::Refused) }?;
                let read_back = self.read_length(name, depth.value);
                (Depth::Is(depth), read_back)
            }
        };
        Ok(self.logged(Damage { depth: Some(depth), ..damage }, read_back))
    }

    fn logged(self, damage: Damage, read_back: ReadBack) -> Saved {
        Saved { entries: vec![self.pen.record(damage)], next: self.draft.put_down(), read_back }
    }

    /// How high a hole is, then how far from the nearest edge. What nobody can reach stays
    /// unsaid from there on.
    fn hole(
        self,
        damage: Damage,
        instead: Option<Depth>,
        name: String,
        [high_field, edge_field]: [String; 2],
    ) -> Result<Saved, Refused> {
        let cannot = || ReadBack::words(&name, "cannot reach");
        let Some(high) = self.draft.held.get(2) else {
            if let Some(depth) = instead {
                return Ok(self.logged(Damage { depth: Some(depth), ..damage }, cannot()));
            }
            let high = self.size(&high_field)?;
            self.fits(&damage.of, &high_field, &high, Length::ZERO)?;
            let read_back = self.read_length(high_field, high.value);
            return Ok(self.hold(high.typed, read_back));
        };
        let high = self.size_of(high, &high_field)?;
        let (to_edge, read_back) = if instead.is_some() {
            (None, cannot())
        } else {
            let to_edge = self.length(&edge_field, Sign::Refused)?;
            // The nearest edge is no farther than the other one.
            self.fits(&damage.of, &edge_field, &high, to_edge.value)?;
            let read_back = self.read_length(name, to_edge.value);
            (Some(to_edge), read_back)
        };
        Ok(self.logged(Damage { depth: Some(Depth::Is(high)), to_edge, ..damage }, read_back))
    }

    /// A hole and what is left at both of its edges are no more than the joist is deep, if
    /// that was measured.
    fn fits(&self, of: &Part, field: &str, high: &Typed<Length>, to_edge: Length) -> Result<(), Refused> {
        let Some(deep) = self.depth_of(of).filter(|deep| high.value + to_edge * 2 > *deep) else { return Ok(()) };
        let [high, deep, most] = [high.value, deep, deep - to_edge * 2].map(|length| self.units.length(length));
        let words = if to_edge.is_positive() {
            format!("that far from both edges no more than {most} is left of {deep}, and the hole is {high} high")
        } else {
            format!("up to {most} is accepted in a joist that deep")
        };
        self.holds(field, &self.draft.text, Some(words))
    }

    /// How deep a joist is, as it was last said of it or else of all joists. The words are
    /// those of particulars, whose list is not part of the first load.
    fn depth_of(&self, of: &Part) -> Option<Length> {
        let said = |of: &Part| {
            let all = self.job.now.particulars().values().rev();
            all.filter(|it| it.value.of == *of && it.value.what.as_str() == "depth").find_map(|it| match &it.value.is {
                Value::Length(typed) => Some(typed.value),
                Value::Amount(_) | Value::Words(_) => None,
            })
        };
        said(of).or_else(|| said(&Part::Joists).filter(|_| matches!(of, Part::Joist(_))))
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
        // An awl is pushed in at a point; what is cut out has a length.
        let accepted = match kind {
            DamageKind::Soft if to.value >= from.value => return Ok(to),
            DamageKind::Notch | DamageKind::Hole if to.value > from.value => return Ok(to),
            DamageKind::Soft => "that or more is accepted",
            DamageKind::Notch | DamageKind::Hole => "more than that is accepted",
        };
        let why = format!("it begins at {}: {accepted}", self.units.length(from.value));
        self.holds(field, &to.typed, Some(why))?;
        Ok(to)
    }
}
