//! The office command: the engine on a desk.
fn main() {}
