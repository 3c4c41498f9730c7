//! Pure display lists: what a drawing shows, as lines, texts and discs with roles,
//! laid out in pixels for the canvas it is meant for.
//!
//! Screen, print and tests read the same [`Drawing`]. Colours never appear in it:
//! a [`Role`] says what a thing is, and the style sheet (`public/drawing.css`) what
//! that looks like. The one exception are readings and what lies between them, whose fill is a datum (see
//! [`ramp`]) and whose number is always printed too.
//!
//! It must never know a browser: callers hand it plain positions and texts already
//! formatted, and [`job_plan`] alone reads them off a job. It computes no quantity.
//!
//! Start with [`plan()`], then [`list`].

pub mod card;
pub mod cautions;
pub mod form;
pub mod frame;
pub mod job_plan;
mod lettering;
pub mod list;
pub mod orders;
mod paper;
pub mod plan;
mod px;
pub mod ramp;
pub mod role;
pub mod sheets;
pub mod svg;
pub mod under;
pub mod water;

pub use frame::Frame;
pub use list::{Anchor, Canvas, Drawing, Item, Reads, Spot};
pub use plan::{PlanInput, View, plan};
pub use role::Role;
