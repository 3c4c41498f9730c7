//! What is asked of a layout: the floor, the joists, the stock and the rules' sizes.

use super::limits::Limits;
use super::region::{Corner, Region};
use std::fmt;

/// How far from nought a coordinate may be: 8,192 in, more than any house. Exact
/// fractions of such coordinates fit their integers ([`super::ratio`]).
pub const FARTHEST: i32 = 1 << 17;

/// The most joists under one floor: a joint's place is one bit of 128.
pub const MOST_JOISTS: usize = 128;

/// The most pieces on hand that a layout is looked for with: each is a sheet more to try.
pub const MOST_ON_HAND: usize = 12;

/// The longest and the widest sheet, in sixteenths: 21 ft 4 in and 10 ft 8 in. What is cut
/// out of one is looked at length by length.
pub const LARGEST_SHEET: Sheet = Sheet { length: 1 << 12, width: 1 << 11 };

/// The most courses of a floor: 64 of 4 ft are 256 ft.
pub const MOST_COURSES: i32 = 64;

/// The most corners that an outline and its holes have together.
pub const MOST_CORNERS: usize = 256;

/// A layout to be found, as asked. Lengths are whole sixteenths of an inch; `x` runs
/// along the sheets' strong axis, joists along `y`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Request {
    /// The floor's corners in order, a simple polygon.
    pub outline: Vec<Corner>,
    /// What is not covered: simple polygons inside the outline, touching nothing.
    pub holes: Vec<Vec<Corner>>,
    /// The joists' centers along `x`.
    pub joists: Vec<i32>,
    /// How thick a joist is.
    pub joist_width: i32,
    /// The sheets.
    pub sheet: Sheet,
    /// Parts of sheets that are there already and count for none, none larger than a sheet.
    pub on_hand: Vec<Sheet>,
    /// Between any two pieces; even, so that half of it is whole.
    pub gap: i32,
    /// What the saw takes.
    pub kerf: i32,
    /// The narrowest first or last course.
    pub min_rip: i32,
    /// The fewest bays that a piece spans.
    pub min_bays: usize,
    /// How many joists apart the joints of neighbouring courses are, at least.
    pub stagger: usize,
}

/// A sheet's size in sixteenths.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Sheet {
    /// Along the strong axis.
    pub length: i32,
    /// Across it.
    pub width: i32,
}

/// A request that can be worked on.
#[derive(Debug, Clone)]
pub struct Case {
    /// What was asked, the joists in order.
    pub asked: Request,
    /// The floor to be covered.
    pub region: Region,
    /// How far a search for it goes.
    pub limits: Limits,
}

/// What keeps a request from being worked on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fault {
    /// A polygon needs three corners.
    TooFewCorners {
        /// How many there are.
        corners: usize,
    },
    /// Two sides of a polygon, or of two, meet where they should not.
    Crossing {
        /// A corner of one of them.
        near: Corner,
    },
    /// A coordinate farther from nought than [`FARTHEST`].
    TooFar {
        /// The coordinate.
        at: i32,
    },
    /// More corners than [`MOST_CORNERS`].
    TooManyCorners {
        /// How many there are.
        corners: usize,
    },
    /// More courses than [`MOST_COURSES`].
    TooManyCourses {
        /// How far the floor reaches across them.
        across: i32,
        /// How far would do.
        most: i32,
    },
    /// More joists than [`MOST_JOISTS`].
    TooManyJoists {
        /// How many there are.
        joists: usize,
    },
    /// More pieces on hand than [`MOST_ON_HAND`].
    TooManyOnHand {
        /// How many there are.
        pieces: usize,
    },
    /// Two joists at one place.
    JoistTwice {
        /// Their center.
        at: i32,
    },
    /// A size out of its range.
    Size {
        /// Which one.
        what: &'static str,
        /// What it is.
        is: i32,
        /// The least that would do.
        least: i32,
        /// The most that would do.
        most: i32,
    },
    /// A gap of an odd number of sixteenths has no middle.
    OddGap {
        /// The gap.
        gap: i32,
    },
}

impl Case {
    /// The request, ready to be worked on; else everything that is wrong with it.
    pub fn new(mut asked: Request) -> Result<Self, Vec<Fault>> {
        asked.joists.sort_unstable();
        let faults = faults(&asked);
        if !faults.is_empty() {
            return Err(faults);
        }
        let region = Region::new(&asked.outline, &asked.holes);
        Ok(Self { asked, region, limits: Limits::USUAL })
    }

    /// What pieces are cut from: what is on hand, one by one, and then sheet after sheet.
    pub fn blank(&self, number: usize) -> Sheet {
        self.asked.on_hand.get(number).copied().unwrap_or(self.asked.sheet)
    }
}

impl Sheet {
    /// Its size with a kerf more each way, after which cuts take nothing.
    pub const fn grown(self, kerf: i32) -> (i32, i32) {
        (self.length + kerf, self.width + kerf)
    }
}

fn faults(asked: &Request) -> Vec<Fault> {
    let mut faults = sizes(asked);
    let rings = || std::iter::once(&asked.outline).chain(&asked.holes);
    let few = rings().filter(|ring| ring.len() < 3).map(|ring| Fault::TooFewCorners { corners: ring.len() });
    faults.extend(few);
    let coordinates = rings().flatten().flat_map(|(x, y)| [*x, *y]).chain(asked.joists.iter().copied());
    let far = coordinates.filter(|at| !(-FARTHEST..=FARTHEST).contains(at));
    faults.extend(far.map(|at| Fault::TooFar { at }));
    if asked.joists.len() > MOST_JOISTS {
        faults.push(Fault::TooManyJoists { joists: asked.joists.len() });
    }
    if asked.on_hand.len() > MOST_ON_HAND {
        faults.push(Fault::TooManyOnHand { pieces: asked.on_hand.len() });
    }
    let corners = rings().map(Vec::len).sum();
    if corners > MOST_CORNERS {
        faults.push(Fault::TooManyCorners { corners });
    }
    let across = || asked.outline.iter().map(|corner| corner.1);
    let across = across().max().unwrap_or(0).saturating_sub(across().min().unwrap_or(0));
    let most = asked.sheet.width.saturating_mul(MOST_COURSES);
    if across > most && faults.is_empty() {
        faults.push(Fault::TooManyCourses { across, most });
    }
    let neighbours = asked.joists.iter().zip(asked.joists.iter().skip(1));
    faults.extend(neighbours.filter(|(a, b)| a == b).map(|(at, _)| Fault::JoistTwice { at: *at }));
    if faults.is_empty() {
        faults.extend(crossing(asked).map(|near| Fault::Crossing { near }));
    }
    faults
}

fn sizes(asked: &Request) -> Vec<Fault> {
    let Sheet { length, width } = asked.sheet;
    let ranges = [
        ("sheet length", length, 1, LARGEST_SHEET.length),
        ("sheet width", width, 1, LARGEST_SHEET.width),
        ("joist width", asked.joist_width, 0, FARTHEST),
        ("gap", asked.gap, 0, width),
        ("kerf", asked.kerf, 0, width),
        ("least rip", asked.min_rip, 1, width),
    ];
    let on_hand = asked.on_hand.iter().flat_map(|piece| {
        [("length of a piece on hand", piece.length, 1, length), ("width of a piece on hand", piece.width, 1, width)]
    });
    let out = ranges.into_iter().chain(on_hand).filter(|(_, is, least, most)| !(least..=most).contains(&is));
    let out = out.map(|(what, is, least, most)| Fault::Size { what, is, least, most });
    out.chain((asked.gap % 2 != 0).then_some(Fault::OddGap { gap: asked.gap })).collect()
}

/// A corner near which two sides meet that are not neighbours in one polygon, if any do.
fn crossing(asked: &Request) -> Option<Corner> {
    let rings = std::iter::once(&asked.outline).chain(&asked.holes);
    let sides: Vec<_> = rings
        .enumerate()
        .flat_map(|(ring, corners)| {
            let ends = corners.iter().zip(corners.iter().cycle().skip(1)).enumerate();
            ends.map(move |(at, (from, to))| (ring, at, corners.len(), *from, *to))
        })
        .collect();
    let pairs = sides.iter().enumerate().flat_map(|(n, a)| sides.iter().skip(n + 1).map(move |b| (a, b)));
    let neighbours = |a: usize, b: usize, of: usize| b == a + 1 || (a == 0 && b + 1 == of);
    let bad = |a: &(usize, usize, usize, Corner, Corner), b: &(usize, usize, usize, Corner, Corner)| {
        if a.0 == b.0 && neighbours(a.1, b.1, a.2) {
            // Neighbours share a corner; they may not fold back on one another.
            let (before, shared, after) = if b.1 == a.1 + 1 { (a.3, a.4, b.4) } else { (b.3, b.4, a.4) };
            return a.3 == a.4 || (turn(before, shared, after) == 0 && !is_ahead(before, shared, after));
        }
        meet((a.3, a.4), (b.3, b.4))
    };
    pairs.filter(|(a, b)| bad(a, b)).map(|(a, _)| a.3).next()
}

/// Twice the area of a triangle, with its sign.
fn turn(a: Corner, b: Corner, c: Corner) -> i64 {
    let across = |from: i32, to: i32| i64::from(to) - i64::from(from);
    across(a.0, b.0) * across(a.1, c.1) - across(a.1, b.1) * across(a.0, c.0)
}

/// Does a straight walk from `a` over `b` go on to `c`, and not back?
fn is_ahead(a: Corner, b: Corner, c: Corner) -> bool {
    let along = |from: Corner, to: Corner| (i64::from(to.0 - from.0), i64::from(to.1 - from.1));
    let (first, second) = (along(a, b), along(b, c));
    first.0 * second.0 + first.1 * second.1 > 0
}

/// Do two sides share a point?
fn meet(a: (Corner, Corner), b: (Corner, Corner)) -> bool {
    let within = |p: Corner, s: (Corner, Corner)| {
        let between = |v: i32, from: i32, to: i32| from.min(to) <= v && v <= from.max(to);
        turn(s.0, s.1, p) == 0 && between(p.0, s.0.0, s.1.0) && between(p.1, s.0.1, s.1.1)
    };
    let apart = |s: (Corner, Corner), p: Corner, q: Corner| turn(s.0, s.1, p).signum() * turn(s.0, s.1, q).signum() < 0;
    let touching = within(a.0, b) || within(a.1, b) || within(b.0, a) || within(b.1, a);
    touching || (apart(a, b.0, b.1) && apart(b, a.0, a.1))
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooFewCorners { corners } => write!(f, "an outline of {corners} corners; it takes three or more"),
            Self::Crossing { near: (x, y) } => {
                write!(f, "sides of the outline or of a hole meet near ({x}, {y}); they may not cross or touch")
            }
            Self::TooFar { at } => write!(f, "a coordinate of {at}; from -{FARTHEST} to {FARTHEST} sixteenths will do"),
            Self::TooManyCorners { corners } => write!(f, "{corners} corners; up to {MOST_CORNERS} will do"),
            Self::TooManyCourses { across, most } => {
                write!(f, "a floor of {across} sixteenths across its sheets; up to {most} will do")
            }
            Self::TooManyJoists { joists } => write!(f, "{joists} joists; up to {MOST_JOISTS} will do"),
            Self::TooManyOnHand { pieces } => write!(f, "{pieces} pieces on hand; up to {MOST_ON_HAND} will do"),
            Self::JoistTwice { at } => write!(f, "two joists at {at}; each needs a place of its own"),
            Self::Size { what, is, least, most } => {
                write!(f, "{what} of {is} sixteenths; from {least} to {most} will do")
            }
            Self::OddGap { gap } => write!(f, "gap of {gap} sixteenths; an even number has a middle"),
        }
    }
}
