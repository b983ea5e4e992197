//! What is derived from the log, made anew from all of it: after an update that derives more, and
//! in a file that was read from a damaged one.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::{Desk, DeskEvent};
use barwright_domain::history::{Change, Rows};
use barwright_domain::plan::Plan;
use barwright_domain::session::{Event, State};
use barwright_store::{AtEnd, Derive, Event as Row};

use super::codec::{self, DESK, SESSION};
use super::core::{catalogue_of, read_plan, rows_of};
use super::storage::{DESK_KEY, Failure, SESSION_KEY};

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
}

impl Anew {
    pub(super) fn new() -> Self {
        Self {
            desk: Desk::default(),
            state: State::default(),
            began: None,
            rows: Rows::default(),
            moved: false,
            plan: None,
            catalogue: Catalogue::builtin(),
        }
    }

    /// Changes that bring the rows to where the session stands.
    fn caught_up(&mut self) -> Vec<Change> {
        if !std::mem::take(&mut self.moved) {
            return Vec::new();
        }
        let next = rows_of(&self.state, self.plan.as_ref(), &self.catalogue);
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
                if let DeskEvent::PlanAdopted { .. } = event {
                    // What was done under the old plan is counted by it.
                    changes = self.caught_up();
                }
                self.desk.apply(row.seq, &event);
                if let DeskEvent::PlanAdopted { .. } = event {
                    self.plan = read_plan(&self.desk);
                    self.catalogue = catalogue_of(self.plan.as_ref());
                }
            }
            _ => return Err(Failure::Unreadable(row.seq)),
        }
        Ok(changes)
    }

    fn end(&mut self) -> Result<AtEnd, Failure> {
        let changes = self.caught_up();
        let mut standing = vec![(DESK_KEY.to_owned(), codec::desk_body(&self.desk))];
        standing.extend(self.began.map(|began| (SESSION_KEY.to_owned(), began.to_string())));
        Ok(AtEnd { changes, standing })
    }
}

#[cfg(test)]
mod tests {
    use barwright_domain::call::{Amount, HowMany};
    use barwright_domain::catalogue::Counting;
    use barwright_domain::equipment::{self, Rig};
    use barwright_domain::quantity::{Mass, MassUnit, Range, Reserve, Seconds};
    use barwright_domain::session::{
        Block, Call, CallLoad, Command, Entry, EntryId, Load, Reading, Reason, RecordedSet, SetId,
        Sheet,
    };
    use barwright_store::Store;

    use super::super::core::{Core, Facts};
    use super::*;
    use crate::locale::Locale;

    fn at(minute: i64) -> Reading {
        Reading {
            wall_ms: 1_795_500_000_000 + minute * 60_000,
            offset_minutes: 60,
            boot_ms: None,
            boot_id: None,
        }
    }

    fn sheet() -> Sheet {
        let load = Load {
            meant: Mass::from_grams(61_000),
            figure: Mass::from_grams(60_000),
            counting: Counting::Total,
            rig: Rig::Body,
            body: None,
            set_up: None,
        };
        let call = |round| Call {
            kind: Default::default(),
            row: 0,
            round,
            flow: Default::default(),
            side: None,
            load: CallLoad::Known(load.clone()),
            part_loads: Vec::new(),
            how_many: HowMany::Reps(Range { from: 5, to: 8 }),
            effort: None,
            structure: Default::default(),
            manner: Default::default(),
            rest: Seconds::new(120),
            reason: Reason::default(),
        };
        let entry = |id, exercise: &str| Entry {
            id: EntryId(id),
            exercise: exercise.into(),
            name: exercise.into(),
            implement: "bodyweight".into(),
            optional: false,
            instead: Vec::new(),
            set_up: Vec::new(),
            lacks: Vec::new(),
            rest_between_sides: Seconds::default(),
            calls: (1..=3).map(call).collect(),
            last: None,
            over_body: false,
            supported: None,
            stands_in_for: None,
        };
        let block = |id, exercise| Block {
            entries: vec![entry(id, exercise)],
            rest_within: Seconds::default(),
            rest_after_round: Seconds::default(),
        };
        Sheet {
            title: "Legs and pull".into(),
            place: None,
            week_kind: Default::default(),
            warm_up: None,
            rest_step: Seconds::new(15),
            blocks: vec![block(0, "back-squat"), block(1, "pull-up")],
        }
    }

    fn tap(core: &mut Core, command: &Command, minute: i64) {
        match core.decide(command, &at(minute)) {
            Ok(Facts::Session(events)) => core.record_session(events, &at(minute)).unwrap(),
            _ => panic!("refused: {command:?}"),
        }
    }

    /// All that is derived, as it is read.
    fn derived(core: &Core) -> String {
        let mut store = core.store.borrow_mut();
        let standing = [DESK_KEY, SESSION_KEY].map(|key| store.standing(key).unwrap());
        let standing = standing.map(|fact| fact.map(|fact| fact.body));
        let history = store.history().unwrap();
        let sessions = history.last_sessions(None, 100).unwrap();
        let sets: Vec<_> =
            sessions.iter().map(|row| history.sets_in(row.session).unwrap()).collect();
        let records = ["back-squat", "pull-up"].map(|slug| history.records(slug).unwrap());
        let volume = history.volume(0..=i32::MAX).unwrap();
        format!("{standing:#?}\n{sessions:#?}\n{sets:#?}\n{records:#?}\n{volume:#?}")
    }

    #[test]
    fn the_log_gives_the_rows_that_the_taps_gave() {
        let mut core = Core::load(Store::in_memory().unwrap(), Locale::read("en")).unwrap();
        let begin = Command::Begin {
            sheet: sheet(),
            equipment: equipment::builtin_in(MassUnit::Kilogram),
            body_mass: Mass::from_grams(80_000),
        };
        let reps = |reps| {
            Command::Record(RecordedSet {
                amount: Some(Amount::Reps(reps)),
                left: Reserve::from_halves(4),
                ..RecordedSet::default()
            })
        };
        let body = |mass| DeskEvent::BodyMassKept { mass, day: 20_780 };
        let set = SetId { entry: EntryId(0), set: 1 };
        let correct = Command::Correct {
            set,
            part: 0,
            to: RecordedSet { amount: Some(Amount::Reps(4)), ..RecordedSet::default() },
        };
        let taps = [
            begin.clone(),
            reps(8),
            reps(9),
            Command::Undo,
            Command::Redo,
            reps(7),
            correct,
            Command::NoteSetUp { entry: EntryId(0), set_up: vec!["pins 7".into()] },
            Command::SkipSet,
            reps(12),
            Command::Undo,
            Command::Finish,
            Command::Undo,
            reps(11),
            Command::Finish,
            begin.clone(),
            reps(10),
            Command::Undo,
            Command::Undo,
            begin.clone(),
            reps(10),
        ];
        let mut minute = 0;
        for command in &taps {
            minute += 3;
            // Beside the log a desk may be left out that says nothing yet.
            core.record_desk(vec![body(Mass::from_grams(79_000 + minute).unwrap())], &at(minute))
                .unwrap();
            tap(&mut core, command, minute);
            let by_taps = derived(&core);
            let mut store = std::mem::replace(core.store.get_mut(), Store::in_memory().unwrap());
            store.rebuild(&mut Anew::new()).map_err(|_| "unreadable").unwrap();
            assert!(!by_taps.is_empty());
            *core.store.get_mut() = store;
            assert!(derived(&core) == by_taps, "after {command:?}: {}", derived(&core));
        }
        let history = derived(&core);
        assert!(history.contains("pins 7") && history.contains("HeaviestFor"), "{history}");
    }
}
