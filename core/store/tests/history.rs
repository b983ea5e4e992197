//! The derived rows: whatever the taps, they are what a plain fold of the changes gives, before and
//! after they are carried out, after a rebuild, and reading them writes nothing.
#![expect(clippy::unwrap_used, reason = "a test's helpers fail as the test does")]

mod support;

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use barwright_domain::catalogue::Muscle;
use barwright_domain::history::{
    Change, DoneSet, Record, SessionRow, SetKey, claims, first_day, week_of,
};
use barwright_domain::volume::Tally;
use barwright_store::{AtEnd, Derive, Event, History, Moment, NewEvent, Store, StoreError};
use proptest::prelude::*;
use support::{AT, EXERCISES, day_of, session, set};

/// The rows by the plainest means.
#[derive(Default)]
struct Model {
    sets: BTreeMap<SetKey, DoneSet>,
    sessions: BTreeMap<u64, SessionRow>,
    /// Sessions that are of another day than their number's.
    days: BTreeMap<u64, i32>,
}

impl Model {
    fn apply(&mut self, change: &Change) {
        match change {
            Change::PutSet(set) => {
                self.sets.insert(set.key, set.clone());
            }
            Change::RemoveSet(key) => {
                self.sets.remove(key);
            }
            Change::PutSession(row) => {
                self.sessions.insert(row.session, row.clone());
            }
            Change::RemoveSession(session) => {
                self.sessions.remove(session);
            }
        }
    }

    /// A change as it is where its session is of another day.
    fn dated(&self, mut change: Change) -> Change {
        let (session, day) = match &mut change {
            Change::PutSet(set) => (set.key.session, &mut set.day),
            Change::PutSession(row) => (row.session, &mut row.day),
            _ => return change,
        };
        *day = self.days.get(&session).copied().unwrap_or(*day);
        change
    }

    /// What gives a session another day.
    fn date(&mut self, session: u64, day: i32) -> Vec<Change> {
        self.days.insert(session, day);
        let sets = self.sets.values().filter(|set| set.key.session == session);
        let row = self.sessions.get(&session).cloned().map(Change::PutSession);
        let changes = sets.cloned().map(Change::PutSet).chain(row);
        changes.map(|change| self.dated(change)).collect()
    }

    fn records(&self, exercise: &str) -> Vec<Record> {
        let mut best: BTreeMap<_, Record> = BTreeMap::new();
        for claim in self.sets.values().filter(|set| set.exercise == exercise).flat_map(claims) {
            let place = (claim.apart.clone(), claim.measure);
            if best.get(&place).is_none_or(|record| claim.beats(record)) {
                best.insert(place, claim);
            }
        }
        best.into_values().collect()
    }

    fn volume(&self) -> BTreeMap<(i32, Muscle), Tally> {
        let mut sums: BTreeMap<_, Tally> = BTreeMap::new();
        for row in self.sessions.values() {
            for muscle in row.outcome.iter().flat_map(|outcome| &outcome.volume) {
                let sum = sums.entry((week_of(row.day), muscle.muscle)).or_default();
                *sum = sum.and(muscle.tally);
            }
        }
        sums
    }

    fn check(&self, history: &History<'_>) {
        for session in 0..12 {
            let sets: Vec<_> =
                self.sets.values().filter(|set| set.key.session == session).cloned().collect();
            assert_eq!(history.sets_in(session).unwrap(), sets);
            assert_eq!(history.session(session).unwrap().as_ref(), self.sessions.get(&session));
        }
        for exercise in EXERCISES {
            let all: Vec<_> = self.sets.values().filter(|set| set.exercise == exercise).collect();
            let five = (day_of(5), 5);
            for (before, most) in [(None, 100), (None, 2), (Some(five), 2), (Some((0, 0)), 3)] {
                let sessions: BTreeSet<Moment> = all
                    .iter()
                    .map(|set| (set.day, set.key.session))
                    .filter(|session| before.is_none_or(|before| *session < before))
                    .collect();
                let mut expected = Vec::new();
                for (_, session) in sessions.iter().rev().take(most) {
                    expected.extend(
                        all.iter()
                            .filter(|set| set.key.session == *session)
                            .map(|set| DoneSet::clone(set)),
                    );
                }
                let sets = history.sets_of(exercise, before, most as u32).unwrap();
                assert_eq!(sets, expected);

                // Of those, the newest however long ago, and the further ones from a day on.
                let since = day_of(4);
                let recent = |(day, _): &Moment| *day >= since;
                let looked_at: Vec<_> = sessions
                    .iter()
                    .rev()
                    .take(most)
                    .enumerate()
                    .filter(|(place, session)| *place < 1 || recent(session))
                    .map(|(_, (_, session))| *session)
                    .collect();
                expected.retain(|set| looked_at.contains(&set.key.session));
                let most = [1, most as u32];
                let sets = history.recent_sets_of(exercise, before, most, since).unwrap();
                assert_eq!(sets, expected);
            }
            let mut records = history.records(exercise).unwrap();
            records.sort_by_key(|record| (record.apart.clone(), record.measure));
            assert_eq!(records, self.records(exercise));
        }
        let mut done: BTreeMap<&str, i32> = BTreeMap::new();
        for set in self.sets.values() {
            let day = done.entry(&set.exercise).or_insert(set.day);
            *day = (*day).max(set.day);
        }
        let done: Vec<_> = done.into_iter().map(|(name, day)| (name.to_owned(), day)).collect();
        assert_eq!(history.exercises_done().unwrap(), done);

        let mut newest: Vec<_> = self.sessions.values().cloned().collect();
        newest.sort_by_key(|row| Reverse((row.day, row.session)));
        assert_eq!(history.last_sessions(None, 100).unwrap(), newest);
        let six = (day_of(6), 6);
        let before = newest.iter().filter(|row| (row.day, row.session) < six);
        let two: Vec<_> = before.take(2).cloned().collect();
        assert_eq!(history.last_sessions(Some(six), 2).unwrap(), two);
        let (from, to) = (first_day(2_901), first_day(2_903));
        let between = self.sessions.values().filter(|row| (from..=to).contains(&row.day));
        let mut between: Vec<_> = between.cloned().collect();
        between.sort_by_key(|row| (row.day, row.session));
        assert_eq!(history.sessions_between(from..=to).unwrap(), between);
        let mut planned: Vec<_> = self
            .sessions
            .values()
            .filter_map(|row| Some((row.place.as_ref().filter(|place| place.plan == 2)?, row)))
            .filter(|(place, _)| (1..=4).contains(&place.week))
            .map(|(place, row)| ((place.week, place.session, row.session), row.clone()))
            .collect();
        planned.sort_by_key(|(order, _)| *order);
        let planned: Vec<_> = planned.into_iter().map(|(_, row)| row).collect();
        assert_eq!(history.sessions_of_plan(2, 1..=4).unwrap(), planned);

        let mut volume = BTreeMap::new();
        for row in history.volume(i32::MIN..=i32::MAX).unwrap() {
            for muscle in row.muscles {
                volume.insert((row.week, muscle.muscle), muscle.tally);
            }
        }
        assert_eq!(volume, self.volume());
    }
}

/// Folds the log's events, whose bodies are the changes themselves.
struct Refold;

impl Derive for Refold {
    type Error = StoreError;

    fn event(&mut self, event: Event) -> Result<Vec<Change>, StoreError> {
        Ok(vec![serde_json::from_str(&event.body).unwrap()])
    }

    fn end(&mut self) -> Result<AtEnd, StoreError> {
        let standing = vec![("made".into(), "anew".into())];
        Ok(AtEnd { changes: Vec::new(), standing })
    }
}

/// A step of a random life of a store.
#[derive(Debug, Clone)]
enum Step {
    Tap(Vec<Change>),
    Date(u64, i32),
    Checkpoint,
    Reopen,
    Rebuild,
    Read,
}

fn step() -> impl Strategy<Value = Step> {
    let change = (0_u8..10, 1_u64..10, 0_u16..4, 0_u16..3, 0_u32..400).prop_map(
        |(kind, of, entry, number, shape)| match kind {
            0..=5 => Change::PutSet(set(of, entry, number, shape)),
            6 => Change::RemoveSet(set(of, entry, number, shape).key),
            7 | 8 => Change::PutSession(session(of, shape)),
            _ => Change::RemoveSession(of),
        },
    );
    prop_oneof![
        12 => prop::collection::vec(change, 1..4).prop_map(Step::Tap),
        1 => (1_u64..10, 0..60_i32).prop_map(|(of, later)| Step::Date(of, day_of(0) + later)),
        1 => Just(Step::Checkpoint),
        1 => Just(Step::Reopen),
        1 => Just(Step::Rebuild),
        3 => Just(Step::Read),
    ]
}

fn append(store: &mut Store, changes: &[Change]) {
    let bodies: Vec<_> =
        changes.iter().map(|change| serde_json::to_string(change).unwrap()).collect();
    let events: Vec<_> =
        bodies.iter().map(|body| NewEvent { kind: "change", version: 1, body }).collect();
    store.append(AT, &events, changes, &[("last", Some("tap"))]).unwrap();
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(64) })]

    #[test]
    fn rows_are_what_a_plain_fold_gives(steps in prop::collection::vec(step(), 1..60)) {
        let mut store = Store::in_memory().unwrap();
        // Rows name sessions by events that the log has.
        let start: Vec<_> = (0..12).map(Change::RemoveSession).collect();
        append(&mut store, &start);
        let mut model = Model::default();
        for step in steps {
            match step {
                Step::Tap(changes) => {
                    let changes: Vec<_> =
                        changes.into_iter().map(|change| model.dated(change)).collect();
                    append(&mut store, &changes);
                    changes.iter().for_each(|change| model.apply(change));
                }
                Step::Date(of, day) => {
                    let changes = model.date(of, day);
                    append(&mut store, &changes);
                    changes.iter().for_each(|change| model.apply(change));
                }
                Step::Checkpoint => store.checkpoint().unwrap(),
                Step::Reopen => store.reopen().unwrap(),
                Step::Rebuild => store.rebuild(&mut Refold).unwrap(),
                Step::Read => model.check(&store.history().unwrap()),
            }
        }
        model.check(&store.history().unwrap());
        store.checkpoint().unwrap();
        model.check(&store.history().unwrap());
        // Row by row, and down to their numbers, the taps' are the fold's; but for the fact that a
        // tap puts, and the fold does not know.
        append(&mut store, &[Change::RemoveSession(0)]);
        prop_assert_eq!(store.differing(&mut Refold).unwrap().differing, 1);
        store.rebuild(&mut Refold).unwrap();
        model.check(&store.history().unwrap());
        store.verify().unwrap();
        prop_assert_eq!(store.standing().unwrap().get("made").unwrap().unwrap().body, "anew");
        prop_assert_eq!(store.standing().unwrap().get("last").unwrap(), None);
    }
}

#[test]
fn every_shape_of_a_row_comes_back() {
    let mut store = Store::in_memory().unwrap();
    let mut model = Model::default();
    for shape in 0..400 {
        let (of, place) = (u64::from(shape % 9), shape / 9);
        let changes = [
            Change::PutSet(set(of, (place / 12) as u16, (place % 12) as u16, shape)),
            Change::PutSession(session(of, shape)),
        ];
        append(&mut store, &changes);
        changes.iter().for_each(|change| model.apply(change));
    }
    model.check(&store.history().unwrap());
    store.checkpoint().unwrap();
    model.check(&store.history().unwrap());
}

#[test]
fn reading_writes_nothing_and_a_new_process_sees_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log.barwright");
    let log = folder.path().join("log.barwright-wal");
    let mut store = Store::open(&path).unwrap();
    let mut model = Model::default();
    for number in 0..20 {
        let changes = [Change::PutSet(set(3, number, 0, number.into()))];
        append(&mut store, &changes);
        changes.iter().for_each(|change| model.apply(change));
    }
    let before = (std::fs::read(&path).unwrap(), std::fs::read(&log).unwrap());
    model.check(&store.history().unwrap());
    assert_eq!((std::fs::read(&path).unwrap(), std::fs::read(&log).unwrap()), before);
    // As a killed process leaves it, with its changes queued.
    let dead = folder.path().join("dead");
    std::fs::copy(&path, &dead).unwrap();
    std::fs::copy(&log, folder.path().join("dead-wal")).unwrap();
    model.check(&Store::open(&dead).unwrap().history().unwrap());
    store.close().unwrap();
    model.check(&Store::open(&path).unwrap().history().unwrap());
}

#[test]
fn a_rebuild_that_fails_leaves_all_as_it_was() {
    struct Unable(u64);
    impl Derive for Unable {
        type Error = StoreError;

        fn event(&mut self, event: Event) -> Result<Vec<Change>, StoreError> {
            if event.seq == self.0 {
                return Err(StoreError::Closed { path: "told to".into() });
            }
            Ok(Vec::new())
        }

        fn end(&mut self) -> Result<AtEnd, StoreError> {
            Ok(AtEnd::default())
        }
    }
    let mut store = Store::in_memory().unwrap();
    let mut model = Model::default();
    for number in 0..9 {
        let changes = [Change::PutSet(set(1, number, 0, number.into()))];
        append(&mut store, &changes);
        changes.iter().for_each(|change| model.apply(change));
    }
    assert!(matches!(store.rebuild(&mut Unable(7)), Err(StoreError::Closed { .. })));
    model.check(&store.history().unwrap());
    assert_eq!(store.standing().unwrap().get("last").unwrap().unwrap().body, "tap");
    assert!(store.history_is_current());
}
