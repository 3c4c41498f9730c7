//! The accessibility rules of axe-core, run in the page as it stands.

use super::phone::Phone;
use super::server;
use serde_json::Value;
use std::fs;
use std::path::PathBuf;

/// Levels A and AA of WCAG up to 2.2, and axe's own advice.
const RUN: &str = "axe.run(document, { resultTypes: ['violations'], runOnly: \
    ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })";

impl Phone {
    /// What the rules object to on the page once it stands still, one readable line for
    /// each element.
    pub async fn violations(&mut self) -> Vec<String> {
        self.at_rest().await;
        let axe = fs::read_to_string(script()).expect("axe-core can be read");
        // Through the debugger, since the page's policy rightly refuses a foreign script.
        let result = self.look(&format!("{axe}; {RUN}")).await;
        match result.as_ref().map(|result| result["violations"].as_array()) {
            Ok(Some(violations)) => violations.iter().flat_map(lines).collect(),
            _ => self.fail(&format!("the rules were not run: {result:?}")).await,
        }
    }

    /// Fails the walk if the rules object to anything.
    pub async fn check_accessible(&mut self) {
        let violations = self.violations().await;
        if !violations.is_empty() {
            self.fail(&format!("accessibility rules are broken:\n{}", violations.join("\n"))).await;
        }
    }
}

fn lines(violation: &Value) -> Vec<String> {
    let word = |value: &Value| value.as_str().unwrap_or("?").to_string();
    let rule = format!("{} ({})", word(&violation["id"]), word(&violation["impact"]));
    let nodes = violation["nodes"].as_array().cloned().unwrap_or_default();
    let about = |node: &Value| {
        let summary = word(&node["failureSummary"]).replace('\n', " ");
        format!("  {rule}: {} in {}", summary, word(&node["html"]))
    };
    nodes.iter().map(about).collect()
}

/// Where `cargo xtask test browser-tools` puts it.
fn script() -> PathBuf {
    let tools = server::target().join("tools");
    let folders = fs::read_dir(&tools).into_iter().flatten().flatten().map(|entry| entry.path());
    let mut scripts = folders.map(|folder| folder.join("node_modules/axe-core/axe.min.js"));
    let found = scripts.find(|script| script.is_file() && script.to_string_lossy().contains("tools/axe-core-"));
    found.expect("axe-core is not installed: run `cargo xtask test browser-tools`")
}
