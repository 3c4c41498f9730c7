//! Scripts and style sheets without comments and needless space: what a phone downloads
//! needs neither.

use crate::files::Files;
use crate::tools::{self, Optimise};
use crate::{paths, run};
use anyhow::{Context, Result, anyhow};
use std::fs;

/// What is loaded by nobody's import, and has places in it that are still to be filled in:
/// names and constants stay as they are.
const AS_WRITTEN: &str = "sw.js";

/// The files, each script and style sheet made smaller. Whatever is no text stays as it is.
pub fn smaller(mut files: Files, optimise: Optimise) -> Result<Files> {
    let renames = optimise == Optimise::Always || tools::has_npm();
    for (path, content) in &mut files.0 {
        let Ok(text) = std::str::from_utf8(content) else { continue };
        let small = if path.ends_with(".js") && renames && path != AS_WRITTEN {
            module(text).with_context(|| path.clone())?
        } else if path.ends_with(".js") {
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

/// A module of a script, with short names for what nobody else can see.
fn module(text: &str) -> Result<String> {
    let folder = paths::target().join("smaller");
    fs::create_dir_all(&folder)?;
    let (from, to) = (folder.join("from.js"), folder.join("to.js"));
    fs::write(&from, text)?;
    let mut terser = tools::terser()?;
    terser.arg(&from).args(["--module", "--compress", "--mangle", "-o"]).arg(&to);
    run::quietly(&mut terser, run::minutes(5), &folder.join("log.txt"))?;
    Ok(fs::read_to_string(&to)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_go_and_strings_stay() {
        let script = "// why\nconst a = '// not a comment';\n/* gone */\nself.a = a;\n";
        let files = Files([(AS_WRITTEN.to_owned(), script.into()), ("b.wasm".to_owned(), vec![0xff])].into());
        let small = smaller(files, Optimise::IfPossible).unwrap();
        let text = String::from_utf8(small.0[AS_WRITTEN].clone()).unwrap();
        assert!(text.contains("'// not a comment'") && !text.contains("why") && !text.contains("gone"), "{text}");
        assert_eq!(small.0["b.wasm"], [0xff]);
    }
}
