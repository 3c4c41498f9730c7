//! Parts of sheets that are there already.

use crate::engine::units::{Length, Typed};
use serde::{Deserialize, Serialize};

/// A part of a sheet that is on hand, of the kind that is laid: it costs none.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(not(target_arch = "wasm32"), derive(schemars::JsonSchema))]
pub struct OnHand {
    /// Along the strong axis, as its face grain runs.
    pub length: Typed<Length>,
    /// Across it, without a tongue.
    pub width: Typed<Length>,
}
