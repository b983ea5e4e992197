//! What is derived from the log, made anew from all of it: after an update that derives more, and
//! in a file that was read from a damaged one.

use barwright_domain::catalogue::Catalogue;
use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::history::{Brought, Change, Rows};
use barwright_domain::plan::Plan;
use barwright_domain::session::{Event, State};
use barwright_store::{ABSENT, AtEnd, Derive, Event as Row, Store};

use super::codec::{self, DESK, SESSION};
use super::standing::{self, Failure, SESSION_KEY};
use crate::facts::{catalogue_of, read_plan, rows_of};
use crate::fault::Fault;

/// What stands with a store, made anew first where this release derives otherwise than the one that
/// wrote it.
pub(super) fn up_to_date(store: &mut Store) -> Result<(Desk, State), Fault> {
    let stands = |store: &Store| -> Result<_, Fault> {
        let state = standing::session(store)?;
        Ok((standing::desk(store, &state)?, state))
    };
    if store.history_is_current() {
        match stands(store) {
            Ok((Some(desk), state)) => return Ok((desk, state)),
            Ok((None, _)) => {}
            // Found when it was read.
            Err(_) if store.is_spoiled() => {}
            Err(fault) => return Err(fault),
        }
    }
    derive_anew(store)?;
    let (desk, state) = stands(store)?;
    Ok((desk.unwrap_or_default(), state))
}

/// Makes what is derived anew, from the whole log.
pub(crate) fn derive_anew(store: &mut Store) -> Result<(), Fault> {
    Ok(derive_in(store)?)
}

/// As [`derive_anew`], with the error as it is.
pub(super) fn derive_in(store: &mut Store) -> Result<(), Failure> {
    let mut anew = Anew::of(store)?;
    store.rebuild(&mut anew)
}

/// Folds the whole log as the taps did one by one.
#[derive(Debug)]
pub(super) struct Anew {
    desk: Desk,
    state: State,
    /// The number of the event that began the session of `state`.
    began: Option<u64>,
    /// Rows of that session that were answered already.
    rows: Rows,
    /// The session went on since.
    moved: bool,
    plan: Option<Plan>,
    catalogue: Catalogue,
    /// Sessions that were dated otherwise once they were past, with their last date.
    dated: BTreeMap<u64, i32>,
    /// Taps whose sessions were brought from elsewhere and taken out again.
    withdrawn: BTreeSet<u64>,
    /// How the desk stands at the end, where that is told and does not follow from the log.
    stands: Option<Desk>,
}

impl Anew {
    /// For the log of a store.
    pub(super) fn of(store: &Store) -> Result<Self, Failure> {
        let mut anew = Self::nothing();
        store.each_event(1, |row| anew.look_ahead(&row))?;
        Ok(anew)
    }

    /// For rows that a log is to have.
    pub(super) fn of_rows<'a>(rows: impl Iterator<Item = &'a Row>) -> Result<Self, Failure> {
        let mut anew = Self::nothing();
        for row in rows {
            anew.look_ahead(row)?;
        }
        Ok(anew)
    }

    /// Notes what of a later event has to be known before its turn.
    pub(super) fn look_ahead(&mut self, row: &Row) -> Result<(), Failure> {
        // Few facts of the desk are these: the others are read when their turn comes.
        let may = row.kind == DESK
            && ["session_dated", "sessions_withdrawn"].iter().any(|name| row.body.contains(name));
        if may {
            match codec::desk(row)? {
                DeskEvent::SessionDated { session, day } => {
                    self.dated.insert(session, day);
                }
                DeskEvent::SessionsWithdrawn { tap } => {
                    self.withdrawn.insert(tap);
                }
                _ => {}
            }
        }
        Ok(())
    }

    /// What stands at the end is this, where it is told: the log has only a part of what led to it.
    pub(super) fn stands_as(&mut self, desk: Option<Desk>) {
        self.stands = desk;
    }

    fn nothing() -> Self {
        Self {
            dated: BTreeMap::new(),
            withdrawn: BTreeSet::new(),
            stands: None,
            desk: Desk::default(),
            state: State::default(),
            began: None,
            rows: Rows::default(),
            moved: false,
            plan: None,
            catalogue: Catalogue::builtin(),
        }
    }

    /// The rows of a session that was brought, unless it was taken out again.
    fn brought(&self, row: &Row, brought: Brought) -> Vec<Change> {
        if self.withdrawn.contains(&row.tap) {
            return Vec::new();
        }
        let day = self.dated.get(&row.seq).copied().unwrap_or(brought.row.day);
        let (session, sets) = brought.rows(row.seq, day);
        sets.into_iter().map(Change::PutSet).chain([Change::PutSession(session)]).collect()
    }

    /// Changes that bring the rows to where the session stands.
    fn caught_up(&mut self) -> Vec<Change> {
        if !std::mem::take(&mut self.moved) {
            return Vec::new();
        }
        let mut next = rows_of(&self.rows, &self.state, self.plan.as_ref(), &self.catalogue);
        let session = next.session.as_ref().map(|row| row.session);
        if let Some(day) = session.and_then(|session| self.dated.get(&session)) {
            next.date(*day);
        }
        let changes = self.rows.changes_to(&next);
        self.rows = next;
        changes
    }
}

impl Derive for Anew {
    type Error = Failure;

    fn event(&mut self, row: Row) -> Result<Vec<Change>, Failure> {
        let mut changes = Vec::new();
        match row.kind.as_str() {
            SESSION => {
                let stamped = codec::session(&row)?;
                if let Event::Began { .. } = stamped.event {
                    changes = self.caught_up();
                    self.rows = Rows::default();
                    if let Some(run) = self.state.run() {
                        self.desk.settle(run);
                    }
                    self.began = Some(row.seq);
                }
                self.state.apply(stamped);
                self.moved = true;
            }
            DESK => {
                let event = codec::desk(&row)?;
                if event.changes_plan() {
                    // What was done under the old plan is counted by it.
                    changes = self.caught_up();
                }
                self.desk.apply(row.seq, &event);
                if let DeskEvent::SessionBrought(brought) = event {
                    return Ok(self.brought(&row, *brought));
                }
                if event.changes_plan() {
                    let known = self.desk.catalogue();
                    self.plan = read_plan(&self.desk, &known);
                    self.catalogue = catalogue_of(self.plan.as_ref(), &known);
                }
            }
            ABSENT => {}
            _ => return Err(Failure::Unreadable(row.seq)),
        }
        Ok(changes)
    }

    fn end(&mut self) -> Result<AtEnd, Failure> {
        let changes = self.caught_up();
        let desk = self.stands.as_ref().unwrap_or(&self.desk);
        // What nothing was arranged of yet, no tap has written.
        let mut standing = standing::written(&Desk::default(), desk);
        standing.extend(self.began.map(|began| (SESSION_KEY.to_owned(), began.to_string())));
        Ok(AtEnd { changes, standing })
    }
}

#[cfg(test)]
mod tests {
    use barwright_domain::call::Amount;
    use barwright_domain::quantity::{Mass, Reserve};
    use barwright_domain::session::{Command, EntryId, Reading, RecordedSet, SetId};
    use barwright_store::Store;

    use super::super::core::Core;
    use super::super::intents::{Appends, appends, begin};
    use super::*;
    use crate::contract::Intent;
    use crate::locale::Locale;

    /// A plan with an exercise of its own, whose muscles only its own catalogue knows.
    const OWN: &str = r#"
name = "Winter base"
weeks = 4

[[exercise]]
name = "Heels-raised squat"
like = "Front squat"

[[session]]
name = "Legs and pull"

[[session.exercise]]
name = "Heels-raised squat"
sets = 3
reps = 5
load = "60 kg"

[[session.exercise]]
name = "Pull-up"
sets = 2
reps = "6-10"
load = "body"
"#;

    /// Another without it.
    const OTHER: &str = r#"
name = "Spring"
weeks = 4

[[session]]
name = "Pull"

[[session.exercise]]
name = "Pull-up"
sets = 2
reps = "6-10"
load = "body"
"#;

    fn at(minute: i64) -> Reading {
        Reading {
            wall_ms: 1_795_500_000_000 + minute * 60_000,
            offset_minutes: 60,
            boot_ms: None,
            boot_id: None,
        }
    }

    /// All that is derived, as it is read.
    fn derived(core: &Core) -> String {
        let store = &core.store;
        let standing: Vec<_> = store
            .standing()
            .and_then(|facts| facts.beginning(""))
            .unwrap()
            .into_iter()
            .map(|(key, standing)| (key, standing.body))
            .collect();
        let history = store.history().unwrap();
        let sessions = history.last_sessions(None, 100).unwrap();
        let sets: Vec<_> =
            sessions.iter().map(|row| history.sets_in(row.session).unwrap()).collect();
        let done = history.exercises_done().unwrap();
        let records: Vec<_> = done.iter().map(|(slug, _)| history.records(slug).unwrap()).collect();
        let volume = history.volume(0..=i32::MAX).unwrap();
        format!("{standing:?}\n{sessions:?}\n{sets:?}\n{done:?}\n{records:?}\n{volume:?}")
    }

    /// A step of the test's script.
    #[expect(clippy::large_enum_variant, reason = "a handful in one test")]
    enum Step {
        Adopt(&'static str),
        Begin,
        Do(Command),
    }

    fn take(core: &mut Core, step: &Step, at: &Reading) {
        let command = match step {
            Step::Adopt(text) => {
                let intent = Intent::adopt(*text);
                let Appends::Desk(events) = appends(&core.store, &core.held, intent, at).unwrap()
                else {
                    panic!("a plan is a fact of the desk")
                };
                return core.record_desk(events, at).unwrap();
            }
            Step::Begin => begin(&core.store, &core.held, None, None, at).unwrap(),
            Step::Do(command) => command.clone(),
        };
        let events = barwright_domain::session::decide(&core.held.state, &command, at).unwrap();
        core.record_session(events, at).unwrap();
    }

    #[test]
    fn the_log_gives_the_rows_that_the_taps_gave() {
        let mut core = Core::load(Store::in_memory().unwrap(), Locale::read("en")).unwrap();
        let reps = |reps| {
            Step::Do(Command::Record(RecordedSet {
                amount: Some(Amount::Reps(reps)),
                left: Reserve::from_halves(4),
                ..RecordedSet::default()
            }))
        };
        let correct = Step::Do(Command::Correct {
            set: SetId { entry: EntryId(0), set: 1 },
            part: 0,
            to: RecordedSet { amount: Some(Amount::Reps(4)), ..RecordedSet::default() },
            sure: false,
        });
        let set_up = vec!["pins 7".into()];
        let note = Step::Do(Command::NoteSetUp { entry: EntryId(0), set_up });
        let [undo, redo, finish] =
            [|| Step::Do(Command::Undo), || Step::Do(Command::Redo), || Step::Do(Command::Finish)];
        let mass = Mass::from_grams(80_000).unwrap();
        core.record_desk(vec![DeskEvent::BodyMassKept { mass, day: 20_781 }], &at(0)).unwrap();
        let steps = [
            vec![Step::Adopt(OWN), Step::Begin, reps(8), reps(9), undo(), redo(), reps(7), correct],
            (0..4).map(|_| reps(5)).collect(),
            vec![note, undo(), redo(), finish(), undo(), undo(), redo(), finish()],
            // From here on the old plan's exercise is unknown; what it counted for stays.
            vec![Step::Adopt(OTHER), Step::Begin, reps(10), undo(), undo(), redo(), redo()],
            vec![reps(11), finish(), Step::Begin, reps(12)],
        ];
        for (minute, step) in (1..).zip(steps.iter().flatten()) {
            take(&mut core, step, &at(minute * 3));
            let by_taps = derived(&core);
            core.store
                .rebuild(&mut Anew::of(&core.store).map_err(|_| "unreadable").unwrap())
                .map_err(|_| "unreadable")
                .unwrap();
            assert_eq!(derived(&core), by_taps, "after step {minute}");
        }
        let history = derived(&core);
        assert!(history.contains("pins 7") && history.contains("Quadriceps"), "{history}");
    }
}
