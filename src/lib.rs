//! Duckboard: a field log that computes.
//!
//! ```text
//! entries --fold--> job --compute--> results --draw--> screen, print, job file
//! ```
//!
//! - [`engine`] knows entries, the job and the sums; it knows no browser, clock,
//!   storage or randomness.
//! - [`draw`] turns results into display lists, the same for screen, print and tests.
//! - [`file`] reads and writes the job file.
//! - [`order`] puts things in order for all of them.
//! - [`store`] is the storage port and its two implementations.
//! - `app` (wasm32 only) draws all of it on the phone.
//!
//! Start reading at [`engine`].

pub mod draw;
pub mod engine;
pub mod file;
pub mod order;
pub mod store;

#[cfg(target_arch = "wasm32")]
pub mod app;
