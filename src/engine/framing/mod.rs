//! Framing: what a joist carries as it is, what was lost of it, and what may be cut out.
//!
//! It reproduces the code's span tables by their method and goes on from there with
//! measured sizes. It is no engineer's design: whoever signs decides. Begin with
//! [`span`](span()), which rests on [`design`] and [`section`].

mod again;
mod apart;
mod before;
pub mod damage;
pub mod design;
pub mod done;
pub mod headers;
pub mod joist;
mod measured;
pub mod member;
pub mod past;
mod places;
mod reasons;
pub mod schedule;
pub mod section;
pub mod shared;
pub mod since;
pub mod span;
pub mod spots;
mod stretch;
pub mod supports;

pub use damage::{Damage, DamageKind, Depth};
pub use design::{DesignValues, Edition, Grade, LumberGroup};
pub use joist::Joist;
pub use measured::is_of_the_old_one;
pub use member::{Done, MemberType};
pub use reasons::{Planing, is_probed_before};
pub use schedule::{Fate, Judged, Range, Reason, schedule};
pub use section::{CutLimits, Section};
pub use shared::Shared;
pub use since::Since;
pub use span::{Governs, Loads, Service, Spans, span};
