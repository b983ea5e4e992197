//! Checks from outside, run by `cargo test`: values from published sources (`published/`), scripted
//! sessions that every language's shell replays (`vectors/`), and the arrows between the crates.

pub mod solver;
pub mod vectors;
