//! What can be wrong with a file, where, and in which words.

use super::limits::FAULTS_TOLD;
use super::version::Version;
use crate::engine::job::BadRecord;
use std::fmt;

/// One thing that is wrong in a file, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The path in the file, such as `entries[12].act.record.reading.shown`.
    pub path: String,
    /// What is wrong, in words.
    pub problem: String,
}

impl Fault {
    /// A fault at a path.
    pub fn at(path: impl Into<String>, problem: impl Into<String>) -> Self {
        Self { path: path.into(), problem: problem.into() }
    }

    /// The fault of one entry, under the entry's own path.
    pub(super) fn in_entry(path: &str, bad: BadRecord) -> Self {
        let inside = if bad.path.is_empty() || bad.path == "." { String::new() } else { format!(".{}", bad.path) };
        Self { path: format!("{path}{inside}"), problem: bad.problem }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path, self.problem)
    }
}

/// Why a file was not taken in. Whatever it says, the file itself was left as it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// More bytes than are read.
    TooLong {
        /// How many there are.
        bytes: usize,
        /// How many are read.
        most: usize,
    },
    /// No job file of this format, whatever it is called.
    NotAJobFile,
    /// It ends before its JSON does.
    CutShort,
    /// It looks like JSON and is not.
    NotJson {
        /// The line, counted from one.
        line: usize,
        /// The column in bytes.
        column: usize,
    },
    /// A later major version.
    Newer {
        /// The file's version.
        found: Version,
    },
    /// A major version from before the first that was published.
    Older {
        /// The file's version.
        found: Version,
    },
    /// It is a job file, but not all of it can be right.
    Faults(Vec<Fault>),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong { bytes, most } => write!(
                f,
                "The file has {} MB; up to {} MB are read. Ask for it without photos.",
                bytes.div_ceil(1024 * 1024),
                most / (1024 * 1024)
            ),
            Self::NotAJobFile => f.write_str("This is not a Duckboard job file."),
            Self::CutShort => f.write_str("The file ends too early: a part of it was lost on the way. Send it again."),
            Self::NotJson { line, column } => {
                write!(f, "The file is damaged at line {line}, column {column}. Send it again.")
            }
            Self::Newer { found } => write!(
                f,
                "The file is of version {found}; this build reads up to version {}.x. Update Duckboard; the file was left as it is.",
                Version::CURRENT.major
            ),
            Self::Older { found } => {
                write!(
                    f,
                    "The file says version {found}, which was never published; {}.x is read.",
                    Version::CURRENT.major
                )
            }
            Self::Faults(faults) => tell(f, faults),
        }
    }
}

impl std::error::Error for Refusal {}

fn tell(f: &mut fmt::Formatter<'_>, faults: &[Fault]) -> fmt::Result {
    write!(f, "The file has {} fault{}:", faults.len(), if faults.len() == 1 { "" } else { "s" })?;
    for fault in faults.iter().take(FAULTS_TOLD) {
        write!(f, "\n  {fault}")?;
    }
    match faults.len().saturating_sub(FAULTS_TOLD) {
        0 => Ok(()),
        more => write!(f, "\n  and {more} more"),
    }
}
