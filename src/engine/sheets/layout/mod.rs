//! layout
pub mod bound;
pub mod case;
pub mod check;
pub mod courses;
pub mod cutting;
pub mod fit;
pub mod knapsack;
pub mod master;
pub mod options;
pub mod packing;
pub mod plan;
pub mod ratio;
pub mod region;
pub mod scheme;
pub mod search;
