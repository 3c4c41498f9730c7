//! Duckboard's own commands.
fn main() {}
