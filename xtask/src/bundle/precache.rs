//! The list of files that the service worker keeps, and the build's id.

use super::names::short_digest;
use crate::files::Files;
use anyhow::{Context, Result, bail};
use base64::{Engine as _, engine::general_purpose::STANDARD};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

/// The service worker: the one file that cannot list itself.
const WORKER: &str = "sw.js";
const BUILD: &str = "'__BUILD__'";
const LIST: &str = "'__FILES__'";

/// Writes the build's id and its list of files into the service worker.
pub fn fill_in(mut files: Files) -> Result<Files> {
    let worker = files.0.remove(WORKER).with_context(|| format!("there is no {WORKER}"))?;
    let worker = String::from_utf8(worker)?;
    let list = Value::from(files.0.iter().map(|(path, content)| entry(path, content)).collect::<Vec<_>>());
    // The worker's own text counts: a new worker must not touch an old one's cache.
    let build = short_digest(format!("{list}{worker}").as_bytes());
    let worker = put(&worker, BUILD, &json!(build).to_string())?;
    let worker = put(&worker, LIST, &format!("{list:#}"))?;
    files.0.insert(WORKER.into(), worker.into_bytes());
    Ok(files)
}

fn entry(path: &str, content: &[u8]) -> Value {
    json!({ "url": address(path), "integrity": integrity(content) })
}

/// Relative to the worker, so that the app works from any path. A folder's index has
/// the folder's address, which is how the page is asked for.
fn address(path: &str) -> String {
    let folder = path.strip_suffix("index.html").filter(|folder| folder.is_empty() || folder.ends_with('/'));
    format!("./{}", folder.unwrap_or(path))
}

/// As the browser's own check of a response wants it.
fn integrity(content: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(content)))
}

fn put(worker: &str, place: &str, value: &str) -> Result<String> {
    match worker.matches(place).count() {
        1 => Ok(worker.replace(place, value)),
        count => bail!("{WORKER} must say {place} once; it says it {count} times"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str = "const B = '__BUILD__'; const F = '__FILES__';";

    fn site(files: &[(&str, &str)]) -> Files {
        Files(files.iter().map(|(path, text)| ((*path).into(), text.as_bytes().to_vec())).collect())
    }

    fn worker(files: &[(&str, &str)]) -> String {
        let files = fill_in(site(files)).unwrap();
        String::from_utf8(files.0["sw.js"].clone()).unwrap()
    }

    fn list(worker: &str) -> Vec<Value> {
        let (_, list) = worker.split_once("F = ").unwrap();
        serde_json::from_str(list.trim_end_matches(';')).unwrap()
    }

    #[test]
    fn the_list_is_exactly_the_files_without_the_worker() {
        let worker = worker(&[("sw.js", TEMPLATE), ("index.html", "i"), ("a/b.js", "b"), ("c.png", "c")]);
        let urls: Vec<_> = list(&worker).iter().map(|file| file["url"].clone()).collect();
        assert_eq!(urls, ["./a/b.js", "./c.png", "./"]);
    }

    #[test]
    fn the_digest_is_the_one_a_browser_computes() {
        // `printf abc | openssl dgst -sha256 -binary | base64`
        assert_eq!(integrity(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }

    #[test]
    fn any_change_anywhere_is_another_build() {
        let base = [("sw.js", TEMPLATE), ("index.html", "i"), ("a.js", "a")];
        let changes = [
            [("sw.js", "/* */ const B = '__BUILD__'; const F = '__FILES__';"), base[1], base[2]],
            [base[0], ("index.html", "j"), base[2]],
            [base[0], base[1], ("b.js", "a")],
        ];
        let id = |files: &[(&str, &str)]| worker(files).split_once(';').map(|(id, _)| id.to_string());
        for change in changes {
            assert_ne!(id(&base), id(&change), "{change:?}");
        }
        assert_eq!(id(&base), id(&base));
    }

    #[test]
    fn a_worker_without_its_places_is_refused() {
        for text in ["", "'__BUILD__'", "'__BUILD__' '__FILES__' '__FILES__'"] {
            assert!(fill_in(site(&[("sw.js", text)])).is_err(), "{text}");
        }
        assert!(fill_in(site(&[("index.html", "")])).is_err());
    }
}
