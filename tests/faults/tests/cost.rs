//! What a tap costs on disk: one sync and at most eight frames, however long the history.

use barwright_faults::{Call, Disk, Sessions};
use barwright_store::{NewEvent, Stamp, Store, Tap};

/// Appends a tap and answers it with the number of its syncs.
fn counted(disk: &Disk, append: impl FnOnce() -> Tap) -> (Tap, u64) {
    let before = disk.count(Call::Sync);
    let tap = append();
    (tap, disk.count(Call::Sync) - before)
}

/// Runs sessions and checks every tap; answers the frames of all of them together.
fn run(disk: &Disk, store: &mut Store, sessions: &mut Sessions, count: u32) -> (u32, u32) {
    let (mut taps, mut frames) = (0, 0);
    // The first tap after a checkpoint begins the write-ahead log anew, and syncs its header too.
    store.checkpoint().expect("a quiet moment");
    let mut begins = true;
    for _ in 0..count {
        for (events, changes) in sessions.next_session(store.next_seq()) {
            let events: Vec<_> =
                events.iter().map(|(kind, body)| NewEvent { kind, version: 1, body }).collect();
            let at = Stamp { wall_ms: 1_795_000_000_000, offset_minutes: 60 };
            let (tap, syncs) =
                counted(disk, || store.append(at, &events, &changes, &[]).expect("it appends"));
            assert!((1..=8).contains(&tap.frames), "{tap:?}");
            if !tap.checkpoint {
                assert_eq!(syncs, if begins { 2 } else { 1 }, "{tap:?}");
            }
            begins = tap.checkpoint;
            taps += 1;
            frames += tap.frames;
        }
        store.checkpoint().expect("a quiet moment");
        begins = true;
    }
    (taps, frames)
}

#[test]
fn every_tap_is_one_sync_and_few_frames() {
    let disk = Disk::new();
    disk.set_tracing(false);
    let mut store = disk.open().expect("a new store");
    // The first tap of all after an opening marks the file as in use: the log is synced, then the
    // file, and the log begins anew.
    let mark = [NewEvent { kind: "noted", version: 1, body: "{}" }];
    let at = Stamp { wall_ms: 1_795_000_000_000, offset_minutes: 60 };
    let (_, syncs) = counted(&disk, || store.append(at, &mark, &[], &[]).expect("it appends"));
    assert_eq!(syncs, 4);
    let mut sessions = Sessions::new(7);
    let young = run(&disk, &mut store, &mut sessions, 40);
    // Years of history, taken in at once.
    let mut written = 0;
    while written < 15_000 {
        let mut changes = Vec::new();
        let mut events = Vec::new();
        for _ in 0..100 {
            for (some, more) in sessions.next_session(store.next_seq() + events.len() as u64) {
                written += more.len();
                events.extend(some);
                changes.extend(more);
            }
        }
        let events: Vec<_> =
            events.iter().map(|(kind, body)| NewEvent { kind, version: 1, body }).collect();
        let at = Stamp { wall_ms: 1_795_000_000_000, offset_minutes: 60 };
        store.append(at, &events, &changes, &[]).expect("it appends");
    }
    let old = run(&disk, &mut store, &mut sessions, 40);
    // Frames a tap, old against young: at most a twentieth more.
    assert!(
        u64::from(old.1) * u64::from(young.0) * 100 <= u64::from(young.1) * u64::from(old.0) * 105,
        "{old:?} against {young:?}"
    );
}
