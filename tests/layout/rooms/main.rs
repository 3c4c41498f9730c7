//! Lays and proves invented rooms, drawn by lot and the same every time:
//! `layout_rooms [--rooms N] [--seconds S] [--large [--only NAME]]`.
//!
//! Prints a line for each room that is not proven in `S` seconds (5 unless said), then the
//! totals. `--large` lays a few rooms of up to 2,500 sq ft to the end of their search
//! instead, and prints what memory each takes.

mod drawn;
mod large;
mod random;

use duckboard::engine::sheets::floor_search::{MOST_STEPS, MOST_WORK};
use duckboard::engine::sheets::layout::{Case, Layout, Search, Step, check, twice_the_area};
use random::room;
use std::time::{Duration, Instant};

const USAGE: &str = "usage: layout_rooms [--rooms N] [--first SEED] [--seconds S] [--each] [--large [--only NAME]]";

struct Asked {
    rooms: u64,
    first: u64,
    most: Duration,
    large: bool,
    each: bool,
    only: String,
}

/// What a search came to.
struct Came {
    sheets: u32,
    bound: u32,
    proof: Option<Duration>,
    steps: u64,
    work: u64,
    bytes: usize,
    took: Duration,
    begun: Duration,
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let asked = arguments(std::env::args().skip(1))?;
    if asked.large {
        return large(&asked);
    }
    small(&asked)
}

/// So many of a hundred rooms have to be proven.
const GOAL: u64 = 95;

fn arguments(mut given: impl Iterator<Item = String>) -> Result<Asked, Box<dyn std::error::Error>> {
    let mut asked =
        Asked { rooms: 200, first: 1, most: Duration::from_secs(5), large: false, each: false, only: String::new() };
    while let Some(argument) = given.next() {
        let mut value = || given.next().ok_or(USAGE);
        match argument.as_str() {
            "--rooms" => asked.rooms = value()?.parse()?,
            "--first" => asked.first = value()?.parse()?,
            "--seconds" => asked.most = Duration::try_from_secs_f64(value()?.parse()?)?,
            "--each" => asked.each = true,
            "--large" => asked.large = true,
            "--only" => asked.only = value()?,
            _ => return Err(USAGE.into()),
        }
    }
    Ok(asked)
}

/// Rooms of 139 to 354 sq ft.
fn small(asked: &Asked) -> Result<(), Box<dyn std::error::Error>> {
    let mut proofs = Vec::new();
    let mut most = (0, 0);
    for seed in asked.first..asked.first + asked.rooms {
        let case = room(seed, (139, 354));
        let what = about(&case);
        let came = lay(case, asked.most)?;
        if asked.each || came.proof.is_none() {
            println!("room {seed} {what}: {}", came.line());
        }
        most = (most.0.max(came.steps), most.1.max(came.bytes));
        proofs.extend(came.proof);
    }
    proofs.sort_unstable();
    let at = |part: usize| proofs.get(proofs.len() * part / 100).map_or(0, |took| milliseconds(*took));
    println!("{} of {} rooms proven within {:?}", proofs.len(), asked.rooms, asked.most);
    println!(
        "proof ms: half {}, 90 % {}, 95 % {}, all {}",
        at(50),
        at(90),
        at(95),
        proofs.last().map_or(0, |took| milliseconds(*took))
    );
    println!("most steps {}, most bytes by the engine's count {}", most.0, most.1);
    let is_enough = proofs.len() as u64 * 100 >= asked.rooms * GOAL;
    if is_enough { Ok(()) } else { Err(format!("fewer than {GOAL} % are proven").into()) }
}

fn large(asked: &Asked) -> Result<(), Box<dyn std::error::Error>> {
    for (name, case) in large::large().into_iter().filter(|(name, _)| name.contains(&asked.only)) {
        let what = about(&case);
        let came = lay(case, asked.most)?;
        println!("{name} {what}: {}, peak {}", came.line(), peak_memory().unwrap_or_default());
        forget_peak();
    }
    Ok(())
}

fn about(case: &Case) -> String {
    let square_feet = twice_the_area(&case.asked.outline).abs() / 2 / (192 * 192);
    let slants =
        case.asked.outline.iter().zip(case.asked.outline.iter().cycle().skip(1)).any(|(a, b)| a.0 != b.0 && a.1 != b.1);
    format!(
        "({square_feet} sq ft, {} corners{})",
        case.asked.outline.len(),
        if slants { ", out of square" } else { "" }
    )
}

fn lay(case: Case, most: Duration) -> Result<Came, String> {
    let began = Instant::now();
    let mut search = Search::new(case);
    let begun = began.elapsed();
    let (mut proof, mut bytes) = (None, 0);
    // No farther than phone and office go either.
    let may_go_on = |search: &Search| search.steps() < MOST_STEPS as u64 && search.work() < MOST_WORK;
    while may_go_on(&search) && search.step() != Step::Done && began.elapsed() < most {
        bytes = bytes.max(search.bytes());
        if search.is_proven() {
            proof = Some(began.elapsed());
            break;
        }
    }
    if let Some(best) = search.best() {
        check(search.case(), best).map_err(|broken| format!("a rule is broken: {broken:?}"))?;
    }
    Ok(Came {
        sheets: search.best().map_or(0, Layout::sheets),
        bound: search.bound(),
        proof,
        steps: search.steps(),
        work: search.work(),
        bytes,
        took: began.elapsed(),
        begun,
    })
}

impl Came {
    fn line(&self) -> String {
        let open = || format!("open after {} ms", milliseconds(self.took));
        let proof = self.proof.map_or_else(open, |proof| format!("proven in {} ms", milliseconds(proof)));
        format!(
            "{} sheets, bound {}, {proof}, begun in {} ms, {} steps, work {}, {} bytes",
            self.sheets,
            self.bound,
            milliseconds(self.begun),
            self.steps,
            self.work,
            self.bytes
        )
    }
}

/// Rounded up: nothing takes no time.
const fn milliseconds(took: Duration) -> u128 {
    took.as_micros().div_ceil(1000)
}

/// Has Linux count this process's memory anew.
fn forget_peak() {
    // Where that is not to be had the peak is of all rooms so far.
    let _ = std::fs::write("/proc/self/clear_refs", "5");
}

/// What Linux says of this process.
fn peak_memory() -> Option<String> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    Some(line.trim().to_owned())
}
