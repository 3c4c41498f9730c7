//! `cargo xtask serve`: the app on this machine, set up, built and served in one go.

use crate::args::ServeOptions;
use crate::site::{Served, Site};
use crate::tools::Optimise;
use crate::{dist, paths, watch};
use anyhow::{Result, bail};
use std::thread;

/// The port when none is asked for and it is free.
const USUAL_PORT: u16 = 8080;

/// Builds unless told not to, then serves until stopped.
pub fn serve(options: &ServeOptions) -> Result<()> {
    if !options.no_build && options.dir.is_none() {
        dist::make(Optimise::IfPossible)?;
    }
    let folder = options.dir.clone().unwrap_or_else(paths::dist);
    if !folder.join("index.html").is_file() {
        bail!("there is no index.html in {}", folder.display());
    }
    let site = || Site::new(folder.clone(), &options.prefix, options.compress);
    let served = listen(options.port, site)?;
    // The browser tests read this line.
    println!("Duckboard is at {}", served.address);
    if options.watch {
        thread::spawn(watch::build_on_change);
    }
    served.run();
    Ok(())
}

fn listen(port: Option<u16>, site: impl Fn() -> Site) -> Result<Served> {
    match port {
        Some(port) => site().listen(port),
        None => site().listen(USUAL_PORT).or_else(|_| site().listen(0)),
    }
}
