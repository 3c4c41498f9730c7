//! A mutant: the name that cargo-mutants gives it, and the one that it keeps when it moves.

use anyhow::{Context, Result};
use serde::Deserialize;
use sha2::{Digest, Sha256};

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mutant {
    /// The file, from the root.
    pub file: String,
    /// Line and column, both from 1.
    pub line: usize,
    pub column: usize,
    /// What is changed into what.
    pub what: String,
    function: Function,
}

/// The function that a mutant changes.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Function {
    /// Its line in the file, from 1.
    line: usize,
    digest: String,
}

/// What cargo-mutants lists of a mutant, as far as it is read.
#[derive(Deserialize)]
pub struct Listed {
    name: String,
    pub file: String,
    function: Option<Spanned>,
}

#[derive(Deserialize)]
struct Spanned {
    span: Span,
}

#[derive(Deserialize)]
struct Span {
    start: Line,
    end: Line,
}

#[derive(Deserialize)]
struct Line {
    line: usize,
}

impl Mutant {
    /// A mutant of a file that reads so.
    pub fn of(listed: &Listed, text: &str) -> Result<Self> {
        let name = &listed.name;
        let parts = || {
            let mut parts = name.strip_prefix(&listed.file)?.splitn(4, ':').skip(1);
            let (line, column) = (parts.next()?.parse().ok()?, parts.next()?.parse().ok()?);
            Some((line, column, parts.next()?.trim().to_owned()))
        };
        let (line, column, what) = parts().with_context(|| format!("`{name}` is no name of a mutant"))?;
        let function = function(listed.function.as_ref(), text);
        Ok(Self { file: listed.file.clone(), line, column, what, function })
    }

    /// `src/engine/closing/limits.rs:44:18: replace > with >= in holds`
    pub fn name(&self) -> String {
        let Self { file, line, column, what, .. } = self;
        format!("{file}:{line}:{column}: {what}")
    }

    /// Its name for as long as its function reads as it does, wherever in the file that stands:
    /// `3f9c2a71d0aa src/engine/closing/limits.rs:+3:18: replace > with >= in holds`
    pub fn lasting_name(&self) -> String {
        let Self { file, line, column, what, function } = self;
        format!("{} {file}:+{}:{column}: {what}", function.digest, line.saturating_sub(function.line))
    }
}

/// What stands in no function counts as part of the whole file.
fn function(spanned: Option<&Spanned>, text: &str) -> Function {
    let Some(Spanned { span: Span { start, end } }) = spanned else {
        return Function { line: 1, digest: digest(text) };
    };
    let lines = text.lines().skip(start.line.saturating_sub(1)).take((end.line + 1).saturating_sub(start.line));
    Function { line: start.line, digest: digest(&lines.collect::<Vec<_>>().join("\n")) }
}

/// Long enough that no two functions share it.
fn digest(content: &str) -> String {
    Sha256::digest(content).iter().take(6).map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
pub mod tests {
    use super::*;

    const TEXT: &str = "use a;\n\nfn f(a: u8) -> bool {\n    a > 1\n}\n\nfn g() {}\n";

    /// A mutant of a function on line 3 that is three lines long.
    fn listed(name: &str) -> Listed {
        let file = name.split(':').next().unwrap().to_owned();
        let function = Spanned { span: Span { start: Line { line: 3 }, end: Line { line: 5 } } };
        Listed { name: name.to_owned(), file, function: Some(function) }
    }

    pub fn mutant(name: &str) -> Mutant {
        Mutant::of(&listed(name), TEXT).unwrap()
    }

    #[test]
    fn a_name_comes_apart_and_together_again() {
        let name = "src/engine/a.rs:44:18: replace Limits::holds -> Option<a::B> with None";
        let mutant = mutant(name);
        assert_eq!((mutant.file.as_str(), mutant.line, mutant.column), ("src/engine/a.rs", 44, 18));
        assert_eq!(mutant.what, "replace Limits::holds -> Option<a::B> with None");
        assert_eq!(mutant.name(), name);
    }

    #[test]
    fn what_is_no_name_is_refused() {
        for line in ["src/a.rs", "src/a.rs:x:1: replace", "src/a.rs:1:1"] {
            assert!(Mutant::of(&listed(line), TEXT).is_err(), "{line}");
        }
    }

    #[test]
    fn the_lasting_name_counts_from_the_function_and_changes_with_it() {
        let mut listed = listed("src/a.rs:4:7: replace > with >= in f");
        let first = Mutant::of(&listed, TEXT).unwrap().lasting_name();
        assert!(first.ends_with(" src/a.rs:+1:7: replace > with >= in f"), "{first}");
        let other = Mutant::of(&listed, &TEXT.replace("a > 1", "a > 2")).unwrap().lasting_name();
        assert_ne!(first, other);
        let beside = Mutant::of(&listed, &TEXT.replace("fn g() {}", "fn g() { }")).unwrap().lasting_name();
        assert_eq!(first, beside);
        listed.name = "src/a.rs:6:7: replace > with >= in f".to_owned();
        listed.function = Some(Spanned { span: Span { start: Line { line: 5 }, end: Line { line: 7 } } });
        let lower = Mutant::of(&listed, &format!("//! Two\n//! lines.\n{TEXT}")).unwrap().lasting_name();
        assert_eq!(first, lower);
    }

    #[test]
    fn what_stands_in_no_function_changes_with_its_file() {
        let listed = Listed { function: None, ..listed("src/a.rs:1:1: delete !") };
        let named = |text| Mutant::of(&listed, text).unwrap().lasting_name();
        assert_ne!(named(TEXT), named("use b;"));
        assert!(named(TEXT).ends_with(" src/a.rs:+0:1: delete !"));
    }

    #[test]
    fn a_digest_is_short_and_differs() {
        assert_eq!(digest("a").len(), 12);
        assert_ne!(digest("a"), digest("b"));
    }
}
