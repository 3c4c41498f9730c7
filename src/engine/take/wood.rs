//! What is read at a spot: the wood belongs to the place, not to the hand that reads it.

use super::draft::Draft;
use crate::engine::entry::Label;
use crate::engine::job::Job;
use crate::engine::moisture::{Material, Wood};
use crate::engine::place::{Element, Place, Position};

/// What is read at a spot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AtSpot {
    /// The wood.
    pub wood: Wood,
    /// Is it dry panel elsewhere in the house, that other readings are held against?
    pub reference: bool,
}

/// Wood of one kind by its place in the floor.
#[derive(PartialEq, Eq)]
enum Part {
    Framing,
    Subfloor,
    Finish,
}

impl Part {
    const fn of(element: Element) -> Self {
        match element {
            Element::Joist | Element::RimJoist | Element::Sill | Element::Girder => Self::Framing,
            Element::SubfloorBelow | Element::SubfloorAbove => Self::Subfloor,
            Element::FinishedFloor => Self::Finish,
        }
    }
}

impl AtSpot {
    /// What was said of this very spot; else what was read there last; else what was said or
    /// read last in this part of the floor. Framing begins as the draft has it; of a floor
    /// layer nothing is known before somebody says it.
    pub fn of(draft: &Draft, job: &Job) -> Self {
        let said = draft.wood_at.as_ref();
        if said.is_some_and(|at| at.same_spot(&draft.spot)) {
            return Self { wood: draft.wood, reference: draft.reference };
        }
        let part = Part::of(draft.spot.element);
        let read_where = |is: &dyn Fn(&Place) -> bool| {
            let mut readings = job.now.readings().values().rev();
            let there = readings
                .find(|reading| job.now.places().get(&reading.value.place).is_some_and(|place| is(place.value)));
            there.map(|reading| Self { wood: reading.value.wood, reference: reading.value.reference })
        };
        if let Some(before) = read_where(&|place| place.same_spot(&draft.spot)) {
            return before;
        }
        let said_of_part = said.filter(|at| Part::of(at.element) == part).map(|_| draft.wood);
        let last = || read_where(&|place| Part::of(place.element) == part).map(|last| last.wood);
        let wood = said_of_part.or_else(last).unwrap_or_else(|| match (part, said) {
            (Part::Framing, None) => draft.wood,
            (Part::Framing, Some(_)) => Draft::default().wood,
            (Part::Subfloor | Part::Finish, _) => Wood { material: Material::Unknown, species: None },
        });
        Self { wood, reference: false }
    }

    /// What is read, in a few words: "Douglas-fir", "dry plywood elsewhere".
    pub fn words(self) -> String {
        let wood = self.wood.words();
        if self.reference { format!("dry {wood} elsewhere") } else { wood }
    }
}

impl Draft {
    /// The draft with the wood at its spot said.
    #[must_use]
    pub fn reading_wood(&self, wood: Wood) -> Self {
        Self { wood, reference: false, wood_at: Some(self.spot.clone()), ..self.clone() }
    }

    /// The draft at dry panel of a kind, somewhere else in the house: readings on that kind
    /// are held against it. After its reading the spot is where it was.
    #[must_use]
    pub fn reading_reference(&self, material: Material) -> Self {
        let wood = Wood { material, species: None };
        let spot = Place {
            element: Element::SubfloorBelow,
            position: Position::Named,
            face: None,
            height: None,
            chalk: Some(Label::fitted(&format!("dry {}, elsewhere", material.label()))),
        };
        let back_to = self.back_to.clone().or_else(|| Some(self.spot.clone()));
        Self { wood, reference: true, wood_at: Some(spot.clone()), spot, back_to, ..self.clone() }
    }
}
