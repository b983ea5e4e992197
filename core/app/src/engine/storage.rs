//! What the engine reads back from its store.

use barwright_domain::desk::Desk;
use barwright_domain::owners::Owner;
use barwright_domain::session::State;
use barwright_log::{decode_account, decode_standing_desk, encode_account, encode_standing_desk};
use barwright_store::{Store, StoreError};

use super::codec::{self, SESSION, Unreadable};
use super::derive::Anew;
use crate::fault::Fault;

/// Standing fact: the desk, whole.
pub(super) const DESK_KEY: &str = "desk";
/// Standing facts: an owner's account each, by the owner's name.
pub(super) const OWNER_KEYS: &str = "owner:";
/// Standing fact: the number of the event that began the last session.
pub(super) const SESSION_KEY: &str = "session";

/// Makes what is derived anew, where this release derives otherwise than the one that wrote it.
pub(super) fn bring_up_to_date(store: &mut Store) -> Result<(), Fault> {
    if !store.history_is_current() || read_desk(store)?.is_none() {
        derive_anew(store)?;
    }
    Ok(())
}

/// Makes what is derived anew, from the whole log.
pub(crate) fn derive_anew(store: &mut Store) -> Result<(), Fault> {
    Ok(derive_in(store)?)
}

/// As [`derive_anew`], with the error as it is.
pub(crate) fn derive_in(store: &mut Store) -> Result<(), Failure> {
    store.rebuild(&mut Anew::new())
}

/// The desk as it stands.
pub(super) fn desk(store: &Store) -> Result<Desk, Fault> {
    Ok(read_desk(store)?.unwrap_or_default())
}

/// The desk as it stands; none where another release wrote it in a way that is not read here.
fn read_desk(store: &Store) -> Result<Option<Desk>, Fault> {
    let mut desk = match store.standing(DESK_KEY)? {
        // Nothing was arranged yet but what owners have.
        None => Desk::default(),
        Some(standing) => match decode_standing_desk(&standing.body) {
            Ok(desk) => desk,
            Err(_) => return Ok(None),
        },
    };
    for (key, standing) in store.standing_with_prefix(OWNER_KEYS)? {
        let owner = key.strip_prefix(OWNER_KEYS).and_then(Owner::of_name);
        let Some((owner, Ok(account))) = owner.zip(Some(decode_account(&standing.body))) else {
            return Ok(None);
        };
        desk.owners.put(owner, account);
    }
    Ok(Some(desk))
}

/// The standing facts that differ where a desk has become another one: each owner has its own, so
/// that a word to one of them writes no other, and not the plan's text.
pub(super) fn desk_changes(was: &Desk, is: &Desk) -> Vec<(String, Option<String>)> {
    let mut changes = Vec::new();
    let body = encode_standing_desk(is);
    if body != encode_standing_desk(was) {
        changes.push((DESK_KEY.to_owned(), Some(body)));
    }
    let key = |owner: &Owner| format!("{OWNER_KEYS}{}", owner.name());
    for (owner, account) in is.owners.iter() {
        if was.owners.account(owner) != Some(account) {
            changes.push((key(owner), Some(encode_account(account))));
        }
    }
    let gone = was.owners.iter().filter(|(owner, _)| is.owners.account(owner).is_none());
    changes.extend(gone.map(|(owner, _)| (key(owner), None)));
    changes
}

/// The last session, replayed from its events.
pub(super) fn session(store: &Store) -> Result<State, Fault> {
    let began = store.standing(SESSION_KEY)?;
    let Some(from) = began.and_then(|standing| standing.body.parse::<u64>().ok()) else {
        return Ok(State::default());
    };
    let mut log = Vec::new();
    store.each_event(from, |row| {
        if row.kind == SESSION {
            log.push(codec::session(&row)?);
        }
        Ok::<(), Failure>(())
    })?;
    Ok(State::replay(log))
}

/// Why the log could not be folded.
pub(crate) enum Failure {
    /// The store.
    Store(StoreError),
    /// An event that this release can't read, by its number.
    Unreadable(u64),
}

impl From<Unreadable> for Failure {
    fn from(unreadable: Unreadable) -> Self {
        Self::Unreadable(unreadable.seq)
    }
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<Failure> for Fault {
    fn from(failure: Failure) -> Self {
        match failure {
            Failure::Store(error) => Self::Store(error),
            Failure::Unreadable(seq) => Self::UnreadableEvent(seq),
        }
    }
}
