//! How often clean rooms are accused and wrong readings named, by how square the house is,
//! how large the blunder and how many diagonals there are. The rooms are invented.
//!
//! `cargo run --release --example outline -- [rooms] [first seed] [inches off, …]`
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "a harness may fail loudly")]

#[path = "../rooms.rs"]
mod rooms;
mod trial;

use duckboard::engine::survey::adjust::House;
use rooms::Shapes;
use std::ops::Range;
use trial::{Count, DIAGONALS, Kind, SQUARENESS, area_off, clean, spoiled};

/// Sizes of blunders in inches.
const BLUNDERS: [f64; 7] = [0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0];

fn main() {
    let mut args = std::env::args().skip(1);
    let rooms: u64 = args.next().map_or(300, |text| text.parse().unwrap());
    let first: u64 = args.next().map_or(0, |text| text.parse().unwrap());
    let sizes: Vec<f64> = args.map(|text| text.parse().unwrap()).collect();
    let sizes = if sizes.is_empty() { BLUNDERS.to_vec() } else { sizes };
    let seeds = first..first + rooms;
    println!("Invented rooms, seeds {} to {}: {rooms} in each cell.", seeds.start, seeds.end - 1);
    println!("Diagonals drawn by lot; \"half\" is half as many as corners. Tape within 1/16 in and 1 in 4,800.");
    for shapes in [Shapes::Rectangles, Shapes::All] {
        table(shapes, House::Unsaid, &sizes, &seeds);
    }
    for house in [House::Square, House::OutOfSquare] {
        println!("\n==== Told that the house is {}", house.label());
        table(Shapes::All, house, &[6.0, 12.0], &seeds);
    }
    println!(
        "\n==== The area with one reading 6 in off, two diagonals: median error with it, and without the likeliest"
    );
    for degrees in SQUARENESS {
        let (with, without) = area_off(degrees, 6.0, seeds.clone());
        println!("corners {degrees:4}°: {with:.2} % with it, {without:.2} % without");
    }
}

fn table(shapes: Shapes, house: House, sizes: &[f64], seeds: &Range<u64>) {
    println!("\n==== {}", shapes.label());
    println!("Clean rooms accused, of {}:", seeds.end - seeds.start);
    heading();
    for degrees in SQUARENESS {
        print!("corners {degrees:4}° ");
        for diagonals in DIAGONALS {
            print!("{:>16}", clean(Kind { shapes, degrees, diagonals, house }, seeds.clone()));
        }
        println!();
    }
    for size in sizes {
        println!("\nOne reading {size} in off: named among three at the most / alone / only others named:");
        heading();
        for degrees in SQUARENESS {
            print!("corners {degrees:4}° ");
            for diagonals in DIAGONALS {
                let kind = Kind { shapes, degrees, diagonals, house };
                let Count { named, alone, others } = spoiled(kind, *size, seeds.clone());
                print!("{:>16}", format!("{named} / {alone} / {others}"));
            }
            println!();
        }
    }
}

fn heading() {
    print!("diagonals     ");
    for diagonals in DIAGONALS {
        print!("{:>16}", diagonals.label());
    }
    println!();
}
