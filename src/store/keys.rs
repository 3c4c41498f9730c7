//! The names that things are kept under.
//!
//! A key that stands in two spellings would keep one thing twice, so each key has
//! exactly one spelling and refuses the rest.

use sha2::{Digest, Sha256};
use std::fmt;

/// A job's name in the store: 32 lower-case hexadecimal digits.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct JobKey(String);

impl JobKey {
    /// How many digits a job key has.
    pub const DIGITS: usize = 32;

    /// Reads a key back from its text.
    ///
    /// # Errors
    /// [`BadKey`] unless the text is [`Self::DIGITS`] lower-case hexadecimal digits.
    pub fn parse(text: &str) -> Result<Self, BadKey> {
        hexadecimal(text, Self::DIGITS).map(Self)
    }

    /// The key made of a job id's 128 bits.
    pub fn from_bits(bits: u128) -> Self {
        Self(format!("{bits:032x}"))
    }

    /// The key's text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for JobKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A photo's name in the store: the SHA-256 of its bytes, as 64 lower-case
/// hexadecimal digits. Its thumbnail is kept under the same key.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BlobKey(String);

impl BlobKey {
    /// How many digits a blob key has.
    pub const DIGITS: usize = 64;

    /// The key of these bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(sha256_hex(bytes))
    }

    /// Reads a key back from its text.
    ///
    /// # Errors
    /// [`BadKey`] unless the text is [`Self::DIGITS`] lower-case hexadecimal digits.
    pub fn parse(text: &str) -> Result<Self, BadKey> {
        hexadecimal(text, Self::DIGITS).map(Self)
    }

    /// The key's text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for BlobKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Whom a note belongs to.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NoteScope {
    /// The phone: the profile of whoever holds it, the device's id.
    Phone,
    /// One job: the draft of the field being typed, the photo that is wanted.
    Job(JobKey),
}

/// A note's name in the store. Any text names a note, the empty one included.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NoteKey {
    /// Whom the note belongs to.
    pub scope: NoteScope,
    /// Which of its notes it is.
    pub name: String,
}

impl NoteKey {
    /// A note of the phone.
    pub fn phone(name: impl Into<String>) -> Self {
        Self { scope: NoteScope::Phone, name: name.into() }
    }

    /// A note of one job.
    pub fn job(job: &JobKey, name: impl Into<String>) -> Self {
        Self { scope: NoteScope::Job(job.clone()), name: name.into() }
    }
}

/// A text that is no key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadKey {
    /// How many hexadecimal digits the key should have had.
    pub digits: usize,
    /// What stood there instead.
    pub text: String,
}

impl fmt::Display for BadKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a key of {} digits, 0-9 and a-f, was expected, not {:?}", self.digits, self.text)
    }
}

impl std::error::Error for BadKey {}

/// The SHA-256 of some bytes in lower-case hexadecimal.
pub(super) fn sha256_hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

fn hexadecimal(text: &str, digits: usize) -> Result<String, BadKey> {
    let is_digit = |byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f');
    if text.len() == digits && text.bytes().all(is_digit) {
        Ok(text.to_owned())
    } else {
        Err(BadKey { digits, text: text.to_owned() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_key_has_one_spelling() {
        let key = "0123456789abcdef0123456789abcdef";
        assert_eq!(JobKey::parse(key).unwrap().as_str(), key);
        for other in [
            "",
            "0123456789ABCDEF0123456789abcdef",
            "0123456789abcdef0123456789abcde",
            "0123456789abcdef0123456789abcdef0",
            " 123456789abcdef0123456789abcdef",
            "é123456789abcdef0123456789abcde",
        ] {
            let error = JobKey::parse(other).unwrap_err();
            assert_eq!((error.digits, error.text.as_str()), (32, other));
        }
    }

    /// The digest of "abc" is the published example of the hash's standard
    /// [P: FIPS 180-4's example file, "SHA256.pdf"].
    #[test]
    fn a_blob_is_named_by_its_sha_256() {
        let key = BlobKey::of(b"abc");
        let published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(key.as_str(), published);
        assert_eq!(BlobKey::parse(published), Ok(key));
    }

    proptest! {
        #[test]
        fn every_job_id_has_a_key_that_reads_back(bits: u128) {
            let key = JobKey::from_bits(bits);
            prop_assert_eq!(u128::from_str_radix(key.as_str(), 16), Ok(bits));
            prop_assert_eq!(JobKey::parse(key.as_str()), Ok(key));
        }
    }
}
