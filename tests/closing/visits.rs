//! A visit that nobody ended: what is answered more days later than a visit may last puts
//! nothing right.

use crate::desk::{label, length};
use crate::house::joist;
use crate::phones::pen_apart;
use crate::{Site, after, drop_};
use duckboard::engine::air::AirLocation;
use duckboard::engine::condition::Finding;
use duckboard::engine::job::{Added, Fact, HandOver, Record, Visit};
use duckboard::engine::moisture::{Answer, Material};
use duckboard::engine::origin::{origin, was_seen};
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::Element;

/// The second visit's entries are of 8:00 on October 26.
const DAYS: [&str; 3] = ["2026-10-29T07:59:59-05:00", "2026-10-29T08:00:00-05:00", "2026-10-29T08:00:01-05:00"];

/// Something bad is said, then at this time that it is well; then another visit is begun, and
/// all is dry.
fn closes_after(at: &str, bad: fn(&mut Site), well: fn(&mut Site)) -> bool {
    let site = after(|site| {
        bad(site);
        site.at(at);
        well(site);
        site.visit("2026-12-20T08:30:00-05:00");
        site.crawl_air("57", "64");
        site.reads(["14", "15", "15.5", "15", "14", "13"]);
        let boards = site.place(Element::SubfloorBelow, 2);
        site.read(boards, "9", Material::Solid);
    });
    site.decision().is_ready()
}

#[test]
fn wood_heals_in_no_visit_that_goes_on_for_more_than_three_days() {
    let awl = DAYS.map(|at| {
        closes_after(
            at,
            |site| drop_(site.desk.says(joist(3), &list::AWL, "goes in")),
            |site| drop_(site.desk.says(joist(3), &list::AWL, "stops everywhere")),
        )
    });
    assert_eq!(awl, [true, true, false]);
    let sill = DAYS.map(|at| {
        closes_after(
            at,
            |site| drop_(site.desk.says(Part::Sill, &list::STATE, "decayed")),
            |site| drop_(site.desk.says(Part::Sill, &list::STATE, "sound")),
        )
    });
    assert_eq!(sill, [true, true, false]);
    let water = DAYS.map(|at| {
        closes_after(
            at,
            |site| site.answers(&[("meter_turns", Answer::Yes)]),
            |site| site.answers(&[("meter_turns", Answer::No)]),
        )
    });
    assert_eq!(water, [true, true, false], "a sign of water that is not seen after three days was there");
}

#[test]
fn what_was_seen_is_taken_back_by_no_answer_of_more_than_three_days_later() {
    let seen = DAYS.map(|at| {
        let site = after(|site| {
            site.answers(&[("water_on_soil", Answer::Yes)]);
            site.at(at);
            site.answers(&[("water_on_soil", Answer::No)]);
        });
        was_seen(site.desk.job(), "water_on_soil")
    });
    assert_eq!(seen, [false, false, true]);
}

#[test]
fn the_air_outdoors_of_more_than_three_days_later_is_held_against_no_crawl_air() {
    let used = DAYS.map(|at| {
        let site = after(|site| {
            site.crawl_air("57", "95");
            site.at(at);
            site.air(AirLocation::Outdoors, "80", "90");
        });
        let outdoors = *site.desk.job().now.air().last().unwrap().0;
        origin(site.desk.job()).as_known().unwrap().why.used.contains(&outdoors)
    });
    assert_eq!(used, [true, true, false]);
}

/// Each began a visit and did not know of the other's: what was read after the later one began is of
/// that morning.
#[test]
fn two_phones_that_begin_a_visit_on_one_morning_are_there_at_once() {
    let another_begins = |at: &'static str, reads_at: &'static str| {
        after(|site| {
            site.at(reads_at);
            site.crawl_air("57", "64");
            site.reads(["14", "15", "15.5", "15", "14", "13"]);
            let mut pen = pen_apart(site, at);
            let visit = Visit { purpose: label("help") };
            // Its entries count further than the first phone's: its visit is the last one.
            (0..500).for_each(|_| drop(pen.record(visit.clone())));
            assert_eq!(site.desk.book.add(Record::of(pen.record(visit)).unwrap()), Added::New);
        })
        .in_the_way()
    };
    let unread = |lines: &[String]| lines.iter().any(|line| line.contains("of 5 framing readings in this visit"));
    let is_airless = |lines: &[String]| lines.iter().any(|line| line.contains("crawl air was not read in this visit"));
    let read = another_begins("2026-10-26T08:20:00-05:00", "2026-10-26T08:40:00-05:00");
    assert!(!unread(&read) && !is_airless(&read), "{read:#?}");
    assert!(is_airless(&another_begins("2026-10-26T08:41:00-05:00", "2026-10-26T08:40:00-05:00")), "read before");
    assert!(unread(&another_begins("2026-10-26T08:41:00-05:00", "2026-10-26T08:40:00-05:00")), "read before");
    assert!(!unread(&another_begins("2026-10-26T20:00:00-05:00", "2026-10-26T20:00:00-05:00")));
    assert!(unread(&another_begins("2026-10-26T20:00:01-05:00", "2026-10-26T20:00:01-05:00")), "in the evening");
}

/// The record of a floor that is closed stays what it is, whatever is handed over, bought or named later.
#[test]
fn a_file_that_is_handed_over_days_later_makes_no_visit_longer() {
    let days_later = |seen: fn(&mut Site)| {
        after(|site| {
            site.at("2026-11-02T08:00:00-05:00");
            seen(site);
        })
        .in_the_way()
    };
    let hand_over = |site: &mut Site| {
        site.desk.log(HandOver { revision: 1, with_photos: true, with_client: true, entries: Some(9) });
    };
    let paper: [fn(&mut Site); 3] = [
        hand_over,
        |site| drop_(site.desk.log(Fact::Title(label("Blue house")))),
        |site| drop_(site.desk.log(Fact::Kerf(length("1/8")))),
    ];
    for seen in paper {
        assert!(days_later(seen).is_empty(), "{:#?}", days_later(seen));
    }
    let found = days_later(|site| site.finds(Finding::Stained, None));
    assert!(found.iter().any(|line| line.starts_with("this visit has gone on for more than 3 days")), "{found:#?}");
}
