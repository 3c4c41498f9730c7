//! What particulars say, in the words that the calculations go by, and what each takes.

use crate::engine::framing::{Grade, LumberGroup, MemberType};
use crate::engine::units::tape::accepted;
use crate::engine::units::{Amount, Length};

/// Something that can be said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Item {
    /// The words that it is kept under. They never change: jobs hold them.
    pub what: &'static str,
    /// What a form asks.
    pub asks: &'static str,
    /// What is accepted.
    pub takes: Takes,
}

/// What an item takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Takes {
    /// A length in this range.
    Length {
        /// The least.
        least: Length,
        /// The most.
        most: Length,
    },
    /// An amount in this range, of this unit.
    Amount {
        /// The least, in thousandths.
        least: u32,
        /// The most, in whole ones.
        most: u32,
        /// What it counts.
        unit: &'static str,
    },
    /// One of these.
    OneOf(&'static [&'static str]),
    /// Any words.
    Words,
}

const fn length(what: &'static str, asks: &'static str, least: Length, most: Length) -> Item {
    Item { what, asks, takes: Takes::Length { least, most } }
}

const fn amount(what: &'static str, asks: &'static str, least: u32, most: u32, unit: &'static str) -> Item {
    Item { what, asks, takes: Takes::Amount { least, most, unit } }
}

const fn one_of(what: &'static str, asks: &'static str, words: &'static [&'static str]) -> Item {
    Item { what, asks, takes: Takes::OneOf(words) }
}

const fn words(what: &'static str, asks: &'static str) -> Item {
    Item { what, asks, takes: Takes::Words }
}

const YES_NO: &[&str] = &["yes", "no"];
const SIXTEENTH: Length = Length::sixty_fourths(4);

/// Across a joist.
pub const BREADTH: Item = length("breadth", "Breadth", Length::sixty_fourths(32), Length::inches(8));
/// From its lower edge to its upper.
pub const DEPTH: Item = length("depth", "Depth", Length::inches(2), Length::inches(24));
/// Between the faces of its supports.
pub const CLEAR_SPAN: Item = length("clear span", "Clear span", Length::inches(6), Length::feet(40));
/// What it rests on at its shorter end.
pub const BEARING: Item = length("bearing", "Bearing, the shorter end", Length::ZERO, Length::feet(2));
/// What its ends rest on.
pub const BEARS_ON: Item =
    one_of("bears on", "Bears on", &["wood or metal", "masonry", "hanger", "1x4 ribbon, nailed to studs"]);
/// How deep an awl goes in.
pub const SOFT_DEPTH: Item = length("soft depth", "Awl goes in", Length::ZERO, Length::feet(2));
/// How far along it does.
pub const SOFT_LENGTH: Item = length("soft length", "Soft along", Length::ZERO, Length::feet(40));
/// Where.
pub const SOFT_FACE: Item =
    one_of("soft face", "Soft at", &["upper edge", "lower edge", "near side", "far side", "end"]);
/// How deep it is notched.
pub const NOTCH: Item = length("notch depth", "Notch, depth", Length::ZERO, Length::feet(2));
/// Where.
pub const NOTCH_AT: Item = one_of("notch at", "Notch, where", &["end", "outer third", "middle third"]);
/// How long that is along it.
pub const NOTCH_LENGTH: Item = length("notch length", "Notch, length", Length::ZERO, Length::feet(10));
/// The widest hole.
pub const HOLE: Item = length("hole", "Widest hole", Length::ZERO, Length::feet(2));
/// From that to the nearest edge.
pub const HOLE_TO_EDGE: Item = length("hole to edge", "Hole to nearest edge", Length::ZERO, Length::feet(2));

/// What a joist is made as: the span and cut rules here hold for sawn lumber alone.
pub const MEMBER: Item = one_of("member", "What is it?", &MemberType::WORDS);
/// By whom the span of what is not sawn is allowed.
pub const SPAN_ALLOWED: Item =
    one_of("span allowed", "If not sawn: who allows its span?", &["its maker's table", "a designer", "nobody yet"]);
/// What keeps its ends from turning over.
pub const ENDS_HELD: Item =
    one_of("ends held", "Ends held upright by", &["rim joist", "blocking", "hanger", "nothing"]);
/// How its ends meet the next joist's over the girder.
pub const OVER_GIRDER: Item = one_of(
    "over the girder",
    "Over the girder it",
    &["goes through", "laps the next", "butts, tied", "butts, not tied", "does not reach one"],
);
/// Between the faces of the girder and of what carries it beyond, where it goes through.
pub const NEXT_SPAN: Item =
    length("next span", "Next clear span, past the girder", Length::inches(6), Length::feet(40));
/// How far it laps the next one.
pub const LAP_OF_JOISTS: Item = length("joist lap", "Lap over the girder", Length::ZERO, Length::feet(10));
/// What the awl did at both ends and in the middle.
pub const AWL: Item = one_of("awl", "Awl, both ends and the middle", &["stops everywhere", "goes in", "cannot reach"]);
/// Are all of its notches and holes in the log?
pub const CUTS: Item = one_of("cuts", "Notches and holes", &["none", "all logged", "cannot see"]);
/// What was done about it.
pub const DONE: Item =
    one_of("done", "Done about it", &["ends mended", "sistered", "replaced", "as the engineer says", "not yet"]);

/// What is asked of each joist.
pub const OF_JOIST: [Item; 14] = [
    MEMBER,
    BREADTH,
    DEPTH,
    CLEAR_SPAN,
    BEARING,
    BEARS_ON,
    ENDS_HELD,
    OVER_GIRDER,
    NEXT_SPAN,
    LAP_OF_JOISTS,
    AWL,
    CUTS,
    SPAN_ALLOWED,
    DONE,
];
/// What can be said of all joists at once.
pub const OF_JOISTS: [Item; 12] = [
    MEMBER,
    BREADTH,
    DEPTH,
    CLEAR_SPAN,
    BEARING,
    BEARS_ON,
    ENDS_HELD,
    OVER_GIRDER,
    NEXT_SPAN,
    LAP_OF_JOISTS,
    CUTS,
    SPAN_ALLOWED,
];
/// One spot of a joist, as logs of before format 1.5 say it. Nothing asks for it any more:
/// each spot is an entry of its own now.
pub const OF_JOIST_BEFORE: [Item; 8] =
    [SOFT_DEPTH, SOFT_LENGTH, SOFT_FACE, NOTCH, NOTCH_AT, NOTCH_LENGTH, HOLE, HOLE_TO_EDGE];

/// What a girder, a pier or a ledger is like.
pub const STATE: Item =
    one_of("state", "State", &["sound", "decayed", "cracked", "leaning", "settled", "loose", "cannot reach"]);
/// How many plies a built-up girder has.
pub const PLIES: Item = amount("plies", "Plies", 1_000, 8, "");
/// Where those end.
pub const PLIES_END: Item =
    one_of("plies end", "Its plies end", &["over piers", "between piers", "it is one piece", "cannot see"]);
/// What is asked of a girder.
pub const OF_GIRDER: [Item; 7] = [BREADTH, DEPTH, CLEAR_SPAN, PLIES, PLIES_END, STATE, DONE];
/// What is asked of a pier, a ledger, a rim joist or a sill.
pub const OF_SUPPORT: [Item; 2] = [STATE, DONE];
/// Is there a girder within one bay of what comes out?
pub const GIRDER_NEAR: Item = one_of("girder near", "A girder within one bay of what comes out", YES_NO);

/// The lumber's group.
pub const SPECIES: Item = one_of("species", "Species group, by stamp", LumberGroup::WORDS);
/// Its grade.
pub const GRADE: Item = one_of("grade", "Grade, by stamp", Grade::WORDS);
/// By whose design values.
pub const EDITION: Item = one_of("design values", "Design values of", &["2013 and later", "before 2013"]);
/// Were the old joists treated through incisions?
pub const INCISED: Item = one_of("incised", "Old joists, incised", YES_NO);
/// People and furniture: no floor of a dwelling is for less
/// ([`Source::LiveLoads`](crate::engine::sources::Source::LiveLoads)).
pub const LIVE_LOAD: Item = amount("live load", "Live load", 30_000, 200, "psf");
/// The floor itself.
pub const DEAD_LOAD: Item = amount("dead load", "Dead load", 1_000, 100, "psf");
/// Does something hold the floor while it is cut?
pub const SHORING: Item = one_of("shoring in place", "Temporary shoring in place", YES_NO);
/// Across an opening in the framing.
pub const HEADER_SPAN: Item =
    length("header span", "Longest header over a framed opening, span", SIXTEENTH, Length::feet(20));
/// From a header to the bearing.
pub const TAIL_JOIST: Item = length("tail joist", "Longest tail joist", SIXTEENTH, Length::feet(30));
/// From that header to the nearer bearing of the joists that carry its ends.
pub const HEADER_TO_BEARING: Item =
    length("header to bearing", "Header farthest from a bearing, to the nearer one", Length::ZERO, Length::feet(30));
/// Are the joists at both ends of a header doubled?
pub const TRIMMERS: Item = one_of("trimmers", "Joists at the header's ends", &["single", "doubled"]);
/// How joists are sistered and replaced: as lumber is asked for.
pub const SISTER_LUMBER: Item = words("sister lumber", "Sisters are cut of");
/// Across a sister.
pub const SISTER_BREADTH: Item =
    length("sister breadth", "Sister, breadth", Length::sixty_fourths(32), Length::inches(8));
/// From a sister's lower edge to its upper.
pub const SISTER_DEPTH: Item = length("sister depth", "Sister, depth", Length::inches(2), Length::inches(24));
/// What sisters and new joists are stamped.
pub const SISTER_SPECIES: Item =
    one_of("sister species", "Sisters and new joists, species by stamp", LumberGroup::WORDS);
/// Their grade.
pub const SISTER_GRADE: Item = one_of("sister grade", "Sisters and new joists, grade by stamp", Grade::WORDS);
/// Are they treated through incisions?
pub const SISTER_INCISED: Item = one_of("sister incised", "Sisters and new joists, incised", YES_NO);
/// What is asked of the framing as a whole.
pub const OF_FRAMING: [Item; 18] = [
    SPECIES,
    GRADE,
    EDITION,
    INCISED,
    LIVE_LOAD,
    DEAD_LOAD,
    SHORING,
    GIRDER_NEAR,
    HEADER_SPAN,
    HEADER_TO_BEARING,
    TRIMMERS,
    TAIL_JOIST,
    SISTER_LUMBER,
    SISTER_BREADTH,
    SISTER_DEPTH,
    SISTER_SPECIES,
    SISTER_GRADE,
    SISTER_INCISED,
];

/// How square the house's corners are.
pub const CORNERS: Item = one_of("corners", "Is the house out of square?", &["square", "out of square"]);
/// What joists are brought to.
pub const PLANE: Item = one_of("plane", "Bring joists to", &["high joist", "level at a mark", "best fit"]);
/// How far below the beam that mark is.
pub const DATUM: Item = length("mark below the beam", "Mark below the beam", Length::ZERO, Length::feet(20));
/// What the floor is to carry.
pub const COVERING: Item = one_of(
    "covering",
    "Floor covering",
    &["wood, long fasteners", "wood, glued or short fasteners", "tile under 15 in", "tile 15 in and over"],
);
/// What is asked of levels.
pub const OF_LEVELS: [Item; 3] = [PLANE, DATUM, COVERING];

/// How the space under the house gets its air.
pub const AIR_WAY: Item =
    one_of("air", "Air under the house", &["vents", "exhaust fan", "supply from the house", "dehumidifier"]);
/// The ground's longer side.
pub const GROUND_LENGTH: Item = length("ground length", "Ground, longer way", Length::FOOT, Length::feet(300));
/// Its shorter side.
pub const GROUND_WIDTH: Item = length("ground width", "Ground, shorter way", Length::FOOT, Length::feet(300));
/// Is the ground to be covered?
pub const COVERED: Item = one_of("ground cover", "Cover the ground", YES_NO);
/// How far strips of the cover lap.
pub const LAP: Item = one_of("cover lap", "Laps of", &["6 in", "12 in, radon rule"]);
/// How far it goes up walls and piers.
pub const TURN_UP: Item = length("cover turn-up", "Up the walls", Length::ZERO, Length::feet(4));
/// A roll's width.
pub const ROLL_WIDTH: Item = length("roll width", "Roll, width", Length::FOOT, Length::feet(60));
/// A roll's length.
pub const ROLL_LENGTH: Item = length("roll length", "Roll, length", Length::feet(5), Length::feet(1000));
/// Piers that the cover goes around.
pub const PIERS: Item = amount("piers", "Piers standing in it", 0, 500, "");
/// A vent opening's part of the floor.
pub const VENT_RATIO: Item = one_of("vent ratio", "Vents, net free area", &["1/150", "1/300", "1/1500 over a cover"]);
/// What one vent lets through, by its label.
pub const VENT_AREA: Item = amount("vent area", "One vent, by its label", 1_000, 1_000, "sq in");
/// Is a vent to stand near each corner?
pub const VENT_CORNERS: Item = one_of("vents at corners", "One within 3 ft of each corner", YES_NO);
/// Has the air of a fan or a supply a way from or to the rooms?
pub const AIR_PATH: Item = one_of("air path", "Duct or grille between it and the rooms", YES_NO);
/// Are the walls around a space without vents insulated?
pub const WALLS_INSULATED: Item = one_of("walls insulated", "Outer walls below insulated", YES_NO);
/// Does anything burn fuel, whose flue gas a fan could pull back?
pub const FUEL_BURNED: Item =
    one_of("fuel burned", "Fuel burned in the house or below", &["none", "yes", "yes, draft tested"]);
/// Under the girders.
pub const GIRDER_CLEARANCE: Item = length("girder to soil", "Lowest girder to soil", Length::ZERO, Length::feet(20));
/// Under posts.
pub const POST_CLEARANCE: Item = length("post to soil", "Lowest post end to soil", Length::ZERO, Length::feet(20));
/// Under framing that lies on the foundation.
pub const SILL_CLEARANCE: Item = length("sill to ground", "Sill to outside ground", Length::ZERO, Length::feet(20));
/// Where one gets in.
pub const ACCESS: Item = one_of("access", "Access through", &["floor", "wall"]);
/// Its shorter side.
pub const ACCESS_WIDTH: Item = length("access, short side", "Access, short side", Length::INCH, Length::feet(10));
/// Its longer side.
pub const ACCESS_LENGTH: Item = length("access, long side", "Access, long side", Length::INCH, Length::feet(10));
/// Do girders end in walls of masonry or concrete?
pub const GIRDER_ENDS: Item = one_of("girder ends", "Girder ends in outer walls", &["in masonry", "not in masonry"]);
/// What air they have there.
pub const GIRDER_END_AIR: Item =
    length("air at girder ends", "Least air around a girder end in masonry", Length::ZERO, Length::feet(1));
/// What is asked of the ground's cover.
pub const OF_COVER: [Item; 8] = [COVERED, GROUND_LENGTH, GROUND_WIDTH, LAP, TURN_UP, ROLL_WIDTH, ROLL_LENGTH, PIERS];
/// What is asked of the air over it.
pub const OF_AIR: [Item; 7] = [AIR_WAY, VENT_RATIO, VENT_AREA, VENT_CORNERS, AIR_PATH, WALLS_INSULATED, FUEL_BURNED];
/// What is held to rules: wood to soil, the way in, and girder ends.
pub const OF_CLEARANCE: [Item; 8] = [
    GIRDER_CLEARANCE,
    POST_CLEARANCE,
    SILL_CLEARANCE,
    ACCESS,
    ACCESS_WIDTH,
    ACCESS_LENGTH,
    GIRDER_ENDS,
    GIRDER_END_AIR,
];

/// The roof's plan area that drains to this wall.
pub const ROOF_AREA: Item = amount("roof area", "Roof, plan area", 1_000, 100_000, "sq ft");
/// How steep it is, in inches to the foot.
pub const PITCH: Item =
    one_of("roof pitch", "Pitch", &["flat to 3/12", "4 to 5/12", "6 to 8/12", "9 to 11/12", "12/12 or more"]);
/// The hardest rain to be led away.
pub const RAIN: Item = amount("rain", "Design rain, 5 minutes", 100, 30, "inches an hour");
/// The gutter.
pub const GUTTER: Item =
    one_of("gutter", "Gutter", &["5 in K-style", "6 in K-style", "5 in half-round", "6 in half-round"]);
/// What it takes by its own table, where that differs.
pub const GUTTER_TAKES: Item =
    amount("gutter takes", "Gutter takes, by its own table", 100_000, 100_000, "sq ft at 1 in an hour");
/// How long the eave is.
pub const EAVE: Item = length("eave", "Eave to drain", Length::FOOT, Length::feet(300));
/// One downspout's section.
pub const DOWNSPOUT: Item = amount("downspout", "One downspout", 1_000, 100, "sq in");
/// Where the water lands.
pub const DISCHARGE: Item = length("discharge", "Water lands from the wall", Length::ZERO, Length::feet(200));
/// How the ground falls.
pub const FALL: Item = length("ground fall", "Ground falls, in the first 10 ft", Length::ZERO, Length::feet(10));
/// What is asked of the roof's water.
pub const OF_ROOF: [Item; 9] = [ROOF_AREA, PITCH, RAIN, GUTTER, GUTTER_TAKES, EAVE, DOWNSPOUT, DISCHARGE, FALL];

/// What is added to a line for waste.
pub const WASTE: Item = amount("waste", "Waste", 0, 100, "%");
/// What is there already.
pub const ON_HAND: Item = amount("on hand", "On hand", 0, 1_000_000, "");
/// What the office pays for one, in its own money.
pub const PRICE: Item = amount("price", "Price for one", 0, 1_000_000, "");
/// What is asked of each line of the order list.
pub const OF_ORDER: [Item; 2] = [ON_HAND, WASTE];
/// Fasteners in a box.
pub const BOX: Item = amount("fasteners in a box", "Fasteners in a box", 1_000, 100_000, "pieces");
/// Tape on a roll.
pub const TAPE_ROLL: Item = length("tape on a roll", "Seam tape on a roll", Length::FOOT, Length::feet(1000));
/// What is asked for the order list as a whole.
pub const OF_ORDERS: [Item; 2] = [BOX, TAPE_ROLL];

/// Every item there is.
pub fn all() -> impl Iterator<Item = Item> {
    let of_joists = OF_JOIST.into_iter().chain(OF_JOIST_BEFORE).chain([PLIES, PLIES_END, STATE, CORNERS]);
    of_joists
        .chain(OF_FRAMING)
        .chain(OF_LEVELS)
        .chain(OF_COVER)
        .chain(OF_AIR)
        .chain(OF_CLEARANCE)
        .chain(OF_ROOF)
        .chain(OF_ORDER)
        .chain([PRICE])
        .chain(OF_ORDERS)
}

impl Item {
    /// What is accepted, in words.
    pub fn accepts(&self) -> String {
        match self.takes {
            Takes::Length { least, most } => accepted(least, most),
            Takes::Amount { least, most, unit } => {
                let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
                format!("{} to {most}{unit} is accepted", Amount::thousandths(least).shown())
            }
            Takes::OneOf(words) => format!("accepted are: {}", words.join("; ")),
            Takes::Words => "up to 80 characters are accepted".to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_items_are_kept_under_the_same_words() {
        let mut names: Vec<_> = all().map(|item| item.what).collect();
        names.sort_unstable();
        let count = names.len();
        names.dedup();
        assert_eq!(names.len(), count);
    }
}
