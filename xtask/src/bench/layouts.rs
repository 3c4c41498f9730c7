//! The proofs of the layout cases, water, and large rooms with what memory they take: natively,
//! and as WebAssembly in Chromium.

use crate::site::Site;
use crate::{build, paths, run, tools};
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{fs, thread};

/// No room may take more memory, on a phone or on a desk.
const MOST_MEBIBYTES: f64 = 300.0;

/// What was proven, in how many milliseconds, and of a large room with how much memory so far.
#[derive(Debug, PartialEq)]
struct Timed {
    proven: String,
    ms: f64,
    mebibytes: Option<f64>,
}

/// Proves every case both ways and prints how long each took.
pub fn compare() -> Result<()> {
    let cases = paths::root().join("tests/fixtures/layout_cases");
    let (native, browser) = (natively(&cases)?, in_chromium(&cases)?);
    print!("{}", table(&native, &browser)?);
    Ok(())
}

/// Lays invented rooms drawn by lot and prints how many are proven; too few are an error.
pub fn rooms() -> Result<()> {
    let mut cargo = Command::new("cargo");
    cargo.args(["run", "--quiet", "--release", "--example", "layout_rooms"]);
    println!("\nrooms of 139 to 354 sq ft, natively:");
    run::aloud(cargo.current_dir(paths::root()), run::minutes(30))
}

fn natively(cases: &Path) -> Result<Vec<Timed>> {
    let mut cargo = Command::new("cargo");
    cargo.args(["run", "--quiet", "--release", "--example", "layout_speed", "--"]).arg(cases);
    let log = paths::target().join("bench/layouts-native.log");
    run::quietly(cargo.current_dir(paths::root()), run::minutes(20), &log)?;
    let text = fs::read_to_string(log)?;
    text.lines().filter(|line| line.starts_with('[')).map(|line| timed(&serde_json::from_str(line)?)).collect()
}

fn in_chromium(cases: &Path) -> Result<Vec<Timed>> {
    tools::browser()?;
    let folder = build::layout_speed()?;
    let texts = files_in(cases)?.into_iter().map(fs::read_to_string).collect::<Result<Vec<_>, _>>()?;
    fs::write(folder.join("cases.json"), serde_json::to_string(&texts)?)?;
    let served = Site::new(folder, "", false).listen(0)?;
    let profile = paths::target().join("bench/profile");
    let log = paths::target().join("bench/layouts-chromium.log");
    let mut chromium = Command::new(tools::chromium()?);
    chromium
        .args(tools::CHROMIUM_FLAGS)
        .arg("--dump-dom")
        .arg(format!("--user-data-dir={}", profile.display()))
        .arg(&served.address);
    // Ends with this process: nothing else needs it.
    thread::spawn(move || served.run());
    run::quietly(&mut chromium, run::minutes(15), &log)?;
    let page = fs::read_to_string(log)?;
    let results = page.split_once("<body>").and_then(|(_, rest)| rest.split_once("</body>")).map(|(body, _)| body);
    let results: Vec<Value> = serde_json::from_str(results.context("Chromium printed no page")?.trim())?;
    results.iter().map(timed).collect()
}

fn files_in(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut files = fs::read_dir(folder)?.map(|file| Ok(file?.path())).collect::<std::io::Result<Vec<_>>>()?;
    files.sort();
    Ok(files)
}

fn timed(pair: &Value) -> Result<Timed> {
    let proven = pair.get(0).and_then(Value::as_str).context("a result has no words")?;
    let ms = pair.get(1).and_then(Value::as_f64).context("a result has no time")?;
    let mebibytes = pair.get(2).and_then(Value::as_f64);
    Ok(Timed { proven: proven.to_owned(), ms, mebibytes })
}

/// A line a case, and the whole. The proofs must be the same to the step.
fn table(native: &[Timed], browser: &[Timed]) -> Result<String> {
    let mut text = format!("\n   {:56} {:>9} {:>9} {:>6}\n", "in ms", "native", "Chromium", "times");
    let mut line = |what: &str, native: f64, browser: f64| {
        text += &format!("   {what:56} {native:>9.1} {browser:>9.1} {:>6.2}\n", browser / native);
    };
    for (one, other) in native.iter().zip(browser) {
        if one.proven != other.proven {
            bail!("natively {}, in Chromium {}", one.proven, other.proven);
        }
        line(&one.proven, one.ms, other.ms);
    }
    let total = |all: &[Timed]| all.iter().map(|timed| timed.ms).sum::<f64>();
    line("all", total(native), total(browser));
    let most = |all: &[Timed]| all.iter().filter_map(|timed| timed.mebibytes).fold(0.0, f64::max);
    line("most memory, in MiB", most(native), most(browser));
    if most(native).max(most(browser)) > MOST_MEBIBYTES {
        bail!("a room takes more than {MOST_MEBIBYTES} MiB");
    }
    if native.len() != browser.len() {
        bail!("{} cases natively, {} in Chromium", native.len(), browser.len());
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn took(proven: &str, ms: f64) -> Timed {
        Timed { proven: proven.to_owned(), ms, mebibytes: None }
    }

    #[test]
    fn times_are_compared_case_by_case_and_as_a_whole() {
        let text = table(&[took("a", 10.0), took("b", 30.0)], &[took("a", 20.0), took("b", 40.0)]).unwrap();
        assert!(text.contains("2.00\n") && text.contains("1.33\n") && text.contains("1.50\n"), "{text}");
    }

    #[test]
    fn a_room_may_take_as_much_memory_as_it_may_and_no_more() {
        let took = |mebibytes| [Timed { mebibytes: Some(mebibytes), ..took("a", 1.0) }];
        assert!(table(&took(299.9), &took(MOST_MEBIBYTES)).unwrap().contains("most memory, in MiB"));
        assert!(table(&took(1.0), &took(300.1)).is_err());
        assert!(table(&took(300.1), &took(1.0)).is_err());
    }

    #[test]
    fn another_proof_in_the_browser_is_an_error() {
        assert!(table(&[took("a steps 3", 1.0)], &[took("a steps 4", 1.0)]).is_err());
        assert!(table(&[took("a", 1.0)], &[]).is_err());
    }
}
