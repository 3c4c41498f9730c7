//! chromedriver: one process per phone, on a port of its own choice.

use super::server::{PATIENCE, said};
use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::fs::{self, File};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use tokio::time::timeout;
use url::{ParseError, Url};

/// How often chromedriver may look for a free port.
const TRIES: usize = 5;

/// A running chromedriver and its one session.
pub struct Driver {
    child: Child,
    client: Client,
}

impl Driver {
    /// Starts chromedriver, and the browser with these capabilities.
    pub async fn start(log: &Path, capabilities: Capabilities) -> Self {
        let (child, port) = listening(log).await;
        let address = format!("http://localhost:{port}");
        let mut builder = ClientBuilder::new(HttpConnector::new());
        let connecting = builder.capabilities(capabilities).connect(&address);
        let client = timeout(PATIENCE, connecting).await.expect("the browser starts in time");
        Self { child, client: client.expect("the browser starts") }
    }

    /// The session, for what a phone has no word for.
    pub fn client(&self) -> &Client {
        &self.client
    }

    /// Sends a command of the Chrome DevTools Protocol to the page.
    pub async fn cdp(&self, command: &str, params: Value) -> Result<Value, String> {
        self.send("goog/cdp/execute", json!({ "cmd": command, "params": params })).await
    }

    /// What the console has said since the last time.
    pub async fn console(&self) -> Vec<Value> {
        let log = self.send("se/log", json!({ "type": "browser" })).await.expect("the console's log");
        log.as_array().cloned().unwrap_or_default()
    }

    async fn send(&self, path: &'static str, body: Value) -> Result<Value, String> {
        let answer = timeout(PATIENCE, self.client.issue_cmd(Post { path, body })).await;
        let answer = answer.map_err(|_| format!("{path} took more than {} s", PATIENCE.as_secs()))?;
        answer.map_err(|error| error.to_string())
    }

    /// Ends the browser as its own menu would.
    pub async fn quit(&mut self) {
        let _ = timeout(PATIENCE, self.client.clone().close()).await;
        self.stop();
    }

    /// Ends chromedriver. A browser that is alive is not its business any more.
    pub fn stop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        self.stop();
    }
}

/// chromedriver and its port. It takes one of IPv6 and then wants the same one of IPv4,
/// where somebody else may be: then it gives up, and the next one gets another port.
async fn listening(log: &Path) -> (Child, String) {
    for _ in 0..TRIES {
        let out = File::create(log).expect("a log file");
        let mut child = Command::new("chromedriver")
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(out.try_clone().expect("the log file"))
            .stderr(out)
            .spawn()
            .expect("chromedriver starts: `cargo xtask test browser-tools` installs it");
        if let Some(port) = said(&mut child, log, "started successfully on port ").await {
            return (child, port.trim_end_matches('.').to_string());
        }
    }
    panic!("chromedriver found no port: {}", fs::read_to_string(log).unwrap_or_default());
}

/// A command that only chromedriver knows.
#[derive(Debug)]
struct Post {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Post {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
