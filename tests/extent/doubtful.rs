//! What is not believed, is no number or may read low, on the map.

use super::{Site, known_of};
use crate::desk::percent;
use duckboard::engine::extent::{Extent, Group};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::place::Element;

const SPREAD: [(u16, &str); 12] = [
    (1, "1'"),
    (4, "1'"),
    (7, "1'"),
    (10, "1'"),
    (1, "11'"),
    (4, "11'"),
    (7, "11'"),
    (10, "11'"),
    (2, "6'"),
    (5, "6'"),
    (8, "6'"),
    (11, "6'"),
];

/// Readings all over the room, all alike.
fn all(shown: &Shown, species: Option<Species>) -> Site {
    let mut site = Site::new();
    let meter = Some(site.desk.pins());
    for (joist, along) in SPREAD {
        let place = site.desk.log(crate::desk::spot(joist, along));
        let wood = Wood { material: Material::Solid, species };
        site.desk.log(Reading { meter, ..Reading::new(place, shown.clone(), wood) });
    }
    site
}

fn showing(typed: &str) -> Shown {
    Shown::Percent(percent(typed))
}

#[test]
fn a_number_that_nobody_believes_never_enters_the_map_and_is_told_of() {
    let fir = Some(Species::DouglasFir);
    for shown in ["3", "3.9", "60.1", "180"] {
        let mut site = all(&showing("22"), fir);
        let before = known_of(&site);
        // At a place of its own, and at one that was believed before.
        site.joist(6, "4'", shown);
        let place = before.value.spots[0].reading;
        let place = site.desk.job().now.readings().get(&place).unwrap().value.place;
        let meter = Some(site.desk.pins());
        let wood = Wood { material: Material::Solid, species: fir };
        site.desk.log(Reading { meter, ..Reading::new(place, showing(shown), wood) });
        let after = known_of(&site);
        assert_eq!((after.value.wet, &after.value.spots), (before.value.wet, &before.value.spots), "{shown}");
        assert!(after.doubts.iter().any(|doubt| doubt.contains("nobody believes are left out: 2")), "{shown}");
    }
    for believed in ["4", "60"] {
        let mut site = all(&showing("22"), fir);
        site.joist(6, "4'", believed);
        assert_eq!(known_of(&site).value.spots.len(), 13, "{believed}");
    }
    let mut site = Site::new();
    site.joist(6, "4'", "3");
    let Figure::Missing(needs) = Extent::of(site.desk.job(), Group::Framing) else { panic!("a map of nothing") };
    assert_eq!(needs, [Need::Reading]);
}

/// Pins whose minimum nobody said start at 7 %.
#[test]
fn under_the_meters_minimum_is_drier_than_its_bound_and_no_number() {
    let under = known_of(&all(&Shown::UnderMinimum, Some(Species::DouglasFir)));
    let number = known_of(&all(&showing("7"), Some(Species::DouglasFir)));
    let driest = |known: &Extent| known.grid.floor().map(|cell| cell.moisture).max().unwrap();
    assert!(driest(&under.value) < driest(&number.value), "{:?}", driest(&under.value));
    assert!(under.value.spots.iter().all(|spot| spot.corrected.corrected.number().is_none()));
    let few = under.value.wet.unwrap().area.to_square_feet();
    assert!(few < 2.0, "{few} of 192 sq ft");
}

/// The 16.5 of a meter on the Douglas-fir scale is 17.2 in Sitka spruce, and may be 20.2 in
/// another wood of the stamp (from memory).
#[test]
fn about_takes_a_reading_for_what_it_is_and_at_most_for_what_it_may_be() {
    let stamped = known_of(&all(&showing("16.5"), Some(Species::SprucePineFir)));
    let spot = stamped.value.spots[0].corrected;
    assert!(spot.corrected.bound() < stamped.value.limit && spot.at_worst() > stamped.value.limit);
    let firm = known_of(&all(&showing("16.5"), Some(Species::SitkaSpruce)));
    let (wet, sure) = (stamped.value.wet.unwrap(), firm.value.wet.unwrap());
    assert_eq!((wet.area, wet.at_least), (sure.area, sure.at_least), "what was read is the same");
    assert!((wet.at_most.to_square_feet() - 192.0).abs() < 1e-6, "all of it may be wet: {wet:?}");
    assert!(sure.at_most < wet.at_most);
    let says = |words: &str| stamped.doubts.iter().any(|doubt| doubt.contains(words));
    assert!(says("up to 3.0 points: 12") && says("say its species"), "{:?}", stamped.doubts);
    assert!(firm.doubts.is_empty(), "{:?}", firm.doubts);
}

/// Species not said: up to 5 points low, so that 14.0 is at most 19.0.
#[test]
fn at_most_holds_the_floor_of_every_reading_that_may_be_over_the_limit() {
    let at_most = |shown: &str| {
        let known = known_of(&all(&showing(shown), None));
        let may_be_over = known.value.spots.iter().filter(|spot| spot.corrected.at_worst() > known.value.limit).count();
        (may_be_over, known.value.wet.unwrap().at_most.to_square_feet())
    };
    assert_eq!([at_most("13.9").0, at_most("14").0, at_most("14.1").0], [0, 0, 12]);
    assert!((at_most("14.1").1 - 192.0).abs() < 1e-6);
}

#[test]
fn readings_of_no_meter_or_unknown_wood_are_on_the_map_and_are_told_of() {
    let mut site = all(&showing("12"), Some(Species::DouglasFir));
    let plain = known_of(&site).value.wet.unwrap();
    site.read(Element::Joist, 6, "3'", "15", Material::Unknown);
    let known = known_of(&site);
    assert!(known.doubts.iter().any(|doubt| doubt.contains("no firm number") && doubt.contains(": 1.")));
    assert!(known.value.wet.unwrap().at_most >= plain.at_most);
}
