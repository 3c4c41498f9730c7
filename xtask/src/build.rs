//! From Rust to WebAssembly, to the module and the JavaScript that a browser loads.

use crate::files::Files;
use crate::tools::{self, Optimise};
use crate::{paths, run};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;

/// What Rust may emit for this target (its defaults), and nothing more: a feature
/// added here would shut out phones that run the module as it was compiled.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// The folder of what is loaded when it is first asked for.
pub const LATER: &str = "later/";

/// The app's module as small as can be; a second time finds a little more. The lowest KB
/// of memory is the far end of the stack (`rust-lld` puts that first): nothing is there,
/// so addresses may be folded into loads and stores. In the order of their names, copies
/// of one function for several types lie side by side, which compresses better; for the same
/// reason what is called once stays where it is.
const SMALL: [&str; 5] =
    ["--low-memory-unused", "--one-caller-inline-max-function-size=0", "-Oz", "-Oz", "--reorder-functions-by-name"];

/// Builds the app: its module, its glue and the snippets that crates bring along.
pub fn app(optimise: Optimise) -> Result<Files> {
    let module = compile(Profile::Small, ["--bin", "duckboard"], "duckboard.wasm")?;
    let out = paths::target().join("bindgen");
    bind(&module, &out)?;
    shrink(&out.join("duckboard_bg.wasm"), &SMALL, optimise)?;
    Files::read(&out)
}

/// Builds what the app loads when it is asked for: the sheet search, for speed.
pub fn later(optimise: Optimise) -> Result<Files> {
    let module = compile(Profile::Fast, ["--bin", "layout"], "layout.wasm")?;
    let out = paths::target().join("bindgen-later");
    bind(&module, &out)?;
    shrink(&out.join("layout_bg.wasm"), &["-O3"], optimise)?;
    let files = Files::read(&out)?;
    Ok(Files(files.0.into_iter().map(|(path, content)| (format!("{LATER}{path}"), content)).collect()))
}

/// What a module is built for; each is a profile of `Cargo.toml`.
#[derive(Clone, Copy)]
enum Profile {
    Small,
    Fast,
}

impl Profile {
    const fn name(self) -> &'static str {
        match self {
            Self::Small => "phone",
            Self::Fast => "release",
        }
    }
}

/// Builds the page that runs the store's contract on a browser's own database, into
/// `target/contract`. With the app's profile: what it is built from is there already,
/// and it is the code as shipped that must keep the contract.
pub fn store_contract() -> Result<()> {
    let module = compile(Profile::Small, ["--example", "store_contract"], "examples/store_contract.wasm")?;
    let out = paths::target().join("contract");
    bind(&module, &out)?;
    fs::copy(paths::root().join("tests/browser/store_contract/index.html"), out.join("index.html"))?;
    Ok(())
}

/// Builds the page that proves the layout cases against the clock, into
/// `target/layout-speed`, as the app's own search is built.
pub fn layout_speed() -> Result<PathBuf> {
    let module = compile(Profile::Fast, ["--example", "layout_speed"], "examples/layout_speed.wasm")?;
    let out = paths::target().join("layout-speed");
    bind(&module, &out)?;
    shrink(&out.join("layout_speed_bg.wasm"), &["-O3"], Optimise::Always)?;
    fs::copy(paths::root().join("tests/layout/speed/index.html"), out.join("index.html"))?;
    Ok(out)
}

/// Compiles one of the package's programs for the browser; `built` is where cargo puts it.
fn compile(profile: Profile, program: [&str; 2], built: &str) -> Result<PathBuf> {
    tools::wasm_target()?;
    let mut cargo = Command::new("cargo");
    cargo.args(["build", "--profile", profile.name()]).args(program);
    cargo.args(["--target", "wasm32-unknown-unknown", "--target-dir"]).arg(paths::target());
    run::aloud(cargo.current_dir(paths::root()), run::minutes(60))?;
    Ok(paths::target().join("wasm32-unknown-unknown").join(profile.name()).join(built))
}

fn bind(module: &Path, out: &Path) -> Result<()> {
    // What an earlier build left here would be published too.
    if out.exists() {
        fs::remove_dir_all(out)?;
    }
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(module)
        .web(true)?
        .omit_default_module_path(false)
        .typescript(false)
        // wasm-opt sorts by names, and drops them.
        .remove_name_section(false)
        .remove_producers_section(true);
    bindgen.generate(out).context("wasm-bindgen refused the module")
}

fn shrink(module: &Path, passes: &[&str], optimise: Optimise) -> Result<()> {
    if matches!(optimise, Optimise::IfPossible) && !tools::has_npm() {
        println!("   npm is missing: the module stays as it is, about half as large again");
        return Ok(());
    }
    let smaller = module.with_extension("small");
    let mut wasm_opt = tools::wasm_opt()?;
    wasm_opt.args(passes).args(FEATURES).arg(module).arg("-o").arg(&smaller);
    run::quietly(&mut wasm_opt, run::minutes(30), &paths::target().join("wasm-opt.log"))?;
    fs::rename(smaller, module).context("wasm-opt wrote nothing")
}
