//! The host: a process of its own, so that killing it is what a lost signal is.

use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;
use tokio::time::{Instant, sleep};

/// How long anything may take that should come at once. Walks, builds and others may share
/// the machine, so that only a hang takes as long; what is there is never waited for.
pub(super) const PATIENCE: Duration = Duration::from_secs(60);

/// The repository.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").canonicalize().expect("the repository")
}

/// Where cargo builds: shots, logs and profiles go there too.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), |dir| root().join(dir))
}

/// A path under `target/browser` that nobody else has: walks run side by side.
pub fn own_path(what: &str) -> PathBuf {
    static COUNT: AtomicUsize = AtomicUsize::new(0);
    let number = COUNT.fetch_add(1, Ordering::Relaxed);
    let folder = target().join("browser");
    fs::create_dir_all(&folder).expect("a folder for the walks");
    folder.join(format!("{what}-{}-{number:03}", std::process::id()))
}

/// Serves a folder until it is killed or dropped.
pub struct Server {
    folder: PathBuf,
    prefix: String,
    address: String,
    child: Option<Child>,
}

impl Server {
    /// Serves the app as it was last built.
    pub async fn start() -> Self {
        let dist = root().join("dist");
        assert!(dist.join("sw.js").is_file(), "the app is not built: run `cargo xtask dist` first");
        Self::start_with(&dist, "").await
    }

    /// Serves any folder, under a path such as `/a/b` if that is not empty.
    pub async fn start_with(folder: &Path, prefix: &str) -> Self {
        let mut server =
            Self { folder: folder.to_path_buf(), prefix: prefix.into(), address: String::new(), child: None };
        server.launch("0").await;
        server
    }

    /// Where the app is, with a slash at the end.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// From now on nobody answers.
    pub fn kill(&mut self) {
        if let Some(mut child) = self.child.take() {
            child.kill().expect("the server can be killed");
            child.wait().expect("the server ends");
        }
    }

    /// Serves again at the same address, maybe another build.
    pub async fn start_again(&mut self, folder: &Path) {
        self.kill();
        self.folder = folder.to_path_buf();
        let port = url::Url::parse(&self.address).ok().and_then(|url| url.port()).expect("a port");
        self.launch(&port.to_string()).await;
    }

    async fn launch(&mut self, port: &str) {
        let log = own_path("server");
        let out = File::create(&log).expect("a log file");
        let child = Command::new(env!("CARGO_BIN_EXE_xtask"))
            .args(["serve", "--no-build", "--port", port, "--prefix", &self.prefix, "--dir"])
            .arg(&self.folder)
            .stdin(Stdio::null())
            .stdout(out.try_clone().expect("the log file"))
            .stderr(out)
            .spawn()
            .expect("the server starts");
        let address = said(self.child.insert(child), &log, " is at ").await;
        self.address = address.expect("the server says its address").trim().to_string();
        // The file stays open in the server; nobody else needs its name.
        let _ = fs::remove_file(log);
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.kill();
    }
}

/// Waits until a process has written the words to its log, and returns what follows them
/// on that line; nothing if it ends without them.
pub(super) async fn said(child: &mut Child, log: &Path, words: &str) -> Option<String> {
    let end = Instant::now() + PATIENCE;
    loop {
        // Asked before reading: what it wrote before it ended is all there.
        let ended = !matches!(child.try_wait(), Ok(None));
        let text = fs::read_to_string(log).unwrap_or_default();
        let whole_lines = text.rsplit_once('\n').map_or("", |(lines, _)| lines);
        if let Some(rest) = whole_lines.lines().find_map(|line| line.split_once(words)) {
            return Some(rest.1.to_string());
        }
        if ended {
            return None;
        }
        assert!(Instant::now() < end, "`{words}` was never said in {}:\n{text}", log.display());
        sleep(Duration::from_millis(50)).await;
    }
}
