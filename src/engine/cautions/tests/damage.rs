//! Spots that were logged, and what the checklist says.

use super::*;

/// An awl or a tape on a member, so deep.
fn spot(of: Part, kind: DamageKind, depth: i32) -> Damage {
    let depth = Depth::Is(Typed::new(format!("{depth} in"), Length::inches(depth)));
    Damage { depth: Some(depth), ..Damage::new(of, kind) }
}

#[test]
fn spots_that_were_logged_bring_shoring_nail_plates_and_an_engineer() {
    let joist = |number| Part::Joist(JoistNumber::new(number).unwrap());
    let due = |kind, depth, name| Desk::new().with(spot(joist(3), kind, depth)).is_due(name);
    assert!(due(DamageKind::Soft, 1, "shoring") && !due(DamageKind::Soft, 0, "shoring"), "an awl that stops");
    assert!(due(DamageKind::Notch, 1, "shoring") && due(DamageKind::Hole, 1, "shoring"));
    assert!(due(DamageKind::Notch, 1, "nail_plates") && due(DamageKind::Hole, 1, "nail_plates"));
    assert!(!due(DamageKind::Soft, 1, "nail_plates"));
    let unmeasured = Damage::new(joist(3), DamageKind::Notch);
    assert!(Desk::new().with(unmeasured).is_due("shoring"), "what nobody measured is not the mild case");
    // More than two soft joists: [C], common practice, no source.
    let soft = |joists: &[u16], depth| {
        let spots = joists.iter().map(|number| spot(joist(*number), DamageKind::Soft, depth));
        spots.fold(Desk::new(), Desk::with).is_due("weak_framing")
    };
    assert!(soft(&[3, 4, 6], 1) && !soft(&[3, 4], 1) && !soft(&[3, 3, 3], 1) && !soft(&[3, 4, 6], 0));
    let girder = |depth| Desk::new().with(spot(Part::Girder(1), DamageKind::Soft, depth)).is_due("weak_framing");
    assert!(girder(1) && !girder(0));
    let one_found = Desk::new().finding(Element::Joist, 6, Finding::Soft);
    let with_two = one_found.with(spot(joist(3), DamageKind::Soft, 1)).with(spot(joist(4), DamageKind::Soft, 1));
    assert!(with_two.is_due("weak_framing"), "findings and awl are one picture");
}

#[test]
fn what_the_checklist_says_yes_to_is_cautioned_about_as_if_it_was_found() {
    let pairs = [
        ("water_on_soil", "standing_water"),
        ("drain_smell", "sewage"),
        ("dryer_duct", "dryer_duct"),
        ("lint", "dryer_duct"),
    ];
    for (question, caution) in pairs {
        for (answer, is_due) in [(Answer::Yes, true), (Answer::No, false), (Answer::Unknown, false)] {
            assert_eq!(Desk::new().with(check(question, answer)).is_due(caution), is_due, "{question} {answer:?}");
        }
        let yes = || Desk::new().with(check(question, Answer::Yes));
        assert!(!yes().with(check(question, Answer::No)).is_due(caution), "{question}: put right in its visit");
        assert!(yes().with(check(question, Answer::Unknown)).is_due(caution), "{question}: takes back nothing");
        let mut later = yes();
        let visit = later.log(Visit { purpose: Label::default() });
        later.pen.begin_visit(visit);
        assert!(later.with(check(question, Answer::No)).is_due(caution), "{question}: a later visit puts none right");
    }
    let desk = Desk::new().with(check("water_on_soil", Answer::Yes));
    assert_eq!(all_triggered(desk.book.job())[0].because, "On the checklist: water stands or runs on the soil.");
    let words = named("dryer_duct").unwrap().words;
    assert!(words.contains("Lint burns") && words.contains("carbon monoxide") && words.contains("water"));
}

/// More than a third of the depth: [C], common practice, no source.
#[test]
fn a_joist_that_lost_more_than_a_third_of_its_depth_is_for_an_engineer() {
    let joist = || Part::Joist(JoistNumber::new(4).unwrap());
    let sixteenths = |count: i32| Typed::new(format!("{count}/16\""), Length::sixty_fourths(count * 4));
    let spot = |kind, face, deep| Damage {
        depth: Some(Depth::Is(sixteenths(deep))),
        face: Some(face),
        ..Damage::new(joist(), kind)
    };
    let deep = |of: Part| said(of, "depth", Value::Length(sixteenths(7 * 16 + 8)));
    let is_weak = |damage: Damage| Desk::new().with(deep(Part::Joists)).with(damage).is_due("weak_framing");
    for kind in DamageKind::ALL {
        // 7 1/2 in: a third is 2 1/2.
        let weak = [39, 40, 41].map(|deep| is_weak(spot(kind, Face::LowerEdge, deep)));
        assert_eq!(weak, [false, false, true], "{kind:?}");
    }
    // Of a depth that nobody said the smallest is taken: 5 1/2 in, a third of it 1 13/16 and some.
    let unsaid = |deep| Desk::new().with(spot(DamageKind::Notch, Face::LowerEdge, deep)).is_due("weak_framing");
    assert_eq!([29, 30].map(unsaid), [false, true]);
    // From a side it takes of the breadth, 1 1/2 in.
    assert_eq!([8, 9].map(|deep| is_weak(spot(DamageKind::Soft, Face::NearSide, deep))), [false, true]);
    let unreached = Damage { depth: Some(Depth::CannotReach), ..Damage::new(joist(), DamageKind::Soft) };
    assert!(is_weak(unreached), "nobody knows how deep it goes");
    // As logs of before say it.
    for (what, name) in [("soft depth", "soft"), ("notch depth", "notched"), ("hole", "a hole")] {
        let before = |deep| Desk::new().with(deep_said(what, deep));
        assert_eq!([29, 30].map(|deep| before(deep).is_due("weak_framing")), [false, true], "{what}");
        let desk = before(30);
        let because = all_triggered(desk.book.job()).into_iter().find(|it| it.caution.name == "weak_framing");
        assert!(because.unwrap().because.contains(name));
    }
}

fn deep_said(what: &str, sixteenths: i32) -> Particular {
    let typed = Typed::new(format!("{sixteenths}/16\""), Length::sixty_fourths(sixteenths * 4));
    said(Part::Joist(JoistNumber::new(4).unwrap()), what, Value::Length(typed))
}

#[test]
fn a_joist_that_is_not_left_as_it_is_is_shored_before_it_is_cut() {
    let finds = |element, finding| Desk::new().finding(element, 3, finding).is_due("shoring");
    for finding in Finding::OF_WOOD.into_iter().chain(Finding::AROUND) {
        let is_grave = matches!(finding, Finding::Soft | Finding::Rotten | Finding::Cracked | Finding::Strands);
        assert_eq!(finds(Element::Joist, finding), is_grave, "{finding:?}");
        assert_eq!(Desk::new().with(found(finding)).is_due("shoring"), is_grave, "{finding:?}, nobody said where");
        assert!(!finds(Element::SubfloorBelow, finding), "{finding:?}");
    }
    assert!(finds(Element::Sill, Finding::Rotten), "what a sill carries stands on something meanwhile");
    // Whose span is asked about may span too far.
    for what in ["clear span", "next span", "hole"] {
        assert!(Desk::new().with(said(Part::Joists, what, inches("120 in", 120))).is_due("shoring"), "{what}");
    }
    assert!(!Desk::new().with(said(Part::Joists, "depth", inches("8 in", 8))).is_due("shoring"));
}

#[test]
fn a_joist_that_an_awl_goes_into_is_shored_and_an_engineers_until_somebody_measured_how_deep() {
    let awl = |awl: &str| Desk::new().with(said(Part::Joist(JoistNumber::FIRST), "awl", word(awl)));
    for (said, is_due) in [("goes in", true), ("stops everywhere", false), ("cannot reach", false)] {
        assert_eq!(["shoring", "weak_framing"].map(|name| awl(said).is_due(name)), [is_due; 2], "{said}");
    }
    let measured = |depth| awl("goes in").with(spot(Part::Joist(JoistNumber::FIRST), DamageKind::Soft, depth));
    // A third of the smallest joist, 5 1/2 in, is less than 2 in.
    assert!(!measured(1).is_due("weak_framing") && measured(2).is_due("weak_framing"));
    assert!(measured(1).is_due("shoring"), "it is to be sistered all the same");
    let other = awl("goes in").with(spot(Part::Joist(JoistNumber::FIRST.step(1)), DamageKind::Soft, 1));
    assert!(other.is_due("weak_framing"), "what was measured on another joist says nothing of this one");
}
