//! The log on disk: append-only events in one SQLite file, and what is derived from them.
//!
//! A tap is appended in one durable transaction ([`Store::append`]) and is on disk when the call
//! returns. The store interprets no event: kind, version and body go in and come out as text, and
//! the app crate has their codec. The file's layout is specified in `docs/store-format.md`.
//!
//! No clock is asked here: times come in with each tap.
#![deny(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::float_arithmetic,
    clippy::panic
)]

mod backup;
mod bytes;
mod digest;
mod error;
mod event;
mod files;
mod held;
mod history;
mod marks;
mod pages;
mod salvage;
mod schema;
mod standing;
mod store;
mod wal;
mod watch;

pub use backup::{Kept, Schedule, restore};
pub use digest::checksum;
pub use error::{Damage, Foreign, StoreError};
pub use event::{ABSENT, Event, NewEvent, Seq, Stamp, Tap};
pub use files::{FileSystem, Files, Found, Identity};
pub use history::{AtEnd, Derive, Differing, History, Moment, VolumeRow};
pub use salvage::{Salvage, discard, is_at, move_aside, salvage, take_its_place};
pub use schema::SCHEMA_VERSION;
pub use standing::{Standing, StandingFacts};
pub use store::{CHECKED_ON_OPEN, Place, Store, Verified};
