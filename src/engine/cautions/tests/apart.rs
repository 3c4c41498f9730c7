//! What two phones say that did not know of each other: a caution is due if either word calls
//! for it.

use super::*;

/// The first phone says it with a greater count at 8:15, the other at this time.
fn apart(at: &str, first: &[Particular], other: &[Particular]) -> Desk {
    let mut desk = Desk::new();
    let mut pen = Pen::new(&Log::default(), DeviceId::new(2), stamp("WX", at));
    let others: Vec<_> = other.iter().map(|other| pen.record(other.clone())).collect();
    for _ in &others {
        desk.log(check("shower_wet", Answer::No));
    }
    for first in first {
        desk.log(first.clone());
    }
    for entry in others {
        desk.keep(entry);
    }
    desk
}

const LATER: &str = "2026-12-24T08:15:00-06:00";
const AT_THE_SAME_SECOND: &str = "2026-11-25T08:15:00-06:00";
const A_SECOND_BEFORE: &str = "2026-11-25T08:14:59-06:00";

/// Is it due while nobody can tell which of the two came last, and not once the mild word
/// surely did?
#[track_caller]
fn either_word_calls_for_it(name: &str, mild: &[Particular], grave: &[Particular], beside: &[Observation]) {
    let is_due = |at, first, other| beside.iter().cloned().fold(apart(at, first, other), Desk::with).is_due(name);
    for at in [LATER, AT_THE_SAME_SECOND] {
        assert!(is_due(at, mild, grave), "{name}: the other phone says so, {at}");
        assert!(is_due(at, grave, mild), "{name}: the first phone says so, {at}");
    }
    assert!(!is_due(A_SECOND_BEFORE, mild, grave), "{name}: the mild word is surely the last");
    assert!(is_due(A_SECOND_BEFORE, grave, mild), "{name}: the grave word is");
    assert!(!is_due(LATER, mild, mild), "{name}: both say the mild word");
}

fn house(what: &str, is: &str) -> [Particular; 1] {
    [said(Part::House, what, word(is))]
}

#[test]
fn a_fan_that_one_of_two_phones_chose_is_cautioned_about() {
    either_word_calls_for_it("exhaust_fan", &house("air", "vents"), &house("air", "exhaust fan"), &[]);
    either_word_calls_for_it("exhaust_fan", &house("air", "dehumidifier"), &house("air", "exhaust fan"), &[]);
    either_word_calls_for_it("silica", &house("air", "dehumidifier"), &house("air", "vents"), &[]);
    let desk = apart(LATER, &house("air", "vents"), &house("air", "exhaust fan"));
    let because =
        all_triggered(desk.book.job()).into_iter().find(|it| it.caution.name == "exhaust_fan").unwrap().because;
    assert_eq!(because, "One phone says that an exhaust fan is to take air out from under the house.");
}

#[test]
fn what_carries_joists_and_one_of_two_phones_saw_is_for_an_engineer() {
    let girder = |what: &str, is: &str| [said(Part::Girder(1), what, word(is))];
    either_word_calls_for_it(
        "weak_framing",
        &girder("plies end", "over piers"),
        &girder("plies end", "between piers"),
        &[],
    );
    either_word_calls_for_it("weak_framing", &girder("state", "sound"), &girder("state", "cannot reach"), &[]);
}

/// More than a third of the depth: [C], common practice, no source.
#[test]
fn a_joist_is_as_deep_as_the_less_that_two_phones_measured() {
    let joist = || Part::Joist(JoistNumber::FIRST);
    let notch = Damage {
        depth: Some(Depth::Is(Typed::new("2 in", Length::inches(2)))),
        face: Some(Face::LowerEdge),
        ..Damage::new(joist(), DamageKind::Notch)
    };
    let deep = |of: Part, inches_deep| [said(of, "depth", inches("", inches_deep))];
    for of in [joist(), Part::Joists] {
        either_word_calls_for_it("weak_framing", &deep(of.clone(), 6), &deep(of, 5), &[notch.clone().into()]);
    }
    // As logs of before format 1.5 say a spot, of a joist 6 in deep.
    let soft = |deep| [said(joist(), "soft depth", inches("", deep))];
    either_word_calls_for_it("weak_framing", &soft(2), &soft(3), &[deep(joist(), 6)[0].clone().into()]);
}
