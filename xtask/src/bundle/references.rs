//! What the page and the manifest name must be there: a browser stays silent about an
//! icon that is missing, until somebody wants to install the app.

use crate::files::Files;

/// What comes before a relative address in HTML and in the manifest.
const BEFORE: [&str; 3] = ["href=\"./", "src=\"./", "\"src\": \"./"];

/// Names in the page and the manifest that no file answers to.
pub fn dead(files: &Files) -> Vec<String> {
    let naming = files.0.iter().filter(|(path, _)| path.ends_with(".html") || path.ends_with(".webmanifest"));
    let named = naming.flat_map(|(_, content)| addresses(&String::from_utf8_lossy(content)));
    named.filter(|path| !path.is_empty() && !files.0.contains_key(path)).collect()
}

fn addresses(text: &str) -> Vec<String> {
    let after = BEFORE.iter().flat_map(|before| text.split(before).skip(1));
    after.filter_map(|rest| rest.split(['"', '#', '?']).next()).map(str::to_string).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_without_a_file_is_found_in_page_and_manifest() {
        let page = r#"<link href="./style.css"><script src="./boot.js"></script><a href="./#jobs"></a>"#;
        let manifest = r#"{ "icons": [{ "src": "./icon.svg" }, { "src": "./icon-192.png" }], "start_url": "./" }"#;
        let there = [("index.html", page), ("boot.js", ""), ("m.webmanifest", manifest), ("icon.svg", "")];
        let files = Files(there.iter().map(|(path, text)| ((*path).into(), text.as_bytes().to_vec())).collect());
        assert_eq!(dead(&files), ["style.css", "icon-192.png"]);
    }
}
