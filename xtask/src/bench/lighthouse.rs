//! Lighthouse, as a mid-range phone on a slow network.

use crate::site::Site;
use crate::{paths, run, tools};
use anyhow::{Context, Result};
use serde_json::Value;
use std::path::Path;
use std::{fs, thread};

/// Measures what is in a folder.
pub fn print(folder: &Path) -> Result<()> {
    let report = lighthouse(folder)?;
    println!("\nLighthouse, as a mid-range phone on a slow network, out of 100:");
    print!("{}", scores(&report)?);
    Ok(())
}

fn lighthouse(folder: &Path) -> Result<Value> {
    tools::browser()?;
    let mut command = tools::lighthouse()?;
    let served = Site::new(folder.to_path_buf(), "", true).listen(0)?;
    let report = paths::target().join("bench/lighthouse.json");
    command.arg(&served.address).args(["--quiet", "--output=json", "--output-path"]).arg(&report);
    command.arg(format!("--chrome-flags={}", tools::CHROMIUM_FLAGS.join(" "))).env("CHROME_PATH", tools::chromium()?);
    // Ends with this process: nothing else needs it.
    thread::spawn(move || served.run());
    run::quietly(&mut command, run::minutes(5), &paths::target().join("bench/lighthouse.log"))?;
    Ok(serde_json::from_slice(&fs::read(report)?)?)
}

/// The scores, and the timings behind the first of them.
fn scores(report: &Value) -> Result<String> {
    const TIMINGS: [&str; 4] =
        ["first-contentful-paint", "largest-contentful-paint", "total-blocking-time", "cumulative-layout-shift"];
    let mut text = String::new();
    let categories = report.get("categories").and_then(Value::as_object).context("the report has no categories")?;
    for category in categories.values() {
        let score = category.get("score").and_then(Value::as_f64);
        let score = score.map_or("none".into(), |score| format!("{:.0}", score * 100.0));
        text += &format!("   {:30} {score:>8}\n", word(Some(category), "title"));
    }
    for name in TIMINGS {
        let audit = report.get("audits").and_then(|audits| audits.get(name));
        text += &format!("   {:30} {:>8}\n", word(audit, "title"), word(audit, "displayValue"));
    }
    Ok(text)
}

fn word<'a>(of: Option<&'a Value>, name: &str) -> &'a str {
    of.and_then(|of| of.get(name)).and_then(Value::as_str).unwrap_or("none")
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn scores_are_out_of_100_and_a_missing_one_is_not_a_zero() {
        let report = json!({
            "categories": {
                "speed": { "title": "Performance", "score": 0.97 },
                "other": { "title": "Other", "score": null },
            },
            "audits": { "first-contentful-paint": { "title": "Paint", "displayValue": "1.2 s" } },
        });
        let text = scores(&report).unwrap();
        for part in ["97\n", "none", "1.2 s"] {
            assert!(text.contains(part), "{text}");
        }
        assert!(scores(&json!({})).is_err());
    }
}
