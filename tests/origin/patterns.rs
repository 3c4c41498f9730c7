//! What readings and air answer, just under, at and just over each figure of README.md:
//! seen by what the standard evidence makes of it.

use super::Scene;
use duckboard::engine::air::{Air, dew_point};
use duckboard::engine::condition::Finding;
use duckboard::engine::geometry::{Point, Rect};
use duckboard::engine::moisture::Answer::{self, No, Unknown, Yes};
use duckboard::engine::origin::{Cause, Evidence, Read, rank};
use duckboard::engine::place::Element;
use duckboard::engine::units::{Length, MoistureContent, RelativeHumidity, Temperature, TemperatureDifference};
use std::collections::BTreeSet;

fn feet(feet: f64) -> Length {
    Length::from_inches(feet * 12.0)
}

fn read(element: Element, x: f64, y: f64, percent: f64) -> Read {
    Read { element, at: Point::new(feet(x), feet(y)), moisture: MoistureContent::from_percent_f64(percent) }
}

fn joists(readings: &[(f64, f64, f64)]) -> Scene {
    let readings = readings.iter().map(|(x, y, percent)| read(Element::Joist, *x, *y, *percent)).collect();
    Scene { readings, ..Scene::default() }
}

/// What a pattern says of a scene, by its words in the reasons for and against.
fn says(scene: &Scene, name: &str) -> Answer {
    let evidence = Evidence::standard();
    let ranking = rank(&evidence, scene);
    let said: BTreeSet<&str> =
        ranking.causes.iter().flat_map(|it| it.reasons.iter().chain(&it.against)).map(String::as_str).collect();
    let observation = evidence.observation(name).unwrap();
    let is_said = |answer: &Answer| observation.says(*answer).is_some_and(|words| said.contains(words));
    let heard: Vec<_> = [Yes, No].into_iter().filter(is_said).collect();
    assert!(heard.len() < 2, "{name} cannot be both");
    heard.first().copied().unwrap_or(Unknown)
}

#[test]
fn readings_peak_from_six_over_the_middle_and_four_over_all_that_is_farther_than_four_feet() {
    let peak = |top: f64| joists(&[(4.0, 4.0, top), (10.0, 4.0, 14.1), (10.0, 8.0, 14.1), (4.0, 9.0, 14.1)]);
    assert_eq!([20.0, 20.1, 20.2].map(|top| says(&peak(top), "peaked")), [No, Yes, Yes]);
    let far = |value: f64| {
        joists(&[(4.0, 4.0, 24.1), (9.0, 4.0, value), (10.0, 8.0, 12.0), (4.0, 9.0, 12.0), (3.0, 10.0, 12.0)])
    };
    assert_eq!([20.0, 20.1, 20.2].map(|value| says(&far(value), "peaked")), [Yes, Yes, No]);
    let beside = |x: f64| {
        joists(&[(4.0, 4.0, 24.0), (4.0 + x, 4.0, 22.0), (12.0, 8.0, 12.0), (4.0, 11.0, 12.0), (12.0, 4.0, 12.0)])
    };
    assert_eq!([3.9, 4.0, 4.1].map(|x| says(&beside(x), "peaked")), [Yes, Yes, No]);
    let few = joists(&[(4.0, 4.0, 24.0), (10.0, 4.0, 14.0), (10.0, 8.0, 14.0)]);
    assert_eq!(says(&few, "peaked"), Unknown, "three have no shape");
}

#[test]
fn readings_are_broad_when_half_lies_within_four_and_the_middle_is_sixteen() {
    // Five in order: the quarters are the second and the fourth.
    let spread = |upper: f64| {
        joists(&[(2.0, 4.0, 17.1), (5.0, 4.0, 18.1), (8.0, 4.0, 19.0), (11.0, 4.0, upper), (14.0, 4.0, 22.5)])
    };
    assert_eq!([22.0, 22.1, 22.2].map(|upper| says(&spread(upper), "broad")), [Yes, Yes, No]);
    let middle = |at: f64| joists(&[(2.0, 4.0, at), (5.0, 4.0, at), (8.0, 4.0, at), (11.0, 4.0, at), (14.0, 4.0, at)]);
    assert_eq!([15.9, 16.0, 16.1].map(|at| says(&middle(at), "broad")), [No, Yes, Yes]);
}

#[test]
fn a_wall_is_wetter_by_three_within_three_feet_of_it() {
    let scene = |by: f64, out: f64| Scene {
        room: Rect::between(Point::ORIGIN, Point::new(feet(16.0), feet(12.0))),
        ..joists(&[(out, 5.0, 14.1 + by), (out, 7.0, 14.1 + by), (7.0, 6.0, 14.1), (9.0, 6.0, 14.1)])
    };
    assert_eq!([2.9, 3.0, 3.1].map(|by| says(&scene(by, 1.0), "along_wall")), [No, Yes, Yes]);
    assert_eq!([2.9, 3.0, 3.1].map(|out| says(&scene(5.0, out), "along_wall")), [Yes, Yes, Unknown]);
}

#[test]
fn a_fixture_is_near_to_four_feet_and_far_from_over_six() {
    let scene = |what: Finding, x: f64| Scene {
        fixtures: vec![(what, Point::new(feet(x), feet(5.0)))],
        ..joists(&[(2.0, 5.0, 22.0)])
    };
    let of = |what: Finding, name: &str| [5.9, 6.0, 6.1, 7.9, 8.0, 8.1].map(|x| says(&scene(what, x), name));
    let expected = [Yes, Yes, Unknown, Unknown, Unknown, No];
    assert_eq!(of(Finding::SinkAbove, "near_plumbing"), expected);
    assert_eq!(of(Finding::WasherAbove, "near_appliance"), expected);
    assert_eq!(of(Finding::HeaterAbove, "near_appliance"), expected);
    assert_eq!(of(Finding::SinkAbove, "near_appliance"), [Unknown; 6], "a sink is none");
    assert_eq!(of(Finding::WindowAbove, "near_opening"), expected);
    assert_eq!(of(Finding::ColdRun, "near_cold"), expected);
}

#[test]
fn faces_and_sills_are_wetter_by_three() {
    let faces = |above: f64| Scene {
        readings: vec![
            read(Element::SubfloorAbove, 4.0, 4.0, 16.1 + above),
            read(Element::SubfloorBelow, 4.0, 4.0, 16.1),
        ],
        ..Scene::default()
    };
    assert_eq!([2.9, 3.0, 3.1].map(|above| says(&faces(above), "top_wetter")), [Unknown, Yes, Yes]);
    assert_eq!([-2.9, -3.0, -3.1].map(|above| says(&faces(above), "top_wetter")), [Unknown, No, No]);
    let sills = |by: f64| Scene {
        readings: vec![read(Element::Sill, 0.0, 4.0, 16.1 + by), read(Element::Joist, 4.0, 4.0, 16.1)],
        ..Scene::default()
    };
    assert_eq!([2.9, 3.0, 3.1].map(|by| says(&sills(by), "low_wetter")), [No, Yes, Yes]);
}

fn air(fahrenheit: f64, humidity: f64) -> Air {
    Air {
        temperature: Temperature::from_celsius_f64((fahrenheit - 32.0) / 1.8),
        humidity: RelativeHumidity::from_percent_f64(humidity),
    }
}

#[test]
fn crawl_air_is_humid_from_eighty_and_not_below_sixty_five() {
    let scene = |humidity: f64| Scene { crawl: Some(air(62.0, humidity)), ..Scene::default() };
    let said = [64.9, 65.0, 65.1, 79.9, 80.0, 80.1].map(|humidity| says(&scene(humidity), "humid_crawl"));
    assert_eq!(said, [No, Unknown, Unknown, Unknown, Yes, Yes]);
}

#[test]
fn outdoor_air_is_the_more_humid_when_it_holds_more_vapor() {
    let scene =
        |humidity: f64| Scene { crawl: Some(air(70.0, 60.0)), outdoors: Some(air(70.0, humidity)), ..Scene::default() };
    assert_eq!([59.9, 60.0, 60.1].map(|humidity| says(&scene(humidity), "humid_outdoors")), [No, No, Yes]);
}

#[test]
fn a_surface_sweats_at_the_dew_point_and_is_well_above_it_from_five_degrees() {
    let crawl = air(70.0, 70.0);
    let dew = dew_point(crawl).value;
    let tenth = |tenths: i16| {
        let over = TemperatureDifference::fahrenheit(5);
        let finer = Temperature::from_celsius_f64(f64::from(tenths) / 18.0) - Temperature::from_celsius_f64(0.0);
        (dew + finer, dew + over + finer)
    };
    let near = [-1, 0, 1].map(|tenths| tenth(tenths).0);
    let above = [-1, 0, 1].map(|tenths| tenth(tenths).1);
    for (name, outdoors) in [("sweats", None), ("sweats_vented", Some(crawl))] {
        let inside = if outdoors.is_none() { Some(crawl) } else { None };
        let scene =
            |coldest: Temperature| Scene { crawl: inside, outdoors, coldest: Some(coldest), ..Scene::default() };
        assert_eq!(near.map(|coldest| says(&scene(coldest), name)), [Yes, Yes, Unknown], "{name}");
        assert_eq!(above.map(|coldest| says(&scene(coldest), name)), [Unknown, No, No], "{name}");
    }
    let evidence = Evidence::standard();
    assert!(evidence.observation("sweats").unwrap().weight(Yes, Cause::ColdRuns) > 0.0);
}
