//! Duckboard's own commands: build, serve, test and measure the app.
//!
//! Everything a command needs and can install, it installs: the wasm target, the
//! browser, the two or three npm tools (into `target/tools`, never the repository).
//! What the commands have in common is in [`run`] (child processes that always end)
//! and [`tools`] (what must be there, in which version). Start reading at the command:
//! [`dist`], [`serve`], [`test`], [`bench`], [`mutants`].

mod args;
mod bench;
mod build;
mod bundle;
mod dist;
mod files;
mod mutants;
mod paths;
mod run;
mod serve;
mod site;
mod size;
mod smaller;
mod test;
mod tools;
mod watch;

use anyhow::Result;
use args::Command;
use std::process::ExitCode;

fn main() -> ExitCode {
    match args::from_command_line().and_then(obey) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("cargo xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn obey(command: Command) -> Result<()> {
    match command {
        Command::Help => {
            print!("{}", args::HELP);
            Ok(())
        }
        Command::Dist => dist::make(tools::Optimise::Always).map(|_| ()),
        Command::Serve(options) => serve::serve(&options),
        Command::Size => size::check(),
        Command::Test { only, times } => test::test(&only, times),
        Command::Bench { only_layouts } => bench::bench(only_layouts),
        Command::Mutants(options) => mutants::mutants(&options),
    }
}
