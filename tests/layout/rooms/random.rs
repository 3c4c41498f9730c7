//! Invented rooms, drawn by lot and the same every time: rectangles, rooms with a jog or two,
//! with something that stands in the floor, and any of those out of square.

use crate::drawn::{Dice, FOOT, out_of_square, request};
use duckboard::engine::sheets::layout::{Case, Corner, twice_the_area};

/// A square foot in square sixteenths.
const SQUARE_FOOT: i64 = (FOOT as i64) * (FOOT as i64);

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
