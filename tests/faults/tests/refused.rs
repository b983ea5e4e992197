//! No room, no right to write, no write-ahead log: each its own error, and nothing is lost.

use barwright_faults::{Disk, replay, tap};
use barwright_store::StoreError;

/// A closed store with so many taps.
fn made(taps: u64) -> Disk {
    let disk = Disk::new();
    let mut store = disk.open().expect("a new store");
    for number in 1..=taps {
        tap(&mut store, number).expect("nothing fails");
    }
    store.close().expect("nothing fails");
    disk
}

#[test]
fn a_full_disk_refuses_the_tap_and_keeps_the_rest() {
    // However little room there is left.
    for room in (0..40_000).step_by(1_024) {
        let disk = made(20);
        disk.set_capacity(Some(disk.used() + room));
        let mut done = 20;
        let mut store = match disk.open() {
            Ok(store) => store,
            Err(error) => {
                assert!(matches!(error, StoreError::Full { .. }), "{error}");
                disk.set_capacity(None);
                disk.open().expect("there is room again")
            }
        };
        let refused = loop {
            match tap(&mut store, done + 1) {
                Ok(_) => done += 1,
                Err(error) => break error,
            }
            if done == 200 {
                assert!(room == 0, "it had no room for 180 taps");
                return;
            }
        };
        assert!(matches!(refused, StoreError::Full { .. }), "{refused}");
        // Refused again, and again not half recorded.
        assert!(matches!(tap(&mut store, done + 1), Err(StoreError::Full { .. })));
        assert_eq!(replay(&mut store), done);
        disk.set_capacity(None);
        tap(&mut store, done + 1).expect("there is room again");
        store.close().expect("nothing fails");
        assert_eq!(replay(&mut disk.open().expect("it opens")), done + 1);
    }
}

#[test]
fn a_disk_too_full_for_a_new_store_says_so() {
    let disk = Disk::new();
    disk.set_capacity(Some(5_000));
    assert!(matches!(disk.open(), Err(StoreError::Full { .. })));
    disk.set_capacity(None);
    assert_eq!(replay(&mut disk.open().expect("there is room now")), 0);
}

#[test]
fn a_file_or_folder_that_cannot_be_written_says_so() {
    let disk = made(3);
    let before = disk.files();
    disk.set_file_read_only(true);
    assert!(matches!(disk.open(), Err(StoreError::ReadOnly { .. })));
    disk.set_file_read_only(false);
    disk.set_folder_read_only(true);
    assert!(matches!(disk.open(), Err(StoreError::ReadOnly { .. })));
    assert_eq!(disk.files(), before);
    disk.set_folder_read_only(false);
    assert_eq!(replay(&mut disk.open().expect("it can be written again")), 3);

    let empty = Disk::new();
    empty.set_folder_read_only(true);
    assert!(matches!(empty.open(), Err(StoreError::ReadOnly { .. })));
}
