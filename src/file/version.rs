//! The format's version, and what this build makes of another one.
//!
//! A newer *minor* version may add fields and kinds of entries: both are carried
//! through untouched. A newer *major* version may change what is there already: it is
//! refused and left as it is. The first change of the major version will bring its
//! numbered step beside this file; at 1.0 there is nothing to migrate from.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A format version, written `major.minor`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Version {
    /// Changes when an older reader would be wrong.
    pub major: u16,
    /// Changes when an older reader would miss something.
    pub minor: u16,
}

/// What a reader of one version makes of a file of another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// The same version.
    Current,
    /// Everything in it is known here.
    OlderMinor,
    /// It may hold what is not known here: carried along.
    NewerMinor,
    /// It may mean something else by the same words: refused.
    NewerMajor,
    /// A major version before this one, for which there is no migration.
    OlderMajor,
}

/// Text that is no version.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BadVersion;

impl Version {
    /// The version that this build writes.
    pub const CURRENT: Self = Self { major: 1, minor: 7 };

    /// What a reader of version `reader` makes of a file of this version.
    pub const fn standing(self, reader: Self) -> Standing {
        if self.major > reader.major {
            Standing::NewerMajor
        } else if self.major < reader.major {
            Standing::OlderMajor
        } else if self.minor > reader.minor {
            Standing::NewerMinor
        } else if self.minor < reader.minor {
            Standing::OlderMinor
        } else {
            Standing::Current
        }
    }

    /// The next minor version: the least that a file can have which carries what this
    /// one does not know.
    #[must_use]
    pub const fn next_minor(self) -> Self {
        Self { major: self.major, minor: self.minor.saturating_add(1) }
    }
}

impl fmt::Display for Version {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.major, self.minor)
    }
}

impl FromStr for Version {
    type Err = BadVersion;
    fn from_str(text: &str) -> Result<Self, BadVersion> {
        let (major, minor) = text.split_once('.').ok_or(BadVersion)?;
        Ok(Self { major: number(major)?, minor: number(minor)? })
    }
}

impl TryFrom<String> for Version {
    type Error = BadVersion;
    fn try_from(text: String) -> Result<Self, BadVersion> {
        text.parse()
    }
}

impl From<Version> for String {
    fn from(version: Version) -> Self {
        version.to_string()
    }
}

impl fmt::Display for BadVersion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a version: two numbers with a point between are accepted, as in \"1.0\"")
    }
}

impl std::error::Error for BadVersion {}

/// A number in its one spelling: no sign, no leading zero.
fn number(digits: &str) -> Result<u16, BadVersion> {
    let plain = digits.bytes().all(|byte| byte.is_ascii_digit()) && (digits == "0" || !digits.starts_with('0'));
    if plain { digits.parse().map_err(|_| BadVersion) } else { Err(BadVersion) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const READER: Version = Version { major: 2, minor: 3 };

    #[test]
    fn a_version_stands_where_its_numbers_say() {
        let standing = |text: &str| text.parse::<Version>().unwrap().standing(READER);
        assert_eq!(standing("2.3"), Standing::Current);
        assert_eq!(standing("2.0"), Standing::OlderMinor);
        assert_eq!(standing("2.10"), Standing::NewerMinor);
        assert_eq!(standing("3.0"), Standing::NewerMajor);
        assert_eq!(standing("1.9"), Standing::OlderMajor);
    }

    #[test]
    fn what_is_no_version_is_refused() {
        for text in ["", "1", "1.", ".1", "1.0.0", "01.0", "1.00", "+1.0", "1.-1", "1.x", "1.99999", " 1.0"] {
            assert_eq!(text.parse::<Version>(), Err(BadVersion), "{text:?}");
        }
    }

    proptest! {
        #[test]
        fn a_version_is_its_text(major: u16, minor: u16) {
            let version = Version { major, minor };
            prop_assert_eq!(version.to_string().parse(), Ok(version));
        }
    }
}
