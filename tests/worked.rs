//! Worked cases come out as their sources have them, each with its source and mark beside
//! it in its file.
#![allow(clippy::panic, clippy::unwrap_used, reason = "a test fails by panicking")]

#[path = "worked_cases/case.rs"]
mod case;
#[path = "worked_cases/moisture.rs"]
mod moisture;

use case::Case;

#[test]
fn wood_air_mold_and_drying_come_out_as_published() {
    let failures: Vec<_> = include_str!("fixtures/worked_cases/moisture.jsonl")
        .lines()
        .map(|line| Case::read(line).unwrap())
        .flat_map(|case| {
            let got = moisture::work_out(&case).unwrap().unwrap();
            case.failures(&got).into_iter().map(move |failure| format!("{}: {failure}", case.id))
        })
        .collect();
    assert!(failures.is_empty(), "{failures:?}");
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
