//! The computed spans of the reference, all of them: a regression and no check. Printed
//! cells are checked in `tests/framing.rs`.

use duckboard::engine::framing::{DesignValues, Edition, Governs, Grade, Loads, LumberGroup, Section, Service, span};
use duckboard::engine::units::Length;

/// Live and dead load, group, grade, spacing in tenths of an inch, then a span for each
/// depth of 5 1/2, 7 1/4, 9 1/4 and 11 1/4 in: feet, inches, and what governs.
const COMPUTED: &str = include_str!("../fixtures/framing/computed_spans.txt");

const DEPTHS: [i32; 4] = [352, 464, 592, 720];

fn group(name: &str) -> LumberGroup {
    match name {
        "DFL" => LumberGroup::DouglasFirLarch,
        "HF" => LumberGroup::HemFir,
        "SYP" => LumberGroup::SouthernPine,
        "SPF" => LumberGroup::SprucePineFir,
        other => panic!("{other}"),
    }
}

fn grade(name: &str) -> Grade {
    match name {
        "#1" => Grade::One,
        "#2" => Grade::Two,
        "#3" => Grade::Three,
        other => panic!("{other}"),
    }
}

#[test]
fn spans_come_out_as_they_did() {
    let mut cells = 0;
    for row in COMPUTED.lines().filter(|row| !row.starts_with("//")) {
        let parts: Vec<_> = row.split_whitespace().collect();
        let [live, dead, name, of_grade, spacing] = parts[..5] else { panic!("{row}") };
        let loads = Loads { live: live.parse().unwrap(), dead: dead.parse().unwrap() };
        let spacing = Length::from_inches(spacing.parse().unwrap());
        for (depth, printed) in DEPTHS.into_iter().zip(&parts[5..]) {
            let section = Section { breadth: Length::sixty_fourths(96), depth: Length::sixty_fourths(depth) };
            let values = DesignValues::of(group(name), grade(of_grade), section.depth, Edition::Since2013).unwrap();
            let spans = span(section, values, spacing, loads, Service::default()).value;
            let (length, governs) = printed.split_at(printed.len() - 1);
            let (feet, inches) = length.split_once('-').unwrap();
            let inches = feet.parse::<f64>().unwrap() * 12.0 + inches.parse::<f64>().unwrap();
            assert!((spans.allowed().to_inches() - inches).abs() < 0.6, "{row}: {spans:?}");
            let says = if spans.governs() == Governs::Bending { "b" } else { "d" };
            assert_eq!(governs, says, "{row}");
            cells += 1;
        }
    }
    assert_eq!(cells, 4 * 11 * 4 * 4);
}
