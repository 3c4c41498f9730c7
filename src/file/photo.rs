//! A photo as a job file carries it: named by the digest of its bytes, and believed
//! only when they agree.

use super::extras::{Extras, Sorted};
use super::fault::Fault;
use super::json;
use super::limits::{FIELDS, PHOTO_BYTES};
use crate::engine::entry::{Time, time};
use crate::engine::photo::{Digest, MediaType};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::value::RawValue;
use std::fmt;
use std::sync::Arc;

/// A photo in a job file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FilePhoto {
    /// The digest of its bytes.
    pub sha256: Digest,
    /// What the bytes are.
    pub media_type: MediaType,
    /// How many bytes there are.
    pub size: u32,
    /// When it was taken.
    pub at: Time,
    /// The bytes, unless they were left out.
    pub bytes: Option<Arc<[u8]>>,
    /// Fields that this build does not know.
    pub extra: Extras,
}

/// Why bytes are no photo that a job file carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoPhoto {
    /// More bytes than [`PHOTO_BYTES`].
    TooLong,
    /// Neither JPEG nor PNG nor WebP.
    UnknownType,
}

impl FilePhoto {
    /// A photo of these bytes, taken at a time.
    ///
    /// # Errors
    /// [`NoPhoto`] if they are too many, or no picture that every browser draws.
    pub fn of(bytes: impl Into<Arc<[u8]>>, at: Time) -> Result<Self, NoPhoto> {
        let bytes = bytes.into();
        if bytes.len() > PHOTO_BYTES {
            return Err(NoPhoto::TooLong);
        }
        let size = u32::try_from(bytes.len()).map_err(|_| NoPhoto::TooLong)?;
        let media_type = MediaType::of(&bytes).ok_or(NoPhoto::UnknownType)?;
        let sha256 = Digest::of(&bytes);
        Ok(Self { sha256, media_type, size, at, bytes: Some(bytes), extra: Extras::default() })
    }

    /// Two tellings of one photo: the one that has the bytes, else the earlier, with the
    /// unknown fields of both. The same whichever comes first.
    #[must_use]
    pub fn union(self, other: Self) -> Self {
        let rank =
            |photo: &Self| (photo.bytes.is_none(), photo.at, photo.at.to_rfc3339(), photo.media_type, photo.size);
        let (first, second) = if rank(&self) <= rank(&other) { (self, other) } else { (other, self) };
        Self { extra: first.extra.union(second.extra), ..first }
    }

    /// The name of a file of its own, such as `3f2a91c07b5d.jpg`.
    pub fn file_name(&self) -> String {
        let start: String = self.sha256.to_string().chars().take(12).collect();
        format!("{start}.{}", self.media_type.extension())
    }
}

impl fmt::Display for NoPhoto {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLong => {
                write!(f, "The picture is too large: up to {} MB are carried.", PHOTO_BYTES / (1024 * 1024))
            }
            Self::UnknownType => f.write_str("This is no picture that is carried: JPEG, PNG and WebP are."),
        }
    }
}

impl std::error::Error for NoPhoto {}

const NAMES: [&str; 5] = ["sha256", "type", "size", "at", "base64"];

/// Reads one item of `photos`, and puts everything that is wrong with it in `faults`.
pub(super) fn read(raw: &RawValue, path: &str, faults: &mut Vec<Fault>) -> Option<FilePhoto> {
    let fields = match json::fields(raw.get(), FIELDS) {
        Ok(fields) => fields,
        Err(error) => {
            faults.push(Fault::at(path, json::plain(&error)));
            return None;
        }
    };
    let before = faults.len();
    let sorted = Sorted::of(&fields, &NAMES, path, faults);
    let item = Item { sorted, path };
    let (sha256, media_type) = (item.needed("sha256", faults), item.needed("type", faults));
    let (size, at) = (item.needed("size", faults), item.needed::<At>("at", faults));
    let bytes = item.bytes(faults);
    let photo = FilePhoto {
        sha256: sha256?,
        media_type: media_type?,
        size: size?,
        at: at?.0,
        bytes,
        extra: item.sorted.extras,
    };
    faults.extend(disagreements(&photo, path));
    (faults.len() == before).then_some(photo)
}

/// When a photo was taken.
#[derive(serde::Deserialize)]
#[serde(transparent)]
struct At(#[serde(with = "time")] Time);

struct Item<'a, 'p> {
    sorted: Sorted<'a>,
    path: &'p str,
}

impl Item<'_, '_> {
    fn needed<T: serde::de::DeserializeOwned>(&self, name: &str, faults: &mut Vec<Fault>) -> Option<T> {
        let found = self.sorted.get(name).ok_or_else(|| "is missing".to_owned());
        found.and_then(json::value).map_err(|problem| faults.push(self.fault(name, problem))).ok()
    }

    fn bytes(&self, faults: &mut Vec<Fault>) -> Option<Arc<[u8]>> {
        let raw = self.sorted.get("base64")?;
        decode(raw).map_err(|problem| faults.push(self.fault("base64", problem))).ok()
    }

    fn fault(&self, name: &str, problem: impl Into<String>) -> Fault {
        Fault::at(format!("{}.{name}", self.path), problem)
    }
}

fn decode(raw: &RawValue) -> Result<Arc<[u8]>, String> {
    // Four characters for three bytes, and two quotes.
    if raw.get().len() > PHOTO_BYTES.div_ceil(3) * 4 + 2 {
        return Err(format!("is too long: photos of up to {} MB are accepted", PHOTO_BYTES / (1024 * 1024)));
    }
    let text = json::text(raw)?;
    STANDARD.decode(text.as_bytes()).map(Arc::from).map_err(|error| format!("is not base64: {error}"))
}

/// Where the bytes say otherwise than the fields beside them.
fn disagreements(photo: &FilePhoto, path: &str) -> Vec<Fault> {
    let Some(bytes) = &photo.bytes else { return Vec::new() };
    let mut faults = Vec::new();
    let mut fault = |name: &str, problem: String| faults.push(Fault::at(format!("{path}.{name}"), problem));
    match MediaType::of(bytes) {
        Some(found) if found == photo.media_type => {}
        Some(found) => fault("type", format!("says {}, but the bytes are {}", photo.media_type.name(), found.name())),
        None => fault("type", "the bytes are neither JPEG nor PNG nor WebP".to_owned()),
    }
    if usize::try_from(photo.size) != Ok(bytes.len()) {
        fault("size", format!("says {}, but there are {} bytes", photo.size, bytes.len()));
    }
    let found = Digest::of(bytes);
    if found != photo.sha256 {
        fault("sha256", format!("says {}, but the bytes have {found}", photo.sha256));
    }
    faults
}

/// The photo's bytes in base64.
pub(super) fn encode(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}
