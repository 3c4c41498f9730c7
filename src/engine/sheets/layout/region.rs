//! The floor to be covered: an outline less its holes, clipped to bands and cells.
//!
//! Everything is exact; a bounding rectangle is rounded outward to whole sixteenths.

use super::ratio::Ratio;

/// A corner, in sixteenths.
pub type Corner = (i32, i32);

/// A wall that is not along y, from left to right.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Wall {
    left: Corner,
    right: Corner,
}

/// An outline less its holes.
#[derive(Debug, Clone)]
pub struct Region {
    walls: Vec<Wall>,
    /// Where a wall begins or ends, in order, each once.
    corners_x: Vec<i32>,
    /// The lowest and highest y of the outline.
    pub y: (i32, i32),
    /// The y of every corner, in order, each once.
    pub corners_y: Vec<i32>,
}

/// The part of a region between two levels, cut into slabs that have no corner inside.
#[derive(Debug, Clone)]
pub struct Band {
    /// From here.
    pub low: i32,
    /// To here.
    pub high: i32,
    slabs: Vec<Slab>,
}

#[derive(Debug, Clone)]
struct Slab {
    from: Ratio,
    to: Ratio,
    strips: Vec<Strip>,
}

/// What lies between two walls, or a wall and the band's edge, over a slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Strip {
    low: Side,
    high: Side,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    Level(i32),
    Wall(Wall),
}

/// For each slab from where to where, and each of its strips: the levels of the walls
/// below and above it, none for the band's own.
pub type Shape = Vec<(i32, i32, Vec<(Option<i32>, Option<i32>)>)>;

/// A connected part of a cell: one piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// The lower left corner of its bounding rectangle, in the room.
    pub at: Corner,
    /// The size of its bounding rectangle along x.
    pub width: i32,
    /// The size of its bounding rectangle along y.
    pub height: i32,
    /// How much of its own outline lies inside that rectangle.
    pub inside_cut: f64,
}

/// Twice what a ring of corners encloses; negative when it runs the other way round.
pub fn twice_the_area(ring: &[Corner]) -> i64 {
    let pairs = ring.iter().zip(ring.iter().cycle().skip(1));
    pairs.map(|(a, b)| i64::from(a.0) * i64::from(b.1) - i64::from(a.1) * i64::from(b.0)).sum()
}

/// A strip of a part, in the room: `x` from and to, `low` and `high` at both.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trapezoid {
    pub slab: usize,
    pub x: (Ratio, Ratio),
    pub low: (Ratio, Ratio),
    pub high: (Ratio, Ratio),
}

impl Wall {
    /// How high it is at an x on it.
    fn at(&self, x: Ratio) -> Ratio {
        let ((xa, ya), (xb, yb)) = (self.left, self.right);
        if ya == yb {
            return Ratio::whole(ya);
        }
        let (run, rise) = (i64::from(xb - xa), i64::from(yb - ya));
        let along = x.over() - i64::from(xa) * x.under();
        Ratio::new(i64::from(ya) * x.under() * run + rise * along, x.under() * run)
    }

    /// Where it crosses a level, strictly between its ends.
    fn crosses(&self, y: i32) -> Option<Ratio> {
        let ((xa, ya), (xb, yb)) = (self.left, self.right);
        let between = ya.min(yb) < y && y < ya.max(yb);
        let (run, rise) = (i64::from(xb - xa), i64::from(yb - ya));
        between.then(|| Ratio::new(i64::from(xa) * rise + i64::from(y - ya) * run, rise))
    }

    fn spans(&self, from: Ratio, to: Ratio) -> bool {
        Ratio::whole(self.left.0) <= from && to <= Ratio::whole(self.right.0)
    }
}

impl Side {
    fn at(&self, x: Ratio) -> Ratio {
        match self {
            Self::Level(y) => Ratio::whole(*y),
            Self::Wall(wall) => wall.at(x),
        }
    }
}

impl Region {
    /// The region inside `outline` and outside `holes`, all of them simple polygons.
    pub fn new(outline: &[Corner], holes: &[Vec<Corner>]) -> Self {
        let rings = || std::iter::once(outline).chain(holes.iter().map(Vec::as_slice));
        let pairs = rings().flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
        let walls = pairs
            .filter(|(from, to)| from.0 != to.0)
            .map(|(from, to)| Wall { left: *from.min(to), right: *from.max(to) })
            .collect();
        let sorted = |values: Vec<i32>| {
            let mut values = values;
            values.sort_unstable();
            values.dedup();
            values
        };
        let corners_x = sorted(rings().flatten().map(|corner| corner.0).collect());
        let corners_y = sorted(rings().flatten().map(|corner| corner.1).collect());
        let low = outline.iter().map(|corner| corner.1).min().unwrap_or_default();
        let high = outline.iter().map(|corner| corner.1).max().unwrap_or_default();
        Self { walls, corners_x, y: (low, high), corners_y }
    }

    /// Do all walls run along x or y?
    pub fn is_square(&self) -> bool {
        self.walls.iter().all(|wall| wall.left.1 == wall.right.1)
    }

    /// The part between two levels.
    pub fn band(&self, low: i32, high: i32) -> Band {
        let mut breaks: Vec<_> = self.corners_x.iter().map(|x| Ratio::whole(*x)).collect();
        breaks.extend(self.walls.iter().flat_map(|wall| [wall.crosses(low), wall.crosses(high)]).flatten());
        breaks.sort_unstable();
        breaks.dedup();
        let ends = breaks.iter().zip(breaks.iter().skip(1));
        let slabs = ends.map(|(from, to)| self.slab(*from, *to, low, high)).collect();
        Band { low, high, slabs }
    }

    fn slab(&self, from: Ratio, to: Ratio, low: i32, high: i32) -> Slab {
        let spanning = self.walls.iter().filter(|wall| wall.spans(from, to));
        let mut heights: Vec<_> = spanning.map(|wall| (wall.at(from), wall.at(to), *wall)).collect();
        heights.sort_unstable_by_key(|(left, right, _)| (*left, *right));
        // No wall crosses a level within the slab, so two ends say on which side it is.
        let (floor, ceiling) = (Ratio::whole(low), Ratio::whole(high));
        let strips = heights.chunks_exact(2).filter_map(|pair| {
            let [(ll, lr, lower), (hl, hr, upper)] = pair else { return None };
            if (*hl <= floor && *hr <= floor) || (*ll >= ceiling && *lr >= ceiling) || (ll == hl && lr == hr) {
                return None;
            }
            let is_below = *ll <= floor && *lr <= floor;
            let is_above = *hl >= ceiling && *hr >= ceiling;
            Some(Strip {
                low: if is_below { Side::Level(low) } else { Side::Wall(*lower) },
                high: if is_above { Side::Level(high) } else { Side::Wall(*upper) },
            })
        });
        Slab { from, to, strips: strips.collect() }
    }
}

impl Band {
    /// The stretches of x that it covers, each rounded outward.
    pub fn runs(&self) -> Vec<(i32, i32)> {
        let mut runs: Vec<(Ratio, Ratio)> = Vec::new();
        for slab in self.slabs.iter().filter(|slab| !slab.strips.is_empty()) {
            match runs.last_mut() {
                Some(last) if last.1 == slab.from => last.1 = slab.to,
                _ => runs.push((slab.from, slab.to)),
            }
        }
        runs.iter().map(|(from, to)| (from.floor(), to.ceil())).collect()
    }

    /// What makes two bands of a square region cut alike wherever their levels are:
    /// which walls bound which strips, the band's own levels left open.
    pub fn shape(&self) -> Shape {
        let level = |side: &Side| match side {
            Side::Level(_) => None,
            Side::Wall(wall) => Some(wall.left.1),
        };
        let strips = |slab: &Slab| slab.strips.iter().map(|strip| (level(&strip.low), level(&strip.high))).collect();
        self.slabs.iter().map(|slab| (slab.from.floor(), slab.to.ceil(), strips(slab))).collect()
    }

    /// The connected parts between two x's.
    pub fn parts(&self, from: i32, to: i32) -> Vec<Part> {
        self.connected(from, to).iter().map(|part| measure(part)).collect()
    }

    /// The connected parts between two x's, strip by strip.
    pub fn connected(&self, from: i32, to: i32) -> Vec<Vec<Trapezoid>> {
        let mut parts: Vec<Vec<Trapezoid>> = Vec::new();
        for next in self.trapezoids(from, to) {
            let (touching, apart): (Vec<_>, Vec<_>) =
                parts.into_iter().partition(|part| part.iter().any(|before| are_joined(before, &next)));
            parts = apart;
            let mut joined: Vec<_> = touching.into_iter().flatten().collect();
            joined.push(next);
            parts.push(joined);
        }
        parts
    }

    fn trapezoids(&self, from: i32, to: i32) -> impl Iterator<Item = Trapezoid> {
        let (from, to) = (Ratio::whole(from), Ratio::whole(to));
        let inside = self.slabs.iter().enumerate().filter(move |(_, slab)| slab.from < to && slab.to > from);
        inside.flat_map(move |(at, slab)| {
            let x = (slab.from.max(from), slab.to.min(to));
            let ends = move |side: &Side| (side.at(x.0), side.at(x.1));
            slab.strips.iter().map(move |strip| Trapezoid {
                slab: at,
                x,
                low: ends(&strip.low),
                high: ends(&strip.high),
            })
        })
    }
}

/// Do two strips of neighbouring slabs share more than a point?
fn are_joined(left: &Trapezoid, right: &Trapezoid) -> bool {
    left.slab + 1 == right.slab && left.high.1.min(right.high.0) > left.low.1.max(right.low.0)
}

/// A connected part and its bounding rectangle.
pub fn measure(part: &[Trapezoid]) -> Part {
    let least = |values: &mut dyn Iterator<Item = Ratio>| values.min().unwrap_or(Ratio::whole(0));
    let most = |values: &mut dyn Iterator<Item = Ratio>| values.max().unwrap_or(Ratio::whole(0));
    let left = least(&mut part.iter().map(|t| t.x.0));
    let right = most(&mut part.iter().map(|t| t.x.1));
    let low = least(&mut part.iter().map(|t| t.low.0.min(t.low.1)));
    let high = most(&mut part.iter().map(|t| t.high.0.max(t.high.1)));
    Part {
        at: (left.floor(), low.floor()),
        width: right.ceil() - left.floor(),
        height: high.ceil() - low.floor(),
        inside_cut: sloping_cuts(part, low, high) + upright_cuts(part, left, right),
    }
}

/// The outline between a part's strips and the edges of its rectangle along x.
fn sloping_cuts(part: &[Trapezoid], low: Ratio, high: Ratio) -> f64 {
    let length = |x: (Ratio, Ratio), y: (Ratio, Ratio), edge: Ratio| {
        let is_on_the_edge = y.0 == edge && y.1 == edge;
        let (run, rise) = (x.1.to_f64() - x.0.to_f64(), y.1.to_f64() - y.0.to_f64());
        if is_on_the_edge { 0.0 } else { libm::hypot(run, rise) }
    };
    part.iter().map(|t| length(t.x, t.low, low) + length(t.x, t.high, high)).sum()
}

/// The outline along y where one slab ends and the next begins.
fn upright_cuts(part: &[Trapezoid], left: Ratio, right: Ratio) -> f64 {
    let extent = |from: Ratio, to: Ratio| (to.to_f64() - from.to_f64()).max(0.0);
    let inner = |x: Ratio| x != left && x != right;
    let ends = part.iter().filter(|t| inner(t.x.1)).map(|t| extent(t.low.1, t.high.1));
    let starts = part.iter().filter(|t| inner(t.x.0)).map(|t| extent(t.low.0, t.high.0));
    let shared = part.iter().flat_map(|a| part.iter().map(move |b| (a, b))).filter(|(a, b)| a.slab + 1 == b.slab);
    let both = shared.map(|(a, b)| extent(a.low.1.max(b.low.0), a.high.1.min(b.high.0)));
    ends.chain(starts).sum::<f64>() - 2.0 * both.sum::<f64>()
}
