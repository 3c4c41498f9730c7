//! Invented rooms, drawn by lot and the same every time: rectangles, rooms with a jog or two,
//! with something that stands in the floor, and any of those out of square.

use duckboard::engine::sheets::layout::{Case, Corner, Request, Sheet, twice_the_area};

/// Sixteenths in a foot.
const FOOT: i32 = 192;
/// A square foot in square sixteenths.
const SQUARE_FOOT: i64 = (FOOT as i64) * (FOOT as i64);

/// Throws of one seed (a linear congruential generator, constants from memory).
pub struct Dice(u64);

impl Dice {
    pub const fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15).wrapping_add(0x1234_5678_9ABC_DEF1))
    }

    /// From `low` up to and including `high`.
    pub fn throw(&mut self, low: i32, high: i32) -> i32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let among = u64::from(high.abs_diff(low)) + 1;
        low + i32::try_from((self.0 >> 33) % among).unwrap_or(0)
    }
}

/// How far out of square a corner may be, in sixteenths: 13/16 in, as in an old house
/// (invented).
pub const OUT_OF_SQUARE: i32 = 13;

/// A room of so many square feet, from and to.
pub fn room(seed: u64, (least, most): (i32, i32)) -> Case {
    let mut dice = Dice::new(seed);
    loop {
        let sort = dice.throw(0, 9);
        let (outline, holes) = outline(&mut dice, sort, most);
        let holes_area: i64 = holes.iter().map(|hole| twice_the_area(hole).abs() / 2).sum();
        let area = twice_the_area(&outline).abs() / 2 - holes_area;
        let is_out_of_square = dice.throw(0, 9) < 3;
        let outline = if is_out_of_square { out_of_square(&mut dice, &outline) } else { outline };
        if !(i64::from(least) * SQUARE_FOOT..=i64::from(most) * SQUARE_FOOT).contains(&area) {
            continue;
        }
        if let Ok(case) = Case::new(request(&mut dice, outline, holes)) {
            return case;
        }
    }
}

/// Joists and sheets under an outline.
fn request(dice: &mut Dice, outline: Vec<Corner>, holes: Vec<Vec<Corner>>) -> Request {
    // 12, 16, 19.2 and 24 in on center, 16 the most often; first centers anywhere.
    let spacing = [192, 256, 256, 256, 256, 256, 307, 384][dice.throw(0, 7) as usize];
    let first = dice.throw(24, spacing);
    let far = outline.iter().map(|corner| corner.0).max().unwrap_or(0);
    let joists = (0..).map(|number| first + number * spacing).take_while(|center| *center < far).collect();
    Request {
        outline,
        holes,
        joists,
        joist_width: 24,
        sheet: Sheet { length: 8 * FOOT, width: 4 * FOOT },
        on_hand: Vec::new(),
        gap: 2,
        kerf: 2,
        min_rip: 2 * FOOT,
        min_bays: 2,
        stagger: 1,
    }
}

type Rings = (Vec<Corner>, Vec<Vec<Corner>>);

fn outline(dice: &mut Dice, sort: i32, square_feet: i32) -> Rings {
    // Sides that make rooms of about the size, no narrower than 6 ft.
    let most = (square_feet / 6).clamp(8, 60) * FOOT;
    let (x, y) = (dice.throw(6 * FOOT, most), dice.throw(6 * FOOT, most));
    let (along, across) = (dice.throw(FOOT, x - 3 * FOOT), dice.throw(FOOT, y - 3 * FOOT));
    let whole = vec![(0, 0), (x, 0), (x, y), (0, y)];
    match sort {
        // An L, either way up.
        4 => (vec![(0, 0), (x, 0), (x, y - across), (x - along, y - across), (x - along, y), (0, y)], Vec::new()),
        5 => (vec![(along, 0), (x, 0), (x, y), (0, y), (0, across), (along, across)], Vec::new()),
        // A T: a part at each end is left out.
        6 => {
            let (left, right) = (along / 2, x - along / 2);
            let low = y - across;
            let t = [(0, 0), (x, 0), (x, low), (right, low), (right, y), (left, y), (left, low), (0, low)];
            (t.to_vec(), Vec::new())
        }
        // A U.
        7 => {
            let (left, right) = ((x - along) / 2, (x + along) / 2);
            let low = y - across;
            let u = [(0, 0), (x, 0), (x, y), (right, y), (right, low), (left, low), (left, y), (0, y)];
            (u.to_vec(), Vec::new())
        }
        // Something stands in the floor.
        8 => {
            let (wide, deep) = (along.min(4 * FOOT), across.min(3 * FOOT));
            let (left, low) = (dice.throw(FOOT, x - wide - FOOT), dice.throw(FOOT, y - deep - FOOT));
            let hole = vec![(left, low), (left + wide, low), (left + wide, low + deep), (left, low + deep)];
            (whole, vec![hole])
        }
        // A corner cut off at a slant.
        9 => (vec![(0, 0), (x, 0), (x, y - across), (x - along, y), (0, y)], Vec::new()),
        _ => (whole, Vec::new()),
    }
}

/// Every corner moved a little.
pub fn out_of_square(dice: &mut Dice, outline: &[Corner]) -> Vec<Corner> {
    let mut moved = |at: i32| at + dice.throw(-OUT_OF_SQUARE, OUT_OF_SQUARE);
    outline.iter().map(|(x, y)| (moved(*x), moved(*y))).collect()
}

/// Large rooms by name: up to 2,500 sq ft, and some that nobody has. Some have corners that
/// are all off, some more corners than a house has, some are laid of much that is on hand.
pub fn large() -> Vec<(&'static str, Case)> {
    let plain = |name, outline| (name, outline, false, 0);
    let rooms = [
        ("25 x 25 ft, corners off", rectangle(25, 25), true, 0),
        ("24 x 20 ft, corners off", rectangle(24, 20), true, 0),
        plain("L of 2,200 sq ft", l(60, 50, 40, 20)),
        ("L of 2,200 sq ft, corners off", l(60, 50, 40, 20), true, 0),
        plain("50 x 50 ft", rectangle(50, 50)),
        ("50 x 50 ft, corners off", rectangle(50, 50), true, 0),
        ("30 x 30 ft, 12 pieces on hand", rectangle(30, 30), false, 12),
        ("25 x 25 ft, corners off, 12 pieces on hand", rectangle(25, 25), true, 12),
        plain("stair of 30 steps", stair(30, 19)),
        ("stair of 30 steps, 12 pieces on hand", stair(30, 19), false, 12),
        ("stair of 30 steps, corners off", stair(30, 19), true, 0),
        plain("stair of 100 steps", stair(100, 7)),
        ("stair of 100 steps, corners off, 12 pieces on hand", stair(100, 7), true, 12),
        plain("118 x 16 ft", rectangle(118, 16)),
        ("16 x 118 ft, corners off", rectangle(16, 118), true, 0),
        ("161 x 118 ft, corners off", rectangle(161, 118), true, 0),
        ("120 x 250 ft, corners off", rectangle(120, 250), true, 0),
    ];
    let case = |(name, outline, is_off, on_hand): (&'static str, Vec<Corner>, bool, i32)| {
        let mut dice = Dice::new(1);
        let outline = if is_off { out_of_square(&mut dice, &outline) } else { outline };
        let mut request = request(&mut dice, outline, Vec::new());
        let piece = |_| Sheet { length: dice.throw(2 * FOOT, 6 * FOOT), width: dice.throw(FOOT, 4 * FOOT) };
        request.on_hand = (0..on_hand).map(piece).collect();
        Some((name, Case::new(request).ok()?))
    };
    rooms.into_iter().filter_map(case).collect()
}

fn rectangle(x: i32, y: i32) -> Vec<Corner> {
    vec![(0, 0), (x * FOOT, 0), (x * FOOT, y * FOOT), (0, y * FOOT)]
}

/// So many feet each way, less a corner.
fn l(x: i32, y: i32, along: i32, across: i32) -> Vec<Corner> {
    let (right, low) = ((x - along) * FOOT, (y - across) * FOOT);
    vec![(0, 0), (x * FOOT, 0), (x * FOOT, low), (right, low), (right, y * FOOT), (0, y * FOOT)]
}

/// A triangle whose long side goes up in steps of so many inches.
fn stair(steps: i32, inches: i32) -> Vec<Corner> {
    let step = inches * 16;
    let far = steps * step;
    let corners = (0..steps).flat_map(|at| [(far - at * step, at * step), (far - at * step, (at + 1) * step)]);
    std::iter::once((0, 0)).chain(corners).chain([(0, far)]).collect()
}
