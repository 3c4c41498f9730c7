//! What the sample says of its joists, its ground and its roof.
//!
//! The first load has no list of items: the sample says the words by itself.

use super::{Sample, label, length};
use crate::engine::framing::{Damage, DamageKind, Depth};
use crate::engine::particular::{Part, Particular, Value};
use crate::engine::place::{Face, JoistNumber};
use crate::engine::units::{Amount, Typed};

const fn joist(number: u16) -> Part {
    match JoistNumber::new(number) {
        Some(number) => Part::Joist(number),
        None => Part::Joists,
    }
}

/// Lengths under the house, bare ones in inches.
const MEASURED_UNDER: [(Part, &str, &str); 16] = [
    (Part::Joists, "breadth", "1 5/8"),
    (Part::Joists, "depth", "7 1/2"),
    (Part::Joists, "clear span", "9' 8\""),
    (Part::Joists, "bearing", "3 1/2"),
    (Part::House, "sister breadth", "1 1/2"),
    (Part::House, "sister depth", "9 1/4"),
    (Part::House, "ground length", "24'"),
    (Part::House, "ground width", "18'"),
    (Part::House, "girder to soil", "16"),
    (Part::House, "sill to ground", "6"),
    (Part::House, "access, short side", "18"),
    (Part::House, "access, long side", "24"),
    (Part::House, "eave", "24'"),
    (Part::House, "discharge", "8"),
    (Part::House, "ground fall", "2"),
    (Part::House, "tape on a roll", "100'"),
];

/// Soft spots and cuts: joist, what it is, from where to where, on which face, how deep.
const SPOTS_UNDER: [(u16, DamageKind, &str, &str, Face, &str); 3] = [
    (3, DamageKind::Soft, "6' 9\"", "9' 3\"", Face::LowerEdge, "1 1/4"),
    (4, DamageKind::Soft, "7' 5\"", "8' 9\"", Face::LowerEdge, "3/8"),
    (7, DamageKind::Notch, "0", "2 1/2", Face::LowerEdge, "2 1/4"),
];

/// Amounts of the house, in thousandths.
const STATED_UNDER: [(&str, &str, u32); 8] = [
    ("live load", "40", 40_000),
    ("dead load", "10", 10_000),
    ("piers", "4", 4_000),
    ("vent area", "50", 50_000),
    ("roof area", "420", 420_000),
    ("rain", "6.2", 6_200),
    ("downspout", "6", 6_000),
    ("fasteners in a box", "350", 350_000),
];

/// What was chosen, and what the stamps say.
const CHOSEN_UNDER: [(Part, &str, &str); 39] = [
    (Part::Joists, "member", "sawn lumber"),
    (Part::Joists, "bears on", "wood or metal"),
    (Part::Joists, "ends held", "rim joist"),
    (Part::Joists, "over the girder", "does not reach one"),
    (Part::Joists, "cuts", "none"),
    (joist(1), "awl", "stops everywhere"),
    (joist(2), "awl", "stops everywhere"),
    (joist(3), "awl", "goes in"),
    (joist(4), "awl", "goes in"),
    (joist(5), "awl", "stops everywhere"),
    (joist(7), "awl", "stops everywhere"),
    (joist(7), "cuts", "all logged"),
    (joist(8), "awl", "stops everywhere"),
    (joist(9), "awl", "stops everywhere"),
    (Part::RimJoist, "state", "sound"),
    (Part::Sill, "state", "sound"),
    (Part::Girder(1), "state", "sound"),
    (Part::Girder(1), "plies end", "it is one piece"),
    (Part::Pier(1), "state", "sound"),
    (Part::Pier(2), "state", "settled"),
    (Part::House, "girder near", "no"),
    (Part::House, "species", "Douglas fir-larch"),
    (Part::House, "grade", "#2"),
    (Part::House, "sister species", "Douglas fir-larch"),
    (Part::House, "sister grade", "#2"),
    (Part::House, "sister incised", "no"),
    (Part::House, "design values", "2013 and later"),
    (Part::House, "shoring in place", "no"),
    (Part::House, "sister lumber", "2 × 10 No. 2"),
    (Part::House, "plane", "high joist"),
    (Part::House, "covering", "wood, long fasteners"),
    (Part::House, "air", "vents"),
    (Part::House, "ground cover", "yes"),
    (Part::House, "vent ratio", "1/150"),
    (Part::House, "vents at corners", "yes"),
    (Part::House, "access", "floor"),
    (Part::House, "roof pitch", "4 to 5/12"),
    (Part::House, "gutter", "5 in K-style"),
    (Part::House, "incised", "no"),
];

impl Sample {
    /// What is under the house: joists that need something, bare ground to be covered,
    /// water that lands at the wall.
    pub(super) fn under_the_house(&mut self) {
        for (number, kind, from, to, face, depth) in SPOTS_UNDER {
            let [from, to] = [from, to].map(|along| Some(length(along)));
            let depth = Some(Depth::Is(length(depth)));
            self.add(Damage { from, to, face: Some(face), depth, ..Damage::new(joist(number), kind) });
        }
        for (of, what, typed) in MEASURED_UNDER {
            self.say(of, what, Value::Length(length(typed)));
        }
        for (what, typed, thousandths) in STATED_UNDER {
            self.say(Part::House, what, Value::Amount(Typed::new(typed, Amount::thousandths(thousandths))));
        }
        for (of, what, word) in CHOSEN_UNDER {
            self.say(of, what, Value::Words(label(word)));
        }
    }

    fn say(&mut self, of: Part, what: &str, is: Value) {
        self.add(Particular { of, what: label(what), is });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::entry::DeviceId;
    use crate::engine::job::{Book, Record};
    use crate::engine::particular::item_of;
    use crate::engine::sample::entries;

    #[test]
    fn everything_said_of_the_house_is_something_that_is_asked() {
        let book = Book::of(entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()));
        let said: Vec<_> = book.job().now.particulars().values().collect();
        assert_eq!(said.len(), MEASURED_UNDER.len() + STATED_UNDER.len() + CHOSEN_UNDER.len());
        for thing in said {
            let item = item_of(thing.value.what.as_str()).unwrap();
            assert!(item.allows(&thing.value.is), "{:?}", thing.value);
            if let Value::Amount(typed) = &thing.value.is {
                assert_eq!(Amount::parse(&typed.typed).unwrap().value, typed.value);
            }
        }
    }
}
