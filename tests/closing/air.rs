//! The crawl space's air keeps what is dry under its limit.

use crate::phones::logs_late_apart;
use crate::{Site, after, held_by, ready};
use duckboard::engine::air::{AirLocation, AirReading, equilibrium_moisture};
use duckboard::engine::closing::Decision;
use duckboard::engine::job::Fact;
use duckboard::engine::moisture::Material;
use duckboard::engine::place::Element;
use duckboard::engine::units::decimal::{Scale, parse_relative_humidity, parse_temperature};
use duckboard::engine::units::{MoistureContent, Typed};

fn crawl(humidity: &str) -> AirReading {
    let temperature = parse_temperature("60", Scale::Fahrenheit).unwrap();
    AirReading { location: AirLocation::Crawl, temperature, humidity: parse_relative_humidity(humidity).unwrap() }
}

/// At 60 °F wood settles at 16.96 % in air of 82 %, at 17.35 in 83, at 18.65 in 86 and at 19.13
/// in 87 (the Wood Handbook's curve, worked out by hand beside the engine).
#[test]
fn crawl_air_of_this_visit_keeps_wood_under_its_limit() {
    ready(|site| site.crawl_air("60", "82"));
    held_by(|site| site.crawl_air("60", "83"), "close to its limit");
    held_by(|site| site.crawl_air("60", "86"), "close to its limit");
    held_by(|site| site.crawl_air("60", "87"), "over its limit");
    held_by(|site| site.crawl_air("60", "99"), "left in this crawl air wood settles near");
    // The dampest air of a visit counts, whatever was read after it.
    held_by(
        |site| {
            site.crawl_air("60", "95");
            site.crawl_air("60", "50");
        },
        "over its limit",
    );
}

#[test]
fn where_crawl_air_was_read_twice_and_not_alike_closing_says_that_the_dampest_counts() {
    let says = |humidities: &[&str]| {
        let site = after(|site| humidities.iter().for_each(|humidity| site.crawl_air("60", humidity)));
        site.in_the_way().into_iter().find(|line| line.contains("wood settles near")).unwrap()
    };
    // The floor is ready in air of 57 °F and 64 %, which was read first.
    assert!(says(&["95"]).contains("by the dampest of 2 readings"), "{}", says(&["95"]));
    assert_eq!(says(&["95", "50"]).replace("of 3", "of 2"), says(&["95"]));
    let held = |at: &str| {
        let site = after(|site| {
            site.crawl_air("60", "95");
            site.at(at);
            site.crawl_air("60", "50");
        });
        site.in_the_way().iter().any(|line| line.contains("wood settles near"))
    };
    // Of more than three days before it is of another visit, though nobody began one.
    assert_eq!(["2026-10-29T08:00:00-05:00", "2026-10-29T08:00:01-05:00"].map(held), [true, false]);
}

#[test]
fn only_air_under_the_house_counts_and_none_of_an_older_visit() {
    ready(|site| site.air(AirLocation::Room, "60", "99"));
    // Damp in October's visit, dry in this one: the wood is read again, as in every visit.
    let site = after(|site| {
        site.crawl_air("60", "99");
        site.visit("2026-11-20T08:00:00-05:00");
        site.crawl_air("55", "60");
    });
    let is_of_air = |line: &String| line.contains("crawl air");
    assert!(!site.in_the_way().iter().any(is_of_air), "{:#?}", site.in_the_way());
}

/// Just where wood would settle, and just so far over that as a reading has to be under it.
#[test]
fn air_that_leaves_wood_at_its_limit_is_close_to_it_and_by_as_much_as_a_meter_can_be_off_below_it_is_not() {
    let end = |humidity: u32| {
        let air = crawl(&humidity.to_string());
        equilibrium_moisture(air.temperature.value, air.humidity.value).to_percent()
    };
    let lines = |humidity: u32, limit: f64| {
        let site = after(|site| {
            site.crawl_air("60", &humidity.to_string());
            let limit = Typed::new("limit", MoistureContent::from_percent_f64(limit));
            site.desk.log(Fact::FramingLimit(limit));
        });
        site.in_the_way().into_iter().find(|line| line.contains("wood settles near")).unwrap_or_default()
    };
    // Damper than the air that the floor is ready in, and a sum that comes out exactly.
    let humidity = (70..=78).find(|humidity| (end(*humidity) + 2.0) - 2.0 == end(*humidity)).unwrap();
    let settles = end(humidity);
    assert!(lines(humidity, settles - 0.001).contains("over its limit"));
    assert!(lines(humidity, settles).contains("close to its limit"));
    assert!(lines(humidity, settles + 1.999).contains("close to its limit"));
    assert_eq!(lines(humidity, settles + 2.0), "");
}

fn logs_air_apart(site: &mut Site, humidity: &str) {
    logs_late_apart(site, crawl(humidity));
}

#[test]
fn air_that_another_phone_may_have_read_after_this_visit_began_counts_against_it() {
    let of_air = |humidity| {
        let lines = after(|site| logs_air_apart(site, humidity)).in_the_way();
        lines.into_iter().find(|line| line.contains("crawl air wood settles")).unwrap_or_default()
    };
    assert!(of_air("95").contains("over its limit"));
    assert_eq!(of_air("50"), "", "and does not make the air of this visit any drier");
}

#[test]
fn air_that_another_phone_may_have_read_after_this_visit_began_is_none_of_this_visit() {
    let next_visit = |site: &mut Site| {
        site.visit("2026-11-02T08:00:00-05:00");
        logs_air_apart(site, "50");
    };
    held_by(next_visit, "crawl air was not read in this visit");
}

/// A lost digit dries no floor: 8 for 85.
#[test]
fn air_drier_than_is_likely_under_a_house_is_read_twice() {
    let again = |all: &'static [&'static str]| {
        move |site: &mut Site| {
            site.visit("2026-11-23T08:00:00-05:00");
            for humidity in all {
                site.crawl_air("57", humidity);
            }
            site.reads(["14", "15", "15.5", "15", "14", "13"]);
            let boards = site.place(Element::SubfloorBelow, 2);
            site.read(boards, "9", Material::Solid);
        }
    };
    ready(again(&["30"]));
    held_by(again(&["29.9"]), "crawl air reads 29.9 %, drier than air under a house is likely to be");
    held_by(again(&["8"]), "take it back if it was typed wrong, or read it once more: two such readings count");
    ready(again(&["29.9", "28"]));
    // Another that says otherwise bears it out no better.
    held_by(again(&["8", "64"]), "crawl air reads 8.0 %, drier than air under a house is likely to be");
    // And what is known of the other stays known.
    for damp in ["87", "95"] {
        let lines = after(|site| {
            site.crawl_air("57", "8");
            site.crawl_air("57", damp);
        });
        let decision = lines.decision();
        let says = |words: &str| lines.in_the_way().iter().any(|line| line.contains(words));
        assert!(says("over its limit, by the dampest of 3") && says("crawl air reads 8.0 %"));
        assert_eq!(decision, Decision::NotYet(2), "{:#?}", lines.in_the_way());
    }
}
