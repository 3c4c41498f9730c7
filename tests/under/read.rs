//! What was read of a joist, against dry lumber's limit.

use crate::desk::percent;
use crate::house::{house, joist_4_after as after, one, sound_house};
use duckboard::engine::framing::joist::Reads;
use duckboard::engine::framing::{Fate, schedule};
use duckboard::engine::moisture::high::WITH_SALTS;
use duckboard::engine::moisture::{Material, Reading, Shown, Species, Wood};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::take::Units;

/// A reading that is flagged as one of dry panel is one of the joist all the same.
#[test]
fn a_joist_that_reads_wet_is_wet_whatever_the_reading_is_for() {
    let judged = after(|desk| {
        let id = desk.reads_moisture(4, 40, Material::Solid);
        let reading = desk.job().now.readings().get(&id).unwrap().value.clone();
        desk.correct(id, Reading { reference: true, ..reading });
    });
    assert_eq!(judged.joist.reads, Reads::Wet);
}

#[test]
fn a_joist_nobody_read_is_not_sound_and_one_too_close_to_tell_waits() {
    let reads = |typed: Option<&'static str>, material| {
        let mut desk = house();
        crate::house::make_sound(&mut desk, 9);
        typed.into_iter().for_each(|typed| {
            desk.reads_typed(4, typed, material);
        });
        let judged = one(&desk, 4);
        (judged.fate, judged.joist.reads)
    };
    let solid = |typed| reads(Some(typed), Material::Solid);
    assert_eq!(reads(None, Material::Solid), (Fate::Open, Reads::Unread));
    assert_eq!([solid("16.9"), solid("17")], [(Fate::Stays, Reads::Dry); 2]);
    assert_eq!([solid("17.1"), solid("19")], [(Fate::Open, Reads::Close); 2]);
    assert_eq!(solid("19.1"), (Fate::Open, Reads::Wet));
    let treated = |typed| reads(Some(typed), Material::Treated);
    assert_eq!([treated("16.9"), treated("17")], [(Fate::Stays, Reads::Dry); 2], "salts only make it read high");
    assert_eq!([treated("17.1"), treated("19"), treated("21")], [(Fate::Open, Reads::Close); 3]);
    assert_eq!(treated("21.1"), (Fate::Open, Reads::Wet));
    assert_eq!([solid("3.9"), solid("4")], [(Fate::Open, Reads::Doubted), (Fate::Stays, Reads::Dry)]);
    let panel = |typed| reads(Some(typed), Material::Plywood);
    assert_eq!([panel("12"), panel("19")], [(Fate::Open, Reads::RelativeOnly); 2]);
    assert_eq!(panel("19.1"), (Fate::Open, Reads::RelativelyWet));
}

/// Within what a meter can be off the later one tells.
#[test]
fn of_two_readings_of_one_visit_that_contradict_each_other_the_worse_one_tells() {
    let reads = |typed: [&'static str; 2], hours_later: Option<i64>| {
        let mut desk = house();
        crate::house::make_sound(&mut desk, 9);
        desk.visit("read");
        let id = desk.reads_typed(4, typed[0], Material::Solid);
        let reading = desk.job().now.readings().get(&id).unwrap().value.clone();
        if let Some(hours) = hours_later {
            let at = crate::desk::stamp().at + chrono::Duration::hours(hours);
            let visit = desk.visit("read again");
            desk.pen.stamp_from(crate::desk::stamp_of(at, Some(visit)));
        }
        let shown = Shown::Percent(percent(typed[1]));
        desk.log(Reading { shown, ..reading });
        let judged = one(&desk, 4);
        (judged.fate, judged.joist.reads)
    };
    assert_eq!(reads(["30", "12"], None), (Fate::Open, Reads::Wet));
    assert_eq!(reads(["30", "12"], Some(23)), (Fate::Open, Reads::Wet), "nothing dries so in a day");
    // From 28 to 14 at 3 points a day.
    assert_eq!(reads(["30", "12"], Some(111)), (Fate::Open, Reads::Wet), "nor so fast");
    assert_eq!(reads(["30", "12"], Some(112)), (Fate::Stays, Reads::Dry), "it dried");
    assert_eq!(reads(["12", "30"], None), (Fate::Open, Reads::Wet));
    // A meter is off by 2 points at most here.
    assert_eq!(reads(["18.4", "16.4"], None), (Fate::Stays, Reads::Dry));
    assert_eq!(reads(["18.5", "16.4"], None), (Fate::Open, Reads::Close));
}

/// Of two phones that did not know of each other the clock has to agree, and time to dry be between them.
#[test]
fn a_reading_of_another_phone_stands_for_an_earlier_one_only_where_it_is_surely_later() {
    let reads = |minutes: i64| {
        let mut desk = house();
        crate::house::make_sound(&mut desk, 9);
        desk.visit("read");
        let id = desk.reads_typed(4, "30", Material::Solid);
        let reading = desk.job().now.readings().get(&id).unwrap().value.clone();
        let shown = Shown::Percent(percent("12"));
        let dry = Reading { shown, ..reading };
        let mut phone = crate::desk::other_phone();
        (0..500).for_each(|_| drop(phone.record(dry.clone())));
        let stamp = crate::desk::stamp();
        phone
            .stamp_from(duckboard::engine::entry::Stamp { at: stamp.at + chrono::Duration::minutes(minutes), ..stamp });
        desk.book.add(duckboard::engine::job::Record::of(phone.record(dry)).unwrap());
        one(&desk, 4).joist.reads
    };
    // From 28 to 14 at 3 points a day.
    const DRIED: i64 = 112 * 60;
    assert_eq!([-DRIED, 0, DRIED - 1, DRIED].map(reads), [Reads::Wet, Reads::Wet, Reads::Wet, Reads::Dry]);
}

#[test]
fn a_reading_of_an_unsaid_meter_or_wood_does_not_make_a_joist_dry() {
    let reads = |typed: &'static str, meter: bool, material| {
        let judged = after(|desk| {
            let id = desk.reads_typed(4, typed, material);
            let reading = desk.job().now.readings().get(&id).unwrap().value.clone();
            let meter = reading.meter.filter(|_| meter);
            desk.correct(id, Reading { meter, ..reading });
        });
        (judged.fate, judged.joist.reads)
    };
    assert_eq!(reads("7", true, Material::Solid), (Fate::Stays, Reads::Dry));
    assert_eq!(
        [reads("7", false, Material::Solid), reads("19", false, Material::Solid)],
        [(Fate::Open, Reads::Loose); 2]
    );
    assert_eq!(reads("7", true, Material::Unknown), (Fate::Open, Reads::Loose));
    assert_eq!(reads("19.1", false, Material::Solid), (Fate::Open, Reads::Wet), "too wet it may be all the same");
}

#[test]
fn what_is_taken_of_treated_joists_is_said_where_a_joist_was_read_as_one() {
    let says = |element: Element, material| {
        let mut desk = sound_house();
        let position = Position::OnJoist { joist: JoistNumber::new(4).unwrap(), along: None };
        let place = desk.log(Place { element, position, face: None, height: None, chalk: None });
        let meter = Some(desk.pins());
        let wood = Wood { material, species: Some(Species::DouglasFir) };
        desk.log(Reading { meter, ..Reading::new(place, Shown::Percent(percent("12")), wood) });
        schedule(desk.job(), Units::default()).as_known().unwrap().assumed.iter().any(|it| it == WITH_SALTS)
    };
    assert!(says(Element::Joist, Material::Treated));
    assert!(!says(Element::Joist, Material::Solid) && !says(Element::Sill, Material::Treated));
}
