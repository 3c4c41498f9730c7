//! When a caution that was read is due again, and for whom.

use super::*;

#[test]
fn what_is_found_after_a_caution_was_read_brings_it_back() {
    let mut desk = Desk::new().with(said(Part::Joists, "clear span", inches("10'", 120)));
    desk.log(named("shoring").unwrap().acknowledgement());
    assert!(!desk.is_due("shoring"));
    let rotten = |desk: Desk, joist| desk.finding(Element::Joist, joist, Finding::Rotten);
    desk = rotten(desk, 3);
    assert!(desk.is_due("shoring"), "it was read before anything was rotten");
    desk.log(named("shoring").unwrap().acknowledgement());
    desk = rotten(desk, 4);
    assert!(!desk.is_due("shoring"), "more of the same in the visit");
    let visit = desk.log(Visit { purpose: Label::default() });
    desk.pen.stamp_from(Stamp { visit: Some(visit), ..stamp("QZ", "2026-12-24T08:15:00-06:00") });
    assert!(!desk.is_due("shoring"), "nothing new");
    desk = rotten(desk, 5);
    assert!(desk.is_due("shoring"));
}

#[test]
fn a_yes_and_a_spot_of_a_later_visit_bring_their_cautions_back() {
    let mut desk = Desk::new();
    let finds: [(&str, Observation); 3] = [
        ("standing_water", check("water_on_soil", Answer::Yes).into()),
        ("bare_wire", found(Finding::BareWire).into()),
        ("weak_framing", said(Part::Girder(1), "state", word("cracked")).into()),
    ];
    for (name, find) in finds {
        desk.log(find.clone());
        desk.log(named(name).unwrap().acknowledgement());
        assert!(!desk.is_due(name), "{name}");
        let visit = desk.log(Visit { purpose: Label::default() });
        desk.pen.stamp_from(Stamp { visit: Some(visit), ..stamp("QZ", "2026-12-24T08:15:00-06:00") });
        desk.log(find);
        assert!(desk.is_due(name), "{name}");
    }
}

/// The app goes on in the last visit until somebody begins another one.
#[test]
fn in_a_visit_that_nobody_ended_more_of_the_same_is_asked_about_again_after_three_days() {
    let finds: [(&str, Observation); 5] = [
        ("standing_water", check("water_on_soil", Answer::Yes).into()),
        ("standing_water", found(Finding::StandingWater).into()),
        ("bare_wire", found(Finding::BareWire).into()),
        ("shoring", Damage::new(Part::Joist(JoistNumber::FIRST), DamageKind::Soft).into()),
        ("weak_framing", said(Part::Girder(1), "state", word("cracked")).into()),
    ];
    for (name, find) in finds {
        let is_due = |at: &str| {
            let mut desk = Desk::new();
            let visit = desk.log(Visit { purpose: Label::default() });
            desk.pen.begin_visit(visit);
            desk.log(find.clone());
            desk.log(named(name).unwrap().acknowledgement());
            assert!(!desk.is_due(name), "{name}");
            desk.pen.stamp_from(Stamp { visit: Some(visit), ..stamp("QZ", at) });
            desk.log(find.clone());
            desk.is_due(name)
        };
        let due = ["2026-11-28T08:14:59-06:00", "2026-11-28T08:15:00-06:00", "2026-11-28T08:15:01-06:00"].map(is_due);
        assert_eq!(due, [false, false, true], "{name}");
    }
}

#[test]
fn what_can_kill_is_read_by_everybody_who_goes_there() {
    let mut desk = Desk::new().with(found(Finding::BareWire)).with(found(Finding::Sewage));
    for name in ["bare_wire", "sewage"] {
        desk.log(named(name).unwrap().acknowledgement());
    }
    let due = |by: &str| -> Vec<_> {
        let by = stamp(by, "2026-11-25T09:00:00-06:00").by;
        due(desk.book.job(), Some(&by)).into_iter().map(|caution| caution.name).collect()
    };
    assert!(due("QZ").is_empty());
    assert_eq!(due("WX"), ["bare_wire"], "sewage is harmful: one reads it for all");
}

#[test]
fn what_somebody_read_is_due_no_more_until_it_is_taken_back() {
    let mut desk = Desk::new().with(found(Finding::Mould)).with(found(Finding::Sewage));
    assert_eq!(desk.due(), ["sewage", "mold"]);
    let read = desk.log(named("mold").unwrap().acknowledgement());
    assert_eq!(desk.due(), ["sewage"]);
    let withdrawal = desk.withdraw(read);
    assert_eq!(desk.due(), ["sewage", "mold"]);
    desk.withdraw(withdrawal);
    assert_eq!(desk.due(), ["sewage"]);
}
