//! Holds the map's ranges and the forecast's to invented truths, and prints how often they
//! hold: `cargo run --release --example calibration -- [SET]`.
//!
//! `given`: of so many floors a range is told, because readings reach all but a little of the floor;
//! `inside`: the truth is between "at least" and "at most"; `wetter` and `drier`: it is over
//! or under both; `width`: the median; `off`: how far "about" is off, as a root mean square;
//! `readings`: the median of how many there were; `before`: the same floors by the method that was
//! replaced (`before.rs`). A forecast's range that begins with the last reading says that wood may
//! be there already, and so holds a day before it; how many those are is printed.
//!
//! Everything is weighed on set 1. Whatever is weighed after another set was looked at wants a set
//! that nobody has looked at: 2 is spent, and 3 was looked at once, when nothing was changed any
//! more. Their outputs are kept beside this file; that of 2 is of the map as it was before.
//!
//! Ends with 1 when a range holds the truth in fewer than nine of ten, or when too few ranges are
//! given to evenly spread readings.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a trial fails by panicking")]

mod before;
#[path = "../desk/mod.rs"]
mod desk;
mod drying;
mod fields;
mod map;

use drying::Outcome;
use fields::{Kind, Taken};
use map::{FIELDS, FOLLOWED, Next, Row};
use std::process::ExitCode;

fn main() -> ExitCode {
    let set: u64 = std::env::args().nth(1).and_then(|text| text.parse().ok()).unwrap_or(1);
    let part = std::env::args().nth(2).unwrap_or_default();
    let mut is_honest = true;
    println!("Invented floors and readings. Set {set}, {FIELDS} of each row; widths and errors in square feet.\n");
    if part != "next" && part != "ranges" {
        println!("When it is dry: the true day inside the forecast's range, one reading a visit");
        for visits in [2, 3, 4] {
            let outcome = Outcome::of(set, visits, FIELDS as usize);
            println!("  {visits} visits: {outcome}");
            is_honest &= outcome.is_honest();
        }
        println!();
    }
    if part != "next" && part != "drying" {
        println!("How much is wet: the truth inside \"at least\" to \"at most\"");
        for (kind, count) in Kind::ALL.into_iter().flat_map(|kind| [8, 12, 20].map(|count| (kind, count))) {
            let row = Row::of(set, kind, count, FIELDS);
            println!("  {:<18} {count:2} readings: {row}", kind.label());
            is_honest &= row.is_honest() && row.is_given(count);
        }
        println!("\nAs people read; and {FOLLOWED} of them then where the map says to, until it gives a range");
        for (kind, taken) in Kind::ALL.into_iter().flat_map(|kind| Taken::AS_PEOPLE_READ.map(|taken| (kind, taken))) {
            for count in [6, 9, 12] {
                let alone = Row::taken(set, kind, taken, count, false, FIELDS);
                let at_its_word = Row::taken(set, kind, taken, count, true, FOLLOWED);
                println!("  {:<18} {count:2} {:<17}: {alone}", kind.label(), taken.label());
                println!("  {:<38}: {at_its_word}", "   then as the map says");
                is_honest &= alone.is_honest() && at_its_word.is_honest();
            }
        }
    }
    if part != "ranges" && part != "drying" {
        println!("\nThe next reading, and one anywhere: how far \"about\" is off, and each spot's chance");
        let rows = Kind::ALL.into_iter().flat_map(|kind| [(kind, 8), (kind, 12)]);
        for (kind, count) in rows {
            println!("  {:<18} {count:2} readings: {}", kind.label(), Next::of(set, kind, count, FIELDS));
        }
    }
    if is_honest { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
