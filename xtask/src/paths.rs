//! Where things are. Every path is absolute, so a command works from any folder.

use std::path::{Path, PathBuf};

/// The repository.
pub fn root() -> PathBuf {
    let own = Path::new(env!("CARGO_MANIFEST_DIR"));
    own.parent().unwrap_or(own).to_path_buf()
}

/// Where cargo builds.
pub fn target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), |dir| root().join(dir))
}

/// The files to put on a host.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// npm packages: outside the repository's own files, gone with `cargo clean`.
pub fn tools() -> PathBuf {
    target().join("tools")
}
