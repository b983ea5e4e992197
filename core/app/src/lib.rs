//! The engine that a shell calls: intents and looks in, answers out.
//!
//! [`Engine`] is the one object. A tap is decided by the domain, appended to the store in one durable
//! transaction, and only then shown:
//!
//! ```text
//! dispatch ─▶ gather ─▶ decide ─▶ append ─▶ fold ─┐
//! view ───────────────────────────────────────────┴▶ gather ─▶ show ─▶ Answer
//! ```
//!
//! `gather` is the only reader of the store and fills `facts`; `screens` make a screen of them and of
//! nothing else; every word comes from [`phrase`]. The contract with every shell is declared in
//! [`contract`].

pub mod contract;

mod engine;
mod facts;
mod fault;
mod gather;
mod locale;
pub mod phrase;
mod records;
mod screens;

pub use barwright_store::{FileSystem, Files, Found, Identity, Place};
pub use engine::{
    Change, Engine, Examined, Export, Exported, Imported, Joined, OldTable, PaperOf, Table,
    Versions, demo,
};
pub use locale::Locale;
pub use records::{Recovered, recover, recover_in, restore, restore_in};
pub use screens::{
    LifterWeek, OutOf, Paper, PaperColumns, PaperEntry, PaperSession, PaperSet, plan_checked,
    plan_in_file,
};

// Kotlin and Swift get one package from here; the bindings package exports it from its library.
#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!("barwright");
