//! The engine for a browser: one store, kept in the browser's private file system, and the contract
//! as JSON text. It lives in a dedicated worker, where files can be read and written without
//! waiting.
//!
//! What is asked and answered is what `barwright drive` speaks in and what the scripted sessions
//! hold: `{"reading": …, "intent" | "action" | "view": …}` in, `{"answer": …}` or `{"error": …}` out.
#![cfg(target_family = "wasm")]
#![deny(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::float_arithmetic,
    clippy::panic
)]

mod calls;
mod pool;
mod ports;
mod vfs;
