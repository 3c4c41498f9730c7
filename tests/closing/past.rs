//! What comes out reaches past the spans that were measured: what carries the floor there is not
//! known by what was said of this side.

use crate::house::{joist, one};
use crate::{Site, after, length};
use duckboard::engine::framing::Fate;
use duckboard::engine::framing::past::{PAST_SPANS, asks_for_past_spans};
use duckboard::engine::moisture::Answer;
use duckboard::engine::particular::{Part, list};
use duckboard::engine::survey::{Opening, WholeFloor};

const PAST: &str = "what comes out reaches past its measured span";

/// A sound girder so far out, over which all joists go on somehow.
fn girder(site: &mut Site, clear: &str, over: &str, next: Option<&str>) {
    site.desk.says(Part::Joists, &list::CLEAR_SPAN, clear);
    site.desk.says(Part::Joists, &list::OVER_GIRDER, over);
    site.desk.says(Part::Joists, &list::LAP_OF_JOISTS, "4");
    next.into_iter().for_each(|next| {
        site.desk.says(Part::Joists, &list::NEXT_SPAN, next);
    });
    site.desk.says(Part::House, &list::GIRDER_NEAR, "yes");
    site.desk.says(Part::Girder(1), &list::STATE, "sound");
    site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
}

fn is_asked(site: &Site) -> bool {
    let is_asked = site.in_the_way().iter().any(|line| line.contains(PAST));
    assert_eq!(is_asked, asks_for_past_spans(site.desk.job()) && !site.decision().is_ready());
    is_asked
}

/// Opens the floor from so far out along the joists on, for four feet.
fn opened(site: &mut Site, out: &str) {
    let (id, it) = site.desk.job().now.openings().iter().next().map(|(id, it)| (*id, it.value.clone())).unwrap();
    site.desk.correct(id, Opening { out: length(out), ..it });
    site.desk.says(Part::Girder(1), &list::STATE, "sound");
    site.desk.says(Part::Girder(1), &list::PLIES_END, "over piers");
    site.desk.says(Part::Sill, &list::STATE, "sound");
    site.desk.says(Part::RimJoist, &list::STATE, "sound");
}

/// The opening goes from 24 to 72 in along joists of a room 10 ft long.
#[test]
fn joists_past_the_girder_are_other_joists_and_nobody_measured_them() {
    for (over, next) in
        [("laps the next", None), ("butts, tied", None), ("butts, tied", Some("6'")), ("goes through", Some("3'"))]
    {
        let site = after(|site| girder(site, "4'", over, next));
        assert!(is_asked(&site), "{over} {next:?}: {:#?}", site.in_the_way());
        assert_eq!(one(&site.desk, 4).fate, Fate::Open, "no joist there can stay by what was said");
    }
    let through = after(|site| girder(site, "4'", "goes through", Some("5' 6")));
    assert!(through.decision().is_ready(), "{:#?}", through.in_the_way());
    let hung = |clear: &str| {
        after(|site| {
            site.desk.says(Part::Joists, &list::CLEAR_SPAN, clear);
            site.desk.says(Part::Joists, &list::BEARS_ON, "hanger");
        })
    };
    assert!(is_asked(&hung("5'")), "they hang on something there");
    assert!(!is_asked(&hung("9'")));
}

/// A bay is 16 in: what comes out at 72 is near to 88.
#[test]
fn what_lies_past_the_span_counts_within_a_bay_of_what_comes_out() {
    let at = |clear: &'static str| is_asked(&after(|site| girder(site, clear, "laps the next", None)));
    assert_eq!(["87 15/16", "88", "88 1/16", "9'"].map(at), [true, true, false, false]);
    let whole = after(|site| {
        girder(site, "7' 10", "laps the next", None);
        let room = *site.desk.job().now.rooms().keys().next().unwrap();
        site.desk.log(WholeFloor { room });
    });
    assert!(is_asked(&whole));
}

/// The room is 120 in long: half a foot may lie on each support, more only where more bears.
#[test]
fn floor_goes_on_past_the_span_where_more_is_left_than_lies_on_what_carries_it() {
    let left = |clear: &'static str, next: Option<&'static str>, bearing: &'static str| {
        let over = if next.is_some() { "goes through" } else { "laps the next" };
        is_asked(&after(|site| {
            girder(site, clear, over, next);
            site.desk.says(Part::Joists, &list::BEARING, bearing);
            opened(site, "60");
        }))
    };
    let laps = |clear| left(clear, None, "3 1/2");
    assert_eq!(["8' 11 15/16", "9'", "9' 1/16"].map(laps), [true, false, false]);
    assert_eq!(["6", "6 1/16"].map(|bearing| left("8' 11 15/16", None, bearing)), [true, false]);
    let through = |next| left("4'", Some(next), "3 1/2");
    assert_eq!(["4' 5 15/16", "4' 6", "4' 6 1/16"].map(through), [true, false, false]);
}

#[test]
fn what_lies_past_the_span_is_looked_at_by_a_check_said_after_all_that_it_answers() {
    let laps = |site: &mut Site| girder(site, "4'", "laps the next", None);
    let answered = |answers: &'static [Answer]| {
        after(|site| {
            laps(site);
            answers.iter().for_each(|answer| site.answers(&[(PAST_SPANS, *answer)]));
        })
    };
    assert!(answered(&[Answer::Yes]).decision().is_ready(), "{:#?}", answered(&[Answer::Yes]).in_the_way());
    for answers in [&[Answer::No][..], &[Answer::Unknown], &[Answer::Yes, Answer::No], &[Answer::Yes, Answer::Unknown]]
    {
        let site = after(|site| {
            laps(site);
            answers.iter().for_each(|answer| site.answers(&[(PAST_SPANS, *answer)]));
        });
        assert!(is_asked(&site), "{answers:?}");
    }
    assert!(answered(&[Answer::No, Answer::Yes]).decision().is_ready());
    let said_before = |change: &dyn Fn(&mut Site)| {
        is_asked(&after(|site| {
            laps(site);
            site.answers(&[(PAST_SPANS, Answer::Yes)]);
            change(site);
        }))
    };
    assert!(said_before(&|site| opened(site, "30")), "what comes out was placed anew");
    assert!(said_before(&|site| girder(site, "4' 1", "laps the next", None)), "measured anew");
    assert!(!said_before(&|_| ()));
}

#[test]
fn an_engineer_who_saw_each_joist_there_answers_for_what_lies_past_it() {
    let seen = |numbers: std::ops::RangeInclusive<u16>| {
        after(|site| {
            girder(site, "4'", "laps the next", None);
            for number in numbers {
                site.desk.says(joist(number), &list::DONE, "as the engineer says");
            }
        })
    };
    // What is cut lies over joists 2 to 5: 1 and 6 are within a bay.
    assert!(is_asked(&seen(1..=5)) && is_asked(&seen(2..=6)));
    assert!(seen(1..=6).decision().is_ready(), "{:#?}", seen(1..=6).in_the_way());
}

#[test]
fn what_lies_past_the_span_is_looked_at_again_months_later() {
    const OLD: &str = "\"What comes out reaches past the joists' measured spans";
    let months_later = |change: &dyn Fn(&mut Site), again: bool| {
        let site = after(|site| {
            change(site);
            site.answers(&[(PAST_SPANS, Answer::Yes)]);
            site.visit("2027-01-27T08:00:00-05:00");
            if again {
                site.answers(&[(PAST_SPANS, Answer::Yes)]);
            }
        });
        site.in_the_way().iter().any(|line| line.starts_with("looked at more than three months") && line.contains(OLD))
    };
    let laps = |site: &mut Site| girder(site, "4'", "laps the next", None);
    assert!(months_later(&laps, false) && !months_later(&laps, true));
    assert!(!months_later(&|_| (), false), "nothing lies past them here");
}
