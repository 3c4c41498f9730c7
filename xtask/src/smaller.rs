//! Scripts and style sheets without comments and needless space: what a phone downloads
//! needs neither.

use crate::files::Files;
use anyhow::{Result, anyhow};

/// The files, each script and style sheet made smaller. Whatever is no text stays as it is.
pub fn smaller(mut files: Files) -> Result<Files> {
    for (path, content) in &mut files.0 {
        let Ok(text) = std::str::from_utf8(content) else { continue };
        let small = if path.ends_with(".js") {
            minifier::js::minify(text).to_string()
        } else if path.ends_with(".css") {
            minifier::css::minify(text).map_err(|why| anyhow!("{path}: {why}"))?.to_string()
        } else {
            continue;
        };
        *content = small.into_bytes();
    }
    Ok(files)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_go_and_strings_stay() {
        let script = "// why\nconst a = '// not a comment';\n/* gone */\nexport { a };\n";
        let files = Files([("a.js".to_owned(), script.into()), ("b.wasm".to_owned(), vec![0xff])].into());
        let small = smaller(files).unwrap();
        let text = String::from_utf8(small.0["a.js"].clone()).unwrap();
        assert!(text.contains("'// not a comment'") && !text.contains("why") && !text.contains("gone"), "{text}");
        assert_eq!(small.0["b.wasm"], [0xff]);
    }
}
