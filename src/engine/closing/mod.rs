//! When a floor may be closed: the limits, what a reading says against them, and the
//! decision with every condition that it hangs on.

mod decision;
mod limits;

pub use decision::{CloseIn, Condition, Decision, close_in};
pub use limits::{Limit, Limits, Verdict, verdict};
