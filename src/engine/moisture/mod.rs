//! temp
use crate::engine::entry::*;
use crate::engine::units::*;
use serde::{Deserialize, Serialize};
/// m
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Meter {
    /// l
    pub label: Label,
}
/// r
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Reading {
    /// p
    pub place: EntryId,
    /// s
    pub shown: Typed<MoistureContent>,
}
