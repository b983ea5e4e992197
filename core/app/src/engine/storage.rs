//! What the engine reads back from its store.

use barwright_domain::desk::Desk;
use barwright_domain::session::State;
use barwright_store::{Store, StoreError};

use super::codec::{self, DESK, SESSION};
use crate::contract::EngineError;
use crate::phrase::en;

/// Standing fact: the desk, whole.
pub(super) const DESK_KEY: &str = "desk";
/// Standing fact: the number of the event that began the last session.
pub(super) const SESSION_KEY: &str = "session";

/// The desk as it stands.
pub(super) fn desk(store: &Store) -> Result<Desk, EngineError> {
    match store.standing(DESK_KEY).map_err(|error| en::storage::error(&error))? {
        None => Ok(Desk::default()),
        Some(standing) => match serde_json::from_str(&standing.body) {
            Ok(desk) => Ok(desk),
            // The standing fact is only a fold of the log: make it again.
            Err(_) => desk_from_log(store),
        },
    }
}

/// The desk folded from the whole log.
fn desk_from_log(store: &Store) -> Result<Desk, EngineError> {
    let mut desk = Desk::default();
    store.each_event(1, |row| {
        if row.kind == DESK {
            match codec::desk(&row) {
                Ok(event) => desk.apply(row.seq, &event),
                Err(unreadable) => return Err(Failure::Unreadable(unreadable.seq)),
            }
        }
        Ok(())
    })?;
    Ok(desk)
}

/// The last session, replayed from its events.
pub(super) fn session(store: &Store) -> Result<State, EngineError> {
    let began = store.standing(SESSION_KEY).map_err(|error| en::storage::error(&error))?;
    let Some(from) = began.and_then(|standing| standing.body.parse::<u64>().ok()) else {
        return Ok(State::default());
    };
    let mut log = Vec::new();
    store.each_event(from, |row| {
        if row.kind == SESSION {
            match codec::session(&row) {
                Ok(stamped) => log.push(stamped),
                Err(unreadable) => return Err(Failure::Unreadable(unreadable.seq)),
            }
        }
        Ok(())
    })?;
    Ok(State::replay(log))
}

enum Failure {
    Store(StoreError),
    Unreadable(u64),
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<Failure> for EngineError {
    fn from(failure: Failure) -> Self {
        match failure {
            Failure::Store(error) => en::storage::error(&error),
            Failure::Unreadable(seq) => en::storage::unreadable_event(seq),
        }
    }
}
