//! Air, surfaces and mold on the page: one answer on all pages, and by the worst that was read.

use crate::desk::{Desk, label, percent, spot};
use crate::{card, said};
use duckboard::engine::air::{AirLocation, AirReading, SurfaceReading};
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::drying::{Dries, ventilating};
use duckboard::engine::entry::{EntryId, Stamp, Time};
use duckboard::engine::job::Fact;
use duckboard::engine::moisture::{Answer, Material, Reading, Shown, Wood};
use duckboard::engine::origin::Check;
use duckboard::engine::place::{Element, Place};
use duckboard::engine::results::every_answer;
use duckboard::engine::take::Units;
use duckboard::engine::units::decimal::{Scale, parse_relative_humidity, parse_temperature};
use duckboard::engine::units::{MoistureContent, Typed};

const SWEATS: &str = "Does anything sweat?";
const VENTILATES: &str = "Would it dry by ventilating alone?";

fn reads(desk: &mut Desk, location: AirLocation, warmth: &str, damp: &str) -> EntryId {
    let temperature = parse_temperature(warmth, Scale::Fahrenheit).unwrap();
    desk.log(AirReading { location, temperature, humidity: parse_relative_humidity(damp).unwrap() })
}

fn crawl(desk: &mut Desk, warmth: &str, damp: &str) -> EntryId {
    reads(desk, AirLocation::Crawl, warmth, damp)
}

fn outdoors(desk: &mut Desk, warmth: &str, damp: &str) -> EntryId {
    reads(desk, AirLocation::Outdoors, warmth, damp)
}

fn surface(desk: &mut Desk, what: &str, warmth: &str) -> EntryId {
    let temperature = parse_temperature(warmth, Scale::Fahrenheit).unwrap();
    desk.log(SurfaceReading { place: None, what: label(what), temperature })
}

fn answer(desk: &mut Desk, of: &str, answer: Answer) {
    desk.log(Check { of: label(of), answer });
}

fn visited() -> Desk {
    let mut desk = Desk::new();
    desk.visit("one");
    desk
}

/// The page's headline, which is that of the answers.
fn ventilates(desk: &Desk) -> Dries {
    let says = ventilating(desk.job()).value().unwrap().says;
    let answers = every_answer(desk.job(), Units::default());
    let answer = answers.iter().find(|answer| answer.name == "outdoor_air").unwrap().said.value().unwrap().clone();
    assert_eq!(card(desk.job(), VENTILATES).headline, answer.headline, "two pages of one job");
    assert_eq!(answer.headline, says.label());
    says
}

/// A covered crawl space at 60 °F; its air, the air outdoors at 60 °F, a surface.
fn covered(damp: &str, outside: &str, what: &str, warmth: &str) -> Desk {
    let mut desk = visited();
    crawl(&mut desk, "60", damp);
    outdoors(&mut desk, "60", outside);
    if !what.is_empty() {
        surface(&mut desk, what, warmth);
    }
    answer(&mut desk, "ground_covered_now", Answer::Yes);
    desk
}

/// What the page says of surfaces in this crawl air.
fn sweats(warmth: &str, damp: &str, surfaces: &[(&str, &str)]) -> String {
    let mut desk = visited();
    crawl(&mut desk, warmth, damp);
    for (what, warmth) in surfaces {
        surface(&mut desk, what, warmth);
    }
    said(&card(desk.job(), SWEATS))
}

#[test]
fn every_page_says_the_same_of_the_air_outdoors() {
    // 75 °F at 88 % condenses at 71.2 °F: on the joist it does, though the crawl air holds more.
    let mut summer = visited();
    crawl(&mut summer, "75", "95");
    outdoors(&mut summer, "75", "88");
    surface(&mut summer, "joist", "60");
    assert_eq!(ventilates(&summer), Dries::WetsWood);
    assert_eq!(ventilates(&covered("60", "60", "joist", "59")), Dries::BringsVapor, "as much is no less");
    assert_eq!(ventilates(&covered("90", "65", "joist", "59")), Dries::Can);
    assert_eq!(ventilates(&covered("95", "94", "joist", "60")), Dries::StaysOver);
    assert_eq!(ventilates(&covered("95", "86", "joist", "60")), Dries::Close);
}

/// At 60 °F 65 % condenses near 48.3 °F.
#[test]
fn what_is_not_wood_is_not_said_to_be() {
    let mut desk = covered("90", "65", "joist", "59");
    surface(&mut desk, "cold water pipe", "45");
    assert_eq!(ventilates(&desk), Dries::WetsSurface);
    let says = said(&card(desk.job(), VENTILATES));
    assert!(says.contains("45.0 °F would get wet in outdoor air"), "{says}");
    let end = |desk: &Desk| ventilating(desk.job()).value().unwrap().at_wood.unwrap().equilibrium;
    assert_eq!(end(&desk), end(&covered("90", "65", "joist", "59")), "wood ends by how cold the wood is");
    // What nobody said to be wood may be: the coldest is taken for it, and that is said.
    let unsaid = covered("90", "65", "Surface", "59");
    assert_eq!(ventilates(&unsaid), Dries::Can);
    assert!(said(&card(unsaid.job(), VENTILATES)).contains("No surface was said to be wood"));
    // A hot pipe says nothing of wood. As warm as the air it may be wood.
    assert_eq!(ventilates(&covered("90", "65", "Surface", "60.1")), Dries::NotKnown);
    assert_eq!(ventilates(&covered("90", "65", "Surface", "60")), Dries::Can);
}

#[test]
fn a_surface_that_nobody_measured_is_not_shown_as_measured() {
    let desk = covered("95", "60", "", "");
    assert_eq!(ventilates(&desk), Dries::NotKnown);
    let says = said(&card(desk.job(), VENTILATES));
    assert!(!says.contains("coldest surface") && !says.contains("at the wood"), "{says}");
    assert!(says.contains("No surface was measured") && says.contains("Read how warm the coldest wood is"), "{says}");
    // What is a no without it is one still.
    assert_eq!(ventilates(&covered("60", "61", "", "")), Dries::BringsVapor);
    let says = said(&card(desk.job(), SWEATS));
    assert!(!says.contains("surface: 60.0") && says.contains("wood, taken to be as warm as the air: 60.0"), "{says}");
}

#[test]
fn the_warmth_of_wood_that_goes_with_a_reading_was_measured_and_is_told_once() {
    let mut desk = covered("90", "65", "", "");
    let wood = Wood { material: Material::Solid, species: None };
    for (element, joist) in [(Element::SubfloorAbove, 1), (Element::Joist, 2), (Element::Joist, 3)] {
        if element == Element::Joist {
            let says = ventilates(&desk);
            assert_eq!(says, if joist == 2 { Dries::NotKnown } else { Dries::Can }, "from above is not below");
        }
        let place = desk.log(Place { element, ..spot(joist, "3'") });
        let warmth = parse_temperature("58", Scale::Fahrenheit).ok();
        let reading = Reading::new(place, Shown::Percent(percent("14")), wood);
        desk.log(Reading { wood_temperature: warmth, ..reading });
    }
    assert_eq!(said(&card(desk.job(), SWEATS)).matches("58.0 °F at").count(), 1);
    desk.visit("two");
    crawl(&mut desk, "60", "90");
    outdoors(&mut desk, "60", "65");
    assert_eq!(ventilates(&desk), Dries::NotKnown, "it was as warm as another day");
}

/// Typed at the probe, copied by every reading that follows.
#[test]
fn warmth_of_wood_that_was_taken_back_was_not_measured_though_readings_carry_it() {
    let mut desk = covered("90", "65", "", "");
    let probed = surface(&mut desk, "Wood temperature", "58");
    let place = desk.log(spot(2, "3'"));
    let warmth = parse_temperature("58", Scale::Fahrenheit).ok();
    let wood = Wood { material: Material::Solid, species: None };
    let reading = Reading::new(place, Shown::Percent(percent("14")), wood);
    desk.log(Reading { wood_temperature: warmth, ..reading });
    assert_eq!(ventilates(&desk), Dries::Can);
    desk.withdraw(probed);
    assert_eq!(ventilates(&desk), Dries::NotKnown);
}

/// Outdoor air at 60 °F and 82 % leaves wood at 16.96 %.
#[test]
fn outdoor_air_dries_wood_only_to_what_a_reading_would_have_to_be() {
    let says = |limit: f64| {
        let mut desk = covered("95", "82", "joist", "60");
        let limit = MoistureContent::from_percent_f64(limit);
        desk.log(Fact::FramingLimit(Typed::new("limit", limit)));
        ventilates(&desk)
    };
    let end = ventilating(covered("95", "82", "joist", "60").job()).value().unwrap().at_wood.unwrap().equilibrium;
    let end = end.to_percent();
    assert_eq!(says(end - 0.001), Dries::StaysOver);
    assert_eq!([end, end + 0.001, end + 1.999].map(says), [Dries::Close; 3]);
    assert_eq!(says(end + 2.001), Dries::Can);
}

#[test]
fn no_air_is_said_to_dry_it_while_water_stands_below_whatever_covers_the_soil() {
    let mut desk = covered("90", "65", "joist", "59");
    let asks = |desk: &Desk| said(&card(desk.job(), VENTILATES)).contains("lead water away");
    assert!(!asks(&desk));
    answer(&mut desk, "water_on_soil", Answer::Yes);
    assert_eq!((ventilates(&desk), asks(&desk)), (Dries::WaterStands, true));
    answer(&mut desk, "water_on_soil", Answer::Unknown);
    assert_eq!(ventilates(&desk), Dries::WaterStands, "not to know takes nothing back");
    answer(&mut desk, "water_on_soil", Answer::No);
    assert_eq!((ventilates(&desk), asks(&desk)), (Dries::Can, false));
    desk.log(Condition { place: None, finding: Finding::StandingWater, note: None });
    assert_eq!((ventilates(&desk), asks(&desk)), (Dries::WaterStands, true));
}

/// A joist of 68 °F in air of 70 °F at 92 %: 58 days by stepping the model hour by hour in another
/// language beside the engine.
#[test]
fn a_cold_pipe_takes_no_mold_from_warmer_wood() {
    let says = |surfaces: &[(&str, &str)]| sweats("70", "92", surfaces);
    let of_joist = "planed wood at 68.0 °F after about 58 days";
    for all in [
        &[("joist", "68")][..],
        &[("joist", "68"), ("line", "32")],
        &[("line", "32"), ("joist", "68")],
        &[("line", "32.1"), ("joist", "68")],
    ] {
        assert!(says(all).contains(of_joist), "{all:?}: {}", says(all));
    }
    let line_alone = says(&[("line", "32")]);
    assert!(!line_alone.contains("would not come to be seen"), "{line_alone}");
    assert!(line_alone.contains("planed wood at 70.0 °F after about"), "as warm as the air: {line_alone}");
}

#[test]
fn mold_is_not_ruled_out_where_nobody_read_how_cold_the_wood_is() {
    let says = |surfaces: &[(&str, &str)]| sweats("62", "78", surfaces);
    for surfaces in [&[][..], &[("hot water pipe", "110")]] {
        let says = says(surfaces);
        assert!(says.contains("Whether mold comes is not known") && says.contains("coldest wood"), "{says}");
        assert!(says.contains("nobody read how cold it is"), "the assumption: {says}");
    }
    let read = says(&[("joist", "62")]);
    assert!(read.contains("Mold would not come to be seen on planed wood as warm as what was read"), "{read}");
    assert!(says(&[("joist", "58")]).contains("Mold may be seen on planed wood at 58.0 °F"));
}

#[test]
fn mold_that_was_found_is_never_said_not_to_come() {
    let mut desk = visited();
    let place = desk.log(spot(3, "3'"));
    crawl(&mut desk, "62", "76");
    surface(&mut desk, "joist", "62");
    assert!(said(&card(desk.job(), SWEATS)).contains("would not come to be seen"));
    let found = desk.log(Condition { place: Some(place), finding: Finding::Mould, note: None });
    desk.visit("two");
    crawl(&mut desk, "62", "60");
    surface(&mut desk, "joist", "62");
    let says = said(&card(desk.job(), SWEATS));
    assert!(says.contains("Mold was found at Joist 3"), "{says}");
    assert!(!says.contains("would not come") && !says.contains("too little to be seen"), "{says}");
    desk.withdraw(found);
    assert!(said(&card(desk.job(), SWEATS)).contains("would not come to be seen"));
}

#[test]
fn what_was_found_wet_in_this_visit_is_said_to_be_wet() {
    let mut desk = visited();
    let place = desk.log(spot(3, "3'"));
    crawl(&mut desk, "62", "60");
    surface(&mut desk, "joist", "62");
    assert_eq!(card(desk.job(), SWEATS).headline, "Nothing that was read");
    desk.log(Condition { place: Some(place), finding: Finding::Dripping, note: None });
    assert_eq!(card(desk.job(), SWEATS).headline, "Something was found wet");
    assert!(said(&card(desk.job(), SWEATS)).contains("Droplets or a wet film was found at Joist 3"));
    desk.visit("two");
    crawl(&mut desk, "62", "60");
    surface(&mut desk, "joist", "62");
    assert_eq!(card(desk.job(), SWEATS).headline, "Nothing that was read");
}

/// Air at 70 °F read at 95 % and at 60 % in one visit, 80 days before the next.
#[test]
fn over_the_visits_mold_goes_by_the_dampest_air_of_each() {
    let time = |at: &str| -> Time { chrono::DateTime::parse_from_rfc3339(at).unwrap() };
    let over = |damps: &[&str], last: &str| {
        let mut desk = Desk::new();
        desk.pen.stamp_from(Stamp { at: time("2026-06-01T08:00:00-05:00"), ..crate::desk::stamp() });
        desk.visit("one");
        for damp in damps {
            crawl(&mut desk, "70", damp);
        }
        desk.pen.stamp_from(Stamp { at: time("2026-08-20T08:00:00-05:00"), ..crate::desk::stamp() });
        desk.visit("two");
        crawl(&mut desk, "70", last);
        let says = said(&card(desk.job(), SWEATS));
        let grown = |line: &&str| line.starts_with("Had crawl air stayed") || line.starts_with("How much mold grew");
        says.lines().find(grown).unwrap().to_owned()
    };
    let index = |damps: &[&str]| over(damps, "50");
    assert_eq!(index(&["95", "60"]), index(&["95"]));
    // A lost digit tells of no mold; two alike may be so. What is read last is held for no time.
    let is_unknown = |damps: &[&str]| index(damps).starts_with("How much mold grew");
    assert_eq!([&["29.9"][..], &["30"], &["29.9", "29"], &["6", "95"]].map(is_unknown), [true, false, false, false]);
    assert_eq!(over(&["95"], "6"), index(&["95"]));
    assert_eq!(index(&["60", "95"]), index(&["95"]));
    assert_ne!(index(&["95"]), index(&["60"]));
}

#[test]
fn surfaces_stand_in_the_air_that_condenses_first() {
    let headline = |damps: &[&str]| {
        let mut desk = visited();
        for damp in damps {
            crawl(&mut desk, "60", damp);
        }
        surface(&mut desk, "joist", "58");
        card(desk.job(), SWEATS).headline
    };
    assert_eq!(headline(&["60"]), "Nothing that was read");
    assert_eq!(headline(&["90", "60"]), "1 of 1 surfaces, or nearly");
    assert_eq!(headline(&["60", "90"]), "1 of 1 surfaces, or nearly");
}
