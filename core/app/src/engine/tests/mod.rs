//! Tests that need the inside of the engine.

mod language;
mod panics;
mod shown;
