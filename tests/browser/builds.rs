//! Other builds of the app, made from the last one: a newer one for walks through an
//! update, and a damaged one.

use crate::harness::{own_path, root};
use base64::{Engine as _, engine::general_purpose::STANDARD};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};

/// What the second build's page is called.
pub const SECOND_TITLE: &str = "Duckboard, second build";

/// The same files with another page title, and a service worker that knows about it.
pub fn second() -> PathBuf {
    let folder = own_path("second");
    copy(&root().join("dist"), &folder);
    let (old, new) = change(&folder.join("index.html"), |page| {
        page.replace("<title>Duckboard</title>", &format!("<title>{SECOND_TITLE}</title>"))
    });
    change(&folder.join("sw.js"), |worker| {
        let worker = worker.replace(&integrity(&old), &integrity(&new));
        worker.replacen("const BUILD = \"", "const BUILD = \"second-", 1)
    });
    folder
}

/// The app with a module that no browser can read, as after a bad upload.
pub fn broken() -> PathBuf {
    let folder = own_path("broken");
    copy(&root().join("dist"), &folder);
    let files = fs::read_dir(&folder).expect("the build").flatten().map(|file| file.path());
    let modules: Vec<_> = files.filter(|file| file.extension().is_some_and(|end| end == "wasm")).collect();
    assert!(!modules.is_empty(), "the build has no module");
    for module in modules {
        fs::write(module, "not a module").expect("the damaged module");
    }
    folder
}

/// Changes a file and returns it before and after.
fn change(file: &Path, by: impl Fn(&str) -> String) -> (String, String) {
    let old = fs::read_to_string(file).expect("the file");
    let new = by(&old);
    assert_ne!(old, new, "{} was not changed", file.display());
    fs::write(file, &new).expect("the changed file");
    (old, new)
}

fn integrity(content: &str) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(content)))
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("a folder");
    for entry in fs::read_dir(from).expect("the build").flatten() {
        let (from, to) = (entry.path(), to.join(entry.file_name()));
        if from.is_dir() {
            copy(&from, &to);
        } else {
            fs::copy(from, to).expect("the copy");
        }
    }
}
