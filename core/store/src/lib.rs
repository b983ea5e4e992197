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

mod appending;
mod aside;
mod backup;
mod bytes;
mod chain;
mod connect;
mod digest;
mod error;
mod event;
mod facts;
mod files;
mod held;
mod history;
mod marks;
mod opening;
mod pages;
mod place;
mod reading;
mod salvage;
mod schema;
mod sealing;
mod standing;
mod store;
mod wal;
mod watch;

pub use aside::{is_at, move_aside};
pub use backup::{Kept, Schedule, restore};
pub use digest::checksum;
pub use error::{Damage, Foreign, StoreError};
pub use event::{ABSENT, Event, NewEvent, Seq, Stamp, Tap};
pub use facts::{Standing, StandingFacts};
pub use files::{FileSystem, Files, Found, Identity};
pub use history::{AtEnd, Derive, Differing, History, Moment, VolumeRow};
pub use opening::CHECKED_ON_OPEN;
pub use place::Place;
pub use reading::Verified;
pub use salvage::{Salvage, discard, salvage, take_its_place};
pub use schema::SCHEMA_VERSION;
pub use store::Store;
