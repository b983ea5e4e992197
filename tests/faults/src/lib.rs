//! A disk in memory for SQLite that writes down all that is done to it, fails when told to, and
//! shows what it would hold had the power gone at any moment.
//!
//! [`Disk`] is a file system of SQLite's (a "VFS"); [`Trace`] is what was done to it in order;
//! [`Trace::after_power_cut`] builds the files that a power cut leaves: what was synced, and of
//! what was not any subset of 512-byte sectors.
//!
//! [`tap`] and [`replay`] are a plain script of taps and the check that a store holds it;
//! [`Sessions`] are invented sessions of the usual size.

mod disk;
mod script;
mod sessions;
mod trace;

pub use disk::{Disk, ELSEWHERE, Fault};
pub use script::{replay, tap};
pub use sessions::{Sessions, TapRows};
pub use trace::{Call, Files, Machine, SECTOR, Step, Trace};
