use crate::desk::Desk;
use crate::house::{house, joist, make_sound, one, says, sound_house};
use duckboard::draw::Canvas;
use duckboard::draw::under::under;
use duckboard::engine::condition::{Condition, Finding};
use duckboard::engine::entry::{DeviceId, EntryId};
use duckboard::engine::framing::joist::{Reads, found_nowhere, joists};
use duckboard::engine::framing::schedule::judged;
use duckboard::engine::framing::spots::Goes;
use duckboard::engine::framing::{Fate, Judged, Shared, schedule};
use duckboard::engine::geometry::Turn;
use duckboard::engine::job::Record;
use duckboard::engine::moisture::Material;
use duckboard::engine::particular::list::*;
use duckboard::engine::particular::{Item, Part, Takes, stated};
use duckboard::engine::place::{Element, JoistNumber, Place, Position};
use duckboard::engine::sources::Mark;
use duckboard::engine::survey::{Joists, Run};
use duckboard::engine::take::Units;
use duckboard::engine::units::Length;
use duckboard::engine::units::tape::BareUnit;
use proptest::prelude::*;

fn all(desk: &Desk) -> Vec<Judged> {
    schedule(desk.job(), Units::default()).value().unwrap().clone()
}

fn fate_with(number: u16, said: &[(&Item, &str)]) -> Fate {
    let mut desk = sound_house();
    for (item, typed) in said {
        desk.says(joist(number), item, typed);
    }
    one(&desk, number.into()).fate
}

#[test]
fn a_joist_that_nobody_measured_says_what_to_measure() {
    let desk = house();
    let judged = one(&desk, 1);
    assert_eq!(judged.fate, Fate::Open);
    let words: Vec<_> = judged.reasons.iter().map(|reason| reason.words.as_str()).collect();
    let asked = [
        "say what it is",
        "its breadth, its depth, its clear span",
        "probe both ends and the middle",
        "whether it has notches or holes",
        "read it with pins",
        "what it bears on",
        "keeps its ends from turning over",
        "over the girder",
    ];
    assert!(asked.into_iter().all(|asked| words.iter().any(|words| words.contains(asked))), "{words:?}");
    assert_eq!(judged.may_span, None);
}

#[test]
fn one_that_was_measured_probed_and_graded_can_stay() {
    assert!(all(&sound_house()).iter().all(|judged| judged.fate == Fate::Stays && judged.reasons.is_empty()));
}

/// Published: a floor joist of Douglas fir-larch #2, 2 × 8 at 16 in, 40 and 10 psf, spans
/// 12 ft 9 in (a public test file of IRC R502.3.1(2) \[P2\]).
#[test]
fn what_it_may_span_is_what_the_codes_table_says() {
    let range = one(&sound_house(), 1).may_span.unwrap();
    assert!((range.weakest.to_inches() - 153.0).abs() < 0.6 && range.weakest == range.strongest, "{range:?}");
    assert_eq!(range.words(Units::default()), "12' 9\"", "rounded down");
}

#[test]
fn an_unknown_grade_keeps_nothing_by_itself() {
    let mut desk = sound_house();
    desk.says(Part::Joists, &CLEAR_SPAN, "9'");
    desk.says(Part::House, &GRADE, "unknown");
    let judged = one(&desk, 1);
    let range = judged.may_span.unwrap();
    assert!(range.weakest < range.strongest && judged.joist.span().unwrap() < range.weakest);
    assert_eq!(judged.fate, Fate::Open);
    assert!(judged.reasons[0].words.contains("find its stamp"), "{:?}", judged.reasons);
}

#[test]
fn southern_pine_of_before_2013_spanned_farther() {
    let mut desk = sound_house();
    desk.says(Part::House, &SPECIES, "Southern pine");
    let today = one(&desk, 1).may_span.unwrap().weakest;
    desk.says(Part::House, &EDITION, "before 2013");
    let range = one(&desk, 1).may_span.unwrap();
    assert_eq!(range.source.citation().mark, Mark::Memory);
    let before = range.weakest;
    // 11 ft 10 in, and 12 ft 10 in before: quoted spans of the code's tables \[P2\].
    assert!(
        (today.to_inches() - 142.0).abs() < 0.6 && (before.to_inches() - 154.0).abs() < 0.6,
        "{today:?} {before:?}"
    );
}

#[test]
fn decay_decides_by_how_deep_how_long_and_where() {
    let edge = |depth: &'static str| [(&SOFT_DEPTH, depth), (&SOFT_FACE, "lower edge")];
    let with = |depth, more: (&Item, &str)| fate_with(4, &[&edge(depth)[..], &[more]].concat());
    assert_eq!(fate_with(4, &edge("1/2")), Fate::Sister);
    // 2 1/4 in and the quarter beyond are more than a third of 7 1/4.
    assert_eq!(fate_with(4, &edge("2 1/4")), Fate::Engineer);
    assert_eq!(with("1/2", (&SOFT_LENGTH, "5'")), Fate::Replace);
    assert_eq!(fate_with(4, &[(&SOFT_DEPTH, "1/2"), (&SOFT_FACE, "end")]), Fate::Replace);
    // 3/8 in and the quarter beyond, of a side 1 1/2 in thick.
    assert_eq!(fate_with(4, &[(&SOFT_DEPTH, "3/8"), (&SOFT_FACE, "near side")]), Fate::Engineer);
    // 1 1/4 of decay and a notch of 1 1/4 are more than a third together.
    assert_eq!(
        fate_with(4, &[&edge("1")[..], &[(&NOTCH, "1 1/4"), (&NOTCH_AT, "outer third")]].concat()),
        Fate::Engineer
    );
}

#[test]
fn decay_of_which_something_is_not_said_is_told_nothing_milder_than_to_say_it() {
    assert_eq!(fate_with(4, &[(&SOFT_DEPTH, "1/2")]), Fate::Open, "where is it?");
    let mut desk = house();
    desk.says(joist(4), &SOFT_DEPTH, "3");
    desk.says(joist(4), &SOFT_FACE, "upper edge");
    assert_eq!(one(&desk, 4).fate, Fate::Open, "how deep is the joist?");
}

#[test]
fn a_joist_that_reads_wet_does_not_stay_until_it_is_dry() {
    let mut desk = sound_house();
    let mut reads = |percent: u16, material| {
        desk.reads_moisture(6, percent, material);
        one(&desk, 6)
    };
    let wet = reads(25, Material::Solid);
    assert_eq!((wet.fate, wet.joist.reads), (Fate::Open, Reads::Wet));
}

#[test]
fn what_the_method_does_not_hold_for_is_an_engineers() {
    assert_eq!(fate_with(4, &[(&BREADTH, "5 1/2")]), Fate::Engineer);
    let mut desk = sound_house();
    let joists = desk.job().now.joists().values().next().unwrap().value.clone();
    desk.log(Joists { count: 2, ..joists.clone() });
    assert_eq!(one(&desk, 1).fate, Fate::Engineer, "two joists share no load");
    desk.log(Joists { spacing: crate::house::inches("0"), ..joists });
    assert_eq!(schedule(desk.job(), Units::default()).value(), None, "no spacing that a file may hold is divided by");
}

#[test]
fn one_that_spans_too_far_is_doubled_if_that_does_and_an_engineers_if_not() {
    assert_eq!(fate_with(4, &[(&CLEAR_SPAN, "14'")]), Fate::Sister);
    assert_eq!(fate_with(4, &[(&CLEAR_SPAN, "20'")]), Fate::Engineer);
}

#[test]
fn more_than_two_in_a_row_are_an_engineers() {
    let mut desk = sound_house();
    for number in [3, 4, 5] {
        desk.says(joist(number), &SOFT_FACE, "lower edge");
    }
    for number in [3, 4] {
        desk.says(joist(number), &SOFT_DEPTH, "1/2");
    }
    assert_eq!(one(&desk, 4).fate, Fate::Sister);
    desk.says(joist(5), &SOFT_DEPTH, "1/2");
    assert!((3..=5).all(|number| one(&desk, number).fate == Fate::Engineer));
    assert_eq!(one(&desk, 6).fate, Fate::Stays);
}

#[test]
fn findings_that_nobody_followed_up_keep_a_joist_open() {
    let mut desk = sound_house();
    let position = Position::OnJoist { joist: JoistNumber::new(6).unwrap(), along: None };
    let place = desk.log(Place { element: Element::Joist, position, face: None, height: None, chalk: None });
    for (finding, fate) in
        [(Finding::Wire, Fate::Stays), (Finding::Insects, Fate::Open), (Finding::Cracked, Fate::Engineer)]
    {
        desk.log(Condition { place: Some(place), finding, note: None });
        assert_eq!(one(&desk, 6).fate, fate, "{finding:?}");
    }
}

#[test]
fn a_finding_on_the_plan_counts_for_the_nearest_joist_and_one_that_is_nowhere_is_told() {
    let mut desk = sound_house();
    // Joist 3 stands 40 in from corner 1.
    let position = Position::OnPlan { right: crate::house::inches("42"), down: crate::house::inches("30") };
    let place = Place { element: Element::Joist, position, face: None, height: None, chalk: None };
    let rotten = |place| Condition { place, finding: Finding::Rotten, note: None };
    let on_plan = desk.log(place.clone());
    desk.log(rotten(Some(on_plan)));
    assert_eq!((one(&desk, 3).fate, one(&desk, 4).fate), (Fate::Sister, Fate::Stays));
    assert_eq!(found_nowhere(desk.job()), 0);
    let by_chalk = desk.log(Place { position: Position::Named, ..place.clone() });
    desk.log(rotten(Some(by_chalk)));
    desk.log(rotten(None));
    let beyond = Position::OnJoist { joist: JoistNumber::new(12).unwrap(), along: None };
    let beyond = desk.log(Place { position: beyond, ..place });
    desk.log(rotten(Some(beyond)));
    assert_eq!(found_nowhere(desk.job()), 3);
}

/// Nine joists 16 in apart in 12 ft, the first this far from the wall.
fn first_joist_at(first: &str) -> Desk {
    let mut desk = Desk::new();
    let (room, sides) = desk.room(&["12'", "10'", "12'", "10'"].map(|length| (length, Turn::Right)));
    desk.opening(sides[0], ["64", "24", "30", "4'"]);
    desk.joists(room, Run::AcrossFirstSide, first, "16", 7);
    make_sound(&mut desk, 7);
    (1..=7).for_each(|number| {
        desk.reads_moisture(number, 12, Material::Solid);
    });
    desk
}

/// By the rule a joist carries half of each bay beside it, the bay at its wall with them.
#[test]
fn a_joist_carries_half_of_the_bay_at_its_wall() {
    let desk = first_joist_at("16");
    assert_eq!((one(&desk, 1).fate, one(&desk, 2).fate), (Fate::Stays, Fate::Stays));
    let (first, second) = (one(&desk, 1).may_span.unwrap(), one(&desk, 2).may_span.unwrap());
    assert_eq!(first, second, "16 in and 16 in");
    let desk = first_joist_at("16 1/16");
    assert!(one(&desk, 1).may_span.unwrap().weakest < second.weakest);
    assert_eq!(one(&desk, 2).may_span.unwrap(), second, "a joist inside is as before");
    let desk = first_joist_at("48");
    assert_eq!((one(&desk, 1).fate, one(&desk, 2).fate), (Fate::Sister, Fate::Stays));
    assert!(says(&one(&desk, 1), "carries 2' 8\" of floor"), "{:?}", one(&desk, 1).reasons);
}

#[test]
fn all_can_stay_is_not_said_over_a_rotten_sill_or_one_that_nobody_looked_at() {
    let mut desk = sound_house();
    let headline = |desk: &Desk| {
        let canvas = Canvas { width_px: 340, height_px: 280 };
        under(desk.job(), Units::default(), canvas).into_iter().next().unwrap().headline
    };
    assert_eq!(headline(&desk), "All can stay, if what carries them is sound");
    desk.says(Part::RimJoist, &STATE, "sound");
    assert_eq!(headline(&desk), "All can stay, if what carries them is sound");
    desk.says(Part::Sill, &STATE, "sound");
    assert_eq!(headline(&desk), "All can stay");
    let mut damaged = sound_house();
    damaged.book.add(Record::absent(EntryId { count: 900, device: DeviceId::new(9) }));
    assert_eq!(headline(&damaged), "Not before the rest is settled", "nobody knows what is not here");
    let position = Position::OnJoist { joist: JoistNumber::new(2).unwrap(), along: None };
    let sill = desk.log(Place { element: Element::Sill, position, face: None, height: None, chalk: None });
    desk.log(Condition { place: Some(sill), finding: Finding::Rotten, note: None });
    assert_eq!(headline(&desk), "Not before the rest is settled");
}

/// Repetitive use holds to 24 in on center: past that a span by bending falls at once.
#[test]
fn joists_far_apart_do_not_share_their_load() {
    let mut desk = sound_house();
    let spans = |desk: &Desk| one(desk, 1).may_span.unwrap().weakest.to_inches();
    desk.says(Part::House, &GRADE, "#3");
    let joists = desk.job().now.joists().values().next().unwrap().value.clone();
    let mut at = |inches: &str| {
        desk.log(Joists { spacing: crate::house::inches(inches), ..joists.clone() });
        spans(&desk)
    };
    let (near, far) = (at("24"), at("24 1/16"));
    assert!((far / near - libm::sqrt(24.0 / 24.0625 / 1.15)).abs() < 1e-6, "{near} {far}");
}

proptest! {
    /// What is worse never comes out better.
    #[test]
    fn deeper_decay_is_never_judged_less_grave(depths in prop::collection::vec(0..112_i32, 2), face in 0..4_usize) {
        let mut desk = sound_house();
        desk.says(joist(4), &BEARS_ON, "wood or metal");
        desk.says(joist(4), &SOFT_DEPTH, "0");
        desk.says(joist(4), &SOFT_FACE, ["upper edge", "lower edge", "near side", "far side"][face]);
        let shared = Shared::of(desk.job()).unwrap();
        let like = joists(desk.job())[3].clone();
        let fate = |sixteenths: i32| {
            let depth = Length::sixty_fourths(sixteenths * 4);
            let mut like = like.clone();
            for soft in &mut like.spots.soft {
                soft.goes = if depth.is_positive() { Goes::In(depth) } else { Goes::Nowhere };
            }
            judged(like, &shared, Units::default()).fate
        };
        let (less, more) = (depths[0].min(depths[1]), depths[0].max(depths[1]));
        prop_assert!(fate(less) <= fate(more));
    }

    /// Whatever is said of a joist is judged, and never without a reason.
    #[test]
    fn anything_said_is_judged_with_reasons(which in prop::collection::vec((0..13_usize, 0..40_u8), 0..8)) {
        let mut desk = sound_house();
        for (at, number) in which {
            let item = OF_JOIST[at];
            let typed = match item.takes {
                Takes::OneOf(words) => words[usize::from(number) % words.len()].to_owned(),
                _ => number.to_string(),
            };
            if let Ok(said) = stated(joist(4), &item, &typed, BareUnit::Inches) {
                desk.log(said);
            }
        }
        let judged = one(&desk, 4);
        prop_assert_eq!(judged.fate == Fate::Stays, judged.reasons.is_empty());
    }
}
