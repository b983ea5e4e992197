//! History from elsewhere: sessions that were not lived in this store come in, each once, and can be
//! taken out again.

use std::collections::BTreeSet;

use barwright_domain::desk::{Desk, DeskEvent, MOST_CHANGES, Sent, SentChange, SentWhat};
use barwright_domain::history::Brought;
use barwright_domain::owners::Owner;
use barwright_domain::session::Reading;
use barwright_log::encode_desk;
use barwright_store::Event;

use super::super::came::{Identity, Known, here};
use super::super::codec::{self, DESK, VERSION};
use super::super::core::Core;
use super::super::sent;
use super::read::{self, File};
use super::take_in::{append, same};
use crate::facts::Arrived;
use crate::fault::Fault;
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
    file: File,
    at: &Reading,
    look_only: bool,
) -> Result<Joined, Fault> {
    // Plans are named by numbers of the log: those up to here are plans of both.
    let one_log = core.store.uuid() == file.head.store;
    let both = if one_log { same(core, &file.rows)? } else { 0 };
    let other = read::holding(file, core.held.locale)?;
    let (sessions, open) = sessions(&other, both)?;
    let changes = differing(core, &other.held.desk, both, at);
    let joined = bring(core, here(&core.store)?, sessions, at, look_only)?;
    Ok(Joined {
        open,
        differing: changes.as_ref().map_or(0, |sent| sent.changes.len() as u64),
        changes: changes.map(|sent| sent.write()),
        ..joined
    })
}

/// The sessions that are over in another store, each as it was lived, and how many are not over.
fn sessions(other: &Core, both: u64) -> Result<(Vec<Brought>, u64), Fault> {
    let mut known = Known::of(&other.store)?.sessions;
    let history = other.store.history()?;
    let (mut sessions, mut open) = (Vec::new(), 0);
    for mut row in history.last_sessions(None, u32::MAX)?.into_iter().rev() {
        if row.outcome.is_none() {
            open += 1;
            continue;
        }
        let Some((from, number, sum)) = known.remove(&row.session) else { continue };
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

/// Brings sessions into the history that has those of `here`: those that are new, all in one
/// transaction, or nothing.
pub(super) fn bring(
    core: &mut Core,
    mut here: BTreeSet<Identity>,
    sessions: Vec<Brought>,
    at: &Reading,
    look_only: bool,
) -> Result<Joined, Fault> {
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
    record(core, &events, at)?;
    Ok(Joined { taken: true, ..joined })
}

/// Takes what came out of the history again, and answers how many sessions that is.
pub(super) fn withdraw(core: &mut Core, came: Arrived, at: &Reading) -> Result<u64, Fault> {
    record(core, &[DeskEvent::SessionsWithdrawn { tap: came.tap }], at)?;
    Ok(came.sessions)
}

/// Records facts that change the history behind the last session.
fn record(core: &mut Core, events: &[DeskEvent], at: &Reading) -> Result<(), Fault> {
    let tap = core.store.next_seq();
    let mut before = core.store.last_sum();
    let rows: Vec<(Event, u32)> = (tap..)
        .zip(events)
        .map(|(seq, event)| {
            let (kind, body) = (DESK.to_owned(), encode_desk(at, event));
            let row = Event { seq, tap, kind, version: VERSION, at: codec::stamp(at), body };
            before = row.sum(before);
            (row, before)
        })
        .collect();
    append(core, None, &rows)
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
