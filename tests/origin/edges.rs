//! Each threshold of the ranking just under, at and just over it, on evidence made for it.

use super::answers;
use duckboard::engine::moisture::Answer;
use duckboard::engine::origin::{Cause, Evidence, Ranked, Ranking, Word, rank};
use serde_json::{Value, json};

/// One observation that bears on the drain, by its weights for a yes and for a no.
fn observation(name: &str, look: &str, yes: f64, no: f64) -> Value {
    json!({ "name": name, "asks": name, "look": look, "says": ["so", "not so"],
        "yes": { "drain": yes }, "no": { "drain": no }, "source": "made for a test" })
}

/// The drain begins at a prior, `a` shows it, and something else stands far below.
fn evidence(prior: f64, observations: &[Value]) -> Evidence {
    let mut causes: Vec<_> =
        Cause::ALL.iter().map(|cause| json!({ "name": cause.name(), "prior": -9.0, "signs": ["a"] })).collect();
    causes[Cause::Drain as usize]["prior"] = json!(prior);
    serde_json::from_value(json!({ "causes": causes, "observations": observations })).unwrap()
}

/// Two observations of two looks, as they weigh for one answer.
fn two(prior: f64, answer: Answer, [a, b]: [f64; 2]) -> Ranking {
    let both = |weight: f64| if answer == Answer::Yes { [weight, 0.0] } else { [0.0, weight] };
    let ([a_yes, a_no], [b_yes, b_no]) = (both(a), both(b));
    let evidence = evidence(prior, &[observation("a", "1", a_yes, a_no), observation("b", "2", b_yes, b_no)]);
    rank(&evidence, &answers(&[("a", answer), ("b", answer)]))
}

fn drain(ranking: &Ranking) -> &Ranked {
    ranking.causes.iter().find(|ranked| ranked.cause == Cause::Drain).unwrap()
}

#[test]
fn likely_begins_at_odds_of_e_to_one() {
    let word = |b: f64| drain(&two(0.0, Answer::Yes, [0.5, b])).word;
    assert_eq!([0.49, 0.5, 0.51].map(word), [Word::Possible, Word::Likely, Word::Likely]);
}

#[test]
fn nothing_is_likely_that_falls_below_even_odds_without_its_weightiest_reason() {
    let word = |b: f64| drain(&two(-1.0, Answer::Yes, [2.0, b])).word;
    assert_eq!([0.99, 1.0, 1.01].map(word), [Word::Possible, Word::Likely, Word::Likely]);
}

#[test]
fn nothing_is_likely_of_which_no_sign_was_seen() {
    let evidence = evidence(0.5, &[observation("a", "1", 1.0, 1.0), observation("b", "2", 1.0, 0.0)]);
    let word = |a: Answer| drain(&rank(&evidence, &answers(&[("a", a), ("b", Answer::Yes)]))).word;
    // The same score either way: only the sign was not seen.
    assert_eq!([Answer::Yes, Answer::No].map(word), [Word::Likely, Word::Possible]);
}

#[test]
fn unlikely_begins_below_minus_one_and_a_half_without_its_weightiest_doubt() {
    let word = |b: f64| drain(&two(0.0, Answer::No, [-3.0, b])).word;
    assert_eq!([-1.49, -1.5, -1.51].map(word), [Word::Possible, Word::Possible, Word::Unlikely]);
}

#[test]
fn two_answers_speak_against_what_is_unlikely_and_each_weighs_three_tenths() {
    let word = |against: [f64; 2]| drain(&two(-2.0, Answer::No, against)).word;
    assert_eq!([[0.0, 0.0], [-9.0, 0.0]].map(word), [Word::Possible; 2], "none and one");
    let second = [-0.29, -0.3, -0.31].map(|second| word([-1.0, second]));
    assert_eq!(second, [Word::Possible, Word::Unlikely, Word::Unlikely]);
    let three = [("a", "1"), ("b", "2"), ("c", "3")].map(|(name, look)| observation(name, look, 0.0, -0.3));
    let no_to_all = answers(&[("a", Answer::No), ("b", Answer::No), ("c", Answer::No)]);
    assert_eq!(drain(&rank(&evidence(-2.0, &three), &no_to_all)).word, Word::Unlikely, "three");
}

#[test]
fn what_weighs_less_than_three_tenths_is_no_reason() {
    let reasons = |weight: f64| drain(&two(0.0, Answer::Yes, [weight, 0.0])).reasons.len();
    assert_eq!([0.29, 0.3, 0.31].map(reasons), [0, 1, 1]);
    let against = |weight: f64| drain(&two(0.0, Answer::No, [-weight, 0.0])).against.len();
    assert_eq!([0.29, 0.3, 0.31].map(against), [0, 1, 1]);
}

#[test]
fn what_comes_from_the_same_look_counts_half_if_it_says_the_same() {
    let score_reaches_likely = |look: &str, b: f64| {
        let evidence = evidence(0.0, &[observation("a", "1", 0.75, 0.0), observation("b", look, b, 0.0)]);
        drain(&rank(&evidence, &answers(&[("a", Answer::Yes), ("b", Answer::Yes)]))).word == Word::Likely
    };
    assert_eq!([0.49, 0.5, 0.51].map(|b| score_reaches_likely("1", b)), [false, true, true]);
    assert_eq!([0.24, 0.25, 0.26].map(|b| score_reaches_likely("2", b)), [false, true, true]);
    // What says the contrary is weighed whole.
    let all_said = answers(&[("a", Answer::Yes), ("b", Answer::Yes), ("c", Answer::Yes)]);
    let word = |c: f64| {
        let [a, b] = [("a", 0.7), ("b", -0.5)].map(|(name, weight)| observation(name, "1", weight, 0.0));
        drain(&rank(&evidence(0.5, &[a, b, observation("c", "2", c, 0.0)]), &all_said)).word
    };
    assert_eq!([0.29, 0.3, 0.31].map(word), [Word::Possible, Word::Likely, Word::Likely]);
}

#[test]
fn three_answers_are_enough_and_two_are_not() {
    let all = [("a", "1"), ("b", "2"), ("c", "3"), ("d", "4")].map(|(name, look)| observation(name, look, 0.5, 0.0));
    let evidence = evidence(0.0, &all);
    let said = [("a", Answer::Yes), ("b", Answer::Yes), ("c", Answer::Yes), ("d", Answer::Yes)];
    let is_enough = |count: usize| rank(&evidence, &answers(&said[..count])).is_enough;
    assert_eq!([2, 3, 4].map(is_enough), [false, true, true]);
    let unknown = answers(&[("a", Answer::Yes), ("b", Answer::Yes), ("c", Answer::Unknown)]);
    assert!(!rank(&evidence, &unknown).is_enough, "what nobody knows is no answer");
    // Two are likely already, and sure only once there is enough to say.
    let two = rank(&evidence, &answers(&said[..2]));
    assert_eq!((drain(&two).word, two.sure().count()), (Word::Likely, 0));
    assert_eq!(rank(&evidence, &answers(&said[..3])).sure().count(), 1);
}

#[test]
fn what_explains_no_more_than_something_else_is_not_enough_to_say() {
    let three = [("a", "1"), ("b", "2"), ("c", "3")].map(|(name, look)| observation(name, look, 0.0, 0.0));
    let said = answers(&[("a", Answer::Yes), ("b", Answer::Yes), ("c", Answer::Yes)]);
    let ranking = |prior: f64, of_other: f64| {
        let mut causes: Vec<_> =
            Cause::ALL.iter().map(|cause| json!({ "name": cause.name(), "prior": -9.0, "signs": ["a"] })).collect();
        causes[Cause::Drain as usize]["prior"] = json!(prior);
        causes[Cause::Other as usize]["prior"] = json!(of_other);
        rank(&serde_json::from_value(json!({ "causes": causes, "observations": three })).unwrap(), &said)
    };
    assert_eq!([-0.51, -0.5, -0.49].map(|prior| ranking(prior, -0.5).is_enough), [false, true, true]);
    // Something else that is likely itself is an answer.
    assert_eq!([0.99, 1.0, 1.01].map(|other| ranking(-2.0, other).is_enough), [false, true, true]);
}
