//! Events of another file are taken in whole or not at all.
#![expect(clippy::unwrap_used, reason = "a test's helpers fail as the test does")]

use std::path::Path;

use barwright_domain::history::Change;
use barwright_store::{ABSENT, AtEnd, Damage, Derive, Event, NewEvent, Stamp, Store, StoreError};

const AT: Stamp = Stamp { wall_ms: 1_795_424_400_000, offset_minutes: 60 };

/// Derives nothing, and fails at an event where it is told to.
struct Nothing {
    fails_at: u64,
}

impl Derive for Nothing {
    type Error = StoreError;

    fn event(&mut self, event: Event) -> Result<Vec<Change>, StoreError> {
        if event.seq == self.fails_at {
            return Err(StoreError::NotThere { path: "told to".into() });
        }
        Ok(Vec::new())
    }

    fn end(&mut self) -> Result<AtEnd, StoreError> {
        let standing = vec![("fact".to_owned(), "{}".to_owned())];
        Ok(AtEnd { changes: Vec::new(), standing })
    }
}

/// A log of so many events, each with its checksum.
fn rows(count: usize) -> Vec<(Event, u32)> {
    let mut store = Store::in_memory().unwrap();
    for nth in 0..count {
        let body = format!("{{\"nth\":{nth}}}");
        let event = NewEvent { kind: "desk", version: 1, body: &body };
        store.append(AT, &[event], &[], &[]).unwrap();
    }
    let mut before = 0;
    let with_sum = |event: Event| {
        before = event.sum(before);
        (event, before)
    };
    store.events_from(1).unwrap().into_iter().map(with_sum).collect()
}

fn events(path: &Path) -> Vec<Event> {
    let store = Store::open(path).unwrap();
    let events = store.events_from(1).unwrap();
    store.close().unwrap();
    events
}

#[test]
fn all_of_it_or_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("store");
    let rows = rows(6);
    let mut store = Store::open(&path).unwrap();
    let own = store.uuid().to_owned();
    let other = "0f8fad5b-d9cb-469f-a165-70867728950e".to_owned();

    // It ends in the middle of what is derived.
    let failed = store.take_in(Some(other.clone()), &rows[..4], &mut Nothing { fails_at: 3 });
    assert!(matches!(failed, Err(StoreError::NotThere { .. })), "{failed:?}");
    assert_eq!((store.last_seq(), store.last_sum(), store.uuid()), (0, 0, own.as_str()));

    store.take_in(Some(other.clone()), &rows[..4], &mut Nothing { fails_at: 0 }).unwrap();
    assert_eq!((store.last_seq(), store.last_sum()), (4, rows[3].1));
    assert_eq!(store.uuid(), other);

    // An event that does not join on, and one that was changed.
    for wrong in [&rows[5..], &rows[3..]] {
        let failed = store.take_in(None, wrong, &mut Nothing { fails_at: 0 });
        assert!(
            matches!(failed, Err(StoreError::Corrupt { damage: Damage::Missing { .. }, .. })),
            "{failed:?}"
        );
    }
    let mut changed = rows[4..].to_vec();
    changed[1].0.body = "{}".to_owned();
    let failed = store.take_in(None, &changed, &mut Nothing { fails_at: 0 });
    assert!(
        matches!(failed, Err(StoreError::Corrupt { damage: Damage::Checksum { seq: 6 }, .. })),
        "{failed:?}"
    );
    // The program ends in the middle: nothing of it is in the file.
    let failed = store.take_in(None, &rows[4..], &mut Nothing { fails_at: 6 });
    assert!(failed.is_err());
    drop(store);
    let four: Vec<Event> = rows[..4].iter().map(|(event, _)| event.clone()).collect();
    assert_eq!(events(&path), four);

    let mut store = Store::open(&path).unwrap();
    store.take_in(None, &rows[4..], &mut Nothing { fails_at: 0 }).unwrap();
    assert_eq!(store.standing().unwrap().get("fact").unwrap().unwrap().seq, 6);
    store.close().unwrap();
    assert_eq!(events(&path).len(), 6);
}

#[test]
fn one_event_holds_the_place_of_many_and_a_gap_without_it_is_missing() {
    let late = 4_000_000;
    let [(first, sum), ..] = &rows(1)[..] else { panic!("one event") };
    let absent = Event { seq: late - 1, tap: late - 1, kind: ABSENT.into(), ..first.clone() };
    let last = Event { seq: late, tap: late, ..first.clone() };
    let before = absent.sum(*sum);
    let part = [(first.clone(), *sum), (absent, before), (last.clone(), last.sum(before))];

    let mut store = Store::in_memory().unwrap();
    let gap = [part[0].clone(), (last.clone(), last.sum(*sum))];
    let failed = store.take_in(None, &gap, &mut Nothing { fails_at: 0 });
    assert!(
        matches!(failed, Err(StoreError::Corrupt { damage: Damage::Missing { seq: 2 }, .. })),
        "{failed:?}"
    );
    store.take_in(None, &part, &mut Nothing { fails_at: 0 }).unwrap();
    assert_eq!(store.verify().unwrap().events, late);
    assert_eq!(store.event(late).unwrap(), Some(last));
    // A number that is held for another is no event, wherever it is asked for.
    for seq in [2, late / 2, late - 2] {
        assert_eq!(store.event(seq).unwrap(), None);
    }
    let from = |seq| store.events_from(seq).unwrap().len();
    assert_eq!([1, 2, late / 2, late - 1, late, late + 1].map(from), [3, 2, 2, 2, 1, 0]);
}
