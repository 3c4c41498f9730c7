//! What a walk must never cause: a request to another origin, an error in the console.

use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use url::Url;

/// The messages that count as errors.
pub fn errors(console: &[Value]) -> Vec<String> {
    let severe = console.iter().filter(|entry| entry["level"] == "SEVERE");
    severe.map(|entry| entry["message"].as_str().unwrap_or("?").to_string()).collect()
}

/// Requests that a page or a worker made to another origin than its own, out of the
/// browser's own network logs. They hold everything that left or wanted to leave the
/// browser, service workers included, which the page's own tools do not see.
pub fn foreign_requests(folder: &Path) -> Vec<String> {
    let mut foreign = BTreeSet::new();
    let mut asked = 0;
    for log in fs::read_dir(folder).expect("the phone's folder").flatten().map(|file| file.path()) {
        if log.extension().is_some_and(|end| end == "json") {
            let text = fs::read_to_string(&log).expect("the network log");
            let requests: Vec<_> = text.lines().filter_map(request).collect();
            asked += requests.len();
            foreign.extend(requests.into_iter().filter(leaves).map(|(from, to)| format!("{from} asked for {to}")));
        }
    }
    assert!(asked > 0, "the network logs hold no request at all: they prove nothing");
    foreign.into_iter().collect()
}

/// Who asked for what. Each event has a line of its own, and one that a killed browser
/// left half written is none. The browser's own errands have no origin.
fn request(line: &str) -> Option<(Url, Url)> {
    let event: Value = serde_json::from_str(line.trim_end_matches(',')).ok()?;
    let params = event.get("params")?;
    let from = Url::parse(params.get("initiator")?.as_str()?).ok()?;
    Some((from, Url::parse(params.get("url")?.as_str()?).ok()?))
}

fn leaves((from, to): &(Url, Url)) -> bool {
    from.has_host() && from.origin() != to.origin()
}

#[test]
fn a_request_to_another_origin_is_told_from_one_to_our_own() {
    let line = |to| format!(r#"{{"params":{{"initiator":"http://localhost:1","url":"{to}"}},"phase":1}},"#);
    assert!(!leaves(&request(&line("http://localhost:1/a")).unwrap()));
    for to in ["http://localhost:2/a", "https://localhost:1/a", "https://elsewhere.example/"] {
        assert!(leaves(&request(&line(to)).unwrap()), "{to}");
    }
}

#[test]
fn half_a_line_and_the_browsers_own_errands_are_no_requests() {
    for line in ["", r#"{"params":{"initi"#, r#"{"params":{"initiator":"not an origin","url":"https://a.example/"}},"#]
    {
        assert!(request(line).is_none(), "{line}");
    }
}

#[test]
fn only_severe_messages_are_errors() {
    let console = [("WARNING", "a"), ("SEVERE", "b"), ("INFO", "c")]
        .map(|(level, message)| serde_json::json!({ "level": level, "message": message }));
    assert_eq!(errors(&console), ["b"]);
}
