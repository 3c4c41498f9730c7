//! What a tape or a laser gives.

mod floor;
mod framing;
mod room;
