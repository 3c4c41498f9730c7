//! A static host for this machine, as strict as a real one: right types, caching by
//! the book, nothing from outside its folder, and any path in front.
//!
//! It knows nothing about the app.

mod http;
mod mime;
mod path;

use crate::bundle::names::is_hashed;
use anyhow::{Context, Result};
use http::{Answer, Request};
use std::collections::BTreeMap;
use std::net::{Ipv4Addr, TcpListener};
use std::path::PathBuf;
use std::sync::{Arc, Mutex};
use std::{fs, thread};

/// Brotli's quality for answers: what a host would do once and keep.
const QUALITY: u32 = 9;

/// A folder to be served.
#[derive(Debug)]
pub struct Site {
    folder: PathBuf,
    /// Empty, or `/a/b`.
    prefix: String,
    compress: bool,
    compressed: Mutex<BTreeMap<PathBuf, Arc<[u8]>>>,
}

/// A site that can be reached.
pub struct Served {
    pub address: String,
    listener: TcpListener,
    site: Arc<Site>,
}

impl Site {
    pub fn new(folder: PathBuf, prefix: &str, compress: bool) -> Self {
        Self { folder, prefix: prefix.to_string(), compress, compressed: Mutex::default() }
    }

    /// Takes a port of this machine (0: a free one), not reachable from others.
    pub fn listen(self, port: u16) -> Result<Served> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .with_context(|| format!("port {port} cannot be used: try another with --port"))?;
        let port = listener.local_addr()?.port();
        let address = format!("http://localhost:{port}{}/", self.prefix);
        Ok(Served { address, listener, site: Arc::new(self) })
    }

    fn answer(&self, request: &Request) -> Answer {
        if !matches!(request.method.as_str(), "GET" | "HEAD") {
            return Answer::plain(405, "only GET and HEAD").with("Allow", "GET, HEAD");
        }
        let path = request.target.split(['?', '#']).next().unwrap_or_default();
        let Some(inside) = path.strip_prefix(&self.prefix) else {
            return Answer::plain(404, "not found");
        };
        if inside.is_empty() {
            return Answer::plain(301, "").with("Location", &format!("{path}/"));
        }
        match path::inside(&self.folder, inside).and_then(|file| Some((fs::read(&file).ok()?, file))) {
            Some((content, file)) => self.found(request, content, file),
            None => Answer::plain(404, "not found"),
        }
    }

    fn found(&self, request: &Request, content: Vec<u8>, file: PathBuf) -> Answer {
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let caching = if is_hashed(&name) { "public, max-age=31536000, immutable" } else { "no-cache" };
        let mime = mime::of(&name);
        let answer = if self.compress && request.accepts_brotli && mime::shrinks(mime) {
            let content = self.smaller(&content, file, is_hashed(&name));
            Answer::new(200, content).with("Content-Encoding", "br")
        } else {
            Answer::new(200, content.into())
        };
        answer.with("Content-Type", mime).with("Cache-Control", caching)
    }

    /// Compressing a module takes a second: what cannot change is compressed once.
    fn smaller(&self, content: &[u8], file: PathBuf, keep: bool) -> Arc<[u8]> {
        let Ok(mut kept) = self.compressed.lock() else {
            return compress(content, QUALITY).into();
        };
        if let Some(content) = kept.get(&file) {
            return Arc::clone(content);
        }
        let small: Arc<[u8]> = compress(content, QUALITY).into();
        if keep {
            kept.insert(file, Arc::clone(&small));
        }
        small
    }
}

impl Served {
    /// Answers for ever, each visitor in a thread of its own.
    pub fn run(self) {
        for stream in self.listener.incoming().flatten() {
            let site = Arc::clone(&self.site);
            thread::spawn(move || http::converse(stream, |request| site.answer(request)));
        }
    }
}

/// Brotli, at a quality from 0 to 11.
pub fn compress(content: &[u8], quality: u32) -> Vec<u8> {
    let params = brotli::enc::BrotliEncoderParams {
        quality: i32::try_from(quality).unwrap_or(11),
        size_hint: content.len(),
        ..Default::default()
    };
    let mut small = Vec::new();
    // Neither reading nor writing memory fails.
    let _ = brotli::BrotliCompress(&mut &*content, &mut small, &params);
    small
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(prefix: &str) -> Site {
        let folder = std::env::temp_dir().join(format!("xtask-site-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        for (name, text) in [("index.html", "page"), ("a-0123456789abcdef.js", "code"), ("sw.js", "worker")] {
            fs::write(folder.join(name), text).unwrap();
        }
        Site::new(folder, prefix, true)
    }

    fn get(site: &Site, target: &str) -> Answer {
        site.answer(&Request { method: "GET".into(), target: target.into(), accepts_brotli: false })
    }

    #[test]
    fn a_folder_gives_its_page_and_queries_do_not_matter() {
        let site = site("");
        for target in ["/", "/index.html", "/?from=home", "/#x"] {
            assert_eq!(&*get(&site, target).body, b"page", "{target}");
        }
    }

    #[test]
    fn only_names_with_a_digest_are_kept_for_ever() {
        let site = site("");
        let caching = |target| get(&site, target).header("Cache-Control").map(str::to_string);
        assert!(caching("/a-0123456789abcdef.js").unwrap().contains("immutable"));
        assert_eq!(caching("/sw.js").unwrap(), "no-cache");
        assert_eq!(caching("/").unwrap(), "no-cache");
    }

    #[test]
    fn under_a_prefix_nothing_else_is_there() {
        let site = site("/a/b");
        assert_eq!(get(&site, "/a/b/").status, 200);
        assert_eq!(get(&site, "/a/b").header("Location"), Some("/a/b/"));
        for target in ["/", "/a/", "/sw.js", "/a/bsw.js"] {
            assert_eq!(get(&site, target).status, 404, "{target}");
        }
    }

    #[test]
    fn nothing_can_be_sent_to_it() {
        let post = Request { method: "POST".into(), target: "/".into(), accepts_brotli: false };
        assert_eq!(site("").answer(&post).status, 405);
    }

    #[test]
    fn brotli_goes_only_to_those_who_take_it() {
        let site = site("");
        assert_eq!(get(&site, "/sw.js").header("Content-Encoding"), None);
        let asks = Request { method: "GET".into(), target: "/sw.js".into(), accepts_brotli: true };
        let answer = site.answer(&asks);
        assert_eq!(answer.header("Content-Encoding"), Some("br"));
        let mut text = Vec::new();
        brotli::BrotliDecompress(&mut &*answer.body, &mut text).unwrap();
        assert_eq!(text, b"worker");
    }
}
