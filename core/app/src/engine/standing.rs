//! Standing facts: what the engine reads back when it opens, and what of them a tap changes.

use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::desk::{Desk, Draft, DraftOf};
use barwright_domain::owners::{Account, Owner, RowOwner};
use barwright_domain::session::State;
use barwright_log::form::Wrong;
use barwright_log::{
    decode_account, decode_draft, decode_standing_desk, encode_account, encode_draft,
    encode_standing_desk,
};
use barwright_store::{Standing, StandingFacts, Store, StoreError};

use super::codec::{self, SESSION, Unreadable};
use crate::fault::Fault;

/// The desk, its owners apart.
pub(super) const DESK_KEY: &str = "desk";
/// An owner's account each, by the owner's name.
const OWNER_KEYS: &str = "owner:";
/// Owners of exercises: a sheet may ask for any of them.
const OF_EXERCISES: [&str; 3] = ["owner:max:", "owner:loose:", "owner:care:"];
/// Those of rows, as many as there are rows in all the plans that are kept.
const TRACK_KEYS: &str = "owner:track:";
/// What is being made by hand, each by what it is of.
const DRAFT_KEYS: &str = "draft:";
/// Those that were dropped or taken up last.
const DROPPED_KEYS: &str = "dropped:";
/// What is wrong where an account was written by another release.
const UNREAD: &str = "an owner that is not read";
/// The number of the event that began the last session.
pub(super) const SESSION_KEY: &str = "session";

/// The desk as it stands with a session; none where another release wrote it in a way that is not
/// read here. What carries the loads of plans that are only kept stays on disk until one is taken up.
pub(super) fn desk(store: &Store, state: &State) -> Result<Option<Desk>, Fault> {
    let facts = store.standing()?;
    let mut desk = match facts.get(DESK_KEY)? {
        // Nothing was arranged yet but what owners have.
        None => Desk::default(),
        Some(standing) => match decode_standing_desk(&standing.body) {
            Ok(desk) => desk,
            Err(_) => return Ok(None),
        },
    };
    for keys in [DRAFT_KEYS, DROPPED_KEYS] {
        for of in DraftOf::ALL {
            let Some(standing) = facts.get(&draft_key(keys, of))? else { continue };
            let Ok(draft) = decode_draft(&standing.body) else { return Ok(None) };
            let into = if keys == DRAFT_KEYS { &mut desk.drafts } else { &mut desk.dropped };
            into.insert(of, draft);
        }
    }
    for keys in OF_EXERCISES {
        for (key, standing) in facts.beginning(keys)? {
            let owner = key.strip_prefix(OWNER_KEYS).and_then(Owner::of_name);
            let Some((owner, account)) = owner.zip(account(&standing)) else { return Ok(None) };
            desk.owners.put(owner, account);
        }
    }
    let on = desk.plan.iter().flat_map(|plan| &plan.rows).map(|row| Owner::Track(row.track));
    // The last session may be decided again, whatever plan it was of.
    let entries = state.run().into_iter().flat_map(|run| run.entries.values());
    let last = entries.flat_map(|entry| &entry.entry.terms).map(|terms| terms.track.clone());
    let tracks: BTreeSet<Owner> = on.chain(last).collect();
    let Some(accounts) = read(&facts, tracks)? else { return Ok(None) };
    for (owner, account) in accounts {
        desk.owners.put(owner, account);
    }
    Ok(Some(desk))
}

/// What carries the loads of a plan that was kept, and is not held: read before it is taken up.
pub(super) fn of_kept(
    store: &Store,
    desk: &Desk,
    plan: u64,
) -> Result<Vec<(Owner, Account)>, Fault> {
    let kept = desk.kept.iter().find(|kept| kept.seq == plan);
    let rows: &[RowOwner] = kept.map(|kept| kept.rows.as_slice()).unwrap_or_default();
    let tracks: BTreeSet<Owner> = rows.iter().map(|row| Owner::Track(row.track)).collect();
    let there = tracks.into_iter().filter(|owner| desk.owners.account(owner).is_none()).collect();
    read(&store.standing()?, there)?.ok_or(Fault::Broken(UNREAD))
}

/// What carries the loads of rows that are not held, of whatever plan: read before what any of them
/// was told is changed.
pub(super) fn not_held(store: &Store, desk: &Desk) -> Result<Vec<(Owner, Account)>, Fault> {
    let facts = store.standing()?;
    let owners = facts.keys(TRACK_KEYS)?.into_iter();
    let owners = owners.filter_map(|key| Owner::of_name(key.strip_prefix(OWNER_KEYS)?));
    let there = owners.filter(|owner| desk.owners.account(owner).is_none()).collect();
    read(&facts, there)?.ok_or(Fault::Broken(UNREAD))
}

/// The accounts of those of these owners that have one; none where one can't be read here.
fn read(
    facts: &StandingFacts<'_>,
    owners: BTreeSet<Owner>,
) -> Result<Option<Vec<(Owner, Account)>>, StoreError> {
    let mut accounts = Vec::new();
    for owner in owners {
        if let Some(standing) = facts.get(&key(&owner))? {
            let Some(account) = account(&standing) else { return Ok(None) };
            accounts.push((owner, account));
        }
    }
    Ok(Some(accounts))
}

fn account(standing: &Standing) -> Option<Account> {
    decode_account(&standing.body).ok()
}

fn key(owner: &Owner) -> String {
    format!("{OWNER_KEYS}{}", owner.name())
}

fn draft_key(keys: &str, of: DraftOf) -> String {
    format!("{keys}{}", of.name())
}

/// Drafts as they stand, each kind with its keys.
fn drafts(desk: &Desk) -> [(&'static str, &BTreeMap<DraftOf, Draft>); 2] {
    [(DRAFT_KEYS, &desk.drafts), (DROPPED_KEYS, &desk.dropped)]
}

/// The standing facts that are another one's where a desk has become so: each owner has its own, so
/// that a word to one of them writes no other, and not the plan's text.
pub(super) fn written(was: &Desk, is: &Desk) -> Vec<(String, String)> {
    let mut changes = Vec::new();
    let body = encode_standing_desk(is);
    if body != encode_standing_desk(was) {
        changes.push((DESK_KEY.to_owned(), body));
    }
    for ((keys, was), (_, is)) in drafts(was).into_iter().zip(drafts(is)) {
        let new = is.iter().filter(|(of, draft)| was.get(of) != Some(draft));
        changes.extend(new.map(|(of, draft)| (draft_key(keys, *of), encode_draft(draft))));
    }
    for (owner, account) in is.owners.iter() {
        if was.owners.account(owner) != Some(account) {
            changes.push((key(owner), encode_account(account)));
        }
    }
    changes
}

/// The standing facts that are gone where a desk has become another: with a plan that is forgotten
/// goes what carried its loads, whether it was read or not.
pub(super) fn gone(store: &Store, was: &Desk, is: &Desk) -> Result<Vec<String>, StoreError> {
    let mut gone = Vec::new();
    for ((keys, was), (_, is)) in drafts(was).into_iter().zip(drafts(is)) {
        let none = was.keys().filter(|of| !is.contains_key(of));
        gone.extend(none.map(|of| draft_key(keys, *of)));
    }
    let known = |seq: u64| {
        is.kept.iter().any(|kept| kept.seq == seq) || is.plan.iter().any(|on| on.seq == seq)
    };
    if was.kept.iter().all(|kept| known(kept.seq)) {
        return Ok(gone);
    }
    let kept = is.kept.iter().flat_map(|kept| &kept.rows);
    let rows = is.plan.iter().flat_map(|plan| &plan.rows).chain(kept);
    let named: BTreeSet<String> = rows.map(|row| key(&Owner::Track(row.track))).collect();
    let keys = store.standing()?.keys(TRACK_KEYS)?;
    gone.extend(keys.into_iter().filter(|key| !named.contains(key)));
    Ok(gone)
}

/// The last session, replayed from its events.
pub(super) fn session(store: &Store) -> Result<State, Fault> {
    let began = store.standing()?.get(SESSION_KEY)?;
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
    /// A file that is written to did not take it.
    Written(Wrong),
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
            Failure::Written(wrong) => wrong.into(),
        }
    }
}
