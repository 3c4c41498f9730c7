//! `cargo xtask bench`: how the app feels on a slow phone, and how quickly sheets are
//! laid in a browser, in numbers.

mod layouts;
mod lighthouse;

use crate::tools::Optimise;
use crate::{dist, size};
use anyhow::Result;

/// Measures a fresh build.
pub fn bench(only_layouts: bool) -> Result<()> {
    layouts::compare()?;
    layouts::rooms()?;
    if only_layouts {
        return Ok(());
    }
    let folder = dist::make(Optimise::Always)?;
    println!("\nfirst visit: {} bytes of brotli", size::first_load()?);
    lighthouse::print(&folder)
}
