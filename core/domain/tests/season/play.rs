//! A lifter who trains a plan: every session laid out, recorded, ended and settled as a device does.

use std::collections::BTreeMap;

use barwright_domain::call::{Amount, EntryId, SetKind};
use barwright_domain::catalogue::Catalogue;
use barwright_domain::desk::{At, DeskEvent, Shared, adoption};
use barwright_domain::equipment::{Equipment, builtin_in};
use barwright_domain::history::{self, DoneSet};
use barwright_domain::owners::{Change, MaxOrigin, Outcome, Owner};
use barwright_domain::plan::Plan;
use barwright_domain::prescribe::{self, Lifter, Past, Source};
use barwright_domain::quantity::{Mass, MassUnit, Numerals, Reserve};
use barwright_domain::session::{
    Because, Call, CallLoad, Command, Ending, Entry, Reading, RecordedSet, Run, Sheet, Stamped,
    State, decide,
};
use barwright_domain::settle::{Ground, settle};

pub(crate) const DAY_MS: i64 = 86_400_000;
const BEGINS: i32 = 20_780;

pub(crate) fn kg(text: &str) -> Mass {
    Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
}

/// A set as it was done.
#[derive(Debug, Clone)]
pub(crate) struct Did(pub(crate) RecordedSet);

/// So many repetitions.
pub(crate) fn reps(reps: u16) -> Did {
    Did(RecordedSet { amount: Some(Amount::Reps(reps)), ..RecordedSet::default() })
}

/// As called.
pub(crate) fn as_called() -> Did {
    Did(RecordedSet::default())
}

impl Did {
    /// With so many half repetitions called left.
    pub(crate) fn left(mut self, halves: u8) -> Self {
        self.0.left = Reserve::from_halves(halves);
        self
    }

    pub(crate) fn ended(mut self, ending: Ending) -> Self {
        self.0.ending = ending;
        self
    }

    pub(crate) fn with(mut self, load: &str) -> Self {
        self.0.load = Some(kg(load));
        self
    }
}

pub(crate) struct Season {
    pub(crate) plan: Plan,
    pub(crate) catalogue: Catalogue,
    pub(crate) gym: Equipment,
    pub(crate) lifter: Lifter,
    pub(crate) state: State,
    seq: u64,
}

impl Season {
    pub(crate) fn new(text: &str) -> Self {
        let mut season = Self {
            plan: read(text),
            catalogue: Catalogue::builtin(),
            gym: builtin_in(MassUnit::Kilogram),
            lifter: Lifter { today: BEGINS, ..Lifter::default() },
            state: State::default(),
            seq: 100,
        };
        season.adopt(text, false);
        season
    }

    /// A plan of eight weeks whose sessions on these days all have these exercises.
    pub(crate) fn of(days: &[&str], exercises: &str) -> Self {
        Self::new(&plan(days, exercises))
    }

    pub(crate) fn adopt(&mut self, text: &str, mended: bool) {
        self.adopt_taking(text, mended, Shared::ThisOne);
    }

    pub(crate) fn adopt_taking(&mut self, text: &str, mended: bool, shared: Shared) {
        let plan = read(text);
        let catalogue = Catalogue::builtin().with_own(plan.exercises.iter().cloned());
        let before = mended.then_some(&self.plan);
        let found = adoption(&plan, before, &self.lifter.desk, &catalogue, shared);
        let (text, day) = (text.to_owned(), self.lifter.today);
        let on = self.lifter.desk.plan.as_ref().map(|plan| plan.seq);
        let event = match on.filter(|_| mended) {
            Some(seq) => {
                DeskEvent::PlanMended { plan: seq, text, day, rows: found.rows, said: found.said }
            }
            None => DeskEvent::PlanAdopted {
                text,
                name: plan.name.clone(),
                day,
                rows: found.rows,
                said: found.said,
            },
        };
        self.desk(&event);
        (self.plan, self.catalogue) = (plan, catalogue);
    }

    pub(crate) fn desk(&mut self, event: &DeskEvent) {
        self.seq += 1;
        self.lifter.desk.apply(self.seq, event);
    }

    pub(crate) fn max(&mut self, lift: &str, mass: &str) {
        let changes = vec![Change::Max { mass: kg(mass), origin: MaxOrigin::Entered }];
        let owner = Owner::Max(lift.to_owned());
        self.desk(&DeskEvent::Said { owner, changes, day: self.lifter.today });
    }

    pub(crate) fn max_of(&self, lift: &str) -> Mass {
        self.lifter.desk.owners.max(lift).now.unwrap().0
    }

    pub(crate) fn weighs(&mut self, mass: &str) {
        let (mass, day) = (kg(mass), self.lifter.today);
        self.desk(&DeskEvent::BodyMassKept { mass, day });
    }

    pub(crate) fn days(&mut self, days: i32) {
        self.lifter.today += days;
    }

    pub(crate) fn sheet(&self, week: usize, index: usize) -> Sheet {
        let source = Source {
            plan: &self.plan,
            adopted: self.lifter.desk.plan.as_ref().map(|plan| plan.seq),
            at: At::of_nth(week - 1, index - 1).unwrap(),
            catalogue: &self.catalogue,
            equipment: &self.gym,
        };
        prescribe::sheet(source, &self.lifter).unwrap().sheet
    }

    /// An exercise of a session, week and session counted from 1.
    pub(crate) fn entry(&self, week: usize, index: usize, exercise: &str) -> Entry {
        let sheet = self.sheet(week, index);
        let entry = sheet.entries().find(|entry| entry.exercise == exercise);
        entry.unwrap_or_else(|| panic!("{exercise} in {sheet:#?}")).clone()
    }

    /// The work loads of an exercise of a session, as they are made.
    pub(crate) fn loads(&self, week: usize, index: usize, exercise: &str) -> Vec<String> {
        work(&self.entry(week, index, exercise)).iter().map(|call| made(call)).collect()
    }

    /// The first of them.
    pub(crate) fn load(&self, week: usize, index: usize, exercise: &str) -> String {
        self.loads(week, index, exercise).first().unwrap().clone()
    }

    /// A whole session: the sets of each exercise in order, the rest of them as called; then two
    /// days.
    pub(crate) fn session(
        &mut self,
        week: usize,
        index: usize,
        sets: &[(&str, &[Did])],
    ) -> Vec<Outcome> {
        let sheet = self.sheet(week, index);
        let outcomes = self.play(sheet, sets, true);
        self.days(2);
        outcomes
    }

    /// Plays a sheet; where `all` is not, sets that nothing is said of are not begun.
    pub(crate) fn play(
        &mut self,
        sheet: Sheet,
        sets: &[(&str, &[Did])],
        all: bool,
    ) -> Vec<Outcome> {
        let body_mass = self.lifter.desk.body_mass.map(|(mass, _)| mass);
        let mut at = Reading {
            wall_ms: i64::from(self.lifter.today) * DAY_MS + 61_200_000,
            offset_minutes: 0,
            boot_ms: None,
            boot_id: None,
        };
        let equipment = self.gym.clone();
        self.tap(&mut at, &Command::Begin { sheet, equipment, body_mass, paper: None });
        let mut said: BTreeMap<String, std::vec::IntoIter<Did>> = sets
            .iter()
            .map(|(name, sets)| ((*name).to_owned(), Vec::from(*sets).into_iter()))
            .collect();
        loop {
            let run = self.state.running().unwrap();
            let Some(cursor) = run.cursor() else { break };
            let entry = run.entries[&cursor.set.entry].clone();
            let set = run.set(cursor.set).unwrap();
            let ramp = set.call.kind == SetKind::Ramp;
            let did =
                said.get_mut(&entry.entry.exercise).filter(|_| !ramp).and_then(Iterator::next);
            match did {
                Some(did) => self.tap(&mut at, &Command::Record(did.0)),
                None if ramp || all => self.tap(&mut at, &Command::Record(RecordedSet::default())),
                None => {
                    let left = said.iter().any(|(name, sets)| {
                        *name != entry.entry.exercise && !sets.as_slice().is_empty()
                    });
                    if !left {
                        break;
                    }
                    // What is left of it is put off, and never begun.
                    self.tap(&mut at, &Command::Postpone(EntryId(cursor.set.entry.0)));
                }
            }
        }
        self.tap(&mut at, &Command::Finish);
        self.settle()
    }

    /// Settles the session as it stands, as a device does after each tap that ends or changes it.
    pub(crate) fn settle(&mut self) -> Vec<Outcome> {
        let run = self.state.run().unwrap().clone();
        let sets = self.sets(&run);
        let before = self.lifter.desk.owners.before(run.session);
        let rows = self.lifter.desk.plan.as_ref().map(|plan| plan.rows.clone()).unwrap_or_default();
        let ground =
            Ground { owners: &before, catalogue: &self.catalogue, rows: &rows, late: false };
        let outcomes = settle(&run, &sets, &ground);
        let day = run.began.local_day();
        let event = DeskEvent::Decided { session: run.session, day, outcomes: outcomes.clone() };
        self.desk(&event);
        let mut by_exercise: BTreeMap<String, Vec<DoneSet>> = BTreeMap::new();
        for set in sets {
            by_exercise.entry(set.exercise.clone()).or_default().push(set);
        }
        for (exercise, sets) in by_exercise {
            let past = self.lifter.past.entry(exercise).or_default();
            past.retain(|past| past.sets.first().is_none_or(|set| set.key.session != run.session));
            past.insert(0, Past { day, sets });
        }
        outcomes
    }

    fn sets(&self, run: &Run) -> Vec<DoneSet> {
        let rows = history::rows(Some(run), &self.catalogue, self.plan.hard_at_left);
        rows.sets.values().map(|set| DoneSet::clone(set)).collect()
    }

    pub(crate) fn tap(&mut self, at: &mut Reading, command: &Command) {
        let events =
            decide(&self.state, command, at).unwrap_or_else(|no| panic!("{no}: {command:?}"));
        self.seq += 1;
        let tap = self.seq;
        for event in events {
            self.state.apply(Stamped { seq: self.seq, tap, at: at.clone(), event });
            self.seq += 1;
        }
        at.wall_ms += 60_000;
    }
}

pub(crate) fn read(text: &str) -> Plan {
    Plan::read(text, &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{faults:#?}")).plan
}

pub(crate) fn plan(days: &[&str], exercises: &str) -> String {
    let mut text = "name = \"Winter block\"\nweeks = 8\n".to_owned();
    for day in days {
        text.push_str(&format!("[[session]]\nname = \"{day}\"\nday = \"{day}\"\n{exercises}\n"));
    }
    text
}

pub(crate) fn work(entry: &Entry) -> Vec<&Call> {
    entry.calls.iter().filter(|call| call.kind != SetKind::Ramp).collect()
}

pub(crate) fn made(call: &Call) -> String {
    match &call.load {
        CallLoad::Known(load) => load.figure.map_or_else(
            || match &load.rig {
                barwright_domain::equipment::Rig::Stack { pin, .. } => format!("pin {pin}"),
                _ => "bare".to_owned(),
            },
            Mass::kilograms,
        ),
        CallLoad::AfterTop { .. } => "after top".to_owned(),
        CallLoad::Chosen { .. } => "chosen".to_owned(),
    }
}

pub(crate) fn meant(call: &Call) -> Option<Mass> {
    match &call.load {
        CallLoad::Known(load) => load.meant,
        CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
    }
}

pub(crate) fn why(entry: &Entry) -> Vec<Because> {
    work(entry).first().unwrap().reason.0.clone()
}

/// The outcome of an owner of this kind.
pub(crate) fn of<'a>(outcomes: &'a [Outcome], kind: &str) -> &'a Outcome {
    let found = outcomes.iter().find(|outcome| outcome.owner.name().starts_with(kind));
    found.unwrap_or_else(|| panic!("{kind} in {outcomes:#?}"))
}
