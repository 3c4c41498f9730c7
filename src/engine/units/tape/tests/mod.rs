//! Tests of the tape: tables to read, and laws.

mod laws;
mod shown;
mod spellings;
mod tables;

use super::{BareUnit, Problem, Sign, Typed, parse};
use crate::engine::units::Length;

/// Reads with the settings of most tests: an inch field that takes a sign.
fn read(text: &str) -> Result<Typed<Length>, Problem> {
    parse(text, BareUnit::Inches, Sign::Allowed)
}

/// The value alone, in nanometres.
fn nm(text: &str) -> i64 {
    read(text).unwrap_or_else(|problem| panic!("{problem}")).value.to_nm()
}
