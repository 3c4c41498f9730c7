use crate::house::{house, inches};
use crate::phones::{apart, of_house};
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::ground::checks::{self, checks, unvented_checks};
use duckboard::engine::ground::plan::{
    AirWay, Covered, cover_for, is_covered_now, unvented_for, vents_for, wants_cover,
};
use duckboard::engine::ground::rain::{led_away, rain};
use duckboard::engine::job::{Fact, Venting};
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::Check;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, Takes};
use duckboard::engine::survey::{Layer, LayerKind};
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;

fn units() -> Units {
    Units::default()
}

/// 24 × 30 ft, 10 ft rolls, laps and turn-up of 6 in: 3 strips of 31 ft, 62 ft of tape,
/// 108 ft of seal (computed).
#[test]
fn a_cover_takes_strips_tape_and_seal() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "30'");
    desk.says(Part::House, &GROUND_WIDTH, "24'");
    let known = cover_for(desk.job(), units());
    let cover = *known.value().unwrap();
    assert_eq!((cover.strips, cover.strip, cover.rolls), (3, Length::feet(31), 1));
    assert_eq!((cover.tape, cover.seal), (Length::feet(62), Length::feet(108)));
    // Four piers of 16 in square (common practice, no source).
    desk.says(Part::House, &PIERS, "4");
    assert_eq!(cover_for(desk.job(), units()).value().unwrap().seal, Length::feet(108) + Length::inches(256));
    desk.says(Part::House, &LAP, "12 in, radon rule");
    desk.says(Part::House, &ROLL_WIDTH, "9'");
    assert_eq!(cover_for(desk.job(), units()).value().unwrap().strips, 3);
}

#[test]
fn one_way_of_the_ground_alone_and_a_roll_that_is_too_short_are_asked_for() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "60'");
    assert_eq!(cover_for(desk.job(), units()), Figure::Missing(vec![Need::Ground]));
    desk.says(Part::House, &GROUND_WIDTH, "24'");
    desk.says(Part::House, &ROLL_LENGTH, "50'");
    assert_eq!(cover_for(desk.job(), units()), Figure::Missing(vec![Need::Roll]));
}

/// 250 sq ft: 240 sq in of net free area at 1/150, 5 vents of 50 sq in; 24 sq in at
/// 1/1500, and with one at each corner 4 (computed from R408 as quoted \[P2\]).
#[test]
fn vents_go_by_ratio_label_and_corners() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "25'");
    desk.says(Part::House, &GROUND_WIDTH, "10'");
    assert_eq!(vents_for(desk.job()), Figure::Missing(vec![Need::VentLabel]));
    desk.says(Part::House, &VENT_AREA, "50");
    let count = |desk: &crate::desk::Desk| vents_for(desk.job()).value().unwrap().with_corners;
    assert_eq!(count(&desk), 5);
    desk.says(Part::House, &COVERED, "yes");
    desk.says(Part::House, &VENT_RATIO, "1/1500 over a cover");
    assert_eq!(count(&desk), 4);
    desk.says(Part::House, &VENT_CORNERS, "no");
    assert_eq!(count(&desk), 1);
}

/// 250 sq ft is 240 sq in at 1/150, 120 at 1/300 and 24 at 1/1500. Fewer vents hold over a
/// cover alone: R408.2 as quoted \[P2\], WAC 51-51-0408 \[P\], whose R408.1 asks for the cover.
#[test]
fn fewer_vents_hold_over_a_cover_that_was_said_and_never_otherwise() {
    let net = |ratio: &str, covered: Option<&str>| {
        let mut desk = house();
        desk.says(Part::House, &GROUND_LENGTH, "25'");
        desk.says(Part::House, &GROUND_WIDTH, "10'");
        desk.says(Part::House, &VENT_AREA, "50");
        desk.says(Part::House, &VENT_RATIO, ratio);
        if let Some(word) = covered {
            desk.says(Part::House, &COVERED, word);
        }
        let vents = vents_for(desk.job());
        let known = vents.as_known().unwrap();
        ((known.value.net_free.to_square_feet() * 144.0).round(), known.doubts.join(" "))
    };
    for (ratio, over_a_cover) in [("1/150", 240.0), ("1/300", 120.0), ("1/1500 over a cover", 24.0)] {
        assert_eq!(net(ratio, Some("yes")).0, over_a_cover, "{ratio}");
        for covered in [None, Some("no")] {
            assert_eq!(net(ratio, covered).0, 240.0, "{ratio}, {covered:?}");
        }
    }
    let (_, said_no) = net("1/300", Some("no"));
    assert!(said_no.contains("said not to be covered: 1/150 is taken") && said_no.contains("6 mil"), "{said_no}");
    assert!(net("1/300", None).1.contains("not said to be covered: 1/150 is taken"));
    assert!(net("1/300", Some("yes")).1.contains("holds over a cover alone, once it lies: 6 mil, joints lapped 6 in"));
    assert!(!net("1/150", None).1.contains("is taken"), "1/150 needs no cover");
}

/// What nobody said is not taken for covered; a space without vents has its cover ordered all
/// the same, unless somebody says no.
#[test]
fn a_cover_that_nobody_said_is_ordered_where_it_has_to_be_and_never_taken_for_laid() {
    let mut desk = house();
    assert_eq!((Covered::of(desk.job()), wants_cover(desk.job())), (Covered::NotSaid, false));
    desk.log(Fact::Venting(Venting::Unvented));
    assert_eq!((Covered::of(desk.job()), wants_cover(desk.job())), (Covered::NotSaid, true));
    desk.says(Part::House, &COVERED, "no");
    assert_eq!((Covered::of(desk.job()), wants_cover(desk.job())), (Covered::No, false));
    desk.says(Part::House, &COVERED, "yes");
    assert_eq!((Covered::of(desk.job()), wants_cover(desk.job())), (Covered::Yes, true));
}

/// 250 sq ft, 2 ft high: 5 cfm, 0.60 changes an hour (computed from R408.3 as quoted \[P2\]).
#[test]
fn a_space_without_vents_wants_air_by_its_area() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "25'");
    desk.says(Part::House, &GROUND_WIDTH, "10'");
    desk.says(Part::House, &AIR_WAY, "exhaust fan");
    assert_eq!(unvented_for(desk.job()), Figure::Missing(vec![Need::CrawlHeight]));
    desk.log(Fact::CrawlHeight(inches("24")));
    let air = *unvented_for(desk.job()).value().unwrap();
    assert!((air.cfm - 5.0).abs() < 1e-9 && (air.changes_an_hour - 0.6).abs() < 1e-9, "{air:?}");
}

fn held(checks: &[checks::Check], what: &str) -> (Option<bool>, String) {
    let check = checks.iter().find(|check| check.what == what).unwrap_or_else(|| panic!("{what}: {checks:?}"));
    (check.holds, check.says.clone())
}

/// The cover, the insulated walls, the path of the air: R408.3 as quoted \[P2\]. The draft: EPA,
/// Energy Savings Plus Health, 11.1 \[P\].
#[test]
fn a_space_without_vents_is_open_until_all_that_it_has_to_have_is_said() {
    let asks = |desk: &crate::desk::Desk| unvented_checks(desk.job(), units());
    let mut desk = house();
    assert!(asks(&desk).is_empty(), "vents ask for none of it");
    desk.says(Part::House, &AIR_WAY, "exhaust fan");
    assert_eq!(asks(&desk).len(), 4);
    assert!(asks(&desk).iter().all(|check| check.holds.is_none()), "what nobody said is open: {:?}", asks(&desk));
    let path = "Air path down from the rooms";
    let draft = "Draft of water heater, furnace, stove";
    for (item, word, what, holds) in [
        (AIR_PATH, "no", path, false),
        (AIR_PATH, "yes", path, true),
        (WALLS_INSULATED, "no", "Outer walls insulated", false),
        (WALLS_INSULATED, "yes", "Outer walls insulated", true),
        (FUEL_BURNED, "yes", draft, false),
        (FUEL_BURNED, "yes, draft tested", draft, true),
        (FUEL_BURNED, "none", draft, true),
    ] {
        desk.says(Part::House, &item, word);
        assert_eq!(held(&asks(&desk), what).0, Some(holds), "{what}: {word}");
    }
    assert_eq!(held(&asks(&desk), "Cover over the ground").0, None);
    answers(&mut desk, "ground_covered_now", Answer::Yes);
    assert!(asks(&desk).iter().all(|check| check.holds == Some(true)));
    // Edges go 6 in up the walls (R408.3 as quoted [P2]).
    desk.says(Part::House, &TURN_UP, "5 15/16");
    assert_eq!(held(&asks(&desk), "Cover over the ground").0, Some(false));
    desk.says(Part::House, &TURN_UP, "6");
    assert_eq!(held(&asks(&desk), "Cover over the ground").0, Some(true));
    let names = |desk: &crate::desk::Desk| asks(desk).into_iter().map(|check| check.what).collect::<Vec<_>>();
    desk.says(Part::House, &AIR_WAY, "supply from the house");
    assert_eq!(names(&desk), ["Cover over the ground", "Air path back to the rooms", "Outer walls insulated"]);
    desk.says(Part::House, &AIR_WAY, "dehumidifier");
    assert_eq!(names(&desk), ["Cover over the ground", "Outer walls insulated"]);
}

/// "Cover the ground: yes" is what is to be done. Only who sees it lie there can say that it does.
#[test]
fn an_intention_to_cover_the_ground_is_not_a_cover() {
    let what = "Cover over the ground";
    let cover = |desk: &crate::desk::Desk| held(&unvented_checks(desk.job(), units()), what);
    let mut desk = house();
    desk.says(Part::House, &AIR_WAY, "dehumidifier");
    desk.says(Part::House, &COVERED, "no");
    assert_eq!(cover(&desk).0, Some(false));
    desk.says(Part::House, &COVERED, "yes");
    let (holds, says) = cover(&desk);
    assert_eq!(holds, None, "{says}");
    assert!(says.starts_with("to be covered, and nobody said yet that it is; asked for is"), "{says}");
    // Each thing said changes it as said: yes, seen bare since, covered since, not covered.
    for (name, answer, holds) in [
        ("ground_covered_now", Answer::Yes, Some(true)),
        ("bare_soil", Answer::Yes, Some(false)),
        ("ground_covered_now", Answer::Unknown, Some(false)),
        ("ground_covered_now", Answer::Yes, Some(true)),
        ("bare_soil", Answer::No, Some(true)),
        ("ground_covered_now", Answer::No, Some(false)),
        ("ground_covered_now", Answer::Unknown, None),
    ] {
        answers(&mut desk, name, answer);
        let (is, says) = cover(&desk);
        assert_eq!((is, is_covered_now(desk.job())), (holds, holds), "{name} {answer:?}: {says}");
        // What is asked for is never said to hold.
        assert!(!says.contains("lapped") || says.contains("asked for is") || says.contains("has to be covered"));
    }
}

#[test]
fn a_dont_know_takes_back_no_soil_that_was_seen_bare() {
    let mut desk = house();
    answers(&mut desk, "ground_covered_now", Answer::Yes);
    answers(&mut desk, "bare_soil", Answer::Yes);
    answers(&mut desk, "bare_soil", Answer::Unknown);
    assert_eq!(is_covered_now(desk.job()), Some(false));
    answers(&mut desk, "bare_soil", Answer::No);
    assert_eq!(is_covered_now(desk.job()), Some(true));
}

/// Two phones that did not know of each other: by its count alone the cover would be later.
#[test]
fn a_cover_of_before_by_the_clock_does_not_answer_for_soil_that_another_phone_saw_bare_since() {
    let mut desk = house();
    let own = std::mem::replace(&mut desk.pen, crate::desk::other_phone());
    desk.pen.stamp_from(at("2026-12-24T08:00:00-05:00"));
    answers(&mut desk, "bare_soil", Answer::Yes);
    desk.pen = own;
    let mut covered = |when| {
        desk.pen.stamp_from(at(when));
        answers(&mut desk, "ground_covered_now", Answer::Yes);
        is_covered_now(desk.job())
    };
    assert_eq!(covered("2026-10-26T08:00:00-05:00"), Some(false));
    assert_eq!(covered("2026-12-24T08:00:00-05:00"), Some(false), "at the same second");
    assert_eq!(covered("2026-12-24T08:00:01-05:00"), Some(true));
}

fn answers(desk: &mut crate::desk::Desk, name: &str, answer: Answer) {
    desk.log(Check { of: crate::desk::label(name), answer });
}

fn at(time: &str) -> duckboard::engine::entry::Stamp {
    let at = chrono::DateTime::parse_from_rfc3339(time).unwrap();
    duckboard::engine::entry::Stamp { at, ..crate::desk::stamp() }
}

/// Above 8 in, and over covered earth (R317.1.4 \[P\]).
#[test]
fn a_post_stands_more_than_8_in_above_earth_that_is_covered() {
    let post = |typed: &str, to_be: Option<&str>, now: Option<Answer>| {
        let mut desk = house();
        desk.says(Part::House, &POST_CLEARANCE, typed);
        if let Some(word) = to_be {
            desk.says(Part::House, &COVERED, word);
        }
        if let Some(answer) = now {
            answers(&mut desk, "ground_covered_now", answer);
        }
        held(&checks(desk.job(), units()), "Posts to soil").0
    };
    for now in [Some(Answer::Yes), Some(Answer::No), None] {
        assert_eq!(post("7 15/16", None, now), Some(false), "{now:?}");
        assert_eq!(post("8", None, now), Some(false), "more than 8 in: {now:?}");
    }
    for to_be in [Some("yes"), Some("no"), None] {
        assert_eq!(post("8 1/16", to_be, Some(Answer::Yes)), Some(true), "{to_be:?}");
        assert_eq!(post("8 1/16", to_be, Some(Answer::No)), Some(false), "{to_be:?}");
    }
    assert_eq!(post("8 1/16", Some("yes"), None), None, "what is to be is not yet");
    assert_eq!(post("8 1/16", Some("no"), None), Some(false));
    assert_eq!(post("8 1/16", None, None), None, "not said is not covered");
}

/// 1/2 in on tops, sides and ends (R317.1 item 4 \[P\]).
#[test]
fn a_girder_end_in_masonry_wants_half_an_inch_of_air() {
    let mut desk = house();
    let ends = |desk: &crate::desk::Desk| held(&checks(desk.job(), units()), "Girder ends in outer walls").0;
    assert_eq!(ends(&desk), None, "nobody said what they end in");
    desk.says(Part::House, &GIRDER_ENDS, "in masonry");
    assert_eq!(ends(&desk), None, "nobody measured");
    for (typed, holds) in [("7/16", false), ("1/2", true), ("9/16", true)] {
        desk.says(Part::House, &GIRDER_END_AIR, typed);
        assert_eq!(ends(&desk), Some(holds), "{typed}");
    }
    desk.says(Part::House, &GIRDER_END_AIR, "0");
    desk.says(Part::House, &GIRDER_ENDS, "not in masonry");
    assert_eq!(ends(&desk), Some(true));
}

/// 18 in under joists, 12 in under girders, 8 in under sills (R317.1, 2018 \[P\]).
#[test]
fn wood_too_near_to_soil_is_named() {
    let mut desk = house();
    assert!(checks(desk.job(), units()).iter().all(|check| check.holds.is_none()));
    desk.log(Fact::CrawlHeight(inches("17 15/16")));
    desk.says(Part::House, &GIRDER_CLEARANCE, "12");
    desk.says(Part::House, &SILL_CLEARANCE, "7");
    desk.says(Part::House, &ACCESS_WIDTH, "24");
    desk.says(Part::House, &ACCESS_LENGTH, "18");
    let holds: Vec<_> = checks(desk.job(), units()).into_iter().map(|check| check.holds).collect();
    assert_eq!(holds, [Some(false), Some(true), None, Some(false), None, Some(true)]);
    for (joists, girders, sills, keeps) in [("17 15/16", "11 15/16", "7 15/16", false), ("18", "12", "8", true)] {
        desk.log(Fact::CrawlHeight(inches(joists)));
        desk.says(Part::House, &GIRDER_CLEARANCE, girders);
        desk.says(Part::House, &SILL_CLEARANCE, sills);
        let now = checks(desk.job(), units());
        for what in ["Joists to soil", "Girders to soil", "Sills to outside ground"] {
            assert_eq!(held(&now, what).0, Some(keeps), "{what}");
        }
    }
}

/// 18 × 24 in through a floor, 16 × 24 in through a wall (R408.4, Indiana 2020 \[P\]).
#[test]
fn the_way_in_is_as_large_as_its_rule_asks() {
    let way = |through: &str, short: &str, long: &str| {
        let mut desk = house();
        desk.says(Part::House, &ACCESS, through);
        desk.says(Part::House, &ACCESS_WIDTH, short);
        desk.says(Part::House, &ACCESS_LENGTH, long);
        held(&checks(desk.job(), units()), "Access").0.unwrap()
    };
    assert!(way("floor", "18", "24") && !way("floor", "17 15/16", "24") && !way("floor", "18", "23 15/16"));
    assert!(way("wall", "16", "24") && !way("wall", "15 15/16", "24") && !way("wall", "16", "23 15/16"));
}

/// 1,000 sq ft, 6/12, 6.8 in an hour: 7,480 sq ft at an inch an hour, more than any gutter
/// listed takes (public tables \[P2\]); 623 gallons an inch (144 of 231 cubic inches); 6.23
/// sq in of downspout, two of 6 sq in (a public page \[P2\]).
#[test]
fn a_roofs_water_sizes_its_gutter_and_downspouts() {
    let mut desk = house();
    assert_eq!(rain(desk.job(), units()), Figure::Missing(vec![Need::RoofArea, Need::Rain, Need::Downspout]));
    for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "6.8"), (DOWNSPOUT, "6")] {
        desk.says(Part::House, &item, typed);
    }
    desk.says(Part::House, &PITCH, "6 to 8/12");
    let known = rain(desk.job(), units());
    let water = known.value().unwrap();
    assert!((water.runoff.at_an_inch.to_square_feet() - 7480.0).abs() < 0.01);
    assert!((water.runoff.gallons_an_inch - 623.4).abs() < 0.1);
    assert_eq!((water.gutter, water.takes, water.runoff.downspouts), (None, false, 2));
    desk.says(Part::House, &GUTTER, "5 in K-style");
    assert!(!rain(desk.job(), units()).value().unwrap().takes);
    desk.says(Part::House, &GUTTER_TAKES, "8000");
    assert!(rain(desk.job(), units()).value().unwrap().takes, "by the gutter's own table");
    desk.says(Part::House, &DISCHARGE, "5'");
    desk.says(Part::House, &FALL, "5 7/8");
    let holds: Vec<_> = led_away(desk.job(), units()).into_iter().map(|check| check.holds).collect();
    assert_eq!(holds, [Some(true), Some(false)]);
    desk.says(Part::House, &DISCHARGE, "4' 11 15/16\"");
    desk.says(Part::House, &FALL, "6");
    let holds: Vec<_> = led_away(desk.job(), units()).into_iter().map(|check| check.holds).collect();
    assert_eq!(holds, [Some(false), Some(true)]);
}

/// 1,000 sq ft of roof under 2 in an hour; a gutter of 5 in takes 2,500 at an inch an hour. The
/// factors of the list: 1.0, 1.05, 1.1, 1.2, 1.3.
#[test]
fn a_pitch_that_nobody_said_is_taken_for_the_steepest() {
    let water = |pitch: Option<&str>| {
        let mut desk = house();
        for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "2"), (DOWNSPOUT, "6"), (GUTTER, "5 in K-style")] {
            desk.says(Part::House, &item, typed);
        }
        pitch.into_iter().for_each(|pitch| {
            desk.says(Part::House, &PITCH, pitch);
        });
        let known = rain(desk.job(), units());
        let known = known.as_known().unwrap().clone();
        let cards = under(desk.job(), units(), Canvas { width_px: 340, height_px: 280 });
        let roof = cards.into_iter().find(|card| card.title == "The roof's water").unwrap();
        let is_asked = roof.lines.iter().any(|line| line.text.starts_with("Say the roof's pitch"));
        (known.value.runoff.at_an_inch.to_square_feet(), known.value.takes, known.assumed.len(), is_asked)
    };
    let Takes::OneOf(pitches) = PITCH.takes else { panic!() };
    let unsaid = water(None);
    assert!((unsaid.0 - 2600.0).abs() < 0.01 && !unsaid.1 && unsaid.2 == 1 && unsaid.3, "{unsaid:?}");
    for pitch in pitches {
        let said = water(Some(pitch));
        assert!(said.0 <= unsaid.0 + 1e-6 && said.2 == 0 && !said.3, "{pitch}: {said:?}");
    }
    assert!(water(Some("9 to 11/12")).1, "2,400 of 2,500");
}

#[test]
fn a_gutters_own_table_is_joined_to_no_name_that_was_said_later() {
    let takes = |said: &[(&Item, &str)]| {
        let mut desk = house();
        for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, "1"), (DOWNSPOUT, "6"), (PITCH, "flat to 3/12")] {
            desk.says(Part::House, &item, typed);
        }
        for (item, typed) in said {
            desk.says(Part::House, item, typed);
        }
        let water = rain(desk.job(), units());
        (water.value().unwrap().gutter, water.value().unwrap().takes)
    };
    let six = (&GUTTER, "6 in K-style");
    assert_eq!(takes(&[(&GUTTER_TAKES, "900")]), (Some("by its own table"), false));
    assert_eq!(takes(&[(&GUTTER_TAKES, "1000")]), (Some("by its own table"), true));
    // 5 in takes 2,500 by the list; its own table says 900, or 9,000.
    let five = (&GUTTER, "5 in K-style");
    assert_eq!(takes(&[five, (&GUTTER_TAKES, "900")]), (Some("5 in K-style"), false));
    assert_eq!(takes(&[(&RAIN, "4"), five, (&GUTTER_TAKES, "9000")]), (Some("5 in K-style"), true));
    // Named after the table: it may be of the one before, and the less counts.
    assert_eq!(takes(&[(&RAIN, "4"), (&GUTTER_TAKES, "9000"), six]), (Some("6 in K-style"), false));
    assert_eq!(takes(&[(&GUTTER_TAKES, "900"), six]), (Some("6 in K-style"), false));
}

/// Of each thing what one phone says and what the other: the same figures whoever logged more.
#[test]
fn of_what_two_phones_say_of_ground_and_roof_the_worse_counts_and_is_told() {
    let base = [
        (GROUND_LENGTH, "40'"),
        (GROUND_WIDTH, "28'"),
        (COVERED, "yes"),
        (VENT_AREA, "50"),
        (VENT_RATIO, "1/150"),
        (VENT_CORNERS, "no"),
        (ROLL_LENGTH, "100'"),
        (ROLL_WIDTH, "10'"),
        (TURN_UP, "6"),
        (PIERS, "2"),
        (LAP, "6 in"),
        (ROOF_AREA, "1100"),
        (RAIN, "2"),
        (DOWNSPOUT, "3"),
        (PITCH, "flat to 3/12"),
        (GUTTER, "6 in K-style"),
        (EAVE, "30'"),
    ];
    let figures = |desk: &crate::desk::Desk| {
        let cover = cover_for(desk.job(), units());
        let vents = vents_for(desk.job());
        let water = rain(desk.job(), units());
        let assumed = [
            &cover.as_known().unwrap().assumed,
            &vents.as_known().unwrap().assumed,
            &water.as_known().unwrap().assumed,
        ];
        let is_told = assumed.into_iter().flatten().any(|it| it.starts_with("the worse of what two phones say"));
        ((*cover.value().unwrap(), *vents.value().unwrap(), water.value().unwrap().clone()), is_told)
    };
    let kinder_and_worse = [
        (GROUND_LENGTH, "10'", "40'"),
        (GROUND_WIDTH, "10'", "30'"),
        (VENT_AREA, "80", "50"),
        (VENT_RATIO, "1/1500 over a cover", "1/150"),
        (VENT_RATIO, "1/300", "1/150"),
        (VENT_RATIO, "1/1500 over a cover", "1/300"),
        (VENT_CORNERS, "no", "yes"),
        (ROLL_LENGTH, "100'", "60'"),
        (ROLL_WIDTH, "20'", "10'"),
        (TURN_UP, "6", "18"),
        (PIERS, "2", "9"),
        (LAP, "6 in", "12 in, radon rule"),
        (ROOF_AREA, "100", "1100"),
        (RAIN, "1", "2"),
        (DOWNSPOUT, "9", "1"),
        (PITCH, "flat to 3/12", "12/12 or more"),
        (GUTTER, "6 in K-style", "5 in K-style"),
        (EAVE, "10'", "30'"),
    ];
    for (item, kinder, worse) in kinder_and_worse {
        let says = |one: &str, other: &str| {
            let mut desk = house();
            for (item, typed) in &base {
                desk.says(Part::House, item, typed);
            }
            // Vents by area alone, so that each count tells.
            if item.what == VENT_CORNERS.what {
                desk.says(Part::House, &VENT_AREA, "1000");
            }
            apart(&mut desk, of_house(&item, one), of_house(&item, other), 0);
            figures(&desk)
        };
        let (bad, good) = (says(worse, worse), says(kinder, kinder));
        assert!(bad.0 != good.0 && !bad.1 && !good.1, "{}: it makes a difference, and both say the same", item.what);
        for both in [says(kinder, worse), says(worse, kinder)] {
            assert_eq!(both.0, bad.0, "{}", item.what);
            assert!(both.1, "{}: it is told", item.what);
        }
    }
}

/// 5 in 2,500 and 6 in 3,840 sq ft at an inch an hour (public tables of half-round gutters
/// \[P2\]); a K-style one of the same size is not taken for more (common practice, no source).
#[test]
fn a_gutter_takes_what_its_nominal_size_takes_and_no_more() {
    let takes = |rain_an_hour: &str, gutter: Option<&str>| {
        let mut desk = house();
        for (item, typed) in [(ROOF_AREA, "1000"), (RAIN, rain_an_hour), (DOWNSPOUT, "6")] {
            desk.says(Part::House, &item, typed);
        }
        desk.says(Part::House, &PITCH, "flat to 3/12");
        if let Some(gutter) = gutter {
            desk.says(Part::House, &GUTTER, gutter);
        }
        let known = rain(desk.job(), units());
        let known = known.as_known().unwrap();
        (known.value.gutter, known.value.takes, known.doubts.join(" ").contains("half-round gutter of its size"))
    };
    assert_eq!(takes("2.5", None), (Some("5 in K-style"), true, true));
    assert_eq!(takes("2.501", None), (Some("6 in K-style"), true, true));
    assert_eq!(takes("3.84", None), (Some("6 in K-style"), true, true));
    assert_eq!(takes("3.841", None), (None, false, false));
    for (gutter, most, more) in [("5 in half-round", "2.5", "2.501"), ("6 in half-round", "3.84", "3.841")] {
        assert_eq!(takes(most, Some(gutter)), (Some(gutter), true, false));
        assert_eq!(takes(more, Some(gutter)), (Some(gutter), false, false));
    }
    assert!(takes("2.5", Some("5 in K-style")).1 && !takes("2.501", Some("5 in K-style")).1);
    assert!(takes("3.84", Some("6 in K-style")).1 && !takes("3.841", Some("6 in K-style")).1);
}

/// Every word of a choice makes a difference: none is offered that nothing understands.
#[test]
fn every_word_of_a_choice_is_understood() {
    let each = |item: &Item, came_of: &dyn Fn(&crate::desk::Desk) -> String| {
        let Takes::OneOf(words) = item.takes else { panic!("{item:?}") };
        let mut seen: Vec<_> = words
            .iter()
            .map(|word| {
                let mut desk = house();
                let stated = [(ROOF_AREA, "1000"), (RAIN, "3"), (DOWNSPOUT, "6"), (VENT_AREA, "50"), (COVERED, "yes")];
                for (item, typed) in stated {
                    desk.says(Part::House, &item, typed);
                }
                desk.says(Part::House, item, word);
                came_of(&desk)
            })
            .collect();
        seen.sort_unstable();
        seen.dedup();
        assert_eq!(seen.len(), words.len(), "{}", item.what);
    };
    let water = |desk: &crate::desk::Desk| format!("{:?}", rain(desk.job(), units()).value().unwrap());
    each(&PITCH, &water);
    each(&GUTTER, &water);
    each(&AIR_WAY, &|desk| format!("{:?}", AirWay::of(desk.job())));
    each(&VENT_RATIO, &|desk| format!("{:?}", vents_for(desk.job()).value().unwrap()));
    each(&LAP, &|desk| format!("{:?}", cover_for(desk.job(), units())));
    each(&COVERED, &|desk| format!("{:?}", Covered::of(desk.job())));
    each(&GIRDER_ENDS, &|desk| format!("{:?}", checks(desk.job(), units())));
    for item in [&AIR_PATH, &WALLS_INSULATED, &FUEL_BURNED] {
        let Takes::OneOf(words) = item.takes else { panic!("{item:?}") };
        let mut seen: Vec<_> = words
            .iter()
            .map(|word| {
                let mut desk = house();
                desk.says(Part::House, &AIR_WAY, "exhaust fan");
                desk.says(Part::House, item, word);
                format!("{:?}", unvented_checks(desk.job(), units()))
            })
            .collect();
        seen.sort_unstable();
        seen.dedup();
        assert_eq!(seen.len(), words.len(), "{}", item.what);
    }
    each(&ACCESS, &|desk| format!("{:?}", checks(desk.job(), units())));
}

/// The card of the air, its headline and its lines.
fn air_card(desk: &crate::desk::Desk) -> (String, String) {
    let cards = under(desk.job(), units(), Canvas { width_px: 340, height_px: 280 });
    let card = cards.into_iter().find(|card| card.title == "Air under the house").unwrap();
    let lines: Vec<_> = card.lines.into_iter().map(|line| line.text).collect();
    (card.headline, lines.join("\n"))
}

#[test]
fn the_card_of_vents_says_aloud_what_it_does_not_take_for_covered() {
    let mut desk = house();
    for (item, typed) in [(GROUND_LENGTH, "25'"), (GROUND_WIDTH, "10'"), (VENT_AREA, "50"), (VENT_RATIO, "1/300")] {
        desk.says(Part::House, &item, typed);
    }
    let said = |desk: &crate::desk::Desk| air_card(desk).1.matches("1/150 is taken").count();
    assert_eq!((air_card(&desk).0.as_str(), said(&desk)), ("5 vents", 1));
    desk.says(Part::House, &COVERED, "yes");
    assert_eq!((air_card(&desk).0.as_str(), said(&desk)), ("4 vents", 0));
}

#[test]
fn the_card_of_a_space_without_vents_asks_before_it_recommends() {
    let mut desk = house();
    desk.says(Part::House, &GROUND_LENGTH, "25'");
    desk.says(Part::House, &GROUND_WIDTH, "10'");
    desk.log(Fact::CrawlHeight(inches("24")));
    desk.log(Fact::Venting(Venting::Unvented));
    let (headline, lines) = air_card(&desk);
    assert_eq!(headline, "Choose how it gets its air");
    assert!(lines.contains("takes 5 cfm, a dehumidifier 18 pints a day"), "{lines}");
    desk.says(Part::House, &AIR_WAY, "exhaust fan");
    let (headline, lines) = air_card(&desk);
    assert_eq!(headline, "Exhaust of 5 cfm, day and night");
    for words in ["Cover over the ground, open", "Air path down from the rooms, open", "flue gas", "4 pCi/L"] {
        assert!(lines.contains(words), "{words}: {lines}");
    }
    desk.says(Part::House, &AIR_PATH, "yes");
    assert!(air_card(&desk).1.contains("Air path down from the rooms, holds"));
    desk.says(Part::House, &AIR_WAY, "dehumidifier");
    let (headline, lines) = air_card(&desk);
    assert_eq!(headline, "A dehumidifier of 18 pints a day");
    assert!(!lines.contains("flue gas") && lines.contains("Outer walls insulated, open"), "{lines}");
}

/// R503.1 \[P\]: 11/16 in square to joists 24 in apart, 5/8 in at 16.
#[test]
fn old_boards_are_held_to_the_joists_below_them() {
    let headline = |thickness: &str, what: LayerKind| {
        let mut desk = house();
        desk.log(Layer { what, thickness: inches(thickness) });
        let cards = under(desk.job(), units(), Canvas { width_px: 340, height_px: 280 });
        cards.into_iter().find(|card| card.title.contains("old boards")).map(|card| card.headline)
    };
    assert_eq!(headline("3/4", LayerKind::Panel), None);
    for what in [LayerKind::Boards, LayerKind::DiagonalBoards] {
        assert_eq!(headline("5/8", what).as_deref(), Some("Yes"), "joists 16 in apart");
        assert_eq!(headline("39/64", what).as_deref(), Some("No"));
    }
}
