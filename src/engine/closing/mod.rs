//! When a floor may be closed: the limits, what a reading says against them, and the
//! decision with every condition that it hangs on.

mod limits;

pub use limits::{Limit, Limits, Verdict, verdict};
