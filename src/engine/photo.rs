//! Photos: what an entry says of one. The bytes are kept apart, under their digest,
//! and never pass through the log or the fold.

use super::entry::{EntryId, Note};
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use std::fmt;
use std::str::FromStr;

/// A photo, named by the digest of its bytes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Photo {
    /// Where, if it hangs on a place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<EntryId>,
    /// The digest of the stored bytes.
    pub sha256: Digest,
    /// What the bytes are.
    pub media_type: MediaType,
    /// How many bytes there are.
    pub size: u32,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// What it shows, in words.
    #[serde(default, skip_serializing_if = "Note::is_empty")]
    pub caption: Note,
}

/// A picture format that every browser draws.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub enum MediaType {
    /// JPEG.
    #[serde(rename = "image/jpeg")]
    Jpeg,
    /// PNG.
    #[serde(rename = "image/png")]
    Png,
    /// WebP.
    #[serde(rename = "image/webp")]
    Webp,
}

impl MediaType {
    /// What the bytes themselves say they are; a file's own claim is not believed.
    pub fn of(bytes: &[u8]) -> Option<Self> {
        match bytes {
            [0xff, 0xd8, 0xff, ..] => Some(Self::Jpeg),
            [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, ..] => Some(Self::Png),
            [b'R', b'I', b'F', b'F', _, _, _, _, b'W', b'E', b'B', b'P', ..] => Some(Self::Webp),
            _ => None,
        }
    }

    /// The media type's name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::Webp => "image/webp",
        }
    }

    /// The file name ending that goes with it.
    pub const fn extension(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
            Self::Webp => "webp",
        }
    }
}

/// The SHA-256 of a photo's bytes, written as 64 lower-case hex digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Digest([u8; 32]);

impl Digest {
    /// The digest of `bytes`.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl FromStr for Digest {
    type Err = BadDigest;
    fn from_str(text: &str) -> Result<Self, BadDigest> {
        let digits: Vec<u8> = text.bytes().map(hex_digit).collect::<Option<_>>().ok_or(BadDigest)?;
        let bytes: Vec<u8> = digits
            .chunks_exact(2)
            .filter_map(|pair| match pair {
                [high, low] => Some(high << 4 | low),
                _ => None,
            })
            .collect();
        if digits.len() != 64 {
            return Err(BadDigest);
        }
        bytes.try_into().map(Self).map_err(|_| BadDigest)
    }
}

impl TryFrom<String> for Digest {
    type Error = BadDigest;
    fn try_from(text: String) -> Result<Self, BadDigest> {
        text.parse()
    }
}

impl From<Digest> for String {
    fn from(digest: Digest) -> Self {
        digest.to_string()
    }
}

#[cfg(not(target_arch = "wasm32"))]
impl schemars::JsonSchema for Digest {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Sha256".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "pattern": "^[0-9a-f]{64}$" })
    }
}

/// Text that is no SHA-256.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BadDigest;

impl fmt::Display for BadDigest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a SHA-256: 64 lower-case hex digits are accepted")
    }
}

impl std::error::Error for BadDigest {}

fn hex_digit(byte: u8) -> Option<u8> {
    match byte {
        b'0'..=b'9' => Some(byte - b'0'),
        b'a'..=b'f' => Some(byte - b'a' + 10),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_digest_of_abc_is_the_published_one() {
        // FIPS 180-4, the one-block example of SHA-256, from memory.
        let expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(Digest::of(b"abc").to_string(), expected);
        assert_eq!(expected.parse(), Ok(Digest::of(b"abc")));
    }

    #[test]
    fn what_is_no_digest_is_refused() {
        assert!("".parse::<Digest>().is_err());
        assert!("ab".repeat(33).parse::<Digest>().is_err());
        assert!("AB".repeat(32).parse::<Digest>().is_err());
    }

    #[test]
    fn bytes_say_what_they_are() {
        assert_eq!(MediaType::of(b"\xff\xd8\xff\xe0"), Some(MediaType::Jpeg));
        assert_eq!(MediaType::of(b"<svg onload=alert(1)>"), None);
        assert_eq!(MediaType::of(b""), None);
    }
}
