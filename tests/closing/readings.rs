//! What was read, against its limit and against dry wood of its kind.

use crate::desk::percent;
use crate::{Site, after, drop_, held_by, length, ready};
use duckboard::engine::closing::{DRIEST_PANEL, Decision, FEWEST};
use duckboard::engine::condition::Finding;
use duckboard::engine::entry::EntryId;
use duckboard::engine::job::Fact;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use proptest::prelude::*;

/// The limit is 19 %, and no meter is surer than 2.
#[test]
fn a_reading_counts_only_when_it_is_under_its_limit_by_more_than_a_meter_can_be_off() {
    let reads = |shown: &'static str| move |site: &mut Site| site.read(site.places[3], shown, Material::Solid);
    ready(reads("16.9"));
    ready(reads("17"));
    held_by(reads("17.1"), "within what a meter can be off");
    held_by(reads("19"), "let it dry to 17 %");
    held_by(reads("19.1"), "too wet: Joist 4");
    let sill = |shown: &'static str| {
        move |site: &mut Site| {
            let sill = site.place(Element::Sill, 3);
            site.read(sill, shown, Material::Solid);
        }
    };
    ready(sill("17"));
    held_by(sill("17.1"), "within what a meter can be off of the limit: Sill at joist 3");
    held_by(|site| drop_(site.desk.log(Fact::FramingLimit(percent("15")))), "too wet: Joist 3");
    held_by(|site| drop_(site.desk.log(Fact::FramingLimit(percent("17.4")))), "within what a meter can be off");
}

#[test]
fn a_place_that_reads_wetter_than_before_keeps_it_open() {
    // 14, and then more in the same visit.
    let reads = |shown: &'static str| move |site: &mut Site| site.read(site.places[4], shown, Material::Solid);
    ready(reads("16"));
    held_by(reads("16.1"), "wetter than it was");
}

#[test]
fn what_counts_was_read_in_this_visit() {
    let later = |site: &mut Site| site.visit("2026-11-02T08:00:00-05:00");
    held_by(later, "0 of 5 framing readings in this visit");
    held_by(later, "was wet, and not read since");
    held_by(later, "the floor that stays was not read in this visit");
    held_by(
        |site| {
            later(site);
            site.reads(["14", "15", "15.5", "15", "14", "13"]);
        },
        "the floor that stays was not read in this visit",
    );
    let all_again = |site: &mut Site| {
        later(site);
        site.crawl_air("55", "60");
        site.reads(["14", "15", "15.5", "15", "14", "13"]);
        let boards = site.place(Element::SubfloorBelow, 2);
        site.read(boards, "9", Material::Solid);
    };
    ready(all_again);
}

#[test]
fn a_first_visit_never_claims_that_anything_was_read_again() {
    let site = Site::new();
    let whats: Vec<_> = site.close_in().value.conditions.into_iter().map(|it| it.what).collect();
    assert!(!whats.iter().any(|what| what.contains("again") || what.contains("it was")), "{whats:?}");
    let whats: Vec<_> = Site::ready().close_in().value.conditions.into_iter().map(|it| it.what).collect();
    assert!(whats.iter().any(|what| what.contains("again")), "{whats:?}");
}

#[test]
fn too_few_readings_are_not_enough_and_name_the_joists() {
    let without = |joist: usize| {
        after(|site| {
            let reading =
                site.desk.job().now.readings().iter().rev().find(|(_, it)| it.value.place == site.places[joist - 1]);
            let reading = reading.map(|(id, _)| *id).unwrap();
            site.desk.withdraw(reading);
        })
    };
    assert!(without(4).in_the_way().iter().any(|line| line.contains("not read in this visit: joist 4")));
    // Joist 1 is not near what comes out: five of six are enough.
    assert_eq!(FEWEST, 5);
    let site = without(1);
    assert!(!site.in_the_way().iter().any(|line| line.contains("of 5 framing readings")), "{:#?}", site.in_the_way());
    let four = after(|site| {
        for place in [0, 1] {
            let reading =
                site.desk.job().now.readings().iter().rev().find(|(_, it)| it.value.place == site.places[place]);
            let reading = reading.map(|(id, _)| *id).unwrap();
            site.desk.withdraw(reading);
        }
    });
    assert!(
        four.in_the_way().iter().any(|line| line.starts_with("4 of 5 framing readings")),
        "{:#?}",
        four.in_the_way()
    );
}

fn panel(site: &mut Site) -> EntryId {
    let position = Position::OnJoist { joist: JoistNumber::new(6).unwrap(), along: Some(length("3'")) };
    site.desk.log(Place { element: Element::SubfloorBelow, position, face: None, height: None, chalk: None })
}

#[test]
fn panel_without_dry_panel_to_compare_it_with_is_unknown_and_says_so() {
    for material in [Material::Plywood, Material::Osb] {
        let read = |shown: &'static str| {
            move |site: &mut Site| {
                let panel = panel(site);
                site.read(panel, shown, material);
            }
        };
        held_by(read("9"), &format!("no dry {} was read in this visit", material.label()));
    }
}

/// Reads panel, and panel of some kind elsewhere in the house as the reference.
fn panel_beside(shown: &'static str, reference: &'static str, kind: Material) -> impl FnOnce(&mut Site) {
    move |site: &mut Site| {
        let here = panel(site);
        site.read(here, shown, Material::Osb);
        let place = hall(site);
        refers(site, place, reference, kind);
    }
}

fn hall(site: &mut Site) -> EntryId {
    let chalk = Some(crate::desk::label("hall, dry"));
    site.desk.log(Place { element: Element::SubfloorAbove, position: Position::Named, face: None, height: None, chalk })
}

/// A reading that says it was taken on dry panel elsewhere in the house.
fn refers(site: &mut Site, place: EntryId, shown: &str, material: Material) {
    let meter = Some(site.desk.pins());
    let wood = Wood { material, species: Some(Species::DouglasFir) };
    let reading = Reading::new(place, Shown::Percent(percent(shown)), wood);
    site.desk.log(Reading { meter, reference: true, ..reading });
}

/// Two points over dry panel of its kind (judgement).
#[test]
fn panel_is_held_to_dry_panel_of_its_kind_read_in_this_visit() {
    ready(panel_beside("11.9", "10", Material::Osb));
    ready(panel_beside("12", "10", Material::Osb));
    held_by(panel_beside("12.1", "10", Material::Osb), "more than 2 points over dry OSB");
    held_by(panel_beside("11", "10", Material::Plywood), "no dry OSB was read in this visit");
    held_by(
        |site| {
            panel_beside("11", "10", Material::Osb)(site);
            site.visit("2026-11-02T08:00:00-05:00");
            site.reads(["14", "15", "15.5", "15", "14", "13"]);
            let again = panel(site);
            site.read(again, "11", Material::Osb);
        },
        "no dry OSB was read in this visit",
    );
}

/// A stamp covers woods that read low: 16.9 on the Douglas-fir scale may be over 19 % in one
/// of them. So may wood of which nobody said what it is.
#[test]
fn wood_that_may_read_low_is_held_by_the_most_that_it_may_be() {
    let read = |shown: &'static str, species| {
        move |site: &mut Site| site.read_of(site.places[3], shown, Wood { material: Material::Solid, species })
    };
    ready(read("14", None));
    held_by(read("14.1", None), "may be wetter than it reads, by its wood: Joist 4");
    held_by(read("16", Some(Species::SprucePineFir)), "say its species and the meter's scale, or let it dry to 14 %");
    ready(read("17", Some(Species::DouglasFir)));
}

#[test]
fn a_number_that_nobody_believes_settles_nothing() {
    held_by(|site| site.read(site.places[3], "3", Material::Solid), "a number that nobody believes: Joist 4");
    held_by(|site| site.read(site.places[3], "61", Material::Solid), "too wet: Joist 4");
}

#[test]
fn two_readings_of_a_visit_that_contradict_each_other_leave_the_wetter_one_standing() {
    let reads = |all: &'static [&'static str]| {
        move |site: &mut Site| all.iter().for_each(|shown| site.read(site.places[5], shown, Material::Solid))
    };
    // 13 before them, at the same place.
    held_by(reads(&["30", "14"]), "too wet: Joist 6");
    held_by(reads(&["14", "30"]), "too wet: Joist 6");
    held_by(reads(&["16.1", "14"]), "wetter than it was: Joist 6");
    ready(reads(&["15", "13"]));
    // A number that nobody believes gives way to one that is read again.
    ready(reads(&["3", "14"]));
    held_by(reads(&["14", "3"]), "a number that nobody believes: Joist 6");
    ready(|site| {
        site.read(site.places[5], "30", Material::Solid);
        let wrong = *site.desk.job().now.readings().iter().next_back().unwrap().0;
        site.desk.withdraw(wrong);
    });
}

/// A little wetter each time is wetter, though each step is within what a meter can be off.
#[test]
fn a_place_is_held_against_the_driest_that_it_was_since_it_was_last_too_wet() {
    let visits = |all: &'static [&'static str]| {
        move |site: &mut Site| {
            for (day, shown) in (1..).zip(all) {
                site.visit(&format!("2026-11-{day:02}T08:00:00-05:00"));
                site.crawl_air("55", "60");
                site.reads([shown; 6]);
                let boards = site.place(Element::SubfloorBelow, 2);
                site.read(boards, "9", Material::Solid);
            }
        }
    };
    ready(visits(&["14", "15", "15"]));
    held_by(visits(&["14", "15.5", "16.5"]), "wetter than it was");
    held_by(visits(&["13", "14", "15.1"]), "wetter than it was");
    // Soaked again and dried again: what it was before that is another story.
    ready(visits(&["13", "24", "16"]));
    ready(visits(&["13", "15.1", "15"]));
}

/// Which meter it was and what it touched is said, or the number means nothing.
#[test]
fn a_reading_is_dry_only_by_pins_that_were_named_in_lumber_that_was_named() {
    let without_meter = |material| {
        move |site: &mut Site| {
            let wood = Wood { material, species: Some(Species::DouglasFir) };
            for place in site.places.clone() {
                site.desk.log(Reading::new(place, Shown::Percent(percent("14")), wood));
            }
        }
    };
    for material in [Material::Solid, Material::Unknown] {
        held_by(without_meter(material), "say which meter");
        held_by(without_meter(material), "0 of 5 framing readings in this visit");
    }
    held_by(|site| site.read(site.places[3], "13", Material::Unknown), "read on nobody knows what: Joist 4");
    held_by(
        |site| {
            let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
            for place in site.places.clone() {
                site.desk.log(Reading::new(place, Shown::UnderMinimum, wood));
            }
        },
        "say which meter",
    );
    held_by(
        |site| {
            let boards = site.place(Element::SubfloorBelow, 6);
            let wood = Wood { material: Material::Solid, species: Some(Species::DouglasFir) };
            site.desk.log(Reading::new(boards, Shown::Percent(percent("8")), wood));
        },
        "say which meter",
    );
    // Read again with the meter said, it is known.
    ready(|site| {
        without_meter(Material::Solid)(site);
        site.reads(["14"; 6]);
    });
}

#[test]
fn a_joist_is_read_on_the_joist_and_not_on_the_sill_beside_it() {
    held_by(
        |site| {
            let on_joist_4 =
                site.desk.job().now.readings().iter().rev().find(|(_, it)| it.value.place == site.places[3]);
            let on_joist_4 = on_joist_4.map(|(id, _)| *id).unwrap();
            site.desk.withdraw(on_joist_4);
            let sill = site.place(Element::Sill, 4);
            site.read(sill, "13", Material::Solid);
        },
        "not read in this visit: joist 4",
    );
}

#[test]
fn a_reading_whose_place_is_gone_is_told_and_not_forgotten() {
    held_by(
        |site| {
            let place = site.place(Element::Joist, 4);
            site.read(place, "40", Material::Solid);
            site.desk.withdraw(place);
        },
        "1 reading at a place that was taken back",
    );
    held_by(
        |site| {
            let place = site.place(Element::FinishedFloor, 2);
            site.read(place, "40", Material::Solid);
        },
        "too wet: Finished floor at joist 2",
    );
}

/// The opening lies from 40 to 80 in across the joists and from 24 to 72 in along them; a bay
/// is 16 in.
#[test]
fn the_floor_that_stays_is_read_beside_what_comes_out() {
    let boards_at = |joist: u16, along: Option<&'static str>, shown: &'static str| {
        move |site: &mut Site| {
            let boards = *site.desk.job().now.readings().iter().next_back().unwrap().0;
            site.desk.withdraw(boards);
            let position = Position::OnJoist { joist: JoistNumber::new(joist).unwrap(), along: along.map(length) };
            let element = Element::SubfloorBelow;
            let place = site.desk.log(Place { element, position, face: None, height: None, chalk: None });
            site.read(place, shown, Material::Solid);
        }
    };
    let not_beside = "not read within a bay of every opening";
    for (joist, along) in [(2, "3'"), (6, "3'"), (4, "24"), (4, "8"), (4, "88")] {
        ready(boards_at(joist, Some(along), "9"));
    }
    held_by(boards_at(1, Some("3'"), "9"), not_beside);
    held_by(boards_at(4, Some("7 15/16"), "9"), not_beside);
    held_by(boards_at(2, None, "9"), not_beside);
    // What comes out says nothing of what stays, dry or wet.
    held_by(boards_at(4, Some("4'"), "9"), "the floor that stays was not read in this visit");
    ready(|site| {
        let place = site.place(Element::SubfloorBelow, 4);
        site.read(place, "40", Material::Solid);
    });
    held_by(
        |site| {
            let boards = *site.desk.job().now.readings().iter().next_back().unwrap().0;
            site.desk.withdraw(boards);
            let hall = hall(site);
            site.read(hall, "9", Material::Solid);
        },
        not_beside,
    );
}

#[test]
fn dry_panel_to_compare_with_is_dry_itself_and_was_read_elsewhere_by_the_same_meter() {
    assert!((DRIEST_PANEL.to_percent() - 14.0).abs() < 1e-9);
    ready(panel_beside("15", "13.9", Material::Osb));
    ready(panel_beside("15", "14", Material::Osb));
    held_by(panel_beside("15", "14.1", Material::Osb), "shows more than 14 %, and is not surely dry itself");
    held_by(panel_beside("24", "22.5", Material::Osb), "is not surely dry itself");
    held_by(panel_beside("3", "10", Material::Osb), "a number that nobody believes: Subfloor, from below");
    // Read beside what comes out, it is a reading like any other.
    held_by(
        |site| {
            let here = panel(site);
            site.read(here, "11", Material::Osb);
            refers(site, here, "10", Material::Osb);
        },
        "no dry OSB was read in this visit",
    );
    let unnamed = |meter_of_reference: bool| {
        move |site: &mut Site| {
            let (here, there) = (panel(site), hall(site));
            let wood = Wood { material: Material::Osb, species: None };
            let reads = |place, shown: &str| Reading::new(place, Shown::Percent(percent(shown)), wood);
            site.desk.log(reads(here, "11"));
            let meter = meter_of_reference.then(|| site.desk.pins());
            site.desk.log(Reading { reference: true, meter, ..reads(there, "10") });
        }
    };
    held_by(unnamed(false), "no dry OSB was read in this visit");
    held_by(unnamed(true), "no dry OSB was read in this visit");
}

/// A reading that says it is a reference is one only on panel elsewhere in the house.
#[test]
fn framing_is_no_reference_however_its_reading_is_marked() {
    held_by(
        |site| {
            let place = site.place(Element::Joist, 4);
            refers(site, place, "40", Material::Solid);
        },
        "too wet: Joist 4",
    );
}

/// At 60 °F wood settles at 16.6 % in air of 82 %, at 17.5 in 84, and at 19.3 in 87 (the curve of
/// FPL-GTR-282, equation 4-5).
#[test]
fn crawl_air_of_this_visit_keeps_wood_under_its_limit() {
    ready(|site| site.crawl_air("60", "82"));
    held_by(|site| site.crawl_air("60", "84"), "close to its limit");
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

proptest! {
    /// Reading one more thing never makes ready what was not, by hiding what is in the way:
    /// everything else in the way is still there.
    #[test]
    fn reading_the_panel_takes_nothing_else_out_of_the_way(shown in 5..40_u16, known in any::<bool>()) {
        let mut site = Site::ready();
        if known {
            site.finds(Finding::Sewage, None);
        }
        let before = site.in_the_way();
        let place = panel(&mut site);
        site.read(place, &shown.to_string(), Material::Osb);
        let after = site.in_the_way();
        prop_assert!(before.iter().all(|line| after.contains(line)), "{:?} {:?}", before, after);
    }
}

/// Reading panel is never worse than not reading it: unread, it is as open as unknown.
#[test]
fn a_floor_that_stays_and_was_not_read_is_not_dry() {
    let mut site = Site::ready();
    let boards = *site.desk.job().now.readings().iter().next_back().unwrap().0;
    site.desk.withdraw(boards);
    assert!(matches!(site.decision(), Decision::NotEnough(1)), "{:#?}", site.in_the_way());
}
