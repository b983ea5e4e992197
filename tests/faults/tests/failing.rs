//! The disk fails once, at any call: the tap is refused, and after reopening the log tells whether
//! it was recorded. Nothing acknowledged is ever missing.

use barwright_faults::{Call, Disk, Fault, replay, tap};
use barwright_store::{Store, StoreError};

const TAPS: u64 = 30;

/// Taps, with a quiet moment and a restart, on a disk that may fail; answers how often it did.
fn session(disk: &Disk) -> u32 {
    let mut failures = 0;
    let mut acknowledged = 0;
    let mut open = |failures: &mut u32| loop {
        match disk.open() {
            Ok(store) => break store,
            Err(error) => {
                assert!(is_honest(&error), "{error}");
                *failures += 1;
                assert!(*failures < 10, "it failed once only");
            }
        }
    };
    let mut store = open(&mut failures);
    while acknowledged < TAPS {
        let number = acknowledged + 1;
        let done = match tap(&mut store, number) {
            Ok(_) => {
                acknowledged = number;
                match number {
                    10 => store.checkpoint(),
                    20 => {
                        let closed = store.close();
                        store = open(&mut failures);
                        closed
                    }
                    _ => Ok(()),
                }
            }
            Err(error) => Err(error),
        };
        if let Err(error) = done {
            assert!(is_honest(&error), "{error}");
            failures += 1;
            assert!(failures < 10, "it failed once only");
            acknowledged = recovered(disk, store, acknowledged, &mut open, &mut failures);
            store = open(&mut failures);
        }
    }
    // What verifying reads is no part of the session.
    disk.fail(None);
    assert_eq!(replay(&mut store), TAPS);
    failures
}

/// Reopens and replays: what was acknowledged is there, the tap that failed perhaps.
fn recovered(
    disk: &Disk,
    mut store: Store,
    acknowledged: u64,
    open: &mut impl FnMut(&mut u32) -> Store,
    failures: &mut u32,
) -> u64 {
    let mut store = match store.reopen() {
        Ok(()) => store,
        Err(_) => {
            drop(store);
            open(failures)
        }
    };
    disk.fail(None);
    let there = replay(&mut store);
    assert!((acknowledged..=acknowledged + 1).contains(&there), "{acknowledged} but {there}");
    there
}

/// The errors that a failing disk may give: never that the file is damaged or something else.
fn is_honest(error: &StoreError) -> bool {
    matches!(
        error,
        StoreError::DiskFailed { .. } | StoreError::ReadOnly { .. } | StoreError::Closed { .. }
    )
}

fn fails_at_every(call: Call) {
    let calm = Disk::new();
    assert_eq!(session(&calm), 0);
    let calls = calm.count(call);
    assert!(calls > 0);
    let mut seen = 0;
    for after in 0..calls {
        let disk = Disk::new();
        disk.fail(Some(Fault { call, after, times: 1 }));
        seen += session(&disk);
    }
    assert!(seen > 0, "a failure that nobody sees is no test");
}

#[test]
fn a_write_fails() {
    fails_at_every(Call::Write);
}

#[test]
fn a_sync_fails() {
    fails_at_every(Call::Sync);
}

#[test]
fn a_read_fails() {
    fails_at_every(Call::Read);
}

#[test]
fn a_disk_that_does_not_read_is_not_taken_for_damage() {
    let disk = Disk::new();
    let mut store = disk.open().expect("nothing fails");
    for number in 1..=300 {
        tap(&mut store, number).expect("nothing fails");
    }
    store.close().expect("nothing fails");
    let mut seen = 0;
    for after in 0.. {
        let store = disk.open().expect("nothing fails");
        disk.fail(Some(Fault { call: Call::Read, after, times: 1 }));
        match store.verify() {
            Ok(_) => break,
            Err(error) => assert!(matches!(error, StoreError::DiskFailed { .. }), "{error}"),
        }
        seen += 1;
    }
    assert!(seen > 5, "{seen}");
}

#[test]
fn opening_fails() {
    fails_at_every(Call::Open);
}

#[test]
fn a_disk_that_stays_broken_acknowledges_nothing_more() {
    let disk = Disk::new();
    let mut store = disk.open().expect("a new store");
    tap(&mut store, 1).expect("nothing fails yet");
    disk.fail(Some(Fault { call: Call::Sync, after: 0, times: u64::MAX }));
    assert!(matches!(tap(&mut store, 2), Err(StoreError::DiskFailed { .. })));
    assert!(matches!(tap(&mut store, 2), Err(StoreError::Closed { .. })));
    assert!(matches!(store.standing(), Err(StoreError::Closed { .. })));
    disk.fail(None);
    store.reopen().expect("it is well again");
    assert!((1..=2).contains(&replay(&mut store)));
}
