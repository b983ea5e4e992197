//! Rows from a session as it stands, and what changes in them from tap to tap.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::row::{DonePart, DoneSet, MuscleTally, Outcome, SessionRow, SetKey};
use crate::catalogue::{Catalogue, Muscle};
use crate::quantity::{Reps, Reserve};
use crate::session::{EntryId, EntryRun, Passed, Run, SetId, SetKind, SetRun};
use crate::volume::{Ledger, Set, Tally};

/// A change to the rows on disk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Change {
    /// This set stands so, whether it was there before or not.
    PutSet(DoneSet),
    /// This set was taken back.
    RemoveSet(SetKey),
    /// This session stands so.
    PutSession(SessionRow),
    /// This session was taken back, by its name.
    RemoveSession(u64),
}

/// The rows of one session.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Rows {
    /// The session; none where there is none.
    pub session: Option<SessionRow>,
    /// Its sets, those that are over.
    pub sets: BTreeMap<SetId, Arc<DoneSet>>,
    /// The exercises that the sets are of, as they stood.
    of: BTreeMap<EntryId, Arc<EntryRun>>,
}

impl Rows {
    /// They are of another date.
    pub fn date(&mut self, day: i32) {
        if let Some(row) = &mut self.session {
            row.day = day;
        }
        for set in self.sets.values_mut() {
            Arc::make_mut(set).day = day;
        }
    }

    /// What must change on disk, where these are, for `next` to be there. Rows of another session
    /// than `next` is of stay as they are.
    pub fn changes_to(&self, next: &Self) -> Vec<Change> {
        let mut changes = Vec::new();
        let name = |rows: &Self| rows.session.as_ref().map(|row| row.session);
        let same = name(self) == name(next) || next.session.is_none();
        let before = |id| self.sets.get(id).filter(|_| same);
        for (id, set) in &next.sets {
            if before(id) != Some(set) {
                changes.push(Change::PutSet(DoneSet::clone(set)));
            }
        }
        if same {
            let gone = self.sets.iter().filter(|(id, _)| !next.sets.contains_key(id));
            changes.extend(gone.map(|(_, set)| Change::RemoveSet(set.key)));
        }
        match (&self.session, &next.session) {
            (before, Some(row)) if before.as_ref() != Some(row) => {
                changes.push(Change::PutSession(row.clone()));
            }
            (Some(row), None) => changes.push(Change::RemoveSession(row.session)),
            _ => {}
        }
        changes
    }
}

/// The rows of a session as it stands. Muscles come from `catalogue` (with the plan's own
/// exercises); sets are hard with `easiest` or fewer left.
pub fn rows(run: Option<&Run>, catalogue: &Catalogue, easiest: Reserve) -> Rows {
    rows_after(&Rows::default(), run, catalogue, easiest)
}

/// As [`rows`], where `before` are the rows of an earlier moment: an exercise in which nothing
/// happened since has the same ones again.
pub fn rows_after(
    before: &Rows,
    run: Option<&Run>,
    catalogue: &Catalogue,
    easiest: Reserve,
) -> Rows {
    let Some(run) = run else { return Rows::default() };
    let day = run.day;
    // What is over follows from the exercise alone while the session runs.
    let goes_on = run.finished.is_none()
        && before.session.as_ref().is_some_and(|row| {
            (row.session, row.day, row.outcome.is_none()) == (run.session, day, true)
        });
    let mut sets = BTreeMap::new();
    for (id, entry) in &run.entries {
        if goes_on && before.of.get(id).is_some_and(|was| Arc::ptr_eq(was, entry)) {
            let all = SetId { entry: *id, set: 0 }..=SetId { entry: *id, set: u16::MAX };
            sets.extend(before.sets.range(all).map(|(id, set)| (*id, Arc::clone(set))));
            continue;
        }
        for (at, set) in (0_u16..).zip(&entry.sets) {
            let over = !set.pending()
                || entry.skipped
                || entry.swapped_for.is_some()
                || run.finished.is_some();
            let id = SetId { entry: *id, set: at };
            let key = SetKey { session: run.session, set: id };
            if let Some(done) = over.then(|| done(key, day, entry, set)).flatten() {
                sets.insert(id, Arc::new(done));
            }
        }
    }
    let outcome = run.finished.as_ref().map(|finished| {
        let (owed, done) = owed_and_done(run);
        // How long it took to copy says nothing of how long it took.
        let seconds = if run.paper { 0 } else { Passed::between(&run.began, finished).ms() / 1000 };
        Outcome {
            seconds: u32::try_from(seconds).unwrap_or(u32::MAX),
            owed,
            done,
            volume: session_volume(sets.values().map(AsRef::as_ref), catalogue, easiest),
        }
    });
    let session = SessionRow {
        session: run.session,
        day,
        title: run.sheet.title.clone(),
        place: run.sheet.place.clone(),
        week_kind: run.sheet.week_kind,
        outcome,
    };
    Rows { session: Some(session), sets, of: run.entries.clone() }
}

/// Hard sets of each muscle among the sets of one session: for a running one, what its row will
/// hold when it ends now.
pub fn session_volume<'a>(
    sets: impl IntoIterator<Item = &'a DoneSet>,
    catalogue: &Catalogue,
    easiest: Reserve,
) -> Vec<MuscleTally> {
    // Speed work, jumps and throws are no hard sets.
    let hard = |set: &&DoneSet| set.is_work() && set.kind != SetKind::Speed;
    let work = sets.into_iter().filter(hard).filter_map(|set| {
        Some(Set {
            week: 0,
            exercise: catalogue.get(&set.exercise)?,
            side: set.side,
            reps: set.amount().reps(),
            closeness: set.closeness(),
        })
    });
    let ledger = Ledger::of(easiest, work);
    let tallies = Muscle::ALL
        .iter()
        .map(|muscle| MuscleTally { muscle: *muscle, tally: ledger.week(0, *muscle) });
    tallies.filter(|row| row.tally != Tally::default()).collect()
}

fn done(key: SetKey, day: i32, entry: &EntryRun, set: &SetRun) -> Option<DoneSet> {
    let first = &set.parts.first()?.done;
    let last = &set.parts.last()?.done;
    let mut kit = set.kit.clone();
    kit.sort_unstable();
    kit.dedup();
    Some(DoneSet {
        key,
        day,
        exercise: entry.entry.exercise.clone(),
        kind: set.call.kind,
        row: set.call.row,
        round: set.call.round,
        side: set.call.side,
        asked: set.call.how_many,
        target: set.call.effort,
        meant: first.load.meant,
        figure: first.load.figure,
        counting: first.load.counting,
        moved: first.load.moved(),
        bands: first.load.set_up.clone(),
        technique: set.call.manner.technique.clone(),
        set_up: entry.set_up.clone(),
        kit,
        parts: set
            .parts
            .iter()
            .map(|part| DonePart {
                amount: part.done.amount,
                figure: part.done.load.figure,
                slowing: part.slowing(),
            })
            .collect(),
        left: last.left,
        helped: set.parts.iter().fold(0, |sum: Reps, part| sum.saturating_add(part.done.helped)),
        ending: last.ending,
    })
}

/// Work sets owed and done: what took an optional or a swapped exercise's place counts for itself.
fn owed_and_done(run: &Run) -> (u16, u16) {
    let work = run
        .entries
        .values()
        .filter(|entry| !entry.entry.optional)
        .flat_map(|entry| entry.sets.iter().map(move |set| (entry, set)))
        .filter(|(entry, set)| {
            set.call.kind != SetKind::Ramp && (entry.swapped_for.is_none() || set.begun())
        });
    let count = |number: usize| u16::try_from(number).unwrap_or(u16::MAX);
    let (mut owed, mut done) = (0, 0);
    for (_, set) in work {
        owed += 1;
        done += usize::from(set.begun());
    }
    (count(owed), count(done))
}
