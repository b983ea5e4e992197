//! The engine that a shell calls: intents and looks in, screens and effects out.
//!
//! [`Engine`] is the one object. A tap is decided by the domain, appended to the store in one
//! durable transaction, and only then shown. The contract with every shell is declared in
//! [`contract`]; each screen is made by one module of `screens`, and every word comes from
//! [`phrase`].

pub mod contract;
pub mod demo;
mod engine;
mod locale;
pub mod phrase;
mod records;
mod screens;
mod today;

pub use engine::{Engine, Versions};
pub use locale::Locale;
pub use records::{Recovered, recover};
pub use screens::{plan_checked, plan_in_file};

// Kotlin and Swift get one package from here; the bindings package exports it from its library.
#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!("barwright");
