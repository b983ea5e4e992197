//! Barwright's domain: the trade as pure functions.
//!
//! No file, clock, randomness, thread or foreign call lives here. Quantities are exact integers;
//! time comes in with a reading. Errors are data: what is wrong and where. Their
//! words stand in the app crate's phrases, so that a second language is one folder there.
#![deny(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::float_arithmetic,
    clippy::panic
)]

pub mod call;
pub mod catalogue;
pub mod coach;
pub mod columns;
pub mod desk;
pub mod equipment;
pub mod history;
pub mod owners;
pub mod plan;
pub mod prescribe;
pub mod progress;
pub mod quantity;
pub mod session;
pub mod settle;
pub mod shown;
pub mod text;
pub mod volume;
