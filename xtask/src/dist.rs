//! `cargo xtask dist`: the files to put on a host, from the sources.

use crate::bundle::{bundle, dead};
use crate::files::Files;
use crate::smaller::smaller;
use crate::tools::Optimise;
use crate::{build, paths};
use anyhow::{Result, bail};
use std::fs;
use std::path::PathBuf;

/// Builds the app into `dist/` and returns that folder.
pub fn make(optimise: Optimise) -> Result<PathBuf> {
    let built = build::app(optimise)?;
    let files = bundle(&smaller(built.join(build::later(optimise)?)?.join(sources()?)?, optimise)?)?;
    for name in dead(&files) {
        println!("   warning: the page or the manifest names {name}, which is not there");
    }
    let folder = paths::dist();
    files.write(&folder)?;
    println!("   {} files in {}", files.0.len(), folder.display());
    Ok(folder)
}

/// What goes to the host as it is written: the page and `public/`.
fn sources() -> Result<Files> {
    let mut files = Files::read(&paths::root().join("public"))?;
    files.0.insert("index.html".into(), fs::read(paths::root().join("index.html"))?);
    Ok(files)
}

/// Fails if the built page or manifest names a file that is not there.
pub fn check() -> Result<()> {
    let dead = dead(&Files::read(&paths::dist())?);
    if dead.is_empty() { Ok(()) } else { bail!("named but not there: {}", dead.join(", ")) }
}
