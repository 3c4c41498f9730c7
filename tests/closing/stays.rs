//! The floor that stays: boards against their limit, panel against dry panel of its kind.

use crate::desk::percent;
use crate::{Site, after, held_by, length, ready};
use duckboard::engine::closing::{DRIEST_PANEL, Decision};
use duckboard::engine::condition::Finding;
use duckboard::engine::entry::EntryId;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use proptest::prelude::*;

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

/// Damp panel elsewhere makes no panel here dry.
#[test]
fn of_two_dry_panels_the_drier_is_the_reference_whichever_was_read_last() {
    let beside = |references: [&'static str; 2]| {
        move |site: &mut Site| {
            let here = panel(site);
            site.read(here, "15.5", Material::Osb);
            for reference in references {
                let place = hall(site);
                refers(site, place, reference, Material::Osb);
            }
        }
    };
    held_by(
        beside(["8", "13.9"]),
        "more than 2 points over the dry OSB, which reads 8.0 % (Subfloor, from above, \"hall, dry\")",
    );
    held_by(beside(["13.9", "8"]), "more than 2 points over the dry OSB");
    ready(beside(["13.5", "13.9"]));
    held_by(beside(["13.4", "13.9"]), "more than 2 points over the dry OSB");
}

/// Nobody knows how far under the meter's scale it is, so that nobody knows how far over it a number
/// is either.
#[test]
fn panel_too_dry_for_the_meter_is_a_reference_of_what_is_as_dry_alone() {
    let beside = |shown: Option<&'static str>, too: Option<&'static str>| {
        move |site: &mut Site| {
            let here = panel(site);
            match shown {
                Some(shown) => site.read(here, shown, Material::Osb),
                None => site.reads_under_minimum(here, Material::Osb),
            }
            let place = hall(site);
            let wood = Wood { material: Material::Osb, species: None };
            let meter = Some(site.desk.pins());
            site.desk.log(Reading { meter, reference: true, ..Reading::new(place, Shown::UnderMinimum, wood) });
            too.into_iter().for_each(|reference| {
                let place = hall(site);
                refers(site, place, reference, Material::Osb);
            });
        }
    };
    ready(beside(None, None));
    ready(beside(None, Some("11")));
    held_by(beside(Some("7"), None), "dry OSB reads under the meter's scale, and nobody knows how far over it is");
    held_by(beside(Some("10"), Some("11")), "dry OSB reads under the meter's scale");
    // Dry panel is no wetter than 14 %: what is 2 points over that is too wet whatever that one is.
    held_by(beside(Some("16"), None), "nobody knows how far over it is");
    held_by(beside(Some("16.1"), None), "more than 2 points over the dry OSB, which reads under the meter's scale");
}

/// Two points over dry panel of its kind (judgement).
#[test]
fn panel_is_held_to_dry_panel_of_its_kind_read_in_this_visit() {
    ready(panel_beside("11.9", "10", Material::Osb));
    ready(panel_beside("12", "10", Material::Osb));
    held_by(panel_beside("12.1", "10", Material::Osb), "more than 2 points over the dry OSB");
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

/// The opening lies from 40 to 80 in across the joists and from 24 to 72 in along them, and is cut
/// from joist 2, at 32 in, to joist 5; a bay is 16 in.
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
    for (joist, along) in [(1, "3'"), (2, "3'"), (5, "3'"), (4, "72"), (6, "3'"), (4, "24"), (4, "8"), (4, "88")] {
        ready(boards_at(joist, Some(along), "9"));
    }
    held_by(boards_at(7, Some("3'"), "9"), not_beside);
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
    held_by(panel_beside("15", "14.1", Material::Osb), "is not surely dry itself: it may hold more than 14 %");
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

/// Panel that is wet is no dry panel, whatever it was read for.
#[test]
fn a_reference_that_is_wet_is_a_place_that_is_wet() {
    let reference = |shown: &'static str| {
        move |site: &mut Site| {
            let place = hall(site);
            refers(site, place, shown, Material::Plywood);
        }
    };
    let is_told =
        |shown| after(reference(shown)).in_the_way().iter().any(|line| line.contains("is not surely dry itself"));
    assert_eq!(["14", "14.1", "31"].map(is_told), [false, true, true]);
}
