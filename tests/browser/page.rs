//! The page in the browser: asking it, waiting for it, giving it files and taking them.

use crate::phone::{LOOK, Phone};
use crate::server;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use tokio::time::{Instant, sleep};

/// The page's text with its line breaks and runs of blanks as single blanks.
const PAGE_WORDS: &str = "document.body.innerText.replace(/\\s+/g, ' ')";

pub fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

impl Phone {
    /// A command of the Chrome DevTools Protocol that must succeed.
    pub async fn cdp(&mut self, command: &str, params: Value) -> Value {
        match self.try_cdp(command, params).await {
            Ok(answer) => answer,
            Err(error) => self.fail(&format!("{command}: {error}")).await,
        }
    }

    /// A command of the Chrome DevTools Protocol that may fail.
    pub async fn try_cdp(&self, command: &str, params: Value) -> Result<Value, String> {
        self.driver.cdp(command, params).await
    }

    /// The value of a JavaScript expression; a promise is waited for.
    pub async fn js(&mut self, expression: &str) -> Value {
        match self.try_js(expression).await {
            Ok(value) => value,
            Err(error) => self.fail(&format!("`{expression}`: {error}")).await,
        }
    }

    /// The value of a JavaScript expression that may throw.
    pub async fn try_js(&self, expression: &str) -> Result<Value, String> {
        let params = json!({ "expression": expression, "awaitPromise": true, "returnByValue": true });
        let answer = self.try_cdp("Runtime.evaluate", params).await?;
        match answer.get("exceptionDetails") {
            Some(thrown) => Err(thrown["exception"]["description"].as_str().unwrap_or("threw").to_string()),
            None => Ok(answer["result"]["value"].clone()),
        }
    }

    /// Waits until a JavaScript expression is true.
    pub async fn wait_until(&mut self, what: &str, expression: &str) {
        let end = Instant::now() + self.patience;
        // While a page is being replaced there is nothing to ask.
        while self.try_js(expression).await != Ok(Value::Bool(true)) {
            if Instant::now() > end {
                self.fail(&format!("waited in vain until {what} (`{expression}`)")).await;
            }
            sleep(LOOK).await;
        }
    }

    /// Waits until the text can be read on the page, however its lines are broken.
    pub async fn wait_for(&mut self, text: &str) {
        let wanted = json!(words(text));
        self.wait_until(&format!("the page says “{text}”"), &format!("({PAGE_WORDS}).includes({wanted})")).await;
    }

    /// Waits until the text can no longer be read on the page.
    pub async fn wait_for_no(&mut self, text: &str) {
        let unwanted = json!(words(text));
        let gone = format!("!({PAGE_WORDS}).includes({unwanted})");
        self.wait_until(&format!("the page no longer says “{text}”"), &gone).await;
    }

    /// Waits until this build is kept for use without a signal.
    pub async fn wait_until_kept(&mut self) {
        self.wait_until("the app is kept offline", "document.documentElement.dataset.offline === 'ready'").await;
    }

    /// Waits until the app has taken the page over, and fails if it could not.
    pub async fn wait_until_started(&mut self) {
        let app = "document.documentElement.dataset.app";
        self.wait_until("the app has started or failed", &format!("{app} !== undefined")).await;
        if self.js(app).await != "started" {
            self.fail("the app did not start").await;
        }
    }

    /// All text that can be read on the page.
    pub async fn page_text(&self) -> String {
        let text = self.try_js("document.body.innerText").await;
        text.ok().and_then(|text| text.as_str().map(str::to_string)).unwrap_or_else(|| "(no page)".into())
    }

    /// Saves what is on the screen as `target/shots/NAME.png`.
    pub async fn screenshot(&self, name: &str) -> PathBuf {
        let file = server::target().join(format!("shots/{name}.png"));
        fs::create_dir_all(file.parent().expect("a folder")).expect("a folder for the shots");
        let picture = self.driver.client().screenshot().await.expect("a screenshot");
        fs::write(&file, picture).expect("the screenshot is written");
        file
    }

    /// Hands files to the file input that the selector finds, hidden or not.
    pub async fn choose_files(&mut self, selector: &str, files: &[&Path]) {
        let find = json!({ "expression": format!("document.querySelector({})", json!(selector)) });
        let input = self.cdp("Runtime.evaluate", find).await["result"]["objectId"].clone();
        if input.is_null() {
            self.fail(&format!("there is no {selector}")).await;
        }
        self.cdp("DOM.setFileInputFiles", json!({ "files": files, "objectId": input })).await;
    }

    /// Waits for a finished download whose name ends like this. The browser reserves the
    /// name with an empty file, and renames what it has written to that at the end.
    pub async fn wait_for_download(&mut self, ending: &str) -> PathBuf {
        let end = Instant::now() + self.patience;
        loop {
            let files = fs::read_dir(self.downloads()).expect("the downloads").flatten();
            let written = |file: &PathBuf| fs::metadata(file).is_ok_and(|data| data.len() > 0);
            let mut finished = files.map(|file| file.path()).filter(written);
            let found = finished.find(|file| file.to_string_lossy().ends_with(ending));
            if let Some(file) = found {
                return file;
            }
            if Instant::now() > end {
                self.fail(&format!("no download ends with {ending}")).await;
            }
            sleep(LOOK).await;
        }
    }
}
