//! What can go wrong between the app and its storage.

use std::fmt;

/// Why something was not stored or not read.
///
/// Every one of these leaves the storage as it was before, with one exception: after
/// [`StoreError::ConnectionLost`] a commit may have arrived all the same. Commit it
/// again; a line that is there already is nothing new.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StoreError {
    /// The phone, or the share of it that the browser allows, is full.
    QuotaExceeded,
    /// The storage went away under the app, or stopped answering, and a second try
    /// on a new connection failed as well.
    ConnectionLost {
        /// What the browser said, for whoever looks into it.
        said: String,
    },
    /// Another tab keeps the storage from being opened.
    Blocked,
    /// The browser offers no storage here.
    Unavailable,
    /// The storage was emptied while the app was running: what was saved before is
    /// gone from it. It works again from the next commit on, so everything that is
    /// still in memory should be committed again.
    Emptied,
    /// A record is there but is not what this program writes.
    Damaged {
        /// Which record, and what is wrong with it.
        what: String,
    },
    /// Anything else, in the browser's own words.
    Other {
        /// The error's name.
        name: String,
        /// The error's message.
        message: String,
    },
}

impl StoreError {
    /// Sorts an error of the browser's database by its name.
    pub fn from_browser(name: &str, message: &str) -> Self {
        match name {
            "QuotaExceededError" => Self::QuotaExceeded,
            // A connection whose other end is gone: refused at once, failed within,
            // or its transactions cut off. Nothing here aborts a transaction and
            // then asks for the reason, so an abort is never our own.
            "InvalidStateError" | "UnknownError" | "AbortError" => {
                Self::ConnectionLost { said: format!("{name}: {message}") }
            }
            "SecurityError" => Self::Unavailable,
            _ => Self::Other { name: name.to_owned(), message: message.to_owned() },
        }
    }

    /// May a new connection help?
    pub fn is_lost_connection(&self) -> bool {
        matches!(self, Self::ConnectionLost { .. })
    }
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::QuotaExceeded => f.write_str("the phone's storage is full"),
            Self::ConnectionLost { said } => {
                write!(f, "the phone's storage does not answer ({said})")
            }
            Self::Blocked => f.write_str("another tab keeps the storage closed"),
            Self::Unavailable => f.write_str("this browser offers no storage here"),
            Self::Emptied => f.write_str("the browser emptied the storage while the app was open"),
            Self::Damaged { what } => write!(f, "a stored record is damaged: {what}"),
            Self::Other { name, message } => write!(f, "{name}: {message}"),
        }
    }
}

impl std::error::Error for StoreError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_lost_connection_is_worth_a_new_one() {
        for name in ["InvalidStateError", "UnknownError", "AbortError"] {
            assert!(StoreError::from_browser(name, "gone").is_lost_connection());
        }
        for name in ["QuotaExceededError", "SecurityError", "DataError", ""] {
            assert!(!StoreError::from_browser(name, "gone").is_lost_connection());
        }
    }

    #[test]
    fn the_browsers_words_are_kept() {
        for name in ["UnknownError", "DataError"] {
            let words = StoreError::from_browser(name, "disk on fire").to_string();
            assert!(words.contains(name) && words.contains("disk on fire"));
        }
    }
}
