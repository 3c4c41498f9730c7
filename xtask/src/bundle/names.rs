//! File names that carry a digest of the content, and the references to them.
//!
//! A file's digest covers its references in their new form, so whatever a file loads,
//! however indirectly, is part of its own name.

use crate::files::Files;
use anyhow::{Result, bail};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;

/// Digits of the digest in a name: 64 bits, far beyond any accident.
const DIGITS: usize = 16;

/// What a reference stands between, in HTML, JavaScript and CSS.
const BRACKETS: [(char, char); 4] = [('"', '"'), ('\'', '\''), ('`', '`'), ('(', ')')];

/// The same files, with hashed names wherever the name may change.
pub fn hashed(files: &Files) -> Result<Files> {
    let mut pending: Vec<&str> = files.0.keys().map(String::as_str).filter(|path| may_change(path)).collect();
    let mut names = BTreeMap::new();
    let mut named = Files::default();
    while !pending.is_empty() {
        let (waiting, ready): (Vec<_>, Vec<_>) =
            pending.iter().partition(|path| pending.iter().any(|other| mentions(files, path, other)));
        if ready.is_empty() {
            bail!("these files name each other in a circle: {}", waiting.join(", "));
        }
        for path in ready {
            let content = rewritten(files, path, &names);
            let name = hashed_name(path, &content);
            named.0.insert(name.clone(), content);
            names.insert(path, name);
        }
        pending = waiting;
    }
    for path in files.0.keys().filter(|path| !may_change(path)) {
        named.0.insert(path.clone(), rewritten(files, path, &names));
    }
    Ok(named)
}

/// The page, the worker and what the manifest names are asked for by their own names.
fn may_change(path: &str) -> bool {
    matches!(extension(path), "js" | "css" | "wasm") && path != "sw.js"
}

fn is_text(path: &str) -> bool {
    matches!(extension(path), "js" | "css" | "html")
}

fn extension(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(_, extension)| extension)
}

fn text<'a>(files: &'a Files, path: &str) -> Option<&'a str> {
    let content = files.0.get(path).filter(|_| is_text(path))?;
    std::str::from_utf8(content).ok()
}

fn mentions(files: &Files, path: &str, other: &str) -> bool {
    let Some(text) = text(files, path) else {
        return false;
    };
    spellings(&relative(path, other)).iter().any(|spelling| text.contains(spelling))
}

fn rewritten(files: &Files, path: &str, names: &BTreeMap<&str, String>) -> Vec<u8> {
    let Some(text) = text(files, path) else {
        return files.0.get(path).cloned().unwrap_or_default();
    };
    let mut text = text.to_string();
    for (old, new) in names {
        let new = spellings(&relative(path, new));
        for (old, new) in spellings(&relative(path, old)).iter().zip(new) {
            text = text.replace(old, &new);
        }
    }
    text.into_bytes()
}

/// All ways to write a reference, brackets included: `boot.js` is not in `reboot.js`.
fn spellings(path: &str) -> Vec<String> {
    let dotted = format!("./{path}");
    BRACKETS.iter().flat_map(|(open, close)| [path, &dotted].map(|path| format!("{open}{path}{close}"))).collect()
}

/// The way from one file to another.
fn relative(from: &str, to: &str) -> String {
    let (mut from, mut to): (Vec<_>, Vec<_>) = (from.split('/').collect(), to.split('/').collect());
    while from.len() > 1 && to.len() > 1 && from.first() == to.first() {
        from.remove(0);
        to.remove(0);
    }
    "../".repeat(from.len() - 1) + &to.join("/")
}

fn hashed_name(path: &str, content: &[u8]) -> String {
    let digest = short_digest(content);
    match path.rsplit_once('.') {
        Some((stem, extension)) => format!("{stem}-{digest}.{extension}"),
        None => format!("{path}-{digest}"),
    }
}

/// Does a name carry a digest, so that its content never changes?
pub fn is_hashed(path: &str) -> bool {
    let stem = path.rsplit_once('.').map_or(path, |(stem, _)| stem);
    stem.rsplit_once('-').is_some_and(|(_, digest)| {
        digest.len() == DIGITS && digest.chars().all(|digit| matches!(digit, '0'..='9' | 'a'..='f'))
    })
}

/// The first digits of a content's SHA-256.
pub fn short_digest(content: &[u8]) -> String {
    let digest = Sha256::digest(content);
    digest.iter().take(DIGITS / 2).map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(files: &[(&str, &str)]) -> Files {
        Files(files.iter().map(|(path, text)| ((*path).into(), text.as_bytes().to_vec())).collect())
    }

    fn only<'a>(files: &'a Files, start: &str, end: &str) -> (&'a str, &'a str) {
        let found = files.0.iter().find(|(path, _)| path.starts_with(start) && path.ends_with(end));
        let (path, content) = found.expect("such a file");
        (path, std::str::from_utf8(content).unwrap())
    }

    #[test]
    fn references_follow_the_names_through_every_file() {
        let files = site(&[
            ("index.html", r#"<link href="./style.css"><script src="./boot.js"></script>"#),
            ("boot.js", "import('./app.js')"),
            ("app.js", "new URL('app_bg.wasm', import.meta.url)"),
            ("app_bg.wasm", "\0asm"),
            ("style.css", "body { background: url(icon.svg) }"),
            ("icon.svg", "<svg/>"),
            ("sw.js", "'./index.html'"),
        ]);
        let hashed = hashed(&files).unwrap();
        let (wasm, _) = only(&hashed, "app_bg-", ".wasm");
        let (glue, glue_text) = only(&hashed, "app-", ".js");
        let (boot, boot_text) = only(&hashed, "boot-", ".js");
        let (style, _) = only(&hashed, "style-", ".css");
        assert_eq!(glue_text, format!("new URL('{wasm}', import.meta.url)"));
        assert_eq!(boot_text, format!("import('./{glue}')"));
        let page = format!(r#"<link href="./{style}"><script src="./{boot}"></script>"#);
        assert_eq!(hashed.0["index.html"], page.into_bytes());
        assert!(hashed.0.contains_key("icon.svg") && hashed.0.contains_key("sw.js"));
        assert_eq!(hashed.0.len(), files.0.len());
    }

    #[test]
    fn a_change_deep_down_renames_everything_above_it() {
        let with = |wasm| site(&[("a.wasm", wasm), ("b.js", "'a.wasm'"), ("c.js", "'./b.js'")]);
        let (one, two) = (hashed(&with("1")).unwrap(), hashed(&with("2")).unwrap());
        assert!(one.0.keys().all(|path| !two.0.contains_key(path)));
    }

    #[test]
    fn the_same_content_gives_the_same_name() {
        let files = site(&[("a.js", "1"), ("b.js", "'./a.js'")]);
        assert_eq!(hashed(&files).unwrap(), hashed(&files).unwrap());
    }

    #[test]
    fn a_longer_name_with_the_same_end_is_left_alone() {
        let files = site(&[("boot.js", "1"), ("index.html", "'reboot.js' 'x/boot.js' boot.js")]);
        assert_eq!(hashed(&files).unwrap().0["index.html"], files.0["index.html"]);
    }

    #[test]
    fn a_circle_is_refused_by_name() {
        let files = site(&[("a.js", "'./b.js'"), ("b.js", "'./a.js'"), ("c.js", "")]);
        let error = hashed(&files).unwrap_err().to_string();
        assert!(error.contains("a.js, b.js"), "{error}");
    }

    #[test]
    fn files_that_are_not_text_keep_their_bytes() {
        let mut files = site(&[("a.js", "1")]);
        files.0.insert("photo.png".into(), vec![0xff, b'"', b'a', 0xfe]);
        assert_eq!(hashed(&files).unwrap().0["photo.png"], files.0["photo.png"]);
    }

    #[test]
    fn the_way_between_folders_is_found() {
        for (from, to, way) in [
            ("index.html", "boot.js", "boot.js"),
            ("index.html", "a/b.js", "a/b.js"),
            ("a/b.js", "c.js", "../c.js"),
            ("a/b/c.js", "a/d/e.js", "../d/e.js"),
            ("a/b.js", "a/c.js", "c.js"),
        ] {
            assert_eq!(relative(from, to), way, "{from} to {to}");
        }
    }

    #[test]
    fn hashed_names_are_told_from_others() {
        assert!(is_hashed(&hashed_name("a/boot.js", b"1")));
        for other in ["boot.js", "icon-192.png", "a-0123456789ABCDEF.js", "sw.js", ""] {
            assert!(!is_hashed(other), "{other}");
        }
    }
}
