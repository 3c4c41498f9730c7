//! Where the water comes from: the evidence, its patterns, and written scenarios.
#![allow(clippy::indexing_slicing, clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

mod desk;
#[path = "origin/edges.rs"]
mod edges;
#[path = "scenarios/flips.rs"]
mod flips;
#[path = "origin/laws.rs"]
mod laws;
#[path = "origin/patterns.rs"]
mod patterns;
#[path = "scenarios/scenario.rs"]
mod scenario;
#[path = "scenarios/tally.rs"]
mod tally;

use desk::Desk;
use duckboard::engine::entry::{DeviceId, Label};
use duckboard::engine::figure::{Figure, Need};
use duckboard::engine::job::{Book, Record};
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::{Cause, Check, Evidence, Ranking, Scene, Word, origin, rank};
use duckboard::engine::sample;
use scenario::Scenario;
use tally::Tally;

fn scenarios() -> Vec<Scenario> {
    Scenario::all(include_str!("scenarios/scenarios.jsonl")).unwrap()
}

fn answers(answers: &[(&str, Answer)]) -> Scene {
    let answers = answers.iter().map(|(name, answer)| ((*name).to_owned(), *answer)).collect();
    Scene { answers, ..Scene::default() }
}

fn first(ranking: &Ranking) -> Cause {
    ranking.causes[0].cause
}

#[test]
fn every_cause_and_every_pattern_has_its_evidence_and_all_evidence_its_source() {
    let evidence = Evidence::standard();
    assert!(Cause::ALL.iter().all(|cause| evidence.prior(*cause) < 0.0));
    assert!(evidence.observations.iter().all(|it| !it.source.is_empty()));
    let weighs =
        |answer| evidence.observations.iter().all(|it| Cause::ALL.iter().any(|cause| it.weight(answer, *cause) != 0.0));
    assert!(weighs(Answer::Yes) && weighs(Answer::No) && !weighs(Answer::Unknown));
    // The file is read by people too: its words are those on the screen.
    let file: serde_json::Value = serde_json::from_str(include_str!("../src/engine/origin/evidence.json")).unwrap();
    let named = |cause: &Cause| serde_json::json!([cause.name(), cause.label()]);
    let in_file = file["causes"].as_array().unwrap().iter().map(|it| serde_json::json!([it["name"], it["label"]]));
    assert_eq!(in_file.collect::<Vec<_>>(), Cause::ALL.iter().map(named).collect::<Vec<_>>());
    let readme = include_str!("../src/engine/origin/README.md");
    for pattern in evidence.observations.iter().filter(|it| it.asks.is_none()) {
        assert!(readme.contains(&format!("`{}`", pattern.name)), "{} is explained", pattern.name);
    }
    let names: Vec<&str> = evidence.observations.iter().map(|it| it.name.as_str()).collect();
    for it in file["observations"].as_array().unwrap() {
        let explained = ["yes", "no"].iter().filter_map(|answer| it["moot"][answer].as_object()).flatten();
        let by = explained.flat_map(|(_, by)| by.as_array().unwrap());
        assert!(
            by.clone().all(|by| names.contains(&by.as_str().unwrap())),
            "{} is explained by what is there",
            it["name"]
        );
    }
    for cause in Cause::ALL {
        let signs = evidence.signs(cause);
        let weighs = |sign: &String| evidence.observation(sign).unwrap().weight(Answer::Yes, cause) > 0.5;
        assert!(!signs.is_empty() && signs.iter().all(weighs), "{cause:?} has signs, and they weigh");
        assert!(!cause.label().is_empty() && !cause.remedy().is_empty());
    }
    // Nothing that is seen rules out what nobody thought of.
    for cause in Cause::ALL.into_iter().filter(|cause| *cause != Cause::Other) {
        let for_it = evidence.observations.iter().any(|it| it.weight(Answer::Yes, cause) > 1.0);
        let against = evidence.observations.iter().any(|it| it.weight(Answer::No, cause) < -1.0);
        assert!(for_it && against, "{cause:?} can be told both ways");
    }
}

#[test]
fn of_the_scenarios_held_out_the_true_cause_comes_first_and_is_never_unlikely() {
    let evidence = Evidence::standard();
    let mut tally = Tally::default();
    let all = scenarios();
    for scenario in all.iter().filter(|scenario| scenario.is_held_out) {
        tally.count(scenario, &rank(&evidence, &scenario.scene));
    }
    assert!(all.len() >= 24 && tally.scenarios * 2 >= all.len(), "{tally}");
    assert!(tally.is_good(), "{tally}\n{}", tally.table());
}

/// Nobody answers everything.
#[test]
fn with_any_one_answer_missing_four_of_five_are_right_still() {
    let evidence = Evidence::standard();
    let mut tally = Tally::default();
    for mut scenario in scenarios() {
        let names: Vec<String> = scenario.scene.answers.keys().cloned().collect();
        for name in names {
            let answer = scenario.scene.answers.remove(&name).unwrap();
            tally.count(&scenario, &rank(&evidence, &scenario.scene));
            scenario.scene.answers.insert(name, answer);
        }
    }
    assert!(
        tally.first * 5 >= tally.scenarios * 4 && tally.unlikely * 50 <= tally.scenarios,
        "{tally}\n{}",
        tally.table()
    );
}

#[test]
fn thin_evidence_is_not_enough_to_say() {
    let evidence = Evidence::standard();
    assert!(!rank(&evidence, &Scene::default()).is_enough);
    let one = answers(&[("meter_turns", Answer::Yes)]);
    assert!(!rank(&evidence, &one).is_enough, "one answer is not enough, however weighty");
    let nobody_knows = ["bare_soil", "after_rain", "meter_turns", "wet_in_use"].map(|name| (name, Answer::Unknown));
    let ranking = rank(&evidence, &answers(&nobody_knows));
    assert!(!ranking.is_enough);
    assert!(ranking.causes.iter().all(|ranked| ranked.word != Word::Unlikely), "what nobody knows rules nothing out");
}

#[test]
fn two_causes_can_hold_at_once() {
    let scene = answers(&[
        ("bare_soil", Answer::Yes),
        ("damp_soil", Answer::Yes),
        ("dew_beads", Answer::Yes),
        ("wet_in_use", Answer::Yes),
        ("wet_fitting", Answer::Yes),
        ("drain_smell", Answer::Yes),
    ]);
    let ranking = rank(&Evidence::standard(), &scene);
    let sure: Vec<_> = ranking.sure().map(|ranked| ranked.cause).collect();
    assert_eq!(sure, [Cause::Drain, Cause::Ground]);
}

#[test]
fn every_reason_is_something_that_was_said_and_a_name_nobody_knows_weighs_nothing() {
    let evidence = Evidence::standard();
    let known = rank(&evidence, &answers(&[("bare_soil", Answer::Yes), ("after_rain", Answer::No)]));
    let with_unknown =
        answers(&[("bare_soil", Answer::Yes), ("after_rain", Answer::No), ("of_a_later_version", Answer::Yes)]);
    assert_eq!(rank(&evidence, &with_unknown), known);
    let ground = known.causes.iter().find(|ranked| ranked.cause == Cause::Ground).unwrap();
    assert_eq!(ground.reasons, ["the soil is bare or badly covered"]);
}

#[test]
fn the_next_check_is_one_that_nobody_answered_and_it_parts_the_leaders() {
    let evidence = Evidence::standard();
    // Supply or drain: the meter or a fixture in use tells.
    let mut scene = answers(&[
        ("wet_fitting", Answer::Yes),
        ("after_rain", Answer::No),
        ("bare_soil", Answer::No),
        ("spilt_once", Answer::No),
    ]);
    let next = rank(&evidence, &scene).next.unwrap();
    assert!(["meter_turns", "wet_in_use"].contains(&next.as_str()), "{next}");
    let mut asked = 0;
    while let Some(next) = rank(&evidence, &scene).next {
        assert!(!scene.answers.contains_key(&next));
        scene.answers.insert(next, Answer::Unknown);
        asked += 1;
    }
    let questions = evidence.observations.iter().filter(|it| it.asks.is_some()).count();
    assert_eq!(asked + 4, questions, "each once, and then none");
}

#[test]
fn a_job_that_knows_nothing_says_what_to_do_and_a_check_is_enough_to_begin() {
    let mut desk = Desk::new();
    let Figure::Missing(needs) = origin(desk.job()) else { panic!("nothing is known") };
    assert!(needs.contains(&Need::Checks));
    desk.log(Check { of: Label::fitted("water_on_soil"), answer: Answer::Yes });
    desk.log(Check { of: Label::fitted("wall_marks"), answer: Answer::Yes });
    desk.log(Check { of: Label::fitted("after_rain"), answer: Answer::Yes });
    assert_eq!(first(&origin(desk.job()).as_known().unwrap().value), Cause::WaterBelow);
    // What was said last counts.
    desk.log(Check { of: Label::fitted("water_on_soil"), answer: Answer::No });
    desk.log(Check { of: Label::fitted("wall_marks"), answer: Answer::No });
    assert_ne!(first(&origin(desk.job()).as_known().unwrap().value), Cause::WaterBelow);
}

/// Invented: bare soil below, and a washer right over the wettest joists.
#[test]
fn the_sample_tells_its_ground_moisture_from_the_washer_above() {
    let book = Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|entry| Record::of(entry).unwrap()));
    let figure = origin(book.job());
    let ranking = &figure.as_known().unwrap().value;
    assert!(ranking.is_enough);
    assert_eq!((first(ranking), ranking.causes[0].word), (Cause::Ground, Word::Likely));
    for plumbing in [Cause::Supply, Cause::Drain] {
        let ranked = ranking.causes.iter().find(|ranked| ranked.cause == plumbing).unwrap();
        assert!(ranked.word != Word::Likely && !ranked.against.is_empty(), "{ranked:?}");
        assert!(
            ranked.reasons.iter().any(|reason| reason.contains("under plumbing")),
            "the herring is seen: {ranked:?}"
        );
    }
}
