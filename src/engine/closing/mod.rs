//! Whether the floor may be closed.
//!
//! Closing is everything else's conclusion. One rule: the floor stays open while anything
//! near what comes out is not settled, not known, too close to its limit to tell, or older
//! than the visit. What the rule does not know keeps it open. Each thing in the way is a
//! line of its own that names it and says what ends it ([`InTheWay`]). Begin with
//! [`decision`]; the folder's other files hold a part of the rule each.

mod age;
mod air;
mod asked;
mod by_air;
mod carriers;
pub mod decision;
mod hazards;
mod limits;
mod members;
mod near;
mod order;
mod read;
mod readings;
mod room;
mod stays;
mod trust;
mod water;

pub use asked::{Asked, asked_for_closing};
pub use decision::{CloseIn, Condition, Decision, InTheWay, READ_AT_DEPTH, close_in};
pub use hazards::{Hazard, hazards};
pub use limits::{Limit, Limits, Verdict, verdict};
pub use members::DECAY_IS_OUT;
pub use order::said_apart;
pub use readings::FEWEST;
pub use room::{SAME_JOISTS, asks_for_same_joists};
pub use stays::{ABOVE_REFERENCE, DRIEST_PANEL};
pub use water::{BARE_SOIL, COVERED_NOW, asks_for_cover, is_covered_now};
