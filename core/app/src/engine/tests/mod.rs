//! Tests that need the inside of the engine.

#[cfg(feature = "german")]
mod german;
mod language;
mod panics;
mod shown;
