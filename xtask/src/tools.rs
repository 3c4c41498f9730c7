//! What the commands need from outside cargo: found, else installed, else named
//! together with the command that would install it.

use crate::{paths, run};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

/// An npm package in the one version that we use.
struct Package {
    name: &'static str,
    version: &'static str,
}

/// wasm-opt, as a script for node.
const BINARYEN: Package = Package { name: "binaryen", version: "132.0.0" };
/// Makes scripts smaller.
const TERSER: Package = Package { name: "terser", version: "5.51.4" };
/// The accessibility rules that the browser tests run in the page.
const AXE: Package = Package { name: "axe-core", version: "4.14.1" };
/// 13 wants a newer node than Debian 12 has.
const LIGHTHOUSE: Package = Package { name: "lighthouse", version: "12.2.3" };

/// May a build go without wasm-opt?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Optimise {
    Always,
    IfPossible,
}

/// Adds the wasm target to the toolchain when it is not there.
pub fn wasm_target() -> Result<()> {
    const TARGET: &str = "wasm32-unknown-unknown";
    if toolchain()?.join("lib/rustlib").join(TARGET).is_dir() {
        return Ok(());
    }
    let install = ["target", "add", TARGET];
    install_with("rustup", &install)
}

/// rustfmt and clippy, which a minimal toolchain comes without.
pub fn rust_components() -> Result<()> {
    for (program, component) in [("cargo-fmt", "rustfmt"), ("cargo-clippy", "clippy")] {
        if !toolchain()?.join("bin").join(program).is_file() {
            install_with("rustup", &["component", "add", component])?;
        }
    }
    Ok(())
}

/// The folder of the Rust toolchain in use.
fn toolchain() -> Result<PathBuf> {
    let out = Command::new("rustc").args(["--print", "sysroot"]).output().context("there is no rustc")?;
    Ok(PathBuf::from(String::from_utf8(out.stdout)?.trim()))
}

/// Chromium and its driver, from Debian's packages when they are missing.
pub fn browser() -> Result<()> {
    apt(&[("chromium", "chromium"), ("chromedriver", "chromium-driver")])
}

/// How Chromium is started for measuring.
pub const CHROMIUM_FLAGS: [&str; 8] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

/// Where Chromium is.
pub fn chromium() -> Result<PathBuf> {
    find("chromium").context("there is no chromium on the PATH")
}

/// The script that is wasm-opt, run by node.
pub fn wasm_opt() -> Result<Command> {
    let mut command = Command::new("node");
    command.arg(npm(&BINARYEN)?.join("bin/wasm-opt"));
    Ok(command)
}

/// The script that makes other scripts smaller, run by node.
pub fn terser() -> Result<Command> {
    let mut command = Command::new("node");
    command.arg(npm(&TERSER)?.join("bin/terser"));
    Ok(command)
}

/// Is there any hope of [`wasm_opt`] and [`terser`]?
pub fn has_npm() -> bool {
    find("npm").is_some()
}

/// Puts axe-core where the browser tests look for it.
pub fn axe() -> Result<()> {
    npm(&AXE).map(|_| ())
}

/// The script that is Lighthouse, run by node.
pub fn lighthouse() -> Result<Command> {
    let mut command = Command::new("node");
    command.arg(npm(&LIGHTHOUSE)?.join("cli/index.js"));
    Ok(command)
}

/// The folder of an installed package. Each lives in a folder of its own, named by
/// its version, so that a new version never meets what an old one left.
fn npm(package: &Package) -> Result<PathBuf> {
    let Package { name, version } = package;
    let home = paths::tools().join(format!("{name}-{version}"));
    let folder = home.join("node_modules").join(name);
    if folder.join("package.json").is_file() {
        return Ok(folder);
    }
    apt(&[("node", "nodejs"), ("npm", "npm")])?;
    println!("   installing {name} {version} into {}", home.display());
    fs::create_dir_all(&home)?;
    let mut command = Command::new("npm");
    command.args(["install", "--no-audit", "--no-fund", "--no-save", "--prefix"]);
    command.arg(&home).arg(format!("{name}@{version}"));
    run::quietly(&mut command, run::minutes(20), &paths::tools().join(format!("{name}.log")))?;
    Ok(folder)
}

/// cargo-mutants, from crates.io: built once, which takes some minutes.
pub fn cargo_mutants() -> Result<PathBuf> {
    const VERSION: &str = "27.1.0";
    let home = paths::tools().join(format!("cargo-mutants-{VERSION}"));
    let program = home.join("bin/cargo-mutants");
    if !is_program(&program) {
        println!("   installing cargo-mutants {VERSION} into {}", home.display());
        let mut command = Command::new("cargo");
        command.args(["install", "cargo-mutants", "--locked", "--version", VERSION, "--root"]).arg(&home);
        run::quietly(&mut command, run::minutes(60), &paths::tools().join("cargo-mutants.log"))?;
    }
    Ok(program)
}

/// Python that can make virtual environments: Debian keeps that part in a package of
/// its own.
pub fn python() -> Result<()> {
    let able = Command::new("python3").args(["-c", "import ensurepip, venv"]).output();
    if able.is_ok_and(|out| out.status.success()) { Ok(()) } else { apt_install(&["python3", "python3-venv"]) }
}

/// Installs the packages of those programs that are missing.
fn apt(wanted: &[(&str, &'static str)]) -> Result<()> {
    let missing = wanted.iter().filter(|(program, _)| find(program).is_none());
    let packages: Vec<_> = missing.map(|&(_, package)| package).collect();
    if packages.is_empty() { Ok(()) } else { apt_install(&packages) }
}

fn apt_install(packages: &[&str]) -> Result<()> {
    let mut install = vec!["install", "--yes", "--no-install-recommends"];
    install.extend(packages);
    if find("apt-get").is_none() || !rustix::process::geteuid().is_root() {
        bail!("missing; as root, run: apt-get {}", install.join(" "));
    }
    install_with("apt-get", &["update"])?;
    install_with("apt-get", &install)
}

fn install_with(program: &str, args: &[&str]) -> Result<()> {
    let line = format!("{program} {}", args.join(" "));
    println!("   {line}");
    let log = paths::tools().join(format!("{program}.log"));
    let mut command = Command::new(program);
    command.args(args).env("DEBIAN_FRONTEND", "noninteractive");
    run::quietly(&mut command, run::minutes(10), &log).with_context(|| format!("install it with: {line}"))
}

/// A program on the PATH.
pub fn find(program: &str) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    env::split_paths(&path).map(|folder| folder.join(program)).find(|file| is_program(file))
}

fn is_program(file: &Path) -> bool {
    use std::os::unix::fs::PermissionsExt;
    fs::metadata(file).is_ok_and(|meta| meta.is_file() && meta.permissions().mode() & 0o111 != 0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_program_is_found_by_name_and_a_missing_one_is_not() {
        assert!(find("sh").is_some_and(|path| path.is_absolute()));
        assert_eq!(find("no-such-program-anywhere"), None);
    }

    #[test]
    fn a_folder_is_not_a_program() {
        assert!(!is_program(Path::new("/")));
    }
}
