//! Worked cases come out as their sources have them, each with its source and mark beside
//! it in its file.
#![allow(clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

#[path = "worked_cases/case.rs"]
mod case;
#[path = "worked_cases/floor.rs"]
mod floor;
#[path = "worked_cases/moisture.rs"]
mod moisture;

use case::Case;

#[test]
fn wood_air_mold_and_drying_come_out_as_published() {
    let failures = failures(include_str!("fixtures/worked_cases/moisture.jsonl"), moisture::work_out);
    assert!(failures.is_empty(), "{failures:?}");
}

#[test]
fn framing_levels_ground_and_walks_come_out_as_published() {
    let failures = failures(include_str!("fixtures/worked_cases/floor.jsonl"), floor::work_out);
    assert!(failures.is_empty(), "{failures:?}");
}

type Work = fn(&Case) -> Option<Result<case::Got, String>>;

/// Every field of a file's cases that comes out otherwise.
fn failures(file: &str, work_out: Work) -> Vec<String> {
    let cases = file.lines().map(|line| Case::read(line).unwrap());
    let of_case = |case: Case| {
        let failures = case.failures(&work_out(&case).unwrap().unwrap());
        failures.into_iter().map(move |failure| format!("{}: {failure}", case.id))
    };
    cases.flat_map(of_case).collect()
}

#[test]
fn a_case_that_comes_out_otherwise_is_told() {
    let line = |expect: &str| {
        let text = format!(
            r#"{{"id":"a","kind":"emc","input":{{"temp_f":70,"rh":65}},"expect":{expect},"tol":{{"emc_pct":{{"abs":0.07}}}}}}"#
        );
        let case = Case::read(&text).unwrap();
        let got = moisture::work_out(&case).unwrap().unwrap();
        case.failures(&got)
    };
    assert!(line(r#"{"emc_pct":12.0}"#).is_empty());
    assert_eq!(line(r#"{"emc_pct":12.2}"#).len(), 1);
    assert_eq!(line(r#"{"emc_pct":12.0,"other":null}"#).len(), 0);
    assert_eq!(line(r#"{"emc_pct":null}"#).len(), 1);
    assert_eq!(line(r#"{"emc_pct":[12.0]}"#).len(), 1);
}
