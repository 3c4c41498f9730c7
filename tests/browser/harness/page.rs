//! The page in the browser: reading it when it is as it should be, giving it files and
//! taking them.

use super::phone::{LOOK, Phone};
use super::server;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use tokio::time::{Instant, sleep};

/// The page's text with its line breaks and runs of blanks as single blanks.
const PAGE_WORDS: &str = "document.body.innerText.replace(/\\s+/g, ' ')";

/// Nothing has changed for two frames, and nothing is on the move.
const AT_REST: &str = "new Promise(done => {
  let changes = 0;
  const observer = new MutationObserver(() => changes++);
  observer.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  const frame = act => requestAnimationFrame(act);
  frame(() => frame(() => {
    observer.disconnect();
    done(changes === 0 && document.readyState === 'complete'
      && document.getAnimations().every(({ playState }) => playState !== 'running'));
  }));
})";

impl Phone {
    /// A command of the Chrome DevTools Protocol that must succeed. What it answers stays
    /// here: a page is read with [`Phone::read`].
    pub async fn command(&mut self, command: &str, params: Value) {
        self.cdp(command, params).await;
    }

    pub(super) async fn cdp(&mut self, command: &str, params: Value) -> Value {
        match self.try_cdp(command, params).await {
            Ok(answer) => answer,
            Err(error) => self.fail(&format!("{command}: {error}")).await,
        }
    }

    pub(super) async fn try_cdp(&self, command: &str, params: Value) -> Result<Value, String> {
        self.driver.cdp(command, params).await
    }

    /// The value of a JavaScript expression as it is now, which may throw; a promise is
    /// waited for.
    pub(super) async fn look(&self, expression: &str) -> Result<Value, String> {
        let params = json!({ "expression": expression, "awaitPromise": true, "returnByValue": true });
        let answer = self.try_cdp("Runtime.evaluate", params).await?;
        match answer.get("exceptionDetails") {
            Some(thrown) => Err(thrown["exception"]["description"].as_str().unwrap_or("threw").to_string()),
            None => Ok(answer["result"]["value"].clone()),
        }
    }

    /// Reads a JavaScript expression until the value is as it should be, and returns it.
    /// What throws, or has another type, is not there yet.
    pub async fn read<T: DeserializeOwned>(
        &mut self,
        what: &str,
        expression: &str,
        is_right: impl Fn(&T) -> bool,
    ) -> T {
        let start = Instant::now();
        loop {
            let seen = self.look(expression).await;
            let value = seen.as_ref().ok().and_then(|value| T::deserialize(value).ok());
            if let Some(value) = value.filter(&is_right) {
                return value;
            }
            if start.elapsed() > self.patience {
                let seen = seen.map_or_else(|error| format!("threw {error}"), |value| format!("was {value}"));
                let waited = start.elapsed().as_secs();
                self.fail(&format!("waited {waited} s in vain until {what}\n`{expression}`\nat last {seen}")).await;
            }
            sleep(LOOK).await;
        }
    }

    /// Waits until a JavaScript expression has this value.
    pub async fn reads(&mut self, what: &str, expression: &str, value: impl Into<Value>) {
        let value = value.into();
        let wanted = format!("{what}, which is {value}");
        self.read::<Value>(&wanted, expression, |seen| *seen == value).await;
    }

    /// Waits until a JavaScript expression is true.
    pub async fn wait_until(&mut self, what: &str, expression: &str) {
        self.read::<bool>(what, expression, |is_so| *is_so).await;
    }

    /// Does something to the page as soon as that can be done: until then the script throws,
    /// best before it has changed anything.
    pub async fn act(&mut self, what: &str, script: &str) {
        self.read::<Value>(what, &format!("(async () => {{ {script}; }})()"), |_| true).await;
    }

    /// Waits until the text can be read on the page, however its lines are broken.
    pub async fn wait_for(&mut self, text: &str) {
        self.says_in("body", text).await;
    }

    /// Waits until the text can be read in the first element that the selector finds.
    pub async fn says_in(&mut self, selector: &str, text: &str) {
        let said = format!("({}).includes({})", text_of(selector), json!(words(text)));
        self.wait_until(&format!("“{text}” stands in {selector}"), &said).await;
    }

    /// Waits until the page says the one and not the other. It must say something: a page
    /// that is not drawn yet says nothing wrong either.
    pub async fn wait_for_without(&mut self, text: &str, unwanted: &str) {
        let (said, unsaid) = (json!(words(text)), json!(words(unwanted)));
        let without = format!("(said => said.includes({said}) && !said.includes({unsaid}))({PAGE_WORDS})");
        self.wait_until(&format!("the page says “{text}” and not “{unwanted}”"), &without).await;
    }

    /// The words in the first element that the selector finds, as soon as these are among
    /// them.
    pub async fn words_in(&mut self, selector: &str, among: &[&str]) -> String {
        let has_all = |text: &String| among.iter().all(|part| text.contains(&words(part)));
        self.read(&format!("{selector} says {among:?}"), &text_of(selector), has_all).await
    }

    /// Waits until the page stands still.
    pub async fn at_rest(&mut self) {
        self.wait_until("the page stands still", AT_REST).await;
    }

    /// Waits until this build is kept for use without a signal, and answers for the page.
    pub async fn wait_until_kept(&mut self) {
        let kept =
            "document.documentElement.dataset.offline === 'ready' && navigator.serviceWorker.controller !== null";
        self.wait_until("the app is kept offline", kept).await;
    }

    /// Waits until the app has taken the page over, and fails at once if it could not.
    pub async fn wait_until_started(&mut self) {
        let app = "document.documentElement.dataset.app";
        if self.read::<String>("the app has started or failed", app, |_| true).await != "started" {
            self.fail("the app did not start").await;
        }
    }

    /// Loads the page again, as the user would.
    pub async fn reload(&mut self) {
        // Not WebDriver's refresh: the mark shows that it is another page. The old one may
        // go before it has answered.
        let _ = self.look("window.beforeReload = true; location.reload()").await;
        self.wait_until("the page is loaded again", "!window.beforeReload && document.readyState === 'complete'").await;
    }

    /// From now on the page is looked at as it is printed.
    pub async fn put_on_paper(&mut self) {
        self.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
        self.wait_until("the page is on paper", "matchMedia('print').matches").await;
    }

    /// All text that can be read on the page.
    pub(super) async fn page_text(&self) -> String {
        let text = self.look("document.body.innerText").await;
        text.ok().and_then(|text| text.as_str().map(str::to_string)).unwrap_or_else(|| "(no page)".into())
    }

    /// Saves what is on the screen as `target/shots/NAME.png`, once it stands still.
    pub async fn screenshot(&mut self, name: &str) {
        self.at_rest().await;
        self.shoot(name).await;
    }

    /// The same, however it is.
    pub(super) async fn shoot(&self, name: &str) -> PathBuf {
        let file = server::target().join(format!("shots/{name}.png"));
        fs::create_dir_all(file.parent().expect("a folder")).expect("a folder for the shots");
        let picture = self.driver.client().screenshot().await.expect("a screenshot");
        fs::write(&file, picture).expect("the screenshot is written");
        file
    }

    /// Hands files to the file input that the selector finds, hidden or not, as soon as it
    /// is there.
    pub async fn choose_files(&mut self, selector: &str, files: &[&Path]) {
        let start = Instant::now();
        loop {
            let why = match self.try_to_choose(selector, files).await {
                Ok(()) => return,
                Err(why) => why,
            };
            if start.elapsed() > self.patience {
                self.fail(&format!("no file could be given to {selector}: {why}")).await;
            }
            sleep(LOOK).await;
        }
    }

    async fn try_to_choose(&self, selector: &str, files: &[&Path]) -> Result<(), String> {
        let input = self.object(&format!("document.querySelector({})", json!(selector))).await?;
        self.try_cdp("DOM.setFileInputFiles", json!({ "files": files, "objectId": input })).await.map(|_| ())
    }

    /// A handle of the element that an expression finds now.
    pub(super) async fn object(&self, expression: &str) -> Result<Value, String> {
        let found = self.try_cdp("Runtime.evaluate", json!({ "expression": expression })).await?;
        let object = found["result"]["objectId"].clone();
        if object.is_null() || found.get("exceptionDetails").is_some() {
            return Err(format!("there is no `{expression}`"));
        }
        Ok(object)
    }

    /// Waits for a finished download whose name ends like this. The browser reserves the
    /// name with an empty file, and renames what it has written to that at the end.
    pub async fn wait_for_download(&mut self, ending: &str) -> PathBuf {
        let start = Instant::now();
        loop {
            let files = fs::read_dir(self.downloads()).expect("the downloads").flatten();
            let written = |file: &PathBuf| fs::metadata(file).is_ok_and(|data| data.len() > 0);
            let mut finished = files.map(|file| file.path()).filter(written);
            let found = finished.find(|file| file.to_string_lossy().ends_with(ending));
            if let Some(file) = found {
                return file;
            }
            if start.elapsed() > self.patience {
                self.fail(&format!("no download ends with {ending}")).await;
            }
            sleep(LOOK).await;
        }
    }
}

/// The words in the first element that a selector finds, as an expression.
fn text_of(selector: &str) -> String {
    format!("document.querySelector({}).innerText.replace(/\\s+/g, ' ').trim()", json!(selector))
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
