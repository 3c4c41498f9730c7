//! Tests of typed percentages and temperatures: tables to read, and laws.

mod laws;
mod tables;
