//! Each place that gives up, and each line that decides, from both sides.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests may fail loudly")]

mod bounds;
mod classes;
mod cuts;
mod ways;

use super::case::{Case, Request, Sheet};
use super::limits::Limits;
use super::scheme::{Kind, Scheme, Shape};

/// The usual rules on a floor of so many sixteenths, joists so far apart.
fn floor(width: i32, across: i32, apart: i32) -> Request {
    Request {
        outline: vec![(0, 0), (width, 0), (width, across), (0, across)],
        holes: Vec::new(),
        joists: (1..).map(|joist| joist * apart).take_while(|center| *center < width).collect(),
        joist_width: 24,
        sheet: Sheet { length: 1536, width: 768 },
        on_hand: Vec::new(),
        gap: 2,
        kerf: 2,
        min_rip: 384,
        min_bays: 2,
        stagger: 1,
    }
}

/// A floor that is only there for its sheets: so large, and so much for the saw.
fn sheets(length: i32, width: i32, kerf: i32) -> Case {
    let request = Request { sheet: Sheet { length, width }, kerf, ..floor(100, 100, 40) };
    let request = Request { min_rip: 1, gap: 0, ..request };
    Case::new(request).unwrap()
}

fn within(case: Case, limits: Limits) -> Case {
    Case { limits, ..case }
}

fn kinds(sizes: &[(i32, i32)]) -> Vec<Kind> {
    sizes.iter().map(|(width, height)| Kind { width: *width, height: *height }).collect()
}

/// A scheme that is only there for its kinds of pieces.
fn of_kinds(sizes: &[(i32, i32)]) -> Scheme {
    Scheme { levels: Vec::new(), kinds: kinds(sizes), shapes: Vec::<Shape>::new(), courses: Vec::new() }
}

/// Do pieces of these sizes come out of a rectangle, by every cut at every unit?
fn comes_out(pieces: &[(i32, i32)], length: i32, width: i32, kerf: i32) -> bool {
    let area = |along: i32, across: i32| (along + kerf) * (across + kerf);
    match pieces {
        [] => return true,
        _ if length <= 0 || width <= 0 => return false,
        [(along, across)] => return *along <= length && *across <= width,
        _ if pieces.iter().map(|(along, across)| area(*along, *across)).sum::<i32>() > area(length, width) => {
            return false;
        }
        _ => {}
    }
    (1..(1_u32 << pieces.len()) - 1).any(|set| {
        let side = |wanted: u32| {
            let of_side = pieces.iter().enumerate().filter(|(at, _)| set >> at & 1 == wanted);
            of_side.map(|(_, size)| *size).collect::<Vec<_>>()
        };
        let (one, other) = (side(1), side(0));
        (1..length).any(|at| comes_out(&one, at, width, kerf) && comes_out(&other, length - at - kerf, width, kerf))
            || (1..width)
                .any(|at| comes_out(&one, length, at, kerf) && comes_out(&other, length, width - at - kerf, kerf))
    })
}
