//! A quantity together with the text it was typed as.

use serde::{Deserialize, Serialize};

/// A quantity and what was typed, kept side by side: the value computes, the text
/// lets the office see what the tape really said.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct Typed<Q> {
    /// As typed, the field's unit added when the number came without one.
    pub typed: String,
    /// What it says.
    pub value: Q,
}

impl<Q> Typed<Q> {
    /// A value with the text it was read from.
    pub fn new(typed: impl Into<String>, value: Q) -> Self {
        Self { typed: typed.into(), value }
    }
}
