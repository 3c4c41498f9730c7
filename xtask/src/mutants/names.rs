//! A mutant by the name that cargo-mutants gives it.

use anyhow::{Context, Error, Result};
use std::str::FromStr;

/// `src/engine/closing/limits.rs:44:18: replace > with >= in holds`
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mutant {
    /// The file, from the root.
    pub file: String,
    /// Line and column, both from 1.
    pub line: usize,
    pub column: usize,
    /// What is changed into what.
    pub what: String,
}

impl Mutant {
    pub fn name(&self) -> String {
        let Self { file, line, column, what } = self;
        format!("{file}:{line}:{column}: {what}")
    }
}

impl FromStr for Mutant {
    type Err = Error;

    fn from_str(name: &str) -> Result<Self> {
        let parts = || {
            let mut parts = name.splitn(4, ':');
            let (file, line, column) = (parts.next()?, parts.next()?, parts.next()?);
            let what = parts.next()?.trim().to_owned();
            Some(Self { file: file.to_owned(), line: line.parse().ok()?, column: column.parse().ok()?, what })
        };
        parts().with_context(|| format!("`{name}` is no name of a mutant"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_comes_apart_and_together_again() {
        let name = "src/engine/a.rs:44:18: replace Limits::holds -> Option<a::B> with None";
        let mutant: Mutant = name.parse().unwrap();
        assert_eq!((mutant.file.as_str(), mutant.line, mutant.column), ("src/engine/a.rs", 44, 18));
        assert_eq!(mutant.what, "replace Limits::holds -> Option<a::B> with None");
        assert_eq!(mutant.name(), name);
    }

    #[test]
    fn what_is_no_name_is_refused() {
        for line in ["", "Found 12 mutants", "src/a.rs:x:1: replace"] {
            assert!(line.parse::<Mutant>().is_err(), "{line}");
        }
    }
}
