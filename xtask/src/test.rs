//! `cargo xtask test`: everything that must hold before a change goes in, cheapest
//! first, up to the first thing that does not hold.

use crate::args::Only;
use crate::run::{self, minutes};
use crate::tools::{self, Optimise};
use crate::{build, dist, paths, size};
use anyhow::{Context, Result, bail};
use std::process::Command;
use std::time::{Duration, Instant};

/// One thing that must hold.
struct Step {
    name: &'static str,
    about: &'static str,
    run: fn() -> Result<()>,
}

const STEPS: [Step; 12] = [
    Step { name: "fmt", about: "the code is formatted", run: fmt },
    Step { name: "clippy", about: "the lints hold on this machine", run: clippy },
    Step { name: "clippy-wasm", about: "the lints hold for the phone", run: clippy_wasm },
    Step { name: "engine", about: "the engine's tests", run: engine },
    Step { name: "tasks", about: "the tests of these commands", run: tasks },
    Step { name: "oracles", about: "the engine against other programs", run: oracles },
    Step { name: "dist", about: "the app builds", run: dist },
    Step { name: "size", about: "a first visit stays within its budget", run: size::check },
    Step { name: "browser-tools", about: "browser, driver and rules are there", run: browser_tools },
    Step { name: "store-page", about: "the page of the store's contract builds", run: build::store_contract },
    Step { name: "browser-build", about: "the browser tests build", run: browser_build },
    Step { name: "browser", about: "the app in a browser", run: browser },
];

/// Runs the steps in order, so many times, and stops at the first that fails.
pub fn test(only: &Only, times: usize) -> Result<()> {
    if *only == Only::List {
        STEPS.iter().for_each(|step| println!("{:14} {}", step.name, step.about));
        return Ok(());
    }
    let steps = chosen(only)?;
    for time in 1..=times {
        if times > 1 {
            println!("\n==== {time} of {times} times");
        }
        once(&steps)?;
    }
    Ok(())
}

fn once(steps: &[&Step]) -> Result<()> {
    let start = Instant::now();
    let mut times = Vec::new();
    for step in steps {
        println!("\n== {}: {}", step.name, step.about);
        let start = Instant::now();
        (step.run)().with_context(|| format!("test stopped at `{}`", step.name))?;
        println!("   ok, {}", seconds(start.elapsed()));
        times.push((step.name, start.elapsed()));
    }
    println!();
    times.iter().for_each(|(name, time)| println!("   {name:14} {:>9}", seconds(*time)));
    println!("cargo xtask test: all {} steps hold, {}", steps.len(), seconds(start.elapsed()));
    Ok(())
}

fn chosen(only: &Only) -> Result<Vec<&'static Step>> {
    let Only::Named(names) = only else {
        return Ok(STEPS.iter().collect());
    };
    if let Some(name) = names.iter().find(|name| STEPS.iter().all(|step| step.name != **name)) {
        bail!("there is no step `{name}`: see `cargo xtask test --list`");
    }
    Ok(STEPS.iter().filter(|step| names.iter().any(|name| name == step.name)).collect())
}

fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f32())
}

fn fmt() -> Result<()> {
    tools::rust_components()?;
    cargo(&["fmt", "--all", "--check"], 2)
}

fn clippy() -> Result<()> {
    cargo(&["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"], 15)
}

fn clippy_wasm() -> Result<()> {
    tools::wasm_target()?;
    let target = ["--target", "wasm32-unknown-unknown", "--lib", "--bin", "duckboard"];
    cargo(&[&["clippy"], &target[..], &["--", "-D", "warnings"]].concat(), 15)
}

fn engine() -> Result<()> {
    cargo(&["test", "--package", "duckboard"], 30)
}

fn tasks() -> Result<()> {
    cargo(&["test", "--package", "xtask", "--bin", "xtask"], 10)
}

/// Other people's programs as judges: each `tests/oracles/*/run` brings what it needs
/// and fails when the engine disagrees.
fn oracles() -> Result<()> {
    tools::python()?;
    let folder = paths::root().join("tests/oracles");
    let mut judges = Vec::new();
    crate::files::walk(&folder, &mut judges);
    judges.retain(|file| file.ends_with("run") && file.is_file());
    judges.sort();
    println!("   {} in {}", judges.len(), folder.display());
    judges.iter().try_for_each(|judge| run::aloud(Command::new(judge).current_dir(paths::root()), minutes(10)))
}

fn dist() -> Result<()> {
    dist::make(Optimise::Always)?;
    dist::check()
}

fn browser_tools() -> Result<()> {
    tools::browser()?;
    tools::axe()
}

fn browser_build() -> Result<()> {
    cargo(&["test", "--package", "xtask", "--test", "browser", "--no-run"], 15)
}

fn browser() -> Result<()> {
    // What failed walks have left there is about older builds.
    for old in ["browser", "shots"] {
        let _ = std::fs::remove_dir_all(paths::target().join(old));
    }
    cargo(&["test", "--package", "xtask", "--test", "browser", "--", "--test-threads=2"], 60)
}

fn cargo(args: &[&str], limit: u64) -> Result<()> {
    let mut cargo = Command::new("cargo");
    cargo.args(args).current_dir(paths::root());
    run::aloud(&mut cargo, minutes(limit))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(only: &Only) -> Vec<&'static str> {
        chosen(only).unwrap().iter().map(|step| step.name).collect()
    }

    #[test]
    fn the_app_is_built_before_it_is_measured_and_walked_through() {
        let all = names(&Only::All);
        let place = |name| all.iter().position(|step| *step == name).unwrap();
        assert!(place("dist") < place("size") && place("dist") < place("browser"));
        assert!(place("browser-tools") < place("browser") && place("store-page") < place("browser"));
    }

    #[test]
    fn named_steps_run_in_their_usual_order() {
        let only = Only::Named(vec!["size".into(), "fmt".into()]);
        assert_eq!(names(&only), ["fmt", "size"]);
    }

    #[test]
    fn an_unknown_step_is_refused_by_name() {
        let error = chosen(&Only::Named(vec!["fnt".into()])).err().unwrap().to_string();
        assert!(error.contains("`fnt`"), "{error}");
    }
}
