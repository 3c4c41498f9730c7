//! temp
use crate::engine::entry::*;
use crate::engine::units::*;
use serde::{Deserialize, Serialize};
/// m
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct AirReading {
    /// l
    pub temperature: Typed<Temperature>,
}
/// r
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct SurfaceReading {
    /// p
    pub place: EntryId,
}
