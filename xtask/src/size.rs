//! `cargo xtask size`: what a first visit downloads, held against a budget.

use crate::build::LATER;
use crate::files::Files;
use crate::paths;
use crate::site::compress;
use anyhow::{Result, bail};

/// The most that a first visit may download, in bytes of brotli: some seconds on the
/// one bar of signal that is left at the roadside.
const BUDGET: usize = 480_000;

/// One file as it is and as it travels.
struct Row<'a> {
    path: &'a str,
    raw: usize,
    small: usize,
}

/// Prints the table and fails above the budget.
pub fn check() -> Result<()> {
    let files = Files::read(&paths::dist())?;
    let rows = rows(&files);
    print!("{}", table(&rows));
    within(total(&rows), BUDGET)
}

/// Bytes of brotli that a first visit downloads.
pub fn first_load() -> Result<usize> {
    Ok(total(&rows(&Files::read(&paths::dist())?)))
}

fn rows(files: &Files) -> Vec<Row<'_>> {
    let counted = files.0.iter().filter(|(path, _)| counts(path));
    counted.map(|(path, content)| Row { path, raw: content.len(), small: compress(content, 11).len() }).collect()
}

/// Icons and manifest are fetched once, later, and not waited for; nor is what is only
/// loaded when somebody asks for it.
fn counts(path: &str) -> bool {
    !path.starts_with(LATER)
        && ["wasm", "js", "css", "html"].contains(&path.rsplit_once('.').map_or("", |(_, extension)| extension))
}

fn total(rows: &[Row]) -> usize {
    rows.iter().map(|row| row.small).sum()
}

fn within(total: usize, budget: usize) -> Result<()> {
    if total <= budget {
        return Ok(());
    }
    bail!("a first visit downloads {total} bytes, {} more than the budget of {budget}", total - budget)
}

fn table(rows: &[Row]) -> String {
    let widest = rows.iter().map(|row| row.path.len()).max().unwrap_or(0).max(12);
    let line = |name: &str, raw: usize, small: usize| {
        format!("   {name:widest$} {:>10.1} KB {:>10.1} KB\n", kilobytes(raw), kilobytes(small))
    };
    let mut table = format!("   {:widest$} {:>13} {:>13}\n", "", "raw", "brotli");
    for row in rows {
        table += &line(row.path, row.raw, row.small);
    }
    table += &line("first visit", rows.iter().map(|row| row.raw).sum(), total(rows));
    table + &format!("   {:widest$} {:>13} {:>10.1} KB\n", "budget", "", kilobytes(BUDGET))
}

fn kilobytes(bytes: usize) -> f64 {
    bytes as f64 / 1000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_the_first_screen_waits_for_counts() {
        for path in ["a-1.wasm", "index.html", "sw.js", "snippets/x/inline0.js"] {
            assert!(counts(path), "{path}");
        }
        for path in ["icon-192.png", "manifest.webmanifest", "js", "later/layout-1.wasm"] {
            assert!(!counts(path), "{path}");
        }
    }

    #[test]
    fn the_budget_itself_is_allowed_and_one_byte_more_is_not() {
        assert!(within(10, 10).is_ok());
        let error = within(12, 10).unwrap_err().to_string();
        assert!(error.contains("12 bytes, 2 more"), "{error}");
    }

    #[test]
    fn the_table_adds_up() {
        let rows = [Row { path: "a.js", raw: 2000, small: 1000 }, Row { path: "b.css", raw: 1500, small: 500 }];
        let table = table(&rows);
        let sum = table.lines().find(|line| line.contains("first visit")).unwrap();
        assert!(sum.contains("3.5 KB") && sum.contains("1.5 KB"), "{table}");
    }
}
