//! How long the proofs of a folder of cases take, then water, then a whole job, then large rooms:
//! `layout_speed CASES_DIR` natively; or in a browser, where `index.html` beside this
//! file takes the time.

#[path = "../rooms/drawn.rs"]
mod drawn;
#[path = "../cases/format.rs"]
mod format;
#[path = "../rooms/large.rs"]
mod large;
mod water;
mod whole;

use duckboard::engine::sheets::floor_search::{MOST_STEPS, MOST_WORK};
use duckboard::engine::sheets::layout::{Search, Step};
use format::CaseFile;

/// How often the whole job is worked out again: a browser compiles what it has not run yet.
#[cfg(not(target_arch = "wasm32"))]
const AGAIN: usize = 9;

/// Proves a case, and says what that came to: the same on every machine.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
pub fn prove(case: &str) -> Result<String, String> {
    let file: CaseFile = serde_json::from_str(case).map_err(|error| error.to_string())?;
    let case = file.case().map_err(|faults| format!("{}: {faults:?}", file.id))?;
    let mut search = Search::new(case);
    while !search.is_proven() && search.steps() < MOST_STEPS as u64 && search.step() != Step::Done {}
    let sheets = search.best().map_or(0, duckboard::engine::sheets::layout::Layout::sheets);
    Ok(format!("{} sheets {sheets} bound {} steps {}", file.id, search.bound(), search.steps()))
}

/// Lays one of the large rooms as far as phone and office do, and says what that came to: the
/// same on every machine. None when there are no more.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
#[must_use]
pub fn lay_large(number: usize) -> Option<String> {
    let (name, case) = large::large().into_iter().nth(number)?;
    let mut search = Search::new(case);
    while search.steps() < MOST_STEPS as u64 && search.work() < MOST_WORK && search.step() != Step::Done {}
    let sheets = search.best().map_or(0, duckboard::engine::sheets::layout::Layout::sheets);
    Some(format!("{name}: sheets {sheets} bound {} steps {}", search.bound(), search.steps()))
}

/// Map, next reading and ranking of so many readings.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
pub fn map_and_rank(readings: u16) -> Result<String, String> {
    water::water(readings)
}

/// Everything that the sample job comes to but the search for its sheets.
#[cfg_attr(target_arch = "wasm32", wasm_bindgen::prelude::wasm_bindgen)]
#[must_use]
pub fn whole_job() -> String {
    whole::whole()
}

#[cfg(target_arch = "wasm32")]
fn main() {}

/// Prints a line a case, as JSON: what was proven, and in how many milliseconds.
#[cfg(not(target_arch = "wasm32"))]
fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("usage: layout_speed CASES_DIR")?;
    let mut files: Vec<_> = std::fs::read_dir(folder)?.map(|file| Ok(file?.path())).collect::<std::io::Result<_>>()?;
    files.sort();
    for file in files {
        let case = std::fs::read_to_string(file)?;
        let began = std::time::Instant::now();
        let proven = prove(&case)?;
        println!("{}", serde_json::json!([proven, began.elapsed().as_secs_f64() * 1000.0]));
    }
    let began = std::time::Instant::now();
    let mapped = map_and_rank(200)?;
    println!("{}", serde_json::json!([mapped, began.elapsed().as_secs_f64() * 1000.0]));
    let mut times = Vec::new();
    for again in 0..=AGAIN {
        let began = std::time::Instant::now();
        let whole = whole_job();
        let ms = began.elapsed().as_secs_f64() * 1000.0;
        if again == 0 {
            println!("{}", serde_json::json!([format!("first: {whole}"), ms]));
        } else {
            times.push(ms);
        }
    }
    times.sort_by(f64::total_cmp);
    println!("{}", serde_json::json!(["the same again, the median of nine", times.get(AGAIN / 2)]));
    for number in 0.. {
        let began = std::time::Instant::now();
        let Some(laid) = lay_large(number) else { break };
        println!("{}", serde_json::json!([laid, began.elapsed().as_secs_f64() * 1000.0, peak_mebibytes()]));
    }
    Ok(())
}

/// The most memory that this process took so far, as Linux says.
#[cfg(not(target_arch = "wasm32"))]
fn peak_mebibytes() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let kibibytes = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?.trim().strip_suffix(" kB")?;
    Some(kibibytes.trim().parse::<f64>().ok()? / 1024.0)
}
