//! Memory runs out: the tap is refused, and nothing that was acknowledged is lost.
//!
//! The limit holds for the whole process, so this file has one test.

use barwright_faults::{Disk, replay, tap};
use barwright_store::StoreError;
use rusqlite::ffi;

/// Sets how many bytes SQLite may have; 0 is no limit.
fn limit(bytes: i64) {
    // SAFETY: it takes a number and touches SQLite's own counters, under their lock.
    unsafe { ffi::sqlite3_hard_heap_limit64(bytes) };
}

fn used() -> i64 {
    // SAFETY: it only reads a counter.
    unsafe { ffi::sqlite3_memory_used() }
}

fn is_honest(error: &StoreError) -> bool {
    matches!(error, StoreError::Failed { code: ffi::SQLITE_NOMEM, .. } | StoreError::Closed { .. })
}

#[test]
fn memory_that_runs_out_loses_nothing() {
    let disk = Disk::new();
    let mut store = disk.open().expect("a new store");
    let (mut done, mut refused, mut refused_to_open) = (0, 0, 0);
    for round in 0..60 {
        limit(used() + round * 3_000);
        match tap(&mut store, done + 1) {
            Ok(_) => done += 1,
            Err(error) => {
                assert!(is_honest(&error), "{error}");
                refused += 1;
            }
        }
        limit(0);
        store.close().expect("there is memory again");
        limit(used() + round * 9_000);
        if let Err(error) = disk.open().map(drop) {
            assert!(is_honest(&error), "{error}");
            refused_to_open += 1;
        }
        limit(0);
        store = disk.open().expect("there is memory again");
        assert_eq!(replay(&mut store), done);
    }
    assert!(refused > 5 && done > 5, "{refused} refused, {done} done");
    assert!(refused_to_open > 5, "{refused_to_open}");
}
