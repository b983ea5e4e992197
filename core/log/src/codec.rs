//! The door: events and standing facts to text and back.
//!
//! The log keeps an event's version, its number and the wall clock in columns of their own; its body
//! has the rest. Standing facts can be folded again from the log, so they carry no version: one that
//! can't be read is folded again.

use barwright_domain::desk::{Desk, DeskEvent, Draft};
use barwright_domain::owners::Account;
use barwright_domain::session::{Event, Reading};
use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::mirror::{Mirror, OutOfRange};
use crate::v1;

/// The version written now, of both kinds of events. Every version that was ever written keeps its
/// reader.
pub const VERSION: u32 = 1;

/// A body that this release can't read.
#[derive(Debug, thiserror::Error)]
pub enum Unreadable {
    /// Another release wrote it.
    #[error("written as version {version}, and {VERSION} is the latest that is read here")]
    Version {
        /// The version.
        version: u32,
    },
    /// It is no such body.
    #[error("no such body: {0}")]
    Body(#[from] serde_json::Error),
    /// A value is none that can be.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
}

fn write<T: Serialize>(it: &T) -> String {
    // Only a map with keys that are no texts or numbers, or a writer that fails, could make this an
    // error.
    serde_json::to_string(it).expect("what is written is plain data")
}

fn encode<T: Mirror + Serialize>(at: &Reading, event: &T::Of) -> String {
    let Reading { wall_ms: _, offset_minutes: _, boot_ms, boot_id } = at;
    write(&v1::Body { boot_ms: *boot_ms, boot_id: boot_id.clone(), event: T::of(event) })
}

/// Reads a text. In a browser by way of a tree: what reads straight from a text into a type is made anew
/// for each of some three hundred types, and was a fiftieth of what is loaded. Elsewhere that is the
/// faster way.
fn read<T: DeserializeOwned>(body: &str) -> serde_json::Result<T> {
    if cfg!(target_family = "wasm") {
        serde_json::from_value(serde_json::from_str(body)?)
    } else {
        serde_json::from_str(body)
    }
}

fn decode<T: Mirror + DeserializeOwned>(
    version: u32,
    body: &str,
    wall_ms: i64,
    offset_minutes: i32,
) -> Result<(Reading, T::Of), Unreadable> {
    if version != VERSION {
        return Err(Unreadable::Version { version });
    }
    let v1::Body { boot_ms, boot_id, event } = read::<v1::Body<T>>(body)?;
    Ok((Reading { wall_ms, offset_minutes, boot_ms, boot_id }, event.back()?))
}

/// The body of a session's event.
pub fn encode_session(at: &Reading, event: &Event) -> String {
    encode::<v1::event::Event>(at, event)
}

/// The body of an event between sessions.
pub fn encode_desk(at: &Reading, event: &DeskEvent) -> String {
    encode::<v1::desk_event::DeskEvent>(at, event)
}

/// A session's event and its reading, from its body and the log's columns.
///
/// # Errors
/// [`Unreadable`], where another release wrote it or it is damaged.
pub fn decode_session(
    version: u32,
    body: &str,
    wall_ms: i64,
    offset_minutes: i32,
) -> Result<(Reading, Event), Unreadable> {
    decode::<v1::event::Event>(version, body, wall_ms, offset_minutes)
}

/// An event between sessions and its reading, from its body and the log's columns.
///
/// # Errors
/// [`Unreadable`], where another release wrote it or it is damaged.
pub fn decode_desk(
    version: u32,
    body: &str,
    wall_ms: i64,
    offset_minutes: i32,
) -> Result<(Reading, DeskEvent), Unreadable> {
    decode::<v1::desk_event::DeskEvent>(version, body, wall_ms, offset_minutes)
}

/// The desk without its owners, each of which is a fact of its own.
pub fn encode_standing_desk(desk: &Desk) -> String {
    write(&v1::desk::Desk::of(desk))
}

/// The desk, with no owners yet.
///
/// # Errors
/// [`Unreadable`], where another release wrote it or it is damaged.
pub fn decode_standing_desk(body: &str) -> Result<Desk, Unreadable> {
    Ok(read::<v1::desk::Desk>(body)?.back()?)
}

/// An owner's account.
pub fn encode_account(account: &Account) -> String {
    write(&v1::account::Account::of(account))
}

/// An owner's account.
///
/// # Errors
/// [`Unreadable`], where another release wrote it or it is damaged.
pub fn decode_account(body: &str) -> Result<Account, Unreadable> {
    Ok(read::<v1::account::Account>(body)?.back()?)
}

/// Something that is being made by hand.
pub fn encode_draft(draft: &Draft) -> String {
    write(&v1::draft::Draft::of(draft))
}

/// Something that is being made by hand.
///
/// # Errors
/// [`Unreadable`], where another release wrote it or it is damaged.
pub fn decode_draft(body: &str) -> Result<Draft, Unreadable> {
    Ok(read::<v1::draft::Draft>(body)?.back()?)
}
