//! What is persisted, as types of its own.
//!
//! The domain's types change as the trade is understood better; what a device wrote years ago must
//! still be read. So the log never holds a domain type: [`v1`] mirrors each of them as it is written,
//! and [`codec`] is the door. A field or a variant that the domain gains is a compile error here, a
//! change of what is written differs from the committed schema (`schema/v1.json`), and the stored
//! samples (`samples/v1.jsonl`) are read and written back to the same bytes.
//!
//! A mass is written as kilograms in an exact decimal text, as it always was. For the loads of a gym
//! that is smaller than a whole number of nanograms (`"142.5"` is 7 bytes, `142500000000000` is 15),
//! it is as exact, no reader cuts it short by taking it for a float, and a person can read it.
//!
//! What is empty, off or the usual is left out where the type says so, and read back as that.

#![deny(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::string_slice,
    clippy::float_arithmetic,
    clippy::panic
)]

pub mod codec;
pub mod form;
#[macro_use]
mod mirror;
#[cfg(any(test, feature = "schema"))]
mod schema;
pub mod v1;

pub use codec::{
    Unreadable, VERSION, decode_account, decode_desk, decode_draft, decode_session,
    decode_standing_desk, encode_account, encode_desk, encode_draft, encode_session,
    encode_standing_desk,
};
pub use mirror::{Mirror, OutOfRange};
#[cfg(any(test, feature = "schema"))]
pub use schema::schema;
