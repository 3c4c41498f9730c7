//! From the path in a request to a file, and never to one outside the folder.

use std::path::{Path, PathBuf};

/// The file that a request's path means; none for what is not there or not ours.
pub fn inside(folder: &Path, request: &str) -> Option<PathBuf> {
    let names = names(request)?;
    let asked = names.iter().fold(folder.to_path_buf(), |path, name| path.join(name));
    let file = if request.ends_with('/') { asked.join("index.html") } else { asked };
    // The names are harmless by now; a link in the folder could still lead out of it.
    let file = file.canonicalize().ok()?;
    (file.starts_with(folder.canonicalize().ok()?) && file.is_file()).then_some(file)
}

/// The names between the slashes; none if any of them is more than a plain name.
fn names(request: &str) -> Option<Vec<String>> {
    let names = request.strip_prefix('/')?.split('/').filter(|name| !name.is_empty());
    names.map(|name| decoded(name).filter(|name| is_plain(name))).collect()
}

fn is_plain(name: &str) -> bool {
    !name.starts_with('.') && !name.contains(['/', '\\', '\0', ':'])
}

/// `%20` and the like, undone once.
fn decoded(name: &str) -> Option<String> {
    let mut bytes = name.bytes();
    let mut out = Vec::with_capacity(name.len());
    while let Some(byte) = bytes.next() {
        if byte == b'%' {
            let (high, low) = (digit(bytes.next()?)?, digit(bytes.next()?)?);
            out.push(high << 4 | low);
        } else {
            out.push(byte);
        }
    }
    String::from_utf8(out).ok()
}

fn digit(byte: u8) -> Option<u8> {
    char::from(byte).to_digit(16).and_then(|digit| u8::try_from(digit).ok())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    #[test]
    fn names_are_decoded_once() {
        assert_eq!(names("/a%20b/c.js"), Some(vec!["a b".into(), "c.js".into()]));
        assert_eq!(names("/%2541"), Some(vec!["%41".into()]));
        assert_eq!(names("/"), Some(vec![]));
    }

    #[test]
    fn whatever_could_climb_out_is_refused() {
        for path in
            ["/../x", "/a/../../x", "/%2e%2e/x", "/a%2f..%2fx", "/.git/config", "/a\\b", "/%00", "/%zz", "/%4", "x"]
        {
            assert_eq!(names(path), None, "{path}");
        }
    }

    #[test]
    fn a_link_out_of_the_folder_is_refused() {
        let folder = std::env::temp_dir().join(format!("xtask-path-{}", std::process::id()));
        fs::create_dir_all(folder.join("sub")).unwrap();
        fs::write(folder.join("sub/index.html"), "").unwrap();
        let link = folder.join("out");
        let _ = fs::remove_file(&link);
        std::os::unix::fs::symlink("/etc/passwd", &link).unwrap();
        assert_eq!(inside(&folder, "/out"), None);
        assert!(inside(&folder, "/sub/").is_some());
        assert_eq!(inside(&folder, "/sub"), None);
        fs::remove_dir_all(folder).unwrap();
    }
}
