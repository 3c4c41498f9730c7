//! The office command: the engine on a desk.
//!
//! It opens the job files that phones hand over, and never changes one. Everything it
//! tells comes from [`duckboard::file`] and the engine; here are only words, files and
//! exit codes: 0 when all is well, 1 when a file has faults, 2 when the command was
//! not understood or a file could not be opened or written.

#[cfg(not(target_arch = "wasm32"))]
mod args;
#[cfg(not(target_arch = "wasm32"))]
mod check;
#[cfg(not(target_arch = "wasm32"))]
mod figures;
#[cfg(not(target_arch = "wasm32"))]
mod files;
#[cfg(not(target_arch = "wasm32"))]
mod layout;
#[cfg(not(target_arch = "wasm32"))]
mod merge;
#[cfg(not(target_arch = "wasm32"))]
mod prices;
#[cfg(not(target_arch = "wasm32"))]
mod report;
#[cfg(not(target_arch = "wasm32"))]
mod run;
#[cfg(not(target_arch = "wasm32"))]
mod tables;
#[cfg(not(target_arch = "wasm32"))]
mod trouble;

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    use clap::Parser as _;
    match run::run(args::Office::parse()) {
        Ok(()) => std::process::ExitCode::SUCCESS,
        Err(trouble) => {
            eprintln!("{trouble}");
            trouble.exit_code()
        }
    }
}

#[cfg(target_arch = "wasm32")]
fn main() {}
