//! Who logged an entry, when, and in which visit.

use super::{EntryId, Text, Time, time};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Who, when, in which visit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Stamp {
    /// The phone's clock when the entry was made, RFC 3339 with offset.
    #[cfg_attr(not(target_arch = "wasm32"), schemars(with = "String", extend("format" = "date-time")))]
    #[serde(with = "time")]
    pub at: Time,
    /// Who logged it.
    pub by: Logger,
    /// The visit that it belongs to, once there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub visit: Option<EntryId>,
}

/// Who logs on this phone: typed once.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Logger {
    /// Initials, enough to tell two carpenters apart.
    pub initials: Text<8>,
    /// What they do on the job.
    pub role: Role,
}

impl fmt::Display for Logger {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, {}", self.initials, self.role.label())
    }
}

/// What somebody does on the job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// Under the house.
    CrewLead,
    /// In the room above.
    Carpenter,
    /// At the desk.
    Office,
}

impl Role {
    /// Every role, in the order that a choice shows them.
    pub const ALL: [Self; 3] = [Self::CrewLead, Self::Carpenter, Self::Office];

    /// The role in words.
    pub const fn label(self) -> &'static str {
        match self {
            Self::CrewLead => "crew lead",
            Self::Carpenter => "carpenter",
            Self::Office => "office",
        }
    }
}
