//! A phone: a browser with a profile of its own, a screen, a thumb and a keyboard.

use super::driver::Driver;
use super::server::PATIENCE;
use super::{processes, server, watch};
use fantoccini::wd::Capabilities;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;
use tokio::time::{Instant, sleep};

/// Between two looks.
pub(super) const LOOK: Duration = Duration::from_millis(100);

/// As root, quiet, and with no errands of its own.
const FLAGS: [&str; 10] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    // What a page asks of another host would fail anyway: it fails here at once.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost",
];

/// What the app is looked at on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Screen {
    /// 390x844, touch: most phones.
    Tall,
    /// 360x640, touch: the smallest that the app promises to fit.
    Small,
    /// 1280x900, mouse: the office.
    Desktop,
}

impl Screen {
    /// Is it touched?
    pub fn is_touch(self) -> bool {
        self != Self::Desktop
    }

    fn emulation(self) -> Option<Value> {
        let (width, height, ratio) = match self {
            Self::Tall => (390, 844, 3.0),
            Self::Small => (360, 640, 2.0),
            Self::Desktop => return None,
        };
        let metrics = json!({ "width": width, "height": height, "pixelRatio": ratio, "touch": true, "mobile": true });
        Some(json!({ "deviceMetrics": metrics }))
    }
}

/// A browser that can be tapped, read, killed and started again.
pub struct Phone {
    pub(super) screen: Screen,
    /// Profile, downloads and logs; named by this process and a number.
    folder: PathBuf,
    starts: usize,
    pub(super) driver: Driver,
    /// Errors in the console, of all starts.
    errors: Vec<String>,
    /// How long to wait for what should be there at once.
    pub patience: Duration,
}

/// What a walk caused that no walk should.
pub(super) struct Report {
    pub(super) foreign_requests: Vec<String>,
    pub(super) console_errors: Vec<String>,
}

impl Phone {
    /// A new phone with nothing on it, at this address.
    pub async fn open(screen: Screen, address: &str) -> Self {
        let folder = server::own_path("phone");
        fs::create_dir_all(folder.join("downloads")).expect("a folder for the phone");
        let driver = start(screen, &folder, 0).await;
        let mut phone = Self { screen, folder, starts: 1, driver, errors: Vec::new(), patience: PATIENCE };
        phone.set_up(address).await;
        phone
    }

    /// SIGKILLs the whole browser, as a phone short of memory does.
    pub async fn kill(&mut self) {
        let killed = processes::kill_all_of(&self.profile());
        assert!(killed > 0, "there was no browser to kill");
        self.driver.stop();
        let end = Instant::now() + self.patience;
        while processes::any_of(&self.profile()) {
            assert!(Instant::now() < end, "the browser outlived SIGKILL");
            sleep(LOOK).await;
        }
    }

    /// Starts the browser again with all that the phone had stored.
    pub async fn start_again(&mut self, address: &str) {
        self.driver = start(self.screen, &self.folder, self.starts).await;
        self.starts += 1;
        self.set_up(address).await;
    }

    async fn set_up(&mut self, address: &str) {
        let downloads = json!({ "behavior": "allow", "downloadPath": self.downloads() });
        self.cdp("Browser.setDownloadBehavior", downloads).await;
        self.goto(address).await;
    }

    /// Loads a page.
    pub async fn goto(&mut self, address: &str) {
        if let Err(error) = self.driver.client().goto(address).await {
            self.fail(&format!("{address} did not load: {error}")).await;
        }
    }

    /// Opens another tab of the same browser and goes on there.
    pub async fn open_tab(&mut self, address: &str) {
        let tab = self.driver.client().new_window(true).await.expect("another tab").handle;
        self.driver.client().switch_to_window(tab).await.expect("the other tab");
        self.goto(address).await;
    }

    /// Goes on in the n-th tab, counted from 0 in the order of opening.
    pub async fn tab(&mut self, number: usize) {
        let tabs = self.driver.client().windows().await.expect("the tabs");
        self.driver.client().switch_to_window(tabs[number].clone()).await.expect("that tab");
    }

    /// Closes the tab. Go on in another one.
    pub async fn close_tab(&mut self) {
        self.driver.client().close_window().await.expect("the tab closes");
    }

    async fn console_errors(&mut self) -> Vec<String> {
        self.errors.extend(watch::errors(&self.driver.console().await));
        self.errors.clone()
    }

    /// Waits until the console has an error: for a walk that means to cause one.
    pub async fn wait_for_a_console_error(&mut self) {
        let start = Instant::now();
        while self.console_errors().await.is_empty() {
            if start.elapsed() > self.patience {
                self.fail("there is no error in the console").await;
            }
            sleep(LOOK).await;
        }
    }

    /// Ends the walk: quits the browser and holds the walk to the laws of every walk.
    pub async fn finish(self) {
        let errors = self.finish_despite_errors().await;
        assert!(errors.is_empty(), "errors in the console:\n{}", errors.join("\n"));
    }

    /// The same for a walk that means to cause errors in the console; says which there were.
    pub async fn finish_despite_errors(self) -> Vec<String> {
        let Report { foreign_requests: foreign, console_errors } = self.quit().await;
        assert!(foreign.is_empty(), "requests left our origin:\n{}", foreign.join("\n"));
        console_errors
    }

    /// Quits the browser and says what the walk has caused.
    pub(super) async fn quit(mut self) -> Report {
        let console_errors = self.console_errors().await;
        self.driver.quit().await;
        Report { foreign_requests: watch::foreign_requests(&self.folder), console_errors }
    }

    /// Fails the walk with all there is to see.
    pub async fn fail(&mut self, why: &str) -> ! {
        let name = self.folder.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let shot = match self.driver.client().screenshot().await {
            Ok(_) => self.shoot(&format!("failed-{name}")).await.display().to_string(),
            Err(error) => format!("none ({error})"),
        };
        let (text, things) = (self.page_text().await, self.on_screen().await);
        let things: Vec<_> = things.iter().map(ToString::to_string).collect();
        let errors = self.console_errors().await;
        panic!(
            "{why}\nscreenshot: {shot}\nthe page says:\n{text}\nthings on it: {}\nconsole errors: {errors:?}",
            things.join(", ")
        )
    }

    fn profile(&self) -> PathBuf {
        self.folder.join("profile")
    }

    /// A file that this phone's owner has, with these bytes.
    pub fn file(&self, name: &str, bytes: &[u8]) -> PathBuf {
        let file = self.folder.join(name);
        fs::write(&file, bytes).expect("the file is written");
        file
    }

    pub(super) fn downloads(&self) -> PathBuf {
        self.folder.join("downloads")
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        self.driver.stop();
        processes::kill_all_of(&self.profile());
        if !std::thread::panicking() {
            let _ = fs::remove_dir_all(&self.folder);
        }
    }
}

async fn start(screen: Screen, folder: &Path, starts: usize) -> Driver {
    let net_log = folder.join(format!("net-{starts}.json"));
    let mut flags: Vec<String> = FLAGS.map(str::to_string).into();
    flags.push(format!("--user-data-dir={}", folder.join("profile").display()));
    flags.push(format!("--log-net-log={}", net_log.display()));
    let mut options = json!({ "binary": "/usr/bin/chromium" });
    match screen.emulation() {
        Some(emulation) => options["mobileEmulation"] = emulation,
        None => flags.push("--window-size=1280,900".into()),
    }
    options["args"] = json!(flags);
    let mut capabilities = Capabilities::new();
    capabilities.insert("browserName".into(), json!("chrome"));
    capabilities.insert("goog:chromeOptions".into(), options);
    capabilities.insert("goog:loggingPrefs".into(), json!({ "browser": "ALL" }));
    Driver::start(&folder.join(format!("driver-{starts}.log")), capabilities).await
}
