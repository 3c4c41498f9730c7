//! Laws of the code.

use crate::{files, hold, read};
use duckboard::engine::sources::Source;

/// Beyond this a file is read in parts, so it had better be parts.
const LONGEST: usize = 400;

/// What the code of a folder may name of its own crate; the first folder that fits
/// counts. What is not here (the app) may name everything.
const BORDERS: [(&str, &[&str]); 8] = [
    ("src/engine/units/", &["engine::units"]),
    ("src/engine/geometry/", &["engine::geometry", "engine::units", "order"]),
    ("src/engine/air/", &["engine::air", "engine::entry", "engine::figure", "engine::sources", "engine::units"]),
    (
        "src/engine/moisture/",
        &[
            // How quantities are written as a figure's inputs, and no more of it.
            "engine::air::shown",
            "engine::entry",
            "engine::figure",
            "engine::moisture",
            "engine::sources",
            "engine::units",
        ],
    ),
    ("src/engine/", &["engine", "order"]),
    ("src/draw/", &["draw", "engine", "order"]),
    ("src/file/", &["engine", "file", "order"]),
    ("src/store/", &["order", "store"]),
];

/// Crates that are the browser.
const BROWSER: [&str; 5] = ["gloo_", "js_sys", "leptos", "wasm_bindgen", "web_sys"];
/// The only places that may name them.
const AT_THE_BROWSER: [&str; 3] = ["src/app/", "src/layouter/", "src/store/indexed_db/"];

/// Where a drawing that `svg::write` made goes into the page as markup; all else is text.
const TAKES_MARKUP: &str = "src/app/plan/mod.rs";

/// Addresses that name a format and are never asked for.
const NAMES_OF_FORMATS: [&str; 2] = ["http://www.w3.org/2000/svg", "https://json-schema.org/draft/2020-12/schema"];

#[test]
fn a_long_file_gives_its_reason() {
    let all = [files("src", &[".rs"]), files("xtask/src", &[".rs"])].concat();
    let long = all.iter().filter(|(_, text)| text.lines().count() > LONGEST && !text.contains("\n// Long because "));
    let faults: Vec<_> = long.map(|(path, text)| format!("{path}: {} lines", text.lines().count())).collect();
    hold("Split these files at 400 lines, or write `// Long because …` on a line of its own:", &faults);
}

#[test]
fn every_calculation_names_its_source() {
    let functions: Vec<_> =
        files("src/engine", &[".rs"]).iter().flat_map(|(path, text)| calculations(path, text)).collect();
    assert!(functions.len() >= 10, "no longer finds the calculations: {functions:?}");
    let silent = functions.iter().filter(|(_, docs)| !docs.contains("Source:"));
    let faults: Vec<_> = silent.map(|(name, _)| name.clone()).collect();
    hold("Say in the doc comment where the rule is from, as `Source: [`Source::…`]`:", &faults);
}

/// The public functions that answer with a figure, each with its doc comment.
fn calculations(path: &str, text: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut docs = String::new();
    for (at, line) in text.lines().enumerate() {
        let line = line.trim();
        if line.starts_with("///") {
            docs += line;
        } else if is_public_function(line) && answers_with_a_figure(&signature(text, at)) {
            found.push((format!("{path}:{}: {line}", at + 1), std::mem::take(&mut docs)));
        } else if !line.starts_with("#[") {
            docs.clear();
        }
    }
    found
}

fn is_public_function(line: &str) -> bool {
    line.starts_with("pub") && line.split('(').any(|part| part.contains("fn "))
}

/// From this line to where the body begins.
fn signature(text: &str, at: usize) -> String {
    let rest = text.lines().skip(at).collect::<Vec<_>>().join(" ");
    rest.split(['{', ';']).next().unwrap_or_default().to_owned()
}

/// What answers with a `Figure<T>` of any `T` carries figures about and computes none.
fn answers_with_a_figure(signature: &str) -> bool {
    let answer = signature.rsplit_once("->").map_or("", |(_, answer)| answer.trim());
    let of = answer.strip_prefix("Figure<").or_else(|| answer.strip_prefix("Known<"));
    of.is_some_and(|of| of.trim_end_matches('>').len() > 1)
}

#[test]
fn every_source_is_one_of_some_rule() {
    let rules: String = files("src", &[".rs"])
        .iter()
        .filter(|(path, _)| path != "src/engine/sources.rs" && !path.ends_with("tests.rs"))
        .map(|(_, text)| code(text))
        .collect();
    let is_used = |name: &str| {
        let name = format!("Source::{name}");
        rules.split(&name).skip(1).any(|rest| !rest.starts_with(char::is_alphanumeric))
    };
    let idle: Vec<_> =
        Source::ALL.iter().filter(|(name, _)| !is_used(name)).map(|(name, _)| (*name).to_owned()).collect();
    hold("No rule names these sources: name them where they are used, or take them out of sources.rs:", &idle);
}

/// A file without its comments and its tests.
fn code(text: &str) -> String {
    let text = text.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
    text.lines().filter(|line| !line.trim_start().starts_with("//")).map(|line| format!("{line}\n")).collect()
}

#[test]
fn a_layer_knows_only_what_is_below_it() {
    let mut faults = Vec::new();
    for (path, text) in files("src", &[".rs"]) {
        let Some((_, may)) = BORDERS.iter().find(|(folder, _)| path.starts_with(folder)) else { continue };
        // How far something may be seen is no use of what is there.
        let code = code(&text).replace("pub(in crate::", "pub(in ");
        let named = code.split("crate::").skip(1).map(path_at_the_start);
        let foreign = named.filter(|name| !may.iter().any(|may| is_within(name, may)));
        faults.extend(foreign.map(|name| format!("{path}: crate::{name}")));
    }
    hold("Hand these in from outside, or move what is needed below the border (BORDERS, tests/tidy/code.rs):", &faults);
}

/// `engine::units` of "engine::units::{Length, Typed};".
fn path_at_the_start(code: &str) -> &str {
    let path = code.split(|c: char| !c.is_alphanumeric() && !"_:".contains(c)).next().unwrap_or_default();
    path.trim_end_matches(':')
}

/// Is `engine::units::Length` within `engine::units`?
fn is_within(name: &str, border: &str) -> bool {
    name.strip_prefix(border).is_some_and(|rest| rest.is_empty() || rest.starts_with("::"))
}

#[test]
fn only_the_app_and_its_store_know_a_browser() {
    let mut faults = Vec::new();
    for (path, text) in files("src", &[".rs"]) {
        if AT_THE_BROWSER.iter().any(|folder| path.starts_with(folder)) {
            continue;
        }
        let code = code(&text);
        faults.extend(BROWSER.iter().filter(|name| code.contains(**name)).map(|name| format!("{path}: {name}")));
    }
    hold("Move what needs the browser into src/app/platform or src/store/indexed_db:", &faults);
}

#[test]
fn nothing_that_is_served_asks_another_origin_or_breaks_the_content_policy() {
    let mut served = files("src", &[".rs"]);
    served.extend(files("public", &[".css", ".js", ".json", ".svg", ".webmanifest"]));
    served.push(("index.html".to_owned(), read("index.html")));
    let mut faults = Vec::new();
    for (path, text) in served {
        let code = NAMES_OF_FORMATS.iter().fold(code(&text), |code, name| code.replace(name, ""));
        let markup = ["inner_html", "innerHTML"].iter().filter(|_| path != TAKES_MARKUP);
        for broken in ["http://", "https://", " style=", "setAttribute('style'"].iter().chain(markup) {
            let lines = code.lines().filter(|line| line.contains(*broken));
            faults.extend(lines.map(|line| format!("{path}: {}", line.trim())));
        }
    }
    hold("Bring the file along in public/, make the style a class, set text instead of markup:", &faults);
}
