//! The engine that a shell calls.
