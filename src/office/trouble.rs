//! Why a task was not done, in words and as an exit code.

use duckboard::engine::describe::counted;
use duckboard::file::{OtherJob, Refusal};
use std::fmt;
use std::io;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Why a task was not done.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// A file was not taken in.
    Refused { file: PathBuf, refusal: Refusal },
    /// A file was read, and has faults; they were told already.
    Faulty { count: usize },
    /// Two files are of different jobs.
    OtherJob(OtherJob),
    /// A file could not be opened or read.
    Unreadable { file: PathBuf, error: io::Error },
    /// A file could not be written.
    Unwritable { file: PathBuf, error: io::Error },
    /// There is a file already where one was to be written.
    InTheWay { file: PathBuf, is_input: bool },
    /// A list of prices was not taken in.
    Prices { file: PathBuf, words: String },
    /// What was to be written would be refused when read.
    TooLarge(String),
}

impl Trouble {
    pub(crate) fn refused(file: &Path, refusal: Refusal) -> Self {
        Self::Refused { file: file.to_owned(), refusal }
    }

    pub(crate) fn unreadable(file: &Path, error: io::Error) -> Self {
        Self::Unreadable { file: file.to_owned(), error }
    }

    pub(crate) fn unwritable(file: &Path, error: io::Error) -> Self {
        Self::Unwritable { file: file.to_owned(), error }
    }

    pub(crate) fn exit_code(&self) -> ExitCode {
        match self {
            Self::Refused { .. }
            | Self::Faulty { .. }
            | Self::OtherJob(_)
            | Self::Prices { .. }
            | Self::TooLarge(_) => ExitCode::from(1),
            Self::Unreadable { .. } | Self::Unwritable { .. } | Self::InTheWay { .. } => ExitCode::from(2),
        }
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Refused { file, refusal: refusal @ Refusal::Faults(_) } => {
                let file = file.display();
                write!(f, "{file}: {refusal}\nAsk for the file again, or see `office check` and the option --anyway.")
            }
            Self::Refused { file, refusal } => write!(f, "{}: {refusal}", file.display()),
            Self::Faulty { count } => write!(f, "{}.", counted(*count, "fault")),
            Self::OtherJob(other) => other.fmt(f),
            Self::Unreadable { file, error } => {
                write!(f, "{} cannot be read: {error}. Check the name.", file.display())
            }
            Self::Unwritable { file, error } => {
                write!(f, "{} cannot be written: {error}. Choose another place with -o.", file.display())
            }
            Self::InTheWay { file, is_input: true } => write!(
                f,
                "{} is one of the files to merge. Choose another name with -o, or say --force to write over it.",
                file.display()
            ),
            Self::InTheWay { file, is_input: false } => write!(
                f,
                "{} is there already. Choose another name with -o, or say --force to write over it.",
                file.display()
            ),
            Self::Prices { file, words } => write!(f, "{}: no price was taken in: {words}.", file.display()),
            Self::TooLarge(why) => f.write_str(why),
        }
    }
}
