//! The library that a phone's app carries: the engine and its contract, for Kotlin and Swift.
//!
//! Both are declared in `barwright-app`, which also has UniFFI's scaffolding: in a second crate it
//! would become a second package in each language. An empty crate exports nothing, so this one
//! names the scaffolding.

barwright_app::uniffi_reexport_scaffolding!();
