//! temp
use serde::{Deserialize, Serialize};
/// Turn
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// l
    Left,
    /// r
    Right,
}
