//! The engine that a shell calls.

pub mod contract;
