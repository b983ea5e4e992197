//! History from elsewhere: sessions that were not lived in this store come in, each once, and can be
//! taken out again.

use std::collections::{BTreeMap, BTreeSet};
use std::io::BufRead;

use barwright_domain::desk::{Desk, DeskEvent, MOST_CHANGES, Sent, SentChange, SentWhat};
use barwright_domain::history::Brought;
use barwright_domain::owners::Owner;
use barwright_domain::session::Reading;
use barwright_log::encode_desk;
use barwright_store::{Event, StoreError};

use super::super::codec::{self, DESK, VERSION};
use super::super::core::Core;
use super::super::derive::Anew;
use super::super::sent;
use super::super::standing::Failure;
use super::out::begins;
use super::read::{self, File};
use super::take_in::same;
use crate::fault::{Fault, NotTaken, Refused};
use crate::gather;
use crate::phrase::Words;

/// What history from elsewhere comes to beside what is here.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Joined {
    /// Sessions that are new here.
    pub new: u64,
    /// Sessions that are here already: lived here, or brought before.
    pub same: u64,
    /// Sessions that are not over where they are from: they stay there.
    pub open: u64,
    /// Loads that stand otherwise there, as a file of changes: each can be looked at, and taken or
    /// left. None where all stand alike, or there is nothing to compare.
    pub changes: Option<String>,
    /// How many those are.
    pub differing: u64,
    /// They are in the history now; otherwise this was only a look.
    pub taken: bool,
}

impl Joined {
    /// It in the words of a language.
    #[must_use]
    pub fn said(&self, words: Words) -> String {
        let Self { new, same, open, taken, .. } = *self;
        words.records().joined(new, same, open, taken)
    }
}

/// The sessions of a file of the lossless form as history, whatever else it has: what was said at the
/// desk there stays there, and no owner of a load hears of it.
pub(super) fn bring_file(
    core: &mut Core,
    from: impl BufRead,
    at: &Reading,
    look_only: bool,
) -> Result<Joined, Fault> {
    let file = File::read(from)?;
    if !file.head.is_whole() {
        return Err(Refused::NotTaken(NotTaken::Part).into());
    }
    let store = file.head.store.clone();
    let rows: Vec<(Event, u32)> =
        file.rows.iter().map(|(row, sum)| (row.clone(), sum.unwrap_or_default())).collect();
    // Plans are named by numbers of the log: those up to here are plans of both.
    let both = if core.store.uuid() == store { same(core, &rows)? } else { 0 };
    let other = read::holding(file, core.held.locale)?;
    let (sessions, open) = sessions(&other, &store, &rows, both)?;
    let changes = differing(core, &other.held.desk, both, at);
    let mut joined = bring(core, sessions, at, look_only)?;
    joined.open = open;
    joined.differing = changes.as_ref().map_or(0, |sent| sent.changes.len() as u64);
    joined.changes = changes.map(|sent| sent.write());
    Ok(joined)
}

/// The sessions that are over in a store that holds these rows, and how many are not.
fn sessions(
    other: &Core,
    store: &str,
    rows: &[(Event, u32)],
    both: u64,
) -> Result<(Vec<Brought>, u64), Fault> {
    // Where each was lived: a session that was brought there keeps what it came with.
    let mut lived: BTreeMap<u64, (String, u64, u32)> = BTreeMap::new();
    for (row, sum) in rows {
        if begins(row) {
            lived.insert(row.seq, (store.to_owned(), row.seq, *sum));
        } else if let Some(brought) = brought(row)? {
            let (from, session, sum) = brought.identity();
            lived.insert(row.seq, (from.to_owned(), session, sum));
        }
    }
    let history = other.store.history()?;
    let (mut sessions, mut open) = (Vec::new(), 0);
    for mut row in history.last_sessions(None, u32::MAX)?.into_iter().rev() {
        if row.outcome.is_none() {
            open += 1;
            continue;
        }
        let Some((from, number, sum)) = lived.remove(&row.session) else { continue };
        let mut sets = history.sets_in(row.session)?;
        row.place = row.place.filter(|place| place.plan <= both);
        row.session = number;
        for set in &mut sets {
            set.key.session = number;
        }
        sessions.push(Brought { from, sum, row, sets });
    }
    Ok((sessions, open))
}

/// What an event brings, told without reading all of the others.
fn brought(row: &Event) -> Result<Option<Box<Brought>>, Failure> {
    if row.kind != DESK || !row.body.contains("\"session_brought\"") {
        return Ok(None);
    }
    match codec::desk(row)? {
        DeskEvent::SessionBrought(brought) => Ok(Some(brought)),
        _ => Ok(None),
    }
}

/// Brings sessions into the history: those that are new, all in one transaction, or nothing.
pub(super) fn bring(
    core: &mut Core,
    sessions: Vec<Brought>,
    at: &Reading,
    look_only: bool,
) -> Result<Joined, Fault> {
    let mut here = here(core)?;
    let mut joined = Joined::default();
    let mut events = Vec::new();
    for brought in sessions {
        let (from, session, sum) = brought.identity();
        if here.insert((from.to_owned(), session, sum)) {
            events.push(DeskEvent::SessionBrought(Box::new(brought)));
        } else {
            joined.same += 1;
        }
    }
    joined.new = events.len() as u64;
    if events.is_empty() || look_only {
        return Ok(joined);
    }
    append(core, events, at)?;
    Ok(Joined { taken: true, ..joined })
}

/// Takes the sessions of the last coming that is still there out of the history again, and answers
/// how many those are; none where nothing was brought.
pub(super) fn withdraw(core: &mut Core, at: &Reading) -> Result<u64, Fault> {
    let mut taps: BTreeMap<u64, u64> = BTreeMap::new();
    each_coming(core, |tap, coming| match coming {
        Coming::Brought(_) => *taps.entry(tap).or_default() += 1,
        Coming::Withdrawn(tap) => {
            taps.remove(&tap);
        }
    })?;
    let Some((tap, count)) = taps.pop_last() else { return Ok(0) };
    append(core, vec![DeskEvent::SessionsWithdrawn { tap }], at)?;
    Ok(count)
}

/// What tells the sessions apart that are in the history: those that were lived here, and those that
/// were brought and not taken out again.
pub(super) fn here(core: &Core) -> Result<BTreeSet<(String, u64, u32)>, Fault> {
    let store = core.store.uuid();
    let (mut here, mut before) = (BTreeSet::new(), 0);
    core.store.each_event(1, |row| {
        before = row.sum(before);
        if begins(&row) {
            here.insert((store.to_owned(), row.seq, before));
        }
        Ok::<(), StoreError>(())
    })?;
    let mut taps: BTreeMap<u64, Vec<(String, u64, u32)>> = BTreeMap::new();
    each_coming(core, |tap, coming| match coming {
        Coming::Brought(brought) => {
            let (from, session, sum) = brought.identity();
            taps.entry(tap).or_default().push((from.to_owned(), session, sum));
        }
        Coming::Withdrawn(tap) => {
            taps.remove(&tap);
        }
    })?;
    here.extend(taps.into_values().flatten());
    Ok(here)
}

/// What came into the history from elsewhere, or went.
enum Coming {
    Brought(Box<Brought>),
    Withdrawn(u64),
}

fn each_coming(core: &Core, mut each: impl FnMut(u64, Coming)) -> Result<(), Fault> {
    core.store.each_event(1, |row| {
        if let Some(brought) = brought(&row)? {
            each(row.tap, Coming::Brought(brought));
        } else if row.kind == DESK
            && row.body.contains("\"sessions_withdrawn\"")
            && let DeskEvent::SessionsWithdrawn { tap } = codec::desk(&row)?
        {
            each(row.tap, Coming::Withdrawn(tap));
        }
        Ok::<(), Failure>(())
    })?;
    Ok(())
}

/// Appends facts that change the history behind the last session, and makes what is derived anew, in
/// one transaction.
fn append(core: &mut Core, events: Vec<DeskEvent>, at: &Reading) -> Result<(), Fault> {
    let tap = core.store.next_seq();
    let mut before = core.store.last_sum();
    let rows: Vec<(Event, u32)> = (tap..)
        .zip(&events)
        .map(|(seq, event)| {
            let (kind, body) = (DESK.to_owned(), encode_desk(at, event));
            let row = Event { seq, tap, kind, version: VERSION, at: codec::stamp(at), body };
            before = row.sum(before);
            (row, before)
        })
        .collect();
    let mut anew = Anew::of(&core.store)?;
    for (row, _) in &rows {
        anew.look_ahead(row)?;
    }
    core.store.take_in(None, &rows, &mut anew)?;
    core.rebuild()
}

/// Loads that stand otherwise there, each decided on what stands here: maxes, and working loads of a
/// plan that both have.
fn differing(core: &Core, there: &Desk, both: u64, at: &Reading) -> Option<Sent> {
    let held = &core.held;
    let here = held.desk_now();
    let mut whats = Vec::new();
    for (owner, _) in there.owners.iter() {
        if let Owner::Max(exercise) = owner
            && held.catalogue.get(exercise).is_some()
            && let Some((to, ..)) = there.owners.max(exercise).now
        {
            let was = here.owners.max(exercise).now.map(|(mass, ..)| mass);
            if was != Some(to) {
                whats.push(SentWhat::Max { exercise: exercise.clone(), was, to });
            }
        }
    }
    let of_both = there.plan.as_ref().is_some_and(|plan| plan.seq <= both)
        && there.plan.as_ref().map(|plan| plan.seq) == here.plan.as_ref().map(|plan| plan.seq);
    let tracks = if of_both { gather::tracks(held) } else { Vec::new() };
    for track in tracks {
        let Owner::Track(id) = track.owner else { continue };
        if let Some(to) = there.owners.track(&track.owner).load
            && to != track.load
        {
            let (exercise, was) = (track.exercise, track.load);
            whats.push(SentWhat::Load { track: id, exercise, was, to });
        }
    }
    whats.truncate(MOST_CHANGES);
    if whats.is_empty() {
        return None;
    }
    let changes = (1..).zip(whats);
    let changes = changes.map(|(nth, what): (u32, _)| SentChange { id: nth.to_string(), what });
    let mut sent = Sent {
        id: String::new(),
        lifter: held.locale.words().records().other_records().to_owned(),
        store: core.store.uuid().to_owned(),
        entry: core.store.last_seq().max(1),
        day: at.local_day(),
        changes: changes.collect(),
    };
    sent::name(&mut sent);
    Some(sent)
}
