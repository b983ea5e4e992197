//! Taps as a session makes them, told apart by their number.

use barwright_domain::history::Change;
use barwright_store::{NewEvent, Stamp, Store, StoreError, Tap};

use crate::sessions::done_set;

/// The time of tap `number`.
fn at(number: u64) -> Stamp {
    Stamp { wall_ms: 1_795_000_000_000 + 90_000 * number as i64, offset_minutes: 60 }
}

/// Appends tap `number` (from 1): a part that is over and the rest that begins.
///
/// # Errors
/// As [`Store::append`].
pub fn tap(store: &mut Store, number: u64) -> Result<Tap, StoreError> {
    let length = 120 + number % 7 * 60;
    let part = format!("{{\"tap\":{number},\"why\":\"{}\"}}", "x".repeat(length as usize));
    let rest = format!("{{\"tap\":{number},\"length_ms\":180000}}");
    let events = [
        NewEvent { kind: "part_done", version: 1, body: &part },
        NewEvent { kind: "rest_began", version: 1, body: &rest },
    ];
    let last = number.to_string();
    let changes = [Change::PutSet(done_set(number))];
    store.append(at(number), &events, &changes, &[("last", Some(&last))])
}

/// The number of the last tap in a store, after checking that every tap up to it is there whole,
/// that nothing else is, and that what is derived agrees.
///
/// # Panics
/// Where it is not so.
pub fn replay(store: &mut Store) -> u64 {
    let verified = store.verify().expect("the file is sound");
    let events = store.events_from(1).expect("the log reads");
    assert_eq!(events.len() as u64, verified.events);
    for (tap, pair) in events.chunks(2).enumerate() {
        let number = tap as u64 + 1;
        let [part, rest] = pair else { panic!("half a tap: {pair:?}") };
        assert!(part.body.starts_with(&format!("{{\"tap\":{number},")), "{part:?}");
        assert_eq!((part.tap, rest.tap, rest.seq), (part.seq, part.seq, part.seq + 1));
        assert_eq!((part.kind.as_str(), rest.kind.as_str()), ("part_done", "rest_began"));
    }
    let taps = events.len() as u64 / 2;
    let last = store
        .standing()
        .and_then(|facts| facts.get("last"))
        .expect("it reads")
        .map_or(0, |fact| fact.body.parse().expect("a number was written"));
    assert_eq!(last, taps, "what stands beside the log agrees with it");
    let sets = store.history().and_then(|history| history.sets_in(1)).expect("it reads");
    assert_eq!(sets.len() as u64, taps, "what is derived from the log agrees with it");
    assert_eq!(sets.last(), (taps > 0).then(|| done_set(taps)).as_ref());
    taps
}
