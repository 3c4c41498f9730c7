//! Which readings of a place stand, and what of them a new joist, a cut and another phone change.

use crate::desk::length;
use crate::house::joist;
use crate::phones::pen_at;
use crate::{Site, after, drop_, held_by, ready};
use duckboard::engine::condition::Finding;
use duckboard::engine::job::{Added, Record, Visit};
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::particular::{Part, list};
use duckboard::engine::place::{Element, Place, Position};

const BETWEEN_READINGS: &str = "2026-10-26T07:00:00-05:00";

/// A reading of a joist's place in pine named, with pins.
fn reading(site: &mut Site, joist: usize, shown: &str) -> Reading {
    let meter = Some(site.desk.pins());
    let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
    Reading { meter, ..Reading::new(site.places[joist - 1], Shown::Percent(crate::desk::percent(shown)), wood) }
}

/// Another phone that knows all that was said until then reads a joist in a visit of its own.
fn another_reads(site: &mut Site, at: &str, joist: usize, shown: &str) {
    let reading = reading(site, joist, shown);
    let mut pen = pen_at(site, at);
    let visit = pen.record(Visit { purpose: crate::desk::label("help") });
    pen.begin_visit(visit.id);
    for entry in [visit, pen.record(reading)] {
        assert_eq!(site.desk.book.add(Record::of(entry).unwrap()), Added::New);
    }
}

/// The floor is ready at 8:00 on 26 October; a visit more begins then, with all read again.
fn next_visit(site: &mut Site, at: &str) {
    site.visit(at);
    site.crawl_air("57", "64");
    site.reads(["14", "15", "15.5", "15", "14", "13"]);
    let boards = site.place(Element::SubfloorBelow, 2);
    site.read(boards, "9", Material::Solid);
}

#[test]
fn a_wetter_reading_of_the_same_day_counts_whichever_phone_and_visit_it_is_of() {
    held_by(|site| another_reads(site, BETWEEN_READINGS, 4, "41"), "too wet: Joist 4");
    let and_begins_again = |at: &'static str| {
        move |site: &mut Site| {
            site.at("2026-10-26T09:00:00-05:00");
            let wet = reading(site, 4, "41");
            site.desk.log(wet);
            next_visit(site, at);
        }
    };
    held_by(and_begins_again("2026-10-26T09:05:00-05:00"), "too wet: Joist 4");
    held_by(and_begins_again("2026-10-27T08:59:59-05:00"), "too wet: Joist 4");
}

/// Within a day by no more than a meter can be off, and then by 3 points a day; from past a meter's
/// scale as from 28 %.
#[test]
fn a_drier_reading_counts_as_soon_as_wood_can_have_dried_so_far() {
    let dries = |shown: &'static str, at: &'static str| {
        move |site: &mut Site| {
            site.at("2026-10-26T09:00:00-05:00");
            let wet = reading(site, 4, shown);
            site.desk.log(wet);
            next_visit(site, at);
        }
    };
    // To 15: of 5 points 2 are the meter's.
    held_by(dries("20", "2026-10-27T08:59:59-05:00"), "too wet: Joist 4");
    ready(dries("20", "2026-10-27T09:00:00-05:00"));
    held_by(dries("20.1", "2026-10-27T09:00:00-05:00"), "too wet: Joist 4");
    for past_the_scale in ["28", "41", "75"] {
        held_by(dries(past_the_scale, "2026-10-30T00:59:00-05:00"), "too wet: Joist 4");
        ready(dries(past_the_scale, "2026-10-30T01:00:00-05:00"));
    }
    // The visit goes on: that is no reason to doubt it.
    ready(|site| {
        let wet = reading(site, 4, "20");
        site.desk.log(wet);
        site.at("2026-10-27T09:00:00-05:00");
        let dry = reading(site, 4, "15");
        site.desk.log(dry);
    });
}

/// Nobody says how much of a sill was replaced: a spot that is read again since is of the new one.
#[test]
fn what_was_read_of_a_sill_that_was_replaced_stands_until_the_spot_is_read_again() {
    let sill = |again: bool| {
        move |site: &mut Site| {
            let at = site.place(Element::Sill, 2);
            site.read(at, "31", Material::Solid);
            site.desk.says(Part::Sill, &list::DONE, "replaced");
            if again {
                site.read(at, "12", Material::Solid);
            }
        }
    };
    held_by(sill(false), "too wet: Sill");
    ready(sill(true));
    held_by(
        |site| {
            let at = site.place(Element::Sill, 2);
            site.read(at, "31", Material::Solid);
            site.read(at, "12", Material::Solid);
            site.desk.says(Part::Sill, &list::DONE, "replaced");
        },
        "too wet: Sill",
    );
    let girder = |girders: u16| {
        move |site: &mut Site| {
            for number in 1..=girders {
                site.desk.says(Part::Girder(number), &list::STATE, "sound");
                site.desk.says(Part::Girder(number), &list::PLIES_END, "over piers");
            }
            let at = site.place(Element::Girder, 2);
            site.read(at, "31", Material::Solid);
            site.desk.says(Part::Girder(1), &list::DONE, "replaced");
            site.read(at, "12", Material::Solid);
        }
    };
    ready(girder(1));
    held_by(girder(2), "too wet: Girder");
}

/// It was asked about, and kept.
#[test]
fn a_number_that_nobody_believes_is_no_kinder_than_a_wet_one() {
    let then_dry = |shown: &'static str| {
        move |site: &mut Site| {
            let read = reading(site, 4, shown);
            site.desk.log(read);
            let read = reading(site, 4, "15");
            site.desk.log(read);
        }
    };
    held_by(then_dry("41"), "too wet: Joist 4");
    held_by(then_dry("75"), "too wet: Joist 4");
    ready(|site| {
        let read = reading(site, 4, "75");
        let wrong = site.desk.log(read);
        then_dry("15")(site);
        site.desk.withdraw(wrong);
    });
    ready(|site| {
        then_dry("75")(site);
        next_visit(site, "2026-10-30T08:00:00-05:00");
    });
}

#[test]
fn a_place_that_reads_drier_than_before_is_not_wetter_than_it_was() {
    let site = after(|site| {
        let drier = reading(site, 3, "13");
        site.desk.log(drier);
    });
    assert!(site.in_the_way().is_empty(), "{:#?}", site.in_the_way());
    held_by(
        |site| {
            let wetter = reading(site, 3, "17");
            let place = site.places[2];
            site.read(place, "13", Material::Solid);
            site.desk.log(wetter);
        },
        "wetter than it was",
    );
}

/// Its readings went with it, and what stands there is read.
#[test]
fn what_was_read_of_a_joist_that_is_gone_says_nothing_of_the_new_one() {
    let replaced = |then: &'static str| {
        move |site: &mut Site| {
            site.finds(Finding::Rotten, Some(site.places[2]));
            let wet = reading(site, 3, "27");
            site.desk.log(wet);
            site.desk.says(joist(3), &list::DONE, "replaced");
            site.desk.says(joist(3), &list::BEARING, "3 1/2");
            site.desk.says(joist(3), &list::CUTS, "none");
            if !then.is_empty() {
                let new = reading(site, 3, then);
                site.desk.log(new);
            }
        }
    };
    held_by(replaced(""), "no reading that counts in this visit, near what comes out: joist 3");
    held_by(replaced("27"), "too wet: Joist 3");
    ready(replaced("12"));
    // Not done yet when it was first asked, and done then.
    ready(|site| {
        site.desk.says(joist(3), &list::DONE, "not yet");
        replaced("12")(site);
    });
    // Not done after all: the old one stands there, as it was read.
    held_by(
        |site| {
            replaced("12")(site);
            drop_(site.desk.says(joist(3), &list::DONE, "not yet"));
        },
        "too wet: Joist 3",
    );
}

/// What is cut out takes its water along.
#[test]
fn wet_boards_that_come_out_are_not_read_again() {
    let wet_boards = |joist: u16| {
        let mut site = Site::before_the_last_visit();
        let boards = site.place(Element::SubfloorBelow, joist);
        site.read(boards, "31", Material::Solid);
        site.seen_to();
        site.in_the_way()
    };
    // The opening lies over joists 3 to 5, and joist 2 is beside it.
    assert!(wet_boards(4).is_empty(), "{:#?}", wet_boards(4));
    assert!(wet_boards(6).concat().contains("was not surely dry, and not read since"), "{:#?}", wet_boards(6));
}

/// Two phones that do not know of each other log one spot as a place of their own.
#[test]
fn one_spot_that_two_phones_logged_is_one_place() {
    let mut site = Site::before_the_last_visit();
    let spot: Place = site.desk.job().now.places().get(&site.places[3]).unwrap().value.clone();
    let other = site.desk.log(spot);
    site.read(other, "26", Material::Solid);
    site.seen_to();
    assert!(site.in_the_way().is_empty(), "{:#?}", site.in_the_way());
}

/// A place on the plan lies on the joist that runs there; where only a mark tells, nobody knows.
#[test]
fn what_was_read_on_the_plan_of_a_joist_that_is_gone_is_gone_with_it() {
    let replaced = |position: fn() -> Position| {
        move |site: &mut Site| {
            let chalk = Some(crate::desk::label("X"));
            let at =
                site.desk.log(Place { element: Element::Joist, position: position(), face: None, height: None, chalk });
            site.read(at, "31", Material::Solid);
            site.desk.does(joist(4), "replaced");
            site.read(site.places[3], "12", Material::Solid);
        }
    };
    // Joist 4 lies 64 in from the first corner.
    ready(replaced(|| Position::OnPlan { right: length("64"), down: length("3'") }));
    held_by(replaced(|| Position::OnPlan { right: length("80"), down: length("3'") }), "too wet: Joist");
    held_by(replaced(|| Position::Named), "too wet: Joist");
}

/// What nobody placed cannot be told to have come out: the line says what then ends it.
#[test]
fn boards_that_nobody_placed_are_read_again_or_taken_back() {
    let then = |position: Position| {
        move |site: &mut Site| {
            let chalk = Some(crate::desk::label("by the tub"));
            let boards = Place { element: Element::SubfloorBelow, position, face: None, height: None, chalk };
            let at = site.desk.log(boards);
            site.read(at, "31", Material::Solid);
            next_visit(site, "2026-11-23T08:00:00-05:00");
        }
    };
    held_by(then(Position::Named), "read it again; what came out, and nobody said where it was, take back under Log");
    ready(then(Position::OnPlan { right: length("60"), down: length("3'") }));
}
